"""What to take off each limb of a computed bow so that weight and tiller arrive together."""

from collections import namedtuple

from calc.mechanics.bow import Bow
from calc.mechanics.tuning import Bench, Met, State, meet_steps, newton_step, read

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator, Iterator

Reduction = namedtuple("Reduction", "upper lower state rates limit")
"""Removals [m], the bow's state after them, the rates of (weight, tiller) by each removal before any, and
what stood in the way: NOTHING, GLASS (no more may come off) or STIFFNESS (a limb would have to gain some)."""

NOTHING = "nothing"
GLASS = "glass"
STIFFNESS = "stiffness"

PROBE = 2e-5  # [m] by which a removal is varied to see what it does
SMALLEST = 1e-7  # [m] of removal that counts
CLOSE = 1e-6  # of the value wanted
MOST_STEPS = 30


def reduction_steps(
    bow_with: "Callable[[float, float], Bow]", bench: Bench, weight: float, tiller: float, most: float
) -> "Generator[float, None, Reduction]":
    """Find the removals on two limbs that give the bow the weight and tiller wanted, or come nearest.

    Where the glass does not allow the weight, tiller is kept and weight stays higher. Where tiller would ask
    a limb to gain stiffness, weight is kept and tiller stays off.

    Args:
        bow_with: makes the bow for two removals [m], 0 to `most`.
        bench: how the bow is read.
        weight [N]: wanted, not more than the bow has.
        tiller [m]: wanted, upper minus lower.
        most [m]: that may come off either limb.

    Yields:
        [1] how far the work is, 0 to 1.

    Returns:
        A Reduction.

    Raises:
        ValueError: a bow on the way cannot be braced or drawn.

    Source: elastica
    """
    search = meet_steps(bow_with, (0.0, 0.0), (PROBE, PROBE), bench, weight, tiller)
    met = next(search)
    yield 0.3
    rates, before = met.rates, met.state
    guess = newton_step(rates, (weight - before.weight, tiller - before.tiller))
    if min(guess) < -SMALLEST:
        found = yield from _one_limb(bow_with, bench, before, guess, weight, most)
        return Reduction(found[0], found[1], found[2], rates, STIFFNESS)
    if max(guess) < 2 * most:
        amounts = yield from _to_the_end(met, search)
        if amounts is not None and max(amounts.amounts) <= most:
            return Reduction(max(0.0, amounts.amounts[0]), max(0.0, amounts.amounts[1]), amounts.state, rates,
                             NOTHING)
        guess = guess if amounts is None else amounts.amounts
    upper, lower, state = yield from _at_the_glass(bow_with, bench, before, guess, tiller, most)
    return Reduction(upper, lower, state, rates, GLASS)


def _to_the_end(met: Met, search: "Iterator[Met]") -> "Generator[float, None, Met | None]":
    """Follow a search to its last trial; None where it leaves what can be computed."""
    try:
        for step, trial in enumerate(search):
            met = trial
            yield min(0.9, 0.4 + 0.1 * step)
    except ValueError:
        return None
    return met


def _one_limb(
    bow_with: "Callable[[float, float], Bow]",
    bench: Bench,
    before: State,
    guess: tuple[float, float],
    weight: float,
    most: float,
) -> "Generator[float, None, tuple[float, float, State]]":
    """Take the whole weight off the one limb that may lose stiffness."""
    if weight >= before.weight * (1 - CLOSE):
        return 0.0, 0.0, before
    upper = guess[0] >= guess[1]

    def bow_by(removal: float) -> Bow:
        return bow_with(removal, 0.0) if upper else bow_with(0.0, removal)

    def weight_of(state: State) -> float:
        return float(state.weight)

    removal, state = yield from _reach(bow_by, bench, before, weight_of, weight, most)
    return (removal, 0.0, state) if upper else (0.0, removal, state)


def _at_the_glass(
    bow_with: "Callable[[float, float], Bow]",
    bench: Bench,
    before: State,
    guess: tuple[float, float],
    tiller: float,
    most: float,
) -> "Generator[float, None, tuple[float, float, State]]":
    """Take the most off the limb that needs more, and off the other what tiller asks for."""
    if most < SMALLEST:
        return 0.0, 0.0, before
    upper = guess[0] >= guess[1]

    def bow_by(removal: float) -> Bow:
        return bow_with(most, removal) if upper else bow_with(removal, most)

    def tiller_of(state: State) -> float:
        return float(state.tiller)

    removal, state = yield from _reach(bow_by, bench, before, tiller_of, tiller, most)
    return (most, removal, state) if upper else (removal, most, state)


def _reach(
    bow_by: "Callable[[float], Bow]",
    bench: Bench,
    near: State,
    value_of: "Callable[[State], float]",
    wanted: float,
    most: float,
) -> "Generator[float, None, tuple[float, State]]":
    """Find the removal, 0 to `most`, at which a value is reached, or the end of the range nearest to it."""
    low, high = 0.0, most
    state = read(bow_by(low), bench, near)
    off_low = value_of(state) - wanted
    yield 0.5
    at_most = read(bow_by(high), bench, state)
    off_high = value_of(at_most) - wanted
    yield 0.6
    if off_low * off_high > 0:
        return (low, state) if abs(off_low) < abs(off_high) else (high, at_most)
    scale = CLOSE * max(abs(wanted), abs(off_low), abs(off_high))
    removal = low if off_low == 0 else high
    for step in range(MOST_STEPS):
        if off_low == off_high:
            break
        removal = (low * off_high - high * off_low) / (off_high - off_low)
        state = read(bow_by(removal), bench, state)
        off = value_of(state) - wanted
        yield min(0.95, 0.7 + 0.03 * step)
        if abs(off) < scale or high - low < SMALLEST:
            break
        if off * off_low > 0:
            low, off_low, off_high = removal, off, off_high / 2
        else:
            high, off_high, off_low = removal, off, off_low / 2
    return removal, state
