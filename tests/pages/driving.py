"""Browsers driven by the standard for it, with nothing installed but what Debian has of them.

The commands are those of WebDriver (W3C Recommendation). WebKit and Chromium come with a program that takes
them over HTTP; Firefox takes the same commands by the same names over a socket of its own.
"""

import http.client
import json
import os
import shutil
import socket
import subprocess
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Protocol

from tests.pages.reading import PATIENCE_MS

PATIENCE_S = PATIENCE_MS / 1000
LOOK_AGAIN_S = 0.05
HERE = "127.0.0.1"
SMALL = {"width": 500, "height": 900}
"""A window as narrow as all of them can be made."""

ELEMENT = "element-6066-11e4-a52e-4f735466cecf"
"""How the standard names an element in JSON."""

ROUTES = {
    "NewSession": ("POST", "/session"),
    "DeleteSession": ("DELETE", "/session/{session}"),
    "SetTimeouts": ("POST", "/session/{session}/timeouts"),
    "SetWindowRect": ("POST", "/session/{session}/window/rect"),
    "Navigate": ("POST", "/session/{session}/url"),
    "Refresh": ("POST", "/session/{session}/refresh"),
    "ExecuteAsyncScript": ("POST", "/session/{session}/execute/async"),
    "ElementClick": ("POST", "/session/{session}/element/{id}/click"),
    "ElementSendKeys": ("POST", "/session/{session}/element/{id}/value"),
    "PerformActions": ("POST", "/session/{session}/actions"),
}
CALL = """
const done = arguments[arguments.length - 1];
Promise.resolve([...arguments].slice(0, -1)).then((given) => (FUNCTION)(...given))
  .then((value) => done({ value }), (error) => done({ error: String(error) }));
"""
SHOWN = """(css, text) => [...document.querySelectorAll(css)].find((each) =>
  each.textContent.includes(text) && (each.matches("option, [type=file]") || each.checkVisibility()))"""
IN_SIGHT = """(element) => element.scrollIntoView({ block: "center", behavior: "instant" })"""
TEXTS = "(css) => [...document.querySelectorAll(css)].map((each) => each.innerText.trim())"
EMPTY = """(box) => {
  box.value = "";
  box.dispatchEvent(new Event("input", { bubbles: true }));
}"""
LEAVE = "() => document.activeElement.blur()"


class Refused(Exception):
    """The browser did not do what it was asked to."""


class Ask(Protocol):
    """Sends a command to a browser and returns what it answers."""

    def __call__(self, command: str, **parameters: object) -> object: ...


class Window:
    """A browser's window with a clean profile, as a reader handles it."""

    def __init__(self, ask: Ask, site_url: str):
        self.ask = ask
        self.site_url = site_url

    def open(self, address: str = "") -> None:
        self.ask("Navigate", url=self.site_url + address)

    def run(self, function: str, *given: object) -> object:
        """Return what a function in the page returns or promises."""
        answer = self.ask("ExecuteAsyncScript", script=CALL.replace("FUNCTION", function), args=list(given))
        if "error" in answer:
            raise Refused(answer["error"])
        return answer.get("value")

    def wait_until(self, so: str, *given: object) -> object:
        """Look again until a function in the page returns something; return that."""
        end = time.monotonic() + PATIENCE_S
        seen: object = None
        while time.monotonic() < end:
            try:
                seen = self.run(so, *given)
                if seen:
                    return seen
            except Refused as refusal:  # the page is just being replaced
                seen = refusal
            time.sleep(LOOK_AGAIN_S)
        raise AssertionError(f"not within {PATIENCE_S} s: {so} {given}, but {seen}")

    def find(self, css: str, text: str = "") -> object:
        """Wait for the first element that is seen and holds a text."""
        return self.wait_until(SHOWN, css, text)

    def in_sight(self, css: str, text: str = "") -> object:
        """Find an element and bring it where nothing that floats covers it."""
        found = self.find(css, text)
        self.run(IN_SIGHT, found)
        return found

    def texts(self, css: str) -> list[str]:
        return self.run(TEXTS, css)

    def text(self, css: str) -> str:
        self.find(css)
        return self.texts(css)[0]

    def value(self, css: str) -> str:
        return self.run("(box) => box.value", self.find(css))

    def click(self, css: str, text: str = "") -> None:
        self.ask("ElementClick", id=self.in_sight(css, text)[ELEMENT])

    def type(self, css: str, text: str) -> None:
        """Replace the text of a box, key by key, and go on from it."""
        box = self.find(css)
        self.run(EMPTY, box)
        self.press(css, text)
        self.run(LEAVE)

    def press(self, css: str, keys: str) -> None:
        """Press keys in an element; the name of a file instead, where it takes one."""
        self.ask("ElementSendKeys", id=self.find(css)[ELEMENT], text=keys)

    def touch(self, css: str, right: int, down: int) -> None:
        """Press with the pointer at a place told from the middle of an element."""
        moves = [{"type": "pointerMove", "origin": self.in_sight(css), "x": right, "y": down},
                 {"type": "pointerDown", "button": 0}, {"type": "pointerUp", "button": 0}]
        self.ask("PerformActions", actions=[{"type": "pointer", "id": "pointer", "actions": moves}])


