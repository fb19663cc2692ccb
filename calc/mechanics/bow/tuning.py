"""Weight and tiller together: how both answer to stiffness, and how to bring both where they are wanted."""

import math

from calc.checks import require_positive
from calc.mechanics.bow.bow import Bow, Braced, Drawn, TipLetsGo
from calc.mechanics.bow.elastica import Limb, LimbShape
from calc.mechanics.bow.place_rates import PlaceRates, place_rates
from calc.numerics.interpolation import along_straight
from calc.numerics.roots import solved

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has neither module
    from collections.abc import Callable, Iterator

    Rates = tuple[tuple[float, float], tuple[float, float]]

WEIGHT_TOLERANCE = 1e-7  # relative
TILLER_TOLERANCE = 1e-7  # [m]
MOST_TRIALS = 20
LIKENED = (0.1, 0.3, 0.5)  # of a limb's length: places that decide how stiff it is
MOST_HALVINGS = 4
"""Of a step that ends at a bow that cannot be computed."""

MOST_AMISS = 3.0
"""Logarithm of the largest stiffness factor beside what weight alone asks for, and of the largest between the
limbs: twenty times. Beyond it a figure is wrong, not a bow strange."""

LONGEST_STEP = 0.7
"""Of a logarithm of stiffness, from one trial to the next: about double or half."""


class Setup:
    """How the bow is read: brace height [m], draw [m] from pivot point to nocking point, and the distance [m]
    from the string's ends at which tiller is read; None to read it at the fadeouts."""

    def __init__(self, brace_height: float, draw: float, from_end: float | None) -> None:
        self.brace_height = brace_height
        self.draw = draw
        self.from_end = from_end


class BowState:
    """Draw weight [N], tiller [m] (upper minus lower) and the two states they were read from."""

    def __init__(self, weight: float, tiller: float, braced: Braced, drawn: Drawn) -> None:
        self.weight = weight
        self.tiller = tiller
        self.braced = braced
        self.drawn = drawn


class Shares:
    """Which part of the draw weight rests on the stiffness of what [1]: one value per station of each limb's
    `arc_length`, and one for the string's stretch; all together add up to 1."""

    def __init__(self, upper: tuple[float, ...], lower: tuple[float, ...], string: float) -> None:
        self.upper = upper
        self.lower = lower
        self.string = string


class Calibration:
    """Stiffness factors [1], the bow with them, its state on the bench, and model less reading [N] for each
    reading of the draw."""

    def __init__(
        self, upper_factor: float, lower_factor: float, bow: Bow, state: BowState, misfits: tuple[float, ...]
    ) -> None:
        self.upper_factor = upper_factor
        self.lower_factor = lower_factor
        self.bow = bow
        self.state = state
        self.misfits = misfits


class Met:
    """Two amounts that meet a target, the bow and its state with them, and the rates there: ((weight by
    first, weight by second), (tiller by first, tiller by second)).
    """

    def __init__(
        self, amounts: tuple[float, float], bow: Bow, state: BowState,
        rates: tuple[tuple[float, float], tuple[float, float]]
    ) -> None:
        self.amounts = amounts
        self.bow = bow
        self.state = state
        self.rates = rates


class Unmet(ValueError):
    """No two amounts give a bow the weight and tiller wanted."""


def read(bow: Bow, setup: Setup, near: BowState | None = None) -> BowState:
    """Brace and draw a bow and read its weight and tiller.

    Args:
        bow: braced by this call.
        setup: how it is read.
        near: the state of a bow much like this one but for how stiff it is all along, to start from.

    Returns:
        A State.

    Raises:
        ValueError: the bow cannot be braced or drawn so.

    Source: elastica, by `Bow.brace` and `Bow.draw`.
    """
    if near is None:
        return _state(setup, bow.brace(setup.brace_height), bow.draw(setup.draw))
    harder = _harder(bow, near.braced.bow)
    return _state(setup, bow.brace(setup.brace_height, near.braced, harder),
                  bow.draw(setup.draw, near.drawn, harder))


def _harder(bow: Bow, other: Bow) -> float:
    """Return about how many times as stiff as another a bow is: the geometric mean at some places."""
    product = 1.0
    for limb, like in ((bow.upper, other.upper), (bow.lower, other.lower)):
        for part in LIKENED:
            product *= along_straight(limb.stiffness, part) / along_straight(like.stiffness, part)
    return math.exp(math.log(product) * 0.5 / len(LIKENED))


