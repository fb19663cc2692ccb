"""What to take off each limb of a computed bow so that weight and tiller arrive together."""

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.tuning import (
    BowState,
    Met,
    Setup,
    meet_steps,
    newton_step,
    read,
)

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator, Iterator

    Rates = tuple[tuple[float, float], tuple[float, float]]


class Reduction:
    """Removals [m], the bow's state after them, and rates of (weight, tiller) by each removal before any.

    too_heavy: the weight stays higher than wanted. off_tiller: tiller stays off. lower_weight_helps: tiller
    would come where it is wanted if more weight were to go, within what may come off.
    """

    def __init__(
        self, upper: float, lower: float, state: BowState,
        rates: tuple[tuple[float, float], tuple[float, float]], too_heavy: bool, off_tiller: bool,
        lower_weight_helps: bool
    ) -> None:
        self.upper = upper
        self.lower = lower
        self.state = state
        self.rates = rates
        self.too_heavy = too_heavy
        self.off_tiller = off_tiller
        self.lower_weight_helps = lower_weight_helps


PROBE = 2e-5  # [m] by which a removal is varied to see what it does
SMALLEST = 1e-7  # [m] of removal that counts
CLOSE = 1e-6  # of the value wanted
WEIGHT_MET = 1e-5  # of the weight wanted
TILLER_MET = 1e-5  # [m]
FAR_OUT = 1.5  # times what may come off: a first guess beyond it is not followed
MOST_STEPS = 30


def reduction_steps(
    bow_with: "Callable[[float, float], Bow]", setup: Setup, weight: float, tiller: float, most: float,
    before: BowState | None = None, rates_at: "Callable[[BowState], Rates] | None" = None,
) -> "Generator[float, None, Reduction]":
    """Find the removals on two limbs that give the bow the weight and tiller wanted, or come nearest.

    Where `most` does not allow the weight, tiller is kept and weight stays higher. Where tiller would ask a
    limb to gain stiffness, weight is kept and tiller stays off. Where both stand in the way, the limb that
    tiller wants weaker loses the most, and the other nothing.

    Args:
        bow_with: makes the bow for two removals [m], 0 to `most`.
        setup: how the bow is read.
        weight [N]: wanted, not more than the bow has.
        tiller [m]: wanted, upper minus lower.
        most [m]: that may come off either limb.
        before: the bow's state before any of it, if it is known.
        rates_at: tells the rates by both removals, before any, from that state; None to find them by probes.

    Yields:
        [1] how far the work is, 0 to 1.

    Returns:
        A Reduction.

    Raises:
        ValueError: a bow on the way cannot be braced or drawn.

    Limits:
        Taking material off must bring weight down, and tiller toward the limb that it comes off.

    Source: elastica, the search itself is derived here.
    """
    search = meet_steps(bow_with, (0.0, 0.0), (PROBE, PROBE), setup, weight, tiller,
                        ((0.0, most), (0.0, most)), first=before, rates_at=rates_at)
    met = next(search)
    yield 0.3
    before = met.state
    guess = newton_step(met.rates, (weight - before.weight, tiller - before.tiller))
    found, helps = None, False
    if min(guess) >= -SMALLEST and max(guess) < FAR_OUT * most:
        found = yield from _to_the_end(met, search)
    if found is None:
        edges = _Edges(bow_with, setup, before, weight, tiller, most)
        found, helps = yield from edges.nearest()
    state = found.state
    return Reduction(
        found.amounts[0], found.amounts[1], state, met.rates, state.weight > weight * (1 + WEIGHT_MET),
        abs(state.tiller - tiller) > TILLER_MET, helps)


class _Found:
    """Removals [m] and the bow's state with them."""

    def __init__(self, amounts: tuple[float, float], state: BowState) -> None:
        self.amounts = amounts
        self.state = state


def _to_the_end(met: Met, search: "Iterator[Met]") -> "Generator[float, None, _Found | None]":
    """Follow a search to its last trial; None where it leads to no bow."""
    try:
        for step, trial in enumerate(search):
            met = trial
            yield min(0.9, 0.4 + 0.1 * step)
    except ValueError:
        return None
    return _Found(met.amounts, met.state)


