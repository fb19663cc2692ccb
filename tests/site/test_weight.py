"""How much a shared link asks for before its answer, counted from the built files as browsers fetch them."""

import json
import posixpath
from pathlib import Path

import pytest

from calc import catalog
from scripts.measuring.link_to_answer import fetched_bytes
from tests.site.markup import Elements

SITE = Path(__file__).parents[2] / "site"
MOST_BYTES = 250_000
FETCHED = ("stylesheet", "modulepreload")


def asked_for(calculator):
    """Return the addresses of a calculator's page, of what it names, and of what its first script fetches."""
    page = f"/calculators/{calculator}/"
    found = Elements((SITE / page.strip("/") / "index.html").read_text(encoding="utf-8"))
    named = [each["href"] for each in found.all("link") if each["rel"] in FETCHED]
    named += [each["src"] for each in found.all("script") if "src" in each and "data-theme" not in each]
    [engine] = [json.loads(each["content"]) for each in found.all("meta", name="rebrace-engine")]
    fetched = [engine["wasm"], *(f"{engine['calc']}{pack}.pack" for pack in ("core", calculator))]
    return {page, *(posixpath.normpath(page + each) for each in named),
            *("/assets/engine/" + each for each in fetched)}


@pytest.mark.parametrize("calculator", catalog.IDS)
def test_the_way_to_an_answer_is_light(calculator):
    asked = asked_for(calculator)
    assert len(asked) > 7
    assert sum(map(fetched_bytes, asked)) <= MOST_BYTES
