"""Facts that nobody typed, as texts for a calculator's form: each says from which entry it comes."""

from calc.mechanics.draw_curve import curve_from_readings, force_at
from calc.quantities import INCH, POUND_FORCE, ROUNDING
from calc.record import checks, derive, finishing
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.record.moments import short_day
from calc.record.values import is_on, latest_number, number_in, rows_of
from calc.tables.grits import LIMB_PAPERS, PAPERS
from calc.tables.string_places import PLACES
from calc.tables.woods import CORE_WOODS, RISER_WOODS, WOODS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

    Rows = tuple[tuple[float, ...], ...]

TENTHS = POUND_FORCE / 10
"""To which a weight between two readings of a curve is told: readings are no better."""

STANDARD_DRAW = 28 * INCH
SAME_PLACE = INCH / 32
NEAR_FADEOUT = 3 * INCH
"""Sections as near to the fadeout as this show the width there."""

MOST_ROWS = 40
OTHER_NAMES = (("hard maple", "sugar-maple"), ("sugar maple", "sugar-maple"), ("hickory", "shagbark-hickory"),
               ("walnut", "black-walnut"), ("cherry", "black-cherry"), ("ash", "white-ash"))
"""What people write for a wood of the table."""


class Told:
    """What a record tells of an input: its text, the entry, whether that is stale, and how it came about."""

    def __init__(self, text: str = "", entry: Entry | None = None, stale: bool = False, said: str = ""):
        self.text = text
        self.entry = entry
        self.stale = stale
        self.said = said


class Asked:
    """What a form asks by: the id of its input, and the texts that stand on it by input."""

    def __init__(self, input: str, chosen: dict[str, str]):
        self.input = input
        self.chosen = chosen


class Derived:
    """A fact that is worked out.

    kind: as an input's. work: from the state alone. how: what has to be written down for it. by_form: the
    work, where it hangs on what the form asks.
    """

    def __init__(
        self,
        kind: str,
        work: "Callable[[State], Told] | None",
        how: str,
        by_form: "Callable[[State, Asked], Told] | None" = None,
    ):
        self.kind = kind
        self.how = how
        self._work = work
        self._by_form = by_form

    def told(self, state: State, asked: Asked) -> Told:
        """Return what a record tells of it."""
        if self._by_form is not None:
            return self._by_form(state, asked)
        return self._work(state) if self._work is not None else Told()


# Weight and tiller ---------------------------------------------------------------


def _tiller(state: State) -> Told:
    found = derive.newest_tiller(state)
    if found is None:
        return Told()
    stale = derive.is_stale_in(state, "reading.upper", found[1])
    return Told(exact_text(found[0], "length", "in", INCH), found[1], stale)


def _of_weight(state: State, weight: derive.Weight | None, name: str, may_be_stale: bool = True) -> Told:
    if weight is None:
        return Told()
    stale = may_be_stale and derive.is_stale_in(state, "reading.weight", weight.entry)
    return Told(weight.entry.fact(name), weight.entry, stale)


def _weight_now(state: State) -> Told:
    return _of_weight(state, derive.weight_now(state), "weight")


def _draw_now(state: State) -> Told:
    return _of_weight(state, derive.weight_now(state), "at_draw", False)


def _weight_as_it_came(state: State) -> Told:
    now = derive.weight_now(state)
    return _of_weight(state, derive.first_at(state, now.draw) if now else None, "weight", False)


def _weight_wanted(state: State) -> Told:
    """Return the weight agreed, where it was agreed at the draw at which the bow is read."""
    found, now = state.latest("agreed.weight"), derive.weight_now(state)
    if found is None:
        return Told()
    at_draw = number_in(found.entry, "at_draw")
    if at_draw is None or (now is not None and abs(at_draw - now.draw) > derive.SAME_DRAW):
        return Told()
    return Told(found.text, found.entry)


def _weight_at_archers_draw(state: State) -> Told:
    draw = latest_number(state, "archer.draw")
    return Told() if draw is None else _weight_at(state, draw, True)


def _lived_weight(state: State) -> Told:
    draw = latest_number(state, "archer.draw")
    return Told() if draw is None else _weight_at(state, draw, False)


def _weight_now_at_28(state: State) -> Told:
    return _weight_at(state, STANDARD_DRAW, True)


