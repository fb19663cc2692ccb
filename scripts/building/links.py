"""Every address in the built pages leads somewhere, and nothing is loaded from elsewhere."""

import os
import re
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

from scripts.building.errors import BuildError

HOST = "http://site.invalid"
LOADING_RELATIONS = ("stylesheet", "preload", "modulepreload", "icon", "manifest")
STYLE_ADDRESS = re.compile(r"""url\(\s*["']?([^"')]+)["']?\s*\)""")


class PageAddresses(HTMLParser):
    """Collects a page's anchors, the addresses it leads to and those it loads."""

    def __init__(self) -> None:
        super().__init__()
        self.anchors: set[str] = set()
        self.leads_to: list[str] = []
        self.loads: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        attributes = {name: value or "" for name, value in attrs}
        self.anchors.update(attributes[name] for name in ("id", "name") if name in attributes)
        if tag in ("a", "area", "use") and "href" in attributes:
            self.leads_to.append(attributes["href"])
        elif tag == "link" and set(attributes.get("rel", "").split()) & set(LOADING_RELATIONS):
            self.loads.append(attributes.get("href", ""))
        for name in ("src", "poster", "data"):
            if name in attributes and tag != "input":
                self.loads.append(attributes[name])
        for candidate in attributes.get("srcset", "").split(","):
            self.loads += candidate.split()[:1]


def check(site: Path) -> None:
    """Check all pages and style sheets of a built site.

    Raises:
        BuildError: names every faulty address and its page.
    """
    faults = faults_of(site)
    if faults:
        raise BuildError("broken addresses:\n  " + "\n  ".join(faults))


def faults_of(site: Path) -> list[str]:
    """Return a line for every address that is broken or must not be there."""
    pages = {path: _read(path) for path in sorted(site.rglob("*.html"))}
    faults = []
    for path, page in pages.items():
        name = path.relative_to(site).as_posix()
        for address in page.leads_to:
            fault = _fault_of_link(site, path, address, pages)
            faults += [f"{name}: {address} {fault}"] if fault else []
        for address in page.loads:
            fault = _fault_of_load(site, path, address)
            faults += [f"{name}: {address} {fault}"] if fault else []
    for path in sorted(site.rglob("*.css")):
        for address in STYLE_ADDRESS.findall(path.read_text(encoding="utf-8")):
            fault = _fault_of_load(site, path, address)
            faults += [f"{path.relative_to(site).as_posix()}: {address} {fault}"] if fault else []
    return faults


def _read(path: Path) -> PageAddresses:
    page = PageAddresses()
    page.feed(path.read_text(encoding="utf-8"))
    return page


def _fault_of_link(site: Path, path: Path, address: str, pages: dict[Path, PageAddresses]) -> str | None:
    scheme = urlsplit(address).scheme
    if scheme in ("https", "mailto"):
        return None
    if scheme:
        return "must be https"
    target = _target(site, path, address)
    if target is None:
        return "does not exist"
    anchor = unquote(urlsplit(address).fragment)
    if anchor and "=" not in anchor and target in pages and anchor not in pages[target].anchors:
        return "has no such anchor"
    return None


def _fault_of_load(site: Path, path: Path, address: str) -> str | None:
    if address.startswith("data:image/"):
        return None
    if urlsplit(address).scheme or address.startswith("//"):
        return "would be loaded from elsewhere"
    return None if _target(site, path, address) else "does not exist"


def _target(site: Path, path: Path, address: str) -> Path | None:
    """Return the file that an address on a page is served from, or None."""
    home = HOST + home_path()
    whole = urljoin(home + path.relative_to(site).as_posix().removesuffix("index.html"), address)
    if not whole.startswith(home):
        return None
    target = site / unquote(urlsplit(whole[len(home):]).path)
    if target.is_dir() and urlsplit(whole).path.endswith("/"):
        target = target / "index.html"
    return target if target.is_file() else None


def home_path() -> str:
    """Return the path below which the site will be published; the page for lost visitors names it."""
    return urlsplit(os.environ.get("SITE_URL", "")).path.rstrip("/") + "/"
