"""Read a photograph: the unstrung shape, tiller and bend from points marked in a picture."""

import math

from calc.bows.reading_errors import give_or_take
from calc.declaring import Calculator, choice, group, result
from calc.drawings.picture import picture_drawing
from calc.numerics.normal import NORMAL_95
from calc.outcome import OK, Axis, Chart, Line, Outcome, amount, check, sentence
from calc.pictures.inputs import bow_inputs, known_inputs, picture_inputs
from calc.pictures.overlay import board_lines, limb_line, string_line
from calc.pictures.picture import Picture, Standing, point_of
from calc.pictures.reading import (
    board_of,
    known_on_rules,
    known_on_sheets,
    lens_before,
    require_inside,
    straight_lines,
)


def compute(
    what: str,
    picture_width: float,
    picture_height: float,
    marking_error: float,
    target: str,
    sheets: tuple[tuple[float, float], ...] | None,
    dots: tuple[tuple[int, str, float, float], ...] | None,
    rule_marks: tuple[tuple[int, float, float, float, float], ...] | None,
    board_error: float,
    straight: tuple[tuple[int, float, float], ...],
    distance: float,
    standoff: float,
    standoff_tip: float,
    standoff_error: float,
    belly_faces: str,
    upper_limb: tuple[tuple[float, float], ...],
    lower_limb: tuple[tuple[float, float], ...],
    throat_marks: tuple[tuple[float, float], ...],
    string_marks: tuple[tuple[float, float], ...] | None,
) -> Outcome:
    """Return the shape of an unstrung bow, or the tiller of a braced one, with their errors."""
    picture = Picture(picture_width, picture_height, marking_error)
    for field, marks in (("dots", [row[2:] for row in dots or ()]),
                         ("rule_marks", [row[3:] for row in rule_marks or ()]),
                         ("straight", [row[1:] for row in straight]), ("upper_limb", list(upper_limb)),
                         ("lower_limb", list(lower_limb)), ("throat_marks", list(throat_marks)),
                         ("string_marks", list(string_marks or ()))):
        require_inside(picture, field, marks)
    if sheets is not None and dots is not None:
        field, known = "dots", known_on_sheets(picture, sheets, dots)
    else:
        field, known = "rule_marks", known_on_rules(picture, rule_marks or ())
    board = board_of(field, picture, known, straight_lines(picture, straight), board_error)
    lens = lens_before(board, distance)
    standing = Standing(standoff, standoff_tip, standoff_error)
    del what, target, belly_faces
    upper = point_of(picture, board, lens, upper_limb[0], standing.at(0.0), standing.error)
    lower = point_of(picture, board, lens, lower_limb[0], standing.at(0.0), standing.error)
    across, up = upper.along - lower.along, upper.up - lower.up
    riser = math.sqrt(across * across + up * up)
    across, up = across / riser, up / riser
    square = sum([(across * a + up * b) ** 2 for end in (upper, lower) for a, b in end.own])
    square += sum([(across * (a - c) + up * (b - d)) ** 2
                   for (a, b), (c, d) in zip(upper.common, lower.common)])
    error = NORMAL_95 * math.sqrt(square)
    shown = [[board.place(picture.seen(x, y)) for x, y in limb] for limb in (upper_limb, lower_limb)]
    xs, ys = [[x for x, _ in limb] for limb in shown], [[y for _, y in limb] for limb in shown]
    return Outcome(
        headline=sentence("From fadeout to fadeout the riser is {}, give or take {}.",
                          amount("length", riser), amount("length", error)),
        values=(("riser_length", riser), ("riser_length_error", error), ("tilt", lens.tilt),
                ("misfit", board.misfit)),
        checks=(check("board", OK, "The known points fit the board."),),
        charts=(Chart("places", "Marks on the board", Axis("To the right", "length"), Axis("Up", "length"), (
            Line("Upper limb", "points", xs[0], ys[0]), Line("Lower limb", "points", xs[1], ys[1]))),),
        drawings=(picture_drawing(
            picture_width, picture_height, board_lines(picture, board, known),
            [limb_line(picture, board, limb) for limb in (upper_limb, lower_limb)]
            + ([string_line(picture, board, string_marks)] if string_marks else [])),),
        assumptions=("The picture's pixels are square, and the lens looks through its middle.",),
    )


CALCULATOR = Calculator(
    id="photograph",
    title="Read a photograph",
    purpose="Reads a bow's shape, tiller and bend from points that you mark in a photograph of it.",
    groups=(
        group(
            "The picture",
            choice("what", "What it shows", (
                ("unstrung", "The bow unstrung"), ("braced", "The bow braced"))),
            *picture_inputs(),
        ),
        group("What is known in it", *known_inputs()),
        group("Marks on the bow", *bow_inputs()),
    ),
    results=(
        result("riser_length", "Riser, fadeout to fadeout", "length"),
        give_or_take("riser_length_error", "length"),
        result("tilt", "Lens tilted against the board", "angle"),
        result("misfit", "Known points miss, of what they should", "ratio", "100 % is as you state."),
    ),
    cautions=("A picture says nothing of cracks, glue or fatigue. Inspect the bow itself.",),
    sources=("brown-1971", "geometry", "hartley-zisserman", "least-squares"),
    example="An invented 64 in recurve, unstrung, before a board with four sheets of dots; the marks were "
            "computed, no bow was photographed.",
    compute=compute,
)
