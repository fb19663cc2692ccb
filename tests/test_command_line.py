"""`python -m calc`: the same answers, the same refusals, and an exit status."""

import json
import os
import shlex
import subprocess
import sys

import pytest

from calc import catalog
from calc.__main__ import main
from calc.catalog import IDS
from calc.declaring import ROWS, inputs_of
from calc.quantities import kind_of
from scripts.blocks.reference import example_command


def run(capsys, *words):
    try:
        status = main(list(words))
    except SystemExit as stop:  # argparse refuses unknown options in its own way
        status = stop.code
    out, err = capsys.readouterr()
    return status, out, err


def test_answers_in_the_terminal(capsys):
    status, out, err = run(capsys, "tiller", "--upper", "7 5/8 in", "--lower", "7 5/16 in")
    assert status == 0
    assert out.startswith("The upper distance is 5/16 in larger than the lower")
    assert not err


def test_json_is_in_si(capsys):
    status, out, _ = run(capsys, "tiller", "--upper", "7 5/8 in", "--lower", "7 5/16 in", "--json")
    answer = json.loads(out)
    assert status == 0
    assert answer["calculator"] == "tiller"
    assert answer["inputs"]["upper"] == pytest.approx(0.193675)
    assert answer["results"]["difference"] == {"value": pytest.approx(0.0079375), "unit": "m"}
    assert {check["level"] for check in answer["checks"]} <= {"ok", "watch", "stop"}


def test_files_of_a_result_are_saved(capsys, tmp_path):
    status, out, _ = run(capsys, "finish", "--save", str(tmp_path / "plans"))
    assert status == 0
    assert out.startswith("Mix about")
    saved = (tmp_path / "plans" / "finish-schedule.ics").read_bytes()
    assert saved.startswith(b"BEGIN:VCALENDAR\r\n")
    assert saved.endswith(b"END:VCALENDAR\r\n")


def test_dates_are_dates_in_json(capsys):
    _, out, _ = run(capsys, "finish", "--start", "2026-5-9", "--json")
    assert json.loads(out)["inputs"]["start"] == "2026-05-09"
    _, listed, _ = run(capsys, "--list", "--json")
    [finish] = [each for each in json.loads(listed) if each["id"] == "finish"]
    [start] = [each for each in finish["inputs"] if each["id"] == "start"]
    assert (start["kind"], start["low"], start["high"]) == ("date", "1990-01-01", "2199-12-31")


def test_unit_systems_change_words_and_not_values(capsys):
    _, imperial, _ = run(capsys, "tiller", "--upper", "182 mm", "--json", "--imperial")
    _, metric, _ = run(capsys, "tiller", "--upper", "182", "--json", "--metric")
    assert json.loads(imperial)["results"] == json.loads(metric)["results"]


def test_a_value_may_start_with_a_minus_sign(capsys):
    status, out, _ = run(capsys, "weight-reduction", "--tiller-now", "-1/8 in", "--json")
    assert status == 0
    assert json.loads(out)["inputs"]["tiller_now"] == pytest.approx(-0.003175)


@pytest.mark.parametrize("text", ["", "abc", "-3", "1e999", "7 3/0", "7" * 10_000, "7 lb", "NaN", "\u0667"])
def test_bad_input_is_a_sentence_and_status_2(capsys, text):
    status, out, err = run(capsys, "tiller", "--upper", text)
    assert status == 2
    assert not out
    assert err.startswith("Upper tiller distance")
    assert "Traceback" not in err


def test_a_lone_mark_is_a_value_like_any_other(capsys):
    status, out, err = run(capsys, "tiller", "--upper=--")
    assert status == 2
    assert not out
    assert err.startswith("Upper tiller distance: “--” is not a length")


@pytest.mark.parametrize("id", ["finish", "tiller"])
def test_a_folder_that_cannot_be_written_is_a_sentence_and_status_2(capsys, tmp_path, id):
    taken = tmp_path / "taken"
    taken.write_text("a file", encoding="utf-8")
    for folder in (taken, taken / "below"):
        status, out, err = run(capsys, id, "--save", str(folder))
        assert status == 2
        assert not out
        assert err.startswith("--save: nothing can be written into the folder")
    assert taken.read_text(encoding="utf-8") == "a file"


