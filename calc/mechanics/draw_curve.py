"""A draw-force curve from readings: smoothed as far as the scale is uncertain, never falling.

Three documented steps. The readings become the smoothest curve that still
passes them within the reading error (Reinsch's smoothing spline with natural
ends). Values that still fall are pooled to their mean (isotonic regression).
Between the readings runs a monotone cubic (Fritsch and Carlson).
"""

import math

from calc.checks import require_not_negative, require_positive
from calc.numerics import cubic

MOST_STEPS = 100
STIFFEST = 1e12
"""Largest weight of roughness that is tried: the curve is then a straight line."""


class Curve:
    """A monotone cubic: draw [m], force [N] and slope [N/m] at each reading."""

    def __init__(
        self, draws: tuple[float, ...], forces: tuple[float, ...], slopes: tuple[float, ...]
    ) -> None:
        self.draws = draws
        self.forces = forces
        self.slopes = slopes


def curve_from_readings(
    draws: tuple[float, ...], forces: tuple[float, ...], errors: tuple[float, ...]
) -> Curve:
    """Return the curve through readings, smoothed within their errors.

    Args:
        draws [m]: rising, at least two.
        forces [N]: one per draw.
        errors [N]: standard error of each force, >= 0; 0 holds that reading fast.

    Returns:
        The curve.

    Raises:
        ValueError: draws do not rise, or the lists do not match.

    Source: reinsch-1967, the smoothing spline within a bound on the misfit; fritsch-carlson-1980, slopes that
        keep a cubic monotone.
    """
    if not 2 <= len(draws) == len(forces) == len(errors):
        raise ValueError(f"two readings or more are needed, each with its error, got {len(draws)}")
    for before, after in zip(draws, draws[1:]):
        if not before < after:
            raise ValueError(f"the draws must rise, got {after} m after {before} m")
    smooth = pooled(smoothed(draws, forces, errors))
    return Curve(tuple(draws), smooth, monotone_slopes(draws, smooth))


def smoothed(
    draws: tuple[float, ...], forces: tuple[float, ...], errors: tuple[float, ...]
) -> tuple[float, ...]:
    """Return the readings on the smoothest natural spline that passes them within their errors.

    The roughness gets as much weight as keeps the sum of squared misfits, each
    over its error, at the count of uncertain readings (Reinsch's choice of S).

    Args:
        draws [m]: rising.
        forces [N]: one per draw.
        errors [N]: standard errors, >= 0.

    Returns:
        [N] one per draw.

    Source: reinsch-1967, the smoothing spline within a bound on the misfit.
    """
    allowed = len([error for error in errors if error > 0])
    if len(draws) < 3 or not allowed:
        return tuple(forces)

    def misfit(weight: float) -> float:
        fitted = spline_values(draws, forces, errors, weight)
        total = 0.0
        for fit, force, error in zip(fitted, forces, errors):
            if error > 0:
                total += ((fit - force) / error) ** 2
        return total

    scale = (draws[-1] - draws[0]) ** 3 / (sum(errors) / len(errors)) ** 2
    low, high = math.log(1e-12 * scale), math.log(STIFFEST * scale)
    if misfit(math.exp(high)) <= allowed:
        return spline_values(draws, forces, errors, math.exp(high))
    for _ in range(MOST_STEPS):
        middle = (low + high) / 2
        if misfit(math.exp(middle)) > allowed:
            high = middle
        else:
            low = middle
        if high - low < 1e-6:
            break
    return spline_values(draws, forces, errors, math.exp(low))


