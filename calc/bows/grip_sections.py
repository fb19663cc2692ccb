"""The grip as sections: what the drawn string does to each, before and after the work."""

import math
from collections import namedtuple

from calc.bows.lengths import BEYOND_PIVOT
from calc.mechanics import riser, sections
from calc.outcome import Refused

MODULUS_AND_AREA = {"rounded": (math.pi / 32, math.pi / 4), "square": (1 / 6, 1.0)}
"""Of each shape: section modulus over width times depth squared, area over width times depth."""

Place = namedtuple("Place", "height before after")
Size = namedtuple("Size", "width depth")


class Load:
    """The pull on the riser: force, tension, thrust [N], the string's angle [rad] and its reach [m]."""

    def __init__(self, force: float, angle: float, reach: float, tension: float, thrust: float) -> None:
        self.force = force
        self.angle = angle
        self.reach = reach
        self.tension = tension
        self.thrust = thrust


Hole = namedtuple("Hole", "runs diameter height from_back")

Strength = namedtuple("Strength", "name height size before after hole least equal")
"""One section: stress before and after [Pa], least depth for the factor and for the margin it had [m]."""


def pull_of(
    force: float, draw_length: float, between: float | None, brace_height: float, bow_length: float,
    riser_length: float,
) -> Load:
    """Return what the string does to the riser at full draw."""
    reach = draw_length - BEYOND_PIVOT
    if between is not None:
        angle = math.radians(90.0 - between / 2)
    else:
        try:
            angle = riser.string_angle_at_draw(bow_length, riser_length, brace_height, reach)
        except ValueError:
            raise Refused("draw_length", "A bow of these measures cannot be drawn so far. Check draw, brace "
                          "height, bow length and riser length.") from None
    tension = riser.string_tension(force, angle)
    return Load(force, angle, reach, tension, tension * math.cos(angle))


def scaled(pull: Load, factor: float) -> Load:
    """Return the pull of the same bow, drawn as far, at another draw weight."""
    return Load(pull.force * factor, pull.angle, pull.reach, pull.tension * factor, pull.thrust * factor)


def _moment(pull: Load, height: float, depth: float) -> float:
    return riser.bending_moment(pull.force, pull.angle, pull.reach, height, depth / 2)


def stations_of_grip(
    before: tuple[tuple[float, float, float], ...], after: tuple[tuple[float, float], ...]
) -> tuple[Place, ...]:
    """Return the sections before and after the work, in order."""
    if len(before) != len(after):
        raise Refused("after", "Give as many sections after the work as before it, in the same order; there "
                      "are " + str(len(before)) + " before and " + str(len(after)) + " after.")
    found: list[Place] = []
    for index, (height, width, depth) in enumerate(before):
        new = Size(*after[index])
        number = str(index + 1)
        if found and height <= found[-1].height:
            raise Refused("before", "Section " + number + " must lie further from the throat than the one "
                          "ahead of it: put the sections in order.", index, "height")
        if new.width > width:
            raise Refused("after", "Section " + number + " is wider after than before: swap the two.",
                          index, "width")
        if new.depth > depth:
            raise Refused("after", "Section " + number + " is deeper after than before: swap the two.",
                          index, "depth")
        found.append(Place(height, Size(width, depth), new))
    return tuple(found)


def _section(shape: str, size: Size) -> sections.Section:
    if shape == "rounded":
        area = sections.ellipse_area(size.width, size.depth)
        second_moment = sections.ellipse_second_moment_of_area(size.width, size.depth)
    else:
        area = sections.rectangle_area(size.width, size.depth)
        second_moment = sections.rectangle_second_moment_of_area(size.width, size.depth)
    return sections.Section(area, second_moment, size.depth / 2)


