"""What the server hands out, and what it says when it cannot."""

import asyncio
import http.client
import socket
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import brotli
import pytest
import waitress

from scripts.measuring.shaped_link import Line, relayed
from scripts.serving.application import application
from scripts.serving.headers import ALWAYS

ROOT = Path(__file__).parents[2]
SITE = ROOT / "site"


@pytest.fixture(scope="module")
def port():
    server = waitress.create_server(application(SITE), host="127.0.0.1", port=0)
    threading.Thread(target=server.run, daemon=True).start()
    yield server.effective_port
    server.close()


def get(port, path, accept="identity"):
    request = urllib.request.Request(f"http://127.0.0.1:{port}{path}", headers={"Accept-Encoding": accept})
    try:
        with urllib.request.urlopen(request, timeout=10) as response:
            return response.status, response.headers, response.read()
    except urllib.error.HTTPError as error:
        return error.code, error.headers, error.read()


def address(pattern):
    [path] = SITE.glob(pattern)
    return "/" + path.relative_to(SITE).as_posix()


def test_a_page_is_served_compressed_where_the_browser_takes_it(port):
    status, headers, body = get(port, "/", "gzip, br")
    assert (status, headers["Content-Encoding"], headers["Vary"]) == (200, "br", "Accept-Encoding")
    assert brotli.decompress(body) == (SITE / "index.html").read_bytes()
    assert get(port, "/", "gzip")[1]["Content-Encoding"] == "gzip"
    assert get(port, "/")[2] == (SITE / "index.html").read_bytes()


@pytest.mark.parametrize(("pattern", "type_"), [
    ("assets/engine/micropython-slim-*.wasm", "application/wasm"),
    ("assets/js-*/worker.mjs", "text/javascript"),
    ("assets/engine/calc-*/core.pack", "application/octet-stream"),
    ("assets/images/favicon.svg", "image/svg+xml"),
    ("service-worker.js", "text/javascript"),
    ("site.webmanifest", "application/manifest+json"),
])
def test_types_are_right_and_not_guessed(port, pattern, type_):
    _, headers, _ = get(port, address(pattern))
    assert headers["Content-Type"].split(";")[0] == type_
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"


def test_names_by_content_are_kept_and_all_others_asked_after(port):
    for pattern in ("assets/engine/micropython-slim-*.wasm", "assets/engine/calc-*/core.pack",
                    "assets/engine/pyodide-*/pyodide.mjs", "assets/js-*/worker.mjs", "assets/css-*/site.css",
                    "assets/fonts-*/besley-*.woff2", "assets/javascripts-*/bundle.*.min.js",
                    "assets/search-*/index.json"):
        assert "immutable" in get(port, address(pattern))[1]["Cache-Control"], pattern
    for path in ("/", "/service-worker.js", "/site.webmanifest", "/assets/images/favicon.svg"):
        assert get(port, path)[1]["Cache-Control"] == "no-cache", path


def test_a_worker_gets_its_policy_with_its_own_response(port):
    policy = get(port, address("assets/js-*/worker.mjs"))[1]["Content-Security-Policy"]
    assert "default-src 'none'" in policy
    assert "'wasm-unsafe-eval'" in policy
    assert "'unsafe-eval'" not in policy.replace("'wasm-unsafe-eval'", "")


def test_pages_may_not_be_framed(port):
    assert get(port, "/")[1]["Content-Security-Policy"] == "frame-ancestors 'none'"


@pytest.mark.parametrize(("method", "path", "more", "status"), [
    ("GET", "/", {}, 200),
    ("HEAD", "/", {}, 200),
    ("GET", "/", {"If-None-Match": "same"}, 304),
    ("GET", "/assets/images/favicon.svg", {"Range": "bytes=0-9"}, 206),
    ("GET", "/assets/images/favicon.svg", {"Range": "bytes=9999999-"}, 416),
    ("GET", "/nothing/", {}, 404),
    ("POST", "/", {}, 405),
    ("GET", "/begin", {}, 302),
])
def test_the_headers_that_protect_stand_on_every_status(port, method, path, more, status):
    if more.get("If-None-Match"):
        more = {"If-None-Match": asked(port, "GET", path)[1]["ETag"]}
    answered, headers = asked(port, method, path, more)
    assert answered == status
    for name, value in ALWAYS:
        assert headers.get_all(name) == [value]
    assert len(headers.get_all("Cache-Control")) == 1
    assert "frame-ancestors 'none'" in headers["Content-Security-Policy"]


def asked(port, method, path, headers=None):
    """Return status and headers of one request whose answer's redirect is not followed."""
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request(method, path, headers=headers or {})
    answer = connection.getresponse()
    answer.read()
    connection.close()
    return answer.status, answer.headers


@pytest.mark.parametrize("path", ["/_headers", "/.htaccess", "/.built-from", "/assets/.hidden"])
def test_what_is_for_hosts_is_not_shown_to_visitors(port, path):
    assert get(port, path)[0] == 404


def test_no_file_of_the_site_speaks_of_source_maps():
    spoken = [path for path in SITE.rglob("*") if path.suffix in (".js", ".mjs", ".css")
              and b"sourceMappingURL" in path.read_bytes()]
    assert spoken == []


@pytest.mark.parametrize("path", ["/nothing/", "/../README.md", "/%2e%2e/README.md", "/assets/"])
def test_what_is_not_part_of_the_site_is_not_found(port, path):
    status, headers, body = get(port, path)
    assert status == 404
    assert headers["Content-Type"].startswith("text/html")
    assert body == (SITE / "404.html").read_bytes()


def test_a_taken_port_is_named_with_the_way_out():
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        number = taken.getsockname()[1]
        done = subprocess.run([sys.executable, "-m", "scripts.serving", "--port", str(number)], cwd=ROOT,
                              capture_output=True, text=True, timeout=20, check=False)
    assert done.returncode == 1
    assert f"Port {number} is taken" in done.stderr
    assert f"--port {number + 1}" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("text", ["abc", "-1", "65536", "\uff18\uff10", ""])
def test_a_port_that_is_none_is_refused(text):
    done = subprocess.run([sys.executable, "-m", "scripts.serving", "--port=" + text], cwd=ROOT,
                          capture_output=True, text=True, timeout=20, check=False)
    assert done.returncode == 2
    assert "a port is a number from 0 to 65535" in done.stderr


def test_a_slow_line_carries_the_same_bytes_and_counts_them(port):
    with relayed(port, Line("quick enough for a test", 50e6, 0.002)) as relay:
        path = address("assets/engine/micropython-slim-*.wasm")
        assert get(relay.port, path)[2] == (SITE / path[1:]).read_bytes()
        assert relay.bytes_down(time.time()) > (SITE / path[1:]).stat().st_size


def test_a_slow_line_is_made_beside_a_loop_that_runs_already(port):
    async def ask():
        with relayed(port, Line("as fast as the machine", None, 0.0)) as relay:
            return get(relay.port, "/")[0]

    with ThreadPoolExecutor(1) as thread:  # where no browser's test has left a loop of its own running
        assert thread.submit(asyncio.run, ask()).result() == 200
