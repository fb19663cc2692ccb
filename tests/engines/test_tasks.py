"""What a page asks of a bow's record: the browser's engines answer every task as CPython does."""

import json
import subprocess

import pytest

from calc.record import file, sheets
from calc.record.bindings import BOUND
from calc.record.entries import Entry, entries_json, entry_id
from scripts.measuring.engines import built_files
from tests.engines.test_engines import ENGINES, HERE, differences, own_answer
from tests.record.bench import Bench

CURVE = "12 in:11 lb;16 in:24.2 lb;20 in:33.4 lb;24 in:42 lb;26 in:47 lb;28 in:53 lb"
AT = "2026-05-12T18:10+02:00"


def bow():
    """A bow with an entry on every sheet, strokes and readings after it, one entry struck out."""
    bench = Bench().came_in()
    for sheet in sheets.SHEETS:
        entry = bench.write("bow")
        facts = tuple((each.id, each.default) for each in sheets.inputs_of(sheet))
        bench.entries[-1] = Entry(entry.id, entry.at, sheet.id, facts, note="<b>& a note</b>")
    bench.write("archer", draw="27 in")
    bench.write("reading", curve=CURVE, weight="53 lb", at_draw="28 in", upper="7 5/8 in", lower="7 5/16 in",
                measured="fadeout")
    bench.write("strokes", upper_belly="30", lower_belly="45", paper="P120")
    bench.write("reading", weight="51.4 lb", at_draw="28 in", upper="7 17/32 in", lower="7 19/64 in")
    wrong = bench.write("reading", brace="7 in")
    bench.write("reading", replaces=wrong.id)
    bench.write("of_a_later_release", x="1")
    bench.write("answer", calculator="tiller", headline="It is so.", pairs="upper=7+1%2F2+in&hold=%E2%80%9Cx",
                more_pairs="units=imperial")
    return bench.entries


def logs():
    """Records in which strokes and readings take turns: before and after the last reading."""
    bench = Bench().came_in()
    for number in range(1, 4):
        bench.write("strokes", lower_belly="20", paper="P120")
        if number == 3:
            yield entries_json(bench.entries)
        bench.write("reading", weight=f"{53 - number} lb", at_draw="28 in", lower="7 5/16 in",
                    upper=f"{7.625 - number / 32:.5f} in")
    yield entries_json(bench.entries)


def requests():
    entries = bow()
    kept = entries_json(entries)
    taken = [["weight", "47.7 lb"], ["upper", " "], ["lower", "7-5/16 in"]]
    found = [{"task": task, "entries": kept} for task in ("head", "stand", "file", "csv", "photos")]
    found.append({"task": "file", "entries": kept, "pictures": [sheets.input_of("photo.file").default]})
    found += [{"task": task, "records": [kept, "[]", *logs()], "at": AT} for task in ("across", "calendar")]
    found.append({"task": "head", "entries": "[]"})
    found.append({"task": "stand", "entries": "[]"})
    found.append({"task": "file", "entries": kept, "private": False})
    chosen = [["losses", "chronograph"], ["shaft_known", "deflection_26"]]
    found += [{"task": "fill", "entries": each, "calculator": calculator, "pairs": chosen}
              for calculator in BOUND for each in ("[]", kept)]
    found.append({"task": "read", "text": file.page(entries, "imperial")})
    found.append({"task": "read", "text": file.page(entries, "imperial")[:-400]})
    found.append({"task": "read", "text": "no file"})
    found += [{"task": "take", "sheet": "reading", "id": entry_id(7, 7), "at": at, "pairs": pairs}
              for at, pairs in ((AT, taken), ("yesterday", taken), (AT, [["weight", "heavy"]]), (AT, []))]
    found.append({"task": "strike", "entries": kept, "entry": entries[3].id, "id": entry_id(8, 8), "at": AT})
    found += [{"task": "step", "fact": "reading.weight", "text": text, "by": 3}
              for text in ("47.7", "212 N", "heavy", "")]
    found += [{"task": "foretold", "entries": each, "pairs": pairs} for each in ("[]", *logs())
              for pairs in ([], [["weight", "50.1 lb"], ["upper", "7.5"], ["lower", "7 5/16 in"]])]
    on_form = [["upper", "7 1/2 in"], ["lower", "7 1/4 in"], ["brace_height", "8 in"],
               ["draw_weight", "50 lb"], ["family", "recurve"]]
    for typed in ([], on_form[:1], on_form, [["upper", "900 in"]]):
        asked = {"entries": kept, "calculator": "tiller", "pairs": on_form, "typed": typed}
        found.append({"task": "fresh", **asked})
        found += [{"task": "keep", **asked, "figures": ["upper=7+1%2F2+in"] * many, "at": AT,
                   "source": "tiller", "said": [["headline", "It is so."], ["stale", ""]],
                   "readings": readings, "ids": [entry_id(9, number) for number in range(8)]}
                  for readings in (False, True) for many in (1, 1000)]
    found += [{"task": "compare", "entries": kept, "entry": each.id}
              for each in entries if each.sheet == "answer"]
    found.append({"task": "compare", "entries": kept, "entry": entries[0].id})
    found.append({"task": "all", "records": [kept, "[]", kept], "private": False})
    several = file.page_of_all([entries, [], entries], "imperial")
    found += [{"task": "bows", "text": several[:end]} for end in (None, -900, len(several) // 2)]
    found += [{"task": "tell", "entries": each, "at": AT, "word": "Shall the “letters” stay?"}
              for each in ("[]", kept, *logs())]
    told = [own_answer({"units": "imperial", **each})["link"] for each in found if each["task"] == "tell"]
    found += [{"task": "told", "link": each, "now": AT} for each in (*told, told[0][:-9], "1.a.1", "1._w.2")]
    found.append({"task": "unheard"})
    return [{"units": units, **each} for each in found for units in ("imperial", "metric")]


@pytest.fixture(scope="module", params=ENGINES)
def answers(request):
    work = json.dumps({"files": built_files(), "requests": requests()})
    done = subprocess.run(["node", HERE / "answer.mjs", request.param], input=work, capture_output=True,
                          text=True, check=False)
    assert done.returncode == 0, done.stderr[-4000:]
    return json.loads(done.stdout)


def test_every_task_is_answered_as_cpython_does(answers):
    refused = 0
    for request, found in zip(requests(), answers, strict=True):
        ours = own_answer(request)
        refused += "refused" in ours
        assert differences(ours, found) == [], {**request, "entries": "", "text": ""}
    assert 6 <= refused < len(answers) / 4
