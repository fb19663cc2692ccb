"""The form of a calculator: everything named, tied together and escaped."""

import json
import re

import pytest

from calc import (
    catalog,
    declaring,
    outcome,
    reading,
)
from calc.former import FORMER
from scripts.blocks import form, reference
from scripts.blocks.extension import example_outcome
from scripts.blocks.tree import element, html_of
from tests.invented import calculator_of
from tests.site.markup import Elements

HOSTILE = """"><script>alert('x')</script><img src=x onerror=alert(1)>&amp;</textarea>"""
HOSTILE_NUMBER = '2 in "><script>alert(2)</script>'
TAKES_OFF = re.compile(r"\b((?<!give or )take|comes off|round|sand|sanding|strokes|stop for|drill)\b", re.IGNORECASE)
EMPTY_OUTCOME = {"tree": [["p", {"class": "rb-headline"}, HOSTILE], ["details", {"open": ""}], ["section", {}]],
                 "charts": [{"title": HOSTILE}], "files": []}


def hostile_calculator():
    """A calculator whose every text tries to break out of its place."""
    columns = tuple(declaring.quantity(id, HOSTILE, "thickness", default=HOSTILE_NUMBER, low="0.1 in",
                                       high="3 in", help=HOSTILE) for id in ("width", "depth"))
    shaft = declaring.choice("shaft", HOSTILE, (("wood", HOSTILE), ("tube", HOSTILE)), help=HOSTILE)
    inputs = (
        declaring.quantity("upper", HOSTILE, "length", default=HOSTILE_NUMBER, low="1 in", high="9 in",
                        usual=("2 in", "8 in"), help=HOSTILE, measure=HOSTILE),
        shaft,
        declaring.quantity("wall", HOSTILE, "thickness", default="0.02 in", low="0.01 in", high="0.1 in",
                        when=("shaft", ("tube",))),
        declaring.switch("glass", HOSTILE, help=HOSTILE),
        declaring.count("strands", HOSTILE, default=12, low=4, high=30, help=HOSTILE),
        declaring.rows("stations", HOSTILE, columns, default="1 in:2 in;2 in", fewest=1, most=9,
                    help=HOSTILE),
    )
    return calculator_of(
        declaring.group(HOSTILE, *inputs, note=HOSTILE), id="hostile", title=HOSTILE, purpose=HOSTILE,
        results=(declaring.result("out", HOSTILE, "force", HOSTILE),), cautions=(HOSTILE,), example=HOSTILE,
    )


@pytest.fixture(params=[*catalog.IDS, "hostile"])
def calculator(request):
    return hostile_calculator() if request.param == "hostile" else catalog.find(request.param)


@pytest.fixture
def section(calculator):
    outcome = EMPTY_OUTCOME if calculator.id == "hostile" else example_outcome(calculator.id)
    return Elements(html_of(form.calculator_section(calculator, outcome)))


def test_every_element_is_closed(section):
    assert section.unclosed == []


def test_who_takes_material_off_is_said_wherever_an_answer_has_somebody_do_so(calculator):
    outcome = EMPTY_OUTCOME if calculator.id == "hostile" else example_outcome(calculator.id)
    told = json.dumps(outcome["tree"][0])
    assert calculator.takes_off or not TAKES_OFF.search(told)
    html = html_of(form.calculator_section(calculator, outcome))
    assert ("for the one who works on the bow" in html) is calculator.takes_off


def test_ids_are_unique(section):
    assert len(section.ids()) == len(set(section.ids()))


def test_every_input_has_a_field_and_a_control(calculator, section):
    names = [each.id for each in declaring.inputs_of(calculator)]
    fields = [each["data-field"] for each in section.all("div", **{"class": "rb-field"})]
    assert sorted(fields) == sorted(names)
    controls = [*section.all("input"), *section.all("select")]
    assert {each["name"].split(".")[0] for each in controls} == {*names, "units"}


def test_every_control_has_a_visible_label_or_a_spoken_name(section):
    labelled = {each["for"] for each in section.all("label")}
    for control in [*section.all("input"), *section.all("select")]:
        assert control.get("id") in labelled or control.get("aria-label")


def test_descriptions_exist(section):
    for _, attributes in section.found:
        for target in attributes.get("aria-describedby", "").split():
            assert target in section.ids()


def test_text_boxes_keep_their_hands_off_what_is_typed(section):
    for box in section.all("input", type="text"):
        assert (box["autocomplete"], box["autocapitalize"], box["spellcheck"]) == ("off", "off", "false")


