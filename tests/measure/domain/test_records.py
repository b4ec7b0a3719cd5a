"""What records may hold, and how wrong entries are answered."""

import dataclasses
import datetime as dt

import pytest

from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.records import AssessmentCondition, Assistance, History, Pain, Person
from measure.errors import InputError
from measure.system.clock import new_id
from tests.support import record_samples as sample


def test_a_pseudonym_has_one_spelling() -> None:
    assert sample.person("  Rosa \t of  bed 7 ").pseudonym == "Rosa of bed 7"
    composed, split = "Zo\u00eb", "Zoe\u0308"
    assert sample.person(split).pseudonym == composed
    assert sample.person("नि\u200dक").pseudonym == "नि\u200dक"
    assert sample.person("日本 😀").pseudonym == "日本 😀"


@pytest.mark.parametrize(
    ("name", "part"),
    [
        ("", "at least one"),
        (" \n\t ", "at least one"),
        ("x" * 61, "this has 61"),
        ("Ro\x00sa", "printable"),
        ("Ro\x1b[31msa", "printable"),
        ("Rosa\u202egnp.exe", "printable"),
        ("Ro\ud800sa", "printable"),
    ],
)
def test_texts_that_are_no_pseudonym(name: str, part: str) -> None:
    with pytest.raises(InputError, match=part):
        sample.person(name)


@pytest.mark.parametrize("since", ["2026", "2026-03", "2026-03-31"])
def test_dates_as_far_as_known(since: str) -> None:
    assert sample.person(since=since).since == since


@pytest.mark.parametrize(
    "since", ["", "26", "2026-13", "2026-02-30", "2026-3", "March", "2026-03-01T00", "٢٠٢٦", "0000"]
)
def test_texts_that_are_no_date(since: str) -> None:
    with pytest.raises(InputError, match=r"not a date|no such date"):
        sample.person(since=since)


def test_sides_are_a_set() -> None:
    both = sample.person(affected=(Side.RIGHT, Side.LEFT, Side.RIGHT))
    assert both.affected == (Side.LEFT, Side.RIGHT)


def test_helped_is_never_active() -> None:
    assert [help_ for help_ in Assistance if AssessmentCondition(help=help_).active] == [
        Assistance.NONE
    ]


@pytest.mark.parametrize("rating", [-1, 11])
def test_pain_is_rated_0_to_10(rating: int) -> None:
    with pytest.raises(InputError, match="from 0"):
        Pain(night=rating)
    with pytest.raises(InputError, match="from 0"):
        sample.record(sample.session(sample.person()), pain_during=rating)


def test_a_plan_names_each_exercise_once() -> None:
    each = PlannedExercise(exercise=Exercise(listed=ListedExercise.TOWEL), times_a_day=2, hold_s=10)
    with pytest.raises(InputError, match="once"):
        Plan(
            id=new_id(),
            person_id=new_id(),
            first_day=dt.date(2026, 4, 1),
            exercises=(each, each),
            pain_limit=3,
        )


def test_a_history_is_of_one_person_and_whole() -> None:
    who, other = sample.person("Rosa"), sample.person("Emil")
    session = sample.session(who)
    with pytest.raises(InputError, match="someone else"):
        History(person=other, sessions=(session,))
    with pytest.raises(InputError, match="is missing"):
        History(person=who, measurements=(sample.record(session),))
    with pytest.raises(InputError, match="same identifier"):
        History(person=who, sessions=(session, dataclasses.replace(session, note="")))


def test_a_person_needs_nothing_but_a_pseudonym() -> None:
    bare = Person(id=new_id(), pseudonym="Emil")
    assert (bare.affected, bare.dominant, bare.since, bare.onset, bare.demo) == (
        (),
        None,
        None,
        None,
        False,
    )
