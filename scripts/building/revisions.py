"""Folders of our own assets get a hash of their content in their name.

Relative addresses inside a folder keep working, a browser may keep the files
for good, and no page ever meets a script of another release.
"""

from collections.abc import Iterable
from pathlib import Path

from scripts.building.fingerprint import of_folder

FOLDERS = ("search", "javascripts", "fonts", "css", "js")
"""In the order in which they refer to each other: the theme's scripts, javascripts, name the search's words,
styles name fonts, our own scripts may name styles."""


def name_by_content(site: Path) -> None:
    """Rename the folders below `assets/` and every address that points into them."""
    assets = site / "assets"
    for name in FOLDERS:
        if not (assets / name).is_dir():
            continue
        named = f"{name}-{of_folder(assets / name)}"
        (assets / name).rename(assets / named)
        for other in FOLDERS:
            _rewrite(assets.glob(f"{other}*/**/*"), f"../{name}/", f"../{named}/")
        for whole in (site.rglob("*.html"), assets.glob("javascripts/*.js")):
            _rewrite(whole, f"assets/{name}/", f"assets/{named}/")


def _rewrite(paths: Iterable[Path], old: str, new: str) -> None:
    for path in paths:
        if path.suffix in (".html", ".css", ".mjs", ".js"):
            text = path.read_text(encoding="utf-8")
            if old in text:
                path.write_text(text.replace(old, new), encoding="utf-8")
