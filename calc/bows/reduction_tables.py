"""A plan to bring a bow down as tables and a chart: stages, stations, what a shaving does."""

from calc.bows.workpiece import Workpiece
from calc.drawings.section import section_drawing
from calc.mechanics.bow.laminate import rigidity_shares
from calc.mechanics.bow.limb import sanded_share
from calc.mechanics.bow.reduction import Reduction
from calc.mechanics.bow.thinning import Build, Station, layers_of, section_at, section_rigidity
from calc.mechanics.bow.tuning import BowState
from calc.outcome import TEXT, Axis, Chart, Column, Drawing, Line, Table, amount, sentence
from calc.quantities import INCH

SHAVING = INCH / 1000
REMOVAL_STEPS = 24


class Stage:
    """A part of the whole removal, and the bow after it."""

    def __init__(self, share: float, state: BowState) -> None:
        self.share = share
        self.state = state


def stages_table(reduction: Reduction, stages: list[Stage]) -> Table:
    """Return what is off each limb, and the bow, after each stage."""
    lines = []
    for number, stage in enumerate(stages):
        lines.append((str(number + 1), stage.share * reduction.upper, stage.share * reduction.lower,
                      stage.state.weight, stage.state.tiller))
    return Table("stages", "Stages: after each, flex the limbs 20 to 30 short draws, measure, then go on", (
        Column("stage", "Stage", TEXT), Column("upper", "Off the upper so far", "thickness"),
        Column("lower", "Off the lower so far", "thickness"), Column("weight", "Weight expected", "force"),
        Column("tiller", "Tiller expected", "length"),
    ), tuple(lines))


def _limbs(piece: Workpiece, reduction: Reduction) -> tuple[tuple[str, tuple[Station, ...], float], ...]:
    return (
        ("upper", piece.bow.stations[0], reduction.upper),
        ("lower", piece.bow.stations[1], reduction.lower),
    )


def station_table(piece: Workpiece, reduction: Reduction) -> Table:
    """Return each measured section before and after."""
    lines = []
    build, belly_share = piece.bow.build, piece.sanding.belly_share
    for name, stations, removal in _limbs(piece, reduction):
        for each in stations:
            taken = removal * sanded_share(piece.sanding, each.position)
            share = (section_rigidity(each, build, taken, belly_share)
                     / section_rigidity(each, build, 0.0, belly_share))
            lines.append((name, each.position, each.thickness, each.thickness - taken,
                          build.back - taken * (1 - belly_share), build.belly - taken * belly_share, share,
                          _glass_share(each, build)))
    return Table("stations", "Each station before and after", (
        Column("limb", "Limb", TEXT), Column("position", "From the fadeout", "length"),
        Column("before", "Thickness now", "thickness"), Column("after", "Thickness then", "thickness"),
        Column("back", "Back glass then", "thickness"), Column("belly", "Belly glass then", "thickness"),
        Column("share", "Stiffness left", "ratio"), Column("glass", "Of it now from glass", "ratio"),
    ), tuple(lines))


def _glass_share(station: Station, build: Build) -> float:
    """Return the part of a section's stiffness that its two layers of glass carry."""
    back, _, belly = rigidity_shares(layers_of(station, build))
    return back + belly


def feel_table(reduction: Reduction) -> Table:
    """Return what the first thousandth of an inch off a limb, or off both, does."""
    (weight_upper, weight_lower), (tiller_upper, tiller_lower) = reduction.rates
    lines = []
    shaving = amount("thickness", SHAVING, 3)
    for limb, weight, tiller in (("upper", weight_upper, tiller_upper), ("lower", weight_lower, tiller_lower),
                                 ("both", weight_upper + weight_lower, tiller_upper + tiller_lower)):
        lines.append((limb, shaving, amount("force", weight * SHAVING, 2), tiller * SHAVING))
    return Table("feel", sentence("What the first {} does", shaving), (
        Column("limb", "Off which limb", TEXT), Column("removal", "Taken off", "thickness"),
        Column("weight", "Weight", "force"), Column("tiller", "Tiller", "thickness"),
    ), tuple(lines))


def removal_chart(piece: Workpiece, reduction: Reduction) -> Chart:
    """Return what comes off along the limbs, which beside their thickness would not be seen."""
    lines = []
    for name, stations, removal in _limbs(piece, reduction):
        first, last = stations[0].position, stations[-1].position
        places = [first + (last - first) * step / REMOVAL_STEPS for step in range(REMOVAL_STEPS + 1)]
        lines.append(Line(name + " limb", "line", places,
                          [removal * sanded_share(piece.sanding, each) for each in places]))
    return Chart("removal", "What comes off along the limbs",
                 Axis("From the fadeout", "length"), Axis("Taken off", "thickness"), tuple(lines))


def middle_section(piece: Workpiece, reduction: Reduction) -> Drawing:
    """Return the section at the middle of the limb that loses more."""
    which = 0 if reduction.upper >= reduction.lower else 1
    name, stations, removal = _limbs(piece, reduction)[which]
    middle = section_at(stations, piece.bow.profile.length / 2)
    belly_share = piece.sanding.belly_share
    taken = removal * sanded_share(piece.sanding, middle.position)
    title = "Section at the middle of the " + name + " limb"
    return section_drawing(title, middle.thickness, piece.bow.build,
                           taken * (1 - belly_share), taken * belly_share)
