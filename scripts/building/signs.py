"""Small pictures that stand in files of their own get their colours into them, light and dark.

A picture within a page follows the page's style sheet. One that the browser fetches as an image does not see
it: it gets the rules of the classes that it uses, and the colours that these name in both schemes.
"""

import re
from pathlib import Path

from scripts.building.errors import BuildError

FOLDER = "assets/signs"
SHEET = "assets/css/site.css"
LIGHT, DARK = '[data-md-color-scheme="default"] {', '[data-md-color-scheme="slate"] {'
RULE = re.compile(r"^(?P<names>\.rb-[\w-]+(?:,\n\.rb-[\w-]+)*) \{(?P<body>[^}]*)\}", re.MULTILINE)
SPARE = re.compile(r"\s*\n\s*")


def dress(site: Path) -> None:
    """Write its style into every small picture of a site whose style sheets are not joined yet.

    Raises:
        BuildError: a picture uses a class or a colour that the sheet does not have.
    """
    sheet = (site / SHEET).read_text("utf-8")
    rules = {name[1:]: found["body"] for found in RULE.finditer(sheet)
             for name in found["names"].split(",\n")}
    light, dark = (_colours(sheet, scheme) for scheme in (LIGHT, DARK))
    for path in sorted((site / FOLDER).glob("*.svg")):
        head, shapes = path.read_text("utf-8").split(">\n", 1)
        try:
            style = _style(shapes, rules, light, dark)
        except KeyError as error:
            raise BuildError(f"{path.name} is drawn in {error}, which {SHEET} does not have") from None
        path.write_text(f"{head}>\n<style>{style}</style>\n{shapes}", "utf-8")


def _colours(sheet: str, scheme: str) -> dict[str, str]:
    """Return the colours of a scheme by their names."""
    [body] = re.findall(re.escape(scheme) + r"\n  color-scheme:([^}]*)\}", sheet)
    return dict(re.findall(r"(--[\w-]+): ([^;]+);", body))


def _style(shapes: str, rules: dict[str, str], light: dict[str, str], dark: dict[str, str]) -> str:
    classes = sorted(set(" ".join(re.findall(r'class="([^"]*)"', shapes)).split()))
    bodies = "".join(f".{each}{{{SPARE.sub('', rules[each])}}}" for each in classes)
    names = sorted(set(re.findall(r"var\((--[\w-]+)\)", bodies + shapes)))
    day, night = ("svg{" + "".join(f"{name}:{scheme[name]};" for name in names) + "}"
                  for scheme in (light, dark))
    return f"{day}@media (prefers-color-scheme:dark){{{night}}}{bodies}"
