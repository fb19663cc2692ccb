"""An audit tells what is to mend from what is not known: a refused answer is not one without a fault.

The answers are of the shape that the package managers gave (seen); their packages are invented.
"""

import json
from pathlib import Path

import pytest

from scripts.auditing import judging
from scripts.auditing.judging import FINE, MEND, NOTE, UNKNOWN, Finding
from tests.sentences import whole

ROOT = Path(__file__).parents[2]
SUM = "--hash=sha256:" + "0" * 64


def answered(**said):
    return json.dumps(said)


def test_the_packages_of_this_project_are_pinned_with_sums():
    for name in ("requirements.txt", "requirements-test.txt", "requirements-audit.txt"):
        assert len(judging.python_pins((ROOT / name).read_text("utf-8"))) > 10
    assert len(judging.npm_pins((ROOT / "package-lock.json").read_text("utf-8"))) > 10


def test_a_package_may_be_pinned_in_a_version_for_each_kind_of_machine():
    text = "".join(f"{each} \\\n    {SUM}\n" for each in (
        "glue==1.2 ; sys_platform == 'win32'", "glue==1.3 ; sys_platform != 'win32'", "clamp==3.0"))
    assert judging.python_pins("# a remark\n" + text) == {"glue": {"1.2", "1.3"}, "clamp": {"3.0"}}


@pytest.mark.parametrize("line", ["glue==1.2", f"glue>=1.2 {SUM}"])
def test_a_package_without_a_sum_or_a_version_is_refused(line):
    with pytest.raises(ValueError, match=whole("not pinned with a sum: " + line)):
        judging.python_pins(line)


def test_an_npm_package_without_a_sum_or_given_up_is_refused():
    lock = {"": {}, "node_modules/glue": {"version": "1.2.0", "integrity": "sha512-0"}}
    assert judging.npm_pins(answered(packages=lock)) == {"glue": {"1.2.0"}}
    bare = {**lock, "node_modules/glue/node_modules/@a/clamp": {"version": "3.0.0"}}
    with pytest.raises(ValueError, match=whole("not pinned with a sum: @a/clamp")):
        judging.npm_pins(answered(packages=bare))
    lock["node_modules/glue"]["deprecated"] = "Use clamp."
    with pytest.raises(ValueError, match=whole("given up by its makers: glue (Use clamp.)")):
        judging.npm_pins(answered(packages=lock))


def test_another_version_than_the_pinned_one_is_to_mend():
    pinned = {"glue": {"1.1", "1.2"}, "clamp": {"3.0"}}
    assert judging.installed(pinned, {"glue": "1.2", "saw": "9"}) == (
        FINE, "1 packages are installed as they are pinned")
    assert judging.installed(pinned, {"glue": "1.3"}) == (MEND, "installed is glue 1.3 instead of 1.1 or 1.2")


REFUSED = answered(message="405 Method Not Allowed - POST https://example.org/advisories", statusCode=405,
                   error={"summary": "", "detail": ""})


@pytest.mark.parametrize(("answer", "why"), [
    (REFUSED, "405 Method Not Allowed - POST"),
    (answered(message="request to https://example.org/ failed, reason: getaddrinfo EAI_AGAIN example.org"),
     "request to failed, reason: getaddrinfo EAI_AGAIN example.org"),
    ("", "no answer"), ("no JSON", "no answer"),
])
def test_refused_advisories_on_npm_packages_are_unknown(answer, why):
    assert judging.npm_advisories(answer) == (UNKNOWN, "advisories on npm packages: " + why)


def test_advisories_on_npm_packages():
    assert judging.npm_advisories(answered(vulnerabilities={})) == (FINE, "advisories on npm packages: none")
    glue = {"severity": "high", "range": "<1.3.0", "via": [{"title": "Sets too fast"}, "clamp"]}
    assert judging.npm_advisories(answered(vulnerabilities={"glue": glue})) == (
        MEND, "advisories on npm packages: glue <1.3.0 (high: Sets too fast, through clamp)")


SOUND = {"name": "saw", "version": "9", "vulns": []}
LEFT_OUT = {"name": "clamp", "skip_reason": "not found"}
FAULTY = {"name": "glue", "version": "1.2", "vulns": [{"id": "ADVISORY-1", "fix_versions": ["1.3"]}]}


@pytest.mark.parametrize(("packages", "finding"), [
    ([SOUND], (FINE, "none for 1 of them")),
    ([SOUND, LEFT_OUT], (UNKNOWN, "no answer for 1 of 2")),
    ([], (UNKNOWN, "no answer for any")),
    ([SOUND, LEFT_OUT, FAULTY], (MEND, "glue 1.2 (ADVISORY-1)")),
])
def test_advisories_on_python_packages(packages, finding):
    level, said = finding
    assert judging.python_advisories(answered(dependencies=packages, fixes=[])) == (
        level, "advisories on Python packages: " + said)


def test_a_newer_release_is_named_where_the_package_is_pinned():
    listed = [{"name": "glue", "version": "1.2", "latest_version": "1.3"},
              {"name": "pip", "version": "1", "latest_version": "2"}]
    assert judging.newer_of_python(json.dumps(listed), {"glue": {"1.2"}}) == ["glue 1.3"]
    assert judging.newer_of_python("", {"glue": {"1.2"}}) == []
    assert judging.newer_of_npm(answered(glue={"current": "1.2.0", "latest": "1.3.0"})) == ["glue 1.3.0"]
    assert judging.newer_of_npm(REFUSED) == []


@pytest.mark.parametrize(("levels", "status"), [
    ([FINE, NOTE], 0), ([FINE, UNKNOWN, MEND], 1), ([FINE, UNKNOWN], 2),
])
def test_a_script_can_tell_by_the_exit_status(levels, status):
    assert judging.status([Finding(level, "") for level in levels]) == status
