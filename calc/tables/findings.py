"""What an inspection can find on an old bow, and what each finding means for it.

Declared once: the inspection form, its link, its command line, the table in the
book and the verdict are all made from this. Common practice throughout; nobody
publishes limits for a bow that has lain forty years in a loft.
"""


class Verdict:
    """What is to be done. short: in two or three words; words: in full; title, note: head of its findings."""

    def __init__(self, id: str, short: str, words: str, title: str, note: str) -> None:
        self.id = id
        self.short = short
        self.words = words
        self.title = title
        self.note = note


class Page:
    """Where the book goes on; the address counts from the root of the site."""

    def __init__(self, title: str, address: str) -> None:
        self.title = title
        self.address = address


class Finding:
    """One finding. sign: how to tell it; verdict: id; reason: one or two sentences; page: a Page."""

    def __init__(self, id: str, label: str, sign: str, verdict: str, reason: str, page: Page) -> None:
        self.id = id
        self.label = label
        self.sign = sign
        self.verdict = verdict
        self.reason = reason
        self.page = page


class Look:
    """One part of the inspection."""

    def __init__(self, id: str, label: str, how: str) -> None:
        self.id = id
        self.label = label
        self.how = how


SHOOT = "shoot"
REPAIR = "repair"
MEASURE = "measure"
LOOK = "look"
WALL = "wall"

VERDICTS = (
    Verdict(WALL, "Wall only", "Wall only: never string it again.", "Any one of these: wall only",
            "One is enough, whatever else is sound."),
    Verdict(LOOK, "Not yet", "Not yet: find out first, or let somebody experienced see it.",
            "Not to be judged yet",
            "Each of these may hide something from the list above. With nobody experienced at hand the bow "
            "waits, or goes on the wall."),
    Verdict(REPAIR, "Repair first", "Repair first.", "Mend before it is strung",
            "None of these ends the bow. Each can, if it is strung as it is."),
    Verdict(MEASURE, "Measure first", "String it only to measure: with a stringer, your face out of its "
            "plane, and draw it only if the string passes.", "Measured on the strung bow before any draw",
            "The string tells whether it may be drawn: no more than 1/8 in off the middle of the limb at "
            "either fadeout, in both grooves, at the edge of neither. If it does not pass, unstring it."),
    Verdict(SHOOT, "Write it down", "Nothing found that stops it: string it with a stringer, and make the "
            "first draw from a distance.", "Worth writing down", "None of these changes the verdict."),
)
"""The most dangerous first. An open question stands above a repair: it may turn out to be the worst."""

LOOKS = (
    Look("seen_faces", "Both faces of both limbs", "Cleaned, with a strong light held low along them."),
    Look("seen_edges", "All four limb edges",
         "A slip of thin paper along every glue line, cotton along every edge."),
    Look("seen_tapped", "Both limbs tapped", "With a coin, from fadeout to tip, on both faces."),
    Look("seen_tips", "Both tips", "Overlays and string grooves, with a lens."),
    Look("seen_riser", "The riser", "Window, grip, every hole and every old fill."),
    Look("seen_line", "Sighted for twist", "Along the bow, unstrung, and over two sticks on each limb. Tick "
            "below how far each is turned."),
    Look("asked_past", "Asked about its past and heat",
         "Where it has lain, and whether it was dry-fired, strung backwards or mended. With nobody to ask, "
         "leave this open until somebody experienced has gone over the bow."),
)

_LIGHT = Page("Clean it and set the light", "inspect/#1-clean-it-and-set-the-light")
_LINES = Page("Tell crazing from cracks", "inspect/#2-tell-crazing-from-cracks")
_PAPER = Page("Try the edges with paper", "inspect/#3-try-the-edges-with-paper")
_TAP = Page("Tap for parted layers", "inspect/#4-tap-for-parted-layers")
_COTTON = Page("Try the edges with cotton", "inspect/#5-try-the-edges-with-cotton")
_TIPS = Page("Look at tips and grooves", "inspect/#6-look-at-tips-and-grooves")
_RISER = Page("Read the riser", "inspect/#7-read-the-riser")
_TWIST = Page("Sight it for twist", "inspect/#8-sight-it-for-twist")
_HEAT = Page("Ask about heat", "inspect/#9-ask-about-heat")
_KEEP = Page("What to change and what to keep", "inspect/keep-or-change/")
_STRING = Page("Look at the string", "inspect/first-draw/#1-look-at-the-string")
_DISTANCE = Page("Draw it from a distance", "inspect/first-draw/#4-draw-it-from-a-distance")
_LINE = Page("What is this line?", "inspect/line/")
_ENERGY = Page("Stored energy", "safety/#stored-energy")
_PROOF = Page("Prove it", "repair/#prove-it")
_SPLINTER = Page("An edge splinter", "repair/lifted-edges/#an-edge-splinter")
_LIFTED = Page("What may be glued and what may not",
               "repair/lifted-edges/#what-may-be-glued-and-what-may-not")
