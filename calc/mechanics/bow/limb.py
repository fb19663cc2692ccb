"""A limb for the bow model from what a bowyer can measure, and the same limb after a stretch is sanded."""

from calc.checks import require_not_negative
from calc.mechanics.bow.edges import FADE, Finishing, finished_share
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.thinning import (
    Build,
    SectionRates,
    Station,
    section_at,
    section_rates,
    section_rigidity,
    thinned,
)
from calc.quantities import ROUNDING, in_both

STATIONS = 21  # of the limb made; sections between the measured ones lie on straight lines


class Sanding:
    """A stretch to be sanded: from start to end, from the fadeout, with a ramp of length feather inside each
    end [m], and the part of what comes off that comes off the belly, 0 to 1.
    """

    def __init__(self, start: float, end: float, feather: float, belly_share: float) -> None:
        self.start = start
        self.end = end
        self.feather = feather
        self.belly_share = belly_share


class Profile:
    """Length [m] along an unstrung limb and its tangent angles [rad] at equally spaced stations."""

    def __init__(self, length: float, angles: tuple[float, ...]) -> None:
        self.length = length
        self.angles = angles


def sanded_share(sanding: Sanding, position: float) -> float:
    """Return which part of the full removal comes off at a place along the limb.

    Nothing outside the stretch, all of it between the ramps, and on a ramp 3 t^2 - 2 t^3.

    Args:
        sanding: the stretch.
        position [m]: from the fadeout.

    Returns:
        [1] from 0 to 1.

    Source: interpolation, the cubic step, level at both ends.
    """
    inside = min(position - sanding.start, sanding.end - position)
    if inside <= 0.0:
        return 0.0
    if inside >= sanding.feather:
        return 1.0
    t = inside / sanding.feather
    return float(t * t * (3.0 - 2.0 * t))


def laminated_limb(
    profile: Profile,
    base: tuple[float, float],
    stations: tuple[Station, ...],
    build: Build,
    sanding: Sanding | None = None,
    removal: float = 0.0,
    finishing: Finishing | None = None,
    factor: float = 1.0,
    like: Limb | None = None,
) -> Limb:
    """Return a limb with the stiffness of its laminate, as it is or after sanding.

    Args:
        profile: of the unstrung limb.
        base [m]: (x, y) of the fadeout in the limb's own frame.
        stations: measured sections, in order from fadeout to nock.
        build: glass and moduli.
        sanding: where material comes off; None for a limb left as it is.
        removal [m]: off the total thickness where all of it comes off, >= 0.
        finishing: what edges and finish sanding take after it; None for a limb before that.
        factor [1]: by which it is stiffer than its laminate, > 0.
        like: a limb of the same profile and base, made before; it spares work.

    Returns:
        A Limb.

    Raises:
        ValueError: the stretch is not one along the limb, or what comes off goes through the glass or does
            not fit a section.

    Limits:
        Rectangular sections, but for edges to be rounded; sanding is taken not to change the unstrung shape.

    Source: beam-theory, station by station by `section_rigidity`.
    """
    require_not_negative("removal", removal, "m")
    belly_share = 0.5
    if sanding is not None:
        if not 0.0 <= sanding.start < sanding.end <= profile.length * (1.0 + ROUNDING):
            raise ValueError(
                f"the stretch to be sanded must lie between fadeout and nock, 0 to "
                f"{in_both(profile.length)}; it runs from {in_both(sanding.start)} to {in_both(sanding.end)}"
            )
        belly_share = sanding.belly_share
    edged = None if finishing is None else Sanding(finishing.start - FADE, finishing.end + FADE, FADE, 0.5)
    stiffness = []
    for i in range(STATIONS):
        position = profile.length * i / (STATIONS - 1)
        taken = removal * sanded_share(sanding, position) if sanding is not None else 0.0
        section = section_at(stations, position)
        rigidity = section_rigidity(section, build, taken, belly_share)
        if finishing is not None and edged is not None:
            left, glass = thinned(section, build, taken, belly_share)
            rigidity *= finished_share(left, glass, finishing, sanded_share(edged, position))
        stiffness.append(factor * rigidity)
    return Limb(profile.length, base, profile.angles, stiffness, like=like)


class PlaceOfLimb:
    """One of the places at which a limb's stiffness is reckoned: how it answers there to the section's
    measures; which part of a removal comes off [1]; and which part of an error in each measured section it
    takes [1].
    """

    def __init__(self, rates: SectionRates, sanded: float, shares: list[float]) -> None:
        self.rates = rates
        self.sanded = sanded
        self.shares = shares


def limb_places(
    length: float, stations: tuple[Station, ...], build: Build, sanding: Sanding, removal: float
) -> list[PlaceOfLimb]:
    """Return how a limb's stiffness answers to what was measured of it, after sanding.

    Args:
        length [m]: of the limb.
        stations: measured sections, in order from fadeout to nock.
        build: glass and moduli.
        sanding: where material comes off.
        removal [m]: off the total thickness where all of it comes off, >= 0.

    Returns:
        One PlaceOfLimb for each place of `laminated_limb`.

    Raises:
        ValueError: what comes off goes through the glass.

    Source: beam-theory, place by place by `section_rates`.
    """
    places = []
    for i in range(STATIONS):
        position = length * i / (STATIONS - 1)
        part = sanded_share(sanding, position)
        rates = section_rates(section_at(stations, position), build, part * removal, sanding.belly_share)
        places.append(PlaceOfLimb(rates, part, _shares_of(stations, position)))
    return places


def _shares_of(stations: tuple[Station, ...], position: float) -> list[float]:
    """Return which part of each measured section goes into that at a place, as `section_at` has it [1]."""
    shares = [0.0] * len(stations)
    after = len([each for each in stations if each.position < position])
    if after in (0, len(stations)):
        shares[min(after, len(stations) - 1)] = 1.0
        return shares
    start, end = stations[after - 1].position, stations[after].position
    shares[after] = (position - start) / (end - start)
    shares[after - 1] = 1.0 - shares[after]
    return shares
