"""What a link tells the owner of a bow, and the link's text: all of it in the fragment of an address.

Carried are facts of the record whose bounds are declared, ids from tables, one tag, one moment, and one line
that the sender typed for it. Nothing else of a record is ever put in: no name, price, place or note, no
words of the record, no id. Whoever opens such a link may have changed it, so each part of it is read anew.
"""

from calc.dates import show_date
from calc.finishes.coats import whole_day
from calc.quantities import SYSTEMS, show
from calc.record import checks, derive
from calc.record.derived import DERIVED
from calc.record.derived_fact import Asked
from calc.record.entries import Entry
from calc.record.finishing import finish_of
from calc.record.fold import State
from calc.record.moments import local_moment, parse_moment
from calc.record.steps import STEPS, next_step
from calc.record.values import value_of
from calc.tables.findings import FINDINGS, VERDICTS

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

FORM = "1"
"""Of what a link carries. One of a later form is not read."""

LONGEST = 1800
"""[letters] of a link's text: with an address before it, what every messenger carries."""

LONGEST_WORD = 400
MOST_FINDINGS = 12
LONGEST_TAG = 12
FIGURES = "0123456789"
MOST_LETTERS_IN_TAG = 2
"""A tag is a number; what holds more letters than this may be a name, and stays here."""

FACTS = (
    ("family", "bow.family"), ("long", "bow.marked_length"), ("marked", "bow.marked_weight"),
    ("came", "reading.weight"), ("agreed", "agreed.weight"), ("now", "reading.weight"),
    ("at", "reading.at_draw"), ("draw", "archer.draw"), ("pulls", "reading.weight"),
    ("brace", "reading.brace"), ("by", "agreed.ready_by"), ("look", "handover.next_look"),
    ("left", "handover.end"), ("finish", "product.family"), ("string", "string.material"),
    ("strands", "string.strands"), ("string_long", "string.length"), ("old_spine", "arrow.spine"),
    ("old_mass", "arrow.mass"), ("spine_low", "arrow.spine"), ("spine_high", "arrow.spine"),
    ("no_string", "agreed.ready_by"),
)
"""What may be carried, each with the fact by whose declaration its text is read: a number, a date or a word
from a list, never a text of its own. `pulls`: weight at the archer's draw; `no_string`: day before which the
finish is too soft for a string."""

AS_READ_LAST = ("family", "long", "marked", "draw", "brace", "by", "look", "left", "finish", "string",
                "strands", "string_long", "old_spine", "old_mass")
"""Those of them that are the newest text of their fact, as it stands."""

LIMBS = ("upper", "lower", "riser")
STANDINGS = ("open", "watched", "mended", "gone")


class Found:
    """A finding: its id in the table, where it is, and how it stands."""

    def __init__(self, which: str, limb: str, standing: str):
        self.which = which
        self.limb = limb
        self.standing = standing


class OwnersPage:
    """What the owner is told.

    moment: when it was so. units: in which it is shown. facts: texts with units, by names of FACTS. worked:
    whether the bow was worked on since its weight was read. done: ids of steps; next: id of one, or empty.
    verdict: id, or empty. word: the sender's line.
    """

    def __init__(
        self, moment: str, units: str, tag: str, facts: dict[str, str], *, worked: bool = False,
        done: tuple[str, ...] = (), next: str = "", verdict: str = "", findings: tuple[Found, ...] = (),
        word: str = "",
    ):
        self.moment = moment
        self.units = units
        self.tag = tag
        self.facts = facts
        self.worked = worked
        self.done = done
        self.next = next
        self.verdict = verdict
        self.findings = findings
        self.word = word


# From the record -----------------------------------------------------------------


def page_of(state: State, moment: str, units: str, word: str = "") -> OwnersPage:
    """Return what a record tells its owner.

    Args:
        state: of a record.
        moment: as an entry writes it: now.
        units: "imperial" or "metric".
        word: a line of the sender's own; only its first letters count.

    Returns:
        the page. Nothing that is private is in it.
    """
    following = next_step(state).step
    return OwnersPage(
        moment, units, tag_of(state.text("bow.tag")), _facts(state, local_moment(moment)),
        worked=_is_worked(state), done=tuple([each.id for each in STEPS if each.done(state)]),
        next=following.id if following is not None else "",
        verdict=checks.verdict(state) or "", findings=findings_of(state), word=one_line(word))


def one_line(word: str) -> str:
    """Return a text as one line of at most so many letters as a link takes.

    Args:
        word: any.

    Returns:
        the same words with single spaces between them.
    """
    return " ".join(word.split())[:LONGEST_WORD]


