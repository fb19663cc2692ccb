"""Wood movement: how much a piece, a glued joint or a hole changes from one air to another; when to wait."""

from calc.declaring import (
    RULE,
    TRIAL,
    Calculator,
    choice,
    group,
    names_of,
    quantity,
    result,
)
from calc.outcome import (
    OK,
    STOP,
    TEXT,
    WATCH,
    Axis,
    Chart,
    Check,
    Column,
    Line,
    Outcome,
    Sentence,
    Table,
    amount,
    check,
    sentence,
)
from calc.quantities import ROUNDING
from calc.shop.moisture import (
    AT_REST_WITHIN,
    LEAST_LINEAR,
    MOST_LINEAR,
    coefficient_from_shrinkage,
    dimensional_change,
    equilibrium_moisture_content,
)
from calc.tables.movement import MOVEMENTS, Movement, find

PIECE, JOINT, HOLE = "piece", "joint", "hole"
TANGENTIAL, RADIAL = "tangential", "radial"
OWN = "own"
HUMIDITIES = tuple([percent / 100 for percent in range(20, 86, 5)])


class Change:
    """What one wood does between two moistures, over one size: along the rings, across them, as it is cut."""

    def __init__(self, wood: Movement, cut: str, size: float, start: float, end: float) -> None:
        self.wood = wood
        self.tangential = dimensional_change(size, wood.tangential, start, end)
        self.radial = dimensional_change(size, wood.radial, start, end)
        self.as_cut = self.radial if cut == RADIAL else self.tangential


def compute(
    job: str,
    size: float,
    wood: str,
    cut: str,
    own_radial: float | None,
    own_tangential: float | None,
    other_wood: str | None,
    other_cut: str | None,
    other_radial: float | None,
    other_tangential: float | None,
    interference: float | None,
    known: str,
    temperature: float,
    humidity_from: float | None,
    humidity_to: float | None,
    moisture_from: float | None,
    moisture_to: float | None,
    moisture_now: float | None,
    allowed: float,
) -> Outcome:
    """Return changes, what they do to a joint or a fit, and whether to wait before gluing."""
    start = _moisture(known, temperature, humidity_from, moisture_from)
    end = _moisture(known, temperature, humidity_to, moisture_to)
    piece = Change(_wood(wood, own_radial, own_tangential), cut, size, start, end)
    other = None
    if job == JOINT:
        other = Change(_wood(other_wood or OWN, other_radial, other_tangential), other_cut or TANGENTIAL,
                       size, start, end)
    apart = piece.as_cut - (0.0 if other is None else other.as_cut)
    left = None if interference is None or job != HOLE else interference - piece.as_cut
    in_air = []
    for humidity in HUMIDITIES:
        moisture = equilibrium_moisture_content(temperature, humidity)
        in_air.append((humidity, moisture, Change(piece.wood, cut, size, start, moisture)))
    checks = (_movement_check(job, apart, allowed),) + _fit_checks(job, left) + _rest_checks(
        moisture_now, start, end) + _range_checks(start, end)
    return Outcome(
        headline=_headline(job, piece, apart, left, start, end),
        values=(
            ("moisture_from", start),
            ("moisture_to", end),
            ("tangential", piece.tangential),
            ("radial", piece.radial),
            ("change", piece.as_cut),
            ("other_change", None if other is None else other.as_cut),
            ("apart", None if other is None else apart),
            ("interference_left", left),
            ("still_to_move", None if moisture_now is None
             else Change(piece.wood, cut, size, moisture_now, start).as_cut),
        ),
        checks=checks,
        tables=(_humidity_table(in_air), _woods_table(size, start, end)),
        charts=(_chart([change for _, _, change in in_air]),),
        assumptions=ASSUMPTIONS + _wood_sentences(piece, other),
    )


def _moisture(known: str, temperature: float, humidity: float | None, moisture: float | None) -> float:
    if known == "air":
        return equilibrium_moisture_content(temperature, humidity or 0.0)
    return moisture or 0.0


def _wood(id: str, radial: float | None, tangential: float | None) -> Movement:
    if id != OWN:
        return find(id)
    return Movement(OWN, "your wood", coefficient_from_shrinkage(radial or 0.0),
                    coefficient_from_shrinkage(tangential or 0.0), "wood-handbook-movement", "calculated")


