"""A laminated limb that gets thinner: stiffness left, and what to take off to leave a wanted share.

The limb is a cantilever held at the fadeout and pulled across at the nock; its
stiffness is the reciprocal of the integral of (L - s)^2 / (E I) ds. Material
comes off evenly along it.
"""

from collections import namedtuple

from calc.mechanics.checks import require_not_negative, require_positive

Station = namedtuple("Station", "position width thickness")
"""A measured section: distance from the fadeout, width and total thickness [m]."""

Build = namedtuple("Build", "back belly glass_modulus core_modulus")
"""How a limb is laid up: glass thickness on back and belly [m], moduli along the limb [Pa]."""

SLICES = 16
"""Pieces a limb is cut into; halving them moves a ratio of stiffnesses by less than 0.01 %."""

CLOSE = 1e-9
MOST_STEPS = 60


def section_rigidity(station: Station, build: Build, removal: float, belly_share: float) -> float:
    """Return the bending stiffness of a section after material has come off both faces.

    The laminate's stiffness about its shifted neutral axis, written out for
    back glass, core and belly glass: S_2 - S_1^2 / S_0 with S_n the integral of
    E z^n over the depth.

    Args:
        station: the section as measured.
        build: the limb's lay-up as measured.
        removal [m]: off the total thickness, >= 0.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: the removal goes through a glass layer, or no room is left for a core.

    Source: beam-theory
    """
    back = build.back - (1 - belly_share) * removal
    belly = build.belly - belly_share * removal
    core = station.thickness - build.back - build.belly
    if back <= 0 or belly <= 0:
        raise ValueError(f"the removal must leave glass on both faces, got {removal} m")
    if core <= 0:
        raise ValueError(f"the section must be thicker than its glass, got {station.thickness} m")
    glass, wood = build.glass_modulus, build.core_modulus
    inner = back + core
    whole = inner + belly
    zeroth = glass * (back + belly) + wood * core
    first = (glass * (back**2 + whole**2 - inner**2) + wood * (inner**2 - back**2)) / 2
    second = (glass * (back**3 + whole**3 - inner**3) + wood * (inner**3 - back**3)) / 3
    return float(station.width * (second - first**2 / zeroth))


def section_at(stations: tuple[Station, ...], position: float) -> Station:
    """Return the section at a place along the limb, straight lines between the measured ones.

    Args:
        stations: at least one, in order from fadeout to nock.
        position [m]: from the fadeout; outside the stations the nearest one holds.

    Returns:
        The section.

    Source: geometry
    """
    before = stations[0]
    for after in stations:
        if position <= after.position:
            if after.position == before.position:
                return Station(position, after.width, after.thickness)
            part = (position - before.position) / (after.position - before.position)
            return Station(
                position,
                before.width + part * (after.width - before.width),
                before.thickness + part * (after.thickness - before.thickness),
            )
        before = after
    return Station(position, before.width, before.thickness)


def sections_along(stations: tuple[Station, ...], length: float) -> tuple[Station, ...]:
    """Return a limb's sections at the middle of each of its slices.

    Args:
        stations: the measured sections, in order from fadeout to nock.
        length [m]: from fadeout to nock, > 0.

    Returns:
        One section per slice.

    Raises:
        ValueError: length is not positive.

    Source: geometry
    """
    require_positive("length", length, "m")
    step = length / SLICES
    return tuple([section_at(stations, (number + 0.5) * step) for number in range(SLICES)])


def tip_stiffness(
    sections: tuple[Station, ...], build: Build, removal: float = 0.0, belly_share: float = 0.5
) -> float:
    """Return the force across the nock per deflection of it, small deflections.

    Args:
        sections: as `sections_along` gives them.
        build: the limb's lay-up as measured.
        removal [m]: off the total thickness all along, >= 0.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.

    Returns:
        [N/m] stiffness.

    Raises:
        ValueError: the removal is negative or goes through a glass layer, or a section is none.

    Limits:
        A straight cantilever. Only ratios of it are used: shape and large bends largely cancel in them.

    Source: beam-theory
    """
    require_not_negative("removal", removal, "m")
    half_step = sections[0].position
    length = sections[-1].position + half_step
    compliance = 0.0
    for each in sections:
        arm = length - each.position
        compliance += arm * arm / section_rigidity(each, build, removal, belly_share)
    return 1 / (compliance * 2 * half_step)


def most_removal(build: Build, belly_share: float, least_back: float, least_belly: float) -> float:
    """Return the most that may come off a limb before either glass layer is at its least.

    Args:
        build: the limb's lay-up as measured.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.
        least_back [m]: glass to be left on the back.
        least_belly [m]: glass to be left on the belly.

    Returns:
        [m] off the total thickness; 0 where a layer is already at or below its least.

    Source: geometry
    """
    limits = []
    if belly_share < 1:
        limits.append((build.back - least_back) / (1 - belly_share))
    if belly_share > 0:
        limits.append((build.belly - least_belly) / belly_share)
    return max(0.0, min(limits))


def removal_for(
    share: float, sections: tuple[Station, ...], build: Build, belly_share: float, most: float
) -> float:
    """Return what to take off a limb so that a wanted share of its stiffness is left.

    False position (the Illinois rule) between nothing and `most`: stiffness
    falls all the way, so there is one answer and it stays bracketed.

    Args:
        share [1]: stiffness wanted over stiffness now, at most 1.
        sections: as `sections_along` gives them.
        build: the limb's lay-up as measured.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.
        most [m]: no more than this; the share at `most` must not be above the one wanted.

    Returns:
        [m] off the total thickness, 0 to `most`.

    Raises:
        ValueError: the share is above 1, or cannot be reached within `most`.

    Source: beam-theory
    """
    if share > 1:
        raise ValueError(f"the share of stiffness left must be at most 1, got {share}")
    if share == 1:
        return 0.0
    now = tip_stiffness(sections, build)
    low, over = 0.0, 1 - share
    high, under = most, tip_stiffness(sections, build, most, belly_share) / now - share
    if under > 0:
        raise ValueError(f"a share of {share} cannot be reached within {most} m")
    for _ in range(MOST_STEPS):
        removal = (low * under - high * over) / (under - over)
        miss = tip_stiffness(sections, build, removal, belly_share) / now - share
        if abs(miss) < CLOSE:
            return removal
        if miss > 0:
            low, over, under = removal, miss, under / 2
        else:
            high, under, over = removal, miss, over / 2
    raise ValueError(f"no removal found for a share of {share} within {most} m")
