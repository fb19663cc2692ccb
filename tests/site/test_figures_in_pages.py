"""Figures that a page takes from a table or from a worked example."""

import markdown
import pytest

from scripts.blocks.figures import filled
from tests.sentences import whole


@pytest.mark.parametrize(("reference", "figure"), [
    ("[[practice tiller-split]]", "1/8 to 1/4 in"),
    ("[[practice string-offset]]", "1/8 in"),
    ("[[practice string-offset metric]]", "3.2 mm"),
    ("[[practice weight-drop]]", "20 %"),
    ("[[practice limb-film]]", "2 to 4 mil"),
    ("[[practice bow-heat metric]]", "50 °C"),
    ("[[practice arrow-usual]]", "8 to 10 gr/lb"),
    ("[[practice arrow-usual number]]", "8 to 10"),
    ("[[practice limb-twist]]", "2°"),
    ("[[example weight-reduction draw_length]]", "28 in"),
])
def test_a_reference_becomes_its_figure(reference, figure):
    assert filled(f"within {reference}, no more") == f"within {figure}, no more"


def test_a_result_is_that_of_the_worked_example():
    assert filled("[[result insert hole_depth]]").endswith(" in")


@pytest.mark.parametrize(("unknown", "reason"), [
    ("practice hope", "no limit is called hope"),
    ("example tiller hope", "tiller has no input called hope with a figure in its example"),
    ("example hope upper", "nothing in calculators is called hope"),
    ("result tiller hope", "tiller has no result called hope in its example"),
    ("practice tiller-split wrong", "the unit system must be imperial or metric, not wrong"),
    ("practice ", "_practice() missing 1 required positional argument: 'id'"),
    ("practice spacing-error",
     "its figure is too small for the marks that are shown; type it into the page"),
])
def test_what_does_not_exist_stops_the_build(unknown, reason):
    with pytest.raises(ValueError, match=whole(f"no figure is written [[{unknown}]]: {reason}")):
        filled(f"[[{unknown}]]")


def test_a_figure_stands_in_text_in_boxes_and_in_tables():
    text = "| a | b |\n|---|---|\n| x | [[practice weight-drop]] |\n\n!!! danger \"y\"\n    [[practice weight-drop]]\n"
    html = markdown.markdown(text, extensions=["admonition", "tables", "scripts.blocks.extension"])
    assert html.count("20 %") == 2
    assert "[[" not in html


def test_lists_in_a_program_are_left_alone():
    assert filled("rows = [[1, 2], [practice, 3]]") == "rows = [[1, 2], [practice, 3]]"
