"""The log of strokes as a calculator asks for it: its rows, and what was read when it began and ended."""

from calc.quantities import INCH
from calc.record import derive
from calc.record.derived_fact import Derived, Told
from calc.record.derived_limbs import GLASS, SECTIONS, lost_between
from calc.record.entries import Entry
from calc.record.exact import exact_text
from calc.record.fold import State
from calc.tables.grits import LIMB_PAPERS, PAPERS
from calc.tables.string_places import PLACES

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

MOST_ROWS = 40


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
        return Told() if first is None or newest is None else lost_between(state, limb, first, newest)
    return work


STROKES: dict[str, Derived] = {
    "stroke_log": Derived("rows", _stroke_log, "Write down each batch of strokes and a reading of weight and "
                          "tiller after it."),
    "stroke_offsets": Derived("rows", _stroke_offsets, "Read where the string runs with weight and tiller, "
                              "on the sheet “A reading”."),
    "last_paper": Derived("choice", _last_paper, "Name the paper on the sheet “Strokes”, such as P220."),
    "strokes_since_read": Derived("count", _strokes_since_read, "Read glass and sections on the sheet “A "
                                  "reading”; strokes are counted from there."),
    "upper_lost_in_log": Derived("thickness", _lost_in_log("upper"), SECTIONS + " Read the same places "
                                 "again after the last batch."),
    "lower_lost_in_log": Derived("thickness", _lost_in_log("lower"), SECTIONS + " Read the same places "
                                 "again after the last batch."),
    "glass_back_in_log": Derived("thickness", _since_log("glass_back"), GLASS + " again after the last "
                                 "batch."),
    "glass_belly_in_log": Derived("thickness", _since_log("glass_belly"), GLASS + " again after the last "
                                  "batch."),
    "stations_upper_at_log": Derived("rows", _at_log("stations_upper"), SECTIONS),
    "stations_lower_at_log": Derived("rows", _at_log("stations_lower"), SECTIONS),
    "glass_back_at_log": Derived("thickness", _at_log("glass_back"), GLASS + " before the first stroke of "
                                 "the log."),
    "glass_belly_at_log": Derived("thickness", _at_log("glass_belly"), GLASS + " before the first stroke of "
                                  "the log."),
}
