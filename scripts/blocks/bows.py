"""The page of bows: all that its script fills, and the forms of entries as the record declares them."""

import json

from calc import catalog
from calc.declaring import Group
from calc.record import sheets
from calc.record.declare import Sheet
from calc.record.sheets_of_finish import PHOTO
from calc.record.sheets_of_shop import SHOP
from calc.tables.string_places import PLACES
from scripts.blocks import owner, paper, photos, timer
from scripts.blocks.form import changed, fieldsets
from scripts.blocks.sheet import closing, emptied, units, when
from scripts.blocks.tree import UNSEARCHED, Node, doer, element

MINUS = "\N{MINUS SIGN}"
QUESTIONS = (
    ("tag", "What number is on its tag?"),
    ("title", "What is it, in a few words?"),
    ("family", "Which shape has it?"),
    ("marked_letters", "What is written on it?"),
    ("length", "How long is it along the belly, from nock to nock?"),
    ("marked_weight", "What weight is marked on it?"),
    ("old", "Is it old, or of an age that nobody knows?"),
    ("due", "When is it to be ready?"),
)
NOT_BY_HAND = (sheets.ANSWER.id, PHOTO.id, SHOP.id)
FIRST = ("reading", "strokes", "look", "finding", "first_draw", "agreed", "archer")
"""Sheets in the order in which a job meets them; the others follow."""

TILES = (("upper_belly", "Upper belly"), ("lower_belly", "Lower belly"), ("upper_back", "Upper back"),
         ("lower_back", "Lower back"))
STEPPED = (("weight", "Weight"), ("upper", "Upper distance"), ("lower", "Lower distance"))


def section() -> Node:
    """Return the section; without a script it says that it needs one."""
    return element(
        "section", {"class": "rb-bows", "data-titles": _titles(), **UNSEARCHED},
        element("noscript", {}, element("p", {}, "This part needs JavaScript: your browser keeps the "
                                                 "record. Paper does as well.")),
        element("p", {"class": "rb-bows-wait"}, "The list of your bows is not there yet."),
        element("div", {"class": "rb-bows-notice", "role": "status"}),
        _list(),
        _one(),
        paper.view(),
        _new_bow(),
        *(_sheet_dialog(each) for each in _by_hand()),
        _batch(),
        _reading(),
        _which_bow(),
        owner.dialog(),
        *photos.dialogs(),
        _remove_all(),
        element("div", {"class": "rb-toast", "role": "status"}),
    )


def _titles() -> str:
    return json.dumps({id: catalog.find(id).title for id in catalog.IDS}, separators=(",", ":"))


def _by_hand() -> list[Sheet]:
    asked = [each for each in sheets.SHEETS if each.id not in NOT_BY_HAND]
    return sorted(asked, key=lambda each: FIRST.index(each.id) if each.id in FIRST else len(FIRST))


def _list() -> Node:
    return element(
        "div", {"class": "rb-bows-all", "id": "all", "hidden": ""},
        element("p", {"class": "rb-bows-none"}, "No bow is kept in this browser yet."),
        element("ul", {"class": "rb-bows-list"}),
        element("div", {"class": "rb-bows-across"}),
        element("p", {"class": "rb-bows-backup"}),
        element("div", {"class": "rb-bows-actions"},
                doer("add", "Add a bow", "rb-main"), _file_taker(),
                doer("save-all", "Save all to one file"), doer("calendar-all", "Coats as a calendar file"),
                doer("week", "The week for the wall"),
                doer("remove-all", "Remove all my bows from this browser")),
        element("p", {"class": "rb-bows-kept"}),
        element("details", {"class": "rb-bows-bin"}, element("summary", {}, "Bows that you removed"),
                element("ul", {})),
    )


def _file_taker() -> Node:
    return element("label", {"class": "rb-bows-take"}, "Take in a file ",
                   element("input", {"type": "file", "accept": ".html,.json,text/html,application/json"}))


def _one() -> Node:
    return element(
        "div", {"class": "rb-bow", "hidden": ""},
        element("p", {}, element("a", {"href": "#all"}, "All bows")),
        element("h2", {"class": "rb-bow-title", "tabindex": "-1"}),
        element("div", {"class": "rb-bows-actions rb-bow-quick"},
                doer("quick-reading", "Reading", "rb-main"),
                doer("quick-batch", "Batch of strokes", "rb-main"),
                doer("photo", "Photo", "rb-main")),
        element("p", {"class": "rb-bow-weights"}),
        element("p", {"class": "rb-bow-next"}),
        element("p", {"class": "rb-bow-calculators"}),
        element("div", {"class": "rb-bow-checks"}),
        element("details", {"class": "rb-bow-sheets"}, element("summary", {}, "Write down something else"),
                element("div", {"class": "rb-bows-actions"},
                        *(_opener(each.id, each.title) for each in _by_hand()))),
        element("table", {"class": "rb-bow-columns"},
                element("caption", {}, "As it came, as agreed, and as last read"),
                element("thead", {}, element("tr", {}, *(element("th", {"scope": "col"}, head) for head in
                                                         ("Figure", "Came", "Agreed", "Now")))),
                element("tbody", {})),
        element("div", {"class": "rb-bow-returned"}),
        element("div", {"class": "rb-bow-charts"}),
        element("details", {"class": "rb-bow-job"},
                element("summary", {}, "Its calculators, in the order of the job"), element("ol", {})),
        element("details", {"class": "rb-bow-answers"}, element("summary", {}, "Answers kept"),
                element("ul", {})),
        element("div", {"class": "rb-bows-actions"},
                doer("tell", "Tell the owner"), doer("sheet", "Record sheet for print"),
                doer("card", "Tag card for print")),
        photos.part(),
        element("details", {"class": "rb-bow-timers"}, element("summary", {}, "Timers"), timer.for_bows()),
        element("h3", {}, "What was done and read"),
        element("ol", {"class": "rb-timeline"}),
        element("h3", {}, "Files"),
        element("div", {"class": "rb-bows-actions"},
                doer("save-file", "Save to a file"), doer("save-shared", "Save without the owner"),
                doer("save-table", "Readings as a table (CSV)"),
                doer("calendar", "Coats as a calendar file"), _file_taker(),
                doer("remove", "Remove this bow")),
    )


