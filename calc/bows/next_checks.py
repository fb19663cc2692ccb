"""What is said of the next batch: whether the readings go with what was foretold, what stands in the way."""

from calc.bows.learning import BACK, BELLY, Model, Spoken, Told, glass_row
from calc.bows.next_step import Aim, Left, Risk
from calc.bows.stroke_log import NEAR_TILLER
from calc.numerics.belief import Belief, product
from calc.outcome import OK, STOP, WATCH, Amount, Check, amount, check, sentence


class Step:
    """Where the bow stands and what comes next.

    weight, tiller: (most likely, standard error) now [N], [m]. end: tiller once all that is left is done [m].
    unread: whether no reading tells what the paper of the next batch takes.
    """

    def __init__(
        self, weight: tuple[float, float], tiller: tuple[float, float], end: float, left: Left,
        batch: tuple[float, float], risk: Risk, unread: bool,
    ) -> None:
        self.weight = weight
        self.tiller = tiller
        self.end = end
        self.left = left
        self.batch = batch
        self.risk = risk
        self.unread = unread

    @property
    def none(self) -> bool:
        """Whether there is no batch to do."""
        return self.batch == (0.0, 0.0)


def step_checks(
    model: Model, belief: Belief, aim: Aim, step: Step, share: float, amiss: bool
) -> tuple[Check, ...]:
    """Return what is said of glass, weight and tiller; amiss: the newest readings are to be taken again."""
    found = [_glass_check(model, belief, aim, step, share)]
    if not amiss or step.weight[0] <= aim.weight:
        found += _weight_checks(aim, step, share)
    if step.unread and not step.none:
        found.append(check("paper", WATCH, "No reading tells yet what this paper takes: the batch is half of "
                           "what is safe with one that takes three times as much as is likely (common "
                           "practice)."))
    off = abs(step.end - aim.tiller)
    if off > NEAR_TILLER and step.weight[0] > aim.weight:
        found.append(check("tiller", WATCH, sentence(
            "Tiller will not come in with the weight: {} is foretold at the end, {} from the {} wanted. "
            "Agree a lower weight, or a tiller nearer to this one, with the owner.",
            amount("length", step.end), amount("length", off), amount("length", aim.tiller))))
    return tuple(found)


class Newest:
    """One of the newest readings, by what it is of, beside what was foretold of it."""

    def __init__(self, id: str, name: str, kind: str, spoken: Spoken) -> None:
        self.id = id
        self.name = name
        self.kind = kind
        self.spoken = spoken

    @property
    def word(self) -> str:
        """Whether it is less or more than foretold."""
        return "less" if self.spoken.read < self.spoken.foretold else "more"

    @property
    def apart(self) -> float:
        """How far it is from what was foretold."""
        return abs(self.spoken.read - self.spoken.foretold)


def last_read(told: list[Told]) -> list[Newest]:
    """Return weight and tiller of the last row; none before the first batch."""
    return _of_row(told[-1]) if told else []


def _of_row(told: Told) -> list[Newest]:
    return [Newest("weight", "weight", "force", told.weight),
            Newest("tiller", "tiller", "length", told.tiller)]


def foretold_checks(told: list[Told], newest: list[Newest]) -> tuple[Check, ...]:
    """Return whether the readings go with what was foretold of them; nothing where nothing was."""
    found = []
    for each in newest:
        if each.spoken.beyond:
            found.append(check("foretold-" + each.id, WATCH, sentence(
                "The " + each.name + " is {} " + each.word + " than foretold, beyond what the errors allow "
                "({} to {}): measure again before the next stroke, and look both limbs over.", *_far(each))))
    for each, row in _of_earlier_rows(told):
        found.append(check("earlier-" + each.id, WATCH, sentence(
            "In row " + str(row) + " the " + each.name + " was {} " + each.word + " than foretold ({} to {}"
            "). Strokes counted wrong, another pressure, or a limb that gave way?", *_far(each))))
    if newest and not found:
        found.append(check("foretold", OK, "All readings lie within what was foretold of them."))
    return tuple(found)


def _of_earlier_rows(told: list[Told]) -> list[tuple[Newest, int]]:
    """Return the newest weight and tiller before the last row that were not as foretold, with their rows."""
    found: dict[str, tuple[Newest, int]] = {}
    for number, row in enumerate(told[:-1]):
        for each in _of_row(row):
            if each.spoken.beyond:
                found[each.id] = (each, number + 2)
    return [found[id] for id in ("weight", "tiller") if id in found]


def _far(each: Newest) -> tuple[Amount, Amount, Amount]:
    return (amount(each.kind, each.apart), amount(each.kind, each.spoken.low),
            amount(each.kind, each.spoken.high))


def _glass_check(model: Model, belief: Belief, aim: Aim, step: Step, share: float) -> Check:
    left = tuple([aim.glass[place] + product(glass_row(model, belief, face, aim.share_of(face)), belief.mean)
                  for place, face in ((0, BACK), (1, BELLY))])
    now = (amount("thickness", left[0]), amount("thickness", left[1]), amount("thickness", aim.least[0]),
           amount("thickness", aim.least[1]))
    if step.none and step.risk.back + step.risk.belly > share:
        return check("glass", STOP, sentence(
            "Stop: the glass may be too thin already. Once finished it is {} on the back and {} on the belly "
            "by the log, and no less than {} and {} may stay. Read it at the edge, at several places.", *now))
    if step.left.glass:
        return check("glass", STOP, sentence(
            "The weight cannot come down that far within the glass that must stay: once finished it is {} on "
            "the back and {} on the belly by the log, and no less than {} and {} may stay. Do not go on "
            "through the glass.", *now))
    return check("glass", OK, sentence(
        "Glass by the log, once finished: {} on the back and {} on the belly; no less than {} and {} may "
        "stay. Check it at the edge.", *now))


def _weight_checks(aim: Aim, step: Step, share: float) -> list[Check]:
    weight, gap = step.weight[0], step.weight[0] - aim.weight
    if gap <= 0:
        return [check("weight", STOP, "The weight is where it should be, the reserve for the edges included: "
                      "stop sanding the faces and go on to the edges.")]
    if step.none and step.risk.weight > share:
        return [check("weight", STOP, sentence(
            "Stop for the edges: {} are left to the aim of {}, less than can be told from none at the risk "
            "that you allow. Let the edges take it, or read the weight again and add a row without strokes.",
            amount("force", gap), amount("force", aim.weight)))]
    if step.none:
        return [check("weight", WATCH, sentence(
            "Less than a stroke on each limb is safe from {} to the aim of {}: read the weight again and add "
            "a row without strokes, or let the edges take what is left.", amount("force", weight),
            amount("force", aim.weight)))]
    return [check("risk", OK, sentence(
        "The next batch is the largest whose risk stays within {}: {} of ending below the aim of {}, {} of "
        "going below the glass that must stay.", amount("ratio", share), amount("ratio", step.risk.weight),
        amount("force", aim.weight), amount("ratio", step.risk.back + step.risk.belly)))]