def _state(setup: Setup, braced: Braced, drawn: Drawn) -> BowState:
    tiller = braced.tiller_at_fadeouts() if setup.from_end is None else braced.tiller(setup.from_end)
    return BowState(drawn.force, tiller.difference, braced, drawn)


def rates_of(state: BowState, setup: Setup) -> PlaceRates:
    """Return how the weight and tiller of a bow that was read answer to its limbs' stiffness.

    Args:
        state: as `read` gave it.
        setup: how it was read.

    Returns:
        PlaceRates.

    Raises:
        ValueError: the bow stands where it tips or a tip lets go.

    Source: elastica, by `place_rates`.
    """
    return place_rates(state.braced, state.drawn, setup.from_end)


def bending_shares(bow: Bow, distance: float, near: Drawn | None = None) -> Shares:
    """Return which part of the draw weight each stretch of each limb carries.

    With the string left as it is, the energy a bow holds is stationary in its shape, so that only the
    stiffness itself counts for a small change of it:

        dF = integral of (dEI / EI) M d(bending)/dD ds,

    M the moment, D the draw. Divided by F these are weights that add up to 1 with the string's own.

    Args:
        bow: braced.
        distance [m]: pivot point to nocking point, more than when braced.
        near: this bow drawn so, if it is known.

    Returns:
        Shares.

    Raises:
        ValueError: the bow is not braced or cannot be drawn a little beyond this distance.

    Limits:
        First order, and for an unchanged string. With the brace height put back by twisting the string
        the weight answers a little differently: difference `read` for that.

    Source: elastica, derived here: energy is stationary in the shape.
    """
    here = bow.draw(distance, near)
    step = 1e-3 * distance
    braced = bow.braced
    room = braced is not None and distance - step > braced.distance
    before = bow.draw(distance - step, here) if room else here
    after = bow.draw(distance + step, here)
    between = after.distance - before.distance
    upper = _limb_shares(here.upper, before.upper, after.upper, between * here.force)
    lower = _limb_shares(here.lower, before.lower, after.lower, between * here.force)
    return Shares(tuple(upper), tuple(lower), 1.0 - sum(upper) - sum(lower))


def _limb_shares(here: LimbShape, before: LimbShape, after: LimbShape, scale: float) -> list[float]:
    """Return one limb's shares, station by station, by the trapezoidal rule."""
    step = here.arc_length[1] - here.arc_length[0]
    last = len(here.arc_length) - 1
    shares = []
    for i in range(last + 1):
        width = 0.5 * step if i in (0, last) else step
        shares.append(width * here.moment[i] * (after.bending[i] - before.bending[i]) / scale)
    return shares


def calibrate(
    bow: Bow,
    setup: Setup,
    weight: float,
    tiller: float,
    readings: tuple[tuple[float, float], ...] = (),
) -> Calibration:
    """Find one stiffness factor a limb that gives the bow its measured weight and tiller.

    Args:
        bow: as reckoned from its measures; braced by this call unless it is at this brace height.
        setup: how it was read.
        weight [N]: measured at the draw of `setup`, > 0.
        tiller [m]: measured, upper minus lower.
        readings: further pairs of draw [m] and weight [N], the draws rising, to compare with; they do not
            steer the factors.

    Returns:
        A Calibration.

    Raises:
        ValueError: the bow cannot be braced or drawn; as Unmet, no factors give these readings, or only such
            as make one limb more than twenty times as stiff beside the other as reckoned.

    Source: elastica, the search of `meet`.
    """
    require_positive("measured weight", weight, "N")

    def with_factors(common: float, difference: float) -> Bow:
        upper, lower = math.exp(common + 0.5 * difference), math.exp(common - 0.5 * difference)
        return _with_limbs(bow, bow.upper.stiffened(upper), bow.lower.stiffened(lower))

    # A common factor scales the weight and leaves tiller alone but for the stretch of the string.
    braced = bow.braced
    if braced is None or braced.height != setup.brace_height:
        braced = bow.brace(setup.brace_height)
    drawn = bow.draw(setup.draw)
    force = drawn.force
    if not force > 0.0:
        raise ValueError("the bow pulls nothing at the draw at which its weight is stated")
    common = math.log(weight / force)

    def rates_at(state: BowState) -> "Rates":
        """Return the rates by the common factor and by the difference, both as logarithms."""
        rates = place_rates(state.braced, state.drawn, setup.from_end, alike=True)
        upper, lower = rates.whole(0), rates.whole(1)
        return ((upper[0] + lower[0], (upper[0] - lower[0]) / 2),
                (upper[1] + lower[1], (upper[1] - lower[1]) / 2))

    within = (common - MOST_AMISS, common + MOST_AMISS), (-MOST_AMISS, MOST_AMISS)
    try:
        first = read(with_factors(common, 0.0), setup, _state(setup, braced, drawn))
        met = meet(with_factors, (common, 0.0), (0.02, 0.02), setup, weight, tiller, within, LONGEST_STEP,
                   first, rates_at)
    except TipLetsGo:
        raise
    except ValueError as error:
        raise Unmet(str(error)) from None
    found_common, found_difference = met.amounts
    curve = met.bow.curve([draw for draw, _ in readings])
    misfits = tuple([each.force - force for each, (_, force) in zip(curve, readings)])
    return Calibration(
        math.exp(found_common + 0.5 * found_difference),
        math.exp(found_common - 0.5 * found_difference),
        met.bow, met.state, misfits,
    )


