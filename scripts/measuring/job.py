"""What records spare on a bench with six bows, and how long a full bench takes to fold."""

import json
import time
from statistics import median

from calc.record import checks, summary
from calc.record.entries import Entry as Kept
from calc.record.entries import entries_json, entry_id, entry_json, read_entries
from calc.record.fold import State
from scripts.measuring import visits

BOWS = 50
ENTRIES = 5000


def measure(runs: int) -> None:
    """Print the count of the journey, and the times."""
    count = visits.journey().count
    print(f"\nSix invented bows, {count.visits} visits to calculators, {count.entries} entries")
    print(f"  typed {count.typed} figures ({count.keystrokes} keystrokes), from the records {count.filled}")
    print(f"  keystrokes typed again {count.again}, figures of another bow offered {len(count.foreign)}, "
          f"visits refused {len(count.unanswered)}")
    records = full_bench()
    took = {"read and fold all": _timed(lambda: [State(read_entries(each)[0]) for each in records], runs),
            "what the list shows": _timed(lambda: [_head(each) for each in records], runs),
            "one bow of 5,000 entries": _timed(lambda: _head(_grown(ENTRIES)), runs)}
    print(f"{BOWS} bows, {ENTRIES} entries, in CPython (median of {runs})")
    for name, milliseconds in took.items():
        print(f"  {name:26}{milliseconds:8.0f} ms", flush=True)


def full_bench() -> list[str]:
    """Return the records of a full bench."""
    return [_grown(ENTRIES // BOWS) for _ in range(BOWS)]


def _grown(size: int) -> str:
    """Return a record of so many entries: readings and batches in turn."""
    entries = []
    for number in range(size):
        facts = ((("lower_belly", "12"), ("paper", "P120")) if number % 2 else
                 (("weight", f"{53 - number / size:.2f} lb"), ("at_draw", "28 in"), ("upper", "7 5/8 in"),
                  ("lower", "7 5/16 in")))
        sheet = "strokes" if number % 2 else "reading"
        at = f"2026-0{4 + number % 5}-{1 + number % 28:02}T{9 + number % 9:02}:00+02:00"
        entries.append(Kept(entry_id(number, 0), at, sheet, facts))
    return entries_json(entries)


def _head(record: str) -> str:
    state = State(read_entries(record)[0])
    summary.is_stopped(checks.checks(state))
    return json.dumps([summary.title(state), summary.whats_next(state), entry_json(state.entries[-1])])


def _timed(task, runs: int) -> float:  # type: ignore[no-untyped-def]
    took = []
    for _ in range(max(runs, 3)):
        began = time.perf_counter()
        task()
        took.append(1000 * (time.perf_counter() - began))
    return median(took)
