"""The steps of the job, and which of them comes next for a bow."""

from calc.quantities import INCH, POUND_FORCE
from calc.record import checks, derive
from calc.record.fold import State
from calc.record.values import latest_number
from calc.tables.findings import REPAIR, SHOOT, WALL

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Callable

JOB = "begin/"
"""The page that is made from these steps."""

WEIGHT_MET = POUND_FORCE / 2
TILLER_MET = INCH / 16
"""How near a reading comes to what was agreed before a step is done (common practice)."""


class Step:
    """A step of the job.

    heading: its heading on the page of the whole job. calculators: ids, in the order in which they serve.
    done: whether a state has it behind itself. missing: what is not there where it is not done.
    """

    def __init__(
        self,
        id: str,
        title: str,
        calculators: tuple[str, ...],
        done: "Callable[[State], bool]",
        missing: str,
    ):
        self.id = id
        self.title = title
        self.calculators = calculators
        self.done = done
        self.missing = missing


class Next:
    """What comes next for a bow: the step, in a sentence why, and whether the job ends instead."""

    def __init__(self, step: Step | None, why: str):
        self.step = step
        self.why = why


def _taken_in(state: State) -> bool:
    return state.latest("bow.title") is not None or state.latest("bow.family") is not None


def _inspected(state: State) -> bool:
    return checks.verdict(state) in (SHOOT, REPAIR)


def _repaired(state: State) -> bool:
    return checks.verdict(state) == SHOOT


def _drawn(state: State) -> bool:
    return bool(state.of("first_draw"))


def _measured(state: State) -> bool:
    return bool(derive.weights(state)) and derive.newest_tiller(state) is not None


def _agreed(state: State) -> bool:
    return state.latest("agreed.weight") is not None


def _at_weight(state: State) -> bool:
    wanted, reserve = latest_number(state, "agreed.weight"), latest_number(state, "agreed.reserve") or 0.0
    now = derive.weight_now(state)
    if wanted is None or now is None or derive.is_stale(state, "reading.weight"):
        return False
    if now.force > wanted + reserve + WEIGHT_MET:
        return False
    tiller, aim = derive.newest_tiller(state), latest_number(state, "agreed.tiller")
    return tiller is None or aim is None or abs(tiller[0] - aim) <= TILLER_MET


def _handed_over(state: State) -> bool:
    return bool(state.of("handover"))


STEPS = (
    Step("intake", "Take the bow in", ("quote",), _taken_in, "What it is has not been written down."),
    Step("inspect", "Inspect it unstrung", ("inspection",), _inspected,
         "Its inspection is missing, or does not let it be strung."),
    Step("first-draw", "String and draw it from a safe place", ("string",), _drawn,
         "No draw from a distance is written down."),
    Step("measure", "Measure it", ("tiller", "draw-curve", "tracking", "bow-model"), _measured,
         "Weight with its draw, and both tiller distances of one reading, are missing."),
    Step("agree", "Agree the target", ("weight-reduction", "arrow-match", "quote"), _agreed,
         "No weight has been agreed with the owner."),
    Step("repair", "Make the repairs that come first", (), _repaired, "A finding waits for its repair."),
    Step("weight", "Bring the weight down", ("weight-reduction", "strokes", "tiller"), _at_weight,
         "Weight or tiller is not where it was agreed, or has not been read since the last strokes."),
    Step("shape", "Drill, set inserts, shape the grip", ("insert", "grip"), _handed_over,
         "Holes, inserts and grip: as far as they were asked for."),
    Step("sand", "Fill, round the edges, sand", ("grit",), _handed_over, "Edges and faces are to be sanded."),
    Step("finish", "Finish it", ("finish", "spray-air", "clear-air"), _handed_over,
         "The finish is to be laid, and has to cure."),
    Step("tune", "Tune it", ("tiller", "arrow-match", "string"), _handed_over,
         "Brace, tiller and arrows are to be read once more."),
    Step("hand-over", "Hand it over", (), _handed_over, "The owner has not got it back."),
)
"""In the order of the job; the page of the whole job has the same headings."""


def next_step(state: State) -> Next:
    """Return what comes next for a bow.

    Args:
        state: of a record.

    Returns:
        the first step that is not done, with what is missing; no step where the bow has left the bench or
        belongs on the wall.
    """
    if _handed_over(state):
        return Next(None, "It has been handed over.")
    if checks.verdict(state) == WALL:
        return Next(None, "It belongs on the wall: cut its string, and tell the owner.")
    if derive.deeds(state) and not checks.is_proved(state):
        return Next(STEPS[2], "It was worked on since it was last drawn from a distance.")
    for step in STEPS:
        if not step.done(state):
            return Next(step, step.missing)
    return Next(None, "Nothing is left to do.")
