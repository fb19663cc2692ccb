"""Answers kept in a file: the first in full, of the others the parts that differ from it."""

import json
import os
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

from tests import alike

Part = str | int | float | list[str | float] | None
Parts = dict[str, Part]
Case = dict[str, Any]

DIGITS = 12  # of each figure that is stored
WRITES = os.environ.get("REBRACE_UNCHANGED") == "write"


def held_to(path: Path, answered: Callable[[Case], Parts]) -> None:
    """Hold the answers of today to those of a file; where that is asked for, store them instead."""
    cases = read(path)
    now = [answered(case) for case in cases]
    if WRITES:
        write(path, [{**case, "parts": parts} for case, parts in zip(cases, now, strict=True)])
        return
    for case, parts in zip(cases, now, strict=True):
        question = {name: value for name, value in case.items() if name != "parts"}
        assert (question, differences(case["parts"], parts)) == (question, {})


def differences(stored: Parts, found: Parts) -> dict[str, tuple[Part, Part]]:
    """Return the parts that differ, each as it is stored and as it is now; None: there is none."""
    return {name: (stored.get(name), found.get(name)) for name in {**stored, **found}
            if alike.differences(found.get(name), stored.get(name))}


def read(path: Path) -> list[Case]:
    """Return the cases of a file, each with its question and all parts of its answer."""
    cases: list[Case] = json.loads(path.read_text("utf-8"))
    return [{**case, "parts": {**cases[0]["parts"], **case["parts"]}} for case in cases]


def write(path: Path, cases: list[Case]) -> None:
    """Store cases, each with all parts of its answer."""
    first = cases[0]["parts"]
    kept = [cases[0]["parts"], *[{name: now for name, (_, now) in differences(first, case["parts"]).items()}
                                 for case in cases[1:]]]
    told = [told_case(case, parts) for case, parts in zip(cases, kept, strict=True)]
    path.write_text("[\n" + ",\n".join(told) + "\n]\n", "utf-8")


def told_case(case: Case, parts: Parts) -> str:
    """Return a case as JSON: its question, then its parts, each text in them on a line of its own."""
    lines = [f"{as_json(name)}: {as_json(value)}" for name, value in case.items() if name != "parts"]
    told = [f"  {as_json(name)}: {told_part(rounded(part))}" for name, part in parts.items()]
    return "{" + ",\n ".join([*lines, '"parts": {\n' + ",\n".join(told) + "\n }"]) + "}"


def told_part(part: Part) -> str:
    if isinstance(part, list) and any(isinstance(each, str) for each in part):
        return "[\n" + ",\n".join("   " + as_json(each) for each in part) + "]"
    return as_json(part)


def checksum(text: str) -> str:
    """Return what stands for a text that is too long to be stored: any other one has another."""
    return f"{zlib.crc32(text.encode()):08x}"


def as_json(data: object) -> str:
    return json.dumps(data, ensure_ascii=False)


def rounded(part: Part) -> Part:
    """Return a part whose figures have no more digits than are compared, and some to spare."""
    if isinstance(part, list):
        return [float(f"{each:.{DIGITS}g}") if isinstance(each, float) else each for each in part]
    return float(f"{part:.{DIGITS}g}") if isinstance(part, float) else part
