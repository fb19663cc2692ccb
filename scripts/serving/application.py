"""The built site as a WSGI application: compressed copies, types, headers on every status."""

from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any

from whitenoise import WhiteNoise

from scripts.serving.headers import TYPES, of_address

NOT_FOUND = "404.html"
FOR_HOSTS = "/_headers"
"""Read by hosts of static files, and not for visitors."""

Application = Callable[[dict[str, Any], Callable[..., Any]], Iterable[bytes]]


def application(site: Path) -> Application:
    """Return the application that serves a built site."""
    not_found = _not_found(site)
    files: Application = WhiteNoise(not_found, root=site, index_file=True, max_age=None, mimetypes=TYPES,
                                    allow_all_origins=False)

    def answer(environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        address = environ["PATH_INFO"]

        def start(status: str, headers: list[tuple[str, str]], *more: Any) -> Any:
            found = status.startswith(("200", "206", "304"))
            ours = of_address(address if found else "/" + NOT_FOUND)
            names = {name for name, _ in ours}
            return start_response(status, [each for each in headers if each[0] not in names] + ours, *more)

        return (not_found if _is_hidden(address) else files)(environ, start)

    return answer


def _is_hidden(address: str) -> bool:
    return "/." in address or address == FOR_HOSTS


def _not_found(site: Path) -> Application:
    page = (site / NOT_FOUND).read_bytes()

    def answer(environ: dict[str, Any], start_response: Callable[..., Any]) -> Iterable[bytes]:
        start_response("404 Not Found", [("Content-Type", "text/html; charset=utf-8"),
                                         ("Content-Length", str(len(page)))])
        return [] if environ["REQUEST_METHOD"] == "HEAD" else [page]

    return answer
