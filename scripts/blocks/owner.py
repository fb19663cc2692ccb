"""For the owner of a bow: the page that a link fills, and the dialog in which the link is made."""

from calc.record.owner import LONGEST_WORD
from scripts.blocks.tree import UNSEARCHED, Node, doer, element

MESSAGES = (("going", "How is it going"), ("arrows", "Which arrows"), ("ready", "Ready"))
HEADING = "rb-tell-title"


def section() -> Node:
    """Return the section that shows a link; without one it says what it is for."""
    return element(
        "section", {"class": "rb-owner", "data-state": "none", **UNSEARCHED},
        element("noscript", {}, element("p", {}, "This page needs JavaScript: the link is read on your own "
                                                 "device.")),
        element("p", {"class": "rb-owner-none"}, "This address carries no bow. Open the whole link that you "
                                                 "were sent."),
        element("p", {"class": "rb-owner-wait", "role": "status"}, "Reading the link…"),
        element("div", {"class": "rb-owner-page"}),
        element("p", {}, element("button", {"type": "button", "hidden": ""})),
    )


def dialog() -> Node:
    """Return the dialog of a bow's page that makes the link and the messages."""
    return element(
        "dialog", {"class": "rb-tell", "aria-labelledby": HEADING},
        element("h2", {"id": HEADING}, "Tell the owner"),
        element("p", {"class": "rb-note"}, "The link carries how the bow stands. It carries no name, price, "
                                           "place or note. Whoever has it can read it."),
        element("label", {"class": "rb-tell-word"}, "A line on the page, if you like ",
                element("input", {"type": "text", "name": "word", "maxlength": str(LONGEST_WORD)})),
        element("p", {}, element("a", {"target": "_blank", "rel": "noopener"}, "See the page as the owner "
                                                                               "will")),
        element("p", {"class": "rb-tell-left"}),
        element("fieldset", {}, element("legend", {}, "A message to go with it"),
                *(element("label", {}, element("input", {"type": "radio", "name": "message", "value": id}),
                          " " + title) for id, title in MESSAGES)),
        element("p", {"class": "rb-tell-caution"}),
        element("textarea", {"rows": "7", "aria-label": "The message, to change as you like"}),
        element("div", {"class": "rb-bows-actions"},
                doer("share-message", "Share it", "rb-main"), doer("copy-message", "Copy it", "rb-main"),
                doer("show-square", "Show a QR code"), doer("close", "Close")),
        element("p", {"role": "status"}),
        element("div", {"class": "rb-tell-square"}),
    )
