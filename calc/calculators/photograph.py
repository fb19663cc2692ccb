"""Read a photograph: the unstrung shape, tiller or bend from points marked in a picture."""

from calc.bows.drawn_bends import ENDS, STRETCHES, computed_bends
from calc.bows.inputs import THE_BOW, layup_inputs, measures, section_group, shape_group
from calc.bows.measured import calibrated, draw_from_pivot, measured_bow, setup_of
from calc.bows.reading_errors import give_or_take
from calc.bows.unlike_limbs import tiller_per_offset
from calc.declaring import Calculator, Group, asked_when, choice, group, quantity, result
from calc.drawings.picture import picture_drawing
from calc.numerics.normal import NORMAL_95
from calc.outcome import Outcome, Refused, Sentence, amount, sentence
from calc.pictures import overlay
from calc.pictures.bends import Stretch, bend_checks, bend_table, stretches_of, whole_bend
from calc.pictures.board import Board, Known
from calc.pictures.bow import DRAWN_LIMBS, LIMB_NAMES, LIMBS, Photographed, photographed, raised
from calc.pictures.checks import board_check, course_checks, hand_over_check, shape_checks, view_checks
from calc.pictures.course import FEWEST_FOR_SHAPE
from calc.pictures.finding import find
from calc.pictures.inputs import DRAWN, UNSTRUNG_SHAPE, bow_inputs, known_inputs, picture_inputs
from calc.pictures.lens import Lens
from calc.pictures.picture import Picture, Reading, Standing, weighed
from calc.pictures.reading import (
    board_of,
    known_on_rules,
    known_on_sheets,
    lens_before,
    require_inside,
    straight_lines,
)
from calc.pictures.shape import Place, limb_error, limb_shape, mean_error, mean_shape, most_apart, places_of
from calc.pictures.string_line import PLACES, Heights, Off, off_table, string_off, tracking_check
from calc.pictures.told import (
    Tiller,
    course_lines,
    inches,
    pair,
    profile_text,
    shape_chart,
    shape_table,
    tiller_of,
)

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Generator


