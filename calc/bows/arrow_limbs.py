"""What moves with the arrow, foretold from the limbs' width, thickness and density."""

from calc.bows.arrow_bow import MARKED_DRAW
from calc.bows.inputs import station_rows
from calc.bows.lengths import BEYOND_PIVOT
from calc.bows.measured import TYPICAL_LIMB, family_profile, family_throat, limb_length, require_brace
from calc.bows.steps import in_part
from calc.declaring import RULE, Group, choice, group, quantity
from calc.mechanics.bow.bow import Bow, Limb
from calc.mechanics.bow.moving import Strung, chain_of, let_go
from calc.mechanics.bow.thinning import Station, section_at
from calc.numerics.interpolation import along_straight
from calc.numerics.normal import NORMAL_95, spread
from calc.outcome import OK, WATCH, Check, Refused, amount, check, sentence
from calc.quantities import GRAIN, INCH, POUND_FORCE, PSI
from calc.tables.bow_families import FAMILIES

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable, Generator

LINKS = 8
GRAM = 1e-3
LIGHT, HEAVY = 7 * GRAIN / POUND_FORCE, 12 * GRAIN / POUND_FORCE
"""Arrow masses per draw weight between which the moving mass is taken to change evenly."""

USUAL_LENGTHS = 64 * INCH, 19 * INCH
"""Bow and riser where they are not known: those of a middling recurve (an assumption)."""

USUAL_GLASS = 0.3
"""Part of the thickness that is glass where its own is not known (an assumption)."""

USUAL_MODULUS = 4.7e6 * PSI
"""Of a whole limb in bending, that much of it glass (an assumption)."""

STRING_STIFFNESS = {"polyester": 5600 * POUND_FORCE, "low_stretch": 13000 * POUND_FORCE}

OF_THE_CHAIN, OF_DENSITIES, OF_SECTIONS, OF_LENGTHS = 0.35, 0.05, 0.2, 0.1
"""Standard errors, as shares of the moving mass: of the model, which knows no friction and no overlays on the
tips, of densities, and of sections and lengths that were not read (assumptions)."""


class Sections:
    """What is known of the limbs: bow and riser length [m], stations of both, glass of both faces [m]
    (each empty or None where it is not), densities of glass and core [kg/m3], family, string [kg].
    """

    def __init__(
        self, lengths: tuple[float | None, float | None],
        stations: tuple[tuple[tuple[float, ...], ...], tuple[tuple[float, ...], ...]], glass: float | None,
        densities: tuple[float, float], family: str, string: float,
    ) -> None:
        self.lengths = lengths
        self.stations = stations
        self.glass = glass
        self.densities = densities
        self.family = family
        self.string = string

    def key(self) -> tuple[object, ...]:
        """Return all that it says, to tell whether it is the same."""
        return self.lengths, self.stations, self.glass, self.densities, self.family, self.string


class Foretold:
    """Moving mass [kg] for a light and a heavy arrow [kg], its standard error [1], and how much of a mass on
    each tip moves with the arrow [1].
    """

    def __init__(
        self, arrows: tuple[float, float], moving: tuple[float, float], error: float, of_a_tip: float
    ) -> None:
        self.arrows = arrows
        self.moving = moving
        self.error = error
        self.of_a_tip = of_a_tip

    def at(self, mass: float) -> float:
        """Return the moving mass for an arrow of a mass, on a straight line between the two [kg]."""
        light, heavy = self.arrows
        slope = (self.moving[1] - self.moving[0]) / (heavy - light)
        return max(0.0, self.moving[0] + slope * (mass - light))


_kept: list[tuple[object, Foretold]] = []