def spline_values(
    draws: tuple[float, ...], forces: tuple[float, ...], errors: tuple[float, ...], weight: float
) -> tuple[float, ...]:
    """Return the values at the readings of the natural smoothing spline for one weight of roughness.

    Minimises sum ((f - y) / error)^2 + weight * integral of f''^2: with Q the
    second divided differences and T the spline's own matrix, solve
    (T + weight Q' E Q) c = Q' y for the second derivatives c, E = diag(error^2);
    then f = y - weight E Q c.

    Args:
        draws [m]: rising, at least three.
        forces [N]: one per draw.
        errors [N]: standard errors, >= 0.
        weight [m^3/N^2]: of the roughness, >= 0.

    Returns:
        [N] one per draw.

    Source: reinsch-1967, its banded equations.
    """
    count = len(draws)
    gaps = [draws[i + 1] - draws[i] for i in range(count - 1)]
    columns = []
    for i in range(count - 2):
        columns.append((1 / gaps[i], -1 / gaps[i] - 1 / gaps[i + 1], 1 / gaps[i + 1]))
    squares = [error * error for error in errors]
    inner = count - 2
    bands = [[0.0, 0.0, 0.0] for _ in range(inner)]
    right = []
    for i in range(inner):
        own = columns[i]
        bands[i][0] = (gaps[i] + gaps[i + 1]) / 3 + weight * (
            squares[i] * own[0] ** 2 + squares[i + 1] * own[1] ** 2 + squares[i + 2] * own[2] ** 2)
        if i + 1 < inner:
            after = columns[i + 1]
            bands[i][1] = gaps[i + 1] / 6 + weight * (
                squares[i + 1] * own[1] * after[0] + squares[i + 2] * own[2] * after[1])
        if i + 2 < inner:
            bands[i][2] = weight * squares[i + 2] * own[2] * columns[i + 2][0]
        right.append(own[0] * forces[i] + own[1] * forces[i + 1] + own[2] * forces[i + 2])
    bends = _solve_banded(bands, right)
    values = list(forces)
    for i in range(inner):
        for part in range(3):
            values[i + part] -= weight * squares[i + part] * columns[i][part] * bends[i]
    return tuple(values)


def _solve_banded(bands: list[list[float]], right: list[float]) -> list[float]:
    """Return the solution of a symmetric positive system given by its diagonal and two bands above it."""
    count = len(right)
    lower = [[0.0, 0.0] for _ in range(count)]
    pivots = [0.0] * count
    solution = list(right)
    for i in range(count):
        pivot = bands[i][0]
        first = bands[i][1]
        if i >= 1:
            pivot -= lower[i - 1][0] ** 2 * pivots[i - 1]
            first -= lower[i - 1][0] * lower[i - 1][1] * pivots[i - 1]
            solution[i] -= lower[i - 1][0] * solution[i - 1]
        if i >= 2:
            pivot -= lower[i - 2][1] ** 2 * pivots[i - 2]
            solution[i] -= lower[i - 2][1] * solution[i - 2]
        pivots[i] = pivot
        lower[i][0] = first / pivot
        lower[i][1] = bands[i][2] / pivot
    for i in range(count - 1, -1, -1):
        solution[i] /= pivots[i]
        if i + 1 < count:
            solution[i] -= lower[i][0] * solution[i + 1]
        if i + 2 < count:
            solution[i] -= lower[i][1] * solution[i + 2]
    return solution


def pooled(values: tuple[float, ...]) -> tuple[float, ...]:
    """Return the nearest values, in least squares, that never fall.

    Args:
        values: any sequence.

    Returns:
        One per value: neighbours that fall are replaced by their mean, until none falls.

    Source: isotonic-regression, pooling of adjacent violators.
    """
    blocks: list[list[float]] = []
    for value in values:
        blocks.append([value, 1.0])
        while len(blocks) > 1 and blocks[-2][0] > blocks[-1][0]:
            mean, size = blocks.pop()
            before = blocks[-1]
            before[0] = (before[0] * before[1] + mean * size) / (before[1] + size)
            before[1] += size
    found: list[float] = []
    for mean, size in blocks:
        found += [mean] * int(size)
    return tuple(found)


def monotone_slopes(draws: tuple[float, ...], forces: tuple[float, ...]) -> tuple[float, ...]:
    """Return slopes at the readings with which a cubic between them never overshoots.

    Inside, the weighted harmonic mean of the two neighbouring secants; at the
    ends the three-point formula, kept within the limits that hold the curve
    monotone.

    Args:
        draws [m]: rising.
        forces [N]: never falling.

    Returns:
        [N/m] one per reading.

    Source: fritsch-carlson-1980, slopes that keep a cubic monotone.
    """
    gaps = [draws[i + 1] - draws[i] for i in range(len(draws) - 1)]
    secants = [(forces[i + 1] - forces[i]) / gaps[i] for i in range(len(gaps))]
    if len(gaps) == 1:
        return (secants[0], secants[0])
    slopes = [_end_slope(gaps[0], gaps[1], secants[0], secants[1])]
    for i in range(1, len(gaps)):
        if secants[i - 1] <= 0 or secants[i] <= 0:
            slopes.append(0.0)
        else:
            one, other = 2 * gaps[i] + gaps[i - 1], gaps[i] + 2 * gaps[i - 1]
            slopes.append((one + other) / (one / secants[i - 1] + other / secants[i]))
    slopes.append(_end_slope(gaps[-1], gaps[-2], secants[-1], secants[-2]))
    return tuple(slopes)