def tag_of(text: str) -> str:
    """Return a tag as a link may carry it: nothing where it may be a name.

    Args:
        text: of the tag.

    Returns:
        the same text, or none.
    """
    letters = [mark for mark in text if mark not in FIGURES and mark not in "- "]
    return text if len(text) <= LONGEST_TAG and len(letters) <= MOST_LETTERS_IN_TAG else ""


def _is_worked(state: State) -> bool:
    now = derive.weight_now(state)
    return now is not None and derive.is_stale_in(state, "reading.weight", now.entry)


def _facts(state: State, now: int) -> dict[str, str]:
    named = [(name, state.text(fact)) for name, fact in FACTS if name in AS_READ_LAST]
    named += _weights(state) + _spines(state) + [("no_string", _soft_until(state, now))]
    return {name: text for name, text in named if text and _is_read(name, text)}


def _soft_until(state: State, now: int) -> str:
    """Return the day before which the finish that is on a bow is too soft for its string, or nothing."""
    finish = finish_of(state, now)
    hard = finish.string_from if finish is not None and finish.entries else None
    return "" if hard is None or hard <= now else show_date(whole_day(hard))


def _weights(state: State) -> list[tuple[str, str]]:
    """Return the weights as it came, as agreed and now, all at one draw, and that at the archer's draw."""
    now = derive.weight_now(state)
    agreed = DERIVED["weight_wanted"].told(state, Asked("", {})).text
    if now is None:
        return [("agreed", agreed), ("at", state.text("agreed.at_draw") if agreed else "")]
    came = derive.first_at(state, now.draw)
    own = DERIVED["weight_at_archers_draw"].told(state, Asked("", {}))
    return [("came", came.entry.fact("weight") if came is not None else ""), ("agreed", agreed),
            ("now", now.entry.fact("weight")), ("at", now.entry.fact("at_draw")),
            ("pulls", "" if own.stale else own.text)]


def _spines(state: State) -> list[tuple[str, str]]:
    """Return the spine weights that the newest answer on arrows said, unless the bow has changed since."""
    said = [each for each in state.of("answer") if each.fact("calculator") == "arrow-match"]
    if not said or derive.deeds(state, said[-1]):
        return []
    results = dict([_pair(part, "=") for part in said[-1].fact("results").split(";")])
    return [(name, _force(results.get(result, "")))
            for name, result in (("spine_low", "wanted_low"), ("spine_high", "wanted_high"))]


def _force(text: str) -> str:
    try:
        return show(float(text), "force", SYSTEMS[0], 0)
    except (ValueError, OverflowError):
        return ""


def findings_of(state: State) -> tuple[Found, ...]:
    """Return what was found, the newest entry on each place; what ends a bow first.

    Args:
        state: of a record.

    Returns:
        one of each place.
    """
    newest: dict[tuple[str, str, str], Entry] = {}
    for entry in state.of("finding"):
        newest[(entry.fact("which"), entry.fact("limb"), entry.fact("place"))] = entry
    found = []
    for known in FINDINGS:
        for place in sorted(newest):
            if place[0] == known.id:
                standing = newest[place].fact("standing") or STANDINGS[0]
                found.append(Found(known.id, place[1], standing))
    return tuple(found)


# As the text of a link -------------------------------------------------------------


def link_text(page: OwnersPage) -> tuple[str, tuple[str, ...]]:
    """Return a page as the fragment of its link, in letters that no messenger changes.

    Args:
        page: any.

    Returns:
        the text, and what had to be left out of it since a link takes no more, in words for the sender.
    """
    left = []
    kept = page.findings[:MOST_FINDINGS]
    text = packed(FORM, _lines(page, kept, page.word))
    while kept and len(text) > LONGEST:
        kept = kept[:-1]
        text = packed(FORM, _lines(page, kept, page.word))
    if len(kept) < len(page.findings):
        count = len(page.findings) - len(kept)
        left.append(str(count) + (" finding" if count == 1 else " findings"))
    word = page.word
    while word and len(text) > LONGEST:
        word = word[:-10]
        text = packed(FORM, _lines(page, kept, word))
    if word != page.word:
        left.append("the end of your line")
    return text, tuple(left)


def _lines(page: OwnersPage, findings: tuple[Found, ...], word: str) -> list[str]:
    lines = ["moment " + page.moment, "units " + page.units, "tag " + page.tag, "done " + " ".join(page.done),
             "next " + page.next, "verdict " + page.verdict, "worked " + ("yes" if page.worked else "")]
    lines += [name + " " + page.facts[name] for name, _ in FACTS if name in page.facts]
    lines += ["found " + each.which + " " + each.standing + " " + each.limb for each in findings]
    return lines + ["word " + word]


