"""Six invented bows on one bench over five weeks: what is typed for them, and what their records spare.

Every bow, reading and archer here is made up. The bows differ in every figure, so that a figure that was
handed to the wrong one shows. What a person reads off a bow stands in `Bow`, by names of its own: neither by
the inputs of calculators nor by the facts of records.
"""

import json
from collections.abc import Iterator
from typing import Any
from urllib.parse import urlencode

from calc import answer, catalog
from calc.answer import Job
from calc.declaring import FACT, Calculator, Input, inputs_of
from calc.quantities import parse
from calc.reading import matters
from calc.record.entries import entry_id
from calc.tables.findings import LOOKS

FORMS = {
    "bow": {"tag": "tag", "title": "title", "family": "family", "length": "length along the belly",
            "length_back": "length along the back", "marked_length": "length as marked",
            "riser_length": "riser", "riser_girth": "girth", "core": "core", "tips": "tips", "old": "old"},
    "archer": {"hold": "hold", "draw": "archer's draw"},
    "string": {"material": "string"},
    "look": {each.id: "seen" for each in LOOKS},
    "first_draw": {"to_draw": "draw of the test", "from_distance": "seen", "full": "seen"},
    "reading": {"weight": "weight", "at_draw": "draw", "upper": "upper", "lower": "lower",
                "measured": "place", "brace": "brace", "curve": "curve", "stations_upper": "upper sections",
                "stations_lower": "lower sections", "glass_back": "glass", "glass_belly": "glass",
                "width_tip": "tip", "from_distance": "seen"},
    "agreed": {"weight": "weight wanted", "at_draw": "draw agreed", "tiller": "tiller wanted",
               "finish": "finish", "gloss": "gloss", "lettered": "seen", "edge_width": "off the width"},
    "strokes": {"upper_belly": "upper strokes", "lower_belly": "lower strokes", "paper": "paper"},
    "read again": {"weight": "weight", "at_draw": "draw", "upper": "upper", "lower": "lower",
                   "from_distance": "seen"},
    "product": {"family": "product", "seal_with": "seal", "reducer": "reducer"},
    "air": {"temperature": "warmth"},
    "coats": {"seal_coats": "seal coats", "build_coats": "build coats", "over_coats": "coats over",
              "sheen_coats": "last coats", "start": "start"},
    "edges as they came": {"edge_radius": "edges"},
}
"""What is typed on the sheets of a record: the person's own name of each fact."""

AT_THE_BENCH = ("strokes", "read again")
"""What is entered with one finger: it begins with what was entered last."""

ASKED = {
    "upper": "upper", "lower": "lower", "measured": "place", "brace_height": "brace", "family": "family",
    "bow_length": "length along the belly", "riser_length": "riser", "riser_girth": "girth", "hold": "hold",
    "draw_weight": "weight", "weight_now": "weight", "weight_came": "weight as it came", "readings": "curve",
    "weight_wanted": "weight wanted", "tiller_wanted": "tiller wanted", "upper_stations": "upper sections",
    "lower_stations": "lower sections", "glass_back": "glass", "glass_belly": "glass", "edge_now": "edges",
    "tips": "tips", "material": "string", "old": "old", "width_tip": "tip", "gloss": "gloss",
    ("string", "bow_length"): "length as marked", ("finish", "bow_length"): "length along the back",
    ("finish", "family"): "product", ("arrow-match", "old_weight"): "weight as it came",
    ("arrow-match", "new_weight"): "weight", ("arrow-match", "draw_length"): "archer's draw",
    ("weight-reduction", "draw_length"): "draw", "temperature": "warmth", "seal_with": "seal",
    "reducer": "reducer", "edge_width": "off the width",
}
"""What a calculator asks for, by the person's own name, as far as that is one of the readings below."""

DERIVED_HERE = (("string", "draw_weight"),)
"""What no person reads: worked out from the curve."""

