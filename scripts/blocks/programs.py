"""The page on which a reader scripts the package: its editor, and the programs it starts from.

A program stands on the page with what it prints, so that the page can be read without any script; the
editor takes its text from there.
"""

import contextlib
import io
import runpy
from collections import namedtuple
from functools import cache
from pathlib import Path

from scripts.blocks.tree import UNSEARCHED, Node, element

FOLDER = Path(__file__).parents[2] / "docs" / "calculators" / "examples"
OWN = "own"

Program = namedtuple("Program", "id title")
PROGRAMS = (
    Program("first-lines", "First lines"),
    Program("draw-curve", "Draw curve"),
    Program("thousandths", "Thousandths"),
    Program("ask-a-calculator", "Ask a calculator"),
)


def file_of(id: str) -> Path:
    """Return the file of a program.

    Raises:
        ValueError: there is no such program.
    """
    if id not in [each.id for each in PROGRAMS]:
        raise ValueError("no program is called " + id)
    return FOLDER / (id.replace("-", "_") + ".py")


@cache
def printed_by(id: str) -> str:
    """Run a program and return what it prints."""
    with contextlib.redirect_stdout(io.StringIO()) as printed:
        runpy.run_path(str(file_of(id)), run_name="__main__")
    return printed.getvalue()


def program(id: str) -> Node:
    """Return a program's text with what it prints."""
    file = file_of(id)
    address = "../examples/" + file.name
    return element(
        "div", {"class": "rb-program", "data-program": id, **UNSEARCHED},
        element("pre", {}, element("code", {"tabindex": "0"}, file.read_text(encoding="utf-8"))),
        element("p", {}, "It prints:"),
        element("pre", {}, element("code", {"tabindex": "0"}, printed_by(id))),
        element("p", {"class": "rb-program-file"},
                element("a", {"href": address, "download": file.name}, "This program as a file")),
    )


def editor() -> Node:
    """Return the editor, its buttons and the place for what is printed; the page's script shows it."""
    return element(
        "section", {"class": "rb-programs", "aria-label": "Run Python", "hidden": "", **UNSEARCHED},
        element("div", {"class": "rb-programs-openers", "role": "group", "aria-label": "Programs"},
                *(_opener(each.id, each.title) for each in PROGRAMS), _opener(OWN, "Your own")),
        element("label", {"for": "rb-programs-text"}, "Program"),
        element("textarea", {"id": "rb-programs-text", "rows": "16", "wrap": "off", "spellcheck": "false",
                             "autocomplete": "off", "autocapitalize": "off",
                             "aria-describedby": "rb-programs-hint"}),
        element("p", {"class": "rb-programs-hint", "id": "rb-programs-hint"},
                "Ctrl+Enter runs it. The Tab key leaves the box; indent with spaces. "
                "What you write stays in this browser."),
        element("div", {"class": "rb-programs-actions"},
                _doer("start", "Start Python"), _doer("run", "Run"), _doer("stop", "Stop"),
                _doer("restore", "Put the example back")),
        element("label", {"class": "rb-programs-bow", "hidden": ""},
                "Bow that open_bow() gives to the program ",
                element("select", {}, element("option", {"value": ""}, "None"))),
        element("p", {"class": "rb-programs-status", "role": "status"}),
        element("p", {"class": "rb-programs-label", "id": "rb-programs-log"}, "Printed"),
        element("pre", {"class": "rb-log", "role": "log", "tabindex": "0",
                        "aria-labelledby": "rb-programs-log"}),
    )


def _opener(id: str, title: str) -> Node:
    return element("button", {"type": "button", "data-open": id, "aria-pressed": "false"}, title)


def _doer(name: str, title: str) -> Node:
    return element("button", {"type": "button", "data-do": name}, title)