def _weight_came_at_28(state: State) -> Told:
    return _weight_at(state, STANDARD_DRAW, False)


def _weight_at(state: State, draw: float, newest: bool) -> Told:
    """Return the newest or the first weight at a draw: read there, else from a curve that reaches it.

    A slope that nobody measured would be a guess.
    """
    found: list[tuple[Entry, Told]] = []
    for weight in derive.weights(state):
        if abs(weight.draw - draw) <= derive.SAME_DRAW:
            found.append((weight.entry, _of_weight(state, weight, "weight", newest)))
    for entry in state.of("reading"):
        told = _from_curve(state, entry, draw, newest)
        if told.text:
            found.append((entry, told))
    found.sort(key=lambda each: (each[0].moment, each[0].id))
    return found[-1 if newest else 0][1] if found else Told()


def _from_curve(state: State, entry: Entry, draw: float, newest: bool) -> Told:
    rows = rows_of(entry, "curve")
    draws, forces = tuple([row[0] for row in rows]), tuple([row[1] for row in rows])
    rises = all(before < after for before, after in zip(draws, draws[1:]))
    if len(rows) < 2 or not rises or not draws[0] - ROUNDING <= draw <= draws[-1] + ROUNDING:
        return Told()
    curve = curve_from_readings(draws, forces, tuple([0.0 for _ in rows]))
    force = force_at(curve, min(max(draw, draws[0]), draws[-1]))
    stale = newest and derive.is_stale_in(state, "reading.curve", entry)
    return Told(exact_text(TENTHS * int(force / TENTHS + 0.5), "force", "lb", POUND_FORCE), entry, stale,
                "from the draw curve of " + short_day(entry.at))


# Draw curves and shots -----------------------------------------------------------


def _curve_now(state: State) -> Told:
    found = state.latest("reading.curve")
    return Told() if found is None else Told(found.text, found.entry, derive.is_stale(state, "reading.curve"))


def _curve_came(state: State) -> Told:
    found = state.first("reading.curve")
    return Told() if found is None else Told(found.text, found.entry)


def _curve_basis(state: State) -> Told:
    """Return how draws are stated: a record has one way, that in which bows are marked."""
    found = state.latest("reading.curve")
    return Told() if found is None else Told("marked", found.entry)


def _of_shot(state: State, asked: Asked, name: str) -> Told:
    """Return an arrow or its speed from a shot that goes with what the form asks for, before or after."""
    losses = asked.chosen.get("losses", "")
    shots = [each for each in state.of("reading") if each.fact("shot_mass") and each.fact("shot_speed")]
    if not shots or losses not in ("chronograph", "chronograph_before"):
        return Told()
    if losses == "chronograph":
        stale = derive.is_stale_in(state, "reading.shot_speed", shots[-1])
        return Told(shots[-1].fact(name), shots[-1], stale)
    return Told(shots[0].fact(name), shots[0])


def _shot_mass(state: State, asked: Asked) -> Told:
    return _of_shot(state, asked, "shot_mass")


def _shot_speed(state: State, asked: Asked) -> Told:
    return _of_shot(state, asked, "shot_speed")


def _bend(state: State, asked: Asked) -> Told:
    """Return the bend of the test that the form asks for: the two tests are not one another's."""
    known = asked.chosen.get("shaft_known", "")
    found = state.latest("arrow." + known) if known in ("deflection_28", "deflection_26") else None
    return Told() if found is None else Told(found.text, found.entry)


# Strokes -------------------------------------------------------------------------


def _stroke_log(state: State) -> Told:
    """Return the log as Strokes takes it: both limbs, weight, tiller and paper, a row a reading."""
    log = derive.stroke_log(state)[-MOST_ROWS:]
    if not log:
        return Told()
    rows = []
    names = _paper_names([batch.paper if batch else "" for batch, _ in log])
    for index, (batch, entry) in enumerate(log):
        counted = batch is not None and index > 0
        counts = [str(batch.upper), str(batch.lower)] if batch is not None and counted else ["0", "0"]
        tiller = exact_text(derive.tiller(entry) or 0.0, "length", "in", INCH)
        rows.append(":".join(counts + [entry.fact("weight"), tiller, names[index]]))
    last = log[-1][1]
    return Told(";".join(rows), last, derive.is_stale_in(state, "reading.weight", last))