def _stress(section: sections.Section, pull: Load, height: float, depth: float) -> float:
    """Return the largest stress: the bending stress at the farther face and the thrust of the string."""
    modulus = sections.section_modulus(section.second_moment_of_area, section.distance_to_face)
    return float(_moment(pull, height, depth) / modulus + pull.thrust / section.area)


def strength_at(
    name: str, place: Place, shape: str, lived: Load, pull: Load, allowed: float
) -> Strength:
    """Return a section's stress before and after, and the depths that it asks for."""
    if _moment(pull, place.height, 0.0) <= 0:
        raise Refused("before", "A section lies so far from the throat that the string's line passes over "
                      "it. Check the distances.")
    before = _stress(_section(shape, place.before), lived, place.height, place.before.depth)
    after = _stress(_section(shape, place.after), pull, place.height, place.after.depth)
    return Strength(name, place.height, place, before, after, None,
                    _depth_for(allowed, place, shape, pull), _depth_for(before, place, shape, pull))


def _depth_for(stress: float, place: Place, shape: str, pull: Load) -> float:
    """Return the depth at the width afterwards that has this stress: the root of a quadratic in depth.

    stress ks w h^2 = m0 + m1 h + thrust ks / ka h, with ks and ka of the shape.
    """
    width = place.after.width
    ks, ka = MODULUS_AND_AREA[shape]
    m0 = _moment(pull, place.height, 0.0)
    slope = (_moment(pull, place.height, 2 * width) - m0) / (2 * width) + pull.thrust * ks / ka
    lead = stress * ks * width
    return float((slope + math.sqrt(slope**2 + 4 * lead * m0)) / (2 * lead))


def strength_at_hole(
    places: tuple[Place, ...], hole: Hole, shape: str, lived: Load, pull: Load
) -> Strength:
    """Return the stress where a hole is drilled."""
    before = _between(places, hole.height, 1)
    after = _between(places, hole.height, 2)
    from_middle = after.depth / 2 - hole.from_back if hole.runs == "side" else 0.0
    try:
        net = sections.without_strip(_section(shape, after), *(_strip(shape, after, hole, from_middle)))
    except ValueError:
        raise Refused("hole_diameter", "The hole does not fit inside the section there, or leaves nearly "
                      "nothing of it. Check its diameter and where its middle lies.") from None
    if _moment(pull, hole.height, 0.0) <= 0:
        raise Refused("hole_height", "The hole lies so far from the throat that the string's line passes "
                      "over it. Check the distance.")
    return Strength(
        "the hole", hole.height, Place(hole.height, before, after),
        _stress(_section(shape, before), lived, hole.height, before.depth),
        _stress(net, pull, hole.height, after.depth), (hole.runs, hole.diameter, from_middle), None, None,
    )


def _strip(shape: str, size: Size, hole: Hole, from_middle: float) -> tuple[float, float, float]:
    """Return width, depth and offset of what a hole takes out of a section, never less than it does."""
    if hole.runs == "depth":
        return hole.diameter, size.depth, 0.0
    nearest = max(0.0, abs(from_middle) - hole.diameter / 2)
    chord = math.sqrt(max(0.0, 1 - (2 * nearest / size.depth) ** 2)) if shape == "rounded" else 1.0
    return size.width * chord, hole.diameter, from_middle


def _between(places: tuple[Place, ...], height: float, which: int) -> Size:
    """Return a size read off straight lines between sections; beyond the ends the nearest holds."""
    if height <= places[0].height:
        return Size(*places[0][which])
    for lower, upper in zip(places, places[1:]):
        if height <= upper.height:
            part = (height - lower.height) / (upper.height - lower.height)
            return Size(lower[which].width + part * (upper[which].width - lower[which].width),
                        lower[which].depth + part * (upper[which].depth - lower[which].depth))
    return Size(*places[-1][which])


def weakest(found: list[Strength]) -> Strength:
    """Return the section with the highest stress after the work."""
    worst = found[0]
    for each in found:
        if each.after > worst.after:
            worst = each
    return worst
