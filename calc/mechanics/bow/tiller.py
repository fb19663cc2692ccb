"""How tiller answers to a difference in stiffness between two limbs that are otherwise alike."""

import math

from calc.mechanics.bow.bow import Bow, Braced
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.draw_curve import Curve, force_at, monotone_slopes, slope_at
from calc.numerics import cubic
from calc.numerics.roots import halved

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Iterator

WIDEST = 0.6
"""Logarithm of the largest ratio of the two limbs' stiffness."""

PLACES = (0.04, 0.16, 0.33, 0.5, 0.67, 0.83, 1.0)
"""Parts of the widest at which bows are computed on either side of the balanced one: the first close to it,
since the curve's slope there is the answer asked for most."""


class TillerCurve:
    """Tillers [m] at logarithms of lower over upper stiffness [1], and the slopes there of the monotone cubic
    that joins them.
    """

    def __init__(self, ratios: tuple[float, ...], tillers: tuple[float, ...]) -> None:
        self.ratios = ratios
        self.tillers = tillers
        self.slopes = monotone_slopes(ratios, tillers)
        self._cubic = Curve(ratios, tillers, self.slopes)

    def tiller_at(self, ratio: float) -> float:
        """Return tiller at a ratio of stiffness.

        Args:
            ratio [1]: logarithm of lower over upper stiffness, within the curve.

        Returns:
            [m] upper minus lower.

        Raises:
            ValueError: the ratio is outside the curve.

        Source: elastica, by `tiller_by_stiffness`.
        """
        return force_at(self._cubic, ratio)

    def slope_at(self, ratio: float) -> float:
        """Return how fast tiller changes at a ratio of stiffness.

        Args:
            ratio [1]: logarithm of lower over upper stiffness, within the curve.

        Returns:
            [m] for one unit of the logarithm.

        Raises:
            ValueError: the ratio is outside the curve.

        Source: elastica, by `tiller_by_stiffness`.
        """
        return slope_at(self._cubic, ratio)


def tiller_by_stiffness(limb: Limb, brace_height: float, from_end: float | None) -> TillerCurve:
    """Return tiller against the logarithm of lower over upper stiffness, for two limbs of one shape.

    Only the ratio counts: a common factor changes the tension of a string that does not stretch, not the
    shape. Bows are computed from the balanced one outward, each from the one before, as far as they can be
    braced; a monotone cubic joins them.

    Args:
        limb: both limbs, before one is made stiffer.
        brace_height [m]: from the pivot point to the string.
        from_end [m]: where tiller is read, from the string's ends; None for the fadeouts.

    Returns:
        The curve.

    Raises:
        ValueError: the bow cannot be braced, or tiller does not show where it is read.

    Limits:
        Limbs of one shape and one taper of stiffness; the string does not stretch. Between the bows computed
        the curve and its slope at 0 keep within half a per cent.

    Source: elastica, by `Bow.brace`.
    """
    middle = Bow(limb, limb).brace(brace_height)
    above = list(_outward(limb, brace_height, from_end, middle))
    if not above:
        raise ValueError(
            "a bow of these measures cannot be braced once its limbs differ a little, or tiller does not "
            "show where it is read"
        )
    ratios = [-ratio for ratio, _ in reversed(above)] + [0.0] + [ratio for ratio, _ in above]
    tillers = [-tiller for _, tiller in reversed(above)] + [0.0] + [tiller for _, tiller in above]
    return TillerCurve(tuple(ratios), tuple(tillers))


def _outward(
    limb: Limb, brace_height: float, from_end: float | None, near: Braced
) -> "Iterator[tuple[float, float]]":
    """Yield (logarithm of lower over upper stiffness, tiller) for ever stiffer lower limbs."""
    highest = 0.0
    for place in PLACES:
        ratio = WIDEST * place
        bow = Bow(limb.stiffened(math.exp(-ratio / 2)), limb.stiffened(math.exp(ratio / 2)))
        try:
            near = bow.brace(brace_height, near)
            tiller = (near.tiller_at_fadeouts() if from_end is None else near.tiller(from_end)).difference
        except ValueError:
            return
        if tiller <= highest:
            return
        highest = tiller
        yield ratio, tiller


def ratio_for(curve: TillerCurve, tiller: float) -> float | None:
    """Return the logarithm of lower over upper stiffness that goes with a tiller.

    Args:
        curve: as `tiller_by_stiffness` gives it.
        tiller [m]: upper minus lower.

    Returns:
        [1] the logarithm; None where the curve does not reach that tiller.

    Source: elastica, the curve of `tiller_by_stiffness` read backwards.
    """
    if not curve.tillers[0] <= tiller <= curve.tillers[-1]:
        return None
    place = 1
    while curve.tillers[place] < tiller:
        place += 1
    before = place - 1
    gap = curve.ratios[place] - curve.ratios[before]
    start, end = curve.tillers[before], curve.tillers[place]
    leave, arrive = curve.slopes[before] * gap, curve.slopes[place] * gap
    part = halved(0.0, 1.0, lambda part: cubic.value(start, end, leave, arrive, part) < tiller)
    return curve.ratios[before] + part * gap
