"""The stiffness that the trade would choose for an arrow, built up cause by cause from the bow's weight."""

from calc.outcome import TEXT, WATCH, Check, Column, Refused, Table, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop import spine_choice


class Cause:
    """What asks for a stiffer shaft or a weaker one: whether it counts, by which share of the spine, why."""

    def __init__(self, name: str, counted: bool, share: float, reason: str) -> None:
        self.name = name
        self.reason = reason if counted else "left out"
        self.share = share if counted else 0.0


def causes_of(
    length: float, front: float, string_material: str, window: str, counted: tuple[bool, bool, bool, bool],
    shares: tuple[float, float, float, float],
) -> tuple[Cause, ...]:
    """Return what asks for more spine or less beside the weight at the draw.

    counted, shares: of shaft (a power of its length), point, string and window.
    """
    power, point, string, cut = shares
    return (
        Cause("The shaft", counted[0], spine_choice.share_for_length(length, power),
              "a longer one buckles and swings more easily"),
        Cause("The point", counted[1], spine_choice.share_for_point(front, point),
              "the shaft has to push it, and bends more for a heavy one"),
        Cause("The string", counted[2], spine_choice.share_for_string(string_material, string),
              "one that hardly stretches starts the arrow harder"),
        Cause("The window", counted[3], spine_choice.share_for_window(window, cut),
              "the less it is cut, the more the arrow has to bend round the bow"),
    )


def middle_of(draw_weight: float, causes: tuple[Cause, ...]) -> float:
    """Return the spine weight in the middle of the range that the trade would choose [N]."""
    middle = draw_weight
    for each in causes:
        middle *= 1.0 + each.share
    return middle


def wanted_spine(draw_weight: float, causes: tuple[Cause, ...]) -> tuple[float, float]:
    """Return the least and the most spine weight that the trade would choose [N]."""
    middle = middle_of(draw_weight, causes)
    if middle <= 2 * spine_choice.HALF_CLASS:
        raise Refused("draw_length", "For so light a draw with such a short or light-pointed arrow the rules "
                      "of the trade give no stiffness. Switch causes off, or check draw and lengths.")
    return middle - spine_choice.HALF_CLASS, middle + spine_choice.HALF_CLASS


def build_table(
    marked_weight: float, draw_weight: float, standing: str, causes: tuple[Cause, ...]
) -> Table:
    """Return how the range is built: what each cause adds to what the ones before it came to."""
    rows: list[tuple[str, float | str, float, float, str]] = [
        ("The bow", "", marked_weight, marked_weight, "its weight at the marked draw"),
        ("The draw", draw_weight / marked_weight - 1.0, draw_weight - marked_weight, draw_weight, standing),
    ]
    reached = draw_weight
    for each in causes:
        added = reached * each.share
        reached += added
        rows.append((each.name, each.share, added, reached, each.reason))
    return Table("contributions", "How the middle of the range is built, bow after the work", (
        Column("what", "Cause", TEXT), Column("share", "Its share", "ratio"),
        Column("weight", "It brings", "force"), Column("reached", "Spine so far", "force"),
        Column("status", "Because", TEXT),
    ), tuple(rows))


def practice_checks(draw_weight: float, causes: tuple[Cause, ...]) -> tuple[Check, ...]:
    """Return cautions where the trade's rules are stretched beyond the bows and shafts they come from."""
    found = []
    middle = middle_of(draw_weight, causes)
    fixed = draw_weight + spine_choice.RULE_WEIGHT * sum([each.share for each in causes])
    ruled = draw_weight * (1 + ROUNDING) >= spine_choice.LIGHTEST_RULED and (
        draw_weight <= spine_choice.HEAVIEST_RULED * (1 + ROUNDING))
    if not ruled and abs(middle - fixed) > spine_choice.HALF_CLASS:
        found.append(check("rules", WATCH, sentence(
            "The trade tells these corrections in fixed pounds, for bows of {} to {}; there the middle of "
            "the range would be {}, and scaled with this bow's weight it is {}. Buy one shaft of each and "
            "let a bare shaft decide.",
            amount("force", spine_choice.LIGHTEST_RULED, 0), amount("force", spine_choice.HEAVIEST_RULED, 0),
            amount("force", fixed), amount("force", middle))))
    if not spine_choice.WEAKEST_STOCKED <= middle <= spine_choice.STIFFEST_STOCKED:
        found.append(check("stock", WATCH, sentence(
            "Wooden shafts are offered from {} to {} of spine; beyond, practice has few figures. Take the "
            "range as a guess.",
            amount("force", spine_choice.WEAKEST_STOCKED, 0),
            amount("force", spine_choice.STIFFEST_STOCKED, 0))))
    return tuple(found)