def foretold_steps(
    known: Sections, weight: float, draw_length: float, brace_height: float, material: str
) -> "Generator[float, None, Foretold]":
    """Find what moves with the arrow; kept while the bow stays the same.

    Args:
        known: of the limbs.
        weight [N]: at the marked draw.
        draw_length [m]: stated in the marked way.
        brace_height [m]: of the bow.
        material: of the string.

    Raises:
        Refused: the riser takes up too much of the bow, or no such bow can be drawn.
    """
    key = (known.key(), weight, draw_length, brace_height, material)
    if _kept and _kept[0][0] == key:
        return _kept[0][1]
    found = yield from _foretold(known, weight, draw_length, brace_height, STRING_STIFFNESS[material])
    _kept[:] = [(key, found)]
    return found


def _foretold(
    known: Sections, weight: float, draw_length: float, brace_height: float, string_stiffness: float
) -> "Generator[float, None, Foretold]":
    bow_length, riser_length = known.lengths[0] or USUAL_LENGTHS[0], known.lengths[1] or USUAL_LENGTHS[1]
    if riser_length > 0.6 * bow_length:
        raise Refused("limb_riser_length", "The riser is more than 60 % of the bow: measure it from fadeout "
                      "to fadeout, and the bow from nock to nock.")
    length = limb_length(bow_length, riser_length)
    require_brace(brace_height, length)
    profile = family_profile(known.family, length)
    base = (family_throat(known.family, length), riser_length / 2)
    rows = [each for each in known.stations if each]
    limbs = [tuple([Station(row[0], row[1], row[2]) for row in each]) for each in rows] or [
        tuple([Station(at * length, width * 10, thick) for at, width, thick in TYPICAL_LIMB])]

    def mean(place: float, of: "Callable[[Station], float]") -> float:
        return sum([of(section_at(each, place)) for each in limbs]) / len(limbs)

    bending = [mean(length * i / 20, lambda each: each.width * each.thickness**3) for i in range(21)]
    plain = Limb(length, base, profile.angles, bending)
    try:
        bow = Bow(plain, plain)
        bow.brace(brace_height)
        factor = weight / bow.draw(MARKED_DRAW - BEYOND_PIVOT).force
        yield 0.1
        stiff = plain.stiffened(factor)
        strung = Bow(stiff, stiff, string_stiffness=string_stiffness)
        braced = strung.brace(brace_height)
        drawn = strung.draw(draw_length - BEYOND_PIVOT)
    except ValueError as why:
        raise Refused("losses", "A bow of these limbs cannot be computed: " + str(why) + ". Check their "
                      "lengths, or choose another way to the moving mass.") from None
    yield 0.2
    size = 1.0
    if not rows:  # the thickness in proportion that gives this weight
        size = (12 * factor / USUAL_MODULUS) ** 0.25
    glass_density, core_density = known.densities

    def mass_of(section: Station) -> float:
        thickness = section.thickness * size
        glass = USUAL_GLASS * thickness if known.glass is None else min(known.glass, thickness)
        return section.width * size * (glass_density * glass + core_density * (thickness - glass))

    middles = [length * (k + 0.5) / LINKS for k in range(LINKS)]
    density = [mean(place, mass_of) for place in middles]
    rest = [along_straight(profile.angles, (k + 0.5) / LINKS) for k in range(LINKS)]
    rigidity = [along_straight(bending, k / LINKS) * factor for k in range(LINKS)]
    angles = [along_straight(drawn.upper.angle, place / length) for place in middles]
    half = Strung(braced.upper_length, string_stiffness, known.string / 2)
    energy = drawn.stored_energy
    arrows = LIGHT * drawn.force, HEAVY * drawn.force
    moving = []
    for run, (mass, tip) in enumerate(((arrows[0], 0.0), (arrows[1], 0.0), (arrows[0], GRAM))):
        chain = chain_of(base, length, profile.angles[0], rest, rigidity, density, known.string / 3 + tip)
        speed = yield from in_part(0.2 + 0.25 * run, 0.45 + 0.25 * run,
                                   let_go(chain, half, angles, drawn.nock[0], mass / 2))
        moving.append(2 * energy / speed**2 - mass)
    error = spread([OF_THE_CHAIN, OF_DENSITIES, 0.0 if rows else OF_SECTIONS,
                    0.0 if known.lengths[0] and known.lengths[1] else OF_LENGTHS])
    return Foretold(arrows, (moving[0], moving[1]), error, (moving[2] - moving[0]) / GRAM)


