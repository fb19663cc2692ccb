"""Declaring a sheet: a calculator without anything to compute."""

from collections import namedtuple

from calc.declaring import FACT as ROLE
from calc.declaring import Input, quantity

Sheet = namedtuple("Sheet", "id title purpose lasts groups private")
"""A kind of entry.

lasts: FACT (true until replaced), MOMENT (a reading) or DEED (changes the bow). groups: as a calculator's,
where the default of an input is its example, never a value. private: names of facts that leave the device
only in the bow's own file.
"""

FACT = "fact"
MOMENT = "moment"
DEED = "deed"

NOTE = "note"
"""The kind of an input that takes words."""

LONGEST_NOTE = 2000


def note(id: str, label: str, example: str, help: str = "") -> Input:
    """Declare an input that takes words."""
    return Input(id=id, label=label, kind=NOTE, default=example, low=0, high=LONGEST_NOTE, help=help,
                 optional=True, role=ROLE)


def measure(id: str, label: str, kind: str, example: str, low: str, high: str, help: str = "") -> Input:
    """Declare an input that takes a quantity or nothing; the bounds are texts with their unit."""
    return quantity(id, label, kind, default=example, low=low, high=high, help=help, optional=True)


def length(id: str, label: str, example: str, low: str, high: str, help: str = "") -> Input:
    """Declare an input that takes a length or nothing."""
    return measure(id, label, "length", example, low, high, help)
