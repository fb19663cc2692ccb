"""The script that changes code and sees whether a test notices."""

import time

import pytest

from scripts.mutating.__main__ import Change, Run
from scripts.mutating.mutations import mutations_of
from scripts.mutating.trial import KILLED, LATE, SURVIVED, UNTRIED

SOURCE = '''"""Words of 3 letters."""


def share(part: int = 2) -> float:
    if part < 1 and not part:
        raise ValueError("must be 1 or more")
    return max(part + 0.5, -1e-7)
'''


def test_what_is_computed_is_changed_and_no_words():
    found = {each.after for each in mutations_of(SOURCE)}
    assert found == {
        "def share(part: int = 3) -> float:",
        "if (not (part < 1 and not part)):", "if part <= 1 and not part:", "if part < 2 and not part:",
        "if part < 1 or not part:", "if part < 1 and part:",
        "return min(part + 0.5, -1e-7)", "return max(part - 0.5, -1e-7)", "return max(part + 0.55, -1e-7)",
        "return max(part + 0.5, 1e-7)",
    }


def test_how_far_it_is_is_no_part_of_the_answer():
    work = """def {}:
    for step in steps:
        if step % 20 == 0:
            yield min(0.9, step / 40)
    return step * 2
"""
    told = {each.after for each in mutations_of(work.format("work(steps) -> Generator[float, None, int]"))}
    assert told == {"return step / 2", "return step * 3"}
    values = {each.after for each in mutations_of(work.format("work(steps) -> Generator[int, None, int]"))}
    assert "yield min(0.9, step * 40)" in values
    assert "if step % 20 != 0:" in values


def test_each_change_is_made_alone():
    for each in mutations_of(SOURCE):
        before, after = SOURCE.splitlines(), each.source.splitlines()
        differ = [number for number, (old, new) in enumerate(zip(before, after, strict=True), 1) if old != new]
        assert differ == [each.number]
        assert (each.before, each.after) == (before[each.number - 1].strip(), after[each.number - 1].strip())


def test_the_last_line_says_what_was_done(capsys):
    run = Run(60.0)
    mutation = next(mutations_of(SOURCE))
    for outcome in (KILLED, KILLED, LATE, SURVIVED, UNTRIED):
        run.take(Change("calc/share.py", mutation, iter(())), outcome)
    assert run.told(9, 7) == ("5 of 9 changes sampled by seed 7 were tried in 0 s: 3 noticed, 60.0% (1 of them by "
                              "running too long), 1 not, 1 without a test.")
    told = capsys.readouterr().out
    assert f"\ncalc/share.py:{mutation.number}  {mutation.before}\n    ->  {mutation.after}\n" in told
    assert told.count("    ->  ") == 3


@pytest.mark.parametrize(("seconds", "counted"), [(60.0, 1), (0.0, 0)])
def test_a_change_without_tests_counts_unless_the_time_was_up(seconds, counted):
    run = Run(seconds)
    time.sleep(0.001)
    run.begin(Change("calc/share.py", next(mutations_of(SOURCE)), iter(())))
    assert run.counts[UNTRIED] == counted
    assert not run.going
