"""What is installed is pinned, hashed, and names no host."""

import json
import re
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.mark.parametrize("name", ["requirements.txt", "requirements-test.txt", "requirements-audit.txt"])
def test_every_python_package_is_pinned_and_hashed(name):
    text = (ROOT / name).read_text()
    packages = text.replace("\\\n", " ").splitlines()
    assert packages
    for line in packages:
        assert re.match(r"[a-z0-9._-]+==\S+ .*--hash=sha256:[0-9a-f]{64}", line), line
    assert "://" not in text
    assert "--index" not in text


def test_the_tests_run_on_what_the_site_is_built_with():
    built, tested = (set(re.findall(r"^[a-z0-9._-]+==\S+", (ROOT / name).read_text(), re.MULTILINE))
                     for name in ("requirements.txt", "requirements-test.txt"))
    assert built <= tested


def test_every_npm_package_is_pinned_and_hashed():
    wanted = json.loads((ROOT / "package.json").read_text())
    for version in {**wanted["dependencies"], **wanted["devDependencies"]}.values():
        assert re.fullmatch(r"[0-9.]+", version)
    locked = json.loads((ROOT / "package-lock.json").read_text())["packages"]
    for name, package in locked.items():
        assert not name or package["integrity"].startswith("sha512-")
        assert "resolved" not in package