FIRST = ("bow", "archer", "string", "look", "first_draw")
ROUNDS = (
    (FIRST, "inspection"), (("reading",), "tiller"), ((), "tracking"), (("agreed", "edges as they came"),
                                                                      "weight-reduction"),
    (("strokes", "read again"), "strokes"), ((), "arrow-match"), (("strokes", "read again"), "tracking"),
    (("product", "air", "coats"), "finish"),
)
"""Of each bow, one after the other: sheets that are filled in, then the calculator that is opened."""

VISITS = 40
BOWS = 6


class Bow:
    """An invented bow: what a person reads off it, by number and by how often it was sanded."""

    def __init__(self, number: int):
        self.number = number
        self.sanded = 0

    def read(self, name: str) -> str:
        """Return what is read or decided, as it is typed."""
        return self._facts()[name]

    def _facts(self) -> dict[str, str]:
        n, done = self.number, self.sanded
        first = 47 + 1.5 * n
        weight = first - 1.75 * done
        part = f"{n}/64"
        return {
            "tag": str(61 + n), "title": f"{60 + n} in bow of no one", "seen": "yes",
            "draw": "28 in", "draw agreed": "28 in", "draw of the test": "28 in",
            "family": ("recurve", "reflex-deflex")[n % 2], "length along the belly": f"{60 + n} in",
            "length along the back": f"{60 + n} 1/4 in", "length as marked": f"{60 + n} 1/2 in",
            "riser": f"{17 + n / 2:g} in", "girth": f"{5.5 + n / 8:g} in", "tips": "plain", "old": "yes",
            "core": ("white ash", "hard maple", "hickory")[n % 3], "hold": ("under", "split")[n % 2],
            "archer's draw": f"{26 + n / 4:g} in", "string": "polyester", "weight": f"{weight:g} lb",
            "weight as it came": f"{first:g} lb", "weight wanted": f"{first - 6:g} lb", "place": "fadeout",
            "upper": f"{7.5 + n / 32 - done / 16:g} in", "lower": f"{7.25 + n / 32 - done / 64:g} in",
            "brace": f"{7.75 + n / 16:g} in", "tiller wanted": f"{part} in" if n else "0 in",
            "curve": ";".join(f"{draw} in:{share * weight:.2f} lb" for draw, share in (
                (12, 0.21), (16, 0.457), (20, 0.63), (24, 0.79), (26, 0.89), (28, 1.0))),
            "upper sections": _sections(n, 0), "lower sections": _sections(n, 1),
            "glass": f"{0.040 + n / 1000:.3f} in", "tip": f"{0.5 + n / 32:g} in",
            "finish": f"satin {n}", "gloss": f"{25 + n} GU", "off the width": "0 in",
            "upper strokes": str(30 + n + 5 * done), "lower strokes": str(45 + n + 5 * done), "paper": "P120",
            "edges": f"{part} in" if n else "0 in", "product": "one-part-urethane", "seal": "same",
            "reducer": f"{5 + n} %", "warmth": f"{65 + n} °F",
            "seal coats": "1", "build coats": str(1 + n), "coats over": str(2 + n), "last coats": "1",
            "start": f"2026-05-{10 + n}",
            "offset": f"{(n - done) / 64:.4f} in", "height": f"{2 + n / 16 + done / 64:g} in",
            "groove": f"{0.001 * n:.3f} in", "groove length": f"{1.25 + n / 16:g} in",
            "spine": f"{45 + n} lb", "shaft": f"{300 + n} gr", "arrow": f"{28 + n / 8:g} in",
            "point": f"{120 + n} gr", "nock": f"{8 + n} gr", "feathers": f"{26 + n} gr", "insert": f"{n} gr",
            "thickness of the shaft": "11/32 in", "window": ("centre", "before", "past")[n % 3],
            "wood of the shaft": "port-orford-cedar", "feathers begin": f"{1 + n / 16:g} in",
            "feathers are": f"{4 - n / 16:g} in",
        }


AT_THE_CALCULATOR = {
    "offset_tip": "offset", "height_tip": "height", "offset_riser": "offset", "groove_outer": "groove",
    "groove_inner": "groove", "groove_length": "groove length", "spine": "spine", "shaft_mass": "shaft",
    "length": "arrow", "point_mass": "point", "nock_mass": "nock", "feather_mass": "feathers",
    "insert_mass": "insert", "diameter": "thickness of the shaft", "window": "window",
    "species": "wood of the shaft", "feather_start": "feathers begin", "feather_length": "feathers are",
}
"""What is first typed for a calculator, by the person's own name; the limb stands before it on the form."""


