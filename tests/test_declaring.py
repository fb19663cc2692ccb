"""Reading what was typed into a declared calculator."""

import pytest

from calc.declaring import (
    BY_UNITS,
    choice,
    count,
    folds_of,
    group,
    quantity,
    rows,
    switch,
)
from calc.outcome import (
    File,
    Outcome,
    Refused,
    amount,
    say,
    sentence,
)
from calc.reading import echo, held_in_folds, read, unusual
from tests.invented import calculator_of
from tests.sentences import whole

CALCULATOR = calculator_of(
    group(
        "One",
        choice("shaft", "Shaft", (("wood", "Wood"), ("tube", "Tube"))),
        quantity("width", "Width", "length", default="1 1/2 in", low="1/4 in", high="3 in",
                 usual=("1 in", "2 in")),
        quantity("wall", "Wall", "thickness", default="0.016 in", low="0.005 in", high="0.1 in",
                 when=("shaft", ("tube",))),
        quantity("own", "Own", "length", default="", low="1 in", high="2 in", optional=True),
    ),
    group(
        "Two",
        count("coats", "Coats", default=3, low=1, high=9),
        switch("letters", "Letters"),
        rows("stations", "Stations", (
            quantity("place", "Place", "length", default="2 in", low="0 in", high="30 in"),
            quantity("thick", "Thickness", "thickness", default="0.4 in", low="0.1 in", high="1 in"),
        ), default="2in:0.4in;8in:0.38in", fewest=2, most=4),
    ),
)


def reading(*pairs, system="imperial"):
    return read(CALCULATOR, list(pairs), system)


def problem(*pairs):
    _, problems, _ = reading(*pairs)
    assert len(problems) == 1
    return problems[0]


def test_defaults_are_read_where_nothing_was_typed():
    values, problems, notes = reading()
    assert not problems
    assert not notes
    assert values["width"] == pytest.approx(1.5 * 0.0254)
    assert values["coats"] == 3
    assert values["letters"] is False
    assert values["own"] is None
    assert len(values["stations"]) == 2


def test_an_input_counts_only_where_it_matters():
    values, problems, notes = reading(("wall", "0.02 in"))
    assert values["wall"] is None
    assert not problems
    assert notes == ["“wall” does not count while “shaft” is “wood”; it was left out."]
    assert problem(("wall", "nonsense")).field == "wall"
    assert reading(("shaft", "tube"), ("wall", "0.02 in"))[2] == []
    values, problems, _ = reading(("shaft", "tube"), ("wall", "nonsense"))
    assert values["wall"] is None
    assert problems[0].field == "wall"


def test_messages_name_field_value_range_and_remedy():
    assert problem(("width", "abc")).message == (
        "Width: “abc” is not a length. Type a length from 1/4 in to 3 in, for example 1 1/2 in.")
    assert problem(("width", "9 in")).message == (
        "Width must be from 1/4 in to 3 in; you typed “9 in”. Check the number and its unit.")
    assert problem(("width", " ")).message == (
        "Width is empty. Type a length from 1/4 in to 3 in, for example 1 1/2 in.")
    assert problem(("coats", "2.5")).message == (
        "Coats must be a whole number from 1 to 9; you typed “2.5”.")
    assert problem(("shaft", "steel")).message == (
        "Shaft must be one of: wood, tube. You gave “steel”.")
    assert problem(("letters", "perhaps")).message == (
        "Letters must be yes or no. You gave “perhaps”.")


def test_messages_use_the_readers_units():
    _, problems, _ = reading(("width", "900"), system="metric")
    assert "6.4 mm to 76.2 mm" in problems[0].message


def test_rows_name_the_cell():
    found = problem(("stations", "2in:0.4in;8in:7in"))
    assert (found.field, found.row, found.column) == ("stations", 1, "thick")
    assert found.message.startswith("Thickness in row 2 must be from 0.100 in to 1.000 in")


@pytest.mark.parametrize("text", ["", ";;;", "2in:0.4in", "1:.4;2:.4;3:.4;4:.4;5:.4", "2in:0.4in:1;8in:0.4in",
                                  "x" * 10_000])
def test_tables_of_the_wrong_size_are_refused(text):
    assert problem(("stations", text)).field == "stations"


def test_unknown_and_repeated_names_are_noted_and_left_out():
    values, problems, notes = reading(("__proto__", "1"), ("width", "1 in"), ("width", "2 in"))
    assert not problems
    assert len(notes) == 2
    assert values["width"] == pytest.approx(0.0254)


def test_long_text_is_not_repeated_in_full():
    assert len(problem(("width", "7" * 10_000)).message) < 250
    assert echo("a\nb\x00") == "a b "


def test_values_outside_the_usual_range_are_pointed_out():
    values, _, _ = reading(("width", "2 1/2 in"))
    (found,) = unusual(CALCULATOR, values, "imperial")
    assert found.level == "watch"
    assert found.text == "Width of 2 1/2 in is outside the usual 1 in to 2 in: check the reading."


def test_sentences_wait_for_the_unit_system():
    text = sentence("Take {} off the {} limb.", amount("thickness", 0.0254), "upper")
    assert say(text, "imperial") == "Take 1.000 in off the upper limb."
    assert say(text, "metric") == "Take 25.40 mm off the upper limb."
    assert say("Plain.", "metric") == "Plain."


def test_a_refusal_names_its_field():
    assert Refused("width", "No.").problem.field == "width"


