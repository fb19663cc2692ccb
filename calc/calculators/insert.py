"""Insert: how deep to drill a blind hole, what wall stays behind it, which drill, how far apart."""


from calc.declaring import (
    BY_UNITS,
    RULE,
    SHOP,
    Calculator,
    choice,
    group,
    quantity,
    result,
)
from calc.drawings.hole import hole_drawing
from calc.inserts.checks import bit_check, drill_checks, edge_checks, screw_checks, spacing_checks, wall_check
from calc.inserts.holding import ALLOWED, HOLDING_RESULTS, gravity_of, pull_out, screw_table, wood_group
from calc.inserts.holes import (
    PRESS,
    THREADED,
    Depths,
    Screw,
    depths_of,
    drill_for,
    hole_wanted,
    spacing_of,
    tap_drill,
)
from calc.outcome import (
    STOP,
    TEXT,
    WATCH,
    Check,
    Column,
    Outcome,
    Sentence,
    Table,
    amount,
    sentence,
)
from calc.shop import drilling, threads
from calc.tables import drills
from calc.tables import threads as thread_table

ANGLES = (("twist-118", 118.0), ("twist-135", 135.0), ("flat", 180.0))
"""Bits whose point is told by its angle alone."""

NAMES = (
    ("twist-118", "Twist drill, 118° point"),
    ("twist-135", "Twist drill, 135° point"),
    ("brad", "Brad point: flat cutting edge with a spur"),
    ("forstner", "Forstner bit: flat, with a rim and a centre point"),
    ("spade", "Spade bit: flat, with a long centre point"),
    ("flat", "Flat bottom, no spur"),
    ("own", "Another point, by its angle"),
)
CENTRED = ("forstner", "spade")
"""Bits whose centre point goes ahead of a flat bottom."""

SPUR_WIDTH = 0.25
"""Of a brad point's spur over the bit's diameter, for the drawing only."""

def compute(
    insert_length: float,
    clearance: float,
    bit_diameter: float,
    point: str,
    spur: float | None,
    centre_point: float | None,
    own_angle: float | None,
    thickness: float,
    error: float,
    least_wall: float,
    edge: float | None,
    outside: float | None,
    inside: float | None,
    spacing_wanted: float,
    spacing_tolerance: float,
    fit: str,
    insert_diameter: float | None,
    interference: float | None,
    outer_thread: str | None,
    thread_share: float | None,
    screw: str,
    screw_length: float | None,
    held: float,
    drill_set: str,
    wood: str,
    gravity: float | None,
) -> Outcome:
    """Return the depth of a blind hole, the wall behind it, and the sizes that go with it."""
    ahead = _point_length(point, bit_diameter, spur, centre_point, own_angle)
    depths = depths_of(insert_length + clearance, ahead, thickness, error)
    spacing = spacing_of(outside, inside)
    hole = hole_wanted(fit, insert_diameter, interference, outer_thread, thread_share)
    sizes, others = drills.INCH_DRILLS, drills.METRIC_DRILLS
    if drill_set == "metric":
        sizes, others = others, sizes
    drill = drill_for(hole, sizes)
    thread = thread_table.find(screw)
    tap = tap_drill(thread, sizes)
    deepest = thickness - error - least_wall - depths.point
    longest = drilling.longest_screw(held, depths.shoulder, error)
    put_in = Screw(screw_length, None if screw_length is None else screw_length - held, longest, thread.major)
    widest = max(hole.outside, bit_diameter)
    specific_gravity = gravity_of(wood, gravity)
    pull = pull_out(hole, specific_gravity, insert_length)
    checks = ((wall_check(depths, least_wall), bit_check(bit_diameter, hole))
              + drill_checks(drill, hole, others)
              + edge_checks(edge, widest, depths.shoulder)
              + screw_checks(put_in, depths.shoulder, insert_length)
              + spacing_checks(spacing, outside, inside, spacing_wanted, spacing_tolerance, bit_diameter))
    return Outcome(
        headline=_headline(depths, checks, put_in),
        values=(
            ("hole_depth", depths.tip),
            ("shoulder_depth", depths.shoulder),
            ("point_length", depths.point),
            ("wall_left", depths.worst),
            ("wall_planned", depths.wall),
            ("deepest_shoulder", deepest),
            ("longest_insert", deepest - clearance),
            ("hole_diameter", hole.wanted),
            ("interference_left", hole.outside - bit_diameter if fit == PRESS else None),
            ("drill", None if drill is None else drill.name),
            ("drill_diameter", None if drill is None else drill.diameter),
            ("longest_screw", longest),
            ("tap_drill", tap.name),
            ("tap_share", threads.share_of_thread(thread.major, thread.pitch, tap.diameter)),
            ("spacing", spacing),
            ("spacing_error", None if spacing is None else spacing - spacing_wanted),
            ("pull_out", pull),
            ("pull_allowed", None if pull is None else ALLOWED * pull),
            ("edge_distance", drilling.least_edge_distance(widest, depths.shoulder, 0.0)),
        ),
        checks=checks,
        tables=(_points_table(insert_length + clearance, bit_diameter, spur, thickness, error),
                _tap_table(thread, sizes), screw_table(specific_gravity, sizes)),
        drawings=(hole_drawing(thickness, bit_diameter,
                               SPUR_WIDTH if point in CENTRED + ("brad",) else 1.0, insert_length,
                               depths.shoulder, depths.tip, depths.worst),),
        assumptions=ASSUMPTIONS + (sentence(
            "Thickness and depth stop together may be out by {}, and all of it counts against the wall.",
            amount("thickness", error)),),
    )