def _sections(number: int, limb: int) -> str:
    more = number / 500 + limb / 200
    return ";".join(f"{place} in:{width} in:{thick + more:.3f} in" for place, width, thick in (
        (2, 1.625, 0.291), (7, 1.5625, 0.279), (13, 1.375, 0.263), (19, 0.8125, 0.247)))


class Count:
    """What a person has typed, and what the records gave.

    typed, filled: figures. keystrokes, again: letters typed, and those of them typed before for the same
    bow. foreign: figures offered that are not this bow's own. left_over: facts that neither a record nor the
    person knew. unanswered: visits that were refused.
    """

    def __init__(self) -> None:
        self.visits = 0
        self.typed = 0
        self.keystrokes = 0
        self.again = 0
        self.filled = 0
        self.foreign: list[str] = []
        self.left_over: list[str] = []
        self.unanswered: list[str] = []
        self.entries = 0


class Person:
    """Types what has to be typed, and counts it."""

    def __init__(self) -> None:
        self.count = Count()
        self.bows = [Bow(number) for number in range(BOWS)]
        self.records: list[list[str]] = [[] for _ in range(BOWS)]
        self._typed: dict[tuple[int, str, str], str] = {}
        self._last: dict[tuple[int, str], str] = {}
        self._ids = 0
        self._now = 0

    def _type(self, bow: Bow, place: str, name: str) -> str:
        """Return a figure as typed; whether it was typed before for this bow is counted."""
        text = bow.read(name)
        self.count.typed += 1
        self.count.keystrokes += len(text)
        if self._typed.get((bow.number, name, place)) == text:
            self.count.again += len(text)
        self._typed[(bow.number, name, place)] = text
        self._last[(bow.number, name)] = text
        return text

    # Time and entries ----------------------------------------------------------------

    def _moment(self) -> str:
        self._now += 25
        day, minute = divmod(self._now, 600)
        return f"2026-0{4 + day // 28}-{1 + day % 28:02}T{9 + minute // 60:02}:{minute % 60:02}+02:00"

    def _id(self) -> str:
        self._ids += 1
        return entry_id(self._ids, 0)

    def record(self, bow: Bow) -> str:
        """Return the record of a bow as JSON."""
        return "[" + ",".join(self.records[bow.number]) + "]"

    def fill_in(self, bow: Bow, form: str) -> None:
        """Write an entry on a sheet of a bow's record."""
        sheet = {"read again": "reading", "edges as they came": "bow"}.get(form, form)
        if form == "strokes":
            bow.sanded += 1
        last = dict(ask("stand", entries=self.record(bow))["last"]) if form in AT_THE_BENCH else {}
        pairs = []
        for fact, name in FORMS[form].items():
            if last.get(f"{sheet}.{fact}") == bow.read(name):
                self.count.filled += 1
                pairs.append((fact, bow.read(name)))
            else:
                # a tick is made anew at every look; two faces have a glass each
                which = f"{fact} {self._ids}" if name == "seen" else fact if name == "glass" else ""
                pairs.append((fact, self._type(bow, which, name)))
        made = ask("take", sheet=sheet, id=self._id(), at=self._moment(), pairs=pairs)
        if made["errors"]:
            raise ValueError(f"{form}: {made['errors']}")
        self.records[bow.number].append(made["entry"])

    # Calculators ---------------------------------------------------------------------

    def visit(self, bow: Bow, name: str) -> None:
        """Open a calculator for a bow, type what it lacks, and keep its answer."""
        calculator = catalog.find(name)
        chosen = [(each.id, each.default) for each in inputs_of(calculator)]
        found = ask("fill", entries=self.record(bow), calculator=name, pairs=chosen)["filled"]
        told = {each["input"]: each for each in found if each["text"]}
        self._check(bow, calculator, told)
        stale = {id: "stale " + each["since"] for id, each in told.items() if each["stale"]}
        typed = []
        for each in self._lacking(calculator, told, stale if name == "tracking" else {}):
            limb, _, rest = each.id.partition("_") if name == "tracking" else ("", "", each.id)
            own = AT_THE_CALCULATOR.get(each.id) or AT_THE_CALCULATOR.get(rest)
            if own is None:
                self.count.left_over.append(f"{name} {each.id}")
                continue
            typed.append((each.id, self._type(bow, limb + rest, own)))
            stale.pop(each.id, None)
        self._answer(bow, calculator, told, typed, stale)

    def _lacking(self, calculator: Calculator, told: dict[str, dict[str, object]],
                 stale: dict[str, str]) -> list[Input]:
        """Return the facts that a form asks for and that stand on it neither fresh nor at all."""
        known = [(id, str(each["text"])) for id, each in told.items()]
        values = Job(calculator, [*known, ("units", "imperial")], {}).values
        return [each for each in inputs_of(calculator) if each.role == FACT and not each.optional
                and matters(each, values) and (each.id not in told or each.id in stale)]

    def _check(self, bow: Bow, calculator: Calculator, told: dict[str, dict[str, object]]) -> None:
        """Count what a record offers, and note what is no figure of this bow."""
        by_id = {each.id: each for each in inputs_of(calculator)}
        self.count.filled += len(told)
        for id, each in told.items():
            name = ASKED.get((calculator.id, id)) or ASKED.get(id)
            if name is None or (calculator.id, id) in DERIVED_HERE:
                continue
            own = self._last.get((bow.number, name)) or bow.read(name)
            if not _is_same(by_id[id], str(each["text"]), own):
                self.count.foreign.append(f"{calculator.id} {id}: {each['text']}, not {own}")

    def _answer(self, bow: Bow, calculator: Calculator, told: dict[str, dict[str, object]],
                typed: list[tuple[str, str]], stale: dict[str, str]) -> None:
        """Ask for the answer, and keep it with what was typed for it."""
        self.count.visits += 1
        texts = {each.id: "" if each.optional else each.default for each in inputs_of(calculator)}
        texts.update({id: str(each["text"]) for id, each in told.items()}, **dict(typed))
        pairs = [*texts.items(), ("units", "imperial")]
        job = answer.work_out(calculator, pairs, stale)
        if job.outcome is None:
            self.count.unanswered.append(f"{calculator.id}: {[each.message for each in job.problems]}")
            return
        made = ask("keep", entries=self.record(bow), calculator=calculator.id, pairs=pairs, typed=typed,
                   figures=[urlencode([pair]) for pair in pairs], said=[("headline", "as it was said")],
                   ids=[self._id() for _ in range(8)], at=self._moment(), source=calculator.id, readings=True)
        self.records[bow.number] += [each["text"] for each in made["entries"]]


def _is_same(asked: Input, text: str, own: str) -> bool:
    if text == own or own in text.replace("-", " "):
        return True
    if asked.columns or asked.choices:
        return text.replace(" ", "") == own.replace(" ", "")
    return abs(parse(text, asked.kind) - parse(own, asked.kind)) < 1e-9


def ask(task: str, **more: object) -> dict[str, Any]:
    """Return the answer to a question as a page puts it: JSON in, JSON out."""
    answer.begin(json.dumps({"task": task, "units": "imperial", **more}))
    found: dict[str, Any] = json.loads(answer.advance())
    if "refused" in found:
        raise ValueError(f"{task}: {found['refused']}")
    return found


def plan() -> Iterator[tuple[int, tuple[str, ...], str]]:
    """Yield the visits: the bows take turns, so that hardly any is followed by itself."""
    for forms, calculator in ROUNDS:
        for number in range(BOWS):
            yield number, forms, calculator


def journey() -> Person:
    """Return the person after all visits."""
    person = Person()
    for number, forms, calculator in list(plan())[:VISITS]:
        bow = person.bows[number]
        for form in forms:
            person.fill_in(bow, form)
        person.visit(bow, calculator)
    person.count.entries = sum(len(each) for each in person.records)
    return person
