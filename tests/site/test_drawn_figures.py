"""Drawn figures of the book say in words what they show, keep to the book's classes, and can be read."""

import re
from itertools import combinations
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

DOCS = Path(__file__).parents[2] / "docs"
IMAGES = DOCS / "assets/images"
SVG = "{http://www.w3.org/2000/svg}"
ICONS = ("favicon", "mark")
FIGURES = sorted(path.stem for path in IMAGES.glob("*.svg") if path.stem not in ICONS)
CLASSES = set(re.findall(r"\.(rb-[\w-]+)", "".join(
    path.read_text("utf-8") for path in (DOCS / "assets/css").glob("*.css"))))
INCLUDED = set(re.findall(r'--8<-- "([\w-]+)\.svg"', "".join(
    path.read_text("utf-8") for path in DOCS.rglob("*.md"))))

WIDTH_OF_A_LETTER = 6.7
"""Of a label of 14 px, taken over a phrase in the book's typeface."""

ASCENT, DESCENT = 9, 2


class Text:
    """A label: what it says, and the box that it fills."""

    def __init__(self, element):
        self.words = "".join(element.itertext())
        width = WIDTH_OF_A_LETTER * len(self.words)
        before = {"start": 0.0, "middle": width / 2, "end": width}[element.get("text-anchor", "start")]
        self.left = float(element.get("x")) - before
        self.right = self.left + width
        self.bottom = float(element.get("y")) + DESCENT
        self.top = self.bottom - DESCENT - ASCENT

    def meets(self, other):
        return (min(self.right, other.right) > max(self.left, other.left)
                and min(self.bottom, other.bottom) > max(self.top, other.top))


def drawn(name):
    return ET.parse(IMAGES / f"{name}.svg").getroot()


def texts_of(name):
    return [Text(each) for each in drawn(name).iter(SVG + "text") if "".join(each.itertext()).strip()]


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_has_a_title_and_a_description(name):
    root = drawn(name)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == f"{name}-title {name}-text"
    title, text = (root.find(f"{SVG}{tag}[@id='{name}-{part}']") for tag, part in
                   (("title", "title"), ("desc", "text")))
    assert len(title.text) > 10
    assert len(text.text) > 60


@pytest.mark.parametrize("name", FIGURES)
def test_a_figure_is_drawn_in_classes_that_follow_light_and_dark(name):
    classes = " ".join(each.get("class", "") for each in drawn(name).iter())
    assert set(classes.split()) <= CLASSES
    assert not re.search(r'(?:fill|stroke)(?::|=")\s*#', (IMAGES / f"{name}.svg").read_text("utf-8"))


@pytest.mark.parametrize("name", FIGURES)
def test_labels_stand_inside_and_clear_of_each_other(name):
    _, _, width, _ = (float(number) for number in drawn(name).get("viewBox").split())
    texts = texts_of(name)
    assert [each.words for each in texts if each.left < -2 or each.right > width + 2] == []
    assert [(one.words, other.words) for one, other in combinations(texts, 2) if one.meets(other)] == []


def test_every_figure_is_shown_on_a_page():
    assert set(FIGURES) - INCLUDED == set()
