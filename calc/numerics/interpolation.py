"""A curve through equally spaced readings: straight from one to the next, or smooth, piece by piece cubic.

The slope of the smooth one at each station is the four-point difference of its neighbours, so that a straight
line stays straight and a smooth curve is followed to fourth order, without solving for all stations at once.
"""

from calc.numerics import cubic

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence


def _difference(values: tuple[float, ...], at: int) -> float:
    """Return the slope at one of the two stations at either end, per station, from up to four of them."""
    last = len(values) - 1
    if at > last - at:  # the far end is the near end read backwards
        return -_difference(tuple(reversed(values[-4:])), last - at)
    if last == 1:
        return values[1] - values[0]
    if last == 2:
        rise, bend = values[2] - values[0], values[2] - 2.0 * values[1] + values[0]
        return 0.5 * rise if at == 1 else 0.5 * rise - bend
    first, second, third, fourth = values[:4]
    if at == 0:
        return (-11.0 * first + 18.0 * second - 9.0 * third + 2.0 * fourth) / 6.0
    return (-2.0 * first - 3.0 * second + 6.0 * third - fourth) / 6.0


def station_slopes(values: tuple[float, ...]) -> list[float]:
    """Return the slope of the curve at each station.

    Args:
        values: readings at equally spaced stations, at least two.

    Returns:
        One slope per station, in the unit of the readings per station.

    Source: interpolation, four-point differences.
    """
    last = len(values) - 1
    inner = [(8.0 * (values[at + 1] - values[at - 1]) - (values[at + 2] - values[at - 2])) / 12.0
             for at in range(2, last - 1)]
    start = [_difference(values, at) for at in range(min(2, last + 1))]
    return start + inner + [_difference(values, at) for at in range(max(2, last - 1), last + 1)]


def halves(values: tuple[float, ...], slopes: list[float]) -> list[float]:
    """Return the curve's values at all stations and half way between them.

    Args:
        values: readings at equally spaced stations, at least two.
        slopes: as `station_slopes` gives them.

    Returns:
        The values, in order, in the unit of the readings.

    Source: interpolation, the cubic through two values and two slopes, in its middle.
    """
    found = [values[0]]
    for at in range(1, len(values)):
        found.append(0.5 * (values[at - 1] + values[at]) + 0.125 * (slopes[at - 1] - slopes[at]))
        found.append(values[at])
    return found


def gathered(weights: list[float]) -> list[float]:
    """Return weights of readings that sum them up as given weights sum up the curve's values in `halves`.

    Args:
        weights [any]: one for each value of `halves`, at least seven.

    Returns:
        [any] one for each reading.

    Source: interpolation, derived here: `halves` and `station_slopes` read backwards.
    """
    found, by_slope = [weights[0]], [0.0]
    for at in range(1, len(weights) // 2 + 1):
        middle = weights[2 * at - 1]
        found[at - 1] += 0.5 * middle
        by_slope[at - 1] += 0.125 * middle
        found.append(weights[2 * at] + 0.5 * middle)
        by_slope.append(-0.125 * middle)
    last = len(found) - 1
    for at in range(2, last - 1):
        part = by_slope[at] / 12.0
        found[at - 2] += part
        found[at - 1] -= 8.0 * part
        found[at + 1] += 8.0 * part
        found[at + 2] -= part
    for at, row in ((0, (-11.0, 18.0, -9.0, 2.0)), (1, (-2.0, -3.0, 6.0, -1.0))):
        for place in range(4):
            found[place] += by_slope[at] / 6.0 * row[place]
            found[last - place] -= by_slope[last - at] / 6.0 * row[place]
    return found


def along_straight(values: "Sequence[float]", part: float) -> float:
    """Return a value at a part of the way along readings joined by straight lines.

    Args:
        values [any]: readings at equally spaced stations, at least two.
        part [1]: 0 at the first reading, 1 at the last.

    Returns:
        [any] the value.

    Source: interpolation, the straight line through two values.
    """
    place = part * (len(values) - 1)
    i = min(int(place), len(values) - 2)
    return values[i] + (values[i + 1] - values[i]) * (place - i)


def curve_at(values: tuple[float, ...], slopes: list[float], position: float) -> tuple[float, float]:
    """Return the curve's value and slope at a position.

    Args:
        values: readings at equally spaced stations.
        slopes: as `station_slopes` gives them.
        position [1]: in stations, from 0 at the first; taken as lying on the curve.

    Returns:
        The value, and the slope per station.

    Source: interpolation, the cubic through two values and two slopes.
    """
    cell = min(max(int(position), 0), len(values) - 2)
    t = position - cell
    start, end = values[cell], values[cell + 1]
    leave, arrive = slopes[cell], slopes[cell + 1]
    return cubic.value(start, end, leave, arrive, t), cubic.slope(end - start, leave, arrive, t)
