"""The types of the modules in the browser hold, as their comments say them."""

import subprocess
from pathlib import Path

TOP = Path(__file__).parents[2]
WITHOUT_TYPES_YET = ("exchange", "page", "programs")


def test_compiler_finds_no_fault():
    command = [str(TOP / "node_modules" / ".bin" / "tsc"), "--project", str(TOP), "--pretty", "false"]
    found = subprocess.run(command, cwd=TOP, capture_output=True, text=True, check=False)
    unexpected = [line for line in (found.stdout + found.stderr).splitlines()
                  if not line.startswith(tuple(f"docs/assets/js/{name}.mjs" for name in WITHOUT_TYPES_YET))
                  and not line.startswith(" ")]
    assert not unexpected, "\n".join(unexpected)
