"""From a key pressed to the updated result, in a page whose engine runs."""

from collections.abc import Iterator
from statistics import median

from calc import (
    catalog,
    declaring,
    quantities,
)
from scripts.measuring.browser import fresh_page, served_site
from scripts.measuring.link_to_answer import PATIENCE_MS

STROKES_A_RUN = 40
TYPE = """
async ([name, texts, strokes]) => {
  const field = document.querySelector(`.rb-form [name="${name}"]`);
  const outcome = document.querySelector(".rb-outcome");
  const nextAnswer = () => new Promise((resolve) => {
    new MutationObserver((changes, observer) => {
      if (outcome.dataset.state !== "current" || !changes.some(({ type }) => type === "childList")) return;
      observer.disconnect();
      resolve();
    }).observe(outcome, {subtree: true, childList: true, attributes: true});
  });
  const took = [];
  for (let stroke = 0; stroke < strokes; stroke += 1) {
    const answered = nextAnswer();
    const pressed = performance.now();
    field.value = texts[stroke % texts.length];
    field.dispatchEvent(new InputEvent("input", {bubbles: true}));
    await answered;
    took.push(performance.now() - pressed);
  }
  return took;
}
"""


def measure(runs: int) -> None:
    """Print the median for every calculator."""
    print(f"\nKeystroke to updated result (median of {runs * STROKES_A_RUN})")
    with served_site() as port, fresh_page() as page:
        for id, name, texts in _typed():
            page.goto(f"http://127.0.0.1:{port}/calculators/{id}/#units=imperial")
            page.locator('.rb-outcome[data-state="current"]').wait_for(timeout=PATIENCE_MS)
            took = page.evaluate(TYPE, [name, texts, runs * STROKES_A_RUN])
            print(f"  {id:18} {median(took):7.1f} ms, slowest {max(took):.1f} ms", flush=True)


def _typed() -> Iterator[tuple[str, str, list[str]]]:
    """Yield each calculator that asks for a quantity, the first one, and two texts to type there in turn."""
    words = (declaring.CHOICE, declaring.SWITCH, declaring.COUNT, declaring.DATE, declaring.ROWS)
    for id in catalog.IDS:
        inputs = declaring.inputs_of(catalog.find(id))
        for first in [each for each in inputs if each.kind not in words and each.default][:1]:
            value = quantities.parse(first.default, first.kind)
            yield id, first.id, [quantities.show(value * factor, first.kind) for factor in (1.01, 1.0)]