@contextmanager
def firefox(folder: Path) -> Iterator[Ask]:
    """Firefox, with a profile of its own."""
    profile = folder / "profile"
    profile.mkdir()
    (profile / "user.js").write_text('user_pref("marionette.port", 0);\n')  # any that is free
    command = ["firefox-esr", "--headless", "--marionette", "--no-remote", "--profile", str(profile)]
    with _running(command, folder):
        port = profile / "MarionetteActivePort"
        _wait_for(lambda: port.is_file() and port.read_text())
        with socket.create_connection((HERE, int(port.read_text())), PATIENCE_S) as wire:
            yield _in_session(_over_socket(wire), {})


@contextmanager
def webkit(folder: Path) -> Iterator[Ask]:
    """WebKit as GTK has it, on a screen that nobody sees."""
    options = {"binary": str(_webkits()[-1]), "args": ["--automation"]}
    with _screen(folder) as screen, _driver("WebKitWebDriver", folder, {"DISPLAY": screen}) as port:
        yield _in_session(_over_http(port), {"webkitgtk:browserOptions": options})


@contextmanager
def chromium(folder: Path) -> Iterator[Ask]:
    """Chromium, as for the other tests."""
    program = os.environ.get("CHROMIUM") or shutil.which("chromium")
    options = {"binary": program, "args": ["--headless", "--no-sandbox", "--disable-gpu"]}
    with _driver("chromedriver", folder, {}) as port:
        yield _in_session(_over_http(port), {"goog:chromeOptions": options})


BROWSERS = {"firefox": firefox, "webkit": webkit, "chromium": chromium}


def installed() -> list[str]:
    """Return the browsers that can be driven here."""
    wanted = {"firefox": ["firefox-esr"], "webkit": ["WebKitWebDriver", "Xvfb"], "chromium": ["chromedriver"]}
    found = [name for name, programs in wanted.items() if all(shutil.which(each) for each in programs)]
    return [name for name in found if name != "webkit" or _webkits()]


def _webkits() -> list[Path]:
    return sorted(Path("/usr/lib").glob("*/webkit2gtk-4.*/MiniBrowser"))


def _in_session(send: Ask, wanted: dict[str, object]) -> Ask:
    """Open a session and return how it is asked."""
    session = send("NewSession", capabilities={"alwaysMatch": wanted})["sessionId"]

    def ask(command: str, **parameters: object) -> object:
        return send(command, session=session, **parameters)

    ask("SetTimeouts", script=PATIENCE_MS, pageLoad=PATIENCE_MS)
    ask("SetWindowRect", **SMALL)
    return ask


def _over_http(port: int) -> Ask:
    def send(command: str, **parameters: object) -> object:
        method, route = ROUTES[command]
        body = {name: value for name, value in parameters.items() if "{" + name + "}" not in route}
        line = http.client.HTTPConnection(HERE, port, timeout=2 * PATIENCE_S)
        line.request(method, route.format(**parameters), json.dumps(body) if method == "POST" else None)
        value = json.loads(line.getresponse().read())["value"]
        line.close()
        if isinstance(value, dict) and "error" in value and "stacktrace" in value:
            raise Refused(f"{command}: {value['error']}: {value['message']}")
        return value

    return send


def _over_socket(wire: socket.socket) -> Ask:
    """Ask Firefox: a message is its length, a colon and a list in JSON."""
    stream = wire.makefile("rb")
    wire.settimeout(2 * PATIENCE_S)

    def read() -> list:
        length = b"".join(iter(lambda: stream.read(1), b":"))
        return json.loads(stream.read(int(length)))

    def send(command: str, **parameters: object) -> object:
        parameters.pop("session", None)  # the socket is the session's own
        message = json.dumps([0, 1, "WebDriver:" + command, parameters]).encode()
        wire.sendall(b"%d:%b" % (len(message), message))
        _, _, refusal, value = read()
        if refusal:
            raise Refused(f"{command}: {refusal['error']}: {refusal['message']}")
        return value["value"] if set(value) == {"value"} else value

    read()  # how it greets
    return send


@contextmanager
def _driver(program: str, folder: Path, around: dict[str, str]) -> Iterator[int]:
    with socket.socket() as free:
        free.bind((HERE, 0))
        port = free.getsockname()[1]
    with _running([program, f"--port={port}"], folder, around):
        _wait_for(lambda: _answers(port))
        yield port


def _answers(port: int) -> bool:
    with socket.socket() as line:
        return line.connect_ex((HERE, port)) == 0


@contextmanager
def _screen(folder: Path) -> Iterator[str]:
    """A screen that nobody sees, by the name that programs know it by."""
    number = folder / "screen"
    with number.open("w") as file:
        command = ["Xvfb", "-displayfd", str(file.fileno()), "-screen", "0", "1280x1024x24",
                   "-nolisten", "tcp"]
        with _running(command, folder, pass_fds=(file.fileno(),)):
            _wait_for(lambda: number.read_text().endswith("\n"))
            yield ":" + number.read_text().strip()


@contextmanager
def _running(command: list[str], folder: Path, around: dict[str, str] | None = None,
             pass_fds: tuple[int, ...] = ()) -> Iterator[None]:
    with (folder / "log.txt").open("a") as log:
        running = subprocess.Popen(command, env={**os.environ, **(around or {})}, stdout=log, stderr=log,
                                   pass_fds=pass_fds)
    try:
        yield
    finally:
        running.terminate()
        running.wait()


def _wait_for(so: Callable[[], object]) -> None:
    end = time.monotonic() + PATIENCE_S
    while not so():
        if time.monotonic() > end:
            raise Refused("did not start in time")
        time.sleep(LOOK_AGAIN_S)