def test_fractions_get_the_full_keyboard_and_weights_the_digits():
    length, force = (declaring.quantity(id, "A", kind, default="1", low="1", high="2")
                     for id, kind in (("a", "length"), ("b", "force")))
    lead = calculator_of(declaring.group("G", length, force))
    section = Elements(html_of(form.calculator_section(lead, EMPTY_OUTCOME)))
    assert "inputmode" not in section.all("input", name="a")[0]
    assert section.all("input", name="b")[0]["inputmode"] == "decimal"


def test_a_field_that_the_example_does_not_need_starts_hidden():
    section = Elements(html_of(form.calculator_section(hostile_calculator(), EMPTY_OUTCOME)))
    [wall] = section.all("div", **{"data-field": "wall"})
    assert (wall["data-when-field"], wall["data-when-values"]) == ("shaft", "tube")
    assert "hidden" in wall


def test_rows_have_one_line_a_row_and_cells_for_missing_values():
    section = Elements(html_of(form.calculator_section(hostile_calculator(), EMPTY_OUTCOME)))
    cells = [(each["data-column"], each["value"]) for each in section.all("input") if "data-column" in each]
    assert cells == [("width", "1 in"), ("depth", "2 in"), ("width", "2 in"), ("depth", "")]


def test_hostile_texts_stay_texts():
    one = hostile_calculator()
    parts = [form.calculator_section(one, EMPTY_OUTCOME), reference.inputs_table(one),
             reference.results_table(one), reference.example(one, HOSTILE), reference.sources_list(one)]
    found = Elements("".join(map(html_of, parts)))
    assert found.unclosed == []
    assert found.all("img") == []
    assert found.all("script") == []
    assert not [name for _, attributes in found.found for name in attributes if name.startswith("on")]


def test_the_data_of_charts_survives_its_attribute():
    found = Elements(html_of(form.calculator_section(hostile_calculator(), EMPTY_OUTCOME)))
    [outcome] = found.all("div", **{"class": "rb-outcome"})
    assert json.loads(outcome["data-example"])["charts"] == [{"title": HOSTILE}]


def test_an_attribute_without_a_text_is_left_out():
    assert html_of(element("p", {"hidden": None, "id": "a"}, "x", None)) == '<p id="a">x</p>'


def test_the_example_command_gives_every_input_that_matters(calculator):
    command = reference.example_command(calculator) + " "
    chosen = {each.id: each.default for each in declaring.inputs_of(calculator)}
    for each in declaring.inputs_of(calculator):
        given = "--" + each.id.replace("_", "-") + " " in command
        assert given == bool(reading.matters(each, chosen) and each.default)


def test_a_field_holds_what_a_link_means_by_leaving_it_out(calculator, section):
    meant = FORMER.get(calculator.id, {})
    for field in section.all("div", **{"class": "rb-field"}):
        [each] = [each for each in declaring.inputs_of(calculator) if each.id == field["data-field"]]
        assert field.get("data-absent", each.default) == meant.get(each.id, each.default)


OF_SYSTEM = {"imperial": form.IMPERIAL, "metric": form.METRIC}
NAMES_OF_TESTS = re.compile(r"the 2[68] in test")


def said_in(system, text):
    """Return what a reader of one unit system reads of a hint."""
    parts = form.in_the_readers_units(text)
    return "".join(part if isinstance(part, str) else part[2] for part in parts
                   if isinstance(part, str) or part[1].get("data-units", system) == system)


def test_an_amount_in_both_systems_is_read_in_ones_own():
    text = "Upper minus lower: 1/8 to 1/4 in (3 to 6 mm). At 25 °C (77 °F), for 0.001 in (0.025 mm)."
    assert said_in("imperial", text) == "Upper minus lower: 1/8 to 1/4 in. At 77 °F, for 0.001 in."
    assert said_in("metric", text) == "Upper minus lower: 3 to 6 mm. At 25 °C, for 0.025 mm."


@pytest.mark.parametrize(("system", "other"), [("imperial", "metric"), ("metric", "imperial")])
def test_no_hint_has_only_the_units_that_its_reader_did_not_choose(system, other):
    hints = [f"{id} {each.id}: {said_in(system, each.help)}" for id in catalog.IDS
             for each in declaring.inputs_of(catalog.find(id)) if each.help]
    assert len(hints) > 200
    strange = re.compile(rf"\d ?(?:{OF_SYSTEM[other]})\b")
    assert [hint for hint in hints if strange.search(NAMES_OF_TESTS.sub("", hint))] == []