class _Edges:
    """The search along the edges of what may come off: nothing or the most off one of the limbs.

    The limb that tiller wants weaker is the first, the other one the second.
    """

    def __init__(
        self,
        bow_with: "Callable[[float, float], Bow]",
        setup: Setup,
        before: BowState,
        weight: float,
        tiller: float,
        most: float,
    ) -> None:
        self.bow_with = bow_with
        self.setup = setup
        self.before = before
        self.weight = weight
        self.tiller = tiller
        self.most = most
        self.upper_first = tiller >= before.tiller

    def nearest(self) -> "Generator[float, None, tuple[_Found, bool]]":
        """Return the removals that come nearest, and whether more of them would bring tiller in."""
        if self.most < SMALLEST:
            return _Found((0.0, 0.0), self.before), False
        full = self._read(self.most, 0.0, self.before)
        yield 0.5
        helps = self._past(full)
        alone = full
        if full.state.weight < self.weight:
            alone = yield from self._reach(self._off_the_first, self._too_heavy,
                                           _Found((0.0, 0.0), self.before), full)
            if not self._past(alone) or abs(alone.state.tiller - self.tiller) <= TILLER_MET:
                return alone, helps
        elif not helps:
            return full, False
        return (yield from self._with_both(full, alone)), False

    def _with_both(self, full: _Found, alone: _Found) -> "Generator[float, None, _Found]":
        """Return the removals where both limbs have to give, one of them perhaps the most."""
        both = self._read(self.most, self.most, full.state)
        yield 0.6
        if self._past(both):  # the second limb has to give more than the first
            start = self._read(0.0, self.most, self.before)
            at_most = yield from self._reach(self._with_most_second, self._tiller_off, start, both)
        else:
            at_most = yield from self._reach(self._with_most_first, self._tiller_off, full, both)
        if at_most.state.weight >= self.weight:
            return at_most
        search = meet_steps(self.bow_with, alone.amounts, (PROBE, PROBE), self.setup, self.weight,
                            self.tiller, ((0.0, self.most), (0.0, self.most)))
        met = None
        for step, trial in enumerate(search):
            met = trial
            yield min(0.95, 0.8 + 0.03 * step)
        return at_most if met is None else _Found(met.amounts, met.state)

    def _read(self, first: float, second: float, near: BowState) -> _Found:
        amounts = (first, second) if self.upper_first else (second, first)
        return _Found(amounts, read(self.bow_with(amounts[0], amounts[1]), self.setup, near))

    def _off_the_first(self, removal: float, near: BowState) -> _Found:
        return self._read(removal, 0.0, near)

    def _with_most_first(self, removal: float, near: BowState) -> _Found:
        return self._read(self.most, removal, near)

    def _with_most_second(self, removal: float, near: BowState) -> _Found:
        return self._read(removal, self.most, near)

    def _too_heavy(self, state: BowState) -> float:
        return float(state.weight - self.weight) / self.weight

    def _tiller_off(self, state: BowState) -> float:
        return float(state.tiller - self.tiller) / self.setup.brace_height

    def _past(self, found: _Found) -> bool:
        """Say whether tiller has come where it is wanted, or farther."""
        off = found.state.tiller - self.tiller
        return bool(off > -TILLER_MET if self.upper_first else off < TILLER_MET)

    def _reach(
        self,
        read_at: "Callable[[float, BowState], _Found]",
        amiss: "Callable[[BowState], float]",
        start: _Found,
        end: _Found,
    ) -> "Generator[float, None, _Found]":
        """Return the removal, 0 to the most, at which nothing is amiss, or the nearer end of that range."""
        low, high = 0.0, self.most
        off_low, off_high = amiss(start.state), amiss(end.state)
        if off_low * off_high >= 0 or abs(off_low) < CLOSE:
            return start if abs(off_low) < abs(off_high) else end
        found = end
        for step in range(MOST_STEPS):
            removal = (low * off_high - high * off_low) / (off_high - off_low)
            found = read_at(removal, found.state)
            off = amiss(found.state)
            yield min(0.9, 0.6 + 0.03 * step)
            if abs(off) < CLOSE or high - low < SMALLEST:
                break
            if off * off_low > 0:
                low, off_low, off_high = removal, off, off_high / 2
            else:
                high, off_high, off_low = removal, off, off_low / 2
        return found
