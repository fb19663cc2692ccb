"""What a picture itself shows near a mark: the edge of a limb, a corner on it, the middle of a dot.

A patch of the picture comes as brightness, 0 to 255, row by row. A sample stands for the middle of its
square, so its place is a whole number and a half.
"""

import math

EDGE, CORNER, MIDDLE = "edge", "corner", "middle"
"""How a mark may be set beside `hand`: on an edge, on a corner of two edges, in the middle of a dot."""

HAND = "hand"

FAINTEST = 12.0
"""Steps of brightness of 255 from which something counts as an edge; less is grain (common practice)."""

REACH = 9.0
"""From a mark to what it may be drawn to, in samples: three standard errors of a mark out by three pixels."""

STRIDE = 0.5
"""Between the places at which brightness is read across an edge, in samples."""

SLOPE_OVER = 1.5
"""Brightness is compared so far to both sides of a place, in samples: about the blur of a sharp picture."""

CORE = 2.5
"""What counts of an edge to both sides of its steepest place, in samples."""

STATIONS = (-9.0, -7.5, -6.0, -4.5, -3.0, -1.5, 0.0, 1.5, 3.0, 4.5, 6.0, 7.5, 9.0)
AHEAD = (3.0, 4.5, 6.0, 7.5, 9.0, 10.5, 12.0, 13.5, 15.0)
"""Along an edge, where it is crossed, in samples: short enough for a limb's bend to be straight. AHEAD:
beyond a corner, where tape that ends there no longer lies on the limb."""

FEWEST_CROSSINGS = 5
OFF_LINE = 1.2
"""A crossing farther off the line through the others is another's, in samples."""

AROUND = 8
"""Around a mark, where the lie of the edges is read, in samples."""

ONE_WAY = 0.5
"""How alike the slopes of brightness must lie: 1 is a straight edge, 0 is no direction at all."""

INWARD = (2.5, 3.5, 4.5, 5.5, 6.5)
"""From a limb's edge, where a step along it is looked for, in samples."""

LEAST_DOT, MOST_DOT = 6, 70
"""Samples from side to side of a dot."""

LONGEST_DOT = 1.7
"""Its longer side over its shorter."""


class Patch:
    """A part of a picture.

    left, top: where it begins in the picture [px]. step: pixels of the picture to a sample. wide: samples in
    a row. gray: brightness, row by row.
    """

    def __init__(self, left: float, top: float, step: float, wide: int, gray: list[int]) -> None:
        self.left = left
        self.top = top
        self.step = step
        self.wide = wide
        self.high = len(gray) // wide
        self.gray = gray

    def within(self, x: float, y: float) -> tuple[float, float]:
        """Return a place of the picture [px] in samples from the patch's corner."""
        return (x - self.left) / self.step, (y - self.top) / self.step

    def outside(self, u: float, v: float) -> tuple[float, float]:
        """Return a place of the patch in the picture's pixels: what `within` undoes."""
        return self.left + u * self.step, self.top + v * self.step

    def at(self, u: float, v: float) -> float:
        """Return the brightness at a place of the patch, between the four samples around it."""
        across = min(max(u - 0.5, 0.0), self.wide - 1.001)
        down = min(max(v - 0.5, 0.0), self.high - 1.001)
        i, j = int(across), int(down)
        a, b = across - i, down - j
        gray, first = self.gray, j * self.wide + i
        second = first + self.wide
        return ((1 - b) * ((1 - a) * gray[first] + a * gray[first + 1])
                + b * ((1 - a) * gray[second] + a * gray[second + 1]))


class Found:
    """A mark as the picture shows it: its place [px], and how: EDGE, CORNER or MIDDLE.

    rises: of an edge, 1 where it is brighter on the left of the way along it, -1 on the right; 0 of a dot.
    """

    def __init__(self, place: tuple[float, float], how: str, rises: float) -> None:
        self.place = place
        self.how = how
        self.rises = rises


