"""Names that the theme's parts lack; screen readers need them."""

import re
from pathlib import Path

SEARCH_DIALOG = 'class="md-search" data-md-component="search" role="dialog"'
SECTION = re.compile(
    r'(<label class="md-nav__link[^"]*" for="(?P<list>[^"]+)" id="[^"]+" tabindex="\d?">)'
    r'(\s*<span class="md-nav__icon md-icon"></span>\s*</label>.*?'
    r'<label class="md-nav__title" for="(?P=list)">\s*<span class="md-nav__icon md-icon"></span>)'
    r"\s*(?P<title>[^<]*?)\s*</label>", re.DOTALL)
"""What folds and unfolds a list of pages, and the list's own title, which names it."""


def write(site: Path) -> None:
    """Name the parts of all pages of a built site."""
    for path in site.rglob("*.html"):
        path.write_text(named(path.read_text(encoding="utf-8")), encoding="utf-8")


def named(text: str) -> str:
    """Return a page with its search and its lists of pages named."""
    text = text.replace(SEARCH_DIALOG, SEARCH_DIALOG + ' aria-label="Search"')
    return SECTION.sub(r'\1<span class="rb-spoken">\g<title></span>\3 \g<title></label>', text)
