"""For the owner of a bow: the page that a link fills, and the dialog in which the link is made."""

from calc.record.owner import LONGEST_WORD
from scripts.blocks.tree import UNSEARCHED, Node, doer, element

MESSAGES = (("going", "How is it going"), ("arrows", "Which arrows"), ("ready", "Ready"))
HEADING = "rb-tell-title"
OFFER_HEADING = "rb-offer-title"


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
    return _dialog(
        HEADING, "Tell the owner", "The link carries how the bow stands. It carries no name, price, place or "
        "note. Whoever has it can read it.",
        element("fieldset", {}, element("legend", {}, "A message to go with it"),
                *(element("label", {}, element("input", {"type": "radio", "name": "message", "value": id}),
                          " " + title) for id, title in MESSAGES)))


def offer() -> Node:
    """Return what makes a page for the owner out of a quote; its script shows it."""
    return element(
        "section", {"class": "rb-offer", "hidden": "", **UNSEARCHED},
        element("p", {}, element("button", {"type": "button"}, "Make a page for the owner")),
        element("p", {"role": "status"}),
        _dialog(
            OFFER_HEADING, "A page for the owner", "The link carries what the bow is to become, what is done "
            "and until when it holds. It carries no rate, no hours, no mark-up and no name. Whoever has it "
            "can read it.",
            element("p", {}, element("label", {}, element("input", {"type": "checkbox", "name": "priced"}),
                                     " The price goes along, with how far it may be out"))),
    )


def _dialog(heading: str, title: str, carries: str, choices: Node) -> Node:
    return element(
        "dialog", {"class": "rb-tell rb-keep-dialog", "aria-labelledby": heading},
        element("h2", {"id": heading}, title),
        element("p", {"class": "rb-note"}, carries),
        element("label", {"class": "rb-tell-word"}, "A line on the page, if you like ",
                element("input", {"type": "text", "name": "word", "maxlength": str(LONGEST_WORD)})),
        element("p", {}, element("a", {"target": "_blank", "rel": "noopener"}, "See the page as the owner "
                                                                               "will")),
        element("p", {"class": "rb-tell-left"}),
        choices,
        element("p", {"class": "rb-tell-caution"}),
        element("textarea", {"rows": "7", "aria-label": "The message, to change as you like"}),
        element("div", {"class": "rb-bows-actions"},
                doer("share-message", "Share it", "rb-main"), doer("copy-message", "Copy it", "rb-main"),
                doer("show-square", "Show a QR code"), doer("close", "Close")),
        element("p", {"role": "status"}),
        element("div", {"class": "rb-tell-square"}),
    )
