"""The bow on the bench, made from what was measured of it."""


from calc.bows.inputs import reading_inputs
from calc.bows.lengths import BEYOND_PIVOT
from calc.mechanics.bow.bow import Bow, Braced, TipLetsGo
from calc.mechanics.bow.edges import Finishing
from calc.mechanics.bow.elastica import Limb
from calc.mechanics.bow.limb import PlaceOfLimb, Profile, Sanding, laminated_limb, limb_places
from calc.mechanics.bow.thinning import Build, Station
from calc.mechanics.bow.tuning import (
    Calibration,
    Setup,
    Unmet,
    calibrate,
)
from calc.mechanics.bow.unstrung import measured_profile, unstrung_profile
from calc.outcome import (
    Refused,
)
from calc.quantities import INCH, ROUNDING, show
from calc.tables.bow_families import find as find_family
from calc.tables.woods import find as find_wood

TYPICAL_LIMB = ((0.09, 0.52, 1.00), (0.36, 0.49, 0.95), (0.62, 0.39, 0.88), (0.89, 0.23, 0.83))
"""Sections of an invented limb: place over its length, width over thickness at the root times ten, and
thickness over that at the root. Only the taper of its stiffness counts."""

NEAR_THE_RISER = INCH / 2
"""Tiller is not read nearer to a fadeout than this: on uneven limbs the place would lie over the riser."""

LOOK_AT_THE_TIPS = (
    "Check the unstrung shape near the tips first; a string braced higher or lower meets them elsewhere."
)

LEAST_STRETCH = 0.15
"""Of a limb. Stiffness is reckoned at 21 places along it, so that the effect of a stretch half as long would
be out by a third; of this one it is out by a tenth at worst."""


# The bow made from them ----------------------------------------------------------


class MeasuredBow:
    """A bow as it was measured, from which bows with sanded limbs are made."""

    def __init__(
        self,
        profile: Profile,
        base: tuple[float, float],
        stations: tuple[tuple[Station, ...], tuple[Station, ...]],
        build: Build,
        string_stiffness: float | None,
    ) -> None:
        self.profile = profile
        self.base = base
        self.stations = stations
        self.build = build
        self.string_stiffness = string_stiffness
        self._like: Limb | None = None

    def limb(
        self,
        which: int,
        factor: float = 1.0,
        sanding: Sanding | None = None,
        removal: float = 0.0,
        finishing: Finishing | None = None,
    ) -> Limb:
        """Return the upper (0) or lower (1) limb, stiffened by a factor, sanded and finished or as it is."""
        limb = laminated_limb(self.profile, self.base, self.stations[which], self.build, sanding, removal,
                              finishing, factor, self._like)
        self._like = self._like or limb
        return limb

    def bow(
        self,
        factors: tuple[float, float] = (1.0, 1.0),
        sanding: Sanding | None = None,
        removals: tuple[float, float] = (0.0, 0.0),
        finishing: Finishing | None = None,
    ) -> Bow:
        """Return the bow, each limb stiffened by its factor, sanded by its removal [m] and finished."""
        upper = self.limb(0, factors[0], sanding, removals[0], finishing)
        lower = self.limb(1, factors[1], sanding, removals[1], finishing)
        return Bow(upper, lower, string_stiffness=self.string_stiffness)

    def reshaped(self, profile: Profile) -> "MeasuredBow":
        """Return the same bow with another unstrung shape."""
        return MeasuredBow(profile, self.base, self.stations, self.build, self.string_stiffness)

    def places(self, which: int, sanding: Sanding, removal: float) -> list[PlaceOfLimb]:
        """Return how the upper (0) or lower (1) limb, sanded, answers to what was measured of it."""
        return limb_places(self.profile.length, self.stations[which], self.build, sanding, removal)


def limb_length(bow_length: float, riser_length: float) -> float:
    """Return the length of a limb from fadeout to nock [m].

    Raises:
        Refused: the riser takes up too much of the bow.
    """
    if riser_length > 0.6 * bow_length:
        raise Refused(
            "riser_length",
            "The riser is more than 60 % of the bow: measure it from fadeout to fadeout, and the bow from "
            "nock to nock.",
        )
    return (bow_length - riser_length) / 2


def require_brace(brace_height: float, length: float) -> None:
    """Raise Refused where the brace height cannot belong to limbs of this length."""
    if brace_height > 0.6 * length:
        raise Refused(
            "brace_height",
            "The brace height is more than 60 % of a limb's length: check it, the bow's length and the "
            "riser's.",
        )


def in_both(kind: str, value: float) -> str:
    """Return a quantity in both systems of units, for a refusal."""
    return show(value, kind) + " (" + show(value, kind, "metric") + ")"


def require_stretch(field: str, start: float, end: float, length: float) -> None:
    """Raise Refused where a stretch to be sanded ends beyond a limb of this length, or is too short for its
    model.
    """
    if end > length:
        raise Refused(field, "The stretch runs beyond the nock, which is " + in_both("length", length)
                      + " from the fadeout (half of bow length less riser length); you gave "
                      + in_both("length", end) + ".")
    least = LEAST_STRETCH * length
    if end - start < least:
        shown = INCH / 8 * (int(least / INCH * 8) + 1)
        raise Refused(field, "The stretch to be sanded must be at least " + in_both("length", shown)
                      + " long on this limb; yours is " + in_both("length", max(0.0, end - start))
                      + ". A shorter one slips between the places at which stiffness is reckoned.")


