"""What several calculators ask about one bow, declared once."""


from calc.bows.lengths import bow_lengths
from calc.declaring import (
    RULE,
    Group,
    Input,
    choice,
    count,
    group,
    quantity,
    rows,
)
from calc.quantities import show
from calc.tables import practice
from calc.tables.bow_families import FAMILIES

GLASS_LEFT = practice.find("glass-left")

# Inputs ----------------------------------------------------------------------


def reading_inputs() -> tuple[Input, Input]:
    """Return the inputs that say where along the bow tiller is read."""
    return (
        choice(
            "measured",
            "Where the distances were taken",
            (
                ("fadeout", "At the two fadeouts"),
                ("string_end", "At equal distances from the string's end on each limb"),
            ),
            "Never from the tip overlays: their lengths differ.",
        ),
        quantity(
            "from_string_end", "Distance from the string's end", "length", "18 in", "6 in", "36 in",
            help="Along the string, the same on both limbs.", when=("measured", ("string_end",)),
        ),
    )


def measures(*more: Input) -> Group:
    """Return the group of a bow's main measures, with others in front of them."""
    return group(
        "The bow",
        *more,
        *bow_lengths(),
        family_choice(),
    )


def family_choice(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the choice of a bow's family."""
    return choice(
        "family", "Family", tuple([(each.id, each.name) for each in FAMILIES]),
        "Stands in for the unstrung shape where that is not measured.", when=when,
    )


def shape_group() -> Group:
    """Return the group of inputs that describe the unstrung shape."""
    return group(
        "Unstrung shape",
        rows(
            "profile", "Offsets from a straight edge", (
                quantity("along", "From the fadeout", "length", "6 in", "1/4 in", "40 in"),
                quantity("offset", "Offset", "length", "1/2 in", "-12 in", "6 in"),
            ), "", 0, 8,
            "Empty: the family's shape. Toward the belly is positive, toward the back negative; the same on "
            "both limbs.",
            "Lay a straight edge through both fadeouts and measure square to it, out to the tip.",
        ),
        quantity(
            "throat", "Fadeouts behind the throat", "length", "", "-3 in", "5 in", ("-1/2 in", "3 in"),
            "From the straight edge to the grip's throat, positive where the throat is nearer to the back. "
            "Empty: the family's.",
            optional=True,
        ),
        quantity(
            "string_stiffness", "Stiffness of the string", "force", "5600 lb", "600 lb", "250000 lb",
            ("2000 lb", "20000 lb"),
            "Tension for each unit of strain. An assumption to edit: a soft polyester string is near 2200 lb "
            "(10 kN), a stiff one of HMPE near 13000 lb (60 kN).", role=RULE,
        ),
    )


def station_rows(id: str, label: str, default: str, help: str) -> Input:
    """Return the rows of a limb's measured sections."""
    return rows(
        id, label, (
            quantity("position", "Distance from the fadeout", "length", "6 in", "0 in", "40 in"),
            quantity("width", "Width", "length", "1 1/2 in", "1/4 in", "3 in", ("3/8 in", "2 1/4 in")),
            quantity("thickness", "Thickness", "thickness", "0.285 in", "0.060 in", "1.2 in",
                     ("0.150 in", "0.600 in")),
        ), default, 3, 8, help,
        "Thickness with a micrometer, over both glass layers, in the middle of the width.",
    )


def section_group() -> Group:
    """Return the group of both limbs' sections."""
    return group(
        "The limbs' sections",
        station_rows("upper_stations", "Upper limb",
                     "2 in:1 5/8 in:0.291 in;7 in:1 9/16 in:0.279 in;13 in:1 3/8 in:0.263 in;"
                     "19 in:13/16 in:0.247 in",
                     "At least three places from fadeout to tip."),
        station_rows("lower_stations", "Lower limb",
                     "2 in:1 5/8 in:0.296 in;7 in:1 9/16 in:0.283 in;13 in:1 3/8 in:0.267 in;"
                     "19 in:13/16 in:0.250 in",
                     "The same places on the lower limb."),
    )


def belly_share(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the input for how a removal is shared between belly and back."""
    return quantity("belly_share", "Share taken from the belly", "ratio", "60 %", "0 %", "100 %",
                    ("50 %", "75 %"), "Slightly more from the belly glass than from the back.", when=when,
                    role=RULE)


def least_glass(when: tuple[str, tuple[str, ...]] | None = None) -> tuple[Input, ...]:
    """Return the inputs for the glass that must stay, and how old the readings of it are."""
    return (
        quantity("least_glass", "Share of the glass that must stay", "ratio",
                 show(GLASS_LEFT.low, "ratio", decimals=0), "30 %", "100 %", ("50 %", "90 %"),
                 "Of the glass when new or as the bow came, on each face. An " + GLASS_LEFT.status
                 + ": no source gives one.",
                 when=when, role=RULE),
        quantity("glass_new", "Glass when the bow was new", "thickness", "", "0.010 in", "0.120 in",
                 ("0.025 in", "0.065 in"), "If it had been sanded before it came and this is known.",
                 optional=True, when=when),
        quantity("came_back", "Back glass as the bow came", "thickness", "", "0.010 in", "0.120 in",
                 ("0.025 in", "0.065 in"), "Once you have sanded it. Empty: as it is now.",
                 optional=True, when=when),
        quantity("came_belly", "Belly glass as the bow came", "thickness", "", "0.010 in", "0.120 in",
                 ("0.025 in", "0.065 in"), "Once you have sanded it. Empty: as it is now.",
                 optional=True, when=when),
        count("strokes_since", "Strokes since glass and sections were read", 0, 0, 5000,
              "On both limbs together; 0 where they were read after the last stroke.", when=when),
    )


def layup_inputs() -> tuple[Input, ...]:
    """Return the inputs that describe glass and core."""
    return (
        quantity("glass_back", "Glass on the back", "thickness", "0.043 in", "0.010 in", "0.120 in",
                 ("0.025 in", "0.065 in"), "As it is now, read at the limb's edge with a lens."),
        quantity("glass_belly", "Glass on the belly", "thickness", "0.043 in", "0.010 in", "0.120 in",
                 ("0.025 in", "0.065 in"), "As it is now."),
        choice("core", "Core", (
            ("sugar-maple", "Hard maple"), ("red-maple", "Red maple"), ("yellow-birch", "Yellow birch"),
            ("white-ash", "White ash"), ("black-cherry", "Black cherry"), ("shagbark-hickory", "Hickory"),
            ("own", "Another, by its modulus")), default="white-ash"),
        quantity("core_modulus", "Modulus of the core", "modulus", "1.8 Mpsi", "0.3 Mpsi", "4 Mpsi",
                 ("1 Mpsi", "2.5 Mpsi"), "Along the grain.", when=("core", ("own",))),
        quantity("glass_modulus", "Modulus of the glass", "modulus", "5.65 Mpsi", "2 Mpsi", "9 Mpsi",
                 ("5 Mpsi", "6.7 Mpsi"),
                 "Along the fibres; 5.5 to 6.5 Mpsi (38 to 45 GPa) is typical of bow glass.", role=RULE),
    )
