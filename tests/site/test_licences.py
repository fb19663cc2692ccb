"""What is handed out is named with its licence, on a page that every visitor can open."""

import json
from pathlib import Path

import pytest

from scripts import licences
from tests.sentences import whole

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "site/licences/index.html").read_text("utf-8")


def test_everything_that_is_handed_out_stands_on_the_page():
    for each in licences.shipped():
        assert f"<td>{each.name} {each.version}".strip() in PAGE
        assert f"<td>{each.licence}</td>\n<td>{each.use}</td>" in PAGE


def test_a_notice_stands_in_full():
    """Licences MIT and ISC, condition on the notice: from memory, and as the files say themselves."""
    named = {each.name: each.text for each in licences.shipped()}
    for name in ("idb", "minisearch", "stemmer", "uplot", "uqr", licences.THEME):
        assert "Permission" in named[name]
        assert "Licence of " + name in PAGE


def test_a_package_without_a_use_is_refused(monkeypatch):
    monkeypatch.delitem(licences.USES, "uplot")
    with pytest.raises(ValueError, match=whole("handed out and without a use here: uplot")):
        licences.shipped()


def test_a_licence_that_is_not_allowed_is_refused(monkeypatch):
    monkeypatch.setattr(licences, "ALLOWED", ("ISC", "MIT", "MPL-2.0", "OFL-1.1"))
    wanted = "Python's standard library, parts of it is under PSF-2.0: not among the licences allowed"
    with pytest.raises(ValueError, match=whole(wanted)):
        licences.shipped()


def test_every_version_is_pinned_with_its_sum():
    lock = json.loads((ROOT / "package-lock.json").read_text("utf-8"))["packages"]
    assert not [name for name, each in lock.items() if name and not each.get("integrity")]
    for file in ("requirements.txt", "requirements-test.txt"):
        pinned = [line for line in (ROOT / file).read_text("utf-8").splitlines() if "==" in line]
        assert len(pinned) > 10
        assert all(line.endswith("\\") for line in pinned)
