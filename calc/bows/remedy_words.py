"""What is said of remedies for a string that lies aside, and of limbs that may turn over."""

from calc.bows.line import EDGE, GROOVE, LEAST_SHARE, TORSION_KNOWN, WEDGE
from calc.bows.remedies import MOST, STEP, Bench, Limits, Remedy, Seen, least_of
from calc.outcome import OK, STOP, TEXT, WATCH, Check, Column, Sentence, Table, amount, check, sentence
from calc.quantities import ROUNDING

NAMES = ("upper", "lower")
SAFE_SHARE = 0.6
"""Of the reckoned torsional stiffness: a limb that would turn over with more than this is watched (assumption
to edit)."""

STICKS_AGREE = 1.0
"""Degrees by which two sticks on a limb can be read at best, both rounds together."""


def remedy_tables(found: list[Remedy]) -> tuple[Table, Table]:
    """Return where the string would run after each remedy, and what the most of each does besides."""
    line, besides = [], []
    for each in found:
        named = NAMES[each.which], _WORK[each.kind] + each.side, each.amount
        line.append(named + (each.offset.middle, each.offset.low, each.offset.high,
                             "yes" if each.within else "no"))
        if each.amount == max([other.amount for other in found
                               if (other.which, other.kind) == (each.which, each.kind)]):
            besides.append(named + (
                each.twist.middle, each.twist.low, each.twist.high, each.weight, each.tiller,
                "" if each.glass is None else amount("thickness", each.glass)))
    first = (Column("limb", "Limb", TEXT), Column("remedy", "Remedy", TEXT),
             Column("amount", "Amount", "thickness"))
    return (
        Table("remedies", "Where the string would run after each remedy alone; right is positive", first + (
            Column("offset", "String at the fadeout", "thickness"),
            Column("offset_least", "at least", "thickness"),
            Column("offset_most", "at most", "thickness"), Column("within", "Accepted", TEXT),
        ), tuple(line)),
        Table("remedies-besides", "What the most of each remedy does besides; less of it does less", first + (
            Column("twist", "Twist", "angle"), Column("twist_least", "at least", "angle"),
            Column("twist_most", "at most", "angle"), Column("weight", "Weight", "force"),
            Column("tiller", "Tiller", "thickness"), Column("glass", "Glass at that edge", TEXT),
        ), tuple(besides)),
    )


_WORK = {GROOVE: "groove to the ", WEDGE: "wedge, off the ", EDGE: "edge, off the "}


def side_of(offset: float) -> str:
    """Return to which side an offset lies."""
    return "right" if offset > 0 else "left"


def chosen(found: list[Remedy]) -> Remedy | None:
    """Return the least remedy that is enough, the cheapest kind first."""
    for kind in (GROOVE, WEDGE, EDGE):
        each = least_of(found, kind)
        if each is not None:
            return each
    return None


def remedy_words(each: Remedy, face: str) -> Sentence:
    """Return a remedy as something to do."""
    name, size = NAMES[each.which], amount("thickness", each.amount)
    if each.kind == GROOVE:
        return sentence("move the " + name + " groove {} to the " + each.side, size)
    if each.kind == WEDGE:
        return sentence("take a wedge of {} off the " + face + " of the " + name + " limb, deepest at its "
                        + each.side + " edge", size)
    return sentence("take {} off the " + each.side + " edge of the " + name + " limb", size)


def remedy_check(
    which: int, seen: Seen, limits: Limits, found: list[Remedy], bench: Bench
) -> Check:
    """Return what the model has to say on mending one limb."""
    name = NAMES[which]
    if limits.excess(seen) == 0.0:
        return check(name + "-remedy", OK, sentence(
            "The " + name + " limb is within what is accepted, {} at the fadeout and {} of twist: no remedy.",
            amount("length", limits.offset), amount("angle", limits.twist)))
    best = chosen(found)
    if best is None:
        return check(name + "-remedy", STOP, sentence(
            "No single remedy brings the " + name + " limb within {} at the fadeout and {} of twist: not the "
            "groove by {}, nor a wedge of {} within the glass, nor {} of an edge. Sanding cannot mend this; "
            "look for the cause, and let somebody experienced see it.",
            amount("length", limits.offset), amount("angle", limits.twist),
            amount("thickness", MOST[GROOVE] * STEP[GROOVE]),
            amount("thickness", bench.most(WEDGE) * STEP[WEDGE]),
            amount("thickness", MOST[EDGE] * STEP[EDGE])))
    what = remedy_words(best, bench.stretch.face)
    return check(name + "-remedy", WATCH, sentence(
        "By the model the least remedy for the " + name + " limb: " + what.template + ". At the fadeout the "
        "string is then {} to the " + side_of(best.offset.middle) + ", and the twist is {}; weight changes "
        "by {} and tiller by {}.", *what.amounts,
        amount("thickness", abs(best.offset.middle)), amount("angle", abs(best.twist.middle)),
        amount("force", best.weight, 2), amount("thickness", best.tiller)))


def stick_checks(which: int, seen: Seen, unstrung: float | None, braced: float | None) -> tuple[Check, ...]:
    """Return what the twist read by two sticks says beside that read off the string [deg]."""
    name, found = NAMES[which], []
    if braced is not None and abs(braced - seen.twist()) > STICKS_AGREE + seen.doubt() + ROUNDING:
        found.append(check(name + "-sticks", WATCH, sentence(
            "On the " + name + " limb the sticks show {} of twist, the string {}: the limb sweeps aside, or "
            "a middle is marked wrong. Read both again.",
            amount("angle", braced), amount("angle", seen.twist()))))
    if unstrung is not None:
        strung = seen.twist() if braced is None else braced
        turned = strung - unstrung
        doubt = STICKS_AGREE + (seen.doubt() if braced is None else 0.0)
        if abs(turned) > doubt + ROUNDING:
            found.append(check(name + "-turning", WATCH, sentence(
                "The " + name + " limb has {} of twist unstrung and {} braced: it turns under load, which "
                "groove, wedge and edge change.", amount("angle", unstrung), amount("angle", strung))))
        else:
            found.append(check(name + "-turning", OK, sentence(
                "The " + name + " limb has {} of twist unstrung and {} braced: it is as it was glued or has "
                "set so, and does not turn under load.", amount("angle", unstrung), amount("angle", strung))))
    return tuple(found)


def buckling_check(share: float) -> Check:
    """Return whether both limbs stand sideways, from the least share of their torsion that holds them."""
    shown = amount("ratio", share)
    if share > 1.0 - TORSION_KNOWN + ROUNDING:
        return check("buckling", STOP, sentence(
            "By the model a limb turns over, braced or at full draw, with less than {} of the torsional "
            "stiffness reckoned for it, and that is known to a quarter only. Do not draw this bow; check "
            "sections and glass, and let somebody experienced see it. No remedy is worked out.", shown))
    level = OK if share <= SAFE_SHARE + ROUNDING else WATCH
    if share < 1.01 * LEAST_SHARE:
        return check("buckling", OK, sentence("Both limbs stand sideways, braced and at full draw, even with "
                                              "{} of the torsional stiffness reckoned.", shown))
    return check("buckling", level, sentence(
        "Both limbs stand sideways, braced and at full draw, down to {} of the torsional stiffness reckoned; "
        "thinner or narrower limbs come nearer to turning over.", shown))