def compute(
    what: str,
    picture_width: float,
    picture_height: float,
    marking_error: float,
    found_error: float,
    target: str,
    sheets: tuple[tuple[float, float], ...] | None,
    dots: tuple[tuple[int, str, float, float, str], ...] | None,
    rule_marks: tuple[tuple[int, float, float, float, float], ...] | None,
    board_error: float,
    straight: tuple[tuple[int, float, float], ...],
    distance: float,
    standoff: float,
    standoff_tip: float,
    standoff_string: float | None,
    standoff_error: float,
    belly_faces: str | None,
    upper_limb: tuple[tuple[float, float, str], ...] | None,
    lower_limb: tuple[tuple[float, float, str], ...] | None,
    drawn_upper: tuple[tuple[float, float, str], ...] | None,
    drawn_lower: tuple[tuple[float, float, str], ...] | None,
    fadeouts_again: tuple[tuple[str, float, float], ...] | None,
    throat_marks: tuple[tuple[float, float], ...] | None,
    string_marks: tuple[tuple[float, float], ...] | None,
    string_line: tuple[tuple[str, str, float, float], ...] | None,
    height_riser: float | None,
    height_tip: float | None,
    picture_draw: float,
    weight: float,
    draw_length: float,
    tiller: float,
    brace_height: float,
    bow_length: float,
    riser_length: float,
    family: str,
    profile: tuple[tuple[float, ...], ...],
    throat: float | None,
    string_stiffness: float,
    upper_stations: tuple[tuple[float, ...], ...],
    lower_stations: tuple[tuple[float, ...], ...],
    glass_back: float,
    glass_belly: float,
    core: str,
    core_modulus: float | None,
    glass_modulus: float,
) -> "Generator[float, None, Outcome]":
    """Return the shape of an unstrung bow, the tiller of a braced one, or how a drawn one bends.

    What follows the string's marks is given, and looked at, only where the bow is drawn.
    """
    fields = DRAWN_LIMBS if what == "drawn" else LIMBS
    limbs = list(upper_limb or drawn_upper or ()), list(lower_limb or drawn_lower or ())
    again = [[row[1:] for row in fadeouts_again or () if row[0] == limb] for limb in LIMB_NAMES]
    string, throats, line = string_marks or (), throat_marks or (), string_line or ()
    picture = Picture(picture_width, picture_height, marking_error, found_error)
    for name, marks in (("dots", [row[2:4] for row in dots or ()]),
                        ("rule_marks", [row[3:] for row in rule_marks or ()]),
                        ("straight", [row[1:] for row in straight]),
                        (fields[0], [row[:2] for row in limbs[0]]),
                        (fields[1], [row[:2] for row in limbs[1]]),
                        ("fadeouts_again", [row[1:] for row in fadeouts_again or ()]),
                        ("throat_marks", list(throats)),
                        ("string_marks", list(string)), ("string_line", [row[2:] for row in line])):
        require_inside(picture, name, marks)
    if target == "sheets":
        known = known_on_sheets(picture, sheets or (), dots or ())
    else:
        known = known_on_rules(picture, rule_marks or ())
    board = board_of("dots" if target == "sheets" else "rule_marks", picture, known,
                     straight_lines(picture, straight), board_error)
    lens = lens_before(board, distance)
    if what == "belly":
        heights = Heights(standoff, standoff_tip, height_riser or 0.0, height_tip or 0.0, standoff_error)
        return _from_the_belly(picture, board, lens, known, string_off(
            picture, board, lens, heights, raised(board), line), [row[2:] for row in line])
    standing = Standing(standoff, standoff_tip, standoff_error)
    bow = photographed(picture, board, lens, standing, belly_faces or "down", fields, limbs,
                       (again[0], again[1]), throats, string, standoff_string or 0.0)
    checks = (board_check(board),) + view_checks(lens, _wide(picture, bow.pixels))
    places: list[Place] = []
    by_shape: Reading | None = None
    strung: Tiller | None = None
    stretches: list[Stretch] = []
    if what == "unstrung":
        _require_shape(fields, limbs)
        places = places_of(bow)
        by_shape = _tiller_by_shape(bow, places)
        checks += shape_checks(bow, places, by_shape) + (hand_over_check(_figures(bow, places)),)
    elif what == "braced":
        strung = tiller_of(bow)
    else:
        yield 0.2
        at_rest = measured_bow(
            bow_length=bow_length, riser_length=riser_length, brace_height=brace_height, throat=throat,
            family=family, profile=profile, glass_back=glass_back, glass_belly=glass_belly,
            glass_modulus=glass_modulus, core=core, core_modulus=core_modulus, upper_stations=upper_stations,
            lower_stations=lower_stations, string_stiffness=string_stiffness,
        )
        setup = setup_of(draw_length, brace_height, "fadeout", None)
        shown = draw_from_pivot("picture_draw", picture_draw, brace_height)
        fitted = calibrated(at_rest.bow(), setup, weight, "tiller", tiller)
        yield 0.7
        should = computed_bends(at_rest, fitted.bow, shown)
        stretches = stretches_of(bow, STRETCHES, ENDS, [(each.bent, each.rest) for each in should])
        checks += bend_checks(stretches) + course_checks(bow)
    return Outcome(
        headline=_headline(bow, places, strung, stretches),
        values=_values(bow, places, by_shape, strung, stretches),
        checks=checks,
        tables=((shape_table(places),) if places else ()) + ((bend_table(stretches),) if stretches else ()),
        charts=(shape_chart(places),) if places else (),
        drawings=(picture_drawing(
            picture_width, picture_height, overlay.board_lines(picture, board, known),
            course_lines(picture, bow, standing, limbs)
            + ([overlay.string_line(picture, board, string)] if string else [])),),
        assumptions=ASSUMPTIONS + (OF_A_DRAWN_BOW if stretches else ()),
    )


def _from_the_belly(
    picture: Picture, board: Board, lens: Lens, known: list[Known], offs: list[Off],
    marks: list[tuple[float, float]],
) -> Outcome:
    """Return where the string lies against the middle of the limbs."""
    figures = [(each.place.replace("_", "_offset_"), each.off) for each in offs]
    told = dict(figures)
    values: tuple[tuple[str, float | str | None], ...] = ()
    for place, _ in PLACES:
        name = place.replace("_", "_offset_")
        values += pair(name, told.get(name))
    farthest = max(offs, key=lambda each: abs(each.off.value))
    side = "right" if farthest.off.value >= 0 else "left"
    return Outcome(
        headline=sentence("The string lies farthest off the middle at this place: " + farthest.name
                          + ", {} to the " + side + ", give or take {}.",
                          amount("length", abs(farthest.off.value)),
                          amount("length", farthest.off.half_range)),
        values=values + tuple([(each, None) for each in OF_THE_SIDE])
        + (("tilt", lens.tilt), ("misfit", board.misfit), ("lens_bend", board.unknowns[8])),
        checks=(board_check(board),) + view_checks(lens, _wide(picture, marks)) + (
            tracking_check([(name, inches(off.value)) for name, off in figures]),),
        tables=(off_table(offs),),
        drawings=(picture_drawing(picture.width, picture.height,
                                  overlay.board_lines(picture, board, known), []),),
        assumptions=ASSUMPTIONS,
    )


