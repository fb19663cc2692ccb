"""What holds: the pull that an insert or a wood screw bears in this wood."""

from calc.declaring import RULE, Group, Result, choice, group, names_of, quantity, result
from calc.inserts.holes import THREADED, WantedHole
from calc.outcome import TEXT, Column, Table
from calc.quantities import INCH
from calc.shop.fasteners import LEAD_HARD, lag_screw_withdrawal, lead_hole, screw_withdrawal
from calc.tables import drills, woods
from calc.tables.threads import machine_screw_major

OWN = "own"
ALLOWED = 0.2
"""Of the pull at which it comes out, for use (wood-handbook-fasteners)."""

SCREWS = (4, 5, 6, 7, 8, 9, 10, 12, 14)
THREAD_LENGTH = INCH / 2


def gravity_of(wood: str, own: float | None) -> float:
    """Return the specific gravity: dry mass over volume at 12 % moisture, as the handbook counts it."""
    if wood == OWN:
        return own or 0.0
    return woods.specific_gravity(woods.find(wood))


def pull_out(hole: WantedHole, gravity: float, length: float) -> float | None:
    """Return the pull [N] at which an insert with an outside thread comes out; None for a pressed one."""
    return lag_screw_withdrawal(gravity, hole.outside, length) if hole.fit == THREADED else None


def screw_table(gravity: float, sizes: tuple[drills.Drill, ...]) -> Table:
    """Return what wood screws bear in this wood, with the hole that each asks for."""
    lines = []
    for number in SCREWS:
        diameter = machine_screw_major(number) * INCH
        lead = lead_hole(diameter, LEAD_HARD)
        pull = screw_withdrawal(gravity, diameter, THREAD_LENGTH)
        lines.append(("#" + str(number), diameter, lead, drills.nearest(lead, sizes).name, pull,
                      ALLOWED * pull))
    return Table("screws", "Wood screws straight into this wood, 1/2 in (12.7 mm) of thread in side grain", (
        Column("screw", "Wood screw", TEXT), Column("diameter", "Shank", "thickness"),
        Column("lead", "Lead hole, hard wood", "thickness"), Column("drill", "Drill", TEXT),
        Column("pull", "Comes out at", "force"), Column("allowed", "Count on, a fifth", "force"),
    ), tuple(lines))


def wood_group() -> Group:
    """Return the questions about the wood."""
    return group(
        "The wood",
        choice("wood", "Wood of the riser",
               names_of([woods.find(id) for id in woods.RISER_WOODS])
               + ((OWN, "Another, by its specific gravity"),),
               default="black-walnut"),
        quantity("gravity", "Specific gravity", "number", default="0.60", low="0.2", high="1.3",
                 usual=("0.4", "1.0"), help="Dry mass over volume, as tables of woods give it.",
                 when=("wood", (OWN,)), role=RULE),
    )


HOLDING_RESULTS: tuple[Result, ...] = (
    result("pull_out", "Insert comes out at about", "force",
           "As a lag screw, an upper guess; only for an insert that is screwed in."),
    result("pull_allowed", "Count on, a fifth of it", "force"),
)
