"""Photographs of a bow: which pictures its record wants, what is said of each, and how its file carries them.

A record names its pictures and holds none: a page keeps them beside it, a file behind it. One that is cut off
so loses pictures before it loses an entry.
"""

from calc.record import derive, sheets
from calc.record.entries import Entry, is_id
from calc.record.fold import State, struck_ids
from calc.record.moments import show_local
from calc.record.sheets_of_finish import ON_SHEET, PHOTO
from calc.record.words import escaped, facts_of, shown, title_of
from calc.tables.pictures import FINE, PICTURES

MOST = 60
"""Pictures of one bow."""

MOST_BYTES = 45_000_000
"""Of all pictures in a file: written in base 64 they leave it below 64 MB."""

MOST_ON_SHEET = 3
"""Pictures for which the record sheet has room."""

REMOVED = "picture removed"
"""Why a photograph is struck out whose picture is to be nowhere any more."""

NOT_TIED = ("photo", "answer", "told")
"""Sheets of which nobody takes a picture."""

MOST_TIES = 200
"""Entries, the newest, to which a picture can be tied."""

FINELY = ("finding", "lettering")
"""Sheets whose pictures show what is small."""

SAID = ("shows", "what", "place")
"""Facts of a photograph that stand below it."""

TIED_FACTS = 4
"""Facts by which an entry is known below a picture of it."""

PICTURE = '<img data-photo="'
SOURCE = '" src="'
JPEG = "data:image/jpeg;base64,"
OF_BASE_64 = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/="


class Photo:
    """A picture with what is said of it.

    entry: that tells of it. file: its name, which is an id. caption: words. beside: id of the entry that it
    belongs to, or empty. counts: whether its entry stands; one that was struck out stays to be seen.
    """

    def __init__(self, entry: Entry, caption: str, beside: str, counts: bool):
        self.entry = entry
        self.file = entry.fact("file")
        self.caption = caption
        self.beside = beside
        self.counts = counts


class Wanted:
    """A picture of the intake. photo: id of the entry that shows it as the bow came, or empty."""

    def __init__(self, id: str, label: str, photo: str):
        self.id = id
        self.label = label
        self.photo = photo

    @property
    def is_fine(self) -> bool:
        """Return whether what it shows is small."""
        return self.id in FINE


def photos(entries: list[Entry]) -> list[Photo]:
    """Return the photographs of a record, but those of which the picture was removed.

    Args:
        entries: of one record.

    Returns:
        oldest first. Of one picture that several entries told of, those that count; where none does, the
        newest.
    """
    struck = struck_ids(entries)
    gone = {each.replaces for each in entries
            if each.strikes and each.why == REMOVED and each.id not in struck}
    by_id = {each.id: each for each in entries}
    told = sorted([each for each in entries if each.sheet == "photo" and is_id(each.fact("file"))],
                  key=lambda each: (each.moment, each.id))
    standing = {each.fact("file") for each in told if each.id not in struck}
    removed = {each.fact("file") for each in told if each.id in gone}
    newest = {each.fact("file"): each.id for each in told}
    found = []
    for each in told:
        name = each.fact("file")
        if each.id in struck and (name in standing or name in removed or newest[name] != each.id):
            continue
        beside = by_id.get(each.fact("entry"))
        found.append(Photo(each, _caption(each, beside), beside.id if beside else "", each.id not in struck))
    return found


def _caption(entry: Entry, beside: Entry | None) -> str:
    parts = [shown(each, entry.fact(each.id)) for each in sheets.inputs_of(PHOTO)
             if each.id in SAID and entry.fact(each.id)]
    if beside is not None:
        parts.append(known_by(beside))
    parts.append(show_local(entry.at))
    return ". ".join([each.rstrip(".") for each in parts]) + "."


def known_by(entry: Entry) -> str:
    """Return the words by which people know an entry: its title and its first facts.

    Args:
        entry: any.

    Returns:
        such as `A finding: Crazing, Upper limb, Belly, 6 in`.
    """
    facts = [text for _, text in facts_of(entry)][:TIED_FACTS]
    return title_of(entry) + (": " + ", ".join(facts) if facts else "")


def ties(state: State) -> list[Entry]:
    """Return the entries that a picture can belong to.

    Args:
        state: of a record.

    Returns:
        newest first; of a long record the newest only.
    """
    return [each for each in reversed(state.entries) if each.sheet not in NOT_TIED][:MOST_TIES]


