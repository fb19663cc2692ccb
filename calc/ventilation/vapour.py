"""Vapour in the air of a room: how much of it, and the limits that it is held against."""

from calc.outcome import Amount, Refused, amount
from calc.quantities import ROUNDING
from calc.shop.air import (
    clearing_time,
    rising_share,
    share_from_mass_concentration,
    time_until_below,
    vapour_volume,
)
from calc.tables.exposure_limits import DANGER, MASS, PPM, Level, limits_of
from calc.tables.solvents import find as find_solvent

NEVER_CLEARED = "isocyanate"
"""No clearing time is given for it: a trace can harm, and only the product's data sheet says how long."""

EXPLODES = "explodes"
TOO_MUCH = "too much"
EXPLODES_WITHOUT_FAN = "explodes without the fan"
NEEDS_FAN = "needs the fan"
BELOW = "below"

LIMITS_AT = 25.0
"""degC at which limits for breathing are stated."""

HOUR = 3600.0


class Bound:
    """One published figure for breathing. share [1]: by volume, None where none is set."""

    def __init__(
        self, body: str, text: Amount | str, averaging: str, share: float | None, recorded: str,
    ) -> None:
        self.body = body
        self.text = text
        self.averaging = averaging
        self.share = share
        self.recorded = recorded

    def set_share(self) -> float:
        """Return the share that it sets; only where it sets one."""
        if self.share is None:
            raise ValueError("no share is set: " + self.body)
        return self.share


class Vapour:
    """What a solvent becomes in a room.

    limit [1]: lower flammable. volume [m^3]: of pure vapour. rate [m^3/s]. end, still [1]: share of the
    room's air when all has evaporated, with the fan and without. bounds: what is published for breathing.
    """

    def __init__(
        self, name: str, limit: float, molar_mass: float, volume: float, rate: float, end: float,
        still: float, bounds: tuple[Bound, ...],
    ) -> None:
        self.name = name
        self.limit = limit
        self.molar_mass = molar_mass
        self.volume = volume
        self.rate = rate
        self.end = end
        self.still = still
        self.bounds = bounds


class Air:
    """The air of a room. rate [1/s]: air changes; flow [m^3/s]: fresh; room [m^3]."""

    def __init__(self, rate: float, mixing_factor: float, flow: float, room: float) -> None:
        self.rate = rate
        self.mixing_factor = mixing_factor
        self.flow = flow
        self.room = room


OWN_SHEET = "Your data sheet"


def vapour_of(
    solvent: str | None,
    density: float | None,
    molar_mass: float | None,
    lower_limit: float | None,
    breathing_limit: float | None,
    liquid: float | None,
    seconds: float | None,
    temperature: float | None,
    flow: float,
    room: float,
    mixing_factor: float,
) -> Vapour:
    """Return the vapour that a solvent gives off into a room."""
    if solvent is None or liquid is None or seconds is None or temperature is None:
        raise ValueError("a solvent needs its amount, time and temperature")
    if solvent == "own":
        if density is None or molar_mass is None or lower_limit is None:
            raise Refused("density", "Give density, molar mass and lower flammable limit from the safety "
                          "data sheet, or choose a solvent from the list.")
        name = "the solvent"
        bounds = _own_bound(breathing_limit)
    else:
        known = find_solvent(solvent)
        name, lower_limit = known.name, known.lower_limit
        density, molar_mass = known.density, known.molar_mass
        bounds = _bounds(solvent, molar_mass)
    return given_off(name, lower_limit, molar_mass, bounds,
                     vapour_volume(liquid, density, molar_mass, temperature), seconds, flow, room,
                     mixing_factor)


def given_off(
    name: str, limit: float, molar_mass: float, bounds: tuple[Bound, ...], volume: float, seconds: float,
    flow: float, room: float, mixing_factor: float,
) -> Vapour:
    """Return a volume of vapour as a room sees it that gets it over a time."""
    if volume > room:
        raise Refused("liquid", "This much liquid becomes more vapour than the room holds. Check the amount "
                      "and its unit.")
    rate = volume / seconds
    return Vapour(name, limit, molar_mass, volume, rate,
                  rising_share(rate, flow, room, seconds, mixing_factor), volume / room, bounds)


def _own_bound(limit: float | None) -> tuple[Bound, ...]:
    if limit is None:
        return ()
    return (Bound(OWN_SHEET, amount("concentration", limit), "as it says", limit, "as typed"),)


def _bounds(agent: str, molar_mass: float | None) -> tuple[Bound, ...]:
    """Return each published figure by itself, as a share of the air where the molar mass makes it one."""
    found = []
    for limit in limits_of(agent):
        for level in limit.levels:
            share = None if molar_mass is None else share_of_level(level, molar_mass)
            found.append(Bound(limit.body, level.text, level.over or limit.averaging, share,
                               limit.recorded + ", " + limit.status))
    return tuple(found)


def share_of_level(level: Level, molar_mass: float) -> float | None:
    """Return a published figure as a share of the air, None where it has no number."""
    if level.number is None:
        return None
    if level.unit == PPM:
        return level.number * 1e-6
    if level.unit == MASS:
        return share_from_mass_concentration(level.number * 1e-6, molar_mass, LIMITS_AT)
    raise ValueError("a level has no unit that is known: " + level.text)


def strictest_bound(vapour: Vapour) -> Bound | None:
    """Return the published figure that is reached first; None where none is known."""
    found = None
    for each in vapour.bounds:
        if each.share is not None and (found is None or each.share < found.set_share()):
            found = each
    return found


def danger_of(vapour: Vapour) -> Bound | None:
    """Return the figure at which life or health is in danger at once; None where none is known."""
    for each in vapour.bounds:
        if each.body == DANGER and each.share is not None:
            return each
    return None


def until_below(air: Air, vapour: Vapour, bound: Bound) -> float:
    """Return how long it takes from the peak until a figure is no longer passed [s]."""
    return time_until_below(vapour.end, bound.set_share(), air.rate, air.mixing_factor)


def flow_for_an_hour(air: Air) -> float:
    """Return the fresh air that takes 99 % out of this room in an hour."""
    return air.flow * clearing_time(air.rate, 0.01, air.mixing_factor) / HOUR


def fire_of(vapour: Vapour, share: float) -> str:
    """Return how the vapour stands against its limit and the share of it that is not to be passed."""
    ceiling = share * vapour.limit * (1 + ROUNDING)
    if vapour.end >= vapour.limit:
        return EXPLODES
    if vapour.end > ceiling:
        return TOO_MUCH
    if vapour.still >= vapour.limit:
        return EXPLODES_WITHOUT_FAN
    if vapour.still > ceiling:
        return NEEDS_FAN
    return BELOW
