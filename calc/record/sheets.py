"""What may be in a record, declared once: forms, command line, files, tables and tests are made from it."""

from calc.declaring import (
    Input,
    choice,
    count,
    date,
    group,
    quantity,
    rows,
    switch,
)
from calc.record.declare import DEED, FACT, MOMENT, Sheet, length, measure, note
from calc.record.sheets_of_arrows import ARROW
from calc.record.sheets_of_finish import COAT, COATS, HOURS, LETTERING, PHOTO, SHOTS
from calc.record.sheets_of_shop import AIR, PRODUCT, QUOTE, SHOP
from calc.record.sheets_of_work import EDGES, FILL, HOLE, REPAIR, SANDING, SECTION
from calc.tables.bow_families import FAMILIES
from calc.tables.findings import FINDINGS, LOOKS
from calc.tables.string_materials import MATERIALS

MOST_CURVE = 40
"""Readings of one draw curve, the same wherever one is asked for."""


def _weight_at(label: str) -> tuple[Input, Input]:
    """Return a draw weight and the draw at which it was read: the one says nothing without the other."""
    return (
        measure("weight", label, "force", "53 lb", "5 lb", "150 lb", "From a checked scale."),
        length("at_draw", "At a draw of", "28 in", "16 in", "34 in",
                "As bows are marked: 1 3/4 in more than to the pivot point."),
    )


def _stations(limb: str) -> Input:
    return rows("stations_" + limb, "Sections of the " + limb + " limb", (
        quantity("position", "Distance from the fadeout", "length", default="7 in", low="0 in", high="40 in"),
        quantity("width", "Width", "length", default="1 9/16 in", low="1/4 in", high="3 in"),
        quantity("thickness", "Thickness", "thickness", default="0.279 in", low="0.060 in", high="1.2 in"),
    ), default="2 in:1 5/8 in:0.291 in;7 in:1 9/16 in:0.279 in;13 in:1 3/8 in:0.263 in", fewest=3, most=8)


def _offsets(id: str, label: str, help: str) -> Input:
    return rows(id, label, (
        quantity("along", "From the fadeout", "length", default="6 in", low="1/4 in", high="40 in"),
        quantity("offset", "Offset", "length", default="1/2 in", low="-12 in", high="6 in"),
    ), default="6 in:1/2 in", fewest=1, most=8, help=help)


def _glass(face: str) -> Input:
    return measure("glass_" + face, "Glass on the " + face, "thickness", "0.043 in", "0.010 in", "0.120 in",
                    "Read at the limb's edge with a lens.")


def _line(limb: str) -> tuple[Input, ...]:
    title = limb[:1].upper() + limb[1:] + " limb"
    return (
        length(limb + "_offset_tip", title + ": string off the middle near the tip", "1/16 in",
                "-1 in", "1 in", "Left is negative."),
        length(limb + "_height_tip", title + ": height there", "2 in", "1/2 in", "8 in"),
        length(limb + "_offset_riser", title + ": string off the middle at the fadeout", "1/16 in",
                "-1 1/2 in", "1 1/2 in", "Left is negative."),
        length(limb + "_height_riser", title + ": height at the fadeout", "7 5/8 in", "2 in", "12 in",
               "Left out where tiller is read at the fadeouts: it is that distance."),
        _groove(limb + "_groove_outer", title + ": groove off the middle at the nock"),
        _groove(limb + "_groove_inner", title + ": groove off the middle at its inner end"),
        _sticks(limb + "_unstrung", title + ": twist by two sticks, unstrung"),
        _sticks(limb + "_sticks", title + ": twist by two sticks, braced"),
    )


def _sticks(id: str, label: str) -> Input:
    return measure(id, label, "angle", "1°", "-20°", "20°",
                   "Positive where the right end of the stick near the tip is the nearer to you.")


def _groove(id: str, label: str) -> Input:
    return measure(id, label, "thickness", "0.010 in", "-1/2 in", "1/2 in", "Left is negative.")


