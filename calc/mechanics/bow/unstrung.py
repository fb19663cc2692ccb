"""The shape of an unstrung limb from offsets off a straight edge.

The edge is laid through both fadeouts: y runs along it from the fadeout, x square to it, positive toward
the belly.
"""

import math

from calc.checks import require_positive
from calc.mechanics.bow.limb import STATIONS, Profile
from calc.numerics import cubic
from calc.numerics.plane_curve import angles_along, curve_through

PIECES = 10
"""Pieces between two stations in which the unstrung shape is followed."""


def unstrung_profile(points: tuple[tuple[float, float], ...], length: float) -> Profile:
    """Return the shape of an unstrung limb of a family, from the offsets that define the family.

    A curve through the fadeout and the points, each piece cubic, its slope at a point that of the parabola
    through the point and its neighbours. The limb is followed along it; beyond the last point it goes on
    straight.

    Args:
        points [m]: (y along the straight edge from the fadeout, x toward the belly), y rising from above 0.
        length [m]: of the limb, from fadeout to nock.

    Returns:
        The profile: angles from the straight edge, positive toward the belly.

    Raises:
        ValueError: there is no point, the points do not rise, or the length is not positive.

    Limits:
        A tip that turns back toward the riser cannot be given so.

    Source: interpolation, parabolic slopes at the points and cubics between them.
    """
    require_positive("limb length", length, "m")
    along, offsets = _rising(points)
    slopes = _parabolic_slopes(along, offsets)
    angles = [math.atan(slopes[0])]
    pieces = PIECES * (STATIONS - 1)
    step = length / pieces
    y, cell = 0.0, 0
    slope = slopes[0]
    for piece in range(1, pieces + 1):
        middle = y + 0.5 * step / math.sqrt(1 + slope * slope)
        cell = _cell(along, middle, cell)
        slope = _slope_in(along, offsets, slopes, cell, middle)
        y += step / math.sqrt(1 + slope * slope)
        cell = _cell(along, y, cell)
        slope = _slope_in(along, offsets, slopes, cell, y)
        if piece % PIECES == 0:
            angles.append(math.atan(slope))
    return Profile(length, tuple(angles))


def measured_profile(points: tuple[tuple[float, float], ...], length: float) -> Profile:
    """Return the shape of an unstrung limb through offsets measured from a straight edge.

    Smooth through the fadeout and the points, in both coordinates and by the length along the limb, as far
    as the limb is long; beyond the last point the curvature is the last one's.

    Args:
        points [m]: (y along the straight edge from the fadeout, x toward the belly), y rising from above 0.
        length [m]: of the limb, from fadeout to nock.

    Returns:
        The profile: angles from the straight edge, positive toward the belly. One point makes it straight.

    Raises:
        ValueError: there is no point, the points do not rise, or the length is not positive.

    Limits:
        A tip that turns back toward the riser cannot be given so. What a recurve does beyond the last point
        or between points far apart is a guess: with five points of which the outer four lie in the outer
        half and the last at the nock, tiller per stiffness comes within 5 % on smooth shapes.

    Source: interpolation, a cubic spline in two coordinates.
    """
    require_positive("limb length", length, "m")
    along, offsets = _rising(points)
    curve = curve_through([(offsets[i], along[i]) for i in range(len(along))])
    return Profile(length, tuple(angles_along(curve, length, STATIONS, PIECES)))


def _rising(points: tuple[tuple[float, float], ...]) -> tuple[list[float], list[float]]:
    """Return places and offsets with the fadeout's in front.

    Raises:
        ValueError: there is no point, or the points do not rise.
    """
    along, offsets = [0.0], [0.0]
    for y, x in points:
        if not y > along[-1]:
            raise ValueError(f"the profile must rise along the straight edge, got {y} m after {along[-1]} m")
        along.append(y)
        offsets.append(x)
    if len(along) < 2:
        raise ValueError("the profile must have one point or more besides the fadeout")
    return along, offsets


def _parabolic_slopes(along: list[float], offsets: list[float]) -> list[float]:
    """Return the slope at each point of the parabola through it and its neighbours."""
    secants = [(offsets[i + 1] - offsets[i]) / (along[i + 1] - along[i]) for i in range(len(along) - 1)]
    if len(secants) == 1:
        return [secants[0], secants[0]]
    slopes = []
    for i in range(1, len(along) - 1):
        before, after = along[i] - along[i - 1], along[i + 1] - along[i]
        slopes.append((secants[i - 1] * after + secants[i] * before) / (before + after))
    return [2 * secants[0] - slopes[0]] + slopes + [2 * secants[-1] - slopes[-1]]


def _cell(along: list[float], y: float, cell: int) -> int:
    while cell < len(along) - 2 and y > along[cell + 1]:
        cell += 1
    return cell


def _slope_in(along: list[float], offsets: list[float], slopes: list[float], cell: int, y: float) -> float:
    """Return dx/dy at a place in a piece of the profile; beyond the last point that of the last point."""
    gap = along[cell + 1] - along[cell]
    part = (y - along[cell]) / gap
    if part >= 1 and cell == len(along) - 2:
        return slopes[-1]
    rise = (offsets[cell + 1] - offsets[cell]) / gap
    return cubic.slope(rise, slopes[cell], slopes[cell + 1], part)
