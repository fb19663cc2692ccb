"""An arrow before and after the work as tables, charts and a drawing."""

from calc.bows import arrow_checks
from calc.bows.arrow_bow import Stroke
from calc.bows.arrow_shot import Arrow, Shaft, Shot, Swing
from calc.bows.reading_errors import band
from calc.drawings.arrow import arrow_drawing
from calc.mechanics.arrow import flight, shaft
from calc.outcome import TEXT, Amount, Axis, Chart, Column, Drawing, Line, Table, amount, sentence

TESTS = sentence("Stiffness in both tests: {} in the middle of {}, and {} in the middle of {}",
                 amount("force", shaft.TEST_28_INCH.load, 2), amount("length", shaft.TEST_28_INCH.span),
                 amount("force", shaft.TEST_26_INCH.load, 2), amount("length", shaft.TEST_26_INCH.span))
FORCE_STEPS = 10
SPEED_STEPS = 8


def comparison(
    before: Shot, after: Shot, old: tuple[float, float], new: tuple[float, float], arrow: Arrow, swing: Swing
) -> Table:
    """Return the arrow from both bows; old, new: the spine weights to look for."""
    rows = (
        _row("Weight at the marked draw", "force", before.weight, after.weight),
        _row("Weight at this draw", "force", before.draw_weight, after.draw_weight),
        _row("Least spine to look for", "force", old[0], new[0]),
        _row("Most spine to look for", "force", old[1], new[1]),
        _row("Arrow mass per weight", "mass_per_force", arrow.mass / before.draw_weight,
             arrow.mass / after.draw_weight),
        _row("Energy stored", "energy", before.energy, after.energy),
        _row("Energy over weight times stroke", "ratio", before.fullness, after.fullness),
        _row("Speed", "speed", before.speed, after.speed),
        _row("Energy of the arrow", "energy", before.kinetic_energy, after.kinetic_energy),
        _row("Momentum", "momentum", before.momentum, after.momentum),
        _row("Time on the string", "short_time", before.stroke_time, after.stroke_time),
        _row("Swings of the shaft meanwhile", "number", swing.frequency * before.stroke_time,
             swing.frequency * after.stroke_time),
    )
    return Table("comparison", "The same arrow from the bow before and after", (
        Column("what", "Figure", TEXT), Column("before", "Before", TEXT), Column("after", "After", TEXT),
    ), rows)


def _row(name: str, kind: str, before: float, after: float) -> tuple[str, Amount, Amount]:
    return name, amount(kind, before), amount(kind, after)


def conventions(old: tuple[float, float], new: tuple[float, float], bare: Shaft) -> Table:
    """Return the stiffness wanted and had in the conventions of the trade."""
    rows = []
    for name, wanted in (("To look for, before", old), ("To look for, after", new)):
        for edge, spine_weight in ((name + ": weakest", wanted[0]), (name + ": stiffest", wanted[1])):
            rows.append(_stiffness_row(edge, shaft.flexural_rigidity_from_spine_weight(spine_weight)))
    rows.append(_stiffness_row("This shaft", bare.rigidity))
    return Table("conventions", TESTS, (
        Column("shaft", "Shaft", TEXT), Column("spine", "Spine weight", "force"),
        Column("deflection_28", "28 in test", "thickness"),
        Column("deflection_26", "26 in test", "thickness"),
    ), tuple(rows))


def _stiffness_row(name: str, rigidity: float) -> tuple[str, float, float, float]:
    return (name, shaft.spine_weight(rigidity), shaft.static_deflection(rigidity, shaft.TEST_28_INCH),
            shaft.static_deflection(rigidity, shaft.TEST_26_INCH))


def force_chart(
    old: Stroke,
    new: Stroke,
    readings: tuple[tuple[float, float], ...],
    old_readings: tuple[tuple[float, float], ...],
    share: float | None,
) -> Chart:
    """Return weight against draw before and after, the latter with its range.

    share [1]: standard error of the weight after; None where the curve was read.
    """
    lines = []
    for name, stroke in (("Before", old), ("After", new)):
        last = len(stroke.draws) - 1
        places = [last * step // FORCE_STEPS for step in range(FORCE_STEPS + 1)]
        lines.append(Line(name, "line", [stroke.draws[i] for i in places],
                          [stroke.forces[i] for i in places]))
    if share is not None:
        lines += band(lines[-1], share)
    for name, rows in (("Read before", old_readings), ("Read after", readings)):
        if rows:
            lines.append(Line(name, "points", [row[0] for row in rows], [row[1] for row in rows]))
    return Chart("force", "Weight against draw, before and after", Axis("Draw", "length"),
                 Axis("Weight", "force"), tuple(lines))


def speed_chart(before: Shot, after: Shot, virtual_mass: float, arrow: Arrow, share: float) -> Chart:
    """Return speed against arrow mass before and after, the latter with its range.

    share [1]: standard error of this arrow's speed after.
    """
    lightest = min(arrow.mass, arrow_checks.LEAST_MASS * after.draw_weight)
    heaviest = max(arrow.mass, 1.4 * arrow_checks.USUAL_MASS * after.draw_weight)
    masses = [lightest + (heaviest - lightest) * step / SPEED_STEPS for step in range(SPEED_STEPS + 1)]
    lines = []
    for name, shot in (("Before", before), ("After", after)):
        lines.append(Line(name, "line", masses,
                          [flight.arrow_speed(shot.energy, mass, virtual_mass) for mass in masses]))
    lines += band(lines[-1], share)
    for name, shot in (("This arrow before", before), ("This arrow after", after)):
        lines.append(Line(name, "points", [arrow.mass], [shot.speed]))
    return Chart("speed", "Speed for arrow mass, before and after", Axis("Arrow mass", "mass"),
                 Axis("Speed", "speed"), tuple(lines))


def arrow_shape(arrow: Arrow, swing: Swing) -> Drawing:
    """Return the arrow with its balance and its nodes."""
    nodes = tuple([arrow.length * place for place in swing.mode.nodes])
    rear = arrow.nock + arrow.feathers.mass
    return arrow_drawing(arrow.length, amount("mass", rear), amount("mass", arrow.point),
                         arrow.balance_point, swing.mode.shape, nodes,
                         amount("frequency", swing.frequency, 0))
