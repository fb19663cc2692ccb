"""What several calculators ask about the bow itself, declared once."""

from calc.fields import Group, Input, Refused, choice, group, quantity
from calc.mechanics.lever import half_string_length, tiller_per_stiffness_lost


def reading_inputs() -> tuple[Input, Input]:
    """Return the inputs that say where along the bow tiller is read."""
    return (
        choice(
            "measured",
            "Where the distances were taken",
            (
                ("fadeout", "At the two fadeouts"),
                ("string_end", "At equal distances from the string's end on each limb"),
            ),
            "Never from the tip overlays: their lengths differ.",
        ),
        quantity(
            "from_string_end", "Distance from the string's end", "length", "18 in", "6 in", "36 in",
            help="Along the string, the same on both limbs.", when=("measured", ("string_end",)),
        ),
    )


def measures(*more: Input) -> Group:
    """Return the group of a bow's main measures, with others in front of them."""
    return group(
        "The bow",
        *more,
        quantity(
            "brace_height", "Brace height", "length", "8 in", "3 in", "12 in", ("6 in", "9 1/2 in"),
            "From the string to the deepest point of the grip's throat.",
        ),
        quantity(
            "bow_length", "Bow length", "length", "60 in", "40 in", "80 in", ("48 in", "72 in"),
            "Nock to nock, along the belly of the unstrung bow.",
        ),
        quantity(
            "riser_length", "Riser length", "length", "18 in", "6 in", "34 in", ("12 in", "26 in"),
            "Fadeout to fadeout, where the limbs begin to bend.",
        ),
    )


def tiller_sensitivity(
    measured: str, from_string_end: float | None, brace_height: float, bow_length: float, riser_length: float
) -> float:
    """Return the change of tiller [m] per relative stiffness lost by the upper limb.

    Raises:
        Refused: the measures make no bow, or tiller hardly shows where it is read.
    """
    if riser_length > 0.6 * bow_length:
        raise Refused(
            "riser_length",
            "The riser is more than 60 % of the bow: measure it from fadeout to fadeout, and the bow from "
            "nock to nock.",
        )
    if brace_height > 0.6 * (bow_length - riser_length) / 2:
        raise Refused(
            "brace_height",
            "The brace height is more than 60 % of a limb's length: check it, the bow's length and the "
            "riser's.",
        )
    if measured == "fadeout":
        reading = riser_length / 2
    else:
        reading = half_string_length(bow_length, riser_length, brace_height) - (from_string_end or 0.0)
    if reading < 0.1 * bow_length / 2:
        raise Refused(
            "riser_length" if measured == "fadeout" else "from_string_end",
            "The reading is taken near the middle of the string, where tiller does not show: measure "
            "nearer to the string's ends.",
        )
    sensitivity = tiller_per_stiffness_lost(bow_length, riser_length, brace_height, reading)
    if sensitivity < 0.2 * bow_length / 60:
        raise Refused(
            "riser_length" if measured == "fadeout" else "from_string_end",
            "The reading is taken so near the string's ends that tiller hardly shows: measure nearer to "
            "the fadeouts.",
        )
    return sensitivity
