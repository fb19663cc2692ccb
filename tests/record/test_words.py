"""How a record's facts are told to people."""

from calc.record import sheets, words


def test_rows_are_told_a_row_at_a_time():
    asked = sheets.input_of("reading.curve")
    assert words.shown(asked, "20in:25lb;28in:45lb") == "20in, 25lb; 28in, 45lb"


def test_what_is_no_row_is_told_as_typed_and_a_choice_by_its_label():
    assert words.shown(sheets.input_of("bow.title"), "64 in; recurve: brown") == "64 in; recurve: brown"
    family = sheets.input_of("bow.family")
    for option in family.choices:
        assert words.shown(family, option.id) == option.label