class _Edge:
    """A straight edge: the place on it next to a mark, its direction, the square to it, and which way it
    rises along that square: 1 brighter, -1 darker.
    """

    def __init__(self, place: tuple[float, float], on: tuple[float, float], rises: float) -> None:
        self.place = place
        self.on = on
        self.square = -on[1], on[0]
        self.rises = rises


def edge_near(
    patch: Patch, mark: tuple[float, float], along: tuple[float, float] | None = None, rises: float = 0.0
) -> Found | None:
    """Return the place on the nearest clear edge that is next to a mark [px]; None where none is clear.

    Args:
        patch: of the picture, the mark in its middle.
        mark [px]: as it was set.
        along: the way in which the edge runs about; None where that is read off the patch.
        rises: as `Found` has it of another mark on the same edge; 0 where there is none.
    """
    edge = _edge(patch, patch.within(mark[0], mark[1]), along, rises, STATIONS)
    return None if edge is None else Found(patch.outside(edge.place[0], edge.place[1]), EDGE, edge.rises)


def corner_near(
    patch: Patch, mark: tuple[float, float], along: tuple[float, float] | None = None
) -> Found | None:
    """Return the corner of the nearest clear edge and of a step along the limb, such as a strip of tape ends
    with; the place on the edge alone where there is no such step, None where no edge is clear.

    patch, mark [px]: as of `edge_near`. along: from the corner to the bare limb.
    """
    edge = _edge(patch, patch.within(mark[0], mark[1]), along, 0.0, AHEAD)
    if edge is None:
        return None
    steps = [each for each in (_step(patch, edge, side) for side in (1.0, -1.0)) if each is not None]
    if not steps:
        return Found(patch.outside(edge.place[0], edge.place[1]), EDGE, edge.rises)
    _, ahead = max(steps)
    place = edge.place[0] + ahead * edge.on[0], edge.place[1] + ahead * edge.on[1]
    return Found(patch.outside(place[0], place[1]), CORNER, edge.rises)


