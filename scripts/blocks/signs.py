"""Small pictures that a form unfolds at a field: files of their own, fetched when a reader asks for them."""

from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

SIGNS = Path(__file__).parents[2] / "docs/assets/signs"
SVG = "{http://www.w3.org/2000/svg}"


class Sign:
    """A small picture: what it shows in words, and its size."""

    def __init__(self, text: str, width: str, height: str) -> None:
        self.text = text
        self.width = width
        self.height = height


@cache
def find(name: str) -> Sign:
    """Return a small picture by its name.

    Raises:
        ValueError: there is none, or it does not say in words what it shows.
    """
    file = SIGNS / f"{name}.svg"
    if not file.is_file():
        raise ValueError(f"no small picture is called {name}: draw docs/assets/signs/{name}.svg")
    root = ET.parse(file).getroot()
    text = root.findtext(SVG + "desc")
    if not text:
        raise ValueError(f"{file.name} does not say in words what it shows: give it a <desc>")
    _, _, width, height = root.attrib["viewBox"].split()
    return Sign(text, width, height)


def address(name: str) -> str:
    """Return where a small picture lies, from the root of the site."""
    return f"assets/signs/{name}.svg"