def _with_limbs(bow: Bow, upper: Limb, lower: Limb) -> Bow:
    """Return the same bow with other limbs."""
    return Bow(upper, lower, bow.pivot, bow.string_stiffness)


def meet(
    bow_with: "Callable[[float, float], Bow]",
    start: tuple[float, float],
    probes: tuple[float, float],
    setup: Setup,
    weight: float,
    tiller: float,
    within: tuple[tuple[float, float], tuple[float, float]] | None = None,
    longest: float = math.inf,
    first: BowState | None = None,
    rates_at: "Callable[[BowState], Rates] | None" = None,
) -> Met:
    """Find two amounts, such as the removals on two limbs, that give a bow the weight and tiller wanted.

    Args:
        bow_with: makes the bow for two amounts.
        start: two amounts to begin from.
        probes: how far to vary each amount to see what it does, not zero; a small part of what is expected.
        setup: how the bow is read.
        weight [N]: wanted, > 0.
        tiller [m]: wanted, upper minus lower.
        within: (least, most) of each amount, both of `start` among them; None: any.
        longest [any]: step of an amount from one trial to the next, > 0.
        first: the state of the first bow, if it is known.
        rates_at: tells the rates at the first bow from its state; None to find them by the probes.

    Returns:
        Met.

    Raises:
        ValueError: the first bow cannot be made, braced or drawn; as Unmet, no amounts give these readings.

    Source: elastica, the search itself is derived here: Newton's method with Broyden's rates.
    """
    trials = list(meet_steps(bow_with, start, probes, setup, weight, tiller, within, longest, first,
                             rates_at))
    return trials[-1]


def meet_steps(
    bow_with: "Callable[[float, float], Bow]",
    start: tuple[float, float],
    probes: tuple[float, float],
    setup: Setup,
    weight: float,
    tiller: float,
    within: tuple[tuple[float, float], tuple[float, float]] | None = None,
    longest: float = math.inf,
    first: BowState | None = None,
    rates_at: "Callable[[BowState], Rates] | None" = None,
) -> "Iterator[Met]":
    """Yield the trials that `meet` goes through, one bow at a time; the last is the answer.

    Newton's method with differenced rates, which Broyden's formula keeps up from trial to trial. A step that
    leaves `within` ends at its border; one to a bow that cannot be computed is halved.

    Args:
        bow_with: as for `meet`.
        start: as for `meet`.
        probes: as for `meet`.
        setup: as for `meet`.
        weight [N]: wanted, > 0.
        tiller [m]: wanted, upper minus lower.
        within: as for `meet`.
        longest [any]: as for `meet`.
        first: as for `meet`.
        rates_at: as for `meet`.

    Returns:
        Met, one by one.

    Raises:
        ValueError: as for `meet`.

    Source: elastica, as for `meet`.
    """
    require_positive("wanted weight", weight, "N")
    amounts = start
    state = first or read(bow_with(amounts[0], amounts[1]), setup)
    bow = state.braced.bow
    rates = rates_at(state) if rates_at else _differenced_rates(bow_with, amounts, probes, setup, state)
    yield Met(amounts, bow, state, rates)
    for _ in range(MOST_TRIALS):
        lack = weight - state.weight, tiller - state.tiller
        if abs(lack[0]) < WEIGHT_TOLERANCE * weight and abs(lack[1]) < TILLER_TOLERANCE:
            return
        aims = _aims(amounts, newton_step(rates, lack), within, longest)
        aims, bow, after = _computable(bow_with, amounts, aims, setup, state)
        step = aims[0] - amounts[0], aims[1] - amounts[1]
        if step[0] == 0.0 and step[1] == 0.0:
            break
        rates = _broyden(rates, step, (after.weight - state.weight, after.tiller - state.tiller))
        amounts, state = aims, after
        yield Met(amounts, bow, state, rates)
    raise Unmet("no amounts were found that give the bow the weight and tiller wanted")