def _end_slope(near_gap: float, far_gap: float, near: float, far: float) -> float:
    slope = ((2 * near_gap + far_gap) * near - near_gap * far) / (near_gap + far_gap)
    if slope <= 0:
        return 0.0
    return min(slope, 3 * near)


def force_at(curve: Curve, draw: float) -> float:
    """Return the force at a draw within the curve.

    Args:
        curve: as `curve_from_readings` gives it.
        draw [m]: between its first and last draw.

    Returns:
        [N] force.

    Raises:
        ValueError: the draw lies outside the curve.

    Source: fritsch-carlson-1980, the cubic between two points.
    """
    i, part, gap = _place(curve, draw)
    return float(cubic.value(curve.forces[i], curve.forces[i + 1], curve.slopes[i] * gap,
                             curve.slopes[i + 1] * gap, part))


def slope_at(curve: Curve, draw: float) -> float:
    """Return how fast the force rises at a draw within the curve.

    Args:
        curve: as `curve_from_readings` gives it.
        draw [m]: between its first and last draw.

    Returns:
        [N/m] slope, never negative.

    Raises:
        ValueError: the draw lies outside the curve.

    Source: fritsch-carlson-1980, the cubic between two points.
    """
    i, part, gap = _place(curve, draw)
    rise = curve.forces[i + 1] - curve.forces[i]
    return float(cubic.slope(rise, curve.slopes[i] * gap, curve.slopes[i + 1] * gap, part) / gap)


def energy_to(curve: Curve, draw: float) -> float:
    """Return the work from the first reading to a draw: the area under the curve.

    Args:
        curve: as `curve_from_readings` gives it.
        draw [m]: between its first and last draw.

    Returns:
        [J] work, exact for the cubics.

    Raises:
        ValueError: the draw lies outside the curve.

    Source: astm-f1832, stored energy is the area under the curve.
    """
    last, part, _ = _place(curve, draw)
    total = 0.0
    for i in range(last + 1):
        gap = curve.draws[i + 1] - curve.draws[i]
        end = part if i == last else 1.0
        total += gap * cubic.area(curve.forces[i], curve.forces[i + 1], curve.slopes[i] * gap,
                                  curve.slopes[i + 1] * gap, end)
    return total


def _place(curve: Curve, draw: float) -> tuple[int, float, float]:
    """Return the piece a draw lies in, how far into it (0 to 1), and the piece's width."""
    if not curve.draws[0] <= draw <= curve.draws[-1]:
        raise ValueError(
            f"the draw must lie from {curve.draws[0]} to {curve.draws[-1]} m, got {draw} m")
    i = 0
    while i < len(curve.draws) - 2 and draw >= curve.draws[i + 1]:
        i += 1
    gap = curve.draws[i + 1] - curve.draws[i]
    return i, (draw - curve.draws[i]) / gap, gap


def middle_slope(curve: Curve) -> float:
    """Return the mean slope over the middle third of the draw.

    Args:
        curve: as `curve_from_readings` gives it.

    Returns:
        [N/m] slope.

    Source: bench-practice, the middle third as what stacking is told against.
    """
    start, end = curve.draws[0], curve.draws[-1]
    first, last = start + (end - start) / 3, start + 2 * (end - start) / 3
    return (force_at(curve, last) - force_at(curve, first)) / (last - first)


def stacking_onset(curve: Curve, factor: float) -> float | None:
    """Return the draw from which the curve stays steeper than its middle by a factor.

    Args:
        curve: as `curve_from_readings` gives it.
        factor [1]: slope over the mean slope of the middle third, > 1.

    Returns:
        [m] draw, in the last two thirds of the curve; None where it does not stack.

    Raises:
        ValueError: the factor is not above 1.

    Source: bench-practice, stacking as a slope that stays a factor above the middle.
    """
    if not factor > 1:
        raise ValueError(f"the factor must be above 1, got {factor}")
    limit = factor * middle_slope(curve)
    end = curve.draws[-1]
    start = curve.draws[0] + (end - curve.draws[0]) / 3
    steps = 200
    onset = None
    for step in range(steps, -1, -1):
        draw = min(end, start + (end - start) * step / steps)
        if slope_at(curve, draw) <= limit:
            break
        onset = draw
    return onset


