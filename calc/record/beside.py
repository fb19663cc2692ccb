"""What a page shows of two things side by side: foretold and read, kept and today's."""

from calc.outcome import say
from calc.record import compared, derive
from calc.record.asked import pairs_in, state_in, units_in
from calc.record.entries import Entry
from calc.record.fold import State
from calc.record.foretold import Beside, beside, foretold
from calc.record.keep import PAIR_FACTS
from calc.record.moments import short_day, show_local
from calc.record.values import number_in

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from calc.record.asked import Asked

    Answer = dict[str, object]

TYPED = "zzzzzzzzzzzzzz"
"""The id of a reading that is in no record yet: it comes after all others."""


def foretold_answer(asked: "Asked") -> "Answer":
    """Return what the log foretells for a reading, beside what is typed for it or was read.

    Args:
        asked: as `calc.record.tasks` says of "foretold".

    Returns:
        "expected", "read", "level".
    """
    typed = [(name, text.strip()) for name, text in pairs_in(asked, "pairs") if text.strip()]
    reading = Entry(TYPED, "2099-12-31T00:00Z", "reading", tuple(typed)) if typed else None
    found = told(state_in(asked), reading)
    units = units_in(asked)
    return {"expected": say(found.expected, units), "read": say(found.read, units), "level": found.level}


def told(state: State, typed: Entry | None) -> Beside:
    """Return what the log foretells for a reading that is typed, for the next one, or foretold for the last.

    Args:
        state: of a record.
        typed: a reading that is in no record yet; None: the next one where strokes came since the last, else
            the last.

    Returns:
        what was foretold, beside what was read.
    """
    if typed is not None:
        if not _is_of_the_log(state, typed):
            return Beside("Nothing was foretold: the readings before it were taken at another draw.", "", "")
        return beside(foretold(state), number_in(typed, "weight"), derive.tiller(typed))
    log = derive.stroke_log(state)
    if not log or state.since("strokes", log[-1][1]):
        return beside(foretold(state), None, None)
    last = log[-1][1]
    return beside(foretold(state, last), number_in(last, "weight"), derive.tiller(last))


def _is_of_the_log(state: State, reading: Entry) -> bool:
    """Return whether a reading is at the draw of the log, or does not say at which."""
    draw, now = number_in(reading, "at_draw"), derive.weight_now(state)
    return draw is None or now is None or abs(draw - now.draw) <= derive.SAME_DRAW


def compare_answer(asked: "Asked") -> "Answer":
    """Return a kept answer, with what the record tells otherwise today.

    Args:
        asked: as `calc.record.tasks` says of "compare".

    Returns:
        what that says.

    Raises:
        ValueError: the record keeps no such answer.
    """
    state = state_in(asked)
    kept = [each for each in state.of("answer") if each.id == asked["entry"]]
    if not kept:
        raise ValueError("no answer of the id " + str(asked["entry"]) + " is kept")
    entry = kept[0]
    changed = compared.changed(state, entry)
    named = [each.now.input for each in changed]
    old = [each for each in compared.stale(state, entry) if each.input not in named]
    return {"calculator": entry.fact("calculator"), "moment": show_local(entry.at),
            "headline": entry.fact("headline"),
            "figures": "&".join([entry.fact(name) for name in PAIR_FACTS if entry.fact(name)]),
            "changed": [{"input": each.now.input, "was": each.was, "now": each.now.text,
                         "since": short_day(each.now.entry.at) if each.now.entry else "",
                         "stale": each.now.stale} for each in changed],
            "stale": [each.input for each in old]}
