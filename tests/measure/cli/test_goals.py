"""`thawline goals`, as somebody types it."""

import datetime as dt
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.domain.goal_records import Goal, rate_from
from measure.errors import InputError
from measure.storage.store import Store
from tests.support import record_samples as sample

ROSA = sample.person()


@pytest.fixture(autouse=True)
def rosa(data_folder: Path) -> None:
    """Rosa, without goals, in the store that the commands use."""
    with Store.open() as store:
        store.save_person(ROSA)


def goals() -> list[Goal]:
    with Store.open() as store:
        return store.goals.of(ROSA.id)


def ratings() -> list[tuple[str, int]]:
    with Store.open() as store:
        return [(rating.day.isoformat(), rating.rating) for rating in store.goals.ratings(ROSA.id)]


def test_a_goal_is_added_rated_shown_ended_and_deleted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["goals", "rosa"]) == 0
    assert "No goals yet for Rosa." in capsys.readouterr().out
    assert main(["goals", "rosa", "add", "put on   a jacket"]) == 0
    assert [goal.words for goal in goals()] == ["put on a jacket"]
    for day, rating in (("2026-04-01", "2"), ("2026-05-02", "5"), ("2026-05-02", "6")):
        assert main(["goals", "rosa", "rate", "1", rating, "--day", day]) == 0
    assert ratings() == [("2026-04-01", 2), ("2026-05-02", 6)]
    capsys.readouterr()
    assert main(["goals", "rosa"]) == 0
    shown = capsys.readouterr().out
    assert "2026-04-01: 2, 2026-05-02: 6" in shown
    assert "rate again from 2026-05-30" in shown
    assert main(["goals", "rosa", "end", "1"]) == 0
    assert goals()[0].last_day is not None
    assert len(ratings()) == 2
    assert main(["goals", "rosa", "delete", "1"]) == 0
    assert (goals(), ratings()) == ([], [])


def test_three_goals_are_enough(capsys: pytest.CaptureFixture[str]) -> None:
    for words in ("a jacket", "the top shelf", "digging"):
        assert main(["goals", "rosa", "add", words]) == 0
    assert main(["goals", "rosa", "add", "swimming"]) == 2
    assert "End one of them first" in capsys.readouterr().err
    assert main(["goals", "rosa", "end", "2"]) == 0
    assert main(["goals", "rosa", "add", "swimming"]) == 0
    assert [goal.words for goal in goals() if goal.last_day is None] == [
        "a jacket",
        "digging",
        "swimming",
    ]


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        (("add", "x" * 61), "can have 60 characters"),
        (("rate", "1", "3"), "Rosa has no goal 1"),
        (("end", "0"), "Rosa has no goal 0"),
    ],
)
def test_wrong_use(typed: tuple[str, ...], part: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["goals", "rosa", *typed]) == 2
    assert part in capsys.readouterr().err


def test_a_rating_outside_the_scale_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["goals", "rosa", "add", "digging"]) == 0
    assert main(["goals", "rosa", "rate", "1", "11"]) == 2
    assert "from 0 (not possible at all) to 10" in capsys.readouterr().err
    assert ratings() == []


def test_a_goal_is_offered_for_rating_once_a_month() -> None:
    assert rate_from([]) is None
    rated = [sample.goal_rating(ROSA, day=dt.date(2026, 4, day)) for day in (2, 10)]
    assert rate_from(rated) == dt.date(2026, 5, 8)


def test_a_goal_cannot_end_before_it_was_named() -> None:
    with pytest.raises(InputError, match="cannot end before"):
        sample.goal(ROSA, last_day=dt.date(2026, 4, 1))