def _stroke_offsets(state: State) -> Told:
    """Return the string's offsets for the rows of the stroke log."""
    log = [entry for _, entry in derive.stroke_log(state)[-MOST_ROWS:]]
    read = derive.line_of_log(state, log)
    rows = [":".join([str(place + 1)] + [found[name].fact(name) if name in found else ""
                                         for _, name, _ in PLACES])
            for place, found in enumerate(read) if found]
    if not rows:
        return Told()
    last = max([each for found in read for each in found.values()], key=lambda each: (each.moment, each.id))
    stale = any(derive.is_stale_in(state, "reading." + name, last) for _, name, _ in PLACES)
    return Told(";".join(rows), last, stale)


def _paper_names(papers: list[str]) -> list[str]:
    """Return the papers of a log in the words of its form; the first row bears the first paper's name."""
    known = [each.strip().lower().replace(" ", "") for each in papers]
    said = [each for each in known if each]
    before = said[0] if said else ""
    names = [before if before in PAPERS else "same"]
    for paper in known[1:]:
        if not paper or paper == before:
            names.append("same")
        else:
            names.append(paper if paper in PAPERS else "new")
            before = paper
    return names


def _last_paper(state: State) -> Told:
    found = state.latest("strokes.paper")
    paper = found.text.strip().lower() if found else ""
    return Told(paper, found.entry) if found and paper in LIMB_PAPERS else Told()


def _strokes_since_read(state: State) -> Told:
    """Return how many strokes came off since glass or sections were read, whichever is the older."""
    read = [state.latest(fact) for fact in derive.SECTIONS]
    known = [each.entry for each in read if each is not None]
    if not known:
        return Told()
    oldest = min(known, key=lambda each: (each.moment, each.id))
    upper, lower = derive.strokes_in(state.since("strokes", oldest))
    return Told(str(upper + lower), oldest)


def _weight_when_read(state: State) -> Told:
    """Return the weight at which glass and sections were read: none came off between the two readings."""
    read = [state.latest(fact) for fact in derive.SECTIONS]
    known = [each.entry for each in read if each is not None]
    now = derive.weight_now(state)
    if not known or now is None:
        return Told()
    oldest = min(known, key=lambda each: (each.moment, each.id))
    behind = [each.id for each in state.since("strokes", oldest)]
    for weight in reversed(derive.weights(state)):
        alike = abs(weight.draw - now.draw) <= derive.SAME_DRAW
        if alike and [each.id for each in state.since("strokes", weight.entry)] == behind:
            return Told(weight.entry.fact("weight"), weight.entry)
    return Told()


