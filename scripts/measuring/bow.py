"""The computed bow: one two-limb draw curve and one weight-and-tiller plan, in three engines.

The two browser engines run in Chromium, with the package as the site ships it. Beside the speed stands how
long the same integration steps take compiled code, and what halving the step of the integration changes.
"""

import time
from base64 import b64encode
from collections.abc import Callable
from pathlib import Path
from statistics import median

from playwright.sync_api import Route

from scripts.building import bytecode, engine
from scripts.measuring import compiled, workload
from scripts.measuring.browser import fresh_page, served_site

ROOT = Path(__file__).parents[2]
SCRIPTS = ROOT / "docs/assets/js"
SIDE_BY_SIDE = 20
"""Tasks whose compiled steps are done at once, so that NumPy's own calls hardly count."""

RUN = """
async ([name, sources, modules, runs]) => {
  const names = JSON.parse(document.querySelector('meta[name="rebrace-engine"]').content);
  const folder = new URL("assets/engine/", location.href);
  const at = (part) => new URL(names[part], folder).href;
  const engines = {
    async Pyodide() {
      const {loadPyodide} = await import(at("pyodide") + "pyodide.mjs");
      const python = await loadPyodide({indexURL: at("pyodide")});
      for (const [path, source] of Object.entries(sources)) {
        python.FS.mkdirTree("/home/bench/" + path.slice(0, path.lastIndexOf("/") + 1));
        python.FS.writeFile("/home/bench/" + path, source);
      }
      python.runPython("import sys\\nsys.path.insert(0, '/home/bench')");
      return python.pyimport("workload");
    },
    async MicroPython() {
      const {startInterpreter} = await import("/as-written/interpreter.mjs");
      const python = await startInterpreter(fetch(at("wasm")));
      const bytes = (text) => Uint8Array.from(atob(text), (each) => each.charCodeAt(0));
      python.add(Object.entries(modules).map(([path, text]) => [path, bytes(text)]));
      const work = python.load("workload");
      return {curve: work("curve"), plan: work("plan")};
    },
  };
  const work = await engines[name]();
  const timed = (task) => {
    const began = performance.now();
    task();
    return performance.now() - began;
  };
  const took = {};
  for (const task of ["curve", "plan"]) {
    timed(() => work[task]());
    took[task] = Array.from({length: runs}, () => timed(() => work[task]()));
  }
  return took;
}
"""


def measure(runs: int) -> None:
    """Print both tasks in each engine, and what halving the step changes."""
    runs = max(runs, 3)
    own = {"curve": _timed(workload.curve, runs), "plan": _timed(workload.plan, runs)}
    found = {"CPython": own}
    for name in ("Pyodide", "MicroPython"):
        found[name] = _in_chromium(name, runs)
    print(f"\nComputed bow, unequal recurve with string contact (median of {runs}; browsers' engines in "
          "Chromium)")
    for name, took in found.items():
        cells = [f"{task} {took[task]:7.1f} ms (x{took[task] / own[task]:4.1f})   " for task in own]
        print(f"  {name:12} " + "".join(cells), flush=True)
    for task, work in (("curve", workload.curve), ("plan", workload.plan)):
        pulls = compiled.pulls_of(work, SIDE_BY_SIDE)
        limit = _timed(pulls.marched, runs) / SIDE_BY_SIDE
        beside = ", ".join(f"{name} takes x{took[task] / limit:.0f}" for name, took in found.items())
        print(f"  {task}: steps of its {len(pulls.turns) // SIDE_BY_SIDE} pulls, compiled, {limit:.3f} ms; "
              + beside, flush=True)
    force, energy, tiller = workload.change_on_halving()
    print(f"  halving the step changes draw force by {force:.1e} and stored energy by {energy:.1e} of "
          f"themselves, tiller by {1e6 * tiller:.2f} um")


def _timed(task: Callable[[], object], runs: int) -> float:
    task()
    took = []
    for _ in range(runs):
        began = time.perf_counter()
        task()
        took.append(1000 * (time.perf_counter() - began))
    return median(took)


def _in_chromium(name: str, runs: int) -> dict[str, float]:
    sources = engine.bundle(ROOT) | {"workload.py": Path(workload.__file__).read_text("utf-8")}
    modules = {path: b64encode(code).decode() for path, code in bytecode.compiled(sources).items()}
    with served_site() as port, fresh_page() as page:
        page.route("**/as-written/*", _as_written)
        page.goto(f"http://127.0.0.1:{port}/")
        took = page.evaluate(RUN, [name, sources, modules, runs])
    return {task: median(times) for task, times in took.items()}


def _as_written(route: Route) -> None:
    route.fulfill(path=SCRIPTS / Path(route.request.url).name)
