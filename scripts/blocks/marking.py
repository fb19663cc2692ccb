"""What marks points on a picture for a calculator: all that its script fills.

The sets of points are the tables of the calculator's form that hold places on a picture.
"""

from scripts.blocks.tree import UNSEARCHED, Node, doer, element

HELP = "rb-marking-help"
ARROWS = (("ArrowLeft", "◀", "One pixel to the left"), ("ArrowUp", "▲", "One pixel up"),
          ("ArrowDown", "▼", "One pixel down"), ("ArrowRight", "▶", "One pixel to the right"))
DEEDS = (("undo", "Undo"), ("redo", "Redo"), ("former-mark", "Mark before"), ("next-mark", "Next mark"),
         ("draw", "Draw this mark"),
         ("closer", "Closer"), ("farther", "Farther"), ("whole", "Whole picture"), ("delete", "Delete mark"),
         ("clear", "Delete all marks"))
HOW = (
    "Touch sets a mark where the finger lifts. The round glass beside the finger shows what is under it.",
    "Drag a mark that is set: it moves as in the glass, finely. Two fingers move and enlarge the picture.",
    "With a mouse: wheel enlarges once the picture has been clicked, Shift with drag moves it.",
    "With keys: arrows move the chosen mark by one pixel, with Shift by ten. Page Up and Page Down choose a "
    "mark, Delete takes it away, Escape lets go of it. With none chosen, arrows move the picture, and Enter "
    "sets a mark under the cross in its middle. Plus, minus and 0 enlarge, shrink and show it whole.",
    "A mark that is set is drawn to the edge of the belly, or to the middle of its dot, where the picture "
    "shows one clearly; small corners around the cross say so. Undo takes it back to where you set it, and a "
    "mark that you move stays where you move it.",
    "The tables below list the same marks as numbers, to read and to change.",
)


def section() -> Node:
    """Return the part of a page that marks a picture; empty of one, it says what becomes of it."""
    return element(
        "section", {"class": "rb-marking", "data-state": "none", "aria-label": "Picture to mark",
                    **UNSEARCHED},
        element("p", {"class": "rb-note"}, "The picture stays on this device. Nothing of it is sent, and it "
                                           "is kept only where you keep it with a bow, without the place "
                                           "where it was taken. A link carries marks as numbers."),
        element("div", {"class": "rb-marking-choose"},
                _file("Choose a picture"), _file("Take a picture", capture="environment")),
        element("div", {"class": "rb-marking-bench"},
                element("fieldset", {"class": "rb-marking-sets"}, element("legend", {}, "Mark now")),
                element("p", {"class": "rb-marking-hint"}),
                element("div", {"class": "rb-marking-figures", "role": "group",
                                "aria-label": "What the mark stands for"}),
                element("canvas", {"tabindex": "0", "role": "application",
                                   "aria-label": "The picture, to mark", "aria-describedby": HELP}),
                element("label", {"class": "rb-marking-draw"},
                        element("input", {"type": "checkbox", "checked": ""}),
                        " Draw each mark to the edge or dot beside it")),
        element("p", {"class": "rb-marking-said", "role": "status"}),
        _tools(),
    )


def _file(title: str, capture: str | None = None) -> Node:
    return element("label", {}, element("input", {"type": "file", "accept": "image/*", "capture": capture}),
                   element("span", {}, title))


def _tools() -> Node:
    return element(
        "div", {"class": "rb-marking-bench"},
        element("div", {"class": "rb-marking-tools", "role": "group", "aria-label": "Move the chosen mark"},
                *(_arrow(*each) for each in ARROWS)),
        element("div", {"class": "rb-marking-tools", "role": "group", "aria-label": "Marks and view"},
                *(doer(name, title) for name, title in DEEDS)),
        element("details", {}, element("summary", {}, "Fingers, mouse and keys"),
                element("ul", {"id": HELP}, *(element("li", {}, each) for each in HOW))),
    )


def _arrow(deed: str, sign: str, title: str) -> Node:
    return element("button", {"type": "button", "data-do": deed, "aria-label": title}, sign)
