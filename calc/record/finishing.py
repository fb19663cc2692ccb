"""The coats that are on a bow, as they were laid, for the calculator of the finish."""

from calc.dates import DAY, HOUR, show_date
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.moments import local_moment
from calc.record.sheets_of_finish import OFF


def coat_entries(state: State) -> list[Entry]:
    """Return the coats and the lettering that are on a bow.

    Args:
        state: of a record.

    Returns:
        entries, oldest first; none of before a finish was taken off.
    """
    found: list[Entry] = []
    for entry in state.entries:
        if entry.sheet not in ("coat", "lettering"):
            continue
        if entry.fact("standing") == OFF:
            found = []
        else:
            found.append(entry)
    return found


def laid_text(entries: list[Entry]) -> str:
    """Return the coats that are on a bow as the calculator of the finish takes them.

    Args:
        entries: as `coat_entries` gives them.

    Returns:
        rows of kind, day, hour, warmth and wet film.
    """
    lines = []
    for entry in entries:
        day, clock = divmod(local_moment(entry.at), DAY)
        role = "lettering" if entry.sheet == "lettering" else entry.fact("role") or "build"
        lines.append(":".join([role, show_date(day), exact_text(clock, "hours", "h", HOUR),
                               entry.fact("temperature"), entry.fact("wet_film")]))
    return ";".join(lines)
