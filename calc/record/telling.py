"""What a page asks in order to tell an owner: a link with its messages, and what either kind of link says."""

from calc.record import checks, offering, summary
from calc.record.asked import state_in, units_in
from calc.record.moments import parse_moment
from calc.record.owner import link_text, page_of, read_link
from calc.record.tell import messages, page_tree

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from calc.record.asked import Asked

    Answer = dict[str, object]


def tell_answer(asked: "Asked") -> "Answer":
    """Return the link for a bow's owner and the messages that go with it.

    Args:
        asked: "entries" of a record, "at": now as an entry writes it, "word": a line of the sender's own.

    Returns:
        "link": fragment of the page for the owner; "left": what it could not take, in words; "messages",
        each {"id", "title", "text", "caution"}.

    Raises:
        ValueError: "at" is no moment.
    """
    state = state_in(asked)
    moment = str(asked["at"])
    parse_moment(moment)
    page = page_of(state, moment, units_in(asked), str(asked.get("word") or ""))
    text, left = link_text(page)
    is_stopped = summary.is_stopped(checks.checks(state))
    return {"link": text, "left": list(left),
            "messages": [{"id": each.id, "title": each.title, "text": each.text, "caution": each.caution}
                         for each in messages(page, is_stopped)]}


def told_answer(asked: "Asked") -> "Answer":
    """Return what a link tells its reader.

    Args:
        asked: "link": fragment of an address, hostile until read; "now": moment at which it is read.
            "units": of the reader's own choice; empty: as the sender has them.

    Returns:
        "tree": elements of the page; "units": in which they are.

    Raises:
        ValueError: it is no such link; the message says why.
    """
    link, now, chosen = str(asked["link"]), str(asked["now"]), units_in(asked)
    if offering.is_offer(link):
        offer = offering.read_link(link)
        system = chosen or offer.units
        return {"tree": offering.page_tree(offer, now, system), "units": system}
    page = read_link(link)
    system = chosen or page.units
    return {"tree": page_tree(page, now, system), "units": system}