def _require_shape(
    fields: tuple[str, str], limbs: tuple[list[tuple[float, float, str]], list[tuple[float, float, str]]]
) -> None:
    """Raise Refused where a limb has too few marks for its shape."""
    for field, limb in zip(fields, limbs):
        if len(limb) < FEWEST_FOR_SHAPE:
            raise Refused(field, "A limb's shape needs " + str(FEWEST_FOR_SHAPE) + " marks or more, from the "
                          "fadeout to the nock; you gave " + str(len(limb)) + ". Mark more of it.")


def _wide(picture: Picture, pixels: list[tuple[float, float]]) -> float:
    """Return how much of the picture's longer side the marks on the bow take up."""
    across = max([x for x, _ in pixels]) - min([x for x, _ in pixels])
    down = max([y for _, y in pixels]) - min([y for _, y in pixels])
    return max(across, down) / max(picture.width, picture.height)


def _tiller_by_shape(bow: Photographed, places: list[Place]) -> Reading | None:
    """Return the tiller that equally stiff limbs of these two shapes show; None where they are alike as far
    as the errors tell, or such limbs cannot be braced.
    """
    if not most_apart(places).is_apart:
        return None
    length = (bow.frame.length(0).value + bow.frame.length(1).value) / 2
    try:
        shares = tiller_per_offset(mean_shape(places), length, bow.frame.riser.value)
    except ValueError:
        return None
    return weighed(bow.marks, [(share, each.apart) for share, each in zip(shares, places)])


# What is said --------------------------------------------------------------------


def _headline(
    bow: Photographed, places: list[Place], strung: Tiller | None, stretches: list[Stretch]
) -> Sentence:
    if strung is not None:
        return sentence("Tiller is {}, give or take {}: upper {}, lower {}.",
                        amount("length", strung.difference.value),
                        amount("length", strung.difference.half_range),
                        amount("length", strung.upper.value), amount("length", strung.lower.value))
    if stretches:
        (upper, upper_computed), (lower, lower_computed) = [whole_bend(bow, stretches, each)
                                                            for each in LIMB_NAMES]
        return sentence("The upper limb bends {}, computed {}; the lower {}, computed {}. Give or take {}.",
                        amount("angle", upper.value), amount("angle", upper_computed),
                        amount("angle", lower.value), amount("angle", lower_computed),
                        amount("angle", NORMAL_95 * max(upper.error, lower.error)))
    nock = places[-1]
    side = "belly" if nock.mean.value >= 0 else "back"
    return sentence("The nocks lie {} toward the " + side + " from the straight edge through the fadeouts, "
                    "give or take {}: the mean of both limbs.",
                    amount("length", abs(nock.mean.value)), amount("length", nock.mean.half_range))


def _values(
    bow: Photographed, places: list[Place], by_shape: Reading | None, strung: Tiller | None,
    stretches: list[Stretch],
) -> tuple[tuple[str, float | str | None], ...]:
    frame = bow.frame
    shaped = bow.courses[0] is not None and bow.courses[1] is not None
    upper, lower = (frame.length(0), frame.length(1)) if shaped else (None, None)
    whole = weighed(bow.marks, [(1.0, upper), (1.0, lower), (1.0, frame.riser)]) if upper and lower else None
    apart = most_apart(places) if places else None
    bends = [whole_bend(bow, stretches, each) if stretches else (None, None) for each in LIMB_NAMES]
    return (
        pair("nock_offset", places[-1].mean if places else None)
        + (("shape_error", mean_error(places) if places else None),)
        + pair("apart", apart.apart if apart else None)
        + (("apart_at", apart.along if apart else None),
           ("profile", _shown(mean_shape(places))),
           ("upper_profile", _shown(limb_shape(places, 0))),
           ("lower_profile", _shown(limb_shape(places, 1))),
           ("limb_shape_error", limb_error(places) if places else None))
        + pair("tiller_by_shape", by_shape)
        + pair("throat", frame.behind(bow.throat[0], bow.throat[1]) if bow.throat[1] else None)
        + pair("tiller", strung.difference if strung else None)
        + pair("upper", strung.upper if strung else None)
        + pair("lower", strung.lower if strung else None)
        + pair("brace_height", strung.brace_height if strung else None)
        + pair("upper_bend", bends[0][0]) + (("upper_bend_computed", bends[0][1]),)
        + pair("lower_bend", bends[1][0]) + (("lower_bend_computed", bends[1][1]),)
        + pair("riser_length", frame.riser)
        + pair("upper_length", upper)
        + pair("lower_length", lower)
        + pair("bow_length", whole)
        + tuple([(each, None) for each in OF_THE_BELLY])
        + (("tilt", bow.lens.tilt), ("misfit", bow.board.misfit), ("lens_bend", bow.board.unknowns[8]))
    )


