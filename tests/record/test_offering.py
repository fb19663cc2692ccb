"""An offer to an owner: what its link carries, what it never does, and what a stranger's may not do."""

import base64
import json

import pytest

from calc import answer, catalog
from calc.declaring import inputs_of
from calc.record import offering
from calc.record.entries import entries_json
from tests.record.bench import Bench
from tests.record.elements import text_of

AT = "2026-05-12T18:10+02:00"
MOST_OF_A_MESSENGER = 2000
ADDRESS = "https://a-rather-long-name-of-a-host.example/with/a/folder/bow/#"
FORM = [(each.id, each.default) for each in inputs_of(catalog.find("quote"))]
RESULTS = [("price", "715.204"), ("price_low", "631.36"), ("price_high", "799.04"), ("hours", "50760.0")]


def ask(task, units="imperial", **more):
    answer.begin(json.dumps({"task": task, "units": units, **more}))
    return json.loads(answer.advance())


def offered(pairs=FORM, results=RESULTS, entries="[]", **more):
    asked = {"entries": entries, "pairs": pairs, "results": results, "at": AT, "word": "", "priced": False}
    return ask("offer", **{**asked, **more})


def carried(link):
    """Return what stands in a link, by the reference's own base64url."""
    inner = link.split(".")[1]
    return base64.urlsafe_b64decode(inner + "=" * (-len(inner) % 4)).decode()


def packed(*lines):
    inner = base64.urlsafe_b64encode("\n".join(lines).encode()).decode().rstrip("=")
    return f"q1.{inner}.{len(inner)}"


def told(link, now=AT, units=""):
    """Return the owner's page as the texts of its elements, in order."""
    return [text_of(each, " ") for each in ask("told", link=link, now=now, units=units)["tree"]]


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("bow", tag="31", marked_length="64 in", family="recurve", title="MARKER")
    bench.write("owner", name="MARKER", reach="MARKER")
    return bench


def test_the_owner_reads_first_what_the_bow_is_to_become(bench):
    link = offered(entries=entries_json(bench.entries), word="Shall the letters stay?")["link"]
    [named, headline, word, *_] = told(link)
    assert named == "Your bow: recurve, 64 in long, tag 31.   offered on Tue 12 May 2026, 18:10"
    assert headline == "Offered: to bring your bow from 53.0 lb to 45.0 lb at a draw of 28 in."
    assert word == "From your bowyer: “Shall the letters stay?”"
    assert told(link, units="metric")[1] == (
        "Offered: to bring your bow from 235.8 N to 200.2 N at a draw of 711.2 mm.")


def test_what_is_promised_and_what_is_not_stands_with_every_offer():
    page = told(offered()["link"])
    for heading in ("What is done", "What is promised", "What is not", "The law", "What you can do now"):
        assert heading in page
    whole = " ".join(page)
    assert "If a crack, lifted glass or a parted layer is found, work stops and you are asked." in whole
    assert "Nobody can promise that it will not." in whole
    assert "Where the law of the place gives you more than this, the law counts." in whole


@pytest.mark.parametrize("priced", [False, True])
def test_a_price_goes_along_where_the_sender_says_so_and_nowhere_else(priced):
    found = offered(priced=priced)
    for text in (carried(found["link"]), " ".join(told(found["link"])), found["messages"][0]["text"]):
        assert [each in text for each in ("715.20", "631.36", "799.04")] == [priced] * 3


@pytest.mark.parametrize("priced", [False, True])
def test_no_rate_no_hours_no_cost_and_nothing_of_the_record_but_its_marks(bench, priced):
    secret = {"rate": "713.25", "markup": "71.325 %", "tax": "41.325 %", "tasks": "inspect:71.3h:71.4h:71.5h",
              "materials": "finish:7132.5"}
    form = [(name, secret.get(name, text)) for name, text in FORM]
    found = offered(form, [*RESULTS, ("hours_low", "7133")], entries_json(bench.entries), priced=priced)
    for text in (carried(found["link"]), " ".join(told(found["link"])), found["messages"][0]["text"]):
        assert not [each for each in ("713", "71.3", "71.4", "1.325", "50760", "MARKER") if each in text]
        assert not any(each.id in text for each in bench.entries)


def test_the_longest_offer_goes_through_a_messenger(bench):
    everything = [(name, ";".join(f"{id}:1h:1h:1h" for id, _ in offering.TASKS) if name == "tasks" else
                   ";".join(f"{id}:1" for id, _ in offering.ITEMS) if name == "materials" else text)
                  for name, text in FORM]
    found = offered(everything, entries=entries_json(bench.entries), priced=True, word="\N{SNOWMAN}" * 400)
    assert len(ADDRESS + found["link"]) <= MOST_OF_A_MESSENGER
    assert found["left"] == ["the end of your line"]
    assert offering.read_link(found["link"]).tasks == tuple(id for id, _ in offering.TASKS)


@pytest.mark.parametrize(("now", "ended"), [
    ("2026-05-29T23:59+02:00", False), ("2026-05-30T00:00+02:00", True)])
def test_an_offer_says_when_it_has_ended(now, ended):
    page = told(offered()["link"], now)
    assert ("This offer ended on Fri 29 May 2026. Ask for a new one." in page) is ended


@pytest.mark.parametrize(("link", "said"), [
    ("q2.abcd.4", "This is no link to a bow, or one that a later release wrote."),
    ("q1.abcd.5", "This link has lost its end on the way: ask for it again, and copy all of it."),
    (packed("tag 31"), "This link does not say when it was made."),
])
def test_what_is_no_offer_is_refused_in_a_sentence(link, said):
    assert ask("told", link=link, now=AT)["refused"] == said


def test_of_a_strangers_link_only_what_is_in_bounds_is_shown():
    page = offering.read_link(packed(
        "moment " + AT, "units cubits", "tag <img>", "weight_now 9999 lb", "weight_wanted <b>",
        "tasks sand:x:<b>", "items finish:cash", "holds_until 2226-01-01", "rate 45",
        "word <b>yes</b>", "prices 3:2:1"))
    assert (page.units, page.tag, page.facts, page.tasks, page.items, page.prices) == (
        "imperial", "", {}, ("sand",), ("finish",), None)
    assert page.word == "<b>yes</b>"


@pytest.mark.parametrize(("prices", "read"), [
    ("2:1:3", (2.0, 1.0, 3.0)), ("1:1:1", (1.0, 1.0, 1.0)), ("1:2:3", None), ("3:1:2", None),
    ("-1:-1:-1", None), ("0:0:10000000", (0.0, 0.0, 1e7)), ("0:0:10000001", None), ("nan:nan:nan", None),
    ("2:1", None), ("", None),
])
def test_prices_are_read_in_order_and_within_reason(prices, read):
    assert offering.read_link(packed("moment " + AT, "prices " + prices)).prices == read