_RAMP = Page("A lifted edge on the ramp", "repair/lifted-edges/#a-lifted-edge-on-the-ramp")
_OVERLAY = Page("Tip overlays", "repair/lifted-edges/#tip-overlays")
_PINHOLE = Page("Fill a pinhole", "repair/pinholes/#fill-a-pinhole")
_GROOVES = Page("String grooves", "shape/grooves/")
_DRILL = Page("Drill", "drill/")
_MEASURE_TWIST = Page("Measure a twisted limb", "inspect/first-draw/#measure-a-twisted-limb")

FINDINGS = (
    Finding("crack_across", "A crack across a limb",
            "In the glass itself, on a face or an edge, once the finish is off a small patch: a fingernail "
            "catches in it, it shows at the edge, or fibres end at it under the lens.", WALL,
            "The fibres that carry the load are broken, and the next draw can finish it.", _LINES),
    Finding("core_crack", "A crack in the core of a limb",
            "Seen from the edge, in the wood between two glue lines.", WALL,
            "The core holds both glasses apart, and no glue reaches the middle of it.", _LINES),
    Finding("parted_layers", "Layers parted in a limb",
            "A gap between layers of wood, or a dull tap with an opening at the edge beside it.", WALL,
            "Parted layers slide on each other, and the limb fails where they begin.", _TAP),
    Finding("lifted_glass", "Glass lifted farther than its end can be found",
            "Paper goes in farther than thin glue could follow.", WALL,
            "A joint that has let go that far cannot be cleaned inside, so no glue will hold it.", _PAPER),
    Finding("crushed_belly", "A wrinkle or white band across the belly",
            "A line of crushed glass, often beside the fadeout or a sharp bend. It stays when the finish "
            "over it is gone.", WALL,
            "The belly has begun to give way under pressure.", _LINES),
    Finding("sanded_through", "Glass sanded through to the core",
            "Wood lies bare, or shows through a thin place, where the limb bends.", WALL,
            "What carried the load is gone there, and nothing laid over it brings that back.", _LIGHT),
    Finding("repair_opened", "A repair on a limb that opened again",
            "The same place was glued before, and it has lifted.", WALL,
            "A joint that let go twice will let go a third time, under load.", _PROOF),
    Finding("dry_fire_moved", "Anything that moved in a dry fire",
            "An overlay, a glue line or the curve of a limb is not as it was before.", WALL,
            "Where one joint gave way, others were pulled as hard.", _ENERGY),
    Finding("sound_unfound", "A sound at full draw that nobody can find",
            "It ticked or creaked from a distance, and every look since has shown nothing.", WALL,
            "Something lets go where it cannot be seen.", _DISTANCE),
    Finding("riser_through", "A crack through the riser",
            "In the wood itself, once the finish is off a small patch: on two faces, across the grain, or "
            "from a hole to the window.", WALL,
            "The riser breaks in the hand, with the archer's face beside it.", _RISER),
    Finding("groove_crack", "A crack from a string groove into the limb",
            "It starts at the groove and runs under or beside the overlay, in the glass and not in the "
            "finish alone.", WALL,
            "The string's pull opens it further at every shot.", _TIPS),
    Finding("limb_drilled", "A hole or a screw in a limb",
            "Anything driven into the part that bends, even if it was filled.", WALL,
            "A hole cuts the fibres just as a crack does.", _LIGHT),
    Finding("limb_mended", "A limb wrapped, splinted or glued over a break",
            "Thread, tape or a sleeve around the part that bends.", WALL,
            "A break held together from outside is still a break.", _LIGHT),
    Finding("heat_damage", "Damage from heat",
            "Bubbles, dark patches, a glue line that a nail can mark, or a limb that heat has bent.", WALL,
            "The glue has softened once, and nobody can see how far.", _HEAT),

    Finding("line_unsure", "A line you cannot name, or one across with finish still over it",
            "It may be in the finish, in the glass, or figure of the wood. That a fingernail catches in the "
            "finish does not tell which.", LOOK,
            "Take the finish off a small patch and look again: the glass decides, not the lacquer. Until "
            "then the bow is not strung.", _LINE),
    Finding("white_lines", "White lines across, inside clear glass",
            "The surface over them is smooth, and the nail feels nothing.", LOOK,
            "The resin has let go of its fibres there. Somebody experienced has to see it; without one it is "
            "a bow for the wall.", _LINES),
    Finding("crazed_glass", "A net of lines in the glass itself",
            "They stay when the finish over them is gone.", LOOK,
            "The resin has cracked, and how much it still holds cannot be seen. Somebody experienced judges "
            "it; without one it is a bow for the wall.", _LINES),
    Finding("dull_tap", "A dull tap without a gap to be seen",
            "One place sounds dead where its mirror place on the other limb rings.", LOOK,
            "Mark it, and look at both edges beside it with paper and lens.", _TAP),
    Finding("edge_lifted", "Glass lifted at an edge where the limb bends",
            "Paper goes in, however little, and you find where it ends.", LOOK,
            "Not to be glued at home. Somebody experienced judges it; without one it is a bow for the wall.",
            _LIFTED),
    Finding("lifted_fadeout", "Glass lifted at a fadeout, or on the ramp deeper than 1/16 in (1.6 mm)",
            "Paper goes in there, and you find where it ends.", LOOK,
            "Not to be glued at home. Somebody experienced judges it; without one it is a bow for the wall.",
            _LIFTED),
    Finding("splinter_far", "A splinter that is long, deep or one of many",
            "Longer than 2 in (51 mm), farther in than 1/16 in (1.6 mm), away from the edge, or more than "
            "two on a limb.", LOOK,
            "Somebody experienced says whether the glass around it still holds.", _COTTON),
    Finding("both_faces", "Lifts or splinters on both faces at one place",
            "Back and belly, one over the other.", LOOK,
            "Both glasses are going there. Not to be glued at home.", _LIFTED),
    Finding("pinhole_row", "Pinholes in a row, or white beneath one",
            "Along a glue line, or in the glass with a pale ring.", LOOK,
            "It may be layers that part. Tap it, and try the edges beside it.", _PINHOLE),
    Finding("hidden_place", "A fill, patch or paint on a limb",
            "Something covers a place you would like to see.", LOOK,
            "Take the cover off before you trust what is under it.", _LINES),
    Finding("rough_past", "Dry-fired, strung backwards or left in the heat",
            "The owner says so, or you have reason to think it.", LOOK,
            "Treat it as broken until every look has been made once more with a lens.",
            _ENERGY),
    Finding("twisted_limb", "A limb twisted by more than 6°, or by more than 2° with a doubt",
            "The doubt: an edge, a fadeout or a tap in the same limb. Over sticks of 12 in (305 mm) that "
            "are level at one end, 2° is 13/32 in (10 mm) at the other and 6° is 1 1/4 in (31 mm); level in "
            "the middle, half of that at each end.", LOOK,
            "It can be the sign of parted layers, and a string that rolls off a limb lets go of everything "
            "at once.", _TWIST),
    Finding("uneven_curve", "Limbs that do not curve alike",
            "With the back on a flat floor the tips differ by more than 1/4 in (6 mm).", LOOK,
            "It may have been made so, or one limb has given way.", _HEAT),
    Finding("riser_check", "A short crack along the grain of the riser",
            "On one face only, away from holes and window, and it does not open when pressed.", LOOK,
            "Somebody experienced says whether glue is worth trying. Glued it may hold, and that is proved "
            "from a distance.", _RISER),
    Finding("riser_hole", "A hole or fill in the riser that nobody can explain",
            "Probe it with a pin: how deep, and how near to the window?", LOOK,
            "The window is the weakest section, and a deep hole beside it makes it weaker.",
            _RISER),

    Finding("loose_overlay", "A loose or split tip overlay",
            "A nail can move it, or light shows under it.", REPAIR,
            "The string pulls it off and strikes the limb.", _OVERLAY),
    Finding("rough_groove", "A rough, sharp or uneven string groove",
            "A thread drawn through it catches, or one side is deeper.", REPAIR,
            "It cuts the string, or lets it lie to one side.", _GROOVES),
    Finding("edge_splinter", "A short splinter at a limb's edge",
            "Cotton catches. It lies along the limb, no longer than 2 in (51 mm), no farther in than "
            "1/16 in (1.6 mm), and there are no more than two on the limb.", REPAIR,
            "It runs along the edge when the limb bends.", _SPLINTER),
    Finding("edge_lifted_ramp", "Glass just lifted at an edge of the stiff ramp",
            "Beside the riser, with riser wood beneath, where nothing bends. Paper stops within 1/16 in "
            "(1.6 mm) wherever you try.", REPAIR,
            "Thin glue can reach the end of it. Strung, it grows.", _RAMP),
    Finding("loose_insert", "A loose insert or fitting",
            "It turns or rocks under a finger.", REPAIR,
            "It works its hole larger and shakes loose at the shot.",
            _DRILL),
    Finding("wrong_string", "A frayed, unknown or low-stretch string",
            "Anything but a sound polyester string of the right length.", REPAIR,
            "Old tips were made for a string that stretches.", _STRING),

    Finding("twist_sound", "A twist of 2 to 6°, and all else sound",
            "Sticks of 12 in (305 mm), level at one end, are 13/32 to 1 1/4 in (10 to 31 mm) apart at the "
            "other; edges, fadeouts and taps of that limb leave no doubt.", MEASURE,
            "Before any draw measure, at both fadeouts and beside both grooves, how far the string lies off "
            "the middle of the limb. It may be drawn if that is 1/8 in or less at the fadeouts and the "
            "string lies at no edge of a groove; otherwise unstring it. A string that rolls off lets go of "
            "everything at once.", _MEASURE_TWIST),

    Finding("line_along", "A line along a limb that nothing catches on",
            "A strand, a closed glue line or figure of the wood. Nail, cotton and paper find nothing, and it "
            "runs out over no edge.", SHOOT,
            "Photograph it with a rule, and look at it again after the first draw.", _LINES),
    Finding("crazing", "Crazing",
            "Fine lines in every direction. A nail does not catch, and they end where the finish ends.",
            SHOOT, "It is in the finish only.", _LINES),
    Finding("worn_finish", "Worn finish, scratches, small dents",
            "They stop above the glass, or are dents in the wood of the riser. A scratch that a nail caught "
            "in went with the finish, and the glass beneath is whole.", SHOOT,
            "They weaken nothing. What they tell of the bow's past may be worth keeping.",
            _KEEP),
    Finding("pinhole", "A pinhole, alone",
            "In the wood of the riser, or in the glass with nothing white beneath.", SHOOT,
            "It may be filled when the bow is refinished.", _PINHOLE),
    Finding("twist_slight", "A twist of 2° or less",
            "Sticks of 12 in (305 mm), level at one end, are no more than 13/32 in (10 mm) apart at the "
            "other.", SHOOT,
            "Write it down for each limb, with its side; where the string lies on the strung bow decides.",
            _TWIST),
)

