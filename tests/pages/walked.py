"""Every page of the built site, by its address."""

from tests.pages.conftest import SITE


def addresses() -> list[str]:
    """Return the addresses of all pages, the one for what is not found too."""
    found = sorted(path.relative_to(SITE).as_posix() for path in SITE.rglob("*.html"))
    assert len(found) > 100  # a site that was not built has nothing to look at
    return [each.removesuffix("index.html") for each in found]