@pytest.mark.parametrize("words", [("nothing",), ("tiller", "--unknown", "1"), ("tiller", "7 in")])
def test_words_that_are_not_understood_are_status_2(capsys, words):
    status, out, err = run(capsys, *words)
    assert status == 2
    assert not out
    assert err


def test_lists_the_calculators(capsys):
    status, out, _ = run(capsys)
    assert status == 0
    assert all(id in out for id in IDS)
    _, out, _ = run(capsys, "--list", "--json")
    described = json.loads(out)
    assert [each["id"] for each in described] == list(IDS)
    for each in described:
        for asked in each["inputs"]:
            assert {"id", "kind", "unit", "default", "low", "high"} <= set(asked)
            assert ("choices" in asked) == (asked["kind"] == "choice")
            assert ("columns" in asked) == (asked["kind"] == "rows")


def test_runs_as_a_module():
    found = subprocess.run([sys.executable, "-m", "calc", "tiller", "--upper", "abc"],
                           capture_output=True, text=True, check=False)
    assert found.returncode == 2
    assert found.stderr.startswith("Upper tiller distance")


@pytest.mark.parametrize("word", ["-h", "--help"])
def test_asked_for_help_it_lists_the_calculators(word, capsys):
    assert run(capsys, word) == run(capsys)


def test_help_says_of_tables_alone_how_their_rows_are_written(capsys):
    _, out, _ = run(capsys, "strokes", "--help")
    tables = [each for each in inputs_of(catalog.find("strokes")) if each.kind == ROWS]
    assert " ".join(out.split()).count("Rows apart by ;") == len(tables) > 0


def test_a_terminal_that_lacks_a_mark_still_gets_its_answer():
    plain = dict(os.environ, PYTHONIOENCODING="ascii")
    for words in (("spray-air",), ("spray-air", "--json"), ("tiller", "--help"),
                  ("tiller", "--upper", "½ kg")):
        found = subprocess.run([sys.executable, "-m", "calc", *words], capture_output=True, text=True,
                               check=False, env=plain)
        assert "Traceback" not in found.stderr
        assert found.returncode == (2 if "½ kg" in words else 0)
        assert (found.stderr if found.returncode else found.stdout).isascii()


# Links and whose figures they are -------------------------------------------------


def test_json_says_which_facts_are_the_examples(capsys):
    _, out, _ = run(capsys, "tiller", "--upper", "7 1/4 in", "--json")
    answer = json.loads(out)
    assert answer["standing"]["lower"] == "example"
    assert "upper" not in answer["standing"]
    assert [each["level"] for each in answer["checks"] if each["id"] == "standing"] == ["watch"]


def test_strict_refuses_the_examples_facts_by_name(capsys):
    status, out, err = run(capsys, "string", "--strict", "--bow-length", "64 in")
    assert status == 2
    assert not out
    assert "Draw weight (--draw-weight)" in err
    assert "--bow-length" not in err
    status, out, err = run(capsys, "string", "--strict", "--bow-length", "64 in", "--draw-weight", "45 lb",
                           "--tips", "plain", "--old", "yes", "--material", "polyester", "--json")
    assert (status, err) == (0, "")
    assert json.loads(out)["standing"] == {}


@pytest.mark.parametrize("id", IDS)
def test_the_command_of_the_example_is_strict(capsys, id):
    words = shlex.split(example_command(catalog.find(id)).replace("\\\n", " "))[3:]
    status, _, err = run(capsys, *words, "--strict")
    assert (status, err) == (0, "")


def test_a_link_is_answered_with_what_it_left_out_as_it_was(capsys):
    status, out, err = run(capsys, "tiller", "--json", "--link",
                           "https://somewhere.example/book/calculators/tiller/#upper=182.6&units=metric")
    answer = json.loads(out)
    assert (status, err) == (0, "")
    assert answer["inputs"]["upper"] == pytest.approx(0.1826)
    assert answer["inputs"]["lower"] == pytest.approx(7.4375 * 0.0254)
    assert answer["standing"]["lower"] == "example"


