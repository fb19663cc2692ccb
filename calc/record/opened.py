"""A bow's record for programs: how it stands, what was read, and what it gives to a calculator."""

from calc.declaring import ROWS
from calc.record import checks, file, sheets, summary
from calc.record.entries import Entry
from calc.record.fill import fill
from calc.record.fold import State
from calc.record.values import value_of

BESIDE = "bow.json"
"""Where a page puts the copy of a bow that its reader gives to a program."""


class OpenedBow:
    """A copy of a bow's record; nothing that a program does with it changes the record."""

    def __init__(self, entries: list[Entry]):
        self._state = State(entries)

    def __repr__(self) -> str:
        return "<bow: " + self.title() + ">"

    def title(self) -> str:
        """Return what the bow is called."""
        return summary.title(self._state)

    def state(self) -> dict[str, str]:
        """Return the newest text of every fact that is known, such as `reading.brace`."""
        found = {}
        for sheet in sheets.SHEETS:
            for each in sheets.inputs_of(sheet):
                known = self._state.latest(sheet.id + "." + each.id)
                if known is not None:
                    found[sheet.id + "." + each.id] = known.text
        return found

    def readings(self) -> list[dict[str, object]]:
        """Return the readings, oldest first: "at" as written, the rest as numbers in SI, words, rows."""
        return self.entries("reading")

    def batches(self) -> list[dict[str, object]]:
        """Return the batches of strokes, oldest first."""
        return self.entries("strokes")

    def entries(self, sheet: str) -> list[dict[str, object]]:
        """Return the entries of a sheet that count, oldest first; what cannot be read is left out.

        Rows are dictionaries by the names of their columns.
        """
        return [_values(each) for each in self._state.of(sheet)]

    def fill(self, calculator: str) -> dict[str, str]:
        """Return the texts that the record gives to a calculator's inputs, those that are known."""
        return {each.input: each.text for each in fill(self._state, calculator) if each.text}

    def missing(self, calculator: str) -> dict[str, str]:
        """Return what the record cannot give to a calculator, with how it comes to be known."""
        return {each.input: each.how for each in fill(self._state, calculator) if not each.text}

    def checks(self) -> list[tuple[str, str]]:
        """Return what the whole record shows: (id, level) pairs."""
        return [(str(each.id), str(each.level)) for each in checks.checks(self._state)]


def open_bow(path: str = BESIDE) -> OpenedBow:
    """Return a copy of a bow's record from a file.

    Args:
        path: of a bow's page or of a record as JSON.

    Returns:
        the bow.

    Raises:
        ValueError: there is no such file, or it is none of a bow.
    """
    try:
        with open(path, encoding="utf-8") as opened:
            text = opened.read()
    except OSError:
        raise ValueError("there is no bow in “" + path + "”: give the program a bow first") from None
    return OpenedBow(file.record_in(text).entries)


def _values(entry: Entry) -> dict[str, object]:
    found: dict[str, object] = {"at": entry.at}
    for name, text in entry.facts:
        asked = sheets.input_of(entry.sheet + "." + name)
        if asked is None:
            continue
        try:
            value = value_of(entry.sheet + "." + name, text)
        except ValueError:
            continue
        if asked.kind == ROWS and isinstance(value, tuple):
            names = [each.id for each in asked.columns]
            value = [dict(zip(names, row)) for row in value]
        found[name] = value
    return found