def _point_length(
    point: str, diameter: float, spur: float | None, centre_point: float | None, own_angle: float | None
) -> float:
    if point == "brad":
        return spur or 0.0
    if point in CENTRED:
        return centre_point or 0.0
    for name, angle in ANGLES:
        if point == name:
            return drilling.cone_length(diameter, angle)
    return drilling.cone_length(diameter, own_angle or 180.0)


# What is said ----------------------------------------------------------------


REASONS = (
    ("breakthrough", "in the worst case too little wood would stay behind the hole"),
    ("edge", "too little wood would stay beside it"),
    ("bit", "the bit does not suit the insert"),
    ("screw", "the screw does not suit the hole"),
    ("spacing", "two holes do not stand as far apart as you want"),
    ("edges", "the measures of the two holes do not fit the bit"),
)
"""Why not to drill yet, by the check that says so, in the order in which they are told."""


def _headline(depths: Depths, checks: tuple[Check, ...], screw: Screw) -> Sentence:
    levels = {each.id: each.level for each in checks}
    numbers = (amount("depth", depths.shoulder), amount("depth", depths.tip),
               amount("thickness", depths.worst))
    side = levels.get("edge") == STOP
    if levels["breakthrough"] == STOP:
        return sentence(
            "Do not drill this: {} to the shoulder and {} to the point can come through the far side"
            + (", and the hole breaks out at the side." if side else "."), numbers[0], numbers[1])
    if side:
        return sentence("Do not drill this here: the hole breaks out at the side.")
    if levels["bit"] == STOP:
        return sentence("Do not drill with this bit: its hole is no narrower than the insert, which would "
                        "have nothing to hold in.")
    if levels.get("screw") == STOP:
        return sentence(
            "Do not put this screw in: it meets the bottom of the hole and pushes the insert out. At most {} "
            "under its head. The stop is set for {} to the shoulder of the bit, {} to its point.",
            amount("thickness", screw.longest), numbers[0], numbers[1])
    why = [text for id, text in REASONS if levels.get(id) == WATCH]
    if why:
        return sentence(
            "Not yet: " + "; ".join(why) + ". As planned the stop is set for {} to the shoulder, {} to the "
            "point, and {} of wood stays behind the hole if every measure errs to the bad side.", *numbers)
    return sentence(
        "Set the stop for {} to the shoulder of the bit, which is {} to its point. If every measure errs to "
        "the bad side, {} of wood stays behind the hole.", *numbers)


