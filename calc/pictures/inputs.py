"""What is asked of a photograph: its size, what is known in it, and the marks."""

from calc.declaring import RULE, SHOP, Input, choice, count, quantity, rows
from calc.pictures.target import DOTS

MOST_PIXELS = "30000 px"
WHOLE_LIMB = 60
"""Most marks along one limb."""

DOT_MARKS = (
    "1:a:58:2080;1:b:557:2084;1:c:554:2401;1:d:60:2399;2:a:3269:2105;2:b:3738:2110;2:c:3729:2421;"
    "2:d:3258:2418;3:a:50:440;3:b:556:452;3:c:559:783;3:d:56:774;4:a:3319:511;4:b:3797:520;4:c:3783:842;"
    "4:d:3308:836"
)
RULE_MARKS = (
    "1:0in:0in:306:2242;1:12in:0in:964:2246;1:24in:0in:1605:2248;1:36in:0in:2241:2250;1:48in:0in:2873:2259;"
    "1:60in:0in:3498:2266;2:0in:30in:305:612;2:12in:30in:970:629;2:24in:30in:1626:641;2:36in:30in:2273:656;"
    "2:48in:30in:2913:667;2:60in:30in:3551:679"
)
UPPER_MARKS = (
    "2451:1505;2551:1518;2645:1527;2740:1537;2830:1541;2917:1549;3000:1556;3082:1558;3159:1558;3239:1553;"
    "3312:1547;3381:1529;3446:1502;3501:1470;3550:1426;3587:1377"
)
LOWER_MARKS = (
    "1423:1492;1323:1500;1225:1508;1129:1512;1036:1518;946:1523;858:1526;772:1527;690:1524;610:1518;"
    "532:1510;460:1491;392:1464;335:1424;287:1378;249:1328"
)
THROAT_MARKS = "1939:1464"
STRING_MARKS = "648:1867;1179:1881;1644:1891;2255:1909;2709:1921;3224:1934"
"""Marks in the picture of the example: no bow was photographed. They were computed for the invented bow
before a camera that is tilted a little, and scattered by one pixel."""

ON_SHEETS = ("target", ("sheets",))
ON_RULES = ("target", ("rules",))


def _pixel_columns() -> tuple[Input, Input]:
    """Return the columns of a mark's place in the picture."""
    return (
        quantity("x", "From the left edge", "pixels", default="1200", low="0 px", high=MOST_PIXELS),
        quantity("y", "From the top edge", "pixels", default="900", low="0 px", high=MOST_PIXELS),
    )


def marks(
    id: str, label: str, default: str, fewest: int, most: int, help: str, measure: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
) -> Input:
    """Return the rows of marks of one kind."""
    return rows(id, label, _pixel_columns(), default=default, fewest=fewest, most=most, help=help,
                measure=measure, when=when)


def picture_inputs() -> tuple[Input, ...]:
    """Return the inputs for the picture itself."""
    return (
        quantity("picture_width", "Width of the picture", "pixels", default="4000 px", low="200 px",
                 high=MOST_PIXELS, usual=("1500 px", "12000 px"), help="The whole picture, not cut down."),
        quantity("picture_height", "Height of the picture", "pixels", default="3000 px", low="200 px",
                 high=MOST_PIXELS, usual=("1500 px", "12000 px"), help="The whole picture, not cut down."),
        quantity("marking_error", "Error of a mark", "pixels", default="1 px", low="0.1 px", high="20 px",
                 usual=("0.3 px", "4 px"),
                 help="One standard error either way: two marks in three lie within it.", role=SHOP),
    )


