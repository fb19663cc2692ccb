"""A board as a photograph shows it: fitted to points that are known on it, with what the fit leaves unsure.

A picture's point is taken from the picture's middle and divided by half its diagonal: p = (u, v), u to the
right, v down. A place on the board is (along, up). Without the lens's bend the one is the other's projection:

    u = (h0 X + h1 Y + h2) / (h6 X + h7 Y + 1),   v = (h3 X + h4 Y + h5) / (h6 X + h7 Y + 1)

with X and Y counted from the middle of the known points and divided by their spread. The lens moves p to
p (1 + k p^2).
"""

import math

from calc.numerics.matrices import solved, spreads, triangle
from calc.pictures.plane import best_line, moments_of

BEND_ERROR = 0.03
"""Standard error of the lens's bend k before anything is known: at a corner a picture of 12 megapixels is
then out by 75 pixels."""

MOST_BEND = 0.25
"""Beyond it the picture folds over itself near the corners."""

ROUNDS = 25
SETTLED = 1e-12

UNKNOWNS = 9
"""h0 to h7, and k: what a fit says of the picture. What it says of sheets out of place is left aside."""


class Known:
    """A point known on the board: its place [m], the picture's point [1], its sheet or rule, and the standard
    error of its mark either way, of the picture's half diagonal.
    """

    def __init__(
        self, place: tuple[float, float], seen: tuple[float, float], sheet: int, error: float
    ) -> None:
        self.place = place
        self.seen = seen
        self.sheet = sheet
        self.error = error


class Board:
    """A board fitted to a picture.

    middle [m], spread [m]: of the known points. unknowns: h0 to h7 and k. causes: rows, each what one
    standard error of an independent cause does to the unknowns. misses [1]: of each known point, how far the
    fit passes it, in marking errors. misfit [1]: root mean square of them all against what is to be expected,
    1 where marks are as good as stated; None where there is nothing to spare.
    """

    def __init__(
        self, middle: tuple[float, float], spread: float, unknowns: list[float], causes: list[list[float]],
        misses: list[float], misfit: float | None,
    ) -> None:
        self.middle = middle
        self.spread = spread
        self.unknowns = unknowns
        self.causes = causes
        self.misses = misses
        self.misfit = misfit

    def place(self, seen: tuple[float, float]) -> tuple[float, float]:
        """Return the place on the board [m] that a picture's point [1] shows."""
        x, y = _back(self.unknowns, straightened(seen, self.unknowns[8]))
        return self.middle[0] + self.spread * x, self.middle[1] + self.spread * y

    def seen(self, place: tuple[float, float]) -> tuple[float, float]:
        """Return the picture's point [1] that shows a place on the board [m]."""
        return _bent(self.unknowns, (place[0] - self.middle[0]) / self.spread,
                     (place[1] - self.middle[1]) / self.spread)

    def moves(self, seen: tuple[float, float]) -> tuple[list[float], list[float]]:
        """Return what moves the place [m] that a picture's point shows, along and up.

        The first two of each are for one unit of the point, right and down; then one for each cause.
        """
        h, k = self.unknowns, self.unknowns[8]
        p = straightened(seen, k)
        x, y = _back(h, p)
        a, b, c, d = _inverse_slopes(h, x, y)
        r2 = p[0] * p[0] + p[1] * p[1]
        grows = 1 + k * r2
        e = grows + 2 * k * p[0] * p[0], 2 * k * p[0] * p[1], grows + 2 * k * p[1] * p[1]
        size = e[0] * e[2] - e[1] * e[1]
        inward = ((e[2] / size, -e[1] / size), (-e[1] / size, e[0] / size))
        along = [a * inward[0][0] + b * inward[1][0], a * inward[0][1] + b * inward[1][1]]
        up = [c * inward[0][0] + d * inward[1][0], c * inward[0][1] + d * inward[1][1]]
        w = h[6] * x + h[7] * y + 1
        bend = -r2 * p[0], -r2 * p[1]
        lens = (inward[0][0] * bend[0] + inward[0][1] * bend[1],
                inward[1][0] * bend[0] + inward[1][1] * bend[1])
        for cause in self.causes:
            down = (cause[6] * x + cause[7] * y) / w
            u = lens[0] * cause[8] - (cause[0] * x + cause[1] * y + cause[2]) / w + p[0] * down
            v = lens[1] * cause[8] - (cause[3] * x + cause[4] * y + cause[5]) / w + p[1] * down
            along.append(a * u + b * v)
            up.append(c * u + d * v)
        return [self.spread * each for each in along], [self.spread * each for each in up]