# What is said --------------------------------------------------------------------


def _way(change: float) -> str:
    return "swells" if change > 0 else "shrinks"


def _headline(
    job: str, piece: Change, apart: float, left: float | None, start: float, end: float
) -> Sentence:
    moistures = (amount("ratio", start), amount("ratio", end))
    if abs(end - start) < ROUNDING:
        return sentence("Nothing moves: the wood stays at {} of moisture.", moistures[0])
    if job == HOLE:
        way = "opens" if piece.as_cut > 0 else "closes"
        told = sentence("From {} to {} of moisture the hole " + way + " by {}.", *moistures,
                        amount("thickness", abs(piece.as_cut)))
        if left is None:
            return told
        if left <= 0:
            return sentence("Do not count on the press fit: " + told.template[0].lower() + told.template[1:]
                            + " More than the interference is gone.", *told.amounts)
        return sentence(told.template + " The interference becomes {}.", *told.amounts,
                        amount("thickness", left))
    if job == JOINT:
        return sentence(
            "From {} to {} of moisture the piece " + _way(piece.as_cut) + " by {} across the grain, {} " +
            ("more" if abs(piece.as_cut) > abs(piece.as_cut - apart) else "less")
            + " than what it is glued to: the joint has to bear that.",
            *moistures, amount("thickness", abs(piece.as_cut)), amount("thickness", abs(apart)))
    return sentence("From {} to {} of moisture the piece " + _way(piece.as_cut) + " by {} across the grain.",
                    *moistures, amount("thickness", abs(piece.as_cut)))


def _movement_check(job: str, apart: float, allowed: float) -> Check:
    what = {PIECE: "The piece moves by {}", JOINT: "The two woods move apart by {}",
            HOLE: "The hole changes by {}"}[job]
    shown = (amount("thickness", abs(apart)), amount("thickness", allowed))
    if abs(apart) <= allowed + ROUNDING:
        return check("movement", OK, sentence(what + ", within the {} you accept.", *shown))
    remedy = {
        PIECE: " Leave it room, or bring it to the air it will live in first.",
        JOINT: " Bring both to the air they will live in before you glue, turn the rings alike, or take a "
               "narrower or calmer piece.",
        HOLE: " Drill when the wood is at rest in the air the bow will live in.",
    }[job]
    return check("movement", WATCH, sentence(what + ", more than the {} you accept." + remedy, *shown))


def _fit_checks(job: str, left: float | None) -> tuple[Check, ...]:
    if job != HOLE or left is None:
        return ()
    if left <= 0:
        return (check("fit", STOP, "The wood takes away all of the interference: the insert comes loose. "
                      "Glue it, choose one that is screwed in, or let the wood come to rest first."),)
    return (check("fit", OK, sentence("The insert holds with {} of interference.",
                                      amount("thickness", left))),)


def _rest_checks(now: float | None, start: float, end: float) -> tuple[Check, ...]:
    found = []
    if now is not None:
        shown = (amount("ratio", now), amount("ratio", start))
        if abs(now - start) > AT_REST_WITHIN + ROUNDING:
            found.append(check("rest", STOP, sentence(
                "Wait before you glue or drill: the wood reads {} and settles at {} here. Let it lie with "
                "air on all sides until two readings a week apart agree.", *shown)))
        else:
            found.append(check("rest", OK, sentence(
                "The wood reads {} and settles at {} here: at rest, near enough.", *shown)))
    if abs(end - start) > AT_REST_WITHIN + ROUNDING:
        found.append(check("homes", WATCH, sentence(
            "The bow will live at {} of moisture, the work is done at {}. Where you can, keep the parts for "
            "some weeks in air like that of its home before you glue.",
            amount("ratio", end), amount("ratio", start))))
    return tuple(found)


def _range_checks(start: float, end: float) -> tuple[Check, ...]:
    if min(start, end) >= LEAST_LINEAR - ROUNDING and max(start, end) <= MOST_LINEAR + ROUNDING:
        return ()
    return (check("range", WATCH, sentence(
        "The published coefficients are for {} to {} of moisture. Outside of that the figures are a guess in "
        "the right direction.", amount("ratio", LEAST_LINEAR, 0), amount("ratio", MOST_LINEAR, 0))),)


