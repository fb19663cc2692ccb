"""Look at what of others' work is installed and handed out, and say what is to mend and what is not known.

Ends with 0 if all is known and fine, with 1 if something is to mend, with 2 if something could not be known.
"""

import json
import subprocess
import sys
from collections.abc import Iterator
from importlib import metadata
from pathlib import Path

from scripts import licences
from scripts.auditing import judging
from scripts.auditing.judging import FINE, MEND, NOTE, Finding

ROOT = Path(__file__).parents[2]
PYTHON_LOCK = "requirements-test.txt"  # holds those of requirements.txt too
AUDITOR = ".cache/audit/bin/pip-audit"
MOST_SECONDS = 300


def main() -> int:
    """Print each finding as it is made; return the exit status."""
    findings = []
    for each in look():
        print(f"  {each.level:<8} {each.said}", flush=True)
        findings.append(each)
    found = judging.status(findings)
    print(("Nothing is to mend, and all of it is known.",
           "Something is to mend.",
           "Nothing is to mend as far as it is known; what is unknown no registry told.")[found])
    return found


def look() -> Iterator[Finding]:
    """Yield what is found, what needs no network first."""
    try:
        of_python = judging.python_pins((ROOT / PYTHON_LOCK).read_text("utf-8"))
        of_npm = judging.npm_pins((ROOT / "package-lock.json").read_text("utf-8"))
        shipped = licences.shipped()
    except ValueError as error:
        yield Finding(MEND, str(error))
        return
    yield Finding(FINE, f"{len(of_python)} Python and {len(of_npm)} npm packages are pinned with their sums")
    yield judging.installed(of_python, _python_here())
    yield judging.installed(of_npm, _npm_here(of_npm))
    allowed = ", ".join(licences.ALLOWED)
    yield Finding(FINE, f"{len(shipped)} things are handed out, each under one of {allowed}")
    yield judging.npm_advisories(_answer("npm", "audit", "--json"))
    yield judging.python_advisories(
        _answer(AUDITOR, "-r", PYTHON_LOCK, "--no-deps", "--disable-pip", "--format", "json"))
    newer = judging.newer_of_npm(_answer("npm", "outdated", "--json")) + judging.newer_of_python(
        _answer(sys.executable, "-m", "pip", "list", "--outdated", "--format", "json", "--retries", "0"),
        of_python)
    yield Finding(NOTE, "newer releases, as far as registries answered: " + (", ".join(newer) or "none"))


def _python_here() -> dict[str, str]:
    return {each.name.lower().replace("_", "-"): each.version for each in metadata.distributions()}


def _npm_here(pinned: judging.Pins) -> dict[str, str]:
    files = {name: licences.PACKAGES / name / "package.json" for name in pinned}
    return {name: json.loads(file.read_text("utf-8"))["version"]
            for name, file in files.items() if file.is_file()}


def _answer(*command: str) -> str:
    """Return what a command printed, and nothing if it is not there or takes too long."""
    try:
        return subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False,
                              timeout=MOST_SECONDS).stdout
    except (OSError, subprocess.TimeoutExpired):
        return ""


if __name__ == "__main__":
    sys.exit(main())
