"""What every built page gets in its head: policy, release, engine, and early fetches.

The policy names the inline scripts of all pages together. So every page carries
the same one, and moving between pages without a reload never meets a second.
"""

import base64
import hashlib
import html
import json
import re
from html.parser import HTMLParser
from pathlib import Path

from scripts.building import engine
from scripts.building.errors import BuildError
from scripts.building.fingerprint import of_folder

CHARSET = '<meta charset="utf-8">'
LAST_STYLE = re.compile(r'.*<link rel="stylesheet"[^>]*>', re.DOTALL)
NEIGHBOURS = re.compile(r'<link rel="(?:prev|next)" href="[^"]*">\n?')
"""Some browsers fetch the next page ahead on seeing these, which the policy refuses."""
CALCULATOR_MARK = 'class="rb-calculator"'
ENGINE_META = "rebrace-engine"
BUILD_META = "rebrace-build"
PAGE_SCRIPT = "page.mjs"
EARLY_SCRIPTS = (PAGE_SCRIPT, "worker.mjs")
"""Entry points of the page and its worker; what they import is fetched early too."""
STATIC_IMPORT = re.compile(r"""\b(?:from|import)\s*["']\./([\w/-]+\.mjs)["']""")
POLICY = (
    "default-src 'none'; base-uri 'none'; form-action 'none'; connect-src 'self'; font-src 'self'; "
    "img-src 'self' data: blob:; manifest-src 'self'; worker-src 'self'; "
    "script-src 'self' 'wasm-unsafe-eval' {scripts}; "
    "style-src 'self'; style-src-elem 'self' {styles}; style-src-attr {attributes}"
)
"""A style attribute is one that stands in a page. What theme and charts set from their scripts, property by
property, is none. Images that a script holds (`blob:`) are the photographs of a bow, kept by this browser."""


def finish(site: Path) -> None:
    """Write the shared head of every page of a built site."""
    manifest_file = site / engine.FOLDER / engine.MANIFEST
    manifest = json.loads(manifest_file.read_text())
    manifest_file.unlink()
    texts = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    shared = _policy_meta(list(texts.values())) + _meta(BUILD_META, of_folder(site)) + _meta(
        ENGINE_META, json.dumps(manifest, separators=(",", ":")))
    early = _early_fetches(site)
    for path, text in texts.items():
        to_root = "../" * (len(path.relative_to(site).parts) - 1)
        wanted = [link.replace("@/", to_root) for link in early] if CALCULATOR_MARK in text else []
        text = NEIGHBOURS.sub("", text)
        path.write_text(_with_head(text, shared, "".join(wanted), path), encoding="utf-8")


def _with_head(text: str, first: str, last: str, path: Path) -> str:
    """Return a page with additions before anything it loads, and behind its last style sheet.

    Behind that sheet stands the first inline script, which waits for all sheets:
    whatever is named later is found later.
    """
    styles = LAST_STYLE.match(text)
    if text.count(CHARSET) != 1 or not styles:
        raise BuildError(f"{path.name} has no {CHARSET} and style sheet to put the policy and fetches behind")
    text = styles[0] + last + text[styles.end():]
    return text.replace(CHARSET, CHARSET + first)


def _meta(name: str, content: str) -> str:
    return f'<meta name="{name}" content="{html.escape(content)}">'


def _policy_meta(texts: list[str]) -> str:
    return f'<meta http-equiv="Content-Security-Policy" content="{html.escape(policy(texts), quote=False)}">'


def policy(texts: list[str]) -> str:
    """Return the policy that lets exactly the inline scripts and styles of these pages run.

    Raises:
        BuildError: a page carries an inline event handler, which no policy of ours allows.
    """
    scripts: set[str] = set()
    styles: set[str] = set()
    attributes: set[str] = set()
    for text in texts:
        found = InlineCode()
        found.feed(text)
        if found.handlers:
            raise BuildError("inline event handlers are not allowed: " + ", ".join(sorted(found.handlers)))
        scripts.update(map(source_hash, found.scripts))
        styles.update(map(source_hash, found.styles))
        attributes.update(map(source_hash, found.style_attributes))
    known = " ".join(["'unsafe-hashes'", *sorted(attributes)]) if attributes else "'none'"
    return POLICY.format(scripts=" ".join(sorted(scripts)), styles=" ".join(sorted(styles)), attributes=known)


def source_hash(code: str) -> str:
    """Return how a policy names an inline script or style."""
    return "'sha256-" + base64.b64encode(hashlib.sha256(code.encode()).digest()).decode() + "'"


class InlineCode(HTMLParser):
    """Collects what a page would execute or apply without fetching it."""

    RUNS = ("", "module", "text/javascript", "application/javascript")

    def __init__(self) -> None:
        super().__init__()
        self.scripts: list[str] = []
        self.styles: list[str] = []
        self.style_attributes: set[str] = set()
        self.handlers: set[str] = set()
        self._into: list[str] | None = None

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        attributes = dict(attrs)
        self.handlers.update(name for name in attributes if name.startswith("on"))
        self.style_attributes.update(filter(None, [attributes.get("style")]))
        self._into = None
        if tag == "script" and "src" not in attributes and (attributes.get("type") or "") in self.RUNS:
            self._into = self.scripts
        elif tag == "style":
            self._into = self.styles
        if self._into is not None:
            self._into.append("")

    def handle_data(self, data: str) -> None:
        if self._into is not None:
            self._into[-1] += data

    def handle_endtag(self, tag: str) -> None:  # noqa: ARG002 (the library's signature)
        self._into = None


def _early_fetches(site: Path) -> list[str]:
    """Return the elements that start all fetches of a calculator at once, not one behind the other.

    The page's script runs as soon as it is there, and so starts the engine while
    the rest of the page still arrives; everywhere else it waits at the page's end.
    What only a shared link needs at once, the template's first script fetches.
    """
    links = []
    for folder in (site / "assets").glob("js-*"):
        links.append(f'<script type="module" async src="@/assets/{folder.name}/{PAGE_SCRIPT}"></script>')
        links += [f'<link rel="modulepreload" href="@/assets/{folder.name}/{name}">'
                  for name in imported_by(folder, EARLY_SCRIPTS) if name != PAGE_SCRIPT]
    return links


def imported_by(folder: Path, entries: tuple[str, ...]) -> list[str]:
    """Return modules and all that they import from their own folder, in the order of meeting them."""
    met: list[str] = []
    waiting = [path.name for entry in entries for path in sorted(folder.glob(entry))]
    while waiting:
        name = waiting.pop(0)
        if name not in met:
            met.append(name)
            waiting += STATIC_IMPORT.findall((folder / name).read_text(encoding="utf-8"))
    return met
