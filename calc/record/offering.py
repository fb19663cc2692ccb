"""A quote as its owner reads it: a page of its own kind, made of the form of a quote.

The link carries what the bow is to become, what is done, until when it holds, and one line of the sender's.
A price is in it only where the sender says so; no rate, no hours, no mark-up and no cost ever is. Of the
record come the tag, the shape of the bow and its marks, no more.
"""

from calc.dates import show_day
from calc.offers.offer import Offer, headline, lines, parts
from calc.outcome import say
from calc.quantities import SYSTEMS, show_number
from calc.record.asked import pairs_in, state_in, units_in
from calc.record.moments import local_day, parse_moment, show_local
from calc.record.owner import LONGEST, first_of, one_line, one_of, packed, tag_of, unpacked
from calc.record.tell import part, title
from calc.record.values import value_of
from calc.tables.work import ITEMS, TASKS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from calc.record.asked import Asked

    Answer = dict[str, object]

FORM = "q1"
"""Of what the link to an offer carries, which is how one is told from a page on a bow's progress."""

MARKS = (("family", "bow.family"), ("long", "bow.marked_length"), ("marked", "bow.marked_weight"))
"""What comes from the record; all else is the quote's own."""

FACTS = MARKS + (
    ("weight_now", "reading.weight"), ("weight_wanted", "agreed.weight"),
    ("draw_length", "reading.at_draw"), ("tiller_now", "agreed.tiller"), ("tiller_wanted", "agreed.tiller"),
    ("ready_by", "agreed.ready_by"), ("holds_until", "quote.holds_until"),
)
"""What may be carried, by the quote's own names, each with the fact by whose declaration its text is read."""

PRICES = ("price", "price_low", "price_high")
HIGHEST = 1e7
ROWS = ";"
CELLS = ":"

NO_PROOF = ("This page shows what its sender wrote, and when. Anybody can change a link: what counts is what "
            "you and your bowyer agreed.")
TO_DO = ("Ask what is not clear to you. Then say yes or no, in writing: nothing is done to the bow before.",)


class OfferPage:
    """An offer with what a page says around it.

    moment: when it was made. units: in which it is shown. facts: texts with units, by names of FACTS. tasks,
    items: ids. prices: expected, from, to, or None. word: the sender's line.
    """

    def __init__(
        self, moment: str, units: str, tag: str, facts: dict[str, str], *, tasks: tuple[str, ...] = (),
        items: tuple[str, ...] = (), prices: tuple[float, float, float] | None = None, word: str = "",
    ):
        self.moment = moment
        self.units = units
        self.tag = tag
        self.facts = facts
        self.tasks = tasks
        self.items = items
        self.prices = prices
        self.word = word

    def offer(self) -> Offer:
        """Return what is offered, in numbers and words."""
        known = {name: value_of(fact, self.facts[name]) for name, fact in FACTS if name in self.facts}

        def number(name: str) -> float | None:
            value = known.get(name)
            return float(value) if isinstance(value, (int, float)) else None

        def day(name: str) -> int | None:
            value = known.get(name)
            return value if isinstance(value, int) else None

        return Offer(
            weights=(number("weight_now"), number("weight_wanted")), draw=number("draw_length"),
            tillers=(number("tiller_now"), number("tiller_wanted")),
            tasks=tuple([dict(TASKS)[each] for each in self.tasks]),
            items=tuple([dict(ITEMS)[each] for each in self.items]), prices=self.prices,
            holds_until=day("holds_until"), ready_by=day("ready_by"))


# Made ------------------------------------------------------------------------------


def offer_answer(asked: "Asked") -> "Answer":
    """Return the link to an offer and its text, for the sender to change.

    Args:
        asked: "entries" of the bow's record, or of none; "pairs": the form of the quote as typed, each number
            with its unit; "results": of its answer, name and number; "priced": whether the price goes along;
            "at": now as an entry writes it; "word": a line of the sender's own.

    Returns:
        "link", "left", "messages" as for how a bow stands.

    Raises:
        ValueError: "at" is no moment.
    """
    state = state_in(asked)
    pairs, results = dict(pairs_in(asked, "pairs")), dict(pairs_in(asked, "results"))
    moment = str(asked["at"])
    parse_moment(moment)
    given = {name: pairs.get(name, "") for name, _ in FACTS}
    for name, fact in MARKS:
        given[name] = state.text(fact)
    page = OfferPage(
        moment, units_in(asked), tag_of(state.text("bow.tag")), _readable(given),
        tasks=_ids(pairs.get("tasks", ""), TASKS), items=_ids(pairs.get("materials", ""), ITEMS),
        prices=_prices([results.get(name, "") for name in PRICES]) if asked.get("priced") else None,
        word=one_line(str(asked.get("word") or "")))
    text, left = link_text(page)
    message = "\n".join([say(title(page.facts, page.tag), page.units)] + lines(page.offer(), page.units))
    return {"link": text, "left": list(left),
            "messages": [{"id": "offer", "title": "Offer", "text": message, "caution": ""}]}


