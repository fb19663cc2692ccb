"""Waits at the bench that a timer counts: how long, and what their end says and does not say."""

from collections import namedtuple

Wait = namedtuple("Wait", "id title seconds result after source status")
"""One wait.

seconds: how long; None where it is the answer of a calculator. result: the result that says it, or empty.
after: what to do once it is over.
"""

MINUTE = 60
HOUR = 3600
LONGEST = 14 * 24 * HOUR
"""[s] that a timer counts at most."""

WAITS = (
    Wait("brace", "Ten minutes at brace", 10 * MINUTE, "",
         "Look at it from the side, not in line with a limb, and read the brace height again.",
         "bench-practice", "common practice"),
    Wait("glue", "Glue", 24 * HOUR, "",
         "The sheet of the glue comes first: in the cold it takes longer. Then take the clamp off.",
         "bench-practice", "assumption to edit"),
    Wait("air", "Clearing the air", None, "minutes_999",
         "That is arithmetic. It does not say that the air is fit to breathe.",
         "bench-practice", "common practice"),
)


def find(id: str) -> Wait:
    """Return the wait of an id.

    Raises:
        ValueError: there is none.
    """
    for each in WAITS:
        if each.id == id:
            return each
    raise ValueError("there is no wait called " + id)