def _opener(sheet: str, title: str) -> Node:
    return element("button", {"type": "button", "data-open": sheet}, title)


# Forms of entries ----------------------------------------------------------------


def _new_bow() -> Node:
    known = {each.id: each for each in sheets.inputs_of(sheets.BOW)}
    asked = tuple(changed(known[id], label=label) for id, label in QUESTIONS)
    few = Sheet("new-bow", "Add a bow", "", "", (Group("", "", asked),), ())
    return _dialog("new-bow", "Add a bow", "Leave empty what you do not know. You can add it later.",
                   few, timed=False)


def _sheet_dialog(sheet: Sheet) -> Node:
    return _dialog(sheet.id, sheet.title, sheet.purpose + " Leave empty what you do not know.",
                   sheet._replace(id="sheet-" + sheet.id), timed=True)


def _dialog(name: str, title: str, purpose: str, sheet: Sheet, timed: bool) -> Node:
    heading = "rb-" + name + "-title"
    return element(
        "dialog", {"class": "rb-sheet", "data-sheet": name, "aria-labelledby": heading},
        element(
            "form", {"class": "rb-form", "novalidate": "", "autocomplete": "off"},
            element("h2", {"id": heading}, title),
            element("p", {"class": "rb-note"}, purpose),
            element("div", {"class": "rb-problems", "role": "alert", "tabindex": "-1", "hidden": ""}),
            *units(),
            *fieldsets(emptied(sheet)),
            *(when(name) if timed else []),
            closing(),
        ),
    )


# At the bench, with one finger ---------------------------------------------------


def _batch() -> Node:
    return _quick(
        "batch", "Batch of strokes",
        element("div", {"class": "rb-tiles"}, *(_tile(id, title) for id, title in TILES)),
        element("label", {"class": "rb-quick-line"}, "Paper ",
                element("input", {"type": "text", "name": "paper", "maxlength": "40"})),
        more=doer("save-and-measure", "Save, then read"),
    )


def _tile(fact: str, title: str) -> Node:
    return element(
        "div", {"class": "rb-tile", "data-fact": fact},
        element("button", {"type": "button", "data-add": "1", "class": "rb-tile-one"}, title + " ",
                element("output", {}, "0")),
        element("button", {"type": "button", "data-add": "-1", "aria-label": MINUS + "1 " + title},
                MINUS + "1"),
        element("button", {"type": "button", "data-add": "10", "aria-label": "+10 " + title}, "+10"),
    )


def _reading() -> Node:
    return _quick(
        "reading", "Reading",
        element("p", {"class": "rb-note"}, "Grey figures are the last read. Only what you touch is kept."),
        *(_stepper(fact, title) for fact, title in STEPPED),
        element("label", {"class": "rb-quick-line"}, "At a draw of ",
                element("input", {"type": "text", "name": "at_draw"})),
        element("p", {"class": "rb-foretold", "role": "status"}),
        below=element("details", {"class": "rb-quick-more"},
                      element("summary", {}, "The string off the middle; left is negative"),
                      *(_stepper(fact, title) for _, fact, title in PLACES)),
    )


def _stepper(fact: str, title: str) -> Node:
    return element(
        "div", {"class": "rb-stepper", "data-fact": fact},
        element("label", {"for": "rb-quick-" + fact}, title),
        element("button", {"type": "button", "data-step": "-1", "aria-label": MINUS + " " + title}, MINUS),
        element("input", {"id": "rb-quick-" + fact, "name": fact, "type": "text", "inputmode": "decimal"}),
        element("button", {"type": "button", "data-step": "1", "aria-label": "+ " + title}, "+"),
    )


def _quick(
    name: str, title: str, *parts: Node, more: Node | None = None, below: Node | None = None
) -> Node:
    heading = "rb-quick-" + name + "-title"
    return element(
        "dialog", {"class": "rb-quick", "data-quick": name, "aria-labelledby": heading},
        element(
            "form", {"novalidate": "", "autocomplete": "off"},
            element("h2", {"id": heading}, title),
            *parts,
            element("p", {"class": "rb-problems", "role": "alert", "hidden": ""}),
            element("div", {"class": "rb-quick-actions"}, doer("close", "Close"), more,
                    element("button", {"type": "submit", "class": "rb-main"}, "Save")),
            below,
        ),
    )


def _remove_all() -> Node:
    return element(
        "dialog", {"class": "rb-remove-all", "aria-labelledby": "rb-remove-all-title"},
        element("h2", {"id": "rb-remove-all-title"}, "Remove all bows?"),
        element("p", {}, "All bows, those you removed before, and what you began to type go from this "
                         "browser. Only a file can bring them back."),
        element("div", {"class": "rb-bows-actions"},
                doer("save-first", "Save to a file, then remove", "rb-main"),
                doer("without", "Remove without a file"), doer("neither", "Keep them")),
    )


def _which_bow() -> Node:
    return element(
        "dialog", {"class": "rb-which", "aria-labelledby": "rb-which-title"},
        element("h2", {"id": "rb-which-title"}, "You have a bow with this tag"),
        element("p", {}),
        element("div", {"class": "rb-bows-actions"},
                doer("other", "Keep as another bow"), doer("same", "It is the same bow"),
                doer("neither", "Take nothing in")),
    )
