"""How a bow stands, in the few words that a list of bows has room for."""

from calc.outcome import (
    STOP,
    Check,
    Sentence,
    amount,
    sentence,
)
from calc.record import derive, steps
from calc.record.fold import State
from calc.record.values import latest_number

NOT_KNOWN = "not known"


def title(state: State) -> str:
    """Return what a bow is called: its tag and a few words.

    Args:
        state: of a record.

    Returns:
        words; they hold nothing that is private.
    """
    tag, words = state.latest("bow.tag"), state.latest("bow.title")
    parts = [each.text for each in (tag, words) if each is not None]
    return " ".join(parts) if parts else "A bow without a tag"


def weights(state: State) -> Sentence | str:
    """Return in a sentence what a bow pulled as it came, what was agreed and what it pulls now.

    Args:
        state: of a record.

    Returns:
        one sentence.
    """
    came, now = derive.weight_as_it_came(state), derive.weight_now(state)
    agreed, at_draw = latest_number(state, "agreed.weight"), latest_number(state, "agreed.at_draw")
    if came is None or now is None:
        return "Its weight has not been read."
    text, amounts = "Came at {}", [amount("force", came.force)]
    if agreed is not None and at_draw is not None and abs(at_draw - now.draw) <= derive.SAME_DRAW:
        text, amounts = text + ", agreed {}", amounts + [amount("force", agreed)]
    if now.entry.id != came.entry.id:
        text, amounts = text + ", last read {}", amounts + [amount("force", now.force)]
    return sentence(text + " at {}.", *(amounts + [amount("length", now.draw)]))


def is_stopped(found: tuple[Check, ...]) -> bool:
    """Return whether a check of the whole record says stop.

    Args:
        found: all its checks.

    Returns:
        true or false.
    """
    return any(each.level == STOP for each in found)


def whats_next(state: State) -> str:
    """Return in one line what comes next for a bow, and why.

    Args:
        state: of a record.

    Returns:
        the step's title with what is missing.
    """
    found = steps.next_step(state)
    return found.why if found.step is None else found.step.title + ": " + found.why