UNPICTURED = ("dry_fire_moved", "sound_unfound", "rough_past")
"""Findings with nothing to see that a picture could show; every other has a small one of its id."""


def find(id: str) -> Finding:
    """Return one finding.

    Args:
        id: of one of FINDINGS.

    Returns:
        the finding.

    Raises:
        ValueError: there is none of this id.

    Source: bench-practice.
    """
    for each in FINDINGS:
        if each.id == id:
            return each
    raise ValueError("no finding is called " + id)


def verdict_on(finding: Finding) -> Verdict:
    """Return what one finding asks for.

    Args:
        finding: one of FINDINGS.

    Returns:
        one of VERDICTS.

    Source: bench-practice.
    """
    return verdict_of([finding], [])


def verdict_of(found: list[Finding], unseen: list[Look]) -> Verdict:
    """Return the verdict on a bow: that of its most dangerous finding.

    Args:
        found: all findings.
        unseen: looks that were not made; while there are any, the bow cannot be passed.

    Returns:
        one of VERDICTS.

    Source: bench-practice.
    """
    asked = [each.verdict for each in found]
    if unseen:
        asked.append(LOOK)
    for verdict in VERDICTS:
        if verdict.id in asked:
            return verdict
    return VERDICTS[-1]


def with_verdict(verdict: str) -> list[Finding]:
    """Return the findings that lead to one verdict, in order.

    Args:
        verdict: id of one of VERDICTS.

    Returns:
        the findings.

    Source: bench-practice.
    """
    return [each for each in FINDINGS if each.verdict == verdict]
