"""How the weight and tiller of a measured bow answer to what was measured of it, and to what comes off it."""

from calc.bows.measured import MeasuredBow
from calc.mechanics.bow.limb import PlaceOfLimb, Sanding
from calc.mechanics.bow.tuning import BowState, Setup, rates_of

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    Rates = tuple[tuple[float, float], tuple[float, float]]


class Answering:
    """The rates of weight [N] and tiller [m] of a bow in a state, with so much off its limbs [m].

    Raises:
        ValueError: the bow stands where it tips or a tip lets go, so that there are none.
    """

    def __init__(
        self, bow: MeasuredBow, setup: Setup, sanding: Sanding, removals: tuple[float, float], state: BowState
    ) -> None:
        self._rates = rates_of(state, setup)
        self._places = [bow.places(limb, sanding, removals[limb]) for limb in (0, 1)]

    def gain(self, limb: int, gain: "Callable[[PlaceOfLimb], float]") -> tuple[float, float]:
        """Return what weight and tiller gain where the stiffness of each place of a limb gains so much."""
        return self._rates.gain(limb, [gain(each) for each in self._places[limb]])

    def by_factors(self) -> "Rates":
        """Return the rates of weight and tiller by a share more of stiffness, upper and lower."""
        return transposed(self._rates.whole(0), self._rates.whole(1))

    def by_removals(self) -> "Rates":
        """Return the rates of weight and tiller by what is taken off, upper and lower."""
        upper, lower = [self.gain(limb, lambda each: each.rates.removal * each.sanded) for limb in (0, 1)]
        return transposed(upper, lower)

    def by_section(self, limb: int, section: int) -> tuple[float, float]:
        """Return the rates of weight and tiller by the thickness of one measured section."""
        return self.gain(limb, lambda each: each.rates.thickness * each.shares[section])


def transposed(upper: tuple[float, float], lower: tuple[float, float]) -> "Rates":
    """Return rates of weight and tiller by both limbs, from what either limb does to both."""
    return (upper[0], lower[0]), (upper[1], lower[1])