def _thickness_lost(limb: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        fact = "reading.stations_" + limb
        first, newest = state.first(fact), state.latest(fact)
        if first is None or newest is None:
            return Told()
        return _lost_between(state, limb, first.entry, newest.entry)
    return work


def _lost_between(state: State, limb: str, first: Entry, newest: Entry) -> Told:
    """Return the mean thickness that a limb lost between two readings of its sections."""
    lost = []
    for before in rows_of(first, "stations_" + limb):
        for after in rows_of(newest, "stations_" + limb):
            if abs(before[0] - after[0]) <= SAME_PLACE:
                lost.append(before[2] - after[2])
    if not lost or sum(lost) < 0 or first.id == newest.id:
        return Told()
    return Told(_thousandths(sum(lost) / len(lost)), newest,
                derive.is_stale(state, "reading.stations_" + limb),
                "mean of " + str(len(lost)) + " places read twice")


def _with_strokes_of(state: State, fact: str, row: Entry) -> Entry | None:
    """Return the newest reading of a fact that no strokes part from a row of the log."""
    sheet, _, name = fact.partition(".")
    done = [each.id for each in state.since("strokes", row)]
    for entry in reversed(state.of(sheet)):
        if entry.fact(name) and [each.id for each in state.since("strokes", entry)] == done:
            return entry
    return None


def _at_log(name: str) -> "Callable[[State], Told]":
    """Return the work: what was read when the log of strokes began."""
    def work(state: State) -> Told:
        log = derive.stroke_log(state)[-MOST_ROWS:]
        entry = _with_strokes_of(state, "reading." + name, log[0][1]) if log else None
        return Told() if entry is None else Told(entry.fact(name), entry)
    return work


def _since_log(name: str) -> "Callable[[State], Told]":
    """Return the work: what was read again at the last row of the log of strokes."""
    def work(state: State) -> Told:
        log = derive.stroke_log(state)[-MOST_ROWS:]
        fact = "reading." + name
        entry = _with_strokes_of(state, fact, log[-1][1]) if log else None
        if entry is None or not derive.strokes_between(state, log[0][1], entry):
            return Told()
        return Told(entry.fact(name), entry, derive.is_stale_in(state, fact, entry))
    return work


def _lost_in_log(limb: str) -> "Callable[[State], Told]":
    """Return the work: the thickness that a limb lost over the log of strokes."""
    def work(state: State) -> Told:
        log = derive.stroke_log(state)[-MOST_ROWS:]
        fact = "reading.stations_" + limb
        first = _with_strokes_of(state, fact, log[0][1]) if log else None
        newest = _with_strokes_of(state, fact, log[-1][1]) if log else None
        return Told() if first is None or newest is None else _lost_between(state, limb, first, newest)
    return work


# The limbs -----------------------------------------------------------------------


def _glass_came(face: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        found = state.first("reading.glass_" + face)
        return Told() if found is None else Told(found.text, found.entry)
    return work


def _glass_new(state: State) -> Told:
    """Return the glass of the bow when it was new; of two faces the thicker, which leaves more standing."""
    best = Told()
    most = 0.0
    for fact in ("bow.glass_back_new", "bow.glass_belly_new"):
        found, number = state.latest(fact), latest_number(state, fact)
        if found is not None and number is not None and number > most:
            best, most = Told(found.text, found.entry), number
    return best


def _width_fadeout(state: State) -> Told:
    typed = state.latest("reading.width_fadeout")
    if typed is not None:
        return Told(typed.text, typed.entry, derive.is_stale(state, "reading.width_fadeout"))
    widths, entry = [], None
    for limb in ("upper", "lower"):
        found = state.latest("reading.stations_" + limb)
        rows = rows_of(found.entry, "stations_" + limb) if found else ()
        if found is not None and rows and rows[0][0] <= NEAR_FADEOUT:
            widths.append(rows[0][1])
            entry = found.entry
    if entry is None:
        return Told()
    return Told(exact_text(sum(widths) / len(widths), "length", "in", INCH), entry, False,
                "from the sections next to the fadeout")


def _limb_thickness(state: State) -> Told:
    """Return the mean thickness of both limbs along the stretch over which they were read."""
    means, entry, stale = [], None, False
    for limb in ("upper", "lower"):
        fact = "reading.stations_" + limb
        found = state.latest(fact)
        mean = _mean_thickness(rows_of(found.entry, "stations_" + limb)) if found else None
        if found is None or mean is None:
            return Told()
        means.append(mean)
        entry, stale = found.entry, stale or derive.is_stale(state, fact)
    return Told(_thousandths(sum(means) / len(means)), entry, stale, "mean of the sections of both limbs")


def _mean_thickness(rows: "Rows") -> float | None:
    stretch = rows[-1][0] - rows[0][0] if rows else 0.0
    if stretch <= 0 or any(after[0] <= before[0] for before, after in zip(rows, rows[1:])):
        return None
    return sum([(after[0] - before[0]) * (before[2] + after[2]) / 2
                for before, after in zip(rows, rows[1:])]) / stretch


def _thousandths(value: float) -> str:
    step = INCH / 10000
    return exact_text(step * int(value / step + 0.5), "thickness", "in", INCH)


def _edge_now(state: State) -> Told:
    found = state.latest("edges.radius") or state.latest("bow.edge_radius")
    return Told() if found is None else Told(found.text, found.entry)


def _height_riser(limb: str) -> "Callable[[State], Told]":
    """Return the work: the height typed or the tiller distance at the fadeout, whichever is the newer."""
    def work(state: State) -> Told:
        typed, read = state.latest("reading." + limb + "_height_riser"), state.latest("reading." + limb)
        if read is not None and _place_of(state, read.entry) == "fadeout" and (
                typed is None or _is_later(read.entry, typed.entry)):
            return Told(read.text, read.entry, derive.is_stale(state, "reading." + limb),
                        "the tiller distance, read at the fadeout")
        if typed is None:
            return Told()
        return Told(typed.text, typed.entry, derive.is_stale(state, "reading." + limb + "_height_riser"))
    return work


def _place_of(state: State, reading: Entry) -> str:
    """Return where the tiller distances of a reading were taken: as before, where it does not say."""
    said = [each.fact("measured") for each in state.of("reading")
            if each.fact("measured") and not _is_later(each, reading)]
    return said[-1] if said else ""


def _is_later(one: Entry, other: Entry) -> bool:
    return (one.moment, one.id) > (other.moment, other.id)


# Words ---------------------------------------------------------------------------


def _wood(fact: str, woods: tuple[str, ...], own: str) -> "Callable[[State], Told]":
    def work(state: State) -> Told:
        found, strength = state.latest(fact), state.latest(own)
        wood = wood_called(found.text) if found else ""
        if found is not None and wood in woods:
            return Told(wood, found.entry)
        return Told("own", strength.entry) if strength is not None else Told()
    return work


def wood_called(words: str) -> str:
    """Return the id of the wood that somebody wrote down.

    Args:
        words: as typed.

    Returns:
        id of a row of the table of woods; empty where it has none of that name.
    """
    plain = words.strip().lower()
    name: str
    id: str
    for name, id in OTHER_NAMES + tuple([(each.name.lower(), each.id) for each in WOODS]):
        if plain in (name, id):
            return id
    return ""


def _lettered(state: State) -> Told:
    typed, words = state.latest("agreed.lettered"), state.latest("agreed.lettering")
    if typed is not None:
        return Told(typed.text, typed.entry)
    return Told("yes", words.entry, False, "lettering was agreed") if words is not None else Told()


def _laid(state: State) -> Told:
    laid = finishing.coat_entries(state)
    return Told(finishing.laid_text(laid), laid[-1]) if laid else Told()


def _look(state: State, asked: Asked) -> Told:
    """Return whether a part has been looked at; what an inspection does not name was not looked at."""
    looked = state.of("look")
    if not looked:
        return Told()
    for entry in reversed(looked):
        if is_on(entry, asked.input):
            return Told("yes", entry, derive.is_stale_in(state, "look." + asked.input, entry))
    return Told("no", looked[-1])


def _finding(state: State, asked: Asked) -> Told:
    """Return whether a finding stands open; without any inspection nobody knows."""
    if any(each.id == asked.input for each in checks.open_findings(state)):
        entry = [each for each in state.of("finding") if each.fact("which") == asked.input][-1]
        return Told("yes", entry)
    looked = state.of("look")
    return Told("no", looked[-1]) if looked else Told()


_BOTH = "Read draw weight with its draw on the sheet “A reading”"
_CURVE = "Read weight at several draws on the sheet “A reading”: the draw curve."
_SECTIONS = "Read the sections of both limbs on the sheet “A reading”, with a micrometer."
_GLASS = "Read the glass at the limb's edge with a lens"
_INSPECT = "Inspect it, and tick on the sheet “An inspection” what has been looked at."

DERIVED = {
    "tiller": Derived("length", _tiller, "Read upper and lower tiller distance in one reading."),
    "weight_now": Derived("force", _weight_now, _BOTH + "."),
    "draw_now": Derived("length", _draw_now, _BOTH + "."),
    "weight_as_it_came": Derived("force", _weight_as_it_came, _BOTH + " before anything comes off."),
    "weight_wanted": Derived("force", _weight_wanted, "Agree draw weight and its draw on the sheet “What was "
                             "agreed”, at the draw at which the bow is read."),
    "weight_at_archers_draw": Derived("force", _weight_at_archers_draw, _BOTH + " at the archer's draw, or a "
                                      "draw curve that reaches it, and the archer's draw."),
    "lived_weight": Derived("force", _lived_weight, _BOTH + " at the archer's draw before anything comes "
                            "off."),
    "weight_now_at_28": Derived("force", _weight_now_at_28, _BOTH + " at 28 in, or a draw curve that reaches "
                                "it."),
    "weight_came_at_28": Derived("force", _weight_came_at_28, _BOTH + " at 28 in before anything comes off."),
    "curve_now": Derived("rows", _curve_now, _CURVE),
    "curve_came": Derived("rows", _curve_came, _CURVE),
    "curve_basis": Derived("choice", _curve_basis, _CURVE),
    "shot_mass": Derived("mass", None, "Weigh the arrow that goes over the chronograph.",
                         _shot_mass),
    "shot_speed": Derived("speed", None, "Read a chronograph at the archer's draw.", _shot_speed),
    "bend": Derived("thickness", None, "Hang the test's weight on the shaft and read its bend: sheet “The "
                    "arrow”.", _bend),
    "stroke_log": Derived("rows", _stroke_log, "Write down each batch of strokes and a reading of weight and "
                          "tiller after it."),
    "stroke_offsets": Derived("rows", _stroke_offsets, "Read where the string runs with weight and tiller, "
                              "on the sheet “A reading”."),
    "last_paper": Derived("choice", _last_paper, "Name the paper on the sheet “Strokes”, such as P220."),
    "strokes_since_read": Derived("count", _strokes_since_read, "Read glass and sections on the sheet “A "
                                  "reading”; strokes are counted from there."),
    "weight_when_read": Derived("force", _weight_when_read, _BOTH + " when glass and sections are read."),
    "upper_lost": Derived("thickness", _thickness_lost("upper"), _SECTIONS + " Read the same places again."),
    "lower_lost": Derived("thickness", _thickness_lost("lower"), _SECTIONS + " Read the same places again."),
    "upper_lost_in_log": Derived("thickness", _lost_in_log("upper"), _SECTIONS + " Read the same places "
                                 "again after the last batch."),
    "lower_lost_in_log": Derived("thickness", _lost_in_log("lower"), _SECTIONS + " Read the same places "
                                 "again after the last batch."),
    "glass_back_in_log": Derived("thickness", _since_log("glass_back"), _GLASS + " again after the last "
                                 "batch."),
    "glass_belly_in_log": Derived("thickness", _since_log("glass_belly"), _GLASS + " again after the last "
                                  "batch."),
    "stations_upper_at_log": Derived("rows", _at_log("stations_upper"), _SECTIONS),
    "stations_lower_at_log": Derived("rows", _at_log("stations_lower"), _SECTIONS),
    "glass_back_at_log": Derived("thickness", _at_log("glass_back"), _GLASS + " before the first stroke of "
                                 "the log."),
    "glass_belly_at_log": Derived("thickness", _at_log("glass_belly"), _GLASS + " before the first stroke of "
                                  "the log."),
    "glass_back_came": Derived("thickness", _glass_came("back"), _GLASS + " before anything comes off."),
    "glass_belly_came": Derived("thickness", _glass_came("belly"), _GLASS + " before anything comes off."),
    "glass_new": Derived("thickness", _glass_new, "Only where it is known: sheet “The bow”."),
    "width_fadeout": Derived("length", _width_fadeout, _SECTIONS),
    "limb_thickness": Derived("thickness", _limb_thickness, _SECTIONS),
    "edge_now": Derived("length", _edge_now, "Try radius gauges on the edges: sheet “The bow”; 0 while they "
                        "are sharp."),
    "upper_height_riser": Derived("length", _height_riser("upper"), "Read the upper tiller distance at the "
                                  "fadeout, and say so."),
    "lower_height_riser": Derived("length", _height_riser("lower"), "Read the lower tiller distance at the "
                                  "fadeout, and say so."),
    "core": Derived("choice", _wood("bow.core", tuple([id for id, _ in CORE_WOODS]), "bow.core_modulus"),
                    "Name the core's wood as the table of woods does, or give its modulus: sheet “The bow”."),
    "riser_wood": Derived("choice", _wood("bow.riser_wood", RISER_WOODS, "bow.riser_strength"), "Name the "
                          "riser's wood as the table of woods does, or give its strength: sheet “The bow”."),
    "lettered": Derived("switch", _lettered, "Say on the sheet “What was agreed” whether it is lettered."),
    "laid": Derived("rows", _laid, "Write down each coat when it is laid: sheet “A coat laid”."),
    "look": Derived("switch", None, _INSPECT, _look),
    "finding": Derived("switch", None, _INSPECT, _finding),
}
"""By name."""