def fitted(
    known: list[Known], lines: list[list[tuple[float, float]]], mark_error: float, board_error: float
) -> Board:
    """Return the board that known points show, by least squares.

    Each sheet or rule may lie off its place by the board's error, and be turned by as much at its points'
    distance from its middle; its points move with it. Lines that are straight on the board say how far the
    lens bends them.

    Args:
        known: four or more, not all on one line.
        lines [1]: points of the picture on straight lines, three or more a line.
        mark_error [1]: standard error of a mark on a line, of the picture's half diagonal, > 0.
        board_error [m]: standard error of the place of a sheet or rule either way, >= 0.

    Returns:
        The board.

    Raises:
        ValueError: the points lie on a line, fewer than four are known, or the fit does not settle.

    Source: hartley-zisserman, the direct linear transformation with normalised points, then least squares.
    """
    middle, spread = _spread([each.place for each in known])
    places = [((each.place[0] - middle[0]) / spread, (each.place[1] - middle[1]) / spread) for each in known]
    unknowns = _first_guess(places, [each.seen for each in known]) + [0.0]
    bodies = _bodies(known, places, board_error / spread)
    moved = [0.0] * sum([len(each.errors) for each in bodies])
    for _ in range(ROUNDS):
        normal, right = _equations(known, places, lines, unknowns, bodies, moved, mark_error)
        step = solved(triangle(normal), right)
        moved = [value + change for value, change in zip(moved, step)]
        unknowns = [value + change for value, change in zip(unknowns, step[len(moved):])]
        if abs(unknowns[8]) > MOST_BEND:
            raise ValueError("the lens would bend the picture over itself")
        if max([abs(each) for each in step[len(moved):]]) < SETTLED:
            break
    else:
        raise ValueError("the fit of the known points does not settle")
    normal, _ = _equations(known, places, lines, unknowns, bodies, moved, mark_error)
    misses = _misses(known, places, unknowns, bodies, moved)
    squares = sum([each * each for each in misses]) + (unknowns[8] / BEND_ERROR) ** 2
    for body in bodies:
        for index, error in enumerate(body.errors):
            squares += (moved[body.first + index] / error) ** 2
    spare = 2 * len(known) - 8
    for line in lines:
        squares += sum([each * each for each in _off_line(line, unknowns[8])[0]]) / mark_error ** 2
        spare += len(line) - 2
    misfit = math.sqrt(squares / spare) if spare > 0 else None
    return Board(middle, spread, unknowns, spreads(triangle(normal), UNKNOWNS), misses, misfit)


def straightened(seen: tuple[float, float], bend: float) -> tuple[float, float]:
    """Return a picture's point [1] as a lens without bend would show it.

    Raises:
        ValueError: no point comes to lie there with such a bend.

    Source: brown-1971, one radial term, undone by Newton's method.
    """
    size = math.sqrt(seen[0] * seen[0] + seen[1] * seen[1])
    if size == 0 or bend == 0:
        return seen
    r = size
    for _ in range(20):
        slope = 1 + 3 * bend * r * r
        if slope <= 0.1:
            raise ValueError("the lens would bend the picture over itself")
        change = (r + bend * r * r * r - size) / slope
        r -= change
        if abs(change) < 1e-14:
            break
    return seen[0] * r / size, seen[1] * r / size


def shown(unknowns: list[float], x: float, y: float) -> tuple[float, float]:
    """Return where a lens without bend shows a place given in the fit's own measure."""
    w = unknowns[6] * x + unknowns[7] * y + 1
    return ((unknowns[0] * x + unknowns[1] * y + unknowns[2]) / w,
            (unknowns[3] * x + unknowns[4] * y + unknowns[5]) / w)


def _bent(unknowns: list[float], x: float, y: float) -> tuple[float, float]:
    """Return where the lens, with its bend, shows a place given in the fit's own measure."""
    u, v = shown(unknowns, x, y)
    grows = 1 + unknowns[8] * (u * u + v * v)
    return u * grows, v * grows


