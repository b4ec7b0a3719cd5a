"""The garden story: who is in it, that it is marked, and that loading twice is harmless."""

import itertools
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from measure.demo.story import load_story, story_histories
from measure.domain.goal_records import ratings_of
from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.records import EventKind, History
from measure.errors import InputError
from measure.progress.overview import Progress, progress_of
from measure.progress.weekly_verdicts import Verdict
from measure.storage.store import Store
from tests.support.record_samples import FixedClock, moment, person

NOW = moment("2026-11-25T09:00:00+00:00", 60)
NAMES = ["demo-Marigold", "demo-Bramble", "demo-Thistle", "demo-Clover"]


@pytest.fixture(scope="module")
def story() -> dict[str, History]:
    return {history.person.pseudonym: history for history in story_histories(NOW)}


@pytest.fixture(scope="module")
def progress(story: dict[str, History]) -> dict[str, Progress]:
    return {name: progress_of(history, NOW.day) for name, history in story.items()}


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    clock = FixedClock("2026-11-25T09:00:00+00:00", 60)
    with Store.open(tmp_path / "store.sqlite3", clock=clock) as opened:
        yield opened


def affected(history: History) -> Side:
    (side,) = history.person.affected
    return side


def verdict(progress: dict[str, Progress], story: dict[str, History], name: str) -> Verdict:
    side = progress[name].of(Movement.FLEXION, affected(story[name]))
    assert side is not None
    return side.verdict


def test_four_members_over_twenty_weeks(story: dict[str, History]) -> None:
    assert list(story) == NAMES
    for history in story.values():
        days = [session.started.day for session in history.sessions]
        assert days == sorted(days)
        assert (NOW.day - days[-1]).days in range(1, 8)
        assert (days[-1] - days[0]).days < 20 * 7
    assert all(len(story[name].sessions) > 40 for name in NAMES[:3])
    assert len(story["demo-Clover"].sessions) < 8


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("demo-Marigold", Verdict.GAINING),
        ("demo-Bramble", Verdict.STALLED),
        ("demo-Thistle", Verdict.GAINING),
        ("demo-Clover", Verdict.TOO_EARLY),
    ],
)
def test_the_verdicts_are_those_of_the_story(
    progress: dict[str, Progress], story: dict[str, History], name: str, expected: Verdict
) -> None:
    assert verdict(progress, story, name) is expected


def test_thistle_lost_before_the_injection(story: dict[str, History]) -> None:
    history = story["demo-Thistle"]
    (injection,) = history.events
    assert injection.kind is EventKind.INJECTION
    before = progress_of(history, injection.day).of(Movement.FLEXION, affected(history))
    assert before is not None
    assert before.verdict is Verdict.LOSING


def test_everything_is_marked_as_made_up(story: dict[str, History]) -> None:
    for history in story.values():
        assert history.person.demo
        assert history.person.pseudonym.startswith("demo-")
        assert {record.measurement.provenance.model for record in history.measurements} == {"demo"}
        assert all("Demo data" in session.note for session in history.sessions)
        assert all("Demo data" in event.note for event in history.events)
        assert all("made-up" in plan.chosen_by for plan in history.plans)


def test_readings_look_like_readings(story: dict[str, History]) -> None:
    for record in story["demo-Bramble"].measurements:
        measurement = record.measurement
        if measurement.status is Status.REFUSED:
            assert measurement.reasons
            continue
        low, high = MOVEMENTS[measurement.movement].possible
        assert measurement.value is not None
        assert measurement.low is not None
        assert measurement.high is not None
        assert low < measurement.low < measurement.value < measurement.high < high + 40
        assert len([trial for trial in measurement.trials if trial.scored]) >= 2
        assert (measurement.level is not None) == (
            measurement.movement is Movement.HAND_BEHIND_BACK
        )


def test_some_measurements_and_trials_are_refused(story: dict[str, History]) -> None:
    records = story["demo-Marigold"].measurements
    refused = sum(record.measurement.status is Status.REFUSED for record in records)
    assert 0.01 < refused / len(records) < 0.12
    trials = [trial for record in records for trial in record.measurement.trials]
    assert 0.02 < sum(not trial.scored for trial in trials) / len(trials) < 0.25


def test_the_story_is_the_same_every_time(story: dict[str, History]) -> None:
    assert {history.person.pseudonym: history for history in story_histories(NOW)} == story


def test_the_story_ends_today_whenever_it_is_told() -> None:
    later = moment("2027-03-01T09:00:00+00:00", 60)
    for history in story_histories(later):
        assert (later.day - history.sessions[-1].started.day).days < 8


def test_loading_it_twice_changes_nothing(store: Store) -> None:
    first = load_story(store)
    assert "made up" in first[0]
    assert len(first) == 7
    assert "Open progress" in first[-1]
    held = {person.pseudonym: store.history(person.id) for person in store.people()}
    assert sorted(held) == sorted(NAMES)
    again = load_story(store)
    assert sum("left as it is" in line for line in again) == 4
    assert {person.pseudonym: store.history(person.id) for person in store.people()} == held


def test_what_was_loaded_is_what_was_told(store: Store, story: dict[str, History]) -> None:
    load_story(store)
    for name, history in story.items():
        held = store.history(store.find_person(name).id)
        assert held.sessions == history.sessions
        assert len(held.measurements) == len(history.measurements)
        assert progress_of(held, NOW.day).prompts == progress_of(history, NOW.day).prompts


def test_real_people_are_left_alone(store: Store) -> None:
    rosa = person("Rosa")
    store.save_person(rosa)
    load_story(store)
    assert store.find_person("Rosa") == rosa
    assert len(store.people()) == 5


def test_a_real_person_of_that_name_is_never_mixed_up_with_it(store: Store) -> None:
    namesake = replace(person("demo-Marigold"), affected=(Side.RIGHT,))
    store.save_person(namesake)
    with pytest.raises(InputError, match="Rename that person first"):
        load_story(store)
    assert store.people() == [namesake]


def test_goals_are_rated_every_five_weeks(story: dict[str, History]) -> None:
    history = story["demo-Marigold"]
    first, _second = history.goals
    rated = ratings_of(first, history.goal_ratings)
    assert [rating.rating for rating in rated] == [2, 4, 6, 8]
    assert all((b.day - a.day).days == 35 for a, b in itertools.pairwise(rated))
    assert rated[-1].day < NOW.day
    assert story["demo-Clover"].goals == ()
