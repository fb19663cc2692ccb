"""Ruff finds nothing to mend."""

import subprocess
import sys


def test_ruff_finds_no_fault():
    command = [sys.executable, "-m", "ruff", "check", "--quiet", "calc", "docs", "scripts", "tests"]
    found = subprocess.run(command, capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout + found.stderr
