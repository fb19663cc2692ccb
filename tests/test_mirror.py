"""Tests stand where what they test stands: `tests/ROOM/test_MODULE.py` for `calc/ROOM/MODULE.py`."""

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
ROOMS = ("calculators", "mechanics", "numerics", "shop")
"""Rooms of which every module has tests of its own; the others are tested through what uses them as well."""

ACROSS = {
    "calculators/test_family_stands_in.py": "a plan, and the shapes that a family stands in for",
    "calculators/test_finish_and_spray_air.py": "what the two say of one coat agrees",
    "calculators/test_pages_of_the_shop.py": "several calculators of the shop",
    "calculators/test_refusals.py": "every calculator",
    "calculators/test_rules_held.py": "several calculators against rules of practice",
    "calculators/test_unchanged_thousandths_a_pound.py": "two calculators of one plan",
    "calculators/test_within_bounds.py": "every calculator",
    "mechanics/bow/test_compiled_steps.py": "the steps that the measurements count, beside the limb's",
    "mechanics/bow/test_many_bows.py": "random bows through the whole model",
    "mechanics/bow/test_tips_that_let_go.py": "bows that leap, through the model, the search and the refusal",
    "mechanics/bow/test_measured_shape.py": "a shape through offsets and what tiller makes of it",
    "mechanics/bow/test_strained_bows.py": "the model at its ends",
    "mechanics/test_unchanged.py": "figures that only hold what was",
    "pictures/test_example.py": "the worked example, from its marks to what is read",
    "pictures/test_proof.py": "many pictures, from marks to ranges",
    "pictures/test_refused.py": "every picture that cannot be read",
    "pictures/test_shifts.py": "how marks move readings, through all modules",
    "record/test_coats.py": "what a record says of coats that were laid",
    "record/test_job.py": "a whole job",
    "record/test_old_files.py": "files of every release",
    "record/test_privacy.py": "every way out of a record",
    "record/test_state.py": "folding with what it derives",
}
"""Tests of more than one module, each with what it crosses."""


def modules_of(room):
    return [path.relative_to(ROOT / "calc") for path in sorted((ROOT / "calc" / room).rglob("*.py"))
            if path.name != "__init__.py"]


def name_of_tests(module):
    return module.with_name("test_" + module.name)


def test_the_rooms_have_modules():
    assert all(len(modules_of(room)) > 2 for room in ROOMS)


@pytest.mark.parametrize("module", [each for room in ROOMS for each in modules_of(room)], ids=str)
def test_a_module_has_its_tests_where_it_stands(module):
    assert (ROOT / "tests" / name_of_tests(module)).is_file()


def test_tests_in_a_room_are_of_a_module_there_or_say_what_they_cross():
    rooms = [path.name for path in (ROOT / "calc").iterdir() if (path / "__init__.py").is_file()]
    held = {name_of_tests(module) for room in rooms for module in modules_of(room)}
    there = {path.relative_to(ROOT / "tests") for room in rooms
             for path in (ROOT / "tests" / room).rglob("test_*.py")}
    assert {path.as_posix() for path in there - held} == set(ACROSS)
