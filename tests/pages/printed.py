"""Reading what a page gives on paper, as a PDF."""

import io

import pypdf
from playwright.sync_api import Page

from tests.pages.reading import read_square

FORMATS = ("A4", "Letter")
EDGE = 20.0
"""[pt] at the edges of a sheet where no printer prints: about 7 mm."""


class Sheet:
    """A printed page: its text in lines, where each piece of it begins, how many pictures."""

    def __init__(self, page: pypdf.PageObject):
        self.width, self.height = float(page.mediabox.width), float(page.mediabox.height)
        self._places: list[tuple[float, float]] = []
        self.pictures = len(page.images)
        text = page.extract_text(visitor_text=self._visit)
        self.lines = [line.strip() for line in text.split("\n") if line.strip()]

    def _visit(self, text: str, user: list[float], matrix: list[float], *_: object) -> None:
        if text.strip():
            x, y = matrix[4], matrix[5]
            self._places.append((user[0] * x + user[2] * y + user[4], user[1] * x + user[3] * y + user[5]))

    @property
    def words(self) -> str:
        """Return its text with single spaces, as it is read."""
        return " ".join(" ".join(self.lines).split())

    def is_whole(self) -> bool:
        """Return whether there is text, and every piece of it begins where a printer prints."""
        inside = [EDGE <= x <= self.width - EDGE and EDGE <= y <= self.height - EDGE for x, y in self._places]
        return bool(inside) and all(inside)


def printed(page: Page, form: str) -> list[Sheet]:
    """Return the pages that a printer gives for what stands on a page."""
    data = page.pdf(format=form)
    return [Sheet(each) for each in pypdf.PdfReader(io.BytesIO(data)).pages]


def square_on_paper(page: Page) -> str:
    """Return what a camera reads from the square of a page as it is printed."""
    page.emulate_media(media="print")
    found = read_square(page.locator(".rb-square"))
    page.emulate_media(media="null")
    return found
