"""A laminated section that gets thinner: the stiffness left, and how much may come off."""

import math

from calc.mechanics.bow.laminate import Layer, Section, flexural_rigidity, sanded


class Station:
    """A measured section: distance from the fadeout, width and total thickness [m]."""

    def __init__(self, position: float, width: float, thickness: float) -> None:
        self.position = position
        self.width = width
        self.thickness = thickness


class Build:
    """How a limb is laid up: glass thickness on back and belly [m], moduli along the limb [Pa]."""

    def __init__(self, back: float, belly: float, glass_modulus: float, core_modulus: float) -> None:
        self.back = back
        self.belly = belly
        self.glass_modulus = glass_modulus
        self.core_modulus = core_modulus


def layers_of(station: Station, build: Build) -> tuple[Layer, Layer, Layer]:
    """Return a section's layers: back glass, core, belly glass.

    Args:
        station: the section.
        build: the limb's lay-up.

    Returns:
        The layers, from back to belly.

    Raises:
        ValueError: no room is left for a core.

    Source: geometry, a difference of lengths.
    """
    core = station.thickness - build.back - build.belly
    if core <= 0:
        raise ValueError(f"the section must be thicker than its glass, got {station.thickness} m")
    return (
        Layer(build.back, build.glass_modulus),
        Layer(core, build.core_modulus),
        Layer(build.belly, build.glass_modulus),
    )


def section_rigidity(station: Station, build: Build, removal: float, belly_share: float) -> float:
    """Return the bending stiffness of a section after material has come off both faces.

    Args:
        station: the section as measured.
        build: the limb's lay-up as measured.
        removal [m]: off the total thickness, >= 0.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.

    Returns:
        [N m^2] flexural rigidity.

    Raises:
        ValueError: the removal goes through a glass layer, or no room is left for a core.

    Source: beam-theory, by `laminate.flexural_rigidity`.
    """
    return station.width * _left(station, build, removal, belly_share).rigidity


def _left(station: Station, build: Build, removal: float, belly_share: float) -> Section:
    """Return a section one wide, after material has come off both faces."""
    belly = belly_share * removal
    back_left, belly_left = build.back - (removal - belly), build.belly - belly
    core = station.thickness - build.back - build.belly
    if not (back_left > 0.0 and belly_left > 0.0 and core > 0.0 and removal >= 0.0
            and 0.0 < station.width < math.inf):
        layers = sanded(layers_of(station, build), removal - belly, belly)  # says what is amiss
        flexural_rigidity(station.width, layers)
    return Section(back_left, core, belly_left, build.glass_modulus, build.core_modulus)


class SectionRates:
    """A section's bending stiffness, as a logarithm: by its thickness with the glass left alone [1/m], by the
    glass on back and belly with the thickness left alone [1/m], by the share by which its core is stiffer
    [1], and by the removal [1/m].
    """

    def __init__(
        self, thickness: float, back: float, belly: float, core: float, removal: float
    ) -> None:
        self.thickness = thickness
        self.back = back
        self.belly = belly
        self.core = core
        self.removal = removal


def section_rates(station: Station, build: Build, removal: float, belly_share: float) -> SectionRates:
    """Return what a section's stiffness gains by each of its measures, after material has come off it.

    About the neutral axis E I is least, so that where the axis goes does not count: what is added at a depth
    adds its modulus times the square of its distance from the axis.

    Args:
        station: the section as measured.
        build: the limb's lay-up as measured.
        removal [m]: off the total thickness, >= 0.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.

    Returns:
        SectionRates, each over the stiffness there.

    Raises:
        ValueError: the removal goes through a glass layer, or no room is left for a core.

    Source: beam-theory, derived here: second moments about the neutral axis, varied.
    """
    left = _left(station, build, removal, belly_share)
    glass, core, axis = build.glass_modulus, build.core_modulus, left.axis
    upper, lower, face = left.upper - axis, left.lower - axis, left.face - axis
    of_all = 1.0 / left.rigidity
    return SectionRates(
        (core * lower * lower + glass * (face * face - lower * lower)) * of_all,
        (glass - core) * upper * upper * of_all,
        (glass - core) * lower * lower * of_all,
        core * (lower**3 - upper**3) / 3.0 * of_all,
        -glass * ((1.0 - belly_share) * axis * axis + belly_share * face * face) * of_all,
    )


def thinned(station: Station, build: Build, removal: float, belly_share: float) -> tuple[Station, Build]:
    """Return a section and its lay-up after material has come off both faces.

    Args:
        station: the section as measured.
        build: the limb's lay-up as measured.
        removal [m]: off the total thickness, >= 0.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.

    Returns:
        The thinner section, and the lay-up with its thinner glass.

    Source: geometry, thicknesses less what comes off.
    """
    belly = belly_share * removal
    return (Station(station.position, station.width, station.thickness - removal),
            Build(build.back - (removal - belly), build.belly - belly, build.glass_modulus,
                  build.core_modulus))


def section_at(stations: tuple[Station, ...], position: float) -> Station:
    """Return the section at a place along the limb, straight lines between the measured ones.

    Args:
        stations: at least one, in order from fadeout to nock.
        position [m]: from the fadeout; outside the stations the nearest one holds.

    Returns:
        The section.

    Source: interpolation, straight lines.
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


def most_removal(build: Build, belly_share: float, least_back: float, least_belly: float) -> float:
    """Return the most that may come off a limb before either glass layer is at its least.

    Args:
        build: the limb's lay-up as measured.
        belly_share [1]: part of the removal that comes off the belly, 0 to 1.
        least_back [m]: glass to be left on the back.
        least_belly [m]: glass to be left on the belly.

    Returns:
        [m] off the total thickness; 0 where a layer is already at or below its least.

    Source: geometry, derived here: the smaller of the two shares.
    """
    limits = []
    if belly_share < 1:
        limits.append((build.back - least_back) / (1 - belly_share))
    if belly_share > 0:
        limits.append((build.belly - least_belly) / belly_share)
    return max(0.0, min(limits))
