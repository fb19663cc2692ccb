"""A linter finds nothing to mend in the scripts of the site and its build."""

import subprocess
from pathlib import Path

TOP = Path(__file__).parents[2]
CHECKED = ("docs", "scripts", "tests")


def test_oxlint_finds_no_fault():
    command = [str(TOP / "node_modules" / ".bin" / "oxlint"), "--deny-warnings", *CHECKED]
    found = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout + found.stderr
    assert "on 0 files" not in found.stdout