_BOTH_WAYS = (Column("tangential", "Along the rings", "thickness"),
              Column("radial", "Across the rings", "thickness"))


def _humidity_table(in_air: list[tuple[float, float, Change]]) -> Table:
    return Table("humidities", "The same piece in other air", (
        Column("humidity", "Relative humidity", "ratio"), Column("moisture", "Wood settles at", "ratio"),
    ) + _BOTH_WAYS, tuple([(humidity, moisture, change.tangential, change.radial)
                           for humidity, moisture, change in in_air]))


def _woods_table(size: float, start: float, end: float) -> Table:
    lines = []
    for wood in MOVEMENTS:
        change = Change(wood, TANGENTIAL, size, start, end)
        lines.append((wood.name[0].upper() + wood.name[1:], change.tangential, change.radial))
    return Table("woods", "Other woods, the same piece and the same air", (
        Column("wood", "Wood", TEXT),) + _BOTH_WAYS, tuple(lines))


def _chart(changes: list[Change]) -> Chart:
    """Return how the piece changes in air of each of HUMIDITIES."""
    return Chart("movement", "How the piece changes with the air", Axis("Relative humidity", "ratio"),
                 Axis("Change across the grain", "thickness"), (
                     Line("along the rings", "line", list(HUMIDITIES), [each.tangential for each in changes]),
                     Line("across the rings", "line", list(HUMIDITIES), [each.radial for each in changes]),
                 ))


def _wood_sentences(piece: Change, other: Change | None) -> tuple[Sentence | str, ...]:
    named = [each.wood for each in (piece, other) if each is not None and each.wood.status == "from memory"]
    return tuple(["Figures for " + each.name + " are from memory: check them where it matters."
                  for each in named])


ASSUMPTIONS: tuple[Sentence | str, ...] = (
    "Means of species; a single piece may move a quarter more or less. Along the grain wood hardly moves, "
    "and that is left out.",
    "The piece is free to move and wholly at rest in each air. A finished bow takes weeks or months to get "
    "there, and may never quite.",
    "A piece that is glued to another moves less than by itself; what it cannot move becomes strain in the "
    "joint. Glass holds the limb's wood: use this for riser, overlays and inlays, not across a limb.",
    "What you accept is an assumption to edit. No standard gives one for a bow.",
)

CAUTIONS: tuple[Sentence | str, ...] = (
    "A joint that opens near the fadeout or at a tip ends in a broken bow. Inspect glued parts again after a "
    "change of season, before stringing.",
    "Dry wood slowly in a room. Never force it with heat: keep a bow below 50 °C (120 °F), glue lines "
    "soften.",
    "Dust of maple, walnut and of tropical woods harms lungs and can make allergic: extraction, and a "
    "respirator that fits.",
)

_WOODS = names_of(MOVEMENTS) + ((OWN, "Another, by its shrinkage"),)
_CUTS = ((TANGENTIAL, "Along the rings (flat-sawn), or not known"),
         (RADIAL, "Across the rings (quarter-sawn)"))
_AIR = ("known", ("air",))
_METER = ("known", ("meter",))
_WITH = ("job", (JOINT,))

