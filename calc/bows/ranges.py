"""How far a plan for a bow may be out, from how well it was read: to first order, by a few bows more."""

from calc.bows.measured import MeasuredBow
from calc.bows.reading_errors import ReadingErrors
from calc.mechanics.bow.limb import Sanding
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tuning import BowState, Setup, read
from calc.numerics.normal import spread
from calc.numerics.roots import solved
from calc.outcome import Amount, amount

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator

    Rates = tuple[tuple[float, float], tuple[float, float]]

STEP = 0.01
"""Of a stiffness, a thickness or a modulus, by which it is varied to see what it does."""

REMOVAL_STEP = 2e-5  # [m]


class Cause:
    """A reading with its standard error, and what one of it does to the weight [N] and the tiller [m] that
    the bow comes to. now: what it does to those that the bow has.
    """

    def __init__(
        self, name: str, error: Amount, weight: float, tiller: float, now: tuple[float, float] = (0.0, 0.0)
    ) -> None:
        self.name = name
        self.error = error
        self.weight = weight
        self.tiller = tiller
        self.now = now


class Ranges:
    """Causes, and the standard errors of the weight [N] and the tiller [m] that the bow comes to, of the
    removal from either limb that would bring it there [m], and of the glass left on back and belly [m].

    taken: rates of (weight, tiller) by each removal at the end. removals: None where there are none.
    stiffer: rates of (weight, tiller) by each limb's share more of stiffness, before. carried: of (weight,
    tiller) at the end by those before, all else as it was read.
    """

    def __init__(
        self, causes: list[Cause], taken: "Rates", removals: tuple[float, float] | None,
        glass: tuple[float, float], stiffer: "Rates", carried: "Rates",
    ) -> None:
        self.causes = causes
        self.taken = taken
        self.stiffer = stiffer
        self.carried = carried
        self.weight = spread([each.weight for each in causes])
        self.tiller = spread([each.tiller for each in causes])
        self.removals = removals
        self.glass = glass

    def of_change(self) -> "Ranges":
        """Return the same of the change of weight and tiller in place of what the bow comes to."""
        causes = [Cause(each.name, each.error, each.weight - each.now[0], each.tiller - each.now[1])
                  for each in self.causes]
        return Ranges(causes, self.taken, self.removals, self.glass, self.stiffer, self.carried)


class Planned:
    """A measured bow, how it is read, its limbs' stiffness factors, and the removals planned on a stretch
    [m]; the bow's state before and after them.
    """

    def __init__(
        self, bow: MeasuredBow, setup: Setup, factors: tuple[float, float], sanding: Sanding,
        removals: tuple[float, float], before: BowState, after: BowState,
    ) -> None:
        self.bow = bow
        self.setup = setup
        self.factors = factors
        self.sanding = sanding
        self.removals = removals
        self.before = before
        self.after = after


def range_steps(
    planned: Planned, errors: ReadingErrors, met: bool
) -> "Generator[float, None, Ranges | None]":
    """Find how far a plan may be out; None where a bow much like it cannot be computed.

    A reading that is wrong shows twice: in the factors that were set to the bow, and in the bow that the plan
    leaves. What the factors take up again is told by their rates before and after.

    met: whether the plan meets its targets, so that other removals would.
    """
    try:
        return (yield from _ranges(planned, errors, met))
    except ValueError:
        return None


