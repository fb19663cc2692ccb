"""What the site hands out that others wrote, and the licences that allow it.

A library that is fetched for building or testing alone is not handed out and not listed.
"""

import json
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path
from typing import NamedTuple

ROOT = Path(__file__).parent.parent
PACKAGES = ROOT / "node_modules"
ALLOWED = ("ISC", "MIT", "MPL-2.0", "OFL-1.1", "PSF-2.0")
"""Licences that let anybody hand the whole out unchanged, with the notice that the page gives."""
THEME = "mkdocs-material"
USES = {
    "@fontsource-variable/atkinson-hyperlegible-next": "font of the text",
    "@fontsource/besley": "font of the headings",
    "@micropython/micropython-webassembly-pyscript": "small engine of the calculators",
    "idb": "keeping bows in the browser",
    "minisearch": "index of the search",
    "pyodide": "full engine, fetched where it is asked for",
    "stemmer": "stems of words in the search",
    "uplot": "charts",
    "uqr": "code squares",
    THEME: "theme of the pages",
}
"""Every package that is handed out, with what it does here: all that package.json names, and the theme."""
INSIDE = (("Python's standard library, parts of it", "PSF-2.0", "inside the full engine"),)
"""What comes inside another package: name, licence, where."""


class Shipped(NamedTuple):
    """Something that is handed out. text: the licence with its notice, where the package brings it."""

    name: str
    version: str
    licence: str
    use: str
    text: str


def shipped() -> list[Shipped]:
    """Return all that is handed out, by name.

    Raises:
        ValueError: a package has no use here, or a licence that is not among those allowed.
    """
    found = sorted([*_scripts(), _theme()], key=lambda each: each.name.lstrip("@"))
    found += [Shipped(name, "", licence, use, "") for name, licence, use in INSIDE]
    for each in found:
        if each.licence not in ALLOWED:
            raise ValueError(f"{each.name} is under {each.licence}: not among the licences allowed")
    return found


def _scripts() -> Iterator[Shipped]:
    wanted = json.loads((ROOT / "package.json").read_text("utf-8"))["dependencies"]
    unnamed = set(wanted) - set(USES)
    if unnamed:
        raise ValueError("handed out and without a use here: " + ", ".join(sorted(unnamed)))
    for name in wanted:
        about = json.loads((PACKAGES / name / "package.json").read_text("utf-8"))
        texts = sorted(path for path in (PACKAGES / name).iterdir() if path.stem.lower() == "license")
        yield Shipped(name, about["version"], about["license"], USES[name],
                      texts[0].read_text("utf-8") if texts else "")


def _theme() -> Shipped:
    about = metadata.distribution(THEME)
    [text] = [path for path in about.files or [] if path.name == "LICENSE" and "licenses" in path.parts]
    licence = about.metadata["License-Expression"] or about.metadata["License"]
    notice = Path(str(about.locate_file(text))).read_text("utf-8")
    return Shipped(THEME, about.version, licence, USES[THEME], notice)
