"""What an audit finds, judged on the lock files and on what the package managers answer."""

import json
import re
from collections.abc import Iterable, Mapping
from typing import Any, NamedTuple

FINE = "fine"
MEND = "mend"
UNKNOWN = "unknown"
NOTE = "note"

Pins = Mapping[str, frozenset[str]]
"""Versions by package; one has several where kinds of machines, or others that want it, differ."""

PINNED = re.compile(r"^([a-z0-9._-]+)==(\S+)(.*)$", re.MULTILINE)


class Finding(NamedTuple):
    """One thing that was looked at. level: fine, to mend, not to be known from here, or only worth a note."""

    level: str
    said: str


def python_pins(text: str) -> Pins:
    """Return what a lock file pins.

    Raises:
        ValueError: a package has no sum.
    """
    lines = text.replace("\\\n", " ").splitlines()
    packages = {line: PINNED.match(line) for line in lines if line and not line.startswith("#")}
    bare = [line for line, found in packages.items() if not found or "--hash=sha256:" not in found[3]]
    if bare:
        raise ValueError("not pinned with a sum: " + ", ".join(bare))
    return _by_name((found[1], found[2]) for found in packages.values() if found)


def npm_pins(text: str) -> Pins:
    """Return what a lock file pins.

    Raises:
        ValueError: a package has no sum, or its makers say that they no longer mend it.
    """
    packages = [(name.rpartition("node_modules/")[2], each)
                for name, each in json.loads(text)["packages"].items() if name]
    bare = [name for name, each in packages if not each.get("integrity")]
    if bare:
        raise ValueError("not pinned with a sum: " + ", ".join(bare))
    given_up = [f"{name} ({each['deprecated']})" for name, each in packages if "deprecated" in each]
    if given_up:
        raise ValueError("given up by its makers: " + ", ".join(given_up))
    return _by_name((name, each["version"]) for name, each in packages)


def _by_name(packages: Iterable[tuple[str, str]]) -> Pins:
    found: dict[str, frozenset[str]] = {}
    for name, version in packages:
        found[name] = found.get(name, frozenset()) | {version}
    return found


def installed(pinned: Pins, here: Mapping[str, str]) -> Finding:
    """Judge whether what is installed is what is pinned; some are only for other kinds of machines."""
    both = sorted(here.keys() & pinned.keys())
    others = [f"{name} {here[name]} instead of {' or '.join(sorted(pinned[name]))}" for name in both
              if here[name] not in pinned[name]]
    if others:
        return Finding(MEND, "installed is " + ", ".join(others))
    return Finding(FINE, f"{len(both)} packages are installed as they are pinned")


def npm_advisories(answer: str) -> Finding:
    """Judge what `npm audit --json` answered."""
    what = "advisories on npm packages"
    said = _read(answer)
    if "vulnerabilities" not in said:
        why = _first_line(said.get("message") or (said.get("error") or {}).get("summary") or "no answer")
        return Finding(UNKNOWN, f"{what}: {why}")
    found = [f"{name} {each['range']} ({each['severity']}: {_titles(each['via'])})"
             for name, each in sorted(said["vulnerabilities"].items())]
    return Finding(MEND, f"{what}: " + "; ".join(found)) if found else Finding(FINE, f"{what}: none")


def python_advisories(answer: str) -> Finding:
    """Judge what `pip-audit --format json` answered: a package that it left out is not without a fault."""
    what = "advisories on Python packages"
    packages = _read(answer).get("dependencies", [])
    found = [f"{each['name']} {each['version']} ({', '.join(one['id'] for one in each['vulns'])})"
             for each in packages if each.get("vulns")]
    left_out = [each["name"] for each in packages if "skip_reason" in each]
    if found:
        return Finding(MEND, f"{what}: " + "; ".join(found))
    if left_out or not packages:
        silent = f"{len(left_out)} of {len(packages)}" if packages else "any"
        return Finding(UNKNOWN, f"{what}: no answer for {silent}")
    return Finding(FINE, f"{what}: none for {len(packages)} of them")


def newer_of_npm(answer: str) -> list[str]:
    """Return what `npm outdated --json` names, each with its newest version."""
    said = sorted(_read(answer).items())
    return [f"{name} {each['latest']}" for name, each in said if isinstance(each, dict) and "latest" in each]


def newer_of_python(answer: str, pinned: Pins) -> list[str]:
    """Return what `pip list --outdated --format json` names of the packages that are pinned."""
    found = _read(answer)
    return [f"{each['name']} {each['latest_version']}" for each in found if each["name"] in pinned]


def status(findings: list[Finding]) -> int:
    """Return 1 if anything is to be mended, 2 if something could not be known, else 0."""
    levels = {each.level for each in findings}
    return 1 if MEND in levels else 2 if UNKNOWN in levels else 0


def _read(answer: str) -> Any:
    try:
        return json.loads(answer)
    except ValueError:
        return {}


def _first_line(text: str) -> str:
    """Return the first line without addresses, which say less than the words before them."""
    return re.sub(r"\s*\S*://\S+", "", text.splitlines()[0]).strip()


def _titles(via: list[Any]) -> str:
    return ", ".join(each["title"] if isinstance(each, dict) else f"through {each}" for each in via)