def packed(form: str, lines: list[str]) -> str:
    """Return lines of a name and its text as the fragment of a link, without those that say nothing.

    Args:
        form: of what the link carries.
        lines: each a name, a space and a text.

    Returns:
        letters that no messenger changes, with their count at the end.
    """
    said = [each.strip() for each in lines if each.strip().find(" ") > 0]
    inner = to_letters("\n".join(said).encode("utf-8"))
    return form + "." + inner + "." + str(len(inner))


def unpacked(form: str, text: str) -> list[tuple[str, str]]:
    """Return what a link carries, as pairs of a name and a text; hostile until each is read.

    Args:
        form: that it has to have.
        text: fragment of an address.

    Returns:
        the pairs, a moment among them.

    Raises:
        ValueError: it is no such link, or not a whole one; the message says which.
    """
    found, _, rest = text.partition(".")
    inner, _, told = rest.partition(".")
    if len(text) > LONGEST + 200:
        raise ValueError("this link is longer than any of ours")
    if found != form:
        raise ValueError("this is no link to a bow, or one that a later release wrote")
    if told != str(len(inner)):
        raise ValueError("this link has lost its end on the way: ask for it again, and copy all of it")
    pairs = [_pair(line, " ") for line in _unpacked(inner).split("\n")]
    try:
        parse_moment(first_of(pairs).get("moment", ""))
    except ValueError:
        raise ValueError("this link does not say when it was made") from None
    return pairs


def first_of(pairs: list[tuple[str, str]]) -> dict[str, str]:
    """Return the first text of each name.

    Args:
        pairs: of a link.

    Returns:
        texts by name.
    """
    return dict(list(reversed(pairs)))


def read_link(text: str) -> OwnersPage:
    """Return the page that a link carries; what is outside of its bounds in it is left out.

    Args:
        text: fragment of an address, hostile until read.

    Returns:
        the page.

    Raises:
        ValueError: it is no such link, or not a whole one; the message says which.
    """
    pairs = unpacked(FORM, text)
    known = first_of(pairs)
    steps = [each.id for each in STEPS]
    verdicts = [each.id for each in VERDICTS]
    facts = {name: known[name] for name, _ in FACTS if name in known and _is_read(name, known[name])}
    return OwnersPage(
        known["moment"], one_of(SYSTEMS, known.get("units", "")) or SYSTEMS[0],
        tag_of(known.get("tag", "")), facts, worked=known.get("worked", "") == "yes",
        done=tuple([each for each in steps if each in known.get("done", "").split(" ")]),
        next=one_of(steps, known.get("next", "")), verdict=one_of(verdicts, known.get("verdict", "")),
        findings=tuple(_found([line for name, line in pairs if name == "found"])),
        word=one_line(known.get("word", "")))


def one_of(words: "Sequence[str]", text: str) -> str:
    """Return a text if it is one of these words, else nothing.

    Args:
        words: that are known.
        text: any.

    Returns:
        the word, or an empty text.
    """
    return text if text in words else ""


def _found(lines: list[str]) -> list[Found]:
    ids = [each.id for each in FINDINGS]
    found = []
    for line in lines[:MOST_FINDINGS]:
        which, _, rest = line.partition(" ")
        standing, _, limb = rest.partition(" ")
        if which in ids and standing in STANDINGS and (not limb or limb in LIMBS):
            found.append(Found(which, limb, standing))
    return found


def _is_read(name: str, text: str) -> bool:
    """Return whether a text is one that the fact of this name may have."""
    try:
        return value_of(dict(FACTS)[name], text) is not None
    except ValueError:
        return False


def _pair(line: str, mark: str) -> tuple[str, str]:
    name, _, text = line.partition(mark)
    return name, text.strip()


LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"


def to_letters(data: bytes) -> str:
    """Return bytes in the letters of an address.

    Args:
        data: any.

    Returns:
        four letters for three bytes, without padding.

    The form is base64url of RFC 4648, section 5.
    """
    text = ""
    for start in range(0, len(data), 3):
        part = data[start:start + 3]
        number = 0
        for place in range(3):
            number = number * 256 + (part[place] if place < len(part) else 0)
        quarters = [number // 64**(3 - place) % 64 for place in range(len(part) + 1)]
        text += "".join([LETTERS[each] for each in quarters])
    return text


def _unpacked(text: str) -> str:
    data = []
    for start in range(0, len(text), 4):
        part = text[start:start + 4]
        number = 0
        for place in range(4):
            found = LETTERS.find(part[place]) if place < len(part) else 0
            if found < 0:
                raise ValueError("this link holds letters that none of ours has: ask for it again")
            number = number * 64 + found
        data += [number // 65536, number // 256 % 256, number % 256][:len(part) - 1]
    try:
        return bytes(data).decode("utf-8")
    except UnicodeError:
        raise ValueError("this link was changed on the way: ask for it again") from None