def known_inputs() -> tuple[Input, ...]:
    """Return the inputs for what is known in the picture."""
    return (
        choice("target", "What is known on the board", (
            ("sheets", "Printed sheets of dots"), ("rules", "Rules or tapes")),
            help="Spread out as wide as the bow, above it and below it."),
        rows("sheets", "Middles of the sheets", (
            quantity("along", "To the right", "length", default="60 in", low="-120 in", high="240 in"),
            quantity("up", "Up", "length", default="30 in", low="-120 in", high="240 in"),
        ), default="0in:0in;60in:0in;0in:30in;60in:30in", fewest=1, most=8, when=ON_SHEETS,
            help="Row 1 is sheet 1. From any one place on the board, each sheet level.",
            measure="Stretch a line or strike one along the board for each row of sheets, and measure along "
                    "it. Both diagonals between the outer sheets must come out alike."),
        rows("dots", "Dots marked", (
            count("sheet", "Sheet", default=1, low=1, high=8),
            choice("dot", "Dot", tuple([(id, name) for id, name, _ in DOTS])),
        ) + _pixel_columns(), default=DOT_MARKS, fewest=4, most=40, when=ON_SHEETS,
            help="Four or more, on three sheets or more; sixteen on four sheets are good."),
        rows("rule_marks", "Places marked on rules", (
            count("rule", "Rule", default=1, low=1, high=4),
            quantity("along", "To the right", "length", default="12 in", low="-120 in", high="240 in"),
            quantity("up", "Up", "length", default="0 in", low="-120 in", high="240 in"),
        ) + _pixel_columns(), default=RULE_MARKS, fewest=4, most=40, when=ON_RULES,
            help="On two rules or more, one above the bow and one below it.",
            measure="A mark of each rule every foot. Up is the height of its edge over the lowest rule's."),
        quantity("board_error", "Error of a sheet's or rule's place", "length", default="1/32 in",
                 low="0 in", high="1/2 in", usual=("1/64 in", "1/8 in"),
                 help="One standard error either way: how well you measured along the board.", role=SHOP),
        rows("straight", "Points on straight lines", (
            count("line", "Line", default=1, low=1, high=6),
        ) + _pixel_columns(), default="", fewest=0, most=40,
            help="May be empty. Three points or more a line, on what is straight: a stretched cord, the "
                 "board's edge. They show what the lens bends."),
        quantity("distance", "Lens to board", "room_length", default="10 ft", low="3 ft", high="60 ft",
                 usual=("10 ft", "25 ft"), help="Square to the board, with a tape."),
        quantity("standoff", "Edge in front of the board, at the fadeouts", "length", default="1 3/4 in",
                 low="0 in", high="12 in", usual=("0 in", "4 in"),
                 help="From the sheets' plane to the belly's edge that faces the lens."),
        quantity("standoff_tip", "Edge in front of the board, at the nocks", "length", default="1 3/16 in",
                 low="0 in", high="12 in", usual=("0 in", "4 in"),
                 help="Less than at the fadeouts where the limb is narrower."),
        quantity("standoff_error", "Error of both", "length", default="1/16 in", low="0 in", high="1 in",
                 usual=("1/64 in", "1/4 in"), help="One standard error.", role=RULE),
    )


def bow_inputs() -> tuple[Input, ...]:
    """Return the inputs for the marks on the bow."""
    return (
        choice("belly_faces", "The belly faces", (
            ("down", "Down in the picture"), ("up", "Up in the picture"), ("left", "To its left"),
            ("right", "To its right"))),
        marks("upper_limb", "Upper limb, along the edge of its belly", UPPER_MARKS, 1, WHOLE_LIMB,
              "From the fadeout to the nock, in order: the first is the fadeout, the last the nock.",
              "About sixteen, closer where it bends most."),
        marks("lower_limb", "Lower limb, along the edge of its belly", LOWER_MARKS, 1, WHOLE_LIMB,
              "From the fadeout to the nock, in order."),
        marks("throat_marks", "Throat of the grip", THROAT_MARKS, 0, 4,
              "May be empty. Its deepest point, once or more."),
        marks("string_marks", "String, where it is free", STRING_MARKS, 2, 20,
              "Between the places where it leaves the tips.", when=("what", ("braced",))),
    )
