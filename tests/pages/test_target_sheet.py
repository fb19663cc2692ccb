"""The sheet of dots on paper: alone, whole, and at true scale on both papers."""

import io

import pypdf
import pytest

from calc.pictures.target import HALF_HEIGHT
from calc.quantities import INCH
from tests.pages.printed import EDGE, FORMATS

POINTS = 72 / INCH
"""To a metre of paper."""


def letters(sheet):
    """Return where each single letter begins on a printed page [pt], from its lower left corner."""
    found = {}

    def visit(text, user, matrix, *_):
        if len(text.strip()) == 1:
            x, y = matrix[4], matrix[5]
            found[text.strip()] = (user[0] * x + user[2] * y + user[4], user[1] * x + user[3] * y + user[5])

    sheet.extract_text(visitor_text=visit)
    return found


@pytest.mark.parametrize("form", FORMATS)
def test_the_sheet_of_dots_prints_alone_and_at_true_scale(visitor, form):
    page = visitor.open("measure/target-sheet/")
    data = page.pdf(format=form, prefer_css_page_size=True)  # as a printer does that is not told otherwise
    [sheet] = pypdf.PdfReader(io.BytesIO(data)).pages
    wide, high = float(sheet.mediabox.width), float(sheet.mediabox.height)
    assert wide > high
    places = letters(sheet)
    assert set(places) == {"A", "B", "C", "D", "M"}
    for above, below in (("A", "D"), ("B", "C")):
        assert places[above][1] - places[below][1] == pytest.approx(2 * HALF_HEIGHT * POINTS, abs=0.2)
    assert all(EDGE < x < wide - EDGE and EDGE < y < high - EDGE for x, y in places.values())
