"""Photographs on a bow's page: their place, the form in which one is taken, and one opened large."""

from calc.declaring import Group
from calc.record.sheets_of_finish import PHOTO
from calc.tables.pictures import PICTURES
from scripts.blocks.form import fieldsets
from scripts.blocks.sheet import closing, emptied, units, when
from scripts.blocks.tree import Node, doer, element

ASKED = ("shows", "what", "place", "print")
"""The other facts the page's script knows."""

TAKING, LARGE = "rb-photo-title", "rb-photo-large-title"


def part() -> Node:
    """Return where a bow's page shows its photographs."""
    return element(
        "div", {"class": "rb-bow-photos"},
        element("h3", {}, "Photographs"),
        element("p", {"class": "rb-photo-count"}),
        element("ul", {"class": "rb-photo-row"}),
        element("details", {"class": "rb-photo-intake"},
                element("summary", {}, "Photos of the bow as it came"),
                element("p", {"class": "rb-photo-begun"}), element("ol", {})),
    )


def prompts() -> Node:
    """Return the pictures of an intake as a list."""
    return element("ol", {"class": "rb-pictures"}, *(element("li", {}, label) for _, label in PICTURES))


def dialogs() -> tuple[Node, Node]:
    """Return the form of a photograph, and what shows one large."""
    return _taking(), _large()


def _taking() -> Node:
    [group] = PHOTO.groups
    few = Group("", "", tuple(each for each in group.inputs if each.id in ASKED))
    return element(
        "dialog", {"class": "rb-photo", "aria-labelledby": TAKING},
        element(
            "form", {"class": "rb-form", "novalidate": "", "autocomplete": "off"},
            element("h2", {"id": TAKING}, PHOTO.title),
            element("p", {"class": "rb-note"}, "It stays on this device. It is kept smaller than it was "
                                               "taken, and without the place where it was taken."),
            element("div", {"class": "rb-problems", "role": "alert", "tabindex": "-1", "hidden": ""}),
            element("div", {"class": "rb-bows-actions rb-photo-pick"},
                    _picker("Take a picture", capture="environment"), _picker("Choose a picture")),
            element("div", {"class": "rb-photo-picked"}),
            *units(),
            element("label", {"class": "rb-photo-line"}, "It belongs to",
                    element("select", {"name": "entry"})),
            *fieldsets(emptied(PHOTO._replace(id="sheet-photo", groups=(few,)))),
            element("label", {"class": "rb-photo-line rb-photo-pick"},
                    element("input", {"type": "checkbox", "name": "fine"}),
                    " Keep it finer: lettering, cracks, whatever is small"),
            *when("photo"),
            closing(element("button", {"type": "submit", "data-do": "save-and-next", "hidden": ""})),
        ),
    )


def _picker(title: str, capture: str | None = None) -> Node:
    return element("label", {"class": "rb-bows-take"}, title + " ",
                   element("input", {"type": "file", "accept": "image/*", "capture": capture}))


def _large() -> Node:
    return element(
        "dialog", {"class": "rb-photo-large", "aria-labelledby": LARGE},
        element("h2", {"id": LARGE}, PHOTO.title),
        element("figure", {}),
        element("p", {"class": "rb-photo-told", "role": "status"}),
        element("div", {"class": "rb-bows-actions"},
                doer("close", "Close", "rb-main"), doer("put-right", "Put its words right"),
                doer("save-picture", "Save the picture to a file"), _picker("Put the picture in"),
                doer("strike-photo", "Strike out"), doer("remove-picture", "Remove the picture")),
    )
