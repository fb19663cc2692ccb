"""Points of a plane: their middle, and how they spread about it."""

import math


def dot(a: tuple[float, float], b: tuple[float, float]) -> float:
    """Return how far one direction goes along another, times both their lengths."""
    return a[0] * b[0] + a[1] * b[1]


def less(a: tuple[float, float], b: tuple[float, float]) -> tuple[float, float]:
    """Return the way from b to a."""
    return a[0] - b[0], a[1] - b[1]


def middle_of(points: list[tuple[float, float]]) -> tuple[float, float]:
    """Return the middle of points."""
    count = len(points)
    return sum([x for x, _ in points]) / count, sum([y for _, y in points]) / count


def moments_of(points: list[tuple[float, float]]) -> tuple[tuple[float, float], float, float, float]:
    """Return the middle of points, and about it the sums of x times x, of x times y and of y times y."""
    middle = middle_of(points)
    ways = [less(each, middle) for each in points]
    return (middle, sum([x * x for x, _ in ways]), sum([x * y for x, y in ways]),
            sum([y * y for _, y in ways]))


def best_line(points: list[tuple[float, float]]) -> tuple[tuple[float, float], tuple[float, float]]:
    """Return the straight line nearest to points, square to itself: its middle and its direction."""
    middle, xx, xy, yy = moments_of(points)
    angle = 0.5 * math.atan2(2 * xy, xx - yy)
    return middle, (math.cos(angle), math.sin(angle))
