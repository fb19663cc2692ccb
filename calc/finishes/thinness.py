"""How thin a finish is: one cup's seconds as those of every other cup."""

from calc.declaring import TRIAL, Group, Result, choice, group, quantity, result
from calc.outcome import TEXT, WATCH, Check, Column, Table, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop.viscosity import kinematic_viscosity, time_within
from calc.tables.viscosity_cups import CUPS, find

NO_CUP = "none"


def thinness_of(cup: str, seconds: float | None) -> float | None:
    """Return the kinematic viscosity [m2/s] by a cup's seconds, None without a cup."""
    if cup == NO_CUP or seconds is None:
        return None
    found = find(cup)
    if seconds <= found.offset + ROUNDING:
        return None
    return kinematic_viscosity(seconds, found.slope, found.offset)


def thinness_checks(cup: str, seconds: float | None) -> tuple[Check, ...]:
    """Return a caution where the seconds lie outside those that the cup is made for."""
    if cup == NO_CUP or seconds is None:
        return ()
    found = find(cup)
    if found.least - ROUNDING <= seconds <= found.most + ROUNDING:
        return ()
    way = "a smaller" if seconds < found.least else "a larger"
    return (check("cup", WATCH, sentence(
        found.name + " is made for {} to {}. Take a cup with " + way + " hole, or trust no figure here.",
        amount("seconds", found.least), amount("seconds", found.most))),)


def thinness_table(viscosity: float) -> Table:
    """Return the seconds of every cup for one liquid, nothing where a cup is not made for it."""
    return Table("cups", "The same liquid in other cups", (
        Column("cup", "Cup", TEXT), Column("seconds", "It runs empty in", "seconds"),
        Column("standard", "Standard", TEXT),
    ), tuple([(each.name, time_within(viscosity, each.slope, each.offset, each.least, each.most),
               each.standard) for each in CUPS]))


def thinness_group() -> Group:
    """Return the questions about how thin it is."""
    return group(
        "How thin it is, by a cup",
        choice("cup", "Cup of the sheet, or yours", ((NO_CUP, "None"),) + tuple(
            [(each.id, each.name) for each in CUPS]), role=TRIAL),
        quantity("cup_seconds", "It runs empty in", "seconds", default="25 s", low="1 s", high="200 s",
                 usual=("15 s", "80 s"),
                 help="From the open hole to the first break of the stream, 25 °C (77 °F).",
                 when=("cup", tuple([each.id for each in CUPS])), role=TRIAL),
        note="A sheet names one cup and you have another: the table gives the seconds of all.",
    )


THINNESS_RESULTS: tuple[Result, ...] = (
    result("viscosity", "Kinematic viscosity", "viscosity", "One mm2/s is one centistokes."),
)