BOW = Sheet("bow", "The bow", "What it is, and how it is marked.", FACT, (
    group(
        "What it is",
        note("tag", "Tag", "31", "The number on the bow's tag."),
        note("title", "In a few words", "64 in recurve"),
        choice("family", "Family", tuple([(each.id, each.name) for each in FAMILIES])),
        note("marked_letters", "Lettering on it", "64 in, 55 lb at 28 in"),
        length("marked_length", "Length as marked", "64 in", "36 in", "80 in",
               "As it is lettered: a string is made to it. It is no length along the belly."),
        measure("marked_weight", "Weight as marked", "force", "55 lb", "5 lb", "150 lb"),
        date("due", "Ready by", default="2026-06-13", low="2020-01-01", high="2099-12-31"),
    ),
    group(
        "Its measures",
        length("length", "Length along the belly, nock to nock", "64 in", "40 in", "80 in",
               "Unstrung, with a tape that follows the belly."),
        length("length_back", "Length along the back, nock to nock", "64 1/4 in", "36 in", "80 in",
               "Unstrung, with a tape that follows the back: what is to be coated."),
        length("riser_length", "Riser, between the fadeouts", "19 in", "6 in", "34 in",
               "Where the limbs begin to bend."),
        length("riser_girth", "Girth of the riser", "6 1/4 in", "2 in", "16 in", "A paper strip around it."),
        note("riser_wood", "Wood of the riser", "black walnut", "By its name in the table of woods."),
        measure("riser_strength", "Modulus of rupture of the riser's wood", "stress", "15000 psi", "2000 psi",
                "40000 psi", "Of a wood that is in no table here."),
        note("core", "Wood of the core", "white ash", "By its name in the table of woods."),
        measure("core_modulus", "Modulus of the core", "modulus", "1.8 Mpsi", "0.3 Mpsi", "4 Mpsi",
                "Of a wood that is in no table here, along the grain."),
        choice("tips", "Tips", (("plain", "Without reinforcement, or not known"),
                                ("reinforced", "Reinforced for low-stretch strings"))),
        switch("old", "An old bow, or one of unknown age", default=True),
        measure("glass_back_new", "Glass on the back when it was new", "thickness", "0.045 in", "0.010 in",
                 "0.120 in"),
        measure("glass_belly_new", "Glass on the belly when it was new", "thickness", "0.045 in", "0.010 in",
                 "0.120 in"),
        _offsets("profile", "Unstrung shape", "From a straight edge through both fadeouts; toward the belly "
                 "is positive. Of both limbs, or their mean."),
        _offsets("profile_upper", "Unstrung shape of the upper limb",
                 "The same of this limb alone, where the limbs were read apart."),
        _offsets("profile_lower", "Unstrung shape of the lower limb", "As of the upper limb."),
        length("throat", "Fadeouts behind the throat", "3/4 in", "-3 in", "5 in",
               "Positive where the throat is nearer to the back than a straight edge through them."),
        choice("window", "Window is cut", (("centre", "To centre"),
                                           ("before", "Before centre, or there is none"),
                                           ("past", "Past centre"))),
        length("groove_length", "Length of a string groove", "1 1/2 in", "1/4 in", "8 in",
               "From the nock to its inner end."),
        length("edge_radius", "Radius of the limbs' edges as they came", "1/16 in", "0 in", "1/4 in",
               "0 while they are sharp."),
    ),
), ())

OWNER = Sheet("owner", "The owner", "Who to ask, and where to reach them.", FACT, (
    group("The owner", note("name", "Name", "the owner's name"),
          note("reach", "How to reach them", "by telephone")),
), ("name", "reach"))

ARCHER = Sheet("archer", "The archer", "Who will shoot it, and how.", FACT, (
    group(
        "The archer",
        choice("hold", "Hold on the string", (("split", "Split finger"), ("under", "Three fingers under"))),
        length("draw", "The archer's draw", "27 in", "18 in", "34 in",
               "As bows are marked: from the nocking point to the pivot point, plus 1 3/4 in."),
        choice("hand", "Shoots", (("right", "Right-handed"), ("left", "Left-handed"))),
        measure("can_hold", "Weight held for ten seconds", "force", "45 lb", "5 lb", "150 lb"),
    ),
), ())

