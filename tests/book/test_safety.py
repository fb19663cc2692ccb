"""The safety page: every hazard has its place and its source, and its figures are those of the tables."""

import re

import pytest

from calc import bibliography
from calc.tables import respirators, solvents
from tests.book.pages import DOCS, all_pages

TEXT = (DOCS / "safety" / "index.md").read_text("utf-8")
SECTIONS = re.split(r"^## ", TEXT, flags=re.MULTILINE)[1:]
PARTS = re.split(r"^##+ ", TEXT, flags=re.MULTILINE)[1:]


def part(anchor):
    """Return one part of the page: from its heading to the next one."""
    [found] = [each for each in PARTS if "{ #" + anchor + " }" in each.splitlines()[0]
               or each.splitlines()[0].lower().replace(" ", "-") == anchor]
    return found


@pytest.mark.parametrize(
    ("anchor", "words"),
    [
        ("extinguisher", ("By the door", "handle", "5 ft", "50 ft", "isocyanate")),
        ("overspray", ("nitrocellulose", "filters", "under water", "Sanding dust")),
        ("sparks", ("pilot lights", "thermostats", "motors", "Static")),
        ("pregnancy", ("Pregnant", "unborn", "Children", "doctor")),
        ("respirators", ("N95", "P100", "FFP2", "FFP3", "No disposable mask stops vapour")),
        ("eyes", ("impact", "goggles", "face shield", "splash")),
        ("old-paint", ("lead", "chromate", "cadmium", "Test first", "Wet only", "Waste", "Family")),
        ("epoxy", ("allergic", "Nitrile", "cure in full", "dust")),
        ("phenolic", ("formaldehyde", "dust", "burnt")),
        ("solvents", ("25 °C (77 °F)", "flash point of xylene", "acetate", "alcohol")),
        ("eye-first-aid", ("splinter or glass", "Do not pull", "do not rinse")),
        ("draw-stand", ("One pulls", "says stop", "out of the plane")),
        ("isocyanates", ("clears nothing", "6 %", "42 %", "polyisocyanate", "MDI", "TDI")),
        ("formaldehyde", ("10,000", "0.016 ppm", "under pressure")),
        ("cyanoacrylate", ("makes and bottles", "0.65 ppm", "1.5 ppm", "0.1 ppm", "1 ppm")),
    ],
)
def test_every_hazard_has_its_part_with_what_to_do(anchor, words):
    text = part(anchor)
    assert [each for each in words if each.lower() not in text.lower()] == []


@pytest.mark.parametrize("text", SECTIONS, ids=lambda each: each.splitlines()[0])
def test_every_section_says_where_it_is_from(text):
    """A section leans on a source, on common practice, or on the table that it links."""
    assert re.search(r"#source-|[Cc]ommon practice|\]\(\.\./lookup/|house rule", text)


def test_every_source_named_is_in_the_bibliography_and_at_the_end():
    beside = set(re.findall(r"#source-([a-z0-9-]+)", TEXT))
    at_the_end = set(re.search(r"^::: cited (.*)$", TEXT, re.MULTILINE)[1].split())
    assert len(beside) > 20
    assert beside <= at_the_end
    assert all(bibliography.find(key) for key in at_the_end)


def test_flash_points_are_those_of_the_table():
    # The table's own figures are checked against published ones in tests/references/test_room_air.py.
    shown = {}
    for celsius, fahrenheit, names in re.findall(r"^\| (-?\d+) °C \((-?\d+) °F\)(?: and up)? \| (.*) \|$",
                                                 TEXT, re.MULTILINE):
        shown[names.split(",")[0]] = float(celsius)
        assert round(float(celsius) * 1.8 + 32) == int(fahrenheit)
    known = {each.name.replace("VM&P ", ""): each.flash_point for each in solvents.SOLVENTS}
    assert shown == {name: known[name] for name in known if name != "mineral spirits"}
    assert list(shown.values()) == sorted(shown.values())


def test_factors_of_disposable_masks_are_those_of_the_table():
    shown = re.findall(r"^\| (N95|P100|FFP2|FFP3) \|.*\| (\d+) \|$", TEXT, re.MULTILINE)
    assert shown == [(name, str(respirators.find(name.lower()).assigned_factor))
                     for name in ("N95", "P100", "FFP2", "FFP3")]


def test_links_to_a_part_of_the_page_find_it():
    anchors = {re.sub(r"[^a-z0-9 -]", "", each.splitlines()[0].lower()).strip().replace(" ", "-")
               for each in PARTS} | set(re.findall(r"\{ #([a-z-]+) \}", TEXT))
    asked = {name for page in all_pages()
             for name in re.findall(r"safety/index\.md#([a-z-]+)", page.source)}
    asked |= set(re.findall(r"\]\(#([a-z-]+)\)", TEXT))
    assert asked <= anchors