def _back(h: list[float], p: tuple[float, float]) -> tuple[float, float]:
    """Return the place in the fit's own measure that a point shows, straightened."""
    a, b = h[0] - p[0] * h[6], h[1] - p[0] * h[7]
    c, d = h[3] - p[1] * h[6], h[4] - p[1] * h[7]
    size = a * d - b * c
    if size == 0:
        raise ValueError("a mark lies on the board's horizon")
    e, f = p[0] - h[2], p[1] - h[5]
    return (d * e - b * f) / size, (a * f - c * e) / size


def _inverse_slopes(h: list[float], x: float, y: float) -> tuple[float, float, float, float]:
    """Return how x, then y, goes with u and with v."""
    w = h[6] * x + h[7] * y + 1
    u, v = shown(h, x, y)
    a, b = (h[0] - u * h[6]) / w, (h[1] - u * h[7]) / w
    c, d = (h[3] - v * h[6]) / w, (h[4] - v * h[7]) / w
    size = a * d - b * c
    return d / size, -b / size, -c / size, a / size


def _spread(points: list[tuple[float, float]]) -> tuple[tuple[float, float], float]:
    """Return the middle of points, and their root mean square distance from it over the root of two."""
    middle, xx, _, yy = moments_of(points)
    square = (xx + yy) / len(points)
    if square <= 0:
        raise ValueError("all known points lie in one place")
    return middle, math.sqrt(square / 2)


def _first_guess(places: list[tuple[float, float]], seen: list[tuple[float, float]]) -> list[float]:
    """Return h0 to h7 from equations that are linear in them."""
    if len(places) < 4:
        raise ValueError("four known points are needed")
    middle, spread = _spread(seen)
    normal = [[0.0] * 8 for _ in range(8)]
    right = [0.0] * 8
    for (x, y), point in zip(places, seen):
        u, v = (point[0] - middle[0]) / spread, (point[1] - middle[1]) / spread
        for row, value in (([x, y, 1.0, 0.0, 0.0, 0.0, -u * x, -u * y], u),
                           ([0.0, 0.0, 0.0, x, y, 1.0, -v * x, -v * y], v)):
            for i in range(8):
                if row[i]:
                    right[i] += row[i] * value
                    for j in range(8):
                        normal[i][j] += row[i] * row[j]
    try:
        found = solved(triangle(normal), right)
    except ValueError:
        raise ValueError("the known points lie on one line") from None
    a, b = found[6], found[7]
    return [spread * found[0] + middle[0] * a, spread * found[1] + middle[0] * b,
            spread * found[2] + middle[0],
            spread * found[3] + middle[1] * a, spread * found[4] + middle[1] * b,
            spread * found[5] + middle[1], a, b]


class _Body:
    """A sheet or rule: where its unknowns begin, its middle, and the errors of its place and its turn."""

    def __init__(self, sheet: int, first: int, middle: tuple[float, float], errors: list[float]) -> None:
        self.sheet = sheet
        self.first = first
        self.middle = middle
        self.errors = errors


def _bodies(known: list[Known], places: list[tuple[float, float]], error: float) -> list[_Body]:
    """Return the sheets or rules that may lie off their places; none where the board has no error."""
    bodies: list[_Body] = []
    if error <= 0:
        return bodies
    first = 0
    sheets: list[int] = []
    for each in known:
        if each.sheet in sheets:
            continue
        sheets.append(each.sheet)
        own = [place for place, other in zip(places, known) if other.sheet == each.sheet]
        middle, xx, _, yy = moments_of(own)
        radius = math.sqrt((xx + yy) / len(own))
        errors = [error, error] + ([error / radius] if radius > 0 else [])
        bodies.append(_Body(each.sheet, first, middle, errors))
        first += len(errors)
    return bodies


def _body_of(bodies: list[_Body], sheet: int) -> _Body | None:
    for body in bodies:
        if body.sheet == sheet:
            return body
    return None


def _moved(place: tuple[float, float], body: _Body | None, moved: list[float]) -> tuple[float, float]:
    """Return a known point's place with what its sheet lies off."""
    if body is None:
        return place
    x, y = place[0] + moved[body.first], place[1] + moved[body.first + 1]
    if len(body.errors) > 2:
        turn = moved[body.first + 2]
        x -= turn * (place[1] - body.middle[1])
        y += turn * (place[0] - body.middle[0])
    return x, y


