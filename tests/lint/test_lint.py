"""Ruff finds nothing to mend."""

import subprocess
import sys


def test_ruff_finds_no_fault():
    found = subprocess.run([sys.executable, "-m", "ruff", "check", "--quiet", "calc", "scripts", "tests"],
                           capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout + found.stderr