def _ranges(planned: Planned, errors: ReadingErrors, met: bool) -> "Generator[float, None, Ranges]":
    stiffer_then, stiffer_now = _by_factors(planned, True), _by_factors(planned, False)
    yield 0.1
    taken = _by_removals(planned)

    def carried(weight: float, tiller: float) -> tuple[float, float]:
        """Return what the plan's end gains where the bow has so much more now, all else as it was read."""
        return _times(stiffer_then, _solved(stiffer_now, (weight, tiller)))

    def of_section(changed: MeasuredBow, steps: float) -> tuple[float, float]:
        """Return what the plan's end gains where a section is other than read, by so many steps."""
        now = _gain(planned, changed, False)
        then = _gain(planned, changed, True)
        again = carried(now[0], now[1])
        return steps * (then[0] - again[0]), steps * (then[1] - again[1])

    yield 0.2
    takings, readings = [], []
    for limb, name in ((0, "upper"), (1, "lower")):
        if planned.removals[limb] > 0:
            takings.append(Cause("What is taken off the " + name + " limb",
                                 amount("thickness", errors.taken, 4),
                                 errors.taken * taken[0][limb], errors.taken * taken[1][limb]))
    weight, tiller = carried(errors.weight, 0.0)
    readings.append(Cause("The weight now", amount("force", errors.weight, 2), weight, tiller,
                          (errors.weight, 0.0)))
    weight, tiller = carried(0.0, errors.tiller)
    readings.append(Cause("The tiller now", amount("length", errors.tiller), weight, tiller,
                          (0.0, errors.tiller)))
    build = planned.bow.build
    for face, layer, thicker in (
        ("back", build.back, Build(build.back * (1 + STEP), build.belly, build.glass_modulus,
                                   build.core_modulus)),
        ("belly", build.belly, Build(build.back, build.belly * (1 + STEP), build.glass_modulus,
                                     build.core_modulus)),
    ):
        weight, tiller = of_section(planned.bow.rebuilt(thicker), errors.glass / (STEP * layer))
        readings.append(Cause("Glass on the " + face, amount("thickness", errors.glass), weight, tiller))
    stiffer_core = Build(build.back, build.belly, build.glass_modulus, build.core_modulus * (1 + STEP))
    weight, tiller = of_section(planned.bow.rebuilt(stiffer_core), errors.core / STEP)
    readings.append(Cause("The core's modulus", amount("ratio", errors.core, 0), weight, tiller))
    yield 0.4
    sections = []
    places = [(limb, place) for limb in (0, 1) for place in range(len(planned.bow.stations[limb]))]
    for limb, place in places:
        step = STEP * planned.bow.stations[limb][place].thickness
        sections.append(of_section(_thicker(planned.bow, limb, place, step), errors.thickness / step))
        yield 0.4 + 0.6 * len(sections) / len(places)
    readings.append(Cause("Thickness of the sections", amount("thickness", errors.thickness, 4),
                        spread([each[0] for each in sections]), spread([each[1] for each in sections])))
    share = planned.sanding.belly_share
    return Ranges(takings + readings, taken, _removals(readings, taken) if met else None,
                  (spread([errors.glass, errors.taken * (1 - share)]),
                   spread([errors.glass, errors.taken * share])),
                  stiffer_now, _transposed(carried(1.0, 0.0), carried(0.0, 1.0)))


def _transposed(first: tuple[float, float], second: tuple[float, float]) -> "Rates":
    return (first[0], second[0]), (first[1], second[1])


def _removals(readings: list[Cause], taken: "Rates") -> tuple[float, float]:
    """Return the standard error of the removal from each limb that meets the targets on the bow as it is."""
    found = [_solved(taken, (each.weight, each.tiller)) for each in readings]
    return spread([each[0] for each in found]), spread([each[1] for each in found])


# Bows beside the planned one -----------------------------------------------------


def _gain(
    planned: Planned, bow: MeasuredBow, after: bool, factors: tuple[float, float] | None = None,
    removals: tuple[float, float] | None = None,
) -> tuple[float, float]:
    """Return weight and tiller of a bow beside the planned one, less those of it, before or after."""
    near = planned.after if after else planned.before
    taken = (removals or planned.removals) if after else (0.0, 0.0)
    state = read(bow.bow(factors or planned.factors, planned.sanding, taken), planned.setup, near)
    return state.weight - near.weight, state.tiller - near.tiller


def _by_factors(planned: Planned, after: bool) -> "Rates":
    """Return the rates of weight and tiller by a share more of stiffness, upper and lower."""
    upper, lower = planned.factors
    first = _gain(planned, planned.bow, after, (upper * (1 + STEP), lower))
    second = _gain(planned, planned.bow, after, (upper, lower * (1 + STEP)))
    return (first[0] / STEP, second[0] / STEP), (first[1] / STEP, second[1] / STEP)


def _by_removals(planned: Planned) -> "Rates":
    """Return the rates of weight and tiller by what is taken off, upper and lower, at the plan's end."""
    upper, lower = planned.removals
    up = REMOVAL_STEP if upper < REMOVAL_STEP else -REMOVAL_STEP
    down = REMOVAL_STEP if lower < REMOVAL_STEP else -REMOVAL_STEP
    first = _gain(planned, planned.bow, True, None, (upper + up, lower))
    second = _gain(planned, planned.bow, True, None, (upper, lower + down))
    return (first[0] / up, second[0] / down), (first[1] / up, second[1] / down)


def _solved(rates: "Rates", gained: tuple[float, float]) -> tuple[float, float]:
    """Return what of both limbs brings a gain of weight and tiller, or raise ValueError."""
    found = solved(rates[0], rates[1], gained)
    if found is None:
        raise ValueError("both limbs act alike on weight and tiller")
    return found


def _times(rates: "Rates", amounts: tuple[float, float]) -> tuple[float, float]:
    return (rates[0][0] * amounts[0] + rates[0][1] * amounts[1],
            rates[1][0] * amounts[0] + rates[1][1] * amounts[1])


def _thicker(bow: MeasuredBow, limb: int, place: int, more: float) -> MeasuredBow:
    """Return the same bow with one of its sections thicker [m]."""
    stations = list(bow.stations[limb])
    was = stations[place]
    stations[place] = Station(was.position, was.width, was.thickness + more)
    return bow.restationed(limb, tuple(stations))
