"""What is asked of a photograph: its size, what is known in it, and the marks."""

from calc.declaring import RULE, SHOP, Input, choice, count, quantity, rows
from calc.pictures.course import FEWEST_FOR_SHAPE
from calc.pictures.sought import CORNER, EDGE, HAND, MIDDLE
from calc.pictures.string_line import PARTS, PLACES
from calc.pictures.target import DOTS

MOST_PIXELS = "30000 px"
HOW = "how"
"""The column that says how a mark was set."""

WHOLE_LIMB = 60
"""Most marks along one limb."""

DOT_MARKS = (
    "1:a:208:2050;1:b:722:2053;1:c:719:2384;1:d:207:2382;2:a:3103:2073;2:b:3594:2080;2:c:3582:2404;"
    "2:d:3094:2400;3:a:203:460;3:b:728:470;3:c:727:812;3:d:207:804;4:a:3149:523;4:b:3647:530;4:c:3633:869;"
    "4:d:3138:858"
)
RULE_MARKS = (
    "1:-2in:0in:351:2218;1:12in:0in:1143:2221;1:26in:0in:1922:2228;1:40in:0in:2688:2232;1:54in:0in:3453:2242;"
    "2:-2in:28in:351:634;2:12in:28in:1157:656;2:26in:28in:1947:672;2:40in:28in:2729:685;2:54in:28in:3503:700"
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
LINE_MARKS = (
    "upper_tip:left:3271:1456;upper_tip:right:3273:1499;upper_tip:string:3301:1488;"
    "upper_riser:left:2474:1423;upper_riser:right:2471:1513;upper_riser:string:2528:1499;"
    "lower_tip:left:572:1417;lower_tip:right:571:1462;lower_tip:string:550:1442;lower_riser:left:1400:1407;"
    "lower_riser:right:1399:1500;lower_riser:string:1382:1480"
)
DRAWN_UPPER = (
    "2471:1508;2526:1515;2578:1525;2630:1542;2679:1564;2725:1584;2772:1609;2813:1635;2852:1666;2891:1695;"
    "2924:1727;2956:1759;2987:1793;3014:1827;3041:1862;3066:1896;3089:1931;3113:1964;3133:1997;3154:2028;"
    "3177:2058;3200:2088;3222:2117;3246:2142;3272:2164;3299:2187;3325:2204;3353:2219;3382:2233;3408:2242"
)
DRAWN_LOWER = (
    "1399:1492;1343:1498;1288:1510;1236:1524;1181:1540;1134:1560;1087:1584;1041:1610;1001:1635;959:1663;"
    "923:1693;886:1725;852:1760;822:1789;789:1824;761:1855;733:1890;707:1922;686:1954;655:1985;629:2013;"
    "603:2040;576:2067;548:2091;520:2111;490:2131;459:2147;427:2158;398:2171;369:2177"
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
FROM_THE_SIDE = ("what", ("unstrung", "braced", "drawn"))
FROM_THE_BELLY = ("what", ("belly",))

IN_ORDER = "From the fadeout to the nock, in order: the first is the fadeout, the last the nock."
HOW_MANY = "About thirty, closer where it bends most."


def _pixel_columns() -> tuple[Input, Input]:
    """Return the columns of a mark's place in the picture."""
    return (
        quantity("x", "From the left edge", "pixels", default="1200", low="0 px", high=MOST_PIXELS),
        quantity("y", "From the top edge", "pixels", default="900", low="0 px", high=MOST_PIXELS),
    )


SET_BY_HAND = (HAND, "By hand")


def marks(
    id: str, label: str, default: str, fewest: int, most: int, help: str, measure: str = "",
    when: tuple[str, tuple[str, ...]] | None = None,
) -> Input:
    """Return the rows of marks of one kind."""
    return rows(id, label, _pixel_columns(), default=default, fewest=fewest, most=most, help=help,
                measure=measure, when=when)


def _how_set(*found: tuple[str, str]) -> tuple[Input]:
    """Return the column that says how a mark was set: by hand, or drawn to what the picture shows."""
    return (choice(HOW, "Set", (SET_BY_HAND,) + found),)


def _edge_marks(
    id: str, label: str, default: str, fewest: int, when: tuple[str, tuple[str, ...]]
) -> Input:
    """Return the rows of marks along the edge of a limb's belly."""
    return rows(id, label, _pixel_columns() + _how_set((EDGE, "To the edge"), (CORNER, "To a corner")),
                default=default, fewest=fewest, most=WHOLE_LIMB, help=IN_ORDER, measure=HOW_MANY, when=when)


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
        quantity("found_error", "Error of a mark drawn to an edge or a middle", "pixels", default="0.3 px",
                 low="0.05 px", high="5 px", usual=("0.1 px", "1 px"),
                 help="One standard error, of marks that the picture itself has set right. Soft light and a "
                      "sharp picture keep it small.", role=SHOP),
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
        ) + _pixel_columns() + _how_set((MIDDLE, "To its middle")), default=DOT_MARKS, fewest=4, most=40,
            when=ON_SHEETS, help="Four or more, on three sheets or more; sixteen on four sheets are good."),
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
        quantity("standoff", "Bow in front of the board, at the fadeouts", "length", default="1 3/4 in",
                 low="0 in", high="12 in", usual=("0 in", "4 in"),
                 help="From the sheets' plane to the edge that you mark; from the belly, to the belly."),
        quantity("standoff_tip", "Bow in front of the board, at the nocks", "length", default="1 3/16 in",
                 low="0 in", high="12 in", usual=("0 in", "4 in"),
                 help="The same at the nocks, where the limb is narrower."),
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
            ("right", "To its right")), when=FROM_THE_SIDE),
        _edge_marks("upper_limb", "Upper limb, along the edge of its belly", UPPER_MARKS, 1, NOT_DRAWN),
        _edge_marks("lower_limb", "Lower limb, along the edge of its belly", LOWER_MARKS, 1, NOT_DRAWN),
        _edge_marks("drawn_upper", "Upper limb drawn, along the edge of its belly", DRAWN_UPPER,
                    FEWEST_FOR_SHAPE, DRAWN),
        _edge_marks("drawn_lower", "Lower limb drawn, along the edge of its belly", DRAWN_LOWER,
                    FEWEST_FOR_SHAPE, DRAWN),
        rows("fadeouts_again", "Fadeouts marked again", (
            choice("limb", "Limb", (("upper", "Upper"), ("lower", "Lower"))),
        ) + _pixel_columns(), default="", fewest=0, most=20,
            help="May be empty. The first mark of a limb counts most: three more of each fadeout halve its "
                 "error.", when=FROM_THE_SIDE),
        marks("throat_marks", "Throat of the grip", THROAT_MARKS, 0, 4,
              "May be empty. Its deepest point, once or more.", when=FROM_THE_SIDE),
        marks("string_marks", "String, where it is free", STRING_MARKS, 2, 20,
              "Between the places where it leaves the tips.", when=("what", ("braced",))),
        rows("string_line", "String and edges", (
            choice("place", "Place", PLACES),
            choice("part", "What is marked", PARTS),
        ) + _pixel_columns(), default=LINE_MARKS, fewest=3, most=48, when=FROM_THE_BELLY,
            help="Left and right as you see them with the upper limb up. At each place both edges and the "
                 "string, once or more."),
        quantity("height_riser", "String above the belly, at the fadeouts", "length", default="7 1/2 in",
                 low="1 in", high="12 in", usual=("5 in", "9 in"), help="With a rule.", when=FROM_THE_BELLY),
        quantity("height_tip", "String above the belly, near the tips", "length", default="2 1/8 in",
                 low="0 in", high="8 in", usual=("1/2 in", "4 in"), help="Where you mark it near the tips.",
                 when=FROM_THE_BELLY),
    )
