"""Where the string runs over both limbs, and what a groove, a wedge and an edge do to it.

To the archer's right is positive in both limbs. Everything is to first order, so that what one remedy does
adds to what was read, and twice as much of it does twice as much.
"""

import math

from calc.bows.measured import MeasuredBow, in_both
from calc.mechanics.bow.across import (
    rigidity_across,
    torsional_rigidity,
    wedge_bend,
    wedge_shift,
)
from calc.mechanics.bow.laminate import Layer
from calc.mechanics.bow.limb import Sanding, sanded_share
from calc.mechanics.bow.sideways import (
    Across,
    Fault,
    Marches,
    Sideways,
    Standing,
    firmness,
    joined,
    marches,
    pair_firmness,
    standing,
)
from calc.mechanics.bow.thinning import (
    Build,
    Station,
    layers_of,
    section_at,
    section_rigidity,
)
from calc.mechanics.bow.tuning import BowState
from calc.outcome import Refused

GROOVE, WEDGE, EDGE = "groove", "wedge", "edge"
REMEDIES = (GROOVE, WEDGE, EDGE)

TORSION_KNOWN = 0.25
"""Of the torsional stiffness: how far that of an old laminate may be from the reckoned one, for shear moduli
of glass from 3 to 5 GPa are in use (assumption to edit)."""

MOST_SHARE = 4.0
LEAST_SHARE = 0.1
"""Of the reckoned torsional stiffness, between which the least that holds the limbs is looked for."""

SHARE_STEPS = 12

MOST_LAYERS = 0.95
"""Of a section's thickness: more than both layers of glass have, however thick they may be."""


class Variant:
    """A limb other than it is reckoned [1]: its torsional stiffness, width, thickness, glass and modulus of
    the core, each over that. Its bending stiffness in the plane stays, since weight and tiller gave it.
    """

    def __init__(
        self, torsion: float = 1.0, width: float = 1.0, thickness: float = 1.0, glass: float = 1.0,
        core: float = 1.0
    ) -> None:
        self.torsion = torsion
        self.width = width
        self.thickness = thickness
        self.glass = glass
        self.core = core

    @property
    def has_other_sections(self) -> bool:
        """Whether anything but its torsional stiffness is other than reckoned."""
        return (self.width, self.thickness, self.glass, self.core) != (1.0, 1.0, 1.0, 1.0)

    def of_section(self, section: Station, build: Build) -> tuple[Station, Build]:
        """Return a section and its lay-up as they may be."""
        thickness = self.thickness * section.thickness
        glass = min(self.glass, MOST_LAYERS * thickness / (build.back + build.belly))
        return (Station(section.position, self.width * section.width, thickness),
                Build(glass * build.back, glass * build.belly, build.glass_modulus,
                      self.core * build.core_modulus))


RECKONED = Variant()


class Torsion:
    """Shear moduli [Pa] of the glass and of the core, in the plane of the limb's face."""

    def __init__(self, glass: float, core: float) -> None:
        self.glass = glass
        self.core = core


class Stretch:
    """Where a limb is worked, and which of its faces takes the wedge, "belly" or "back"."""

    def __init__(self, sanding: Sanding, face: str) -> None:
        self.sanding = sanding
        self.face = face


class _Limb:
    """A limb as it stands, with what it is across, what a metre of wedge and of edge does to it, and for each
    place how much of both is taken there [1].
    """

    def __init__(
        self, stand: Standing, across: Across, wedge: Fault, edge: Fault, shares: list[float]
    ) -> None:
        self.stand = stand
        self.across = across
        self.faults = (wedge, edge)
        self.shares = shares

    def marched(self, share: float, with_faults: bool) -> Marches:
        """Return the limb's marches with so much of its torsional stiffness."""
        torsion = self.across.torsion
        across = Across(self.across.bending, [share * each for each in torsion])
        return marches(self.stand, across, self.faults if with_faults else ())


