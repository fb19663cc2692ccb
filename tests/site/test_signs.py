"""Small pictures at a field: each tick that names something to see has one, and it follows light and dark."""

import shutil

import pytest

from calc import catalog, declaring
from calc.tables.findings import FINDINGS, UNPICTURED
from scripts.blocks import form
from scripts.blocks import signs as drawn
from scripts.blocks.tree import html_of
from scripts.building import signs
from scripts.building.errors import BuildError
from tests.sentences import whole
from tests.site.markup import Elements

ASSETS = drawn.SIGNS.parent
NAMES = sorted(path.stem for path in drawn.SIGNS.glob("*.svg"))


@pytest.fixture
def site(tmp_path):
    for folder in ("css", "signs"):
        shutil.copytree(ASSETS / folder, tmp_path / "assets" / folder)
    return tmp_path


def test_every_finding_that_can_be_seen_has_one_and_nothing_else_has():
    assert NAMES == sorted(each.id for each in FINDINGS if each.id not in UNPICTURED)
    assert {each.id for each in declaring.inputs_of(catalog.find("inspection")) if each.figure} == set(NAMES)


def test_it_lies_folded_at_its_tick_and_is_fetched_when_it_is_unfolded():
    page = Elements("".join(map(html_of, form.fieldsets(catalog.find("inspection")))))
    pictures = page.all("img")
    assert [each["src"] for each in pictures] == [
        f"../../assets/signs/{each.figure}.svg"
        for each in declaring.inputs_of(catalog.find("inspection")) if each.figure]
    assert {each["loading"] for each in pictures} == {"lazy"}
    assert len({each["alt"] for each in pictures}) == len(pictures)
    folded = page.all("details")
    assert len(folded) == len(pictures)
    assert not any("open" in each for each in folded)


def test_it_brings_its_colours_in_both_schemes(site):
    signs.dress(site)
    text = (site / "assets/signs/crack_across.svg").read_text("utf-8")
    assert "<style>svg{" in text
    light, dark = text.split("@media (prefers-color-scheme:dark)")
    assert "--rb-glass:#5d7f76;" in light
    assert "--rb-glass:#6f958b;" in dark
    assert ".rb-glass{fill: var(--rb-glass);stroke: var(--rb-edge);stroke-width: 1;}" in dark
    assert ".rb-limb{" not in text


def test_each_one_says_in_words_what_it_shows():
    assert len({drawn.find(name).text for name in NAMES}) == len(NAMES) == 38
    assert all(len(drawn.find(name).text) > 40 for name in NAMES)


@pytest.mark.parametrize(("shape", "missing"), [
    ('<path class="rb-hope"/>', "'rb-hope'"),
    ('<path class="rb-ink" style="fill:var(--rb-hope)"/>', "'--rb-hope'"),
])
def test_what_the_sheet_does_not_have_stops_the_build(site, shape, missing):
    (site / "assets/signs/new.svg").write_text(f'<svg viewBox="0 0 1 1">\n{shape}\n</svg>')
    with pytest.raises(BuildError, match=whole(
            f"new.svg is drawn in {missing}, which assets/css/site.css does not have")):
        signs.dress(site)


def test_one_that_is_not_drawn_stops_the_build():
    with pytest.raises(ValueError, match=whole(
            "no small picture is called hope: draw docs/assets/signs/hope.svg")):
        drawn.find("hope")


def test_one_without_words_stops_the_build(tmp_path, monkeypatch):
    monkeypatch.setattr(drawn, "SIGNS", tmp_path)
    (tmp_path / "mute.svg").write_text('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>')
    with pytest.raises(ValueError, match=whole(
            "mute.svg does not say in words what it shows: give it a <desc>")):
        drawn.find("mute")
