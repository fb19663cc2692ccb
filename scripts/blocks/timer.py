"""Timers for waits at the bench: what starts one, and the place where those that run are shown."""

from calc.tables.waits import HOUR, LONGEST, MINUTE, WAITS, Wait, find
from scripts.blocks.tree import UNSEARCHED, Node, element

HONEST = ("It sounds only while a page of this site is open and the device awake. Closed or asleep it stays "
          "silent and tells afterwards when the time was over.")


def section(ids: str) -> Node:
    """Return what starts the timers of some waits, and shows all that run."""
    return _section([find(each) for each in ids.split()], asked=False)


def for_bows() -> Node:
    """Return the same for the page of bows, where no calculator says how long a wait is."""
    return _section(list(WAITS), asked=True)


def _section(waits: list[Wait], asked: bool) -> Node:
    return element(
        "div", {"class": "rb-timer", "data-longest": str(LONGEST), **UNSEARCHED},
        *(_starter(each, asked) for each in waits),
        element("p", {"class": "rb-timer-said", "role": "status"}),
        element("ul", {"class": "rb-timers"}),
        element("p", {"class": "rb-note"}, HONEST),
    )


def _starter(wait: Wait, asked: bool) -> Node:
    """Return the button of a wait; with fields where its length is to be typed."""
    fields = wait.status == "assumption to edit" or (asked and wait.result != "")
    start = wait.seconds or 0
    hours, minutes = divmod(start // MINUTE, 60)
    return element(
        "div", {"class": "rb-timer-start", "data-wait": wait.id, "data-title": wait.title,
                "data-after": wait.after, "data-seconds": str(start),
                "data-result": None if asked else wait.result or None},
        *([_field("Hours", "hours", hours, LONGEST // HOUR),
           _field("Minutes", "minutes", minutes, 59)] if fields else []),
        element("button", {"type": "button", "disabled": ""},  # until the script is there that heeds it
                "Start a timer: " + wait.title[:1].lower() + wait.title[1:]),
    )


def _field(label: str, name: str, value: int, most: int) -> Node:
    return element("label", {}, label + " ",
                   element("input", {"type": "number", "name": name, "min": "0", "max": str(most),
                                     "step": "1", "inputmode": "numeric", "value": str(value)}))
