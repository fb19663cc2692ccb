"""What is asked of a photograph: its size, what is known in it, and the marks."""

from calc.declaring import RULE, SHOP, Input, choice, count, quantity, rows
from calc.pictures.course import FEWEST_FOR_SHAPE
from calc.pictures.target import DOTS

MOST_PIXELS = "30000 px"
WHOLE_LIMB = 60
"""Most marks along one limb."""

DOT_MARKS = (
    "1:a:208:2050;1:b:722:2053;1:c:719:2384;1:d:207:2382;2:a:3103:2073;2:b:3594:2080;2:c:3582:2404;"
    "2:d:3094:2400;3:a:203:460;3:b:728:470;3:c:727:812;3:d:207:804;4:a:3149:523;4:b:3647:530;4:c:3633:869;"
    "4:d:3138:858"
)
RULE_MARKS = (
    "1:-2in:0in:350:2217;1:12in:0in:1142:2220;1:26in:0in:1921:2225;1:40in:0in:2690:2233;1:54in:0in:3452:2242;"
    "2:-2in:28in:352:634;2:12in:28in:1158:655;2:26in:28in:1947:671;2:40in:28in:2727:685;2:54in:28in:3503:700"
)
UPPER_MARKS = (
    "2471:1505;2527:1511;2581:1518;2634:1524;2688:1528;2739:1532;2789:1537;2840:1539;2888:1546;2935:1550;"
    "2983:1553;3030:1555;3076:1555;3118:1560;3165:1561;3206:1560;3250:1559;3290:1558;3329:1554;3368:1549;"
    "3407:1542;3442:1530;3475:1518;3509:1503;3541:1486;3567:1466;3594:1444;3617:1422;3638:1398;3655:1374"
)
LOWER_MARKS = (
    "1398:1491;1343:1497;1288:1501;1230:1504;1179:1509;1125:1511;1073:1517;1022:1517;971:1519;920:1521;"
    "870:1523;823:1524;774:1526;728:1525;684:1526;638:1524;595:1523;551:1519;511:1514;470:1508;430:1499;"
    "393:1491;357:1476;323:1459;293:1439;262:1416;236:1397;211:1371;190:1347;172:1318"
)
THROAT_MARKS = "1937:1460"
STRING_MARKS = "532:1880;1096:1895;1651:1910;2203:1927;2750:1939;3290:1956"
DRAWN_UPPER = (
    "2471:1505;2526:1514;2580:1527;2631:1542;2678:1561;2728:1584;2771:1608;2814:1635;2850:1664;2888:1696;"
    "2923:1727;2956:1761;2986:1795;3014:1828;3039:1860;3064:1896;3087:1933;3109:1965;3134:1998;3155:2029;"
    "3175:2062;3200:2089;3223:2117;3248:2141;3273:2164;3299:2185;3326:2203;3353:2219;3381:2233;3411:2241"
)
DRAWN_LOWER = (
    "1401:1491;1343:1497;1289:1506;1236:1521;1183:1541;1134:1561;1087:1582;1043:1610;1000:1635;960:1664;"
    "923:1695;886:1726;851:1757;821:1790;790:1824;762:1857;732:1889;707:1921;682:1954;654:1986;631:2014;"
    "602:2040;577:2066;547:2090;518:2114;491:2129;458:2148;429:2158;397:2171;367:2177"
)
"""Marks in the picture of the example: no bow was photographed. They were computed for the invented bow
before a camera that is tilted a little, and scattered by one pixel."""

UNSTRUNG_SHAPE = (
    "4.27in:0.398in;8.54in:0.687in;11.74in:0.811in;14.52in:0.771in;17.08in:0.384in;19.21in:-0.537in;"
    "21.35in:-2.639in"
)
"""What the example's unstrung picture is read as."""

ON_SHEETS = ("target", ("sheets",))
ON_RULES = ("target", ("rules",))
NOT_DRAWN = ("what", ("unstrung", "braced"))
DRAWN = ("what", ("drawn",))

IN_ORDER = "From the fadeout to the nock, in order: the first is the fadeout, the last the nock."
HOW_MANY = "About two dozen, closer where it bends most."


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
            quantity("along", "To the right", "length", default="52 in", low="-120 in", high="240 in"),
            quantity("up", "Up", "length", default="28 in", low="-120 in", high="240 in"),
        ), default="0in:0in;52in:0in;0in:28in;52in:28in", fewest=1, most=8, when=ON_SHEETS,
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
        quantity("standoff_string", "String in front of the board", "length", default="15/16 in", low="0 in",
                 high="12 in", usual=("0 in", "4 in"), help="In the middle of the bow's width.",
                 when=("what", ("braced",))),
        quantity("standoff_error", "Error of these distances", "length", default="1/16 in", low="0 in",
                 high="1 in", usual=("1/64 in", "1/4 in"), help="One standard error.", role=RULE),
    )


def bow_inputs() -> tuple[Input, ...]:
    """Return the inputs for the marks on the bow."""
    return (
        choice("belly_faces", "The belly faces", (
            ("down", "Down in the picture"), ("up", "Up in the picture"), ("left", "To its left"),
            ("right", "To its right"))),
        marks("upper_limb", "Upper limb, along the edge of its belly", UPPER_MARKS, 1, WHOLE_LIMB, IN_ORDER,
              HOW_MANY, NOT_DRAWN),
        marks("lower_limb", "Lower limb, along the edge of its belly", LOWER_MARKS, 1, WHOLE_LIMB, IN_ORDER,
              HOW_MANY, NOT_DRAWN),
        marks("drawn_upper", "Upper limb drawn, along the edge of its belly", DRAWN_UPPER, FEWEST_FOR_SHAPE,
              WHOLE_LIMB, IN_ORDER, HOW_MANY, DRAWN),
        marks("drawn_lower", "Lower limb drawn, along the edge of its belly", DRAWN_LOWER, FEWEST_FOR_SHAPE,
              WHOLE_LIMB, IN_ORDER, HOW_MANY, DRAWN),
        marks("throat_marks", "Throat of the grip", THROAT_MARKS, 0, 4,
              "May be empty. Its deepest point, once or more."),
        marks("string_marks", "String, where it is free", STRING_MARKS, 2, 20,
              "Between the places where it leaves the tips.", when=("what", ("braced",))),
    )
