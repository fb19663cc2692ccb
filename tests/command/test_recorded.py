"""A calculator on a bow's record: its inputs from there, nothing from the example, its answer kept there."""

import json
from urllib.parse import parse_qsl

import pytest

from calc import catalog
from calc.__main__ import BAD_INPUT, COMPUTED, main
from calc.record import file
from calc.record.bindings import BOUND
from calc.record.entries import Entry
from tests.record.bench import Bench


@pytest.fixture
def bench():
    bench = Bench().came_in()
    bench.write("archer", hold="under", draw="27 in")
    bench.write("bow", riser_length="19 in")
    bench.write("reading", brace="8 1/4 in", measured="fadeout", upper="7 5/8 in", lower="7 5/16 in")
    return bench


@pytest.fixture
def path(bench, tmp_path):
    path = tmp_path / "31.html"
    path.write_text(file.page(bench.entries, "imperial"), "utf-8")
    return path


def ask(capsys, *words):
    status = main([str(word) for word in words])
    said = capsys.readouterr()
    return status, said.out, said.err


def answers(path):
    return [each for each in file.record_in(path.read_text("utf-8")).entries if each.sheet == "answer"]


def test_inputs_come_from_the_record_and_its_checks_stand_above(path, bench, capsys):
    bench.write("strokes", lower_belly="12", paper="P120")
    path.write_text(file.page(bench.entries, "imperial"), "utf-8")
    status, out, err = ask(capsys, "tiller", "--record", path)
    assert (status, err) == (COMPUTED, "")
    above, below = out.split("The upper distance is 5/16 in larger")
    assert above.startswith("31 64 in recurve\nStop: No full draw from a distance")
    assert "Watch: Read before the last change to the bow" in below
    assert "In order" not in below


def test_what_is_not_known_is_refused_by_name_and_how_to_learn_it(path, capsys):
    status, out, err = ask(capsys, "grip", "--record", path)
    assert (status, out) == (BAD_INPUT, "")
    assert "  Wood of the riser (--wood). Name the riser's wood as the table of woods does" in err
    assert "(--draw-weight). Read draw weight with its draw" in err
    assert "--bow-length" not in err  # known
    assert "--own-strength" not in err  # not asked for
    assert "--between" not in err  # may be empty


@pytest.mark.parametrize("calculator", catalog.IDS)
def test_an_empty_record_answers_nothing_by_the_example(calculator, tmp_path, capsys):
    path = tmp_path / "32.html"
    nothing = Entry("00000000020000", "2026-05-05T09:00+02:00", "bow", (("tag", "32"),))
    path.write_text(file.page([nothing], "imperial"), "utf-8")
    status, out, err = ask(capsys, calculator, "--record", path)
    assert (status, out) == (BAD_INPUT, "")
    assert err.startswith("--record: “")
    assert err.count("(--") > 0


@pytest.mark.parametrize("calculator", catalog.IDS)
def test_a_record_with_one_fact_still_lacks_the_others(calculator, tmp_path, capsys):
    path = tmp_path / "33.html"
    known = Entry("00000000020000", "2026-05-05T09:00+02:00", "reading", (("brace", "8 in"),))
    path.write_text(file.page([known], "imperial"), "utf-8")
    status, _, err = ask(capsys, calculator, "--record", path)
    assert status == BAD_INPUT
    assert ("--brace-height" in err) is False
    assert len(BOUND[calculator]) > 0


def test_an_option_stands_before_the_record_and_changes_nothing_in_it(path, capsys):
    before = path.read_bytes()
    status, out, _ = ask(capsys, "tiller", "--record", path, "--lower", "7 9/16 in", "--json")
    assert status == COMPUTED
    found = json.loads(out)
    assert found["inputs"]["lower"] == pytest.approx(7.5625 * 0.0254)
    assert found["standing"] == {}
    assert found["record"]["title"] == "31 64 in recurve"
    assert path.read_bytes() == before