def test_an_option_goes_before_a_links_figure(capsys):
    words = ["tiller", "--link", "#upper=182.6&lower=190&units=metric", "--json"]
    _, out, _ = run(capsys, *words, "--lower", "185")
    assert json.loads(out)["inputs"]["lower"] == pytest.approx(0.185)
    _, out, _ = run(capsys, *words, "--lower", "7 1/4", "--imperial")
    inputs = json.loads(out)["inputs"]
    assert inputs["lower"] == pytest.approx(0.18415)
    assert inputs["upper"] == pytest.approx(0.1826)


@pytest.mark.parametrize("link", ["https://a.example/calculators/grip/#factor=4", "calculators/tiller/", ""])
def test_an_address_that_is_no_link_of_it_is_a_sentence_and_status_2(capsys, link):
    status, out, err = run(capsys, "tiller", "--link", link)
    assert (status, out) == (2, "")
    assert err.startswith("--link: ")


# What does not count, and what is typed back ----------------------------------------

TWICE = "“{}” was given more than once; the first one counts."


@pytest.mark.parametrize(("words", "note"), [
    (("clear-air", "--changes", "20 per hour"),
     "“changes” does not count while “known” is “flow”; it was left out."),
    (("grit", "--start-cami", "c60"), "“start_cami” does not count while “scale” is “p”; it was left out."),
    (("tiller", "--upper", "7 in", "--upper", "8 in"), TWICE.format("upper")),
    (("tiller", "--link", "#upper=7+in&upper=8+in"), TWICE.format("upper")),
    (("tiller", "--link", "#upper=7+in", "--link", "#upper=8+in"), TWICE.format("link")),
    (("tiller", "--link", "#upper=7+in&colour=red"),
     "“colour” is not something this page asks for; it was left out."),
])
def test_what_does_not_count_is_named(capsys, words, note):
    status, out, _ = run(capsys, *words)
    assert status == 0
    assert note in out
    _, out, _ = run(capsys, *words, "--json")
    answer = json.loads(out)
    assert answer["notes"] == [note]
    if "upper" in answer["inputs"]:
        assert answer["inputs"]["upper"] == pytest.approx(0.1778)


@pytest.mark.parametrize(("words", "field"), [
    (("insert", "--spur", "banana"), "Spur"), (("string", "--own-shorter", "9 ft"), "Shorter"),
    (("finish", "--lettering="), "Lettering"), (("finish", "--reducer", "1/4"), "Reducer"),
    (("quote", "--markup", "0.1"), "Mark-up"), (("quote", "--tax", ".07"), "Tax"),
    (("grit", "--slope", "1/10"), "Scratch"),
])
def test_what_cannot_be_meant_is_refused(capsys, words, field):
    status, out, err = run(capsys, *words)
    assert (status, out) == (2, "")
    assert field.lower() in err.lower()


def test_a_share_in_a_link_is_the_percentage_that_it_was(capsys):
    status, out, _ = run(capsys, "quote", "--link", "#tax=0.5&markup=1/4", "--json")
    assert status == 0
    inputs = json.loads(out)["inputs"]
    assert (inputs["tax"], inputs["markup"]) == (pytest.approx(0.005), pytest.approx(0.0025))


def in_si(each, value):
    """Return a value of the JSON as text with its SI unit."""
    if value is None:
        return ""
    if each.kind == ROWS:
        return ";".join(":".join(in_si(column, row[column.id]) for column in each.columns) for row in value)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        [unit] = [unit for unit in kind_of(each.kind).units if (unit.factor, unit.offset) == (1.0, 0.0)][:1]
        return f"{value!r} {unit.name}"
    return str(value)


@pytest.mark.parametrize("id", IDS)
def test_the_json_of_an_answer_can_be_typed_back(capsys, id):
    """Every input as the JSON gives it, all digits and in SI, leads to the same answer."""
    _, out, _ = run(capsys, id, "--json")
    answer = json.loads(out)
    words = []
    for each in inputs_of(catalog.find(id)):
        value = answer["inputs"][each.id]
        if value is not None:
            words.append(f"--{each.id}={in_si(each, value)}")
    status, out, err = run(capsys, id, *words, "--json", "--strict")
    assert (status, err) == (0, "")
    again = json.loads(out)
    assert again["standing"] == {}
    for part in ("inputs", "results", "checks", "tables", "notes"):
        assert again[part] == answer[part]
