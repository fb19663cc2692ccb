"""What a phone reads to put the site on its home screen."""

import json
from pathlib import Path

import pytest
from PIL import Image

from scripts.building import icons, manifest
from scripts.building.errors import BuildError
from scripts.serving.application import TYPES

SITE = Path(__file__).parents[2] / "site"
MARK = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32">{}</svg>'


def test_the_manifest_names_files_that_are_there_and_is_kept_offline():
    """W3C, Web Application Manifest: members and how their addresses are resolved."""
    told = json.loads((SITE / manifest.MANIFEST).read_text(encoding="utf-8"))
    assert told == manifest.manifest()
    assert told["display"] == "standalone"
    assert (SITE / told["start_url"] / "index.html").is_file()
    release = (SITE / "service-worker.js").read_text(encoding="utf-8").partition(";\n")[0]
    kept = json.loads(release.removeprefix("const RELEASE = "))["files"]
    for name in (manifest.MANIFEST, *(each["src"] for each in told["icons"])):
        assert (SITE / name).is_file()
        assert name in kept
    assert TYPES[Path(manifest.MANIFEST).suffix] == "application/manifest+json"


def test_every_page_names_it_from_where_it_stands():
    for page in SITE.rglob("index.html"):
        to_root = "../" * (len(page.relative_to(SITE).parts) - 1)
        text = page.read_text(encoding="utf-8")
        assert f'<link rel="manifest" href="{to_root}{manifest.MANIFEST}">' in text
        assert f'<link rel="apple-touch-icon" href="{to_root}assets/images/icon-180.png">' in text


@pytest.mark.parametrize(("name", "size", "scale", "purpose"), manifest.ICONS)
def test_icons_read_as_pictures_of_their_size(name, size, scale, purpose):  # noqa: ARG001 (a row of four)
    """An imaging library reads them: sizes, ground to the corners, the bow in its colour."""
    with Image.open(SITE / name) as picture:
        picture.load()
        assert (picture.format, picture.mode, picture.size) == ("PNG", "RGB", (size, size))
        ground = tuple(bytes.fromhex(manifest.GROUND[1:]))
        assert {picture.getpixel((x, y)) for x in (0, size - 1) for y in (0, size - 1)} == {ground}
        grip = (round(((8.5 / 32 - 0.5) * scale + 0.5) * size), size // 2)
        assert picture.getpixel(grip) == (0xfb, 0xf7, 0xee)


def test_the_icon_to_be_cut_keeps_its_strokes_within_the_circle():
    """W3C, Web Application Manifest, safe zone: a circle about the middle, its radius 2/5 of the side."""
    with Image.open(SITE / "assets/images/icon-512-cut.png") as picture:
        ground = picture.getpixel((0, 0))
        drawn = [(x, y) for x in range(512) for y in range(512) if picture.getpixel((x, y)) != ground]
    assert drawn
    assert max((x + 0.5 - 256) ** 2 + (y + 0.5 - 256) ** 2 for x, y in drawn) <= (0.4 * 512) ** 2


def test_a_stroke_covers_what_lies_within_half_its_width(tmp_path):
    logo = tmp_path / "logo.svg"
    stroke = '<path d="M8 16H24" stroke="#ffffff" stroke-width="4"/>'
    logo.write_text(MARK.format('<rect fill="#000000"/>' + stroke))
    (tmp_path / "logo.png").write_bytes(icons.png(logo, 32))
    with Image.open(tmp_path / "logo.png") as picture:
        column = [picture.getpixel((16, y))[0] for y in range(32)]
    assert column == [0] * 14 + [255] * 4 + [0] * 14


def test_a_curve_passes_where_its_polynomial_says():
    """A cubic with its handles on its chord's thirds is that chord (de Casteljau)."""
    [line] = icons.polylines("M0 0C2 1 4 2 6 3")
    assert len(line) == icons.STEPS_A_CURVE + 1
    for x, y in line:
        assert y == pytest.approx(x / 2)
    assert line[-1] == pytest.approx((6, 3))


@pytest.mark.parametrize(("holds", "message"), [
    ('<circle r="3"/>',
     "logo.svg may hold one rectangle and then paths; it has {http://www.w3.org/2000/svg}circle"),
    ('<rect fill="#000000"/><path d="M0 0L3 3" stroke="#ffffff" stroke-width="1"/>',
     "a logo's path may have the commands M, V, H and C, and has 'L'"),
])
def test_what_it_does_not_draw_stops_the_build(tmp_path, holds, message):
    (tmp_path / "logo.svg").write_text(MARK.format(holds))
    with pytest.raises(BuildError) as raised:
        icons.png(tmp_path / "logo.svg", 16)
    assert str(raised.value) == message