CALCULATOR = Calculator(
    id="wood-movement",
    title="Wood movement",
    purpose="Tells how much a piece, a glued joint or a hole changes from one air to another, and whether to "
            "wait before gluing.",
    groups=(
        group(
            "The work",
            choice("job", "What is it about?",
                   ((PIECE, "A piece by itself"), (JOINT, "A piece glued to another: overlay, inlay, handle"),
                    (HOLE, "A hole: press fit, plug, bushing")), default=JOINT, role=TRIAL),
            quantity("size", "Its size across the grain", "length", default="1 3/8 in", low="1/32 in",
                     high="40 in", usual=("1/4 in", "6 in"), help="Of a hole: its diameter.", role=TRIAL),
            quantity("interference", "Interference of the press fit", "thickness", default="0.004 in",
                     low="0 in", high="0.060 in", usual=("0.001 in", "0.020 in"),
                     help="Insert less hole. Empty: not a press fit.", optional=True, when=("job", (HOLE,)),
                     role=TRIAL),
            quantity("allowed", "Movement you accept", "thickness", default="0.010 in", low="0 in",
                     high="0.5 in", usual=("0.002 in", "0.060 in"), help="An assumption to edit.", role=RULE),
        ),
        group(
            "The wood",
            choice("wood", "Wood", _WOODS, default="sugar-maple", role=TRIAL),
            choice("cut", "How it is cut", _CUTS, role=TRIAL,
                   help="Look at the end grain: which way do the rings run along the size you gave?"),
            quantity("own_tangential", "Shrinkage along the rings", "ratio", default="8 %", low="0 %",
                     high="20 %", usual=("4 %", "13 %"),
                     help="From green to dry, as tables of woods give it.",
                     when=("wood", (OWN,)), role=RULE),
            quantity("own_radial", "Shrinkage across the rings", "ratio", default="4 %", low="0 %",
                     high="15 %", usual=("2 %", "8 %"), when=("wood", (OWN,)), role=RULE),
            choice("other_wood", "Glued to", _WOODS, default="black-walnut", when=_WITH, role=TRIAL),
            choice("other_cut", "How that is cut", _CUTS, default=RADIAL, when=_WITH, role=TRIAL),
            quantity("other_tangential", "Its shrinkage along the rings", "ratio", default="8 %", low="0 %",
                     high="20 %", usual=("4 %", "13 %"), when=("other_wood", (OWN,)), role=RULE),
            quantity("other_radial", "Its shrinkage across the rings", "ratio", default="4 %", low="0 %",
                     high="15 %", usual=("2 %", "8 %"), when=("other_wood", (OWN,)), role=RULE),
        ),
        group(
            "The air",
            choice("known", "What is known", (("air", "The air at the bench and at its home"),
                                              ("meter", "The moisture of the wood, by a meter")), role=TRIAL),
            quantity("temperature", "Air temperature", "temperature", default="70 °F", low="32 °F",
                     high="110 °F", usual=("50 °F", "95 °F")),
            quantity("humidity_from", "Humidity at the bench", "ratio", default="60 %", low="1 %",
                     high="100 %", usual=("20 %", "85 %"), when=_AIR),
            quantity("humidity_to", "Humidity where the bow will live", "ratio", default="35 %", low="1 %",
                     high="100 %", usual=("20 %", "85 %"),
                     help="A heated house in winter: 25 to 35 %. The driest and the dampest month matter.",
                     when=_AIR, role=TRIAL),
            quantity("moisture_from", "Moisture now", "ratio", default="11 %", low="2 %", high="28 %",
                     usual=("5 %", "15 %"), when=_METER, role=TRIAL),
            quantity("moisture_to", "Moisture later", "ratio", default="7 %", low="2 %", high="28 %",
                     usual=("5 %", "15 %"), when=_METER, role=TRIAL),
            quantity("moisture_now", "Meter reading of this piece", "ratio", default="", low="2 %",
                     high="40 %", usual=("5 %", "15 %"),
                     help="Bare wood. Empty if not measured: then nothing is said of waiting.", optional=True,
                     when=_AIR),
        ),
    ),
    results=(
        result("moisture_from", "Moisture at the start", "ratio"),
        result("moisture_to", "Moisture at the end", "ratio"),
        result("tangential", "Change along the rings", "thickness", "More than zero: it swells."),
        result("radial", "Change across the rings", "thickness"),
        result("change", "Change as it is cut", "thickness"),
        result("other_change", "Change of what it is glued to", "thickness"),
        result("apart", "The two move apart by", "thickness"),
        result("interference_left", "Interference then", "thickness"),
        result("still_to_move", "Still to move until at rest here", "thickness",
               "From the meter's reading to what the wood settles at."),
    ),
    acted_on=("change", "other_change", "apart", "interference_left"),
    cautions=CAUTIONS,
    sources=("bench-practice", "simpson-1998", "wood-handbook-moisture", "wood-handbook-movement",
             "wood-handbook-shrinkage", "wood-movement-pages"),
    example="An invented overlay of hard maple, 1 3/8 in wide, for a black walnut riser; glued at 60 % "
            "humidity and kept in a house at 35 %.",
    first=("job", "size", "interference", "wood", "own_tangential", "own_radial", "other_wood",
           "other_tangential", "other_radial", "humidity_from", "humidity_to", "moisture_from",
           "moisture_to"),
    compute=compute,
)