def draw_weight_at(draw_length: float, known_weight: float, known_draw_length: float, slope: float) -> float:
    """Return the draw weight at another draw length, along a straight line through a known one.

    Args:
        draw_length [m]: the one asked about, measured as known_draw_length is.
        known_weight [N]: > 0.
        known_draw_length [m]: where known_weight was measured.
        slope [N/m]: weight gained for each length of draw, > 0.

    Returns:
        [N] draw weight.

    Raises:
        ValueError: known_weight or slope is not positive, or the line has reached zero at draw_length.

    Limits:
        A straight line: good for an inch or two; a bow that stacks gains more at the end.

    Source: geometry, the straight line through a point.
    """
    require_positive("known_weight", known_weight, "N")
    require_positive("slope", slope, "N/m")
    weight = known_weight + slope * (draw_length - known_draw_length)
    if not weight > 0.0:
        raise ValueError(f"draw_length must be where the bow still pulls, got {weight} N at {draw_length} m")
    return weight


def stored_energy(draws: tuple[float, ...], forces: tuple[float, ...]) -> float:
    """Return the energy under a draw-force curve, by trapezoids.

    Args:
        draws [m]: at least two, rising.
        forces [N]: one per draw, none negative.

    Returns:
        [J] stored energy.

    Raises:
        ValueError: the sequences differ in length, hold less than two readings, or draws do not rise.

    Limits:
        Readings an inch apart are close enough: 12 and 48 readings of one recurve differed by 0.14 %.

    Source: astm-f1832, stored energy is the area under the curve; recurve-measurement, its readings at 12 and
        at 48 draws.
    """
    _require_curve(draws, forces)
    energy = 0.0
    for i in range(1, len(draws)):
        energy += (forces[i - 1] + forces[i]) / 2.0 * (draws[i] - draws[i - 1])
    return energy


def assumed_draw_curve(
    peak_force: float, power_stroke: float, fullness: float, steps: int
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return a draw-force curve of stated fullness, from nothing at brace to the peak at full draw.

    With x the part of the stroke drawn, F / F_peak = x + 6 (fullness - 1/2) x (1 - x): a straight line at
    fullness 1/2, otherwise a parabola with the same ends.

    Args:
        peak_force [N]: at full draw, > 0.
        power_stroke [m]: from brace to full draw, > 0.
        fullness [1]: stored energy over peak force times stroke, 1/3 to 2/3.
        steps [1]: number of equal steps, > 0.

    Returns:
        [m] draws from brace, one more than steps; [N] forces, one per draw.

    Raises:
        ValueError: an argument is out of its range.

    Limits:
        A stand-in for readings that were not taken; the trapezoid sum falls short of the parabola's
        area by about (fullness - 1/2) / steps^2.

    Source: geometry, derived here: the parabola with that area.
    """
    require_positive("peak_force", peak_force, "N")
    require_positive("power_stroke", power_stroke, "m")
    require_positive("steps", steps, "")
    if not 1.0 / 3.0 <= fullness <= 2.0 / 3.0:
        raise ValueError(f"fullness must be from 1/3 to 2/3, got {fullness}")
    draws = []
    forces = []
    for i in range(steps + 1):
        part = i / steps
        draws.append(power_stroke * part)
        forces.append(peak_force * (part + 6.0 * (fullness - 0.5) * part * (1.0 - part)))
    return tuple(draws), tuple(forces)


def _require_curve(draws: tuple[float, ...], forces: tuple[float, ...]) -> None:
    """Raise ValueError unless these are readings of force along a rising draw."""
    if len(draws) != len(forces) or len(draws) < 2:
        raise ValueError(
            f"a curve must have two or more readings of both kinds, got {len(draws)} and {len(forces)}"
        )
    for i in range(len(draws)):
        require_not_negative("force", forces[i], "N")
        if i and not draws[i] > draws[i - 1]:
            raise ValueError(f"draws must rise, got {draws[i]} m after {draws[i - 1]} m")
