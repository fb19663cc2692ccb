"""Every page says what it is for, warns where it can hurt, and names its sources."""

import re

import pytest

from calc import catalog
from tests.book.pages import DOCS, is_stage, prose, read

# What can hurt: its name in the front matter, words by which a page speaks of it,
# and words of which the page's caution must hold one.
HAZARDS = {
    "energy": (r"stringer|full draw|braced|strung|dry[- ]fire",
               r"string|braced|draw|strung|dry[- ]fire|spring"),
    "dust": (r"sand(?:s|ed|ing|paper)?|glass dust|wood dust|scraper",
             r"dust|sand"),
    "glue": (r"cyanoacrylate|epoxy|thin glue", r"cyanoacrylate|epoxy|glue"),
    "solvent": (r"solvents?|acetone|spirits|alcohol|lacquer", r"solvent|vapour|spirits|alcohol"),
    "isocyanate": (r"isocyanates?|two-part urethane", r"isocyanate"),
    "machine": (r"drill(?:s|ed|ing)?|drill press|belt sander|band ?saw",
                r"drill|machine|power tool"),
}
TELLS_ONLY = ("index.md", "glossary.md", "sources.md", "begin/which.md", "calculators/index.md",
              "lookup/index.md")
"""Pages that lead to others and tell nobody to do anything."""
HARMLESS = ("quote",)
"""Calculators that can hurt nobody: this one adds up hours and prices, and nothing is done to a bow."""
WITHOUT_SOURCES = ("bow/index.md", "bows/index.md", *TELLS_ONLY, "safety/index.md",
                   "calculators/how-the-model-works.md")


def spoken_of(page):
    """Return the hazards whose words stand in a page's own sentences."""
    text = " ".join(each.text for each in prose(page)).lower()
    return {name for name, (words, _) in HAZARDS.items() if re.search(rf"\b(?:{words})\b", text)}


def cautions(page):
    """Return the text of each caution box by its title."""
    boxes = {}
    for each in page.blocks:
        if each.caution in ("danger", "warning"):
            boxes[each.title] = boxes.get(each.title, "") + " " + each.text
    return boxes


def test_a_page_says_what_it_is_for(page):
    assert page.meta["title"]
    assert 40 <= len(page.meta["description"]) <= 240
    heads = [each for each in page.blocks if each.tag == "h1"]
    assert len(heads) == 1
    first = page.blocks[page.blocks.index(heads[0]) + 1]
    assert first.tag == "p", "the first thing under the title is " + first.tag
    assert first.caution is None
    assert len(first.text.split()) >= 8


def test_a_page_that_tells_you_to_do_something_names_what_can_hurt(page):
    """Under `hazards` stands what the work on the page brings, under `mentions` what it only speaks of."""
    if (is_stage(page) or page.name.startswith("calculators/")) and page.name not in TELLS_ONLY:
        missing = spoken_of(page) - set(page.meta.get("hazards", [])) - set(page.meta.get("mentions", []))
        assert not missing, f"{page.name} speaks of {missing}: name them in its front matter"


@pytest.mark.parametrize("list_name", ["hazards", "mentions"])
def test_hazards_go_by_one_name_and_in_one_order(page, list_name):
    named = page.meta.get(list_name, [])
    assert named == [each for each in HAZARDS if each in named]


def test_a_page_that_can_hurt_warns_before_you_start(page):
    hazards = page.meta.get("hazards", [])
    if not hazards:
        return
    boxes = cautions(page)
    assert boxes, f"{page.name} has no caution"
    if is_stage(page):
        assert any(title.startswith("Before you start") for title in boxes)
    said = " ".join(boxes.values()).lower()
    unsaid = [name for name in hazards if not re.search(HAZARDS[name][1], said)]
    assert not unsaid, f"the cautions of {page.name} say nothing of {unsaid}"
    assert "safety/index.md" in page.source


@pytest.mark.parametrize("id", catalog.IDS)
def test_the_danger_box_stands_above_the_form(id):
    source = (DOCS / "calculators" / f"{id}.md").read_text(encoding="utf-8")
    if id in HARMLESS:
        assert "hazards:" not in source
        return
    before_form = source.partition(f"::: calculator {id}")[0]
    assert re.search(r"^hazards: \[\w", before_form, re.MULTILINE), "names nothing that can hurt"
    assert re.search(r"^!!! danger ", before_form, re.MULTILINE), "has no danger box above its form"


def test_a_page_names_its_sources(page):
    if page.name in WITHOUT_SOURCES:
        return
    sections = {each.text for each in page.blocks if each.tag == "h2"}
    assert "Sources" in sections or re.search(r"^::: (?:table|bibliography)", page.source, re.MULTILINE)


@pytest.mark.parametrize("name", TELLS_ONLY)
def test_exempt_pages_exist(name):
    assert (DOCS / name).is_file()


def test_a_page_without_its_caution_would_be_found(tmp_path, monkeypatch):
    monkeypatch.setattr("tests.book.pages.DOCS", tmp_path)
    (tmp_path / "drill").mkdir()
    path = tmp_path / "drill" / "odd.md"
    path.write_text("---\ntitle: Odd\ndescription: x\n---\n# Odd\n\nDrill a hole with acetone.\n", "utf-8")
    odd = read(path)
    assert spoken_of(odd) == {"machine", "solvent"}
    with pytest.raises(AssertionError, match=re.escape("drill/odd.md speaks of {")):
        test_a_page_that_tells_you_to_do_something_names_what_can_hurt(odd)
    odd.meta["hazards"] = ["machine"]
    with pytest.raises(AssertionError, match="no caution"):
        test_a_page_that_can_hurt_warns_before_you_start(odd)
