"""The built site as a WSGI application: compressed copies, types, headers.

Another host needs the same of its configuration:

- every response: `X-Content-Type-Options: nosniff`, `Referrer-Policy: no-referrer`,
  `Cross-Origin-Opener-Policy: same-origin`;
- pages: `Content-Security-Policy: frame-ancestors 'none'` (the rest of the policy
  is in each page; this part counts only in a header);
- `.mjs` and `.js`: the policy WORKER_POLICY below, since a worker takes its policy
  from its own response; type `text/javascript`;
- `.wasm`: type `application/wasm`;
- files with a hash in their address (IMMUTABLE below): kept for good; all others: `no-cache`,
  which means asked after each time, not fetched each time;
- the `.br` and `.gz` copies in place of the file itself, where the browser accepts them.
"""

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any
from wsgiref.headers import Headers

from whitenoise import WhiteNoise

IMMUTABLE = re.compile(r"/assets/(?:(?:css|fonts|js)-[0-9a-f]{12}/|engine/.*-[0-9a-f]{12}[./]"
                       r"|(?:javascripts|stylesheets)/.*\.[0-9a-f]{8}\.min\.)")
TYPES = {".mjs": "text/javascript", ".js": "text/javascript", ".wasm": "application/wasm",
         ".webmanifest": "application/manifest+json"}
WORKER_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"
PAGE_POLICY = "frame-ancestors 'none'"
NOT_FOUND = "404.html"

Application = Callable[[dict[str, Any], Callable[..., Any]], Iterable[bytes]]


def application(site: Path) -> Application:
    """Return the application that serves a built site."""
    served: Application = WhiteNoise(
        _not_found(site), root=site, index_file=True, max_age=0, mimetypes=TYPES,
        immutable_file_test=_is_immutable, add_headers_function=_add_headers, allow_all_origins=False,
    )
    return served


def _is_immutable(path: str, url: str) -> bool:  # noqa: ARG001 (the library's signature)
    return IMMUTABLE.match(url) is not None


def _add_headers(headers: Headers, path: str, url: str) -> None:
    for name, value in common_headers(path):
        headers[name] = value
    if not _is_immutable(path, url):
        headers["Cache-Control"] = "no-cache"


def common_headers(path: str) -> list[tuple[str, str]]:
    """Return the headers that protect a file, by its kind."""
    headers = [("X-Content-Type-Options", "nosniff"), ("Referrer-Policy", "no-referrer"),
               ("Cross-Origin-Opener-Policy", "same-origin")]
    if path.endswith(".html"):
        headers.append(("Content-Security-Policy", PAGE_POLICY))
    elif path.endswith((".mjs", ".js")):
        headers.append(("Content-Security-Policy", WORKER_POLICY))
    return headers


def _not_found(site: Path) -> Application:
    page = (site / NOT_FOUND).read_bytes()

    def answer(environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        headers = [("Content-Type", "text/html; charset=utf-8"), ("Content-Length", str(len(page))),
                   ("Cache-Control", "no-cache"), *common_headers(NOT_FOUND)]
        start_response("404 Not Found", headers)
        return [] if environ["REQUEST_METHOD"] == "HEAD" else [page]

    return answer