AGREED = Sheet("agreed", "What was agreed", "The numbers to which the owner has said yes.", FACT, (
    group(
        "What was agreed",
        *_weight_at("Draw weight"),
        length("tiller", "Tiller, upper minus lower", "1/16 in", "-1 in", "1 in"),
        measure("reserve", "Weight kept for the edges", "force", "0.7 lb", "0 lb", "5 lb"),
        measure("least_glass", "Share of the glass that must stay", "ratio", "60 %", "30 %", "100 %"),
        length("edge_width", "Width that comes off the limbs", "0 in", "0 in", "1/2 in",
               "Off both sides of a limb together; 0 where the sides are let be."),
        note("finish", "Finish", "satin, one-part urethane"),
        measure("gloss", "Gloss, at 60 degrees", "gloss", "30 GU", "0 GU", "100 GU"),
        measure("sheen", "Sheen, at 85 degrees", "gloss", "40 GU", "0 GU", "120 GU"),
        switch("lettered", "Lettering between the coats", default=True),
        note("lettering", "Lettering", "64 in, 45 lb at 28 in"),
        note("price", "Price", "as quoted"),
        date("ready_by", "Ready by", default="2026-06-13", low="2020-01-01", high="2099-12-31"),
        note("by", "Who said yes, and how", "the owner, by telephone"),
    ),
), ("price", "by"))

LOOKING = Sheet("look", "An inspection", "What was looked at.", MOMENT, (
    group("What has been looked at", *[switch(each.id, each.label, help=each.how) for each in LOOKS]),
), ())

FINDING = Sheet("finding", "A finding", "Something found on the bow.", MOMENT, (
    group(
        "The finding",
        choice("which", "What", tuple([(each.id, each.label) for each in FINDINGS])),
        choice("limb", "Where", (("upper", "Upper limb"), ("lower", "Lower limb"), ("riser", "Riser"))),
        choice("face", "On the", (("belly", "Belly"), ("back", "Back"), ("edge", "Edge"), ("tip", "Tip"))),
        length("place", "From the fadeout", "6 in", "0 in", "40 in"),
        choice("standing", "Stands", (("open", "Open"), ("watched", "Watched"), ("mended", "Mended"),
                                      ("gone", "Gone"))),
        note("what", "In words", "a hair line beside the lettering"),
    ),
), ())

PROOF = Sheet("first_draw", "A draw from a distance", "How it behaved, from several steps away.", MOMENT, (
    group(
        "The draw",
        length("to_draw", "Drawn to", "28 in", "6 in", "34 in"),
        switch("from_distance", "From a distance, on a stand", default=True),
        switch("full", "To the archer's full draw", default=True),
        switch("sound", "It made a sound", default=False),
        switch("moved", "Something moved", default=False),
    ),
), ())

READING = Sheet("reading", "A reading", "What was measured, at one time.", MOMENT, (
    group(
        "Weight and tiller",
        *_weight_at("Draw weight"),
        length("upper", "Upper tiller distance", "7 5/8 in", "2 in", "16 in",
                "From the belly to the string."),
        length("lower", "Lower tiller distance", "7 5/16 in", "2 in", "16 in", "At the same place."),
        choice("measured", "Read", (("fadeout", "At the two fadeouts"),
                                    ("string_end", "At equal distances from the string's end"))),
        length("from_string_end", "From the string's end", "18 in", "6 in", "36 in",
               "Along the string, the same on both limbs."),
        length("brace", "Brace height", "8 1/4 in", "3 in", "12 in",
               "From the string to the deepest point of the grip's throat."),
        rows("curve", "Weight at draw", (
            quantity("draw", "Draw", "length", default="20 in", low="6 in", high="36 in"),
            quantity("weight", "Weight", "force", default="30 lb", low="0.1 lb", high="200 lb"),
        ), default="12 in:11 lb;20 in:33 lb;28 in:53 lb", fewest=3, most=MOST_CURVE,
             help="In order of draw, stated as bows are marked."),
        note("scale", "Scale", "hanging scale"),
        switch("checked", "A known weight was hung from the scale that day, and it was right", default=False),
        switch("from_distance", "Drawn from a distance, on a stand", default=False),
    ),
    group("Limbs", _stations("upper"), _stations("lower"), _glass("back"), _glass("belly"),
          length("width_fadeout", "Limb width at the fadeout", "1 5/8 in", "1/2 in", "4 in"),
          length("width_tip", "Limb width at the tip", "1/2 in", "1/8 in", "3 in"),
          switch("with_finish", "With finish on it", default=False)),
    group("Where the string runs", *(_line("upper") + _line("lower"))),
    group("Shot over a chronograph",
          measure("shot_mass", "Arrow of the shot", "mass", "468 gr", "100 gr", "1500 gr",
                  "The complete arrow."),
          measure("shot_speed", "Speed read", "speed", "158 ft/s", "40 ft/s", "350 ft/s",
                  "This bow, at the archer's draw."),
          measure("string_angle", "Angle between the halves of the string", "angle", "110°",
                  "60°", "170°", "At the archer's full draw, from a photograph.")),
), ())

