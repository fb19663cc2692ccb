"""An offer in its owner's words: what a bow is to become, what is done, until when, what is promised.

No rate, no hours and no mark-up are in it; a price only where the one who makes it lets it go along.
"""

from calc.dates import show_day
from calc.outcome import Amount, Sentence, amount, say, sentence

PROMISED = (
    "You are asked before anything is done that is not named here.",
    "Nothing comes off the bow before you have said yes to these figures.",
    "If a crack, lifted glass or a parted layer is found, work stops and you are asked.",
    "At the end you are told what was measured, each figure with its day.",
)
NOT_PROMISED = (
    "Weight and tiller are targets: how close they can be met, the bow says.",
    "An old bow can break while it is worked on or drawn. Nobody can promise that it will not.",
    "A day is a plan: a finish hardens as slowly as the air lets it, and nobody strings the bow before.",
)
LAW = ("Where the law of the place gives you more than this, the law counts. It also says what an offer "
       "binds either side to.")
"""What is promised with an offer and what is not (common practice)."""

NO_END = "No day is named until which this holds: ask whether it still does."


class Offer:
    """What is offered, as far as it is known.

    weights [N], tillers [m]: now and wanted, each a number or None; draw [m]: at which both weights are
    stated. tasks, items: work and material in words. prices: to expect, from, to; None: no price goes along.
    holds_until, ready_by: numbers of days, or None.
    """

    def __init__(
        self, *, weights: tuple[float | None, float | None] = (None, None), draw: float | None = None,
        tillers: tuple[float | None, float | None] = (None, None), tasks: tuple[str, ...] = (),
        items: tuple[str, ...] = (), prices: tuple[float, float, float] | None = None,
        holds_until: int | None = None, ready_by: int | None = None,
    ) -> None:
        self.weights = weights
        self.draw = draw
        self.tillers = tillers
        self.tasks = tasks
        self.items = items
        self.prices = prices
        self.holds_until = holds_until
        self.ready_by = ready_by


def headline(offer: Offer) -> Sentence:
    """Return the offer in one sentence or two.

    Args:
        offer: any.

    Returns:
        what the bow is to become, and what it comes to where that goes along.
    """
    target = _weight(offer, "Offered: to bring your bow from {} to {}", "Offered: to bring your bow to {}")
    found = target or sentence("Offered: the work on your bow that is named below.")
    if offer.prices is None:
        return found
    return sentence(found.template + " It comes to about {}.",
                    *(tuple(found.amounts) + (amount("money", offer.prices[0]),)))


def parts(offer: Offer) -> "list[tuple[str, tuple[Sentence | str, ...]]]":
    """Return the whole offer below its headline.

    Args:
        offer: any.

    Returns:
        headings, each with what stands below it.
    """
    found: list[tuple[str, tuple[Sentence | str, ...]]] = [
        ("What it is to become", _targets(offer)),
        ("What is done", offer.tasks + _material(offer)),
        ("What it comes to", _price(offer)),
        ("Until when", _days(offer)),
        ("What is promised", PROMISED + _dearer(offer)),
        ("What is not", NOT_PROMISED),
        ("The law", (LAW,)),
    ]
    return [each for each in found if each[1]]


def lines(offer: Offer, system: str) -> list[str]:
    """Return an offer as lines of plain text.

    Args:
        offer: any.
        system: of units in which it is written.

    Returns:
        lines, the headline first.
    """
    written = [say(headline(offer), system)]
    for heading, said in parts(offer):
        written += ["", heading + ":"] + ["- " + say(each, system) for each in said]
    return written


def _weight(offer: Offer, both: str, one: str) -> Sentence | None:
    """Return the target for weight in words for two weights or for the one that is wanted, or None."""
    now, wanted = offer.weights
    if wanted is None:
        return None
    words, amounts = one, [amount("force", wanted)]
    if now is not None:
        words, amounts = both, [amount("force", now), amount("force", wanted)]
    if offer.draw is not None:
        words, amounts = words + " at a draw of {}", amounts + [amount("length", offer.draw)]
    return sentence(words + ".", *amounts)


def _targets(offer: Offer) -> "tuple[Sentence | str, ...]":
    weight = _weight(offer, "Draw weight: from {} to {}", "Draw weight: {}")
    found: list[Sentence | str] = [] if weight is None else [weight]
    now, wanted = offer.tillers
    words = "Tiller, the string's distance from the upper limb less that from the lower: "
    if wanted is not None and now is not None:
        found.append(sentence(words + "from {} to {}.", amount("length", now), amount("length", wanted)))
    elif wanted is not None:
        found.append(sentence(words + "{}.", amount("length", wanted)))
    return tuple(found)


def _material(offer: Offer) -> tuple[str, ...]:
    return ("Material: " + ", ".join([each[:1].lower() + each[1:] for each in offer.items]),
            ) if offer.items else ()


def _price(offer: Offer) -> "tuple[Sentence | str, ...]":
    if offer.prices is None:
        return ()
    figures: list[Amount] = [amount("money", each) for each in offer.prices]
    return (sentence("Together about {}, tax included where there is one. It may come to anything from {} to "
                     "{}.", *figures),)


def _dearer(offer: Offer) -> tuple[str, ...]:
    return () if offer.prices is None else ("You are asked before it comes to more than is named here.",)


def _days(offer: Offer) -> tuple[str, ...]:
    ready = () if offer.ready_by is None else ("Wanted ready by " + show_day(offer.ready_by) + ".",)
    if offer.holds_until is None:
        return (NO_END,) + ready
    return ("It holds until " + show_day(offer.holds_until) + ".",) + ready