def _aims(
    amounts: tuple[float, float],
    step: tuple[float, float],
    within: tuple[tuple[float, float], tuple[float, float]] | None,
    longest: float,
) -> tuple[float, float]:
    """Return the amounts that a step leads to, shortened to the longest and ended at the border."""
    part = min(1.0, longest / max(abs(step[0]), abs(step[1]), 1e-300))
    aims = amounts[0] + part * step[0], amounts[1] + part * step[1]
    if within is None:
        return aims
    (least_first, most_first), (least_second, most_second) = within
    return min(max(aims[0], least_first), most_first), min(max(aims[1], least_second), most_second)


def _computable(
    bow_with: "Callable[[float, float], Bow]",
    amounts: tuple[float, float],
    aims: tuple[float, float],
    setup: Setup,
    near: BowState,
) -> tuple[tuple[float, float], Bow, BowState]:
    """Return the amounts aimed at, or the first on the way back from them whose bow can be computed."""
    let_go: TipLetsGo | None = None
    for _ in range(MOST_HALVINGS + 1):
        try:
            bow = bow_with(aims[0], aims[1])
            return aims, bow, read(bow, setup, near)
        except ValueError as error:
            let_go = error if isinstance(error, TipLetsGo) else None
            aims = (amounts[0] + aims[0]) / 2, (amounts[1] + aims[1]) / 2
    raise let_go or Unmet("no bow between two trials can be computed")


def _differenced_rates(
    bow_with: "Callable[[float, float], Bow]",
    at: tuple[float, float],
    probes: tuple[float, float],
    setup: Setup,
    state: BowState,
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the rates of weight and tiller by both amounts, by differences."""
    by_first = read(bow_with(at[0] + probes[0], at[1]), setup, state)
    by_second = read(bow_with(at[0], at[1] + probes[1]), setup, state)
    return (
        ((by_first.weight - state.weight) / probes[0], (by_second.weight - state.weight) / probes[1]),
        ((by_first.tiller - state.tiller) / probes[0], (by_second.tiller - state.tiller) / probes[1]),
    )


def newton_step(
    rates: tuple[tuple[float, float], tuple[float, float]], lack: tuple[float, float]
) -> tuple[float, float]:
    """Return the change of both amounts that makes up what is lacking, as the rates have it.

    Args:
        rates: ((weight by first, weight by second), (tiller by first, tiller by second)).
        lack: of weight [N] and of tiller [m].

    Returns:
        The change of the first and of the second amount, in their own unit.

    Raises:
        ValueError: as Unmet, both amounts act alike on weight and tiller.

    Source: elastica, derived here: Cramer's rule on two equations.
    """
    found = solved(rates[0], rates[1], lack)
    if found is None:
        raise Unmet("the two amounts must act differently on weight and tiller; these do not")
    return found


def _broyden(
    rates: tuple[tuple[float, float], tuple[float, float]],
    step: tuple[float, float],
    gained: tuple[float, float],
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return rates that explain the last step, changed no more than needed."""
    square = step[0] ** 2 + step[1] ** 2
    rows = []
    for row, gain in zip(rates, gained):
        amiss = (gain - row[0] * step[0] - row[1] * step[1]) / square
        rows.append((row[0] + amiss * step[0], row[1] + amiss * step[1]))
    return rows[0], rows[1]
