"""The types hold: strictly, in all that computes and in all that builds."""

import subprocess
import sys


def test_mypy_finds_no_fault():
    found = subprocess.run([sys.executable, "-m", "mypy"], capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout + found.stderr
