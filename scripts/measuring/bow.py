"""The computed bow: one two-limb draw curve and one weight-and-tiller plan, in three engines.

The two browser engines run in Chromium, with the package as the site ships it. Beside the speed stands how
long the same integration steps take compiled code, and what halving the step of the integration changes.
"""

import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

from scripts.building import engine
from scripts.measuring import compiled, workload
from scripts.measuring.browser import fresh_page, served_site

ROOT = Path(__file__).parents[2]
SIDE_BY_SIDE = 20
"""Tasks whose compiled steps are done at once, so that NumPy's own calls hardly count."""

RUN = """
async ([name, sources, home, runs]) => {
  const names = JSON.parse(document.querySelector('meta[name="rebrace-engine"]').content);
  const folder = new URL("assets/engine/", location.href);
  const at = (part) => new URL(names[part], folder).href;
  const python = name === "MicroPython"
    ? await (await import(at("micropython"))).loadMicroPython({url: at("wasm"), heapsize: 8 * 1024 * 1024})
    : await (await import(at("pyodide") + "pyodide.mjs")).loadPyodide({indexURL: at("pyodide")});
  for (const [path, source] of Object.entries(sources)) {
    let folder = "";
    for (const part of `${home}/${path}`.split("/").slice(1, -1)) {
      folder += `/${part}`;
      if (!python.FS.analyzePath(folder).exists) python.FS.mkdir(folder);
    }
    python.FS.writeFile(`${home}/${path}`, source);
  }
  python.runPython(`import sys\\nsys.path.insert(0, "${home}")`);
  const work = python.pyimport("workload");
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
    sources = engine.bundle(ROOT)
    sources["workload.py"] = engine.small(Path(workload.__file__).read_text("utf-8"), "workload.py")
    with served_site() as port, fresh_page() as page:
        page.goto(f"http://127.0.0.1:{port}/")
        took = page.evaluate(RUN, [name, sources, "/home/bench", runs])
    return {task: median(times) for task, times in took.items()}
