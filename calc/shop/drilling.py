"""Blind holes: how deep the drill's point goes, what wall is left, where holes may stand."""

import math

from calc.checks import require_positive


def cone_length(diameter: float, included_angle: float) -> float:
    """Return how far the cone of a drill reaches beyond its full diameter.

    D / 2 / tan(angle / 2). The chisel edge across the middle is left out, so a real point is a little
    shorter.

    Args:
        diameter [m]: of the drill, > 0.
        included_angle [deg]: of the point, more than 0, at most 180 (flat).

    Returns:
        [m] length of the point.

    Raises:
        ValueError: diameter is not positive, or the angle is outside its range.

    Source: geometry, derived here: the right triangle of radius and half angle.
    """
    require_positive("diameter", diameter, "m")
    if not 0.0 < included_angle <= 180.0:
        raise ValueError(f"included_angle must be more than 0 and at most 180 deg, got {included_angle}")
    half = included_angle / 2.0 * math.pi / 180.0
    return diameter / 2.0 * math.cos(half) / math.sin(half) if included_angle < 180.0 else 0.0


def wall_left(thickness: float, depth_to_point: float, error: float) -> float:
    """Return the wall behind a blind hole when every measure errs to the thin side.

    Args:
        thickness [m]: of the part at the hole, along it, > 0.
        depth_to_point [m]: from the face to the tip of the drill, >= 0.
        error [m]: thickness and depth together may be out by this much, >= 0.

    Returns:
        [m] wall; zero or less where the drill can come through.

    Raises:
        ValueError: thickness is not positive, or another argument is negative.

    Source: geometry, a difference of lengths.
    """
    if not 0.0 < thickness < math.inf or not 0.0 <= depth_to_point < math.inf or not 0.0 <= error < math.inf:
        raise ValueError(f"thickness must be positive, depth and error not negative, got {thickness} m, "
                         f"{depth_to_point} m, {error} m")
    return thickness - depth_to_point - error


def spacing_from_edges(outside: float, inside: float) -> float:
    """Return the distance of two holes' middles from two measures over their edges.

    The mean of both; it holds for holes of unlike diameters too.

    Args:
        outside [m]: from the far edge of one hole to the far edge of the other.
        inside [m]: between their near edges, less than outside, >= 0.

    Returns:
        [m] centre to centre.

    Raises:
        ValueError: inside is negative or not less than outside.

    Source: geometry, half the sum of two lengths.
    """
    _require_edges(outside, inside)
    return (outside + inside) / 2.0


def hole_from_edges(outside: float, inside: float) -> float:
    """Return the mean diameter of two holes from two measures over their edges.

    Half their difference: a check on both readings.

    Args:
        outside [m]: from the far edge of one hole to the far edge of the other.
        inside [m]: between their near edges, less than outside, >= 0.

    Returns:
        [m] mean diameter.

    Raises:
        ValueError: inside is negative or not less than outside.

    Source: geometry, half the difference of two lengths.
    """
    _require_edges(outside, inside)
    return (outside - inside) / 2.0


def least_edge_distance(diameter: float, length: float, row_spacing: float) -> float:
    """Return the distance from a dowel fastener's middle to the edge that timber design asks for.

    Loaded along the grain: 1.5 D up to a length of 6 D, beyond it the larger of that and half the spacing
    of rows.

    Args:
        diameter [m]: of the fastener, > 0.
        length [m]: in the wood, >= 0.
        row_spacing [m]: between rows of fasteners, >= 0.

    Returns:
        [m] from the middle of the hole to the edge.

    Raises:
        ValueError: diameter is not positive, or another argument is negative.

    Limits:
        For fasteners of 1/4 in and more in loose holes; not made for inserts that are pressed in.

    Source: dowel-edge-distance, table 11.5.1A.
    """
    if not 0.0 < diameter < math.inf or length < 0.0 or row_spacing < 0.0:
        raise ValueError(f"diameter must be positive, length and row_spacing not negative, got {diameter} m, "
                         f"{length} m, {row_spacing} m")
    if length <= 6.0 * diameter:
        return 1.5 * diameter
    return max(1.5 * diameter, row_spacing / 2.0)


def longest_screw(held: float, depth: float, error: float) -> float:
    """Return the longest screw that stays off the bottom of a blind hole when every measure errs.

    A screw that meets the bottom lifts the insert out of its hole, or breaks the wall behind it.

    Args:
        held [m]: thickness of what the screw holds, washers with it, >= 0.
        depth [m]: of the hole at full diameter, below the face that the work lies on, > 0.
        error [m]: depth and screw together may be out by this much, >= 0.

    Returns:
        [m] length under the head; less than held where no screw is short enough.

    Raises:
        ValueError: depth is not positive, or another argument is negative.

    Source: geometry, a difference of lengths.
    """
    if not 0.0 < depth < math.inf or not 0.0 <= held < math.inf or not 0.0 <= error < math.inf:
        raise ValueError(f"depth must be positive, held and error not negative, got {depth} m, {held} m, "
                         f"{error} m")
    return held + depth - error


def _require_edges(outside: float, inside: float) -> None:
    if not 0.0 <= inside < outside < math.inf:
        raise ValueError(f"inside must not be negative and must be less than outside, got {inside} m and "
                         f"{outside} m")
