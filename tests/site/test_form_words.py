"""What is compiled for the browser leaves out what only a form shows, and nothing else."""

import pytest

from scripts.building.form_words import without


@pytest.mark.parametrize(("declared", "compiled"), [
    ("quantity('a', 'Length', 'length', help='Along the back.', low='1 in')",
     "quantity('a', 'Length', 'length', low='1 in')"),
    ("group('The bow', count('n', 'Times', help='So often.'), note='Read twice.')",
     "group('The bow', count('n', 'Times'))"),
    ("rows('r', 'Curve', (choice('c', 'Side', help='Which.'),), help=CURVE)",
     "rows('r', 'Curve', (choice('c', 'Side'),))"),
    ("result('x', 'To take off', 'length', 'Of each limb.')", "result('x', 'To take off', 'length')"),
    ("result('x', 'To take off', 'length')", "result('x', 'To take off', 'length')"),
    ("Calculator(id='x', purpose='Plans.', example='An invented bow.', cautions=('Dust.',))",
     "Calculator(id='x', purpose='', example='', cautions=('Dust.',))"),
    ("add_parser(sheet.id, help=sheet.purpose)", "add_parser(sheet.id, help=sheet.purpose)"),
    ("said.group('words', note='kept')", "said.group('words', note='kept')"),
])
def test_words_of_the_form_are_left_out_and_nothing_else(declared, compiled):
    assert without("calc/calculators/x.py", declared) == compiled


def test_the_record_tells_how_a_fact_comes_to_be_known():
    text = "quantity('a', 'Length', 'length', help='Along the back.')"
    assert without("calc/record/sheets.py", text) == text
