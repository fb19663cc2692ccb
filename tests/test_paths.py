"""Decision paths: every way ends, nothing is out of reach, and each end cites a page that exists."""

from pathlib import Path as File

import pytest

from calc import catalog as calculators
from calc.answer import work_out
from calc.paths import catalog
from calc.paths.declare import End, Path, answer, end, found, nodes, question, trail
from calc.tables import findings
from calc.tables.findings import LOOK, REPAIR, SHOOT, WALL
from tests.sentences import whole

DOCS = File(__file__).parent.parent / "docs"


@pytest.fixture(params=catalog.IDS)
def path(request):
    return catalog.find(request.param)


def ways(path):
    """Return every way through a path as the ids it visits; a way that loops ends in a repeated id."""
    by_id = {each.id: each for each in nodes(path)}
    open_ways = [(path.questions[0].id,)]
    done = []
    while open_ways:
        way = open_ways.pop()
        here = by_id[way[-1]]
        if isinstance(here, End) or way[-1] in way[:-1]:
            done.append(way)
        else:
            open_ways += [(*way, each.to) for each in here.answers]
    return done


def pages():
    """Return the address of every page, as a reader's browser sees it."""
    names = [file.relative_to(DOCS).with_suffix("").as_posix() for file in DOCS.rglob("*.md")]
    return {name.removesuffix("index") if name.endswith("index") else name + "/" for name in names}


def test_every_way_ends_in_a_verdict_without_turning_back(path):
    ends = {each.id for each in path.ends}
    for way in ways(path):
        assert way[-1] in ends, way
        assert len(set(way)) == len(way), way


def test_nothing_is_out_of_reach(path):
    assert {id for way in ways(path) for id in way} == {each.id for each in nodes(path)}


def test_a_path_is_a_tree(path):
    led_to = [each.to for asked in path.questions for each in asked.answers]
    assert sorted(led_to) == sorted({each.id for each in nodes(path)} - {path.questions[0].id})


def test_every_question_is_a_choice(path):
    for asked in path.questions:
        assert len(asked.answers) >= 2
        assert asked.text.endswith("?")
        assert len({each.text for each in asked.answers}) == len(asked.answers)


def test_every_end_cites_a_page_of_the_book(path):
    for each in path.ends:
        assert each.verdict
        assert each.reason.endswith(".")
        assert each.page.title
        assert each.page.address.partition("#")[0] in pages()


def test_the_trail_leads_from_the_first_question_to_each_end(path):
    for way in ways(path):
        steps = trail(path, way[-1])
        assert [asked.id for asked, _ in steps] == list(way[:-1])
        assert [given.to for _, given in steps] == list(way[1:])


def test_every_calculator_can_be_found():
    ends = catalog.find("which-calculator").ends
    assert {"calculators/" + id + "/" for id in calculators.IDS} == {
        each.page.address for each in ends if each.page.address.startswith("calculators/")}


def verdicts_of_line_ends():
    """Return what the inspection's form says to the finding of each end of the path about lines."""
    ends = catalog.find("line").ends
    form = calculators.find("inspection")
    every_look = [(each.id, "yes") for each in findings.LOOKS]
    jobs = {each.id: work_out(form, [*every_look, (each.finding, "yes")]) for each in ends}
    assert not any(job.problems or job.notes for job in jobs.values())
    return {id: dict(job.outcome.values)["verdict"] for id, job in jobs.items()}


def test_a_line_ends_as_the_form_judges_it():
    short = {each.id: each.short.lower() for each in findings.VERDICTS}
    judged = verdicts_of_line_ends()
    for each in catalog.find("line").ends:
        assert each.verdict.endswith(": " + short[judged[each.id]]), each.id


def test_a_line_across_a_limb_never_ends_in_shooting_or_mending():
    path = catalog.find("line")
    judged = verdicts_of_line_ends()
    for each in path.ends:
        answers = [given.to for _, given in trail(path, each.id)]
        if "finish-off" in answers and each.id != "scratch":
            assert judged[each.id] in (LOOK, WALL)


def test_no_line_across_goes_to_the_wall_before_the_finish_is_off():
    """A nail catches in a scratch of the lacquer just as well: the glass decides."""
    path = catalog.find("line")
    across = next(given for given in path.questions[0].answers if given.text.startswith("Across"))
    assert across.to == "finish-off"
    for each in path.ends:
        steps = trail(path, each.id)
        asked = [question.id for question, _ in steps]
        if across in [given for _, given in steps] and "nail" in " ".join(given.text for _, given in steps):
            assert asked.index("finish-off") == 1
    felt = next(each for each in path.questions if each.id == "across")
    assert felt.text.startswith("In the bare glass")
    scratch = next(each for each in path.ends if each.id == "scratch")
    assert verdicts_of_line_ends()["scratch"] == SHOOT
    assert [asked.id for asked, _ in trail(path, "scratch")] == ["way", "finish-off"]
    assert scratch.verdict.startswith("A scratch in the finish")


@pytest.mark.parametrize(("id", "verdict"), [ # common practice
    ("crack", WALL),
    ("white-lines", LOOK),
    ("crushed", WALL),
    ("glass-line", WALL),
    ("unsure-across", LOOK),
    ("scratch", SHOOT),
    ("core", WALL),
    ("ramp-lift", REPAIR),
    ("fadeout-lift", LOOK),
    ("limb-lift", LOOK),
    ("core-parted", WALL),
    ("parted", WALL),
    ("short-splinter", REPAIR),
    ("long-splinter", LOOK),
    ("across-splinter", WALL),
    ("crazing", SHOOT),
    ("crazed-glass", LOOK),
])
def test_where_a_line_ends(id, verdict):
    assert verdicts_of_line_ends()[id] == verdict


def test_an_end_cannot_stand_for_a_finding_that_is_not_there():
    with pytest.raises(ValueError, match=whole("no finding is called odd_line")):
        found("odd", "An odd line", "odd_line")


def test_a_path_that_loops_or_ends_nowhere_would_be_found():
    looping = Path("odd", "Odd", "", (question("a", "A?", answer("on", "b")),
                                      question("b", "B?", answer("back", "a"), answer("out", "c"))),
                   (end("c", "C", "So.", "Home", ""),))
    assert [way for way in ways(looping) if len(set(way)) < len(way)] == [("a", "b", "a")]
    with pytest.raises(KeyError):
        ways(Path("odd", "Odd", "", (question("a", "A?", answer("on", "nowhere")),), ()))
    with pytest.raises(ValueError, match=whole("nothing in paths is called abacus")):
        catalog.find("abacus")