def middle_near(patch: Patch, mark: tuple[float, float]) -> Found | None:
    """Return the middle of the dark dot under a mark [px], or next to it; None where there is none."""
    ranked = sorted(patch.gray)
    dark, light = ranked[len(ranked) // 50], ranked[-1 - len(ranked) // 5]
    if light - dark < 3 * FAINTEST:
        return None
    spot = _spot(patch, patch.within(mark[0], mark[1]), 0.5 * (dark + light))
    if spot is None:
        return None
    wide, high = spot[2] - spot[0] + 1, spot[3] - spot[1] + 1
    if min(wide, high) < LEAST_DOT or max(wide, high) > min(MOST_DOT, LONGEST_DOT * min(wide, high)):
        return None
    return Found(_balance(patch, spot, dark, light), MIDDLE, 0.0)


# Edges ---------------------------------------------------------------------------


def _edge(
    patch: Patch, mark: tuple[float, float], along: tuple[float, float] | None, rises: float,
    stations: tuple[float, ...],
) -> _Edge | None:
    """Return the straight edge nearest to a place of a patch: that place's foot on it."""
    on = along or _lie(patch, mark)
    first = None if on is None else _crossed(patch, mark, on, rises, stations)
    edge = None if first is None else _crossed(patch, first.place, first.on, first.rises, stations)
    if edge is None:
        return None
    ahead = (mark[0] - edge.place[0]) * edge.on[0] + (mark[1] - edge.place[1]) * edge.on[1]
    return _Edge((edge.place[0] + ahead * edge.on[0], edge.place[1] + ahead * edge.on[1]), edge.on,
                 edge.rises)


def _lie(patch: Patch, mark: tuple[float, float]) -> tuple[float, float] | None:
    """Return the direction in which the edges around a place run; None where they run all ways."""
    xx = xy = yy = 0.0
    left, top = int(mark[0]), int(mark[1])
    gray, wide = patch.gray, patch.wide
    for j in range(max(1, top - AROUND), min(patch.high - 1, top + AROUND + 1)):
        for i in range(max(1, left - AROUND), min(wide - 1, left + AROUND + 1)):
            here = j * wide + i
            x, y = gray[here + 1] - gray[here - 1], gray[here + wide] - gray[here - wide]
            xx += x * x
            xy += x * y
            yy += y * y
    if xx + yy <= 0 or math.sqrt((xx - yy) ** 2 + 4 * xy * xy) < ONE_WAY * (xx + yy):
        return None
    angle = 0.5 * math.atan2(2 * xy, xx - yy)
    return -math.sin(angle), math.cos(angle)


def _crossed(
    patch: Patch, start: tuple[float, float], on: tuple[float, float], rises: float,
    stations: tuple[float, ...],
) -> _Edge | None:
    """Return the edge that lies nearest to a place, across a direction in which it runs about."""
    square = -on[1], on[0]
    lines = [_read_across(patch, (start[0] + station * on[0], start[1] + station * on[1]), square)
             for station in stations]
    count = len(lines[0])
    whole = [sum([line[k] for line in lines]) / len(lines) for k in range(count)]
    found = _nearest_step(whole, rises)
    if found is None:
        return None
    place, rises = found
    crossings = []
    for station, line in zip(stations, lines):
        crossing = _centre(line, place, rises)
        if crossing is not None:
            crossings.append((station, crossing))
    line_through = _through(crossings)
    if line_through is None:
        return None
    at_start, lean = line_through
    size = math.sqrt(1 + lean * lean)
    return _Edge((start[0] + at_start * square[0], start[1] + at_start * square[1]),
                 ((on[0] + lean * square[0]) / size, (on[1] + lean * square[1]) / size), rises)


def _steps(reach: float) -> int:
    """Return how many strides reach nearest to a distance."""
    return math.floor(reach / STRIDE + 0.5)


def _read_across(patch: Patch, place: tuple[float, float], way: tuple[float, float]) -> list[float]:
    """Return how brightness changes along a way, from one side of a place to the other."""
    apart = _steps(SLOPE_OVER)
    half = _steps(REACH) + 2 * apart
    light = [patch.at(place[0] + k * STRIDE * way[0], place[1] + k * STRIDE * way[1])
             for k in range(-half, half + 1)]
    return [light[k + apart] - light[k - apart] for k in range(apart, len(light) - apart)]


def _nearest_step(slopes: list[float], rises: float) -> tuple[float, float] | None:
    """Return where brightness changes most beside a place, and which way: 1 brighter, -1 darker.

    Of steps that are half as high as the highest within reach, the nearest; None where all are faint. rises:
    the way that it must be, 0 for either.
    """
    middle = len(slopes) // 2
    half = _steps(REACH)
    inside = range(middle - half, middle + half + 1)
    highest = max([abs(slopes[k]) for k in inside])
    if highest < FAINTEST:
        return None
    best: tuple[float, float] | None = None
    for k in inside:
        size = abs(slopes[k])
        if size < max(FAINTEST, 0.5 * highest) or size < abs(slopes[k - 1]) or size < abs(slopes[k + 1]):
            continue
        place = (k - middle) * STRIDE
        if slopes[k] * rises >= 0 and (best is None or abs(place) < abs(best[0])):
            best = place, 1.0 if slopes[k] > 0 else -1.0
    return best


def _centre(slopes: list[float], place: float, rises: float) -> float | None:
    """Return the middle of a step that lies about a place; None where none of that way does."""
    middle = len(slopes) // 2
    half = _steps(CORE)
    for _ in range(2):  # about the place first, then about what was found
        at = middle + _steps(place)
        total = moment = 0.0
        for k in range(max(0, at - half), min(len(slopes), at + half + 1)):
            size = max(0.0, rises * slopes[k])
            total += size
            moment += size * (k - middle) * STRIDE
        if total < FAINTEST * half:
            return None
        place = moment / total
    return place


def _through(crossings: list[tuple[float, float]]) -> tuple[float, float] | None:
    """Return the line through crossings, as its height at 0 and its slope, without those that lie off it."""
    own = crossings
    for _ in range(3):
        if len(own) < FEWEST_CROSSINGS:
            return None
        height, lean = _line(own)
        misses = [abs(y - height - lean * x) for x, y in own]
        if max(misses) <= OFF_LINE:
            return height, lean
        worst = misses.index(max(misses))
        own = own[:worst] + own[worst + 1:]
    return None


def _line(points: list[tuple[float, float]]) -> tuple[float, float]:
    """Return the straight line nearest to points in height, as its height at 0 and its slope."""
    count = len(points)
    x_mean, y_mean = sum([x for x, _ in points]) / count, sum([y for _, y in points]) / count
    square = sum([(x - x_mean) ** 2 for x, _ in points])
    lean = sum([(x - x_mean) * (y - y_mean) for x, y in points]) / square
    return y_mean - lean * x_mean, lean


def _step(patch: Patch, edge: _Edge, side: float) -> tuple[float, float] | None:
    """Return how high the nearest step along an edge is, on one side of it, and where; None without one."""
    lines = []
    for inward in INWARD:
        in_by = side * inward
        start = edge.place[0] + in_by * edge.square[0], edge.place[1] + in_by * edge.square[1]
        lines.append(_read_across(patch, start, edge.on))
    whole = [sum([line[k] for line in lines]) / len(lines) for k in range(len(lines[0]))]
    found = _nearest_step(whole, 0.0)
    if found is None:
        return None
    place, rises = found
    centre = _centre(whole, place, rises)
    return None if centre is None else (abs(whole[len(whole) // 2 + _steps(place)]), centre)


# Dots ----------------------------------------------------------------------------


def _spot(
    patch: Patch, mark: tuple[float, float], threshold: float
) -> tuple[int, int, int, int] | None:
    """Return the box around the dark samples that hang together next to a mark: left, top, right, bottom.

    None where there are none within reach, or where they run out of the patch.
    """
    wide, high, gray = patch.wide, patch.high, patch.gray
    seed, nearest = -1, (2 * REACH) ** 2
    for index in range(len(gray)):
        if gray[index] < threshold:
            apart = (index % wide + 0.5 - mark[0]) ** 2 + (index // wide + 0.5 - mark[1]) ** 2
            if apart < nearest:
                seed, nearest = index, apart
    if seed < 0:
        return None
    met = [False] * len(gray)
    met[seed] = True
    waiting = [seed]
    left = right = seed % wide
    top = bottom = seed // wide
    while waiting:
        here = waiting.pop()
        i, j = here % wide, here // wide
        if i in (0, wide - 1) or j in (0, high - 1):
            return None
        left, right, top, bottom = min(left, i), max(right, i), min(top, j), max(bottom, j)
        for other in (here - 1, here + 1, here - wide, here + wide):
            if not met[other] and gray[other] < threshold:
                met[other] = True
                waiting.append(other)
    return left, top, right, bottom


def _balance(
    patch: Patch, box: tuple[int, int, int, int], dark: float, light: float
) -> tuple[float, float]:
    """Return the point at which the darkness in a box balances [px]."""
    total = x = y = 0.0
    for j in range(max(0, box[1] - 2), min(patch.high, box[3] + 3)):
        for i in range(max(0, box[0] - 2), min(patch.wide, box[2] + 3)):
            share = min(max((light - patch.gray[j * patch.wide + i]) / (light - dark), 0.0), 1.0)
            total += share
            x += share * (i + 0.5)
            y += share * (j + 0.5)
    return patch.outside(x / total, y / total)
