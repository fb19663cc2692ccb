"""Writes what two common kinds of static host read: headers, types and the page for what is not found.

`_headers` is read by hosts that take the site as a folder, `.htaccess` by web servers that look for one
in each folder. Both say what `scripts/serving/headers.py` says; neither is shown to visitors.
"""

from collections.abc import Iterable
from pathlib import Path
from urllib.parse import urlsplit

from scripts.serving.headers import (
    ALWAYS,
    ASKED_AFTER,
    FOR_GOOD,
    IMMUTABLE,
    PAGE_POLICY,
    SCRIPT_POLICY,
    SCRIPTS,
    TYPES,
)

FOLDERS = "_headers"
SERVERS = ".htaccess"
PAGES = ("/", "/*/", "/service-worker.js", "/site.webmanifest")
"""What changes with a release and keeps its address."""
Headers = Iterable[tuple[str, str]]


def write(site: Path, address: str) -> None:
    """Put both files into a site that is built for an address."""
    files = sorted("/" + path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file())
    root = urlsplit(address).path.rstrip("/")
    (site / FOLDERS).write_text(for_folders(files, root), encoding="utf-8")
    (site / SERVERS).write_text(for_servers(root), encoding="utf-8")


def for_folders(files: list[str], root: str) -> str:
    """Return the rules for a host that joins the headers of all patterns that match an address.

    Of two policies joined, both hold: that of a script on top of that of every file.

    Args:
        files: addresses of the site's files, from its root.
        root: where the site stands at the host, without a slash at the end.
    """
    kept = sorted({_pattern(each) for each in files if IMMUTABLE.match(each)})
    rules = [_rule(root + "/*", [*ALWAYS, ("Content-Security-Policy", PAGE_POLICY)])]
    for ending, kind in TYPES.items():
        policy = [("Content-Security-Policy", SCRIPT_POLICY)] if ending in SCRIPTS else []
        rules.append(_rule(f"{root}/*{ending}", [("Content-Type", kind), *policy]))
    rules += [_rule(root + each, [("Cache-Control", FOR_GOOD)]) for each in kept]
    rules += [_rule(root + each, [("Cache-Control", ASKED_AFTER)]) for each in PAGES]
    return "\n".join(rules)


def _pattern(file: str) -> str:
    """Return the pattern for all that is kept with a file: its folder, where that carries the hash."""
    found = IMMUTABLE.match(file)
    return found[0] + "*" if found and found[0].endswith("/") else file


def _rule(pattern: str, headers: Headers) -> str:
    return "\n".join([pattern, *(f"  {name}: {value}" for name, value in headers)]) + "\n"


def for_servers(root: str) -> str:
    """Return the rules for a web server that reads them from the folder of the site.

    Args:
        root: where the site stands at the server, without a slash at the end.
    """
    scripts = "|".join(each[1:] for each in SCRIPTS)
    return "\n".join([
        f"ErrorDocument 404 {root}/404.html",
        "Options -Indexes",
        *(f"AddType {kind} {ending}" for ending, kind in TYPES.items()),
        "<IfModule mod_headers.c>",
        *_set(ALWAYS),
        *_set([("Content-Security-Policy", PAGE_POLICY), ("Cache-Control", ASKED_AFTER)]),
        f'<FilesMatch "\\.({scripts})$">',
        *_set([("Content-Security-Policy", SCRIPT_POLICY)]),
        "</FilesMatch>",
        f'<If "%{{REQUEST_URI}} =~ m#^{root}{IMMUTABLE.pattern}# && %{{REQUEST_STATUS}} < 400">',
        *_set([("Cache-Control", FOR_GOOD)]),
        "</If>",
        "</IfModule>",
        f'<FilesMatch "^({FOLDERS}$|\\.)">',
        "Require all denied",
        "</FilesMatch>",
    ]) + "\n"


def _set(headers: Headers) -> list[str]:
    return [f'Header always set {name} "{value}"' for name, value in headers]
