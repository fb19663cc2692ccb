"""How far a plan for a bow may be out, from how well it was read: to first order, by the rates of the bow."""

from calc.bows.answering import Answering, transposed
from calc.bows.measured import MeasuredBow
from calc.bows.reading_errors import ReadingErrors
from calc.mechanics.bow.limb import PlaceOfLimb, Sanding
from calc.mechanics.bow.tuning import BowState, Setup, read
from calc.numerics.normal import spread
from calc.numerics.roots import solved
from calc.outcome import Amount, amount

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator

    Rates = tuple[tuple[float, float], tuple[float, float]]

LEANING = 0.25
"""Of tiller by the share of a limb's stiffness [m]: a bow that answers so strongly may be near tipping, where
nothing goes in proportion."""

BESIDE = 0.03
"""Of a limb's stiffness: about what an error of its thickness comes to."""

OUT_OF_PROPORTION = 0.5


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
    [m]; the bow's state before and after them; how it answers before, where that is known.
    """

    def __init__(
        self, bow: MeasuredBow, setup: Setup, factors: tuple[float, float], sanding: Sanding,
        removals: tuple[float, float], before: BowState, after: BowState, answering: Answering | None = None,
    ) -> None:
        self.bow = bow
        self.setup = setup
        self.factors = factors
        self.sanding = sanding
        self.removals = removals
        self.before = before
        self.after = after
        self._answering = answering

    def now(self) -> Answering:
        """Return how the bow answers before the plan."""
        return self._answering or Answering(self.bow, self.setup, self.sanding, (0.0, 0.0), self.before)


def range_steps(
    planned: Planned, errors: ReadingErrors, met: bool
) -> "Generator[float, None, Ranges | None]":
    """Find how far a plan may be out; None where the bow stands so that this cannot be told.

    A reading that is wrong shows twice: in the factors that were set to the bow, and in the bow that the plan
    leaves. What the factors take up again is told by their rates before and after.

    met: whether the plan meets its targets, so that other removals would.
    """
    try:
        now = planned.now()
        _require_proportion(planned, now, planned.before, (0.0, 0.0))
        yield 0.4
        then = Answering(planned.bow, planned.setup, planned.sanding, planned.removals, planned.after)
        _require_proportion(planned, then, planned.after, planned.removals)
        yield 0.8
        return _ranges(planned, errors, met, now, then)
    except ValueError:
        return None


def _require_proportion(
    planned: Planned, answering: Answering, state: BowState, removals: tuple[float, float]
) -> None:
    """Raise ValueError where a bow that leans strongly does not answer in proportion, or not at all."""
    rates = answering.by_factors()[1]
    if max(abs(rates[0]), abs(rates[1])) < LEANING:
        return
    for limb in (0, 1):
        for share in (BESIDE, -BESIDE):
            factors = list(planned.factors)
            factors[limb] *= 1 + share
            beside = read(planned.bow.bow((factors[0], factors[1]), planned.sanding, removals), planned.setup,
                          state)
            told = rates[limb] * share
            if abs(beside.tiller - state.tiller - told) > OUT_OF_PROPORTION * abs(told):
                raise ValueError("the bow does not answer in proportion")


def _ranges(
    planned: Planned, errors: ReadingErrors, met: bool, now: Answering, then: Answering
) -> Ranges:
    stiffer_now, taken = now.by_factors(), then.by_removals()

    def carried(weight: float, tiller: float) -> tuple[float, float]:
        """Return what the plan's end gains where the bow has so much more now, all else as it was read."""
        return _times(then.by_factors(), _solved(stiffer_now, (weight, tiller)))

    def other(name: str, error: Amount, size: float, gain: "Callable[[PlaceOfLimb], float]") -> Cause:
        """Return the cause that the places of both limbs are other than reckoned, by an error of a size."""
        weight, tiller = uncalibrated([now.gain(limb, gain) for limb in (0, 1)],
                                      [then.gain(limb, gain) for limb in (0, 1)])
        return Cause(name, error, size * weight, size * tiller)

    def uncalibrated(
        before: list[tuple[float, float]], after: list[tuple[float, float]]
    ) -> tuple[float, float]:
        """Return gains of the plan's end, less what the factors take up again of gains before."""
        again = carried(sum([each[0] for each in before]), sum([each[1] for each in before]))
        return sum([each[0] for each in after]) - again[0], sum([each[1] for each in after]) - again[1]

    takings = []
    for limb, name in ((0, "upper"), (1, "lower")):
        if planned.removals[limb] > 0:
            takings.append(Cause("What is taken off the " + name + " limb",
                                 amount("thickness", errors.taken, 4),
                                 errors.taken * taken[0][limb], errors.taken * taken[1][limb]))
    weight, tiller = carried(errors.weight, 0.0)
    readings = [Cause("The weight now", amount("force", errors.weight, 2), weight, tiller,
                      (errors.weight, 0.0))]
    weight, tiller = carried(0.0, errors.tiller)
    readings.append(Cause("The tiller now", amount("length", errors.tiller), weight, tiller,
                          (0.0, errors.tiller)))
    glass = amount("thickness", errors.glass)
    readings.append(other("Glass on the back", glass, errors.glass, lambda each: each.rates.back))
    readings.append(other("Glass on the belly", glass, errors.glass, lambda each: each.rates.belly))
    readings.append(other("The core's modulus", amount("ratio", errors.core, 0), errors.core,
                          lambda each: each.rates.core))
    sections = [uncalibrated([now.by_section(limb, place)], [then.by_section(limb, place)])
                for limb in (0, 1) for place in range(len(planned.bow.stations[limb]))]
    readings.append(Cause("Thickness of the sections", amount("thickness", errors.thickness, 4),
                          errors.thickness * spread([each[0] for each in sections]),
                          errors.thickness * spread([each[1] for each in sections])))
    share = planned.sanding.belly_share
    return Ranges(takings + readings, taken, _removals(readings, taken) if met else None,
                  (spread([errors.glass, errors.taken * (1 - share)]),
                   spread([errors.glass, errors.taken * share])),
                  stiffer_now, transposed(carried(1.0, 0.0), carried(0.0, 1.0)))


def _removals(readings: list[Cause], taken: "Rates") -> tuple[float, float]:
    """Return the standard error of the removal from each limb that meets the targets on the bow as it is."""
    found = [_solved(taken, (each.weight, each.tiller)) for each in readings]
    return spread([each[0] for each in found]), spread([each[1] for each in found])


def _solved(rates: "Rates", gained: tuple[float, float]) -> tuple[float, float]:
    """Return what of both limbs brings a gain of weight and tiller, or raise ValueError."""
    found = solved(rates[0], rates[1], gained)
    if found is None:
        raise ValueError("both limbs act alike on weight and tiller")
    return found


def _times(rates: "Rates", amounts: tuple[float, float]) -> tuple[float, float]:
    return (rates[0][0] * amounts[0] + rates[0][1] * amounts[1],
            rates[1][0] * amounts[0] + rates[1][1] * amounts[1])
