"""The site's style sheets, joined into one small file.

They are written one a part of the page; on a slow line every further file costs a wait of its own.
"""

import re
import subprocess
from pathlib import Path

from scripts.building.errors import BuildError

FOLDER = "assets/css"
JOINED = "site.css"
LINK = re.compile(r'[ \t]*<link rel="stylesheet" href="[^"]*' + FOLDER + r'/(?P<name>[\w-]+\.css)">\n?')


def join(node_modules: Path, site: Path) -> None:
    """Replace the style sheets that every page of a built site names by a single one, in their order.

    Raises:
        BuildError: pages name different sheets, or none, or a sheet has faults.
    """
    texts = {path: path.read_text(encoding="utf-8") for path in sorted(site.rglob("*.html"))}
    orders = {tuple(link["name"] for link in LINK.finditer(text)) for text in texts.values()}
    if len(orders) != 1 or () in orders:
        raise BuildError(f"all pages must name the same style sheets of {FOLDER}, in one order; "
                         f"found {sorted(orders)}")
    [names] = orders
    folder = site / FOLDER
    whole = "\n".join((folder / name).read_text(encoding="utf-8") for name in names)
    for name in names:
        (folder / name).unlink()
    (folder / JOINED).write_text(_minified(node_modules, whole), encoding="utf-8")
    for path, text in texts.items():
        path.write_text(_with_one_link(text), encoding="utf-8")


def _minified(node_modules: Path, styles: str) -> str:
    command = [str(node_modules / ".bin" / "esbuild"), "--loader=css", "--minify", "--charset=utf8",
               "--log-level=warning"]
    done = subprocess.run(command, input=styles, capture_output=True, text=True, check=False)
    if done.returncode or done.stderr:
        raise BuildError("style sheets have faults:\n" + done.stderr)
    return done.stdout


def _with_one_link(text: str) -> str:
    """Return a page that names the joined sheet where it named its last one."""
    *others, last = LINK.finditer(text)
    one = text[last.start():last.end()].replace(f"{FOLDER}/{last['name']}", f"{FOLDER}/{JOINED}")
    text = text[:last.start()] + one + text[last.end():]
    for link in reversed(others):
        text = text[:link.start()] + text[link.end():]
    return text