@pytest.mark.parametrize(
    ("typed", "system", "chosen"),
    [([], "imperial", "imperial"), ([], "metric", "metric"), ([("tools", "imperial")], "metric", "imperial")],
)
def test_a_choice_can_follow_the_readers_units(typed, system, chosen):
    shop = calculator_of(group("One", choice("tools", "Tools", (
        (BY_UNITS, "As the units"), ("imperial", "Inch"), ("metric", "Metric")))))
    values, problems, _ = read(shop, typed, system)
    assert not problems
    assert values["tools"] == chosen


def test_what_leans_on_a_choice_that_does_not_count_names_the_choice_that_decides():
    inputs = (
        choice("air", "Air", (("known", "Known"), ("agent", "Agent"))),
        choice("agent", "Agent", (("own", "Own"), ("dust", "Dust")), when=("air", ("agent",))),
        quantity("mass", "Mass", "mass", default="5 g", low="1 g", high="9 g", when=("agent", ("own",))),
    )
    deep = calculator_of(group("One", *inputs))
    assert read(deep, [("mass", "5 g")], "imperial")[2] == [
        "“mass” does not count while “air” is “known”; it was left out."]
    assert read(deep, [("air", "agent"), ("agent", "dust"), ("mass", "5 g")], "imperial")[2] == [
        "“mass” does not count while “agent” is “dust”; it was left out."]
    _, problems, notes = read(deep, [("air", "water"), ("mass", "5 g")], "imperial")
    assert [each.field for each in problems] == ["air"]
    assert notes == ["“mass” was left out."]


def test_an_empty_switch_is_not_a_no():
    assert problem(("letters", "")).message == "Letters must be yes or no. You gave “”."


SHARES = calculator_of(group("One", quantity("tax", "Tax", "ratio", default="10 %", low="0 %", high="50 %")))


@pytest.mark.parametrize(("text", "small", "large"), [
    ("1/4", "1/4 %", "25 %"), ("0.25", "0.25 %", "25 %"), ("½", "½ %", "50 %"), (".075", ".075 %", "7.5 %"),
    ("0,5", "0,5 %", "50 %"), ("3/2", "3/2 %", "150 %"), ("0.0005", "0.0005 %", "0.05 %"),
])
def test_a_share_that_could_be_a_percentage_is_asked_about(text, small, large):
    _, problems, _ = read(SHARES, [("tax", text)], "imperial")
    assert [each.message for each in problems] == [
        f"Tax: does “{text}” mean {small} or {large}? Type the percent sign behind the number."]


@pytest.mark.parametrize(("text", "share"), [
    ("0", 0), ("1", 0.01), ("10", 0.1), ("12 1/2", 0.125), ("0.25 %", 0.0025), ("1/4%", 0.0025),
    ("0.25 of one", 0.25),
])
def test_a_share_that_is_plain_is_read(text, share):
    values, problems, _ = read(SHARES, [("tax", text)], "imperial")
    assert not problems
    assert values["tax"] == pytest.approx(share, abs=1e-15)


def test_a_result_brings_no_file_of_a_kind_that_a_page_could_run():
    page = File("x.html", "A page", "text/html", "<script></script>")
    with pytest.raises(ValueError, match=whole(
            "a result's file must be one of text/calendar, text/plain, image/svg+xml, not text/html")):
        Outcome(headline="Done.", values=(), checks=(), assumptions=(), files=(page,))


# What a form folds away -----------------------------------------------------------

LIMB = (quantity("riser", "Riser", "length", default="17 in", low="10 in", high="30 in"),
        rows("laminations", "Laminations",
             (quantity("thick", "Thick", "thickness", default="0.1 in", low="0.01 in", high="1 in"),),
             default="0.1 in;0.2 in", fewest=0, most=4))
SKIN = (choice("glass", "Glass", (("clear", "Clear glass"), ("black", "Black glass"))),
        switch("sanded", "Sanded before"), switch("lacquered", "Lacquered", default=True))
FOLDING = calculator_of(
    group("Weight", quantity("now", "Now", "force", default="50 lb", low="10 lb", high="90 lb"),
          quantity("came", "As it came", "force", default="", low="10 lb", high="90 lb", optional=True)),
    group("Limb", *LIMB, under="The bow"), group("Skin", *SKIN, under="The bow"),
    group("Looks", switch("crack", "A crack")),
    first=("now",),
)


def test_what_is_not_needed_first_is_folded_by_group():
    assert [(fold.title, [each.id for each in fold.inputs]) for fold in folds_of(FOLDING)] == [
        ("More", ["came"]),
        ("The bow", ["riser", "laminations", "glass", "sanded", "lacquered"]), ("Looks", ["crack"])]
    assert folds_of(CALCULATOR) == []


def test_a_fold_says_what_it_holds():
    assert held_in_folds(FOLDING, {}) == [
        "nothing given", "Riser 17 in; Laminations: 2 rows and 2 more", "nothing ticked"]
    typed = {"came": "53 lb", "riser": " ", "laminations": "0.1 in;;", "glass": "black", "crack": "yes"}
    assert held_in_folds(FOLDING, typed) == [
        "As it came 53 lb", "Laminations: 1 row; Black glass and 1 more", "A crack"]


def test_what_is_typed_into_a_fold_is_echoed_short():
    [said, *_] = held_in_folds(FOLDING, {"came": "<b>" * 40})
    assert said == "As it came " + echo("<b>" * 40)
