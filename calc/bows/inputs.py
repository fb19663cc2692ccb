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
from calc.tables.woods import CORE_WOODS

THE_BOW = "The bow and its limbs"
"""Title of the fold that the groups share which describe a bow."""

SANDING = "How it is sanded"
"""Title of the fold that the groups share which say where and how material comes off."""

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
            help="Never from the tip overlays: their lengths differ.",
        ),
        quantity(
            "from_string_end", "Distance from the string's end", "length", default="18 in", low="6 in",
            high="36 in", help="Along the string, the same on both limbs.",
            when=("measured", ("string_end",)),
        ),
    )


def measures(*more: Input) -> Group:
    """Return the group of a bow's main measures, with others in front of them."""
    return group(
        "The bow",
        *more,
        *bow_lengths(),
        family_choice(),
        under=THE_BOW,
    )


def family_choice(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the choice of a bow's family."""
    return choice(
        "family", "Family", tuple([(each.id, each.name) for each in FAMILIES]),
        help="Stands in for the unstrung shape where that is not measured.", when=when,
    )


def shape_group(offsets: str = "") -> Group:
    """Return the group of inputs that describe the unstrung shape; offsets: the example's."""
    return group(
        "Unstrung shape",
        rows(
            "profile", "Offsets from a straight edge", (
                quantity("along", "From the fadeout", "length", default="6 in", low="1/4 in", high="40 in"),
                quantity("offset", "Offset", "length", default="1/2 in", low="-12 in", high="6 in"),
            ), default=offsets, fewest=0, most=8,
            help="Empty: the family's shape. Toward the belly is positive, toward the back negative; the "
                 "same on both limbs.",
            measure="Lay a straight edge through both fadeouts and measure square to it. Five offsets tell a "
                    "recurve well at about 0.4, 0.65, 0.8 and 0.9 of the limb and at the nock; spread evenly "
                    "they miss its bend.",
        ),
        quantity(
            "throat", "Fadeouts behind the throat", "length", default="", low="-3 in", high="5 in",
            usual=("-1/2 in", "3 in"),
            help="From the straight edge to the grip's throat, positive where the throat is nearer to the "
                 "back. Empty: the family's.", optional=True,
        ),
        quantity(
            "string_stiffness", "Stiffness of the string", "force", default="5600 lb", low="600 lb",
            high="250000 lb", usual=("2000 lb", "20000 lb"),
            help="Tension for each unit of strain. An assumption to edit: a soft polyester string is near "
                 "2200 lb (10 kN), a stiff one of HMPE near 13000 lb (60 kN).", role=RULE,
        ),
        under=THE_BOW,
    )


def station_rows(
    id: str, label: str, default: str, help: str, fewest: int = 3,
    when: tuple[str, tuple[str, ...]] | None = None,
) -> Input:
    """Return the rows of a limb's measured sections."""
    return rows(
        id, label, (
            quantity("position", "Distance from the fadeout", "length", default="6 in", low="0 in",
                     high="40 in"),
            quantity("width", "Width", "length", default="1 1/2 in", low="1/4 in", high="3 in",
                     usual=("3/8 in", "2 1/4 in")),
            quantity("thickness", "Thickness", "thickness", default="0.285 in", low="0.060 in", high="1.2 in",
                     usual=("0.150 in", "0.600 in")),
        ), default=default, fewest=fewest, most=8, help=help, when=when,
        measure="Thickness with a micrometer, over both glass layers, in the middle of the width.",
    )


AS_IT_CAME = (
    "2 in:1 5/8 in:0.291 in;7 in:1 9/16 in:0.279 in;13 in:1 3/8 in:0.263 in;19 in:13/16 in:0.247 in",
    "2 in:1 5/8 in:0.296 in;7 in:1 9/16 in:0.283 in;13 in:1 3/8 in:0.267 in;19 in:13/16 in:0.250 in",
)
"""Sections of the upper and the lower limb of the invented bow of all worked examples."""


def section_group(stations: tuple[str, str] = AS_IT_CAME) -> Group:
    """Return the group of both limbs' sections; stations: the example's, upper and lower."""
    return group(
        "The limbs' sections",
        station_rows("upper_stations", "Upper limb", stations[0],
                     "At least three places from fadeout to tip."),
        station_rows("lower_stations", "Lower limb", stations[1],
                     "The same places on the lower limb."),
        under=THE_BOW,
    )


def stated_draw() -> Input:
    """Return the input for the draw at which a weight and the one wanted are stated."""
    return quantity("draw_length", "Draw at which both are stated", "length", default="28 in", low="16 in",
                    high="34 in", usual=("24 in", "31 in"),
                    help="The marked standard is 28 in (711 mm), 1 3/4 in (44 mm) of it beyond "
                         "the pivot point.")


def stretch() -> tuple[Input, ...]:
    """Return the inputs for the stretch of a limb that is sanded."""
    return (
        quantity("zone_start", "Left alone at the fadeout", "length", default="1 in", low="0 in",
             high="12 in", usual=("1/2 in", "4 in"),
             help="From the fadeout; the glass must run thick into the riser.", role=RULE),
        quantity("zone_end", "Left alone at the tip", "length", default="4 in", low="0 in", high="20 in",
             usual=("2 in", "8 in"), help="From the nock, along the limb.", role=RULE),
        quantity("feather", "Feathered over", "length", default="2 in", low="0 in", high="8 in",
             usual=("1 in", "4 in"), help="At both ends of the sanded stretch, inside it.",
             role=RULE),
    )


def belly_share(when: tuple[str, tuple[str, ...]] | None = None) -> Input:
    """Return the input for how a removal is shared between belly and back."""
    return quantity("belly_share", "Share taken from the belly", "ratio", default="60 %", low="0 %",
                    high="100 %", usual=("50 %", "75 %"),
                    help="Slightly more from the belly glass than from the back.", when=when, role=RULE)


def least_glass(when: tuple[str, tuple[str, ...]] | None = None) -> tuple[Input, ...]:
    """Return the inputs for the glass that must stay, and how old the readings of it are."""
    return (
        quantity("least_glass", "Share of the glass that must stay", "ratio",
                 default=show(GLASS_LEFT.low, "ratio", decimals=0), low="30 %", high="100 %",
                 usual=("50 %", "90 %"),
                 help="Of the glass when new or as the bow came, on each face. An " + GLASS_LEFT.status
                      + ": no source gives one.", when=when, role=RULE),
        quantity("glass_new", "Glass when the bow was new", "thickness", default="", low="0.010 in",
                 high="0.120 in", usual=("0.025 in", "0.065 in"),
                 help="If it had been sanded before it came and this is known.", optional=True, when=when),
        quantity("came_back", "Back glass as the bow came", "thickness", default="", low="0.010 in",
                 high="0.120 in", usual=("0.025 in", "0.065 in"),
                 help="Once you have sanded it. Empty: as it is now.", optional=True, when=when),
        quantity("came_belly", "Belly glass as the bow came", "thickness", default="", low="0.010 in",
                 high="0.120 in", usual=("0.025 in", "0.065 in"),
                 help="Once you have sanded it. Empty: as it is now.", optional=True, when=when),
        count("strokes_since", "Strokes since glass and sections were read", default=0, low=0, high=5000,
              help="On both limbs together; 0 where they were read after the last stroke.", when=when),
    )


def layup_inputs(back: str = "0.043 in", belly: str = "0.043 in") -> tuple[Input, ...]:
    """Return the inputs that describe glass and core; back, belly: the example's glass."""
    return (
        quantity("glass_back", "Glass on the back", "thickness", default=back, low="0.010 in",
                 high="0.120 in", usual=("0.025 in", "0.065 in"),
                 help="As it is now, read at the limb's edge with a lens."),
        quantity("glass_belly", "Glass on the belly", "thickness", default=belly, low="0.010 in",
                 high="0.120 in", usual=("0.025 in", "0.065 in"), help="As it is now."),
        choice("core", "Core", CORE_WOODS + (("own", "Another, by its modulus"),), default="white-ash"),
        quantity("core_modulus", "Modulus of the core", "modulus", default="1.8 Mpsi", low="0.3 Mpsi",
                 high="4 Mpsi", usual=("1 Mpsi", "2.5 Mpsi"), help="Along the grain.",
                 when=("core", ("own",))),
        quantity("glass_modulus", "Modulus of the glass", "modulus", default="5.65 Mpsi", low="2 Mpsi",
                 high="9 Mpsi", usual=("5 Mpsi", "6.7 Mpsi"),
                 help="Along the fibres; 5.5 to 6.5 Mpsi (38 to 45 GPa) is typical of bow glass.", role=RULE),
    )