def _equations(
    known: list[Known], places: list[tuple[float, float]], lines: list[list[tuple[float, float]]],
    unknowns: list[float], bodies: list[_Body], moved: list[float], mark_error: float,
) -> tuple[list[list[float]], list[float]]:
    """Return the normal equations of the next step: what sheets lie off first, then the board's unknowns."""
    size = len(moved) + UNKNOWNS
    normal = [[0.0] * size for _ in range(size)]
    right = [0.0] * size
    start, k = len(moved), unknowns[8]
    for each, place in zip(known, places):
        body = _body_of(bodies, each.sheet)
        x, y = _moved(place, body, moved)
        w = unknowns[6] * x + unknowns[7] * y + 1
        if w <= 0:
            raise ValueError("the fit of the known points does not settle")
        u, v = shown(unknowns, x, y)
        r2 = u * u + v * v
        grows = 1 + k * r2
        bent = ((grows + 2 * k * u * u, 2 * k * u * v), (2 * k * u * v, grows + 2 * k * v * v))
        steps = ((unknowns[0] - u * unknowns[6]) / w, (unknowns[1] - u * unknowns[7]) / w,
                 (unknowns[3] - v * unknowns[6]) / w, (unknowns[4] - v * unknowns[7]) / w)
        for which in (0, 1):
            across, down = bent[which][0] / each.error, bent[which][1] / each.error
            turned = across * u + down * v
            row = [across * x / w, across * y / w, across / w, down * x / w, down * y / w, down / w,
                   -turned * x / w, -turned * y / w, (u, v)[which] * r2 / each.error]
            places_of = [start + i for i in range(UNKNOWNS)]
            if body is not None:
                by_x, by_y = across * steps[0] + down * steps[2], across * steps[1] + down * steps[3]
                row += [by_x, by_y]
                if len(body.errors) > 2:
                    row.append(by_y * (place[0] - body.middle[0]) - by_x * (place[1] - body.middle[1]))
                places_of += [body.first + i for i in range(len(body.errors))]
            miss = (each.seen[which] - (u, v)[which] * grows) / each.error
            for i in range(len(row)):
                value, line = row[i], normal[places_of[i]]
                right[places_of[i]] += value * miss
                for j in range(len(row)):
                    line[places_of[j]] += value * row[j]
    for body in bodies:
        for index, error in enumerate(body.errors):
            place_of = body.first + index
            normal[place_of][place_of] += 1 / error ** 2
            right[place_of] -= moved[place_of] / error ** 2
    normal[-1][-1] += 1 / BEND_ERROR ** 2
    right[-1] -= k / BEND_ERROR ** 2
    for each_line in lines:
        offs, slopes = _off_line(each_line, k)
        normal[-1][-1] += sum([slope * slope for slope in slopes]) / mark_error ** 2
        right[-1] -= sum([off * slope for off, slope in zip(offs, slopes)]) / mark_error ** 2
    return normal, right


def _misses(
    known: list[Known], places: list[tuple[float, float]], unknowns: list[float], bodies: list[_Body],
    moved: list[float],
) -> list[float]:
    """Return how far the fit passes each known point, in marking errors."""
    misses = []
    for each, place in zip(known, places):
        x, y = _moved(place, _body_of(bodies, each.sheet), moved)
        u, v = _bent(unknowns, x, y)
        misses.append(math.sqrt((each.seen[0] - u) ** 2 + (each.seen[1] - v) ** 2) / each.error)
    return misses


def _unbends(square: float, bend: float) -> float:
    """Return by which share a point nears the middle as the bend grows, at a squared distance from there."""
    return square / (1 + 3 * bend * square)


def _off_line(line: list[tuple[float, float]], bend: float) -> tuple[list[float], list[float]]:
    """Return how far points lie off their best line, and how that goes with the lens's bend."""
    points = [straightened(each, bend) for each in line]
    middle, (along, across) = best_line(points)
    reaches = [(u - middle[0]) * along + (v - middle[1]) * across for u, v in points]
    offsets = [(v - middle[1]) * along - (u - middle[0]) * across for u, v in points]
    moves = [-_unbends(u * u + v * v, bend) * (v * along - u * across) for u, v in points]
    mean = sum(moves) / len(moves)
    square = sum([reach * reach for reach in reaches])
    lean = sum([reach * move for reach, move in zip(reaches, moves)]) / square if square > 0 else 0.0
    return offsets, [move - mean - lean * reach for move, reach in zip(moves, reaches)]
