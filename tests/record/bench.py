"""An invented bow's record, entry by entry, for the tests."""

from calc.record.entries import Entry, entry_id
from calc.record.fold import State
from calc.tables.findings import LOOKS

LOOKED = {each.id: "yes" for each in LOOKS}

PRODUCT = {"family": "one-part-urethane", "recoat_from": "4 h", "recoat_to": "24 h", "cure": "14 d",
           "lettering_dry": "12 h", "least_temperature": "55 °F"}
"""The sheet of an invented can; its times are for 25 °C, 77 °F."""


class Bench:
    """Writes entries a minute apart, on days of May 2026."""

    def __init__(self):
        self.entries = []

    def write(self, sheet, day=5, replaces="", **facts):
        number = len(self.entries) + 1
        at = f"2026-05-{day:02}T{9 + number // 60:02}:{number % 60:02}+02:00"
        entry = Entry(entry_id(number, 0), at, sheet, tuple(facts.items()), replaces=replaces)
        self.entries.append(entry)
        return entry

    @property
    def state(self):
        return State(self.entries)

    def came_in(self):
        """The bow as it came: looked over, drawn from a distance, measured, agreed."""
        self.write("bow", tag="31", title="64 in recurve", family="recurve", tips="plain", length="64 in")
        self.write("look", **LOOKED)
        self.write("first_draw", to_draw="28 in", from_distance="yes", full="yes")
        self.write("reading", weight="53 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in",
                   glass_back="0.043 in", glass_belly="0.043 in")
        self.write("agreed", weight="45 lb", at_draw="28 in", tiller="1/16 in", reserve="1 lb",
                   least_glass="60 %")
        return self


def coat(bench, at, sheet="coat", **facts):
    """Write down a coat or the lettering; at: as 05T10:00, of May 2026."""
    usual = {"took": "1 h", "temperature": "77 °F"} if sheet == "coat" else {}
    entry = bench.write(sheet, **{**usual, **facts})
    entry.at = f"2026-05-{at}+02:00"
    return entry


def to_finish(bench):
    """Three build coats of an invented can, lettered between the second and the third."""
    bench.write("product", **PRODUCT)
    bench.write("coats", seal_coats="0", build_coats="2", over_coats="1", sheen_coats="0")
    bench.write("agreed", weight="45 lb", at_draw="28 in", lettered="yes")
    return bench