def require_reading_place(from_end: float | None, bow: Bow, brace_height: float) -> None:
    """Raise Refused where the bow cannot be braced, or tiller would be read over its riser.

    from_end [m]: along the string from its ends; None where tiller is read at the fadeouts.
    """
    if from_end is None:
        return
    asked = reading_inputs()[1]
    room = _braced(bow, brace_height).furthest_reading() - NEAR_THE_RISER
    most = INCH / 8 * int(room / INCH * 8)
    low, _ = asked.bounds()
    if most < low:
        raise Refused(asked.id, asked.label + " cannot be had on this bow: its limbs are too short to read "
                      "tiller there. Measure at the fadeouts.")
    if from_end > most + 0.1e-3:
        raise Refused(asked.id, asked.label + " must be from " + in_both("length", low) + " to "
                      + in_both("length", most) + " on this bow; you gave " + in_both("length", from_end)
                      + ". Farther in, the string stands over the riser: measure nearer to its ends, or at "
                      "the fadeouts.")


def _braced(bow: Bow, brace_height: float) -> Braced:
    """Return the braced bow, or raise Refused."""
    try:
        return bow.brace(brace_height)
    except ValueError as error:
        raise Refused("brace_height", "A bow of these measures cannot be braced to "
                      + in_both("length", brace_height) + ": " + str(error) + ". Check brace height, throat, "
                      "unstrung shape and lengths.") from None


def cannot_be_drawn(distance: float, error: ValueError) -> Refused:
    """Return the refusal of a bow that cannot be drawn to a distance from the pivot point [m]."""
    field = "brace_height" if isinstance(error, TipLetsGo) else "draw_length"
    return Refused(field, "A bow of these measures cannot be drawn to "
                   + in_both("length", distance + BEYOND_PIVOT) + " in the marked way: " + str(error) + ". "
                   + mend(error, "Check draw, brace height, unstrung shape and lengths."))


def mend(error: ValueError, otherwise: str) -> str:
    """Return what to look at after a refusal of the bow's mechanics: the tips, where one lets go."""
    return LOOK_AT_THE_TIPS if isinstance(error, TipLetsGo) else otherwise


def calibrated(
    bow: Bow,
    setup: Setup,
    weight: float,
    tiller_field: str,
    tiller: float,
    readings: tuple[tuple[float, float], ...] = (),
) -> Calibration:
    """Return the bow with the stiffness that gives it its measured weight and tiller.

    Raises:
        Refused: it cannot be braced or drawn, or limbs of these measures do not show that tiller.
    """
    _braced(bow, setup.brace_height)
    require_reading_place(setup.from_end, bow, setup.brace_height)
    draws = [setup.draw] + [draw for draw, _ in readings]
    try:
        return calibrate(bow, setup, weight, tiller, readings)
    except Unmet:
        raise Refused(tiller_field, "Limbs of these measures cannot show a tiller of "
                      + in_both("length", tiller) + ". Check it and its sign, brace height, throat, and the "
                      "sections of both limbs.") from None
    except ValueError as error:
        raise cannot_be_drawn(max(draws), error) from None


def draw_from_pivot(field: str, marked: float, brace_height: float) -> float:
    """Return the distance from pivot point to nocking point of a draw stated in the marked way [m].

    Raises:
        Refused: it lies short of the braced string.
    """
    distance = marked - BEYOND_PIVOT
    if distance < brace_height + INCH:
        raise Refused(
            field,
            "The draw lies short of the braced string, or less than an inch beyond it: it is stated in the "
            "marked way, from the pivot point plus 1 3/4 in (44 mm).",
        )
    return distance


def setup_of(draw_length: float, brace_height: float, measured: str, from_string_end: float | None) -> Setup:
    """Return how a bow is read, its draw stated in the marked way [m].

    Raises:
        Refused: the draw lies short of the braced string.
    """
    draw = draw_from_pivot("draw_length", draw_length, brace_height)
    return Setup(brace_height, draw, None if measured == "fadeout" else from_string_end)


def family_profile(family: str, length: float, scale: float = 1.0) -> Profile:
    """Return the unstrung shape of a family for a limb of a length [m], its offsets scaled."""
    points = find_family(family).profile
    return unstrung_profile(tuple([(y * length, scale * x * length) for y, x in points]), length)


def has_offsets(family: str) -> bool:
    """Return whether a family's unstrung shape is anything but straight: whether it can be scaled."""
    return any(x != 0 for _, x in find_family(family).profile)


def family_throat(family: str, length: float) -> float:
    """Return how far a family's fadeouts lie behind the throat [m]."""
    return float(find_family(family).throat * length)


