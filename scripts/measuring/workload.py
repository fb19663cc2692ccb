"""What is timed of the computed bow; runs in all three engines."""

from calc.mechanics.bow.bow import Bow
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.limb import Sanding, laminated_limb
from calc.mechanics.bow.reduction import reduction_steps
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tuning import Setup, read
from calc.mechanics.bow.unstrung import unstrung_profile
from calc.quantities import INCH
from calc.tables.bow_families import FAMILIES

LENGTH = 22.5 * INCH
BASE = (0.05 * LENGTH, 8.5 * INCH)
PROFILE = unstrung_profile(tuple([(y * LENGTH, x * LENGTH) for y, x in FAMILIES[0].profile]), LENGTH)
BUILD = Build(0.045 * INCH, 0.045 * INCH, 39e9, 12.6e9)
STATIONS = ((2.0, 1.6, 0.300), (8.0, 1.5, 0.285), (14.0, 1.2, 0.265), (20.0, 0.7, 0.250))
SANDING = Sanding(1 * INCH, 18 * INCH, 2 * INCH, 0.6)
BENCH = Setup(8 * INCH, 26.25 * INCH, None)
STRING = 25e3
POINTS = 20


def limb(thicker: float, removal: float = 0.0) -> Limb:
    """Return the limb of an invented recurve, a little thicker [in] than the plain one."""
    stations = tuple([Station(s * INCH, w * INCH, (t + thicker) * INCH) for s, w, t in STATIONS])
    return laminated_limb(PROFILE, BASE, stations, BUILD, SANDING, removal)


def bow(upper: float = 0.0, lower: float = 0.0) -> Bow:
    """Return the bow with removals [m] on its limbs; its lower limb is the stiffer."""
    return Bow(limb(0.0, upper), limb(0.001, lower), string_stiffness=STRING)


UNSANDED = bow()


def curve() -> list[float]:
    """Brace the bow and draw it to twenty places."""
    UNSANDED.brace(BENCH.brace_height)
    first, last = BENCH.brace_height, BENCH.draw
    draws = [first + (last - first) * i / (POINTS - 1) for i in range(POINTS)]
    return [drawn.force for drawn in UNSANDED.curve(draws)]


def plan() -> object:
    """Find the removals that take a sixth of the weight and bring tiller to 3/16 in."""
    weight = read(UNSANDED, BENCH).weight
    search = reduction_steps(bow, BENCH, weight / 1.2, 3 * INCH / 16, 0.018 * INCH)
    while True:
        try:
            next(search)
        except StopIteration as end:
            return end.value


def change_on_halving() -> tuple[float, float, float]:
    """Return the relative change of force and stored energy and that of tiller [m], steps halved."""
    found = []
    for finer in (1, 2):
        limbs = [Limb(each.length, each.base, each.rest_angles, each.stiffness, finer * each.steps)
                 for each in (UNSANDED.upper, UNSANDED.lower)]
        state = read(Bow(limbs[0], limbs[1], string_stiffness=STRING), BENCH)
        found.append((state.weight, state.drawn.stored_energy, state.tiller))
    (force, energy, tiller), (finer_force, finer_energy, finer_tiller) = found
    return abs(finer_force / force - 1), abs(finer_energy / energy - 1), abs(finer_tiller - tiller)