def _shown(offsets: list[tuple[float, float]]) -> str | None:
    """Return the rows of a profile with room between them to break a line; None where there are none."""
    return profile_text(offsets).replace(";", "; ") or None


def _figures(bow: Photographed, places: list[Place]) -> list[tuple[str, str]]:
    """Return the figures that carry a shape to another page, by input."""
    found = [("riser_length", bow.frame.riser.value),
             ("bow_length", bow.frame.riser.value + bow.frame.length(0).value + bow.frame.length(1).value)]
    if bow.throat[1]:
        found.append(("throat", bow.frame.behind(bow.throat[0], bow.throat[1]).value))
    return [("profile", profile_text(mean_shape(places)))] + [(name, inches(value)) for name, value in found]


OF_THE_BELLY = (
    "upper_offset_tip", "upper_offset_tip_error", "upper_offset_riser", "upper_offset_riser_error",
    "lower_offset_tip", "lower_offset_tip_error", "lower_offset_riser", "lower_offset_riser_error",
)
OF_THE_SIDE = (
    "nock_offset", "nock_offset_error", "shape_error", "apart", "apart_error", "apart_at", "profile",
    "upper_profile", "lower_profile", "limb_shape_error", "tiller_by_shape", "tiller_by_shape_error",
    "throat", "throat_error", "tiller", "tiller_error", "upper", "upper_error", "lower", "lower_error",
    "brace_height", "brace_height_error", "upper_bend", "upper_bend_error", "upper_bend_computed",
    "lower_bend", "lower_bend_error", "lower_bend_computed", "riser_length", "riser_length_error",
    "upper_length", "upper_length_error", "lower_length", "lower_length_error",
    "bow_length", "bow_length_error",
)
"""Results that only pictures from the belly have, and that only pictures from the side have."""

ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The board is flat and its points lie in one plane. A sheet's or rule's place is out by the stated error "
    "either way, and it is turned by as much at its dots' distance from its middle.",
    "The picture's pixels are square, the lens looks through the picture's middle, and it bends the picture "
    "by one radial term.",
    "The edge that is marked stands in front of the board as stated, changing evenly from fadeout to nock, "
    "and the distance to the lens is right within 2 %.",
    "Each range holds 95 of 100 such readings. It follows from the errors stated, to first order. It holds "
    "no mark on the wrong edge.",
)

OF_A_DRAWN_BOW: tuple[Sentence | str, ...] = (
    "The bow is computed as on Bow model: set to its weight and tiller, both limbs from one unstrung shape. "
    "A stretch that is curved otherwise at rest looks as if it bent more or less: give the shape that was "
    "measured.",
    "A stretch of the limb that the string lies on, braced or drawn, bends as computed there.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "A picture says nothing of cracks, glue or fatigue. Inspect the bow itself.",
    "Take the unstrung shape with the string off. Brace with a stringer, and never stand behind a braced or "
    "drawn bow or in line with its limbs, camera or not.",
    "For tiller at the fadeouts a steel rule is the better tool: it reads to 1/32 in in a minute.",
)


def _when_drawn(part: Group) -> Group:
    """Return a group of inputs that matter where the bow is drawn."""
    return Group(part.title, part.note, asked_when(part.inputs, DRAWN), part.under)


