"""What is read from a bow in a picture: figures with their errors, tables and drawings."""

from calc.outcome import Axis, Chart, Column, Line, Table
from calc.pictures import frame
from calc.pictures.bow import Photographed
from calc.pictures.overlay import limb_line
from calc.pictures.picture import Picture, Reading, Standing, pixels_of, weighed
from calc.pictures.shape import Place
from calc.quantities import INCH, show_number

ALONG_A_COURSE = 24
"""Pieces in which a limb's course is drawn."""


class Tiller:
    """Where the string stands over both fadeouts, and over the throat where that is marked."""

    def __init__(self, upper: Reading, lower: Reading, brace_height: Reading | None, line: frame.Line):
        self.upper = upper
        self.lower = lower
        self.difference = weighed(upper.marks, [(1.0, upper), (-1.0, lower)])
        self.brace_height = brace_height
        self.line = line


def tiller_of(bow: Photographed) -> Tiller:
    """Return the tiller of a braced bow: each fadeout's distance from the string, square to the string."""
    first, count = bow.string
    line = frame.Line(bow.marks, first, count)
    toward = bow.frame.belly
    sign = line.facing(toward)
    square = sign * line.square[0], sign * line.square[1]
    upper, lower = [line.distance(end.place, toward, end.moves(square)) for end in bow.frame.ends]
    brace_height = None
    throat_first, throats = bow.throat
    if throats:
        place, moves = bow.marks.middle(throat_first, throats, square)
        brace_height = line.distance(place, toward, moves)
    return Tiller(upper, lower, brace_height, line)


def pair(id: str, reading: Reading | None) -> tuple[tuple[str, float | None], tuple[str, float | None]]:
    """Return a reading and half of its 95 % range as two results."""
    if reading is None:
        return (id, None), (id + "_error", None)
    return (id, reading.value), (id + "_error", reading.half_range)


def shape_table(places: list[Place]) -> Table:
    """Return the offsets of both limbs, with half of their 95 % ranges."""
    return Table(
        "shape", "Offsets from the straight edge through the fadeouts, toward the belly; behind each half "
        "of its 95 % range",
        (Column("along", "From the fadeout", "length"),
         Column("mean", "Mean of both limbs", "length"), Column("mean_error", "±", "thickness"),
         Column("upper", "Upper limb", "length"), Column("upper_error", "±", "thickness"),
         Column("lower", "Lower limb", "length"), Column("lower_error", "±", "thickness"),
         Column("apart", "Upper less lower", "length"), Column("apart_error", "±", "thickness")),
        tuple([(place.along, place.mean.value, place.mean.half_range,
                place.upper.value, place.upper.half_range,
                place.lower.value, place.lower.half_range,
                place.apart.value, place.apart.half_range) for place in places]),
    )


def shape_chart(places: list[Place]) -> Chart:
    """Return both limbs' offsets and their mean."""
    xs = [0.0] + [place.along for place in places]
    return Chart("shape", "Both limbs from the straight edge, toward the belly",
                 Axis("From the fadeout", "length"), Axis("Offset", "length"), (
                     Line("Upper limb", "points", xs, [0.0] + [place.upper.value for place in places]),
                     Line("Lower limb", "points", xs, [0.0] + [place.lower.value for place in places]),
                     Line("Mean", "line", xs, [0.0] + [place.mean.value for place in places])))


def inches(length: float) -> str:
    """Return a length [m] as another page's form takes it."""
    return show_number(length / INCH, 3) + " in"


def profile_text(offsets: list[tuple[float, float]]) -> str:
    """Return places along the straight edge and offsets there [m] as the rows of a profile, in inches."""
    return ";".join([show_number(along / INCH, 2) + "in:" + show_number(offset / INCH, 3) + "in"
                     for along, offset in offsets])


def course_lines(
    picture: Picture, bow: Photographed, standing: Standing,
    limbs: tuple[list[tuple[float, float, str]], list[tuple[float, float, str]]],
) -> list[list[tuple[float, float]]]:
    """Return each limb as it is understood, in the picture's pixels: its course, or a curve through its marks
    where they are too few for one.
    """
    lines = []
    for course, limb in zip(bow.courses, limbs):
        if course is None:
            lines.append(limb_line(picture, bow.board, [mark[:2] for mark in limb]))
            continue
        parts = [index / ALONG_A_COURSE for index in range(ALONG_A_COURSE + 1)]
        lines.append([pixels_of(picture, bow.board, bow.lens,
                                course.point(course.start + part * (course.end - course.start)),
                                standing.at(part)) for part in parts])
    return lines