def _points_table(
    shoulder: float, diameter: float, spur: float | None, thickness: float, error: float
) -> Table:
    points = [(name, drilling.cone_length(diameter, angle)) for name, angle in ANGLES]
    if spur is not None:
        points.append(("brad", spur))
    rows = []
    for name, point in points:
        depths = depths_of(shoulder, point, thickness, error)
        rows.append((dict(NAMES)[name], point, depths.tip, depths.worst))
    return Table("points", "The same hole with other points", (
        Column("bit", "Bit", TEXT), Column("point", "Its point", "thickness"),
        Column("depth", "Depth to the point", "depth"),
        Column("wall", "Wall in the worst case", "thickness"),
    ), tuple(rows))


def _tap_table(chosen: thread_table.Thread, sizes: tuple[drills.Drill, ...]) -> Table:
    rows = []
    for thread in thread_table.THREADS:
        hole = threads.tap_hole(thread.major, thread.pitch, threads.CHART_SHARE)
        drill = tap_drill(thread, sizes)
        mark = " (this screw)" if thread.id == chosen.id else ""
        rows.append((thread.name + mark, hole, drill.name, drill.diameter,
                     threads.share_of_thread(thread.major, thread.pitch, drill.diameter)))
    return Table("taps", "Tap drills, per cent of thread counted by the 1.299 rule of shop charts", (
        Column("thread", "Thread", TEXT), Column("hole", "Hole for 75 %", "thickness"),
        Column("drill", "Drill", TEXT), Column("diameter", "Its diameter", "thickness"),
        Column("share", "Thread with it", "ratio"),
    ), tuple(rows))


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "The point is an ideal cone to the centre. Real points have a chisel edge and are a little shorter.",
    "The hole is square to the face, and the riser is as thick all across the hole as where it was "
    "measured.",
    "No published rule was found for the interference of a pressed insert in hardwood: it is yours to set "
    "and to try in scrap.",
    "Tap holes count per cent of thread as shop charts do, 1.299 pitches for 100 %. Another convention in "
    "use (1.0825) gives wider holes for the same per cent.",
    "The bottom of the hole for a screw is the shoulder; a screw holds by at least its own diameter of "
    "thread (common practice).",
    "Pull is for short loads in sound side grain; about a fifth of it counts in use. For a pressed insert no "
    "rule was found: it holds by friction and glue, and loses the first with the seasons.",
    "The least wall and the tolerance of the spacing are common practice; the spacing of 1 5/16 in for "
    "#10-24 accessory screws is from memory.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "Unstring the bow, clamp the riser on a flat support, set a depth stop and try it on scrap first. Eye "
    "protection on; never hold the riser by hand under a drill.",
    "Glue in a blind hole can blow out the far side: a pressed insert drives it down like a piston. Put "
    "little, on the wall and not on the bottom, leave air a way out, press slowly.",
    "Timber design (1.5 diameters to the edge along the grain) is for fasteners in holes 1/32 to 1/16 in "
    "wider than they are, and advises against a tight fit that must be forced. Pressing inserts in is "
    "bench practice and goes against that: keep well clear of edges, other holes and glue lines.",
    "A screw that meets the bottom of a blind hole pulls the insert out as it is turned. Measure the screw "
    "under its head, and turn it in by hand the first time.",
    "No wood screw and no screwed insert is to hold in end grain, and none holds a limb by the figures of "
    "this page: they are for rests, sights and quivers.",
    "A hole weakens the riser. Work it into the grip calculation, and do not drill where the section is "
    "least or where old repairs or cracks are.",
)


def _threads_to_choose(first: str) -> tuple[tuple[str, str], ...]:
    rest = [(thread.id, thread.name) for thread in thread_table.THREADS if thread.id != first]
    return ((first, thread_table.find(first).name),) + tuple(rest)