CALCULATOR = Calculator(
    id="photograph",
    title="Read a photograph",
    purpose="Reads a bow's shape, tiller and bend from points that you mark in a photograph of it.",
    groups=(
        group(
            "The picture",
            choice("what", "What it shows", (
                ("unstrung", "The bow unstrung"), ("braced", "The bow braced"),
                ("drawn", "The bow drawn, on a tiller stand"),
                ("belly", "The bow braced, seen from its belly"))),
            *picture_inputs(),
        ),
        group("What is known in it", *known_inputs()),
        group("Marks on the bow", *bow_inputs()),
        _when_drawn(group(
            "The draw",
            quantity("picture_draw", "Draw in the picture", "length", default="28 in", low="10 in",
                     high="34 in", usual=("16 in", "31 in"),
                     help="In the marked way: from the pivot point plus 1 3/4 in (44 mm)."),
            quantity("weight", "Draw weight", "force", default="53 lb", low="5 lb", high="150 lb",
                     usual=("20 lb", "80 lb"), help="From a checked scale."),
            quantity("draw_length", "Draw at which it is read", "length", default="28 in", low="14 in",
                     high="34 in", usual=("24 in", "31 in"), help="In the marked way."),
            quantity("tiller", "Tiller", "length", default="5/16 in", low="-1 1/2 in", high="1 1/2 in",
                     usual=("-3/8 in", "1/2 in"), help="Upper minus lower distance, at the fadeouts."),
        )),
        _when_drawn(measures()),
        _when_drawn(shape_group(UNSTRUNG_SHAPE)),
        _when_drawn(section_group()),
        _when_drawn(group("Lay-up", *layup_inputs(), under=THE_BOW)),
    ),
    results=(
        result("nock_offset", "Nocks from the straight edge, mean", "length",
               "Toward the belly is positive."),
        give_or_take("nock_offset_error", "length"),
        result("shape_error", "Worst error of the mean shape", "thickness",
               "Half of the 95 % range, square to the limb."),
        result("limb_shape_error", "Worst error of either limb's own shape", "thickness"),
        result("apart", "Upper limb less lower, where they differ most", "length"),
        give_or_take("apart_error", "length"),
        result("profile", "Mean shape as rows of offsets", "text", "For Bow model and Weight reduction."),
        result("upper_profile", "Upper limb's rows", "text", "For the record: what it came as."),
        result("lower_profile", "Lower limb's rows", "text"),
        result("tiller_by_shape", "Tiller that the limbs' unlike shapes alone make", "length",
               "Of limbs that are equally stiff. Told where they are unlike beyond the errors."),
        give_or_take("tiller_by_shape_error", "length"),
        result("throat", "Fadeouts behind the throat", "length"),
        give_or_take("throat_error", "length"),
        result("tiller", "Tiller, upper less lower", "length"),
        give_or_take("tiller_error", "length"),
        result("upper", "Upper fadeout to the string", "length"),
        give_or_take("upper_error", "length"),
        result("lower", "Lower fadeout to the string", "length"),
        give_or_take("lower_error", "length"),
        result("brace_height", "Brace height", "length"),
        give_or_take("brace_height_error", "length"),
        result("upper_bend", "Upper limb bends, from rest", "angle",
               "From the fadeout to nine tenths of its length."),
        give_or_take("upper_bend_error", "angle"),
        result("upper_bend_computed", "computed", "angle"),
        result("lower_bend", "Lower limb bends, from rest", "angle"),
        give_or_take("lower_bend_error", "angle"),
        result("lower_bend_computed", "computed", "angle"),
        result("upper_offset_tip", "String off the middle, upper limb near the tip", "length",
               "To the right is positive."),
        give_or_take("upper_offset_tip_error", "length"),
        result("upper_offset_riser", "at the upper fadeout", "length"),
        give_or_take("upper_offset_riser_error", "length"),
        result("lower_offset_tip", "lower limb near the tip", "length"),
        give_or_take("lower_offset_tip_error", "length"),
        result("lower_offset_riser", "at the lower fadeout", "length"),
        give_or_take("lower_offset_riser_error", "length"),
        result("riser_length", "Riser, fadeout to fadeout", "length"),
        give_or_take("riser_length_error", "length"),
        result("upper_length", "Upper limb along the belly", "length"),
        give_or_take("upper_length_error", "length"),
        result("lower_length", "Lower limb along the belly", "length"),
        give_or_take("lower_length_error", "length"),
        result("bow_length", "Bow along the belly, nock to nock", "length"),
        give_or_take("bow_length_error", "length"),
        result("apart_at", "The limbs differ most so far from the fadeout", "length"),
        result("tilt", "Lens off the square to the board", "angle"),
        result("misfit", "Known points miss, of what they may", "ratio", "100 % is as the errors stated."),
        result("lens_bend", "Lens bends the picture at its corners", "ratio"),
    ),
    acted_on=("profile", "tiller", "upper", "lower", "brace_height"),
    cautions=CAUTIONS,
    sources=("amo-draw-length", "beam-theory", "brown-1971", "elastica", "family-shapes", "geometry",
             "hartley-zisserman", "interpolation", "least-squares", "wood-handbook"),
    example="An invented 64 in recurve, unstrung, before a board with four sheets of dots; the marks were "
            "computed, no bow was photographed.",
    first=("what", "picture_width", "picture_height", "target"),
    compute=compute,
    find=find,
)