def test_strict_is_content_with_a_record_that_knows_all(path, capsys):
    assert ask(capsys, "tiller", "--record", path, "--strict")[0] == COMPUTED


def test_units_of_the_page_do_not_change_what_the_record_says(path, bench, capsys):
    bench.write("reading", brace="8")  # bare: inches, as on the form where it was typed
    path.write_text(file.page(bench.entries, "imperial"), "utf-8")
    status, out, _ = ask(capsys, "tiller", "--record", path, "--metric", "--json")
    assert status == COMPUTED
    assert json.loads(out)["inputs"]["brace_height"] == pytest.approx(8 * 0.0254)


def test_an_answer_is_kept_as_it_was_said(path, capsys):
    before = path.read_bytes()
    status, out, _ = ask(capsys, "tiller", "--record", path, "--keep", "--lower", "7 7/16 in")
    assert status == COMPUTED
    assert path.with_name("31.html~").read_bytes() == before
    [kept] = answers(path)
    facts = dict(kept.facts)
    assert dict(parse_qsl(facts["pairs"]))["lower"] == "7 7/16 in"
    assert dict(parse_qsl(facts["pairs"]))["upper"] == "7 5/8 in"
    assert facts["headline"] in out
    assert facts["origin"].endswith("typed: lower, units")
    assert dict(pair.split("=") for pair in facts["results"].split(";"))["difference"].startswith("0.00476")
    assert "band=" in facts["checks"]
    assert kept.source.startswith("tiller ")
    assert main(["tiller", "--link", "#" + facts["pairs"]]) == COMPUTED
    assert facts["headline"] in capsys.readouterr().out


def test_keeping_again_adds_another_answer(path, capsys):
    for _ in range(2):
        assert ask(capsys, "tiller", "--record", path, "--keep")[0] == COMPUTED
    assert len({each.id for each in answers(path)}) == 2


def test_a_refused_question_keeps_nothing(path, capsys):
    before = path.read_bytes()
    assert ask(capsys, "grip", "--record", path, "--keep")[0] == BAD_INPUT
    status, _, err = ask(capsys, "tiller", "--record", path, "--keep", "--upper", "heavy")
    assert status == BAD_INPUT
    assert "“heavy” is not a length" in err
    assert path.read_bytes() == before


@pytest.mark.parametrize(("words", "said"), [
    (["--keep"], "--keep: name the bow's file with --record."),
    (["--record", "none.html"], "“none.html” cannot be read"),
    (["--record", "none.html", "--link", "#upper=7+in"], "a link is complete by itself"),
])
def test_what_does_not_go_together_is_said(words, said, capsys):
    status, out, err = ask(capsys, "tiller", *words)
    assert (status, out) == (BAD_INPUT, "")
    assert said in err


def test_a_figure_from_the_curve_says_so(path, bench, capsys):
    bench.write("reading", curve="12 in:11 lb;20 in:33 lb;26 in:47 lb;28 in:53 lb")
    bench.write("bow", marked_length="64 in", old="yes")
    bench.write("string", material="polyester", strands="14")
    path.write_text(file.page(bench.entries, "imperial"), "utf-8")
    status, out, err = ask(capsys, "string", "--record", path)
    assert (status, err) == (COMPUTED, "")
    assert "from the draw curve of 5 May" in out


def test_check_says_when_nothing_stands_in_the_way(path, capsys):
    assert main(["record", "check", str(path)]) == COMPUTED
    assert capsys.readouterr().out == "By this record nothing stands in the way. It cannot see the bow.\n"


def test_show_sets_came_agreed_and_now_side_by_side(path, capsys):
    assert main(["record", "show", str(path)]) == COMPUTED
    out = capsys.readouterr().out
    table = [line.split("  ") for line in out.splitlines()]
    assert [cell.strip() for cell in table[4] if cell.strip()] == ["As it came", "Agreed", "Now"]
    assert [cell.strip() for cell in table[5] if cell.strip()] == ["Draw weight", "53 lb", "45 lb", "53 lb"]
