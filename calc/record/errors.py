"""How far figures may be out that a calculator read off: said in the note of their entry, and found there."""

OPENING = "Read off by a calculator; each figure with half of the range that holds 95 of 100."
OUT_BY = " ± "


def note_of(errors: "list[tuple[str, str]]") -> str:
    """Return the note of an entry: (label of a fact, its error as text)."""
    return OPENING + "".join([" " + label + OUT_BY + error + "." for label, error in errors])


def error_in(note: str, label: str) -> str:
    """Return the error of a fact as a note says it; empty where it says none."""
    _, found, rest = note.partition(" " + label + OUT_BY)
    return rest.split(". ")[0].rstrip(".") if found else ""