STROKES = Sheet("strokes", "Strokes", "A batch of strokes: what was taken off, with what.", DEED, (
    group(
        "The batch",
        count("upper_belly", "Upper limb, belly", default=0, low=0, high=2000),
        count("upper_back", "Upper limb, back", default=0, low=0, high=2000),
        count("lower_belly", "Lower limb, belly", default=0, low=0, high=2000),
        count("lower_back", "Lower limb, back", default=0, low=0, high=2000),
        note("paper", "Paper", "P120"),
        switch("about", "The count is a guess", default=False),
    ),
), ())

STRING = Sheet("string", "The string", "The string that is on the bow.", FACT, (
    group(
        "The string",
        length("length", "Length", "60 1/2 in", "30 in", "80 in"),
        count("strands", "Strands", default=14, low=4, high=40),
        choice("material", "Material", tuple([(each.id, each.name) for each in MATERIALS])),
    ),
), ())

ANSWER = Sheet("answer", "An answer kept", "What a calculator said, as it was said.", MOMENT, (
    group(
        "The answer",
        note("calculator", "Calculator", "tiller"),
        note("pairs", "Figures as typed", "upper=7+5%2F8+in", "As a link says them."),
        note("more_pairs", "Further figures", "lower=7+5%2F16+in"),
        note("last_pairs", "The last of the figures", "units=imperial"),
        note("origin", "Where each came from", "upper=record"),
        note("headline", "What it said", "Take about 3 % of its stiffness from the lower limb."),
        note("results", "Results in SI", "difference=0.0079375"),
        note("checks", "Checks", "target=watch"),
        note("stale", "Read before the last change", "upper, lower"),
    ),
), ())

TOLD = Sheet("told", "Told the owner", "What was said to the owner, as it was said.", MOMENT, (
    group("What was said", note("text", "Text", "It pulls 47 lb today."), note("way", "How", "by message")),
), ("text", "way"))

HANDOVER = Sheet("handover", "Handed over", "The bow has left the bench.", MOMENT, (
    group(
        "Handed over",
        note("sheet", "The sheet as handed over", "45 lb at 28 in"),
        date("next_look", "Next look", default="2027-06-13", low="2020-01-01", high="2099-12-31"),
        choice("end", "It left", (("done", "Done"), ("as_it_is", "As it is"), ("wall", "For the wall"))),
    ),
), ())

SHEETS = (BOW, OWNER, ARCHER, AGREED, LOOKING, FINDING, PROOF, READING, STROKES, EDGES, REPAIR, FILL, HOLE,
          SECTION, SANDING, PRODUCT, COATS, COAT, LETTERING, AIR, STRING, ARROW, SHOTS, QUOTE, HOURS, PHOTO,
          ANSWER, TOLD, HANDOVER, SHOP)


def find(id: str) -> Sheet | None:
    """Return the sheet of an id, or None where this release has none."""
    for each in SHEETS:
        if each.id == id:
            return each
    return None


def input_of(fact: str) -> Input | None:
    """Return the declaration of a fact such as `reading.brace`, or None where there is none."""
    id, _, name = fact.partition(".")
    sheet = find(id)
    if sheet is None:
        return None
    return next((each for each in inputs_of(sheet) if each.id == name), None)


def inputs_of(sheet: Sheet) -> list[Input]:
    """Return the facts that a sheet asks for, in the order of its form."""
    return [each for part in sheet.groups for each in part.inputs]


def private_facts() -> tuple[str, ...]:
    """Return the facts that leave the device only in the bow's own file, such as `owner.name`."""
    return tuple([each.id + "." + name for each in SHEETS for name in each.private])
