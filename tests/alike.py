"""Whether two answers are the same, but for what rounding may do to a figure."""

from math import isclose

TOLERANCE = 1e-9  # relative; libraries of mathematics differ in their last bits
OF_NOTHING = 1e-12  # absolute, for what is nought but for rounding


def differences(ours: object, theirs: object, where: str = "") -> list[str]:
    """Return where two answers differ, the order of names in an object left aside."""
    if isinstance(ours, dict) and isinstance(theirs, dict) and ours.keys() == theirs.keys():
        return [found for name in ours for found in differences(ours[name], theirs[name], f"{where}/{name}")]
    if isinstance(ours, list) and isinstance(theirs, list) and len(ours) == len(theirs):
        return [found for place, pair in enumerate(zip(ours, theirs))
                for found in differences(*pair, f"{where}/{place}")]
    if isinstance(ours, float) and isinstance(theirs, (int, float)):
        same = isclose(ours, theirs, rel_tol=TOLERANCE, abs_tol=OF_NOTHING)
    else:
        same = ours == theirs
    return [] if same else [f"{where}: {ours!r} here, {theirs!r} there"]
