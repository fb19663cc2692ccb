"""The job with six invented bows: a fact is typed once, and no bow is offered another's figures."""

import pytest

from scripts.measuring import visits


@pytest.fixture(scope="module")
def person():
    return visits.journey()


def test_forty_visits_are_answered_and_nothing_is_typed_again(person):
    count = person.count
    assert count.visits == 40
    assert count.unanswered == []
    assert count.left_over == []
    assert count.again == 0
    assert count.foreign == []
    assert count.filled > count.typed > 400


def test_the_answers_are_kept_with_what_was_typed_for_them(person):
    for number, record in enumerate(person.records):
        kept = [each for each in record if '"sheet":"answer"' in each]
        assert len(kept) == sum(number == bow for bow, _, _ in list(visits.plan())[:visits.VISITS])


@pytest.fixture
def beginner():
    """A person who has written down the first bow and the second as they came."""
    person = visits.Person()
    for bow in person.bows[:2]:
        for form in (*visits.FIRST, "reading"):
            person.fill_in(bow, form)
    return person


def test_the_count_notices_what_is_typed_again(beginner):
    assert beginner.count.again == 0
    beginner.fill_in(beginner.bows[0], "archer")
    assert beginner.count.again == len("under") + len("26 in")


def test_the_count_notices_figures_of_another_bow(beginner):
    beginner.visit(beginner.bows[0], "tiller")
    assert beginner.count.foreign == []
    beginner.records.reverse()
    beginner.records[0] = beginner.records[-2]
    beginner.visit(beginner.bows[0], "tiller")
    assert {each.partition(":")[0] for each in beginner.count.foreign} >= {
        "tiller upper", "tiller brace_height", "tiller bow_length", "tiller draw_weight"}


def test_the_count_notices_what_a_record_lacks(beginner):
    beginner.records[0] = beginner.records[0][:1]
    beginner.visit(beginner.bows[0], "tiller")
    assert "tiller brace_height" in beginner.count.left_over