def family_limb(family: str, bow_length: float, riser_length: float) -> Limb:
    """Return a limb of a family's shape and the typical taper, its stiffness in no unit.

    Raises:
        Refused: the riser takes up too much of the bow.
    """
    length = limb_length(bow_length, riser_length)
    return typical_limb(family_profile(family, length), (family_throat(family, length), riser_length / 2))


def typical_limb(profile: Profile, base: tuple[float, float]) -> Limb:
    """Return a limb of a shape and the typical taper, its stiffness in no unit; base: of the fadeout [m]."""
    stations = tuple([Station(at * profile.length, width, thickness)
                      for at, width, thickness in TYPICAL_LIMB])
    return laminated_limb(profile, base, stations, Build(0.15, 0.15, 1.0, 1.0))


def unstrung_shape(
    family: str, profile: tuple[tuple[float, ...], ...], length: float, scale: float = 1.0
) -> Profile:
    """Return the unstrung shape that was measured, or else that of the family, scaled.

    Raises:
        Refused: the offsets are out of order or reach beyond the limb.
    """
    if not profile:
        return family_profile(family, length, scale)
    before = 0.0
    for index, row in enumerate(profile):
        if row[0] <= before:
            raise Refused("profile", "Each offset must be taken further from the fadeout than the one before "
                          "it: put the rows in order.", index, "along")
        if row[0] > length:
            raise Refused("profile", "This offset is taken beyond the nock. Check it, or the bow's length.",
                          index, "along")
        if abs(row[1]) > 0.8 * row[0] + INCH:
            raise Refused("profile", "This offset is steeper than a limb can stand to the straight edge. "
                          "Check it, and its sign.", index, "offset")
        before = row[0]
    return measured_profile(tuple([(row[0], row[1]) for row in profile]), length)


def stations_of(
    field: str, typed: tuple[tuple[float, ...], ...], length: float, build: Build
) -> tuple[Station, ...]:
    """Return a limb's measured sections.

    Raises:
        Refused: they are out of order, beyond the nock, or too thin for their glass.
    """
    stations = tuple([Station(row[0], row[1], row[2]) for row in typed])
    for index, each in enumerate(stations):
        if index and each.position <= stations[index - 1].position:
            raise Refused(field, "Each station must lie further from the fadeout than the one before it: "
                          "put the rows in order.", index, "position")
        if each.position > length:
            raise Refused(field, "This station lies beyond the nock: half of bow length less riser length "
                          "is all that the limb has. Check the distance, or the bow's length.",
                          index, "position")
        if each.thickness <= 1.2 * (build.back + build.belly):
            raise Refused(field, "This section has hardly any room for a core between its two layers of "
                          "glass. Check the thickness and the glass.", index, "thickness")
    return stations


def build_of(
    glass_back: float, glass_belly: float, glass_modulus: float, core: str, core_modulus: float | None
) -> Build:
    """Return a limb's lay-up.

    Raises:
        Refused: the core's modulus is not given.
    """
    if core != "own":
        return Build(glass_back, glass_belly, glass_modulus, find_wood(core).modulus)
    if core_modulus is None:
        raise Refused("core_modulus", "Give the modulus of the core, or choose its wood from the list.")
    return Build(glass_back, glass_belly, glass_modulus, core_modulus)


def measured_bow(
    *,
    bow_length: float,
    riser_length: float,
    brace_height: float,
    throat: float | None,
    family: str,
    profile: tuple[tuple[float, ...], ...],
    glass_back: float,
    glass_belly: float,
    glass_modulus: float,
    core: str,
    core_modulus: float | None,
    upper_stations: tuple[tuple[float, ...], ...],
    lower_stations: tuple[tuple[float, ...], ...],
    string_stiffness: float,
) -> MeasuredBow:
    """Return the bow as measured, its pivot point at the grip's throat.

    Raises:
        Refused: measures that cannot belong to one bow.
    """
    length = limb_length(bow_length, riser_length)
    build = build_of(glass_back, glass_belly, glass_modulus, core, core_modulus)
    stations = (stations_of("upper_stations", upper_stations, length, build),
                stations_of("lower_stations", lower_stations, length, build))
    shape = unstrung_shape(family, profile, length)
    require_brace(brace_height, length)
    behind = family_throat(family, length) if throat is None else throat
    return MeasuredBow(shape, (behind, riser_length / 2), stations, build, string_stiffness)


def glass_to_stay(
    build: Build, share: float, when_new: float | None, came: tuple[float | None, float | None] = (None, None)
) -> tuple[float, float]:
    """Return the glass that must stay on back and belly [m]: the share of it when new, or else as it came.

    Raises:
        Refused: there was less glass before any of it was sanded than there is now.
    """
    least = []
    for field, face, before, now in (("came_back", "back", came[0], build.back),
                                     ("came_belly", "belly", came[1], build.belly)):
        if before is not None and before < now - ROUNDING:
            raise Refused(field, "The " + face + " had less glass as the bow came, "
                          + in_both("thickness", before) + ", than now, " + in_both("thickness", now)
                          + ": sanding only takes. Mend one, or leave it empty.")
        least.append(share * max(when_new or 0.0, before or 0.0) or share * now)
    return least[0], least[1]
