"""A fact that nobody typed: how it is asked for, and what a record tells of it."""

from calc.record.entries import Entry
from calc.record.fold import State

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable


class Told:
    """What a record tells of an input: its text, the entry, whether that is stale, and how it came about."""

    def __init__(self, text: str = "", entry: Entry | None = None, stale: bool = False, said: str = ""):
        self.text = text
        self.entry = entry
        self.stale = stale
        self.said = said


class Asked:
    """What a form asks by: the id of its input, and the texts that stand on it by input."""

    def __init__(self, input: str, chosen: dict[str, str]):
        self.input = input
        self.chosen = chosen


class Derived:
    """A fact that is worked out.

    kind: as an input's. work: from the state alone. how: what has to be written down for it. by_form: the
    work, where it hangs on what the form asks.
    """

    def __init__(
        self,
        kind: str,
        work: "Callable[[State], Told] | None",
        how: str,
        by_form: "Callable[[State, Asked], Told] | None" = None,
    ):
        self.kind = kind
        self.how = how
        self._work = work
        self._by_form = by_form

    def told(self, state: State, asked: Asked) -> Told:
        """Return what a record tells of it."""
        if self._by_form is not None:
            return self._by_form(state, asked)
        return self._work(state) if self._work is not None else Told()
