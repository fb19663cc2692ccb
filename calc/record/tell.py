"""What the owner of a bow is told, in words that need no bench: a page, and three messages to send.

The answer comes first, then figures, arrows, findings, and what the owner can do. No sentence says that a bow
is in order or safe: it says what was measured, and when.
"""

from calc.dates import DAY, show_day
from calc.outcome import Amount, Sentence, amount, say, sentence
from calc.record import sheets
from calc.record.moments import local_day, parse_moment, show_local
from calc.record.owner import FACTS, Found, OwnersPage
from calc.record.steps import STEPS
from calc.record.values import value_of
from calc.tables import practice
from calc.tables.findings import FINDINGS, REPAIR, SHOOT, WALL

TYPE_CHECKING = False
if TYPE_CHECKING:  # the small engine has no such module
    from collections.abc import Sequence

LASTS = 14 * DAY
"""After which a page says that it is old."""

IN_WORDS = (
    ("intake", "taking in", "it is being taken in"),
    ("inspect", "inspection", "it is being looked over"),
    ("first-draw", "a draw from a distance", "it is drawn once from a distance, where it can hurt nobody"),
    ("measure", "measuring", "it is being measured"),
    ("agree", "agreeing the weight", "a weight is to be agreed with you"),
    ("repair", "mending", "it is being mended"),
    ("weight", "bringing the weight down", "its weight is being brought down"),
    ("shape", "grip and holes", "grip and holes are worked on"),
    ("sand", "sanding", "it is being sanded"),
    ("finish", "finish", "the finish is being laid, and has to harden"),
    ("tune", "tuning", "it is being tuned"),
    ("hand-over", "handing over", "it is ready to be handed over"),
)
"""Steps of the job: their ids, what each is to an owner, and what goes on during it."""

ASKED = (
    ("agree", "Think about which weight you can hold at full draw for ten seconds, and tell your bowyer your "
              "draw and your arrows. Nothing comes off the bow before you have said yes."),
    ("hand-over", "Arrange when to fetch it. Bring your arrows, and have the use of the stringer shown to "
                  "you."),
)
WAIT = ("Nothing to do to the bow. If your arrows, your draw or the day on which you want it change, say so "
        "now.")
KEPT = (
    "Use a stringer, every time, and unstring it after shooting.",
    "Never let go of an empty string, and draw it no further than the draw above.",
    "Look it over before each day: limbs, edges, tips, string.",
    "A new sound, line or bend: let down slowly, unstring it, stop, and bring it back.",
)
"""What an owner who has the bow back goes by (common practice)."""

STANDING_WORDS = {"open": "still open", "watched": "watched", "mended": "mended", "gone": "no longer there"}
LIMB_WORDS = {"upper": "upper limb", "lower": "lower limb", "riser": "riser"}
NO_PROMISE = ("This page shows what the sender measured, and when. It does not say that a bow is safe, and "
              "it cannot prove who made it.")
LIGHT = practice.find("arrow-light").low
NEVER = practice.find("arrow-never").low
USUAL = practice.find("arrow-usual").high


class Message:
    """A message to the owner: what it is about, its text, and what the sender should know first."""

    def __init__(self, id: str, title: str, text: str, caution: str):
        self.id = id
        self.title = title
        self.text = text
        self.caution = caution


class _Read:
    """The facts of a page as numbers and words."""

    def __init__(self, facts: dict[str, str]):
        self._values = {name: value_of(fact, facts[name]) for name, fact in FACTS if name in facts}

    def number(self, name: str) -> float | None:
        """Return a number in SI, or None where the page does not carry it."""
        value = self._values.get(name)
        return float(value) if isinstance(value, (int, float)) else None

    def label(self, name: str) -> str:
        """Return the words of a choice; empty where the page does not carry it."""
        value = self._values.get(name)
        asked = sheets.input_of(dict(FACTS)[name])
        for option in asked.choices if asked is not None else ():
            if option.id == value:
                return str(option.label)
        return ""

    def choice(self, name: str) -> str:
        """Return the id of a choice; empty where the page does not carry it."""
        return str(self._values.get(name) or "")

    def day(self, name: str) -> int | None:
        """Return the number of a day, or None where the page does not carry it."""
        value = self._values.get(name)
        return value if isinstance(value, int) else None


# The page --------------------------------------------------------------------------


def page_tree(page: OwnersPage, now: str, system: str) -> list[object]:
    """Return the owner's page as elements.

    Args:
        page: what it tells.
        now: moment at which it is read.
        system: of units in which it is shown.

    Returns:
        elements, the answer first.
    """
    read = _Read(page.facts)
    nodes: list[object] = [
        ["p", {"class": "rb-owner-of"}, say(title(page.facts, page.tag), system), " ",
         ["small", {}, "as of " + show_local(page.moment)]],
        ["p", {"class": "rb-headline"}, _answer(page, read)],
    ]
    age = (parse_moment(now) - parse_moment(page.moment)) // DAY
    if age * DAY > LASTS:
        nodes.append(["p", {"class": "rb-owner-old"}, "This page is " + str(age) + " days old. Ask for a "
                      "newer one."])
    if page.word:
        nodes.append(["p", {"class": "rb-owner-word"}, "From your bowyer: “" + page.word + "”"])
    nodes += [["p", {}, say(each, system)]
              for each in _weights(page, read) + _steps(page) + _dates(page, read)]
    nodes += part("Arrows for it", _arrows(page, read), system)
    nodes += part("String and finish", _fittings(read), system)
    nodes += part("What was found", [_told(each) for each in page.findings], system)
    nodes += part("What you can do now", _to_do(page, read), system)
    nodes.append(["p", {"class": "rb-owner-note"}, NO_PROMISE])
    return nodes


