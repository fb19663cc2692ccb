"""How well weight, tiller, thickness and glass are read: asked alike wherever a range is stated, and what
comes of it shown alike.
"""

from calc.declaring import RULE, SHOP, Group, Input, Result, group, quantity, result
from calc.numerics.normal import NORMAL_95
from calc.outcome import Line, Sentence, amount, sentence


class ReadingErrors:
    """One standard error each of a weight [N], a tiller [m], a thickness [m], a face's glass [m], and of the
    core's modulus beside that of the glass [1].
    """

    def __init__(self, weight: float, tiller: float, thickness: float, glass: float, core: float) -> None:
        self.weight = weight
        self.tiller = tiller
        self.thickness = thickness
        self.glass = glass
        self.core = core

    @property
    def taken(self) -> float:
        """Of what is taken off a limb [m]: the difference of two readings of its thickness."""
        return float(self.thickness * 2**0.5)


TITLE = "How well you read"


def weight_error() -> Input:
    """Return the input for the error of a weight."""
    return quantity("weight_error", "Error of a weight", "force", default="1/4 lb", low="0.02 lb",
                    high="3 lb", usual=("0.05 lb", "1 lb"),
                    help="Half of the scale's smallest mark or more.", role=SHOP)


def _by_scale_and_rule() -> tuple[Input, Input]:
    """Return the inputs for the error of a weight and of a tiller."""
    return (
        weight_error(),
        quantity("tiller_error", "Error of a tiller", "length", default="1/32 in", low="1/200 in",
                 high="1/4 in", usual=("1/100 in", "1/16 in"), help="Of upper minus lower.", role=SHOP),
    )


def reading_error(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the input for the error of one reading of weight at draw."""
    return quantity("reading_error", "Error of one reading", "force", default="1/8 lb", low="0 lb",
                    high="3 lb", usual=("0 lb", "1 lb"),
                    help="Half of the scale's smallest mark or more; 0 takes readings as they are.",
                    when=when, role=SHOP)


def thickness_error(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the input for the error of a thickness."""
    return quantity("thickness_error", "Error of a thickness", "thickness", default="0.0005 in", low="0 in",
                    high="0.010 in", usual=("0 in", "0.002 in"), help="Of one reading.", when=when, role=SHOP)


def how_strokes_are_read() -> Group:
    """Return the group of the errors of a weight and a tiller."""
    return group(TITLE, *_by_scale_and_rule())


def how_well_read(*more: Input) -> Group:
    """Return the group of the errors that a plan leans on, with others behind them."""
    return group(
        TITLE,
        *_by_scale_and_rule(),
        thickness_error(),
        quantity("glass_error", "Error of a face's glass", "thickness", default="0.003 in", low="0 in",
                 high="0.015 in", usual=("0.001 in", "0.005 in"),
                 help="Read at the limb's edge with a lens; less where several places agree.", role=SHOP),
        quantity("core_error", "Doubt about the core", "ratio", default="10 %", low="0 %", high="40 %",
                 usual=("5 %", "20 %"), help="Of its modulus beside that of the glass.", role=RULE),
        *more,
        note="One standard error each: two readings in three lie within it.",
    )


def give_or_take(id: str, kind: str) -> Result:
    """Return the declared half of a result's range of 95 %."""
    return result(id, "give or take", kind, "Half of the 95 % range, from how well you read.")


def with_range(kind: str, value: float, error: float | None) -> Sentence:
    """Return a value with its range of 95 % in brackets; alone where its standard error is not known."""
    if error is None:
        return sentence("{}", amount(kind, value))
    return sentence("{} ({} to {})", amount(kind, value), amount(kind, value - NORMAL_95 * error),
                    amount(kind, value + NORMAL_95 * error))


def band(line: Line, share: float) -> tuple[Line, ...]:
    """Return the ends of the range along a computed curve. share [1]: standard error, the same all along."""
    part = NORMAL_95 * share
    return (Line(line.label + ", at least", "line", line.xs, [max(0.0, y * (1 - part)) for y in line.ys]),
            Line(line.label + ", at most", "line", line.xs, [y * (1 + part) for y in line.ys]))