def intake(state: State) -> list[Wanted]:
    """Return the pictures that show how a bow came, each with the photograph that does.

    Args:
        state: of a record.

    Returns:
        in the order in which they are taken. A picture taken after the first work on the bow does not show
        how it came.
    """
    began = _began(state)
    taken = {}
    for each in state.of("photo"):
        if is_id(each.fact("file")) and (began is None or each.moment < began):
            taken[each.fact("shows")] = each.id
    return [Wanted(id, label, taken.get(id, "")) for id, label in PICTURES]


def _began(state: State) -> int | None:
    """Return when the first work on a bow was done; None where none was."""
    work = [each.moment for each in derive.deeds(state)]
    return min(work) if work else None


def for_sheet(entries: list[Entry]) -> list[Photo]:
    """Return the photographs that were chosen for the record sheet.

    Args:
        entries: of one record.

    Returns:
        the first of them, as many as the sheet has room for.
    """
    chosen = [each for each in photos(entries) if each.counts and each.entry.fact("print") == ON_SHEET]
    return chosen[:MOST_ON_SHEET]


# In a file -----------------------------------------------------------------------


def check_room(count: object) -> None:
    """Refuse a file whose pictures would make it larger than is read again.

    Args:
        count [bytes]: of all its pictures.

    Raises:
        ValueError: they are too many.
    """
    if not isinstance(count, int) or count > MOST_BYTES:
        raise ValueError("The photos of all bows are too large for one file. Save each bow to a file of its "
                         "own; nothing was changed.")


def figures(entries: list[Entry], pictures: dict[str, str]) -> str:
    """Return the photographs of a record as HTML.

    Args:
        entries: of one record.
        pictures: addresses by the names of their files; of the others only the words are there.

    Returns:
        a figure a picture; nothing where the record tells of none.
    """
    found = photos(entries)
    names: list[str] = []
    for each in found:
        if each.file not in names:
            names.append(each.file)
    parts = []
    for name in names:
        same = [each for each in found if each.file == name]
        words = escaped(" ".join([each.caption for each in same]))
        struck = "" if same[0].counts else ' class="struck"'
        shown = (PICTURE + name + SOURCE + pictures[name] + '" alt="' + words + '">' if name in pictures
                 else "<p>This picture is not in the file.</p>")
        parts.append("<figure>" + shown + "<figcaption" + struck + ">" + words + "</figcaption></figure>\n")
    return "<h2>Photographs</h2>\n" + "".join(parts) if parts else ""


def pictures_in(text: str) -> dict[str, str]:
    """Return the pictures that a file of bows carries.

    Args:
        text: of the file, hostile until read.

    Returns:
        addresses that hold a JPEG whole, by the names of their files; what is no such thing is left out.
    """
    found = {}
    for part in text.split(PICTURE)[1:]:
        name, _, rest = part.partition(SOURCE)
        address, end, _ = rest.partition('"')
        if is_id(name) and end and _is_jpeg(address):
            found[name] = address
    return found


def _is_jpeg(address: str) -> bool:
    return address.startswith(JPEG) and not address[len(JPEG):].strip(OF_BASE_64)


# For a page ----------------------------------------------------------------------


def album(entries: list[Entry], state: State) -> "dict[str, object]":
    """Return what a bow's page shows of its photographs, as JSON holds it.

    Args:
        entries: of one record.
        state: of the same.

    Returns:
        "photos", each {"id", "file", "sum", "caption", "beside", "counts", "at", "note", "facts"}; "intake":
        the pictures that show how the bow came, each {"id", "label", "photo", "fine"}; "begun": whether it is
        too late for them; "ties": the entries that a picture
        can belong to, each {"id", "words", "fine"}; "sheet": ids of those for the record sheet; "most" and
        "room": how many pictures a bow may have, and how many bytes; "removed": why a photograph is struck
        out whose picture goes with it.
    """
    return {
        "photos": [{"id": each.entry.id, "file": each.file, "sum": each.entry.fact("sum"),
                    "caption": each.caption, "beside": each.beside, "counts": each.counts,
                    "at": each.entry.at, "note": each.entry.note,
                    "facts": [list(pair) for pair in each.entry.facts]} for each in photos(entries)],
        "intake": [{"id": each.id, "label": each.label, "photo": each.photo, "fine": each.is_fine}
                   for each in intake(state)],
        "begun": _began(state) is not None,
        "ties": [{"id": each.id, "words": known_by(each) + ", " + show_local(each.at),
                  "fine": each.sheet in FINELY} for each in ties(state)],
        "sheet": [each.entry.id for each in for_sheet(entries)],
        "most": MOST, "room": MOST_BYTES, "removed": REMOVED,
    }