def _readable(given: dict[str, str]) -> dict[str, str]:
    """Return those texts that are what the fact of their name may be."""
    found = {}
    for name, fact in FACTS:
        try:
            if given.get(name) and value_of(fact, given[name]) is not None:
                found[name] = given[name]
        except ValueError:
            pass
    return found


def _ids(rows: str, known: tuple[tuple[str, str], ...]) -> tuple[str, ...]:
    """Return what the first cells of a table name, each once, in the order of the list."""
    first = [row.partition(CELLS)[0].strip() for row in rows.split(ROWS)]
    return tuple([id for id, _ in known if id in first])


def _prices(texts: list[str]) -> tuple[float, float, float] | None:
    """Return three prices in order, or None where they are none."""
    try:
        price, low, high = [float(each) for each in texts]
    except ValueError:
        return None
    return (price, low, high) if 0.0 <= low <= price <= high <= HIGHEST else None


def link_text(page: OfferPage) -> tuple[str, tuple[str, ...]]:
    """Return an offer as the fragment of its link.

    Args:
        page: any.

    Returns:
        the text, and what had to be left out of it since a link takes no more, in words for the sender.
    """
    word = page.word
    text = packed(FORM, _lines(page, word))
    while word and len(text) > LONGEST:
        word = word[:-10]
        text = packed(FORM, _lines(page, word))
    return text, () if word == page.word else ("the end of your line",)


def _lines(page: OfferPage, word: str) -> list[str]:
    prices = () if page.prices is None else [show_number(each, 2) for each in page.prices]
    return (["moment " + page.moment, "units " + page.units, "tag " + page.tag]
            + [name + " " + page.facts[name] for name, _ in FACTS if name in page.facts]
            + ["tasks " + CELLS.join(page.tasks), "items " + CELLS.join(page.items),
               "prices " + CELLS.join(prices), "word " + word])


# Read ------------------------------------------------------------------------------


def is_offer(link: str) -> bool:
    """Return whether a link leads to an offer.

    Args:
        link: fragment of an address.

    Returns:
        whether it says so of itself.
    """
    return link.partition(".")[0] == FORM


def read_link(text: str) -> OfferPage:
    """Return the offer that a link carries; what is outside of its bounds in it is left out.

    Args:
        text: fragment of an address, hostile until read.

    Returns:
        the page.

    Raises:
        ValueError: it is no such link, or not a whole one; the message says which.
    """
    known = first_of(unpacked(FORM, text))
    return OfferPage(
        known["moment"], one_of(SYSTEMS, known.get("units", "")) or SYSTEMS[0], tag_of(known.get("tag", "")),
        _readable(known), tasks=_ids(known.get("tasks", "").replace(CELLS, ROWS), TASKS),
        items=_ids(known.get("items", "").replace(CELLS, ROWS), ITEMS),
        prices=_prices(known.get("prices", "").split(CELLS)), word=one_line(known.get("word", "")))


def page_tree(page: OfferPage, now: str, system: str) -> list[object]:
    """Return an offer as the elements of its owner's page.

    Args:
        page: what it says.
        now: moment at which it is read.
        system: of units in which it is shown.

    Returns:
        elements, the answer first.
    """
    offer = page.offer()
    nodes: list[object] = [
        ["p", {"class": "rb-owner-of"}, say(title(page.facts, page.tag), system), " ",
         ["small", {}, "offered on " + show_local(page.moment)]],
        ["p", {"class": "rb-headline"}, say(headline(offer), system)],
    ]
    if offer.holds_until is not None and local_day(now) > offer.holds_until:
        nodes.append(["p", {"class": "rb-owner-old"}, "This offer ended on " + show_day(offer.holds_until)
                      + ". Ask for a new one."])
    if page.word:
        nodes.append(["p", {"class": "rb-owner-word"}, "From your bowyer: “" + page.word + "”"])
    for heading, said in parts(offer) + [("What you can do now", TO_DO)]:
        nodes += part(heading, said, system)
    nodes.append(["p", {"class": "rb-owner-note"}, NO_PROOF])
    return nodes
