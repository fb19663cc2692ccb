"""What an entry says, as people read it."""

from calc.declaring import Input
from calc.record import sheets
from calc.record.entries import Entry
from calc.record.sheets_of_finish import UNSPOKEN


def title_of(entry: Entry) -> str:
    """Return what an entry is called: the title of its sheet.

    Args:
        entry: any.

    Returns:
        words; of a sheet that this release does not know, its id.
    """
    sheet = sheets.find(entry.sheet)
    return str(sheet.title) if sheet else entry.sheet


def facts_of(entry: Entry) -> list[tuple[str, str]]:
    """Return the facts of an entry as people read them, in the order of their form.

    Args:
        entry: any.

    Returns:
        pairs of label and text; what this release does not know stands last under its own name.
    """
    sheet = sheets.find(entry.sheet)
    asked = sheets.inputs_of(sheet) if sheet else []
    found = [(each.label, shown(each, entry.fact(each.id))) for each in asked
             if entry.fact(each.id) and entry.sheet + "." + each.id not in UNSPOKEN]
    known = [each.id for each in asked]
    return found + [(name, text) for name, text in entry.facts if name not in known]


def shown(asked: Input, text: str) -> str:
    """Return a fact's text as people read it: the label of a choice, rows a line each.

    Args:
        asked: its declaration.
        text: as typed.

    Returns:
        words.
    """
    for option in asked.choices:
        if option.id == text:
            return str(option.label)
    if asked.columns:
        return "; ".join([", ".join(row.split(":")) for row in text.split(";")])
    return text


def escaped(text: str) -> str:
    """Return a text as it stands in HTML.

    Args:
        text: any.

    Returns:
        the same without a mark that HTML reads as its own.
    """
    for mark, name in (("&", "&amp;"), ("<", "&lt;"), (">", "&gt;"), ('"', "&quot;")):
        text = text.replace(mark, name)
    return text
