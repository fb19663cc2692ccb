"""Errors that spread normally: how many hold 95 %, and what independent ones come to together."""

import math

NORMAL_95 = 1.959964
"""Standard errors on either side that hold 95 % of a normal spread."""


def spread(errors: list[float]) -> float:
    """Return the standard error that independent ones come to together.

    Args:
        errors [any]: one standard error each, in one unit; their signs do not matter.

    Returns:
        [any] in the same unit; 0 of none.

    Source: least-squares, errors that do not depend on one another add as squares.
    """
    return math.sqrt(sum([each * each for each in errors]))
