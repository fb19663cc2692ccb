"""How long each engine takes over each calculator's worked example, once its module is imported."""

import html
import json
import os
import re
import subprocess
import time
from pathlib import Path
from statistics import median

from calc import answer, catalog
from scripts.measuring.browser import SITE

ROOT = Path(__file__).parents[2]
SCRIPT = Path(__file__).with_suffix(".mjs")
ENGINE_META = re.compile(r'name="rebrace-engine" content="([^"]*)"')

SOUGHT_MS = {"tiller": 20, "arrow-match": 30, "draw-curve": 30, "weight-reduction": 100, "bow-model": 200,
             "next-batch": 200}
"""What an answer with its ranges should take in the small engine on an idle machine, at most."""


def measure(runs: int) -> None:
    """Print a line for every calculator: CPython, and how many times as long the others take."""
    requests = {id: json.dumps({"calculator": id, "pairs": []}) for id in catalog.IDS}
    others = _in_browser_engines(requests, runs)
    waiting, cores = os.getloadavg()[0], os.cpu_count()
    print(f"\nWorked example, request to answer (median of {runs}; {waiting:.1f} processes at work on "
          f"{cores} cores)")
    print(f"  {'':18} {'CPython':>12}" + "".join(f"{name:>22}" for name in others))
    for id, request in requests.items():
        own = median([_timed(request) for _ in range(runs + 1)][1:])
        cells = "".join(f"{took[id]:12.1f} ms (x{took[id] / own:4.1f})" for took in others.values())
        sought = f"   sought {SOUGHT_MS[id]} ms" if id in SOUGHT_MS else ""
        print(f"  {id:18} {own:9.1f} ms{cells}{sought}", flush=True)


def _timed(request: str) -> float:
    began = time.perf_counter()
    answer.begin(request)
    while answer.advance().startswith('{"progress"'):
        pass
    return 1000 * (time.perf_counter() - began)


def _in_browser_engines(requests: dict[str, str], runs: int) -> dict[str, dict[str, float]]:
    asked = json.dumps({"files": built_files(), "requests": requests, "runs": runs})
    done = subprocess.run(["node", str(SCRIPT)], input=asked, cwd=ROOT, stdout=subprocess.PIPE, text=True,
                          check=True)
    found: dict[str, dict[str, float]] = json.loads(done.stdout)
    return found


def built_files() -> dict[str, str]:
    """Return the addresses of the engines' files as the built site names them."""
    [content] = ENGINE_META.findall((SITE / "index.html").read_text(encoding="utf-8"))
    folder = (SITE / "assets/engine").as_uri()
    return {part: f"{folder}/{name}" for part, name in json.loads(html.unescape(content)).items()}