CALCULATOR = Calculator(
    id="insert",
    title="Insert",
    purpose="Says how deep to drill a blind hole for an insert and what wall stays behind it in the worst "
            "case.",
    groups=(
        group(
            "The hole",
            quantity("insert_length", "Insert length", "length", default="7/16 in", low="1/8 in", high="2 in",
                     usual=("1/4 in", "1 in")),
            quantity("clearance", "Room below the insert", "length", default="1/16 in", low="0 in",
                     high="1/2 in", usual=("1/32 in", "1/8 in"), help="At full diameter, for chips and glue.",
                     role=RULE),
            quantity("bit_diameter", "Bit diameter", "thickness", default="5/16 in", low="1/16 in",
                     high="1 in", usual=("1/8 in", "1/2 in"), help="Measured with a caliper over the lips."),
            choice("point", "Point of the bit", NAMES),
            quantity("spur", "Length of the spur", "thickness", default="3/32 in", low="0 in", high="1/2 in",
                     usual=("1/32 in", "3/16 in"), help="How far it stands out before the cutting edge.",
                     when=("point", ("brad",))),
            quantity("centre_point", "Length of the centre point", "thickness", default="1/2 in", low="0 in",
                     high="1 1/2 in", usual=("1/16 in", "3/4 in"),
                     help="Measure it: about 1/8 in (3 mm) on a Forstner bit, up to "
                          "1/2 in (13 mm) on a spade bit.",
                     when=("point", CENTRED)),
            quantity("own_angle", "Angle of the point", "angle", default="90°", low="30°", high="180°",
                     usual=("60°", "150°"), help="The whole angle between both lips.",
                     when=("point", ("own",))),
        ),
        group(
            "The riser at the hole",
            quantity("thickness", "Thickness along the hole", "length", default="7/8 in", low="1/4 in",
                     high="4 in", usual=("1/2 in", "3 in"),
                     help="Caliper, where the drill goes in, to the far face.",
                     measure="The thinnest place under the whole hole counts."),
            quantity("error", "May be out by", "length", default="1/32 in", low="0 in", high="1/2 in",
                     usual=("1/64 in", "1/16 in"), help="Thickness and depth stop together.", role=SHOP),
            quantity("least_wall", "Least wall to leave", "length", default="3/16 in", low="0 in",
                     high="1 in", usual=("1/8 in", "1/2 in"), help="Common practice; edit it.", role=RULE),
            quantity("edge", "From the hole's middle to the nearest edge", "length", default="1/2 in",
                     low="1/16 in", high="4 in", usual=("3/8 in", "3 in"),
                     help="Sideways; empty: not checked.", optional=True),
        ),
        group(
            "The insert and its screw",
            choice("fit", "The insert is", ((PRESS, "Pressed in"), (THREADED, "Screwed in"))),
            quantity("insert_diameter", "Insert diameter", "thickness", default="0.316 in", low="0.06 in",
                     high="1 in", usual=("1/8 in", "1/2 in"), help="Over the knurls.",
                     when=("fit", ("press",))),
            quantity("interference", "Hole smaller than the insert by", "thickness", default="0.004 in",
                     low="0 in", high="0.03 in", usual=("0.001 in", "0.010 in"),
                     help="An assumption, to be tried in scrap.", when=("fit", ("press",)), role=RULE),
            choice("outer_thread", "Outside thread of the insert", _threads_to_choose("3/8-16"),
                   when=("fit", ("threaded",))),
            quantity("thread_share", "Thread to cut in the wood", "ratio", default="60 %", low="20 %",
                     high="90 %", usual=("50 %", "75 %"),
                     help="Less in hard wood. The maker's pilot size goes first.",
                     when=("fit", ("threaded",)), role=RULE),
            choice("screw", "Screw that goes in", _threads_to_choose("10-24"),
                   help="Accessories #10-24; stabiliser and rest bushings often 5/16-24."),
            quantity("screw_length", "Length of that screw", "length", default="1/2 in", low="1/8 in",
                     high="4 in", usual=("1/4 in", "2 in"), help="Under its head; empty: not checked.",
                     optional=True),
            quantity("held", "Thickness of what it holds", "length", default="1/8 in", low="0 in",
                     high="3 in", usual=("0 in", "1 in"), help="Bracket and washers together."),
            choice("drill_set", "Drills at hand", ((BY_UNITS, "Those of the units chosen"),
                                                   ("imperial", "By the inch: fractions, numbers, letters"),
                                                   ("metric", "Metric")), role=SHOP),
        ),
        wood_group(),
        group(
            "Two holes",
            quantity("outside", "Over the far edges", "thickness", default="1.622 in", low="1/4 in",
                     high="6 in", usual=("1 in", "3 in"), help="Caliper over both holes; empty: not checked.",
                     optional=True),
            quantity("inside", "Between the near edges", "thickness", default="0.998 in", low="0 in",
                     high="6 in", usual=("1/2 in", "2 in"), help="Caliper between both holes.",
                     optional=True),
            quantity("spacing_wanted", "Spacing wanted", "length", default="1 5/16 in", low="1/4 in",
                     high="6 in", usual=("1 in", "2 in"),
                     help="Centre to centre; 1 5/16 in (33.3 mm) for accessories."),
            quantity("spacing_tolerance", "Spacing may be out by", "thickness", default="1/64 in", low="0 in",
                     high="1/8 in", usual=("0.005 in", "1/32 in"), help="Common practice; edit it.",
                     role=RULE),
        ),
    ),
    results=(
        result("hole_depth", "Depth to the point", "depth",
               "Insert, room below it and the point of the bit."),
        result("shoulder_depth", "Depth to the shoulder", "depth", "Where the full diameter ends."),
        result("point_length", "Length of the point", "thickness"),
        result("wall_left", "Wall left, worst case", "thickness",
               "Thickness less depth to the point less what both may be out by."),
        result("wall_planned", "Wall left by the measures", "thickness", "If every measure is true."),
        result("deepest_shoulder", "Deepest safe shoulder", "thickness",
               "With the least wall kept in the worst case; negative: no hole with this bit."),
        result("longest_insert", "Longest insert with it", "thickness"),
        result("hole_diameter", "Hole the insert asks for", "thickness"),
        result("interference_left", "Interference with this bit", "thickness",
               "Insert diameter less the bit's; negative: it drops in."),
        result("drill", "Nearest drill", TEXT, "Of those in which the insert still holds."),
        result("drill_diameter", "Diameter of that drill", "thickness"),
        result("longest_screw", "Longest screw, under its head", "thickness",
               "Stays off the bottom of the hole if every measure errs."),
        result("tap_drill", "Tap drill for the screw's thread", TEXT, "Where a thread is cut or chased."),
        result("tap_share", "Thread with that tap drill", "ratio"),
        result("spacing", "Centre to centre", "thickness"),
        result("spacing_error", "Off the spacing wanted by", "thickness"),
    ) + HOLDING_RESULTS + (
        result("edge_distance", "Edge distance of timber design", "thickness",
               "From the hole's middle, 1.5 times the insert's outside, loaded along the grain."),
    ),
    acted_on=("drill", "hole_depth", "shoulder_depth", "wall_left"),
    cautions=CAUTIONS,
    sources=("accessory-hole-spacing", "bench-practice", "dowel-edge-distance", "drill-charts", "geometry",
             "metric-drill-sizes", "metric-threads", "percent-of-thread", "thread-charts", "wood-handbook",
             "wood-handbook-fasteners", "wood-strength-pages"),
    example="The invented riser of black walnut, 7/8 in thick beside the window, that gets two 7/16 in "
            "inserts for a quiver.",
    first=("insert_length", "bit_diameter", "point", "spur", "centre_point", "own_angle", "thickness"),
    compute=compute,
    takes_off=True,
)
