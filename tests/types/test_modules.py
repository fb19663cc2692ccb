"""The types of the modules in the browser hold, as their comments say them."""

import subprocess
from pathlib import Path

TOP = Path(__file__).parents[2]


def test_compiler_finds_no_fault():
    command = [str(TOP / "node_modules" / ".bin" / "tsc"), "--project", str(TOP), "--pretty", "false"]
    found = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=False)
    assert found.returncode == 0, found.stdout + found.stderr
