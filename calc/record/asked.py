"""What a request of a page holds, read once for all tasks."""

from calc.record.entries import Entry, read_entries
from calc.record.fold import State

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Asked = dict[str, object]


def state_in(asked: "Asked") -> State:
    """Return how the bow of a request stands.

    Args:
        asked: "entries": a record as JSON.

    Returns:
        its entries, folded.

    Raises:
        ValueError: that is no list of entries.
    """
    return State(entries_in(asked))


def entries_in(asked: "Asked") -> list[Entry]:
    """Return the entries of a request that can be read.

    Args:
        asked: "entries": a record as JSON.

    Returns:
        them, as they are kept.

    Raises:
        ValueError: that is no list of entries.
    """
    return read_entries(str(asked["entries"]))[0]


def units_in(asked: "Asked") -> str:
    """Return the unit system of a request.

    Args:
        asked: "units": its name.

    Returns:
        "imperial" or "metric".
    """
    return str(asked["units"])


def pairs_in(asked: "Asked", name: str) -> list[tuple[str, str]]:
    """Return pairs of a request.

    Args:
        asked: a request.
        name: under which it holds them.

    Returns:
        each a name and a text; none where it holds none.

    Raises:
        ValueError: what it holds there is something else.
    """
    found = []
    for pair in list_in(asked, name):
        if not isinstance(pair, (list, tuple)) or len(pair) < 2:
            raise ValueError("“" + name + "” must be pairs of a name and a text")
        found.append((str(pair[0]), str(pair[1])))
    return found


def list_in(asked: "Asked", name: str) -> list[object]:
    """Return a list of a request.

    Args:
        asked: a request.
        name: under which it holds it.

    Returns:
        the list; empty where it holds none.

    Raises:
        ValueError: what it holds there is no list.
    """
    found = asked.get(name) or []
    if not isinstance(found, list):
        raise ValueError("“" + name + "” must be a list")
    return found
