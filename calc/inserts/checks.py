"""What is said of a hole: wall, bit, drill, screw, edge and spacing."""

from calc.inserts.holes import FIT_ERROR, PRESS, Depths, Screw, WantedHole, drill_for, widest
from calc.outcome import OK, STOP, WATCH, Check, amount, check, sentence
from calc.quantities import ROUNDING
from calc.shop import drilling
from calc.tables import drills


def wall_check(depths: Depths, least: float) -> Check:
    """Return whether enough wall stays."""
    if depths.wall <= ROUNDING:
        return check("breakthrough", STOP, sentence(
            "The point comes out at the far side: {} to it, in wood of {}. A shorter insert, a flatter point "
            "or another place.", amount("thickness", depths.tip),
            amount("thickness", depths.tip + depths.wall)))
    if depths.worst <= ROUNDING:
        return check("breakthrough", STOP, sentence(
            "The point can break through: {} of wood by the measures, and they may be out by {}. A shorter "
            "insert, a flatter point or another place.", amount("thickness", depths.wall),
            amount("thickness", depths.wall - depths.worst)))
    if depths.worst < least - ROUNDING:
        return check("breakthrough", WATCH, sentence(
            "In the worst case {} of wood stays, less than the {} you ask for.",
            amount("thickness", depths.worst), amount("thickness", least)))
    return check("breakthrough", OK, sentence(
        "In the worst case {} of wood stays; you ask for {}.", amount("thickness", depths.worst),
        amount("thickness", least)))


def bit_check(bit: float, hole: WantedHole) -> Check:
    """Return whether the bit makes the hole that the insert asks for."""
    texts = (amount("thickness", bit), amount("thickness", hole.wanted))
    own = amount("thickness", hole.outside)
    if bit > hole.outside - ROUNDING:
        return check("bit", STOP, sentence(
            "The bit of {} leaves nothing for an insert of {} to hold in: its hole should be {}. Another "
            "bit.", texts[0], own, texts[1]))
    if bit > widest(hole) + ROUNDING:
        left = sentence(
            "The bit of {} leaves an insert of {} only {} to hold by, of the {} it asks for"
            + (": it will sit loose" if hole.fit == PRESS else ", on both sides of its thread together")
            + ". A narrower one; try it in scrap of the same wood.", texts[0], own,
            amount("thickness", hole.outside - bit, 4), amount("thickness", hole.outside - hole.wanted, 4))
        return check("bit", WATCH, left)
    if bit < hole.wanted - FIT_ERROR - ROUNDING:
        return check("bit", WATCH, sentence(
            "The bit of {} is narrower than the hole of {} that the insert asks for: forcing it in can "
            "split the riser. Try it in scrap of the same wood.", *texts))
    return check("bit", OK, sentence("The bit of {} suits the hole of {}, for an insert of {}.", *texts, own))


def drill_checks(
    drill: drills.Drill | None, hole: WantedHole, others: tuple[drills.Drill, ...]
) -> tuple[Check, ...]:
    """Return a caution where no drill at hand suits the hole, with what the other set of drills has."""
    if drill is not None and drill.diameter >= hole.wanted - FIT_ERROR - ROUNDING:
        return ()
    other = drill_for(hole, others)
    if other is not None and other.diameter < hole.wanted - FIT_ERROR - ROUNDING:
        other = None
    if drill is None and other is None:
        return ()
    words = ("No drill at hand suits the hole" if drill is None else
             "Of the drills at hand the widest in which the insert holds is " + drill.name + ", and it is "
             "far narrower than the hole")
    return (check("drill", WATCH, sentence(
        words + " of {}." + ("" if other is None else " " + other.name + " would suit it, {}."),
        amount("thickness", hole.wanted),
        *([] if other is None else [amount("thickness", other.diameter)]))),)


def screw_checks(screw: Screw, shoulder: float, insert_length: float) -> tuple[Check, ...]:
    """Return whether the screw that will go in stays off the bottom of the hole and has thread to hold by."""
    if screw.length is None:
        return ()
    length, longest = amount("thickness", screw.length), amount("thickness", screw.longest)
    if screw.reach > shoulder + ROUNDING:
        return (check("screw", STOP, sentence(
            "A screw of {} goes {} into a hole {} deep: it meets the bottom like a jack and pushes the "
            "insert out, or breaks the wall behind. At most {} under its head.", length,
            amount("thickness", screw.reach), amount("thickness", shoulder), longest)),)
    if screw.length > screw.longest + ROUNDING:
        return (check("screw", WATCH, sentence(
            "A screw of {} can meet the bottom of the hole if the measures err. At most {} under its head.",
            length, longest)),)
    holds = min(screw.reach, insert_length)
    if holds < screw.major - ROUNDING:
        return (check("screw", WATCH, sentence(
            "A screw of {} has only {} of thread to hold by; one diameter of it, {}, is the least. The "
            "longest that may go in is {}.", length, amount("thickness", max(0.0, holds)),
            amount("thickness", screw.major), longest)),)
    return (check("screw", OK, sentence(
        "A screw of {} has {} of thread to hold by and stays off the bottom; at most {} under its head.",
        length, amount("thickness", holds), longest)),)


def edge_checks(edge: float | None, outside: float, shoulder: float) -> tuple[Check, ...]:
    """Return whether there is wood beside the insert, judged by its own outside or by a wider bit."""
    if edge is None:
        return ()
    least = drilling.least_edge_distance(outside, shoulder, 0.0)
    wall = edge - outside / 2
    if wall <= ROUNDING:
        return (check("edge", STOP, sentence(
            "The hole breaks out at the side: its middle is {} from the edge and half the insert is {}.",
            amount("thickness", edge), amount("thickness", outside / 2))),)
    if edge < least - ROUNDING:
        return (check("edge", WATCH, sentence(
            "The hole's middle is {} from the edge and leaves {} of wood beside the insert; timber design "
            "asks for "
            "{} from the middle, one diameter of wood.", amount("thickness", edge),
            amount("thickness", wall), amount("thickness", least))),)
    return (check("edge", OK, sentence(
        "The hole's middle is {} from the edge; timber design asks for {}.", amount("thickness", edge),
        amount("thickness", least))),)


def spacing_checks(
    spacing: float | None, outside: float | None, inside: float | None, wanted: float, tolerance: float,
    bit: float,
) -> tuple[Check, ...]:
    """Return whether the holes stand as far apart as they should."""
    if spacing is None or outside is None or inside is None:
        return ()
    off = abs(spacing - wanted)
    found = []
    if off <= tolerance + ROUNDING:
        found.append(check("spacing", OK, sentence(
            "The holes stand {} apart, within {} of {}.", amount("thickness", spacing),
            amount("thickness", tolerance), amount("thickness", wanted))))
    else:
        found.append(check("spacing", WATCH, sentence(
            "The holes stand {} apart, {} away from {}: a bracket with round holes will not go on.",
            amount("thickness", spacing), amount("thickness", off), amount("thickness", wanted))))
    measured = drilling.hole_from_edges(outside, inside)
    if abs(measured - bit) > tolerance + ROUNDING:
        found.append(check("edges", WATCH, sentence(
            "The two measures make holes of {}, and the bit is {}: measure again, edge to edge.",
            amount("thickness", measured), amount("thickness", bit))))
    return tuple(found)
