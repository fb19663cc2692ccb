"""What the log of strokes foretells for a reading, beside what was read."""

from calc.numerics.least_squares import FittedLine, lines_by_paper, value_on
from calc.numerics.normal import NORMAL_95
from calc.outcome import OK, WATCH, Sentence, amount, sentence
from calc.record import derive, sheets
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.values import is_on, latest_number, value_of

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    Rows = list[tuple[derive.Batch | None, Entry]]

WEIGHT_ERROR = "shop.weight_error"
TILLER_ERROR = "shop.tiller_error"


class Foretold:
    """What a reading should be after strokes.

    weight [N], tiller [m]: value and half the range that holds 95 of 100 readings; None where the log
    foretells none. why: nothing is foretold, in a sentence; else empty.
    """

    def __init__(
        self,
        weight: tuple[float, float] | None,
        tiller: tuple[float, float] | None = None,
        batch: derive.Batch | None = None,
        why: str = "",
    ):
        self.weight = weight
        self.tiller = tiller
        self.batch = batch
        self.why = why


class Beside:
    """A reading beside what was foretold.

    level: OK as foretold, WATCH where it is not, empty where nothing was foretold or read.
    """

    def __init__(self, expected: Sentence | str, read: Sentence | str, level: str):
        self.expected = expected
        self.read = read
        self.level = level


def foretold(state: State, reading: Entry | None = None) -> Foretold:
    """Return what the log foretold for a reading, from what was read before it and the strokes since.

    One start and one slope a paper, as the calculator for strokes fits them; the error of one reading widens
    the range, and so do few readings.

    Args:
        state: of a record.
        reading: of the record; None: the one that is to be taken now.

    Returns:
        the ranges, or why there is none.
    """
    log = derive.stroke_log(state)
    if reading is None:
        if not log:
            return _nothing("no reading holds weight with its draw and both tiller distances")
        batch = derive.between(state, log[-1][1], None)
        before = log
    else:
        places = [place for place, row in enumerate(log) if row[1].id == reading.id]
        if not places or places[0] == 0:
            return _nothing("no reading at this draw stands before it on the same papers")
        batch, before = log[places[0]][0], log[:places[0]]
    if batch is None:
        return _nothing("strokes were made on several papers since the last reading")
    if batch.upper + batch.lower == 0:
        return _nothing("no strokes were made since the last reading")
    return _by_log(state, before, batch)


def _by_log(state: State, log: "Rows", batch: derive.Batch) -> Foretold:
    if any(is_on(each, "about") for each in state.since("strokes", log[0][1])):
        return _nothing("a count of strokes is a guess")
    papers = _papers([row[0] for row in log] + [batch])
    newest = papers[-1]
    names = sorted(set(papers))
    both, ahead = [0.0] * len(names), [0.0] * len(names)
    counts, leads = [], []
    for (done, _), paper in zip(log, papers):
        if done is not None:
            both[names.index(paper)] += done.upper + done.lower
            ahead[names.index(paper)] += done.upper - done.lower
        counts.append(tuple(both))
        leads.append(tuple(ahead))
    weights = tuple([_force(entry) for _, entry in log])
    line = _line(counts, weights, _error(state, WEIGHT_ERROR), names.index(newest))
    if line is None:
        return _nothing("two readings with strokes on " + (newest or "this paper")
                        + " between them are needed")
    if line.slope >= 0:
        return _nothing("by the log the weight does not come down with strokes")
    weight = _range(line, sum(both) + batch.upper + batch.lower, _error(state, WEIGHT_ERROR))
    tillers = tuple([derive.tiller(entry) or 0.0 for _, entry in log])
    lean = _line(leads, tillers, _error(state, TILLER_ERROR), names.index(newest))
    tiller = None
    if lean is not None and lean.slope > 0:
        tiller = _range(lean, sum(ahead) + batch.upper - batch.lower, _error(state, TILLER_ERROR))
    return Foretold(weight, tiller, batch)


def _line(
    counts: list[tuple[float, ...]], read: tuple[float, ...], error: float, paper: int
) -> FittedLine | None:
    """Return the line of a paper; None where no strokes on it stand between readings."""
    if all(max(column) == min(column) for column in zip(*counts)):
        return None
    return lines_by_paper(tuple(counts), read, error).lines[paper]


def _range(line: FittedLine, strokes: float, error: float) -> tuple[float, float]:
    value, of_line = value_on(line, strokes)
    return value, NORMAL_95 * (of_line * of_line + error * error) ** 0.5


def _papers(batches: list[derive.Batch | None]) -> list[str]:
    """Return the paper of each batch; where none is named it is the one before."""
    found = []
    before = next((each.paper for each in batches if each is not None and each.paper), "")
    for each in batches:
        before = (each.paper if each is not None else "") or before
        found.append(before)
    return found


def _force(entry: Entry) -> float:
    return float(str(value_of("reading.weight", entry.fact("weight"))))


def _error(state: State, fact: str) -> float:
    known = latest_number(state, fact)
    asked = sheets.input_of(fact)
    if known or asked is None:
        return known or 0.0
    return float(str(value_of(fact, asked.default)))


def _nothing(why: str) -> Foretold:
    return Foretold(None, why="Nothing was foretold: " + why + ".")


# In words ------------------------------------------------------------------------


def beside(found: Foretold, weight: float | None, tiller: float | None) -> Beside:
    """Return in words what was foretold, and whether what was read is that.

    Args:
        found: what was foretold.
        weight [N]: read; None: not yet.
        tiller [m]: read; None: not yet.

    Returns:
        sentences and a level.
    """
    if found.weight is None:
        return Beside(found.why, "", "")
    low, high = found.weight[0] - found.weight[1], found.weight[0] + found.weight[1]
    text = "Foretold by the log: {} to {}"
    amounts = [amount("force", low), amount("force", high)]
    if found.tiller is not None:
        text += ", tiller {} to {}"
        amounts += [amount("length", found.tiller[0] - found.tiller[1]),
                    amount("length", found.tiller[0] + found.tiller[1])]
    expected = sentence(text + ".", *amounts)
    template, apart = "", []
    for name, kind, read, expects in (("weight", "force", weight, found.weight),
                                      ("tiller", "length", tiller, found.tiller)):
        if read is None or expects is None or abs(read - expects[0]) <= expects[1]:
            continue
        template += "The " + name + " is {} " + ("less" if read < expects[0] else "more") + " than foretold. "
        apart.append(amount(kind, abs(read - expects[0])))
    if apart:
        return Beside(expected, sentence(template + "Measure again before the next stroke.", *apart), WATCH)
    return Beside(expected, "", "") if weight is None else Beside(expected, "Read as foretold.", OK)