class Moves:
    """How far a metre of a remedy on one limb moves the string over each limb, upper and lower [1]: fadeout,
    and tip, sighted square to the belly where the string is as high as it was read.
    """

    def __init__(self, fadeout: tuple[float, float], tip: tuple[float, float]) -> None:
        self.fadeout = fadeout
        self.tip = tip


class Line:
    """Both limbs as they stand braced and drawn, joined by their string."""

    def __init__(
        self, bow: MeasuredBow, state: BowState, factors: tuple[float, float], torsion: Torsion,
        stretch: Stretch, heights: tuple[float, float]
    ) -> None:
        """heights [m]: of the string above the belly near the tips, where its offset was read.

        Raises:
            Refused: the string stands nowhere so low above a limb.
        """
        braced, drawn = state.braced, state.drawn
        self._bow, self._factors, self._torsion, self._stretch = bow, factors, torsion, stretch
        self._braced = self._limbs([
            standing(braced.upper, False, braced.tension, braced.tilt),
            standing(braced.lower, True, braced.tension, -braced.tilt)], RECKONED)
        self._drawn = self._limbs([
            standing(drawn.upper, False, drawn.tension_upper, drawn.string_angle_upper),
            standing(drawn.lower, True, drawn.tension_lower, drawn.string_angle_lower)], RECKONED)
        self._halves = [_half(each.stand, drawn.nock[0], y)
                        for each, y in zip(self._drawn, (drawn.nock[1], -drawn.nock[1]))]
        self._ways = [_ways(each.stand, braced.height) for each in self._braced]
        self._string = self._ways[0][-1] + self._ways[1][-1]
        self._tips = [_tip(bow, which, self._braced[which].stand, heights[which]) for which in (0, 1)]

    def _limbs(self, stands: list[Standing], variant: Variant) -> list[_Limb]:
        return [_limb(self._bow, which, self._factors[which], self._torsion, self._stretch, stands[which],
                      variant) for which in (0, 1)]

    def moves(self, variant: Variant) -> dict[tuple[int, str], Moves] | None:
        """Return what each remedy on each limb does where the bow is other than reckoned; None where its
        braced limbs would not stand.
        """
        limbs = self._braced
        if variant.has_other_sections:
            limbs = self._limbs([each.stand for each in self._braced], variant)
        both = [each.marched(variant.torsion, True) for each in limbs]
        if not pair_firmness(both[0], both[1], self._string) > 0.0:
            return None
        found = {}
        for which in (0, 1):
            for kind in REMEDIES:
                groove = 1.0 if kind == GROOVE else 0.0
                fault = {GROOVE: None, WEDGE: 0, EDGE: 1}[kind]
                given = joined(
                    both[0], both[1], (fault, None) if which == 0 else (None, fault),
                    (groove, 0.0) if which == 0 else (0.0, groove), self._string)
                found[(which, kind)] = self._read(given, which if kind == EDGE else None)
        return found

    def _read(self, given: tuple[Sideways, Sideways], edged: int | None) -> Moves:
        """Return how the string has moved over each limb; edged: the limb that lost an edge, and with it half
        of that of its middle.
        """
        fadeout, tip = [], []
        for which in (0, 1):
            at, part = self._tips[which]
            own, other = given[which].string_end, given[1 - which].string_end
            ways, turn = self._ways[which], (other - own) / self._string
            fadeout.append(own + turn * (ways[-1] - ways[0]))
            limb, states = self._braced[which], given[which].states
            seen = []
            for k in (at - 2, at):
                middle = -0.5 * limb.shares[k] if edged == which else 0.0
                gap = limb.stand.moment[k] / limb.stand.tension
                seen.append(own + turn * (ways[-1] - ways[k]) - states.place[k // 2] - middle
                            + gap * states.twist[k // 2])
            tip.append(seen[0] + part * (seen[1] - seen[0]))
        return Moves((fadeout[0], fadeout[1]), (tip[0], tip[1]))

    def least_torsion(self) -> float:
        """Return the least share of the torsional stiffness reckoned with which both limbs stand, braced and
        at full draw: above 1 where they are past buckling by the reckoning.

        Looked for between `LEAST_SHARE` and `MOST_SHARE`, by halving of its logarithm.
        """
        low, high = LEAST_SHARE, 1.0
        if not self.firm(1.0):
            low, high = 1.0, MOST_SHARE
        for _ in range(SHARE_STEPS):
            middle = (low * high) ** 0.5
            if self.firm(middle):
                high = middle
            else:
                low = middle
        return float(high)

    def firm(self, share: float) -> bool:
        """Return whether both limbs stand, braced and at full draw, with a share of the torsion reckoned."""
        for limb, half in zip(self._drawn, self._halves):
            if not firmness(limb.marched(share, False), half) > 0.0:
                return False
        both = [each.marched(share, False) for each in self._braced]
        return pair_firmness(both[0], both[1], self._string) > 0.0


def _half(stand: Standing, x: float, y: float) -> float:
    """Return how long the drawn string is from a limb to the fingers at x, y in the limb's own frame [m]."""
    ahead, above = x - stand.x[-1], y - stand.y[-1]
    return float((ahead * ahead + above * above) ** 0.5)


def _ways(stand: Standing, height: float) -> list[float]:
    """Return how far along the braced string each place of a limb lies from where it crosses y = 0 [m]."""
    sine, cosine = math.sin(stand.string_angle), math.cos(stand.string_angle)
    return [y * cosine - (x - height) * sine for x, y in zip(stand.x, stand.y)]


def _tip(bow: MeasuredBow, which: int, stand: Standing, height: float) -> tuple[int, float]:
    """Return before which second place of a limb the string is as high above the belly as it was read, and at
    which part of the way there from the second place before.
    """
    excess = []
    for k in range(0, len(stand.moment), 2):
        thickness = section_at(bow.stations[which], stand.length * k / (len(stand.moment) - 1)).thickness
        excess.append(stand.moment[k] / stand.tension - 0.5 * thickness - height)
    for i in range(1, len(excess)):
        if excess[i] <= 0.0 < excess[i - 1]:
            return 2 * i, excess[i - 1] / (excess[i - 1] - excess[i])
    name = ("upper", "lower")[which]
    raise Refused(name + "_height_tip", "On this bow the string stands at most "
                  + in_both("length", max(0.0, height + excess[0])) + " above the " + name + " limb, at the "
                  "fadeout; you gave " + in_both("length", height) + " near the tip. Read it where the "
                  "string has just left the limb, or check brace height and lengths.")


def _limb(
    bow: MeasuredBow, which: int, factor: float, torsion: Torsion, stretch: Stretch, stand: Standing,
    variant: Variant
) -> _Limb:
    """Return a limb with its sections at each place; of the variant, all but its torsion."""
    zeros = [0.0] * len(stand.x)
    bending, twisting, bends, shifts, middles, shares = [], [], [], [], [], []
    for k in range(len(stand.x)):
        place = stand.length * k / (len(stand.x) - 1)
        reckoned = section_at(bow.stations[which], place)
        section, build = variant.of_section(reckoned, bow.build)
        own = factor
        if variant.has_other_sections:
            own *= (section_rigidity(reckoned, bow.build, 0.0, 0.0)
                    / section_rigidity(section, build, 0.0, 0.0))
        layers = layers_of(section, build)
        shear = (torsion.glass, variant.core * torsion.core, torsion.glass)
        turned = tuple([Layer(each.thickness, modulus) for each, modulus in zip(layers, shear)])
        share = sanded_share(stretch.sanding, place)
        bending.append(own * rigidity_across(section.width, layers))
        twisting.append(own * torsional_rigidity(section.width, turned))
        bends.append(share * wedge_bend(section.width, layers, 1.0, stretch.face) * stand.bending[k])
        shifts.append(share * wedge_shift(section.width, layers, 1.0, stretch.face))
        middles.append(-0.5 * share)
        shares.append(share)
    return _Limb(stand, Across(bending, twisting), Fault(bends, zeros, shifts), Fault(zeros, zeros, middles),
                 shares)
