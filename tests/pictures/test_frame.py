"""The straight edge through both fadeouts; that it moves with its marks is tried in `test_shifts`."""

from types import SimpleNamespace

from calc.pictures.frame import End


def test_an_end_that_no_course_leads_to_moves_with_its_own_mark():
    marks = SimpleNamespace(points=[SimpleNamespace(place=(float(each), 0.0)) for each in range(3)])
    assert End(marks, 1, None).moves((2.0, 3.0)) == [0.0, 0.0, 2.0, 3.0, 0.0, 0.0]
