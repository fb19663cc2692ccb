"""Turns the style attributes of pages into classes.

The policy of every page would have to name each of them, by a hash that no compression makes smaller.
"""

import re
from collections.abc import Iterable

STYLED = re.compile(r'<(?P<before>[^<>]*?) style="(?P<style>[^"]*)"(?P<behind>[^<>]*)>')
CLASS = ' class="'


def styles_in(pages: Iterable[str]) -> dict[str, str]:
    """Return a class for every style attribute of pages."""
    found = sorted({tag["style"] for page in pages for tag in STYLED.finditer(page)})
    return {style: f"rb-as-{place}" for place, style in enumerate(found)}


def with_classes(page: str, classes: dict[str, str]) -> str:
    """Return a page that names classes where it had style attributes."""
    return STYLED.sub(lambda tag: _with_class(tag["before"] + tag["behind"], classes[tag["style"]]), page)


def _with_class(tag: str, name: str) -> str:
    if CLASS in tag:
        return f"<{tag.replace(CLASS, CLASS + name + ' ', 1)}>"
    whole, slash = tag.removesuffix("/"), "/" * tag.endswith("/")
    return f"<{whole.rstrip()}{CLASS}{name}\"{slash}>"


def sheet(classes: dict[str, str]) -> str:
    """Return rules that say of classes what the attributes said, as weightily as an attribute does."""
    return "".join(f".{name}{{{_weighty(style)}}}" for style, name in classes.items())


def _weighty(style: str) -> str:
    return ";".join(each.strip() + "!important" for each in style.split(";") if each.strip())
