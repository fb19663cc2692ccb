"""A fresh Chromium on the built site."""

import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import waitress
from playwright.sync_api import Page, sync_playwright

from scripts.serving.application import application

SITE = Path(__file__).parents[2] / "site"
QUIET = ("--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync")
PHONE = {"width": 390, "height": 844}


@contextmanager
def served_site(site: Path = SITE) -> Iterator[int]:
    """Serve the built site, or another folder like it, on a free port."""
    server = waitress.create_server(application(site), host="127.0.0.1", port=0, threads=8)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    try:
        yield int(server.effective_port)
    finally:
        server.close()


@contextmanager
def fresh_page(script: str = "") -> Iterator[Page]:
    """Open an empty page in a new browser process with a new profile; script runs before each document."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=os.environ["CHROMIUM"], args=list(QUIET))
        page = browser.new_page(viewport={"width": PHONE["width"], "height": PHONE["height"]})
        if script:
            page.add_init_script(script)
        yield page
        browser.close()