def part(heading: str, lines: "Sequence[Sentence | str]", system: str) -> list[object]:
    """Return a part of a page as elements.

    Args:
        heading: of the part.
        lines: what stands below it; without any there is no part.
        system: of units in which it is shown.

    Returns:
        a heading and a list, or nothing.
    """
    if not lines:
        return []
    items: list[object] = ["ul", {}]
    return [["h2", {}, heading], items + [["li", {}, say(each, system)] for each in lines]]


def title(facts: dict[str, str], tag: str) -> Sentence | str:
    """Return what a bow is called to its owner: its shape and marks, and the number on its tag.

    Args:
        facts: what a page carries of them, by names of FACTS.
        tag: as a page carries it.

    Returns:
        words that hold nothing but what stands in the record's lists and figures.
    """
    read = _Read(facts)
    family = read.label("family")
    text = "Your bow: " + (_small(family) or "as marked")
    amounts: list[Amount | str] = []
    for name, kind, words in (("long", "length", ", {} long"), ("marked", "force", ", marked {}")):
        number = read.number(name)
        if number is not None:
            text, amounts = text + words, amounts + [amount(kind, number)]
    if tag:
        text, amounts = text + ", tag {}", amounts + [tag]
    return sentence(text + ".", *amounts) if amounts or family else "Your bow."


def _small(words: str) -> str:
    """Return words that stood by themselves as they stand within a sentence."""
    return words[:1].lower() + words[1:]


def _answer(page: OwnersPage, read: _Read) -> str:
    left = read.choice("left")
    if page.verdict == WALL or left == "wall":
        return "It is for the wall: it must never be strung or drawn again."
    if left == "as_it_is":
        return "You have it back as it is: the work was not finished. Do not string it before you have asked."
    if left or "hand-over" in page.done:
        return "You have it back. What it measured stands below."
    if page.verdict not in ("", SHOOT, REPAIR):
        return "It is not decided yet whether it can be shot. Until then it is neither strung nor drawn."
    doing = _doing(page.next)
    return "It is on the bench: " + doing + "." if doing else "It is on the bench."


def _doing(step: str) -> str:
    return next((doing for id, _, doing in IN_WORDS if id == step), "")


def _weights(page: OwnersPage, read: _Read) -> "list[Sentence | str]":
    found: list[Sentence | str] = []
    draw, came, agreed, now = [read.number(each) for each in ("at", "came", "agreed", "now")]
    if draw is None:
        return found
    text = ""
    amounts: list[Amount] = []
    if came is not None:
        text = "It came in pulling {} at a draw of {}. "
        amounts = [amount("force", came), amount("length", draw)]
    if agreed is not None:
        text, amounts = text + "Agreed: {}. ", amounts + [amount("force", agreed)]
    if now is not None and now != came:
        words = "Read last, before the newest work on it: {}. " if page.worked else "Read last: {}. "
        text, amounts = text + words, amounts + [amount("force", now)]
    if amounts:
        if came is None:
            text, amounts = text + "All at a draw of {}.", amounts + [amount("length", draw)]
        found.append(sentence(text.strip(), *amounts))
    own, pulls = read.number("draw"), read.number("pulls")
    if own is not None and pulls is not None:
        found.append(sentence("At your draw of {} it pulls about {} now.", amount("length", own),
                              amount("force", pulls)))
    return found


def _steps(page: OwnersPage) -> "list[Sentence | str]":
    if page.verdict == WALL or "hand-over" in page.done:
        return []
    mended = any(each.standing == "mended" for each in page.findings)
    behind = [words for id, words, _ in IN_WORDS if id in page.done and (id != "repair" or mended)]
    ids = [each.id for each in STEPS]
    ahead = [words for id, words, _ in IN_WORDS
             if page.next and ids.index(id) > ids.index(page.next) and id not in page.done]
    found: list[Sentence | str] = []
    if behind:
        found.append("Done: " + ", ".join(behind) + ".")
    if ahead:
        found.append("Then: " + ", ".join(ahead) + ".")
    return found


def _dates(page: OwnersPage, read: _Read) -> "list[Sentence | str]":
    found: list[Sentence | str] = []
    soft, by, look = read.day("no_string"), read.day("by"), read.day("look")
    if soft is not None and soft > local_day(page.moment):
        found.append("It cannot be strung before " + show_day(soft) + ": the finish has to harden.")
    if by is not None and "hand-over" not in page.done:
        found.append("Wanted ready by " + show_day(by) + ".")
    if look is not None:
        found.append("Bring it for its next look by " + show_day(look) + ".")
    return found


