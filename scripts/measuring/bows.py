"""How soon a full bench of bows is listed, and how long it takes to write an entry down, in Chromium."""

import json
from statistics import median

from playwright.sync_api import Page

from calc.record import tasks
from scripts.measuring.browser import SITE, fresh_page, served_site
from scripts.measuring.job import BOWS, ENTRIES, full_bench

FILL = """async ([store, bows]) => {
  const { openStore } = await import(store);
  const kept = await openStore();
  for (const { id, rows, head } of bows) await kept.add(id, rows, head);
}"""
LISTED = """async (count) => {
  const isListed = () => document.querySelectorAll(".rb-bows-list > li").length === count;
  while (!isListed()) await new Promise(requestAnimationFrame);
  return performance.now();
}"""
SAVE = """async () => {
  const dialog = document.querySelector("dialog[open]");
  const began = performance.now();
  dialog.querySelector("button[type=submit]").click();
  while (dialog.open) await new Promise(requestAnimationFrame);
  return performance.now() - began;
}"""


def measure(runs: int) -> None:
    """Print the times."""
    with served_site() as port, fresh_page() as page:
        address = f"http://127.0.0.1:{port}/"
        page.goto(address + "glossary/")
        kept = [_kept(number, text) for number, text in enumerate(full_bench())]
        page.evaluate(FILL, [_store(address), kept])
        listed = [_time_to_list(page, address) for _ in range(max(runs, 3))]
        page.goto(address + f"bows/#{_id(0)}")
        page.locator(".rb-bows[data-ready]").wait_for()
        written = [_time_to_write(page) for _ in range(max(runs, 3))]
    print(f"\n{BOWS} bows, {ENTRIES} entries, in Chromium (median of {max(runs, 3)})")
    print(f"  until all are listed      {median(listed):8.0f} ms")
    print(f"  from Save to written down {median(written):8.0f} ms", flush=True)


def _store(address: str) -> str:
    [path] = SITE.glob("assets/js-*/store.mjs")
    return address + path.relative_to(SITE).as_posix()


def _id(number: int) -> str:
    return f"{number:014}"


def _kept(number: int, text: str) -> dict[str, object]:
    """Return a bow as the store keeps it: its entries under ids of their own, and what the list shows."""
    entries = json.loads(text)
    for place, each in enumerate(entries):
        each["id"] = f"{number:04}{place:010}"
    head = tasks.answer({"task": "head", "units": "imperial", "entries": json.dumps(entries)})
    rows = [{"id": each["id"], "text": json.dumps(each)} for each in entries]
    return {"id": _id(number), "rows": rows, "head": head}


def _time_to_list(page: Page, address: str) -> float:
    page.goto("about:blank")
    page.goto(address + "bows/", wait_until="commit")
    return float(page.evaluate(LISTED, BOWS))


def _time_to_write(page: Page) -> float:
    page.locator("[data-do=quick-batch]").click()
    page.locator("dialog[open] [data-add='1']").first.click()
    return float(page.evaluate(SAVE))