# What is said and asked ------------------------------------------------------------


def foretold_checks(
    foretold: Foretold | None, chosen: bool, moving: float, read_to: float, mass: float, speed: float
) -> tuple[Check, ...]:
    """Return what the limbs' own masses say: what a gram at a tip costs, and how far a reading differs.

    chosen: whether the moving mass comes from them. moving, read_to: the one in use and
    its standard error [kg]. mass, speed: of the arrow.
    """
    if foretold is None:
        return ()
    cost = speed * GRAM * foretold.of_a_tip / (mass + moving) / 2
    told = [check("tip-gram", OK, sentence(
        "{} more on each tip would slow this arrow by about {}.", amount("mass", GRAM),
        amount("speed", cost, 1)))]
    if not chosen:
        by_limbs = foretold.at(mass)
        apart = abs(by_limbs - moving) > NORMAL_95 * spread([foretold.error * by_limbs, read_to])
        told.append(check("limb-mass", WATCH if apart else OK, sentence(
            "From the limbs' sections {} would move with the arrow; the chronograph gives {}, {} "
            + ("more" if moving > by_limbs else "less") + (
                ": more apart than both are uncertain. Check the reading, the draw and the sections. "
                if apart else ", within what the sections can tell. ")
            + "The reading counts.", amount("mass", by_limbs), amount("mass", moving),
            amount("mass", abs(moving - by_limbs)))))
    return tuple(told)


_WHEN = ("losses", ("limbs", "chronograph", "chronograph_before"))


def limbs_group() -> Group:
    """Return the group of inputs from which the moving mass is foretold."""
    stations = [station_rows(id, label, "", "Empty: a usual limb of this weight, and a wider range.", 0,
                             _WHEN)
                for id, label in (("upper_stations", "Upper limb"), ("lower_stations", "Lower limb"))]
    return group(
        "The limbs that move with the arrow",
        *stations,
        quantity("limb_bow_length", "Length of the bow", "length", default="", low="40 in", high="80 in",
                 usual=("48 in", "72 in"), help="Nock to nock along the belly. Empty: 64 in (1626 mm).",
                 optional=True, when=_WHEN),
        quantity("limb_riser_length", "Length of its riser", "length", default="", low="6 in", high="34 in",
                 usual=("12 in", "26 in"), help="Fadeout to fadeout. Empty: 19 in (483 mm).", optional=True,
                 when=_WHEN),
        choice("limb_family", "Shape of the limbs", tuple([(each.id, each.name) for each in FAMILIES]),
               help="Unstrung.", when=_WHEN, role=RULE),
        quantity("limb_glass", "Glass on both faces together", "thickness", default="", low="0.020 in",
                 high="0.240 in", usual=("0.050 in", "0.130 in"), help="Empty: 30 % of the thickness.",
                 optional=True, when=_WHEN, role=RULE),
        quantity("glass_density", "Density of the glass", "density", default="1.85 g/cm3", low="1.2 g/cm3",
                 high="2.6 g/cm3", usual=("1.7 g/cm3", "2 g/cm3"), when=_WHEN, role=RULE),
        quantity("core_density", "Density of the core", "density", default="0.67 g/cm3", low="0.2 g/cm3",
                 high="1.4 g/cm3", usual=("0.5 g/cm3", "0.85 g/cm3"),
                 help="Maple is near 44 lb/ft3 (0.7 g/cm3).", when=_WHEN, role=RULE),
        quantity("string_mass", "Mass of the string", "mass", default="110 gr", low="20 gr", high="500 gr",
                 usual=("60 gr", "200 gr"), when=_WHEN, role=RULE),
    )