def _arrows(page: OwnersPage, read: _Read) -> "list[Sentence | str]":
    """Return what arrows a bow asks for, from its weight: as agreed while it is still coming down."""
    if page.verdict == WALL:
        return []
    pulls, now, agreed = read.number("pulls"), read.number("now"), read.number("agreed")
    is_down = "weight" in page.done
    weight = (pulls or now or agreed) if is_down else (agreed or now)
    found: list[Sentence | str] = []
    low, high, old = read.number("spine_low"), read.number("spine_high"), read.number("old_spine")
    if low is not None and high is not None:
        found.append(sentence("Shafts of {} to {} spine weight, by the sender's reckoning: buy two or three "
                              "and try them.", amount("force", low, 0), amount("force", high, 0)))
        if old is not None and not low <= old <= high:
            found.append(sentence("Your old ones, of {} spine weight, are too " + (
                "stiff" if old > high else "limber") + " for it.", amount("force", old, 0)))
    if weight is None or LIGHT is None or NEVER is None or USUAL is None:
        return found
    found.append(sentence(
        "For {} of draw weight the whole arrow weighs {} to {}. Under {} is too light for an old bow; under "
        "{} never, on any bow.", amount("force", weight), amount("mass", LIGHT * weight, 0),
        amount("mass", USUAL * weight, 0), amount("mass", LIGHT * weight, 0),
        amount("mass", NEVER * weight, 0)))
    mass = read.number("old_mass")
    if mass is not None and mass < LIGHT * weight:
        found.append(sentence("Your arrow of {} is too light for it.", amount("mass", mass, 0)))
    return found


def _fittings(read: _Read) -> "list[Sentence | str]":
    found: list[Sentence | str] = []
    material, strands, length = read.label("string"), read.number("strands"), read.number("string_long")
    if material:
        text = "String: " + _small(material)
        amounts: list[Amount | str] = []
        if strands is not None:
            text, amounts = text + ", {} strands", amounts + [str(int(strands))]
        if length is not None:
            text, amounts = text + ", {} long", amounts + [amount("length", length)]
        found.append(sentence(text + ". Fit no other material without asking.", *amounts))
    brace = read.number("brace")
    if brace is not None:
        found.append(sentence("Brace height, from the string to the deepest point of the grip: {}.",
                              amount("length", brace)))
    finish = read.label("finish")
    if finish:
        found.append("Finish: " + _small(finish) + ". Damp cloth only, no solvent.")
    return found


def _told(each: Found) -> str:
    known = next(row for row in FINDINGS if row.id == each.which)
    where = " (" + LIMB_WORDS[each.limb] + ")" if each.limb else ""
    reason = " " + known.reason if each.standing == "open" else ""
    return known.label + where + ": " + STANDING_WORDS[each.standing] + "." + reason


def _to_do(page: OwnersPage, read: _Read) -> "list[Sentence | str]":
    if page.verdict == WALL or read.choice("left") == "wall":
        return ["Do not string it. Its string is cut so that nobody else does."]
    if read.choice("left") == "as_it_is":
        return ["Do not string or draw it. Ask what is still to be done."]
    if "hand-over" in page.done:
        return list(KEPT)
    return [next((words for id, words in ASKED if id == page.next), WAIT)]


# Messages --------------------------------------------------------------------------


def messages(page: OwnersPage, is_stopped: bool) -> tuple[Message, ...]:
    """Return three messages to the owner, for the sender to change before they are sent.

    Args:
        page: what is told.
        is_stopped: whether a check of the whole record says stop.

    Returns:
        how it is going, which arrows, ready.
    """
    read = _Read(page.facts)
    system = page.units
    name = say(title(page.facts, page.tag), system)
    weights = [say(each, system) for each in _weights(page, read)]
    dates = [say(each, system) for each in _dates(page, read)]
    arrows = [say(each, system) for each in _arrows(page, read)]
    going = [name, _answer(page, read)] + weights + dates
    which = [name] + weights + (arrows or ["Its weight is not known yet."]) + [
        "Which arrows do you have: of which spine, how long, with which point, and how heavy?"]
    ready = [name, "It is ready to be fetched."] + weights + arrows + list(KEPT)
    return (
        Message("going", "How is it going", " ".join(going), ""),
        Message("arrows", "Which arrows", " ".join(which), ""),
        Message("ready", "Ready", " ".join(ready), _not_ready(page, is_stopped)),
    )


def _not_ready(page: OwnersPage, is_stopped: bool) -> str:
    if is_stopped or page.verdict != SHOOT:
        return "The record says stop: do not send this before that is settled."
    if page.worked or "weight" not in page.done:
        return "Its weight is not where it was agreed, or was not read since the last work: measure first."
    if "hand-over" in page.done:
        return ""
    return "The record does not show the last look yet. Look it over once more before it goes."
