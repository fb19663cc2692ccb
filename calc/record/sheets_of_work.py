"""What a record may hold of work on edges, repairs, holes, the grip and the sanding."""

from calc.declaring import Input, choice, group, quantity, rows, switch
from calc.record.declare import DEED, FACT, Sheet, length, measure, note
from calc.tables.grits import CAMI_GRITS, P_GRITS
from calc.tables.threads import THREADS

LIMBS = (("upper", "Upper limb"), ("lower", "Lower limb"), ("riser", "Riser"))
FACES = (("belly", "Belly"), ("back", "Back"), ("edge", "Edge"), ("tip", "Tip"))
WAYS = (("none", "None"), ("side", "From side to side"), ("depth", "From the back or the belly"))
POINTS = (("twist-118", "Twist drill, 118°"), ("twist-135", "Twist drill, 135°"), ("brad", "Brad point"),
          ("flat", "Flat"), ("own", "Another"))

_THREADS = tuple([(each.id, each.name) for each in THREADS])

EDGES = Sheet("edges", "Edges rounded", "The edges of the limbs were rounded.", DEED, (
    group(
        "The edges",
        length("radius", "To a radius of", "1/32 in", "0 in", "1/4 in"),
        choice("limbs", "Of", (("both", "Both limbs"), ("upper", "The upper limb"),
                               ("lower", "The lower limb"))),
    ),
), ())


def _mending(id: str, title: str, purpose: str, what: str, material: str) -> Sheet:
    return Sheet(id, title, purpose, DEED, (
        group(
            "What was done",
            choice("limb", "Where", LIMBS),
            choice("face", "On the", FACES),
            length("place", "From the fadeout", "6 in", "0 in", "40 in"),
            note("what", "In words", what),
            note("material", "With what", material),
            note("cures_until", "Cures until", "Thursday, 9 in the morning"),
        ),
    ), ())


REPAIR = _mending("repair", "A repair", "Something on the bow was mended.",
                  "overlay of the tip glued anew", "two-part epoxy")
FILL = _mending("fill", "A fill", "A pinhole or dent was filled.", "one pinhole beside the lettering",
                "clear epoxy")

HOLE = Sheet("hole", "A hole and its insert", "A hole in the riser, and what goes into it.", FACT, (
    group(
        "The hole",
        choice("standing", "It is", (("old", "There already"), ("planned", "To be drilled"),
                                     ("new", "Drilled now"), ("filled", "Filled now"))),
        note("place", "Where", "right side, above the window"),
        length("thickness", "Thickness along the hole", "7/8 in", "1/4 in", "4 in"),
        length("edge", "From the hole's middle to the nearest edge", "1/2 in", "1/16 in", "4 in"),
        measure("bit_diameter", "Bit diameter", "thickness", "5/16 in", "1/16 in", "1 in"),
        choice("point", "Point of the bit", POINTS),
        measure("spur", "Length of its spur", "thickness", "3/32 in", "0 in", "1/2 in"),
        measure("own_angle", "Angle of another point", "angle", "90°", "30°", "180°"),
    ),
    group(
        "What goes in",
        choice("fit", "The insert is", (("press", "Pressed in"), ("threaded", "Threaded on its outside"))),
        length("insert_length", "Insert length", "7/16 in", "1/8 in", "2 in"),
        measure("insert_diameter", "Insert diameter", "thickness", "0.316 in", "0.060 in", "1 in"),
        choice("outer_thread", "Outside thread of the insert", _THREADS),
        choice("screw", "Screw that goes in", _THREADS),
        length("screw_length", "Length of that screw", "1/2 in", "1/8 in", "4 in"),
        length("held", "Thickness of what it holds", "1/8 in", "0 in", "3 in"),
    ),
    group(
        "Two holes side by side",
        measure("outside", "Over the far edges", "thickness", "1.622 in", "1/4 in", "6 in"),
        measure("inside", "Between the near edges", "thickness", "0.998 in", "0 in", "6 in"),
        length("spacing_wanted", "Spacing wanted", "1 5/16 in", "1/4 in", "6 in", "Middle to middle."),
    ),
), ())


def _size() -> tuple[Input, Input]:
    return (quantity("width", "Width", "length", default="1 3/16 in", low="1/2 in", high="4 in"),
            quantity("depth", "Depth", "length", default="2 1/4 in", low="1/2 in", high="5 in"))


SECTION = Sheet("section", "Sections of the riser", "Grip and window before and after the work.", FACT, (
    group(
        "The sections",
        choice("shape", "Shape", (("rounded", "Rounded, like an oval"),
                                  ("square", "Square, edges hardly broken"))),
        rows("before", "Before the work",
             (quantity("height", "From the throat", "length", default="0 in", low="0 in",
                       high="10 in"),) + _size(), default="0 in:1 3/16 in:2 1/4 in", fewest=1, most=6,
             help="The least width and depth at each place, with calipers."),
        rows("after", "After the work", _size(), default="1 1/16 in:2 1/16 in", fewest=1, most=6,
             help="The same sections in the same order."),
        switch("done", "The work is done", default=False, help="Off while it is only planned."),
    ),
    group(
        "The worst hole near by",
        choice("hole", "It runs", WAYS),
        length("hole_diameter", "Its diameter", "5/16 in", "1/16 in", "1 1/2 in"),
        length("hole_height", "Its distance from the throat", "2 3/4 in", "0 in", "10 in"),
        length("hole_from_back", "Its middle from the back face", "1 3/8 in", "1/16 in", "4 in"),
    ),
), ())

SANDING = Sheet("sanding", "The sanding", "Which grades this work goes through.", FACT, (
    group(
        "The sanding",
        choice("material", "What is sanded", (("glass", "Limb glass"), ("wood", "Bare wood"),
                                              ("finish", "A cured finish"))),
        switch("wet", "Sanded wet", default=True),
        choice("first_p", "First grade, P scale", tuple([(each.id, each.id.upper()) for each in P_GRITS])),
        choice("last_p", "Last grade, P scale", tuple([(each.id, each.id.upper()) for each in P_GRITS])),
        choice("first_cami", "First grade, CAMI scale",
               tuple([(each.id, str(each.number)) for each in CAMI_GRITS])),
        choice("last_cami", "Last grade, CAMI scale",
               tuple([(each.id, str(each.number)) for each in CAMI_GRITS])),
    ),
), ())
