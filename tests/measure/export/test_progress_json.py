"""Progress as JSON: every field described, the same order every time."""

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

import measure
from measure.demo.story import story_histories
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ExerciseLog, Plan, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, LimitingFactor
from measure.export.progress_json import SCHEMA, progress_data, progress_json
from measure.progress.overview import progress_of
from tests.support.progress_histories import MADE, day, history
from tests.support.record_samples import event, moment, person, some_id

NOW = moment("2026-11-25T09:00:00+00:00", 60)
LEFT = (Movement.FLEXION, Side.LEFT)
#: Gains 10 degrees a month for twelve weeks, then loses as much.
TURNING = {
    LEFT: [
        (number, 90.0 + min(number, 168 - number) / 3 + (number * 7 % 5) - 2)
        for number in range(0, 161, 2)
    ]
}
#: Somebody who stood nearer to the camera from the eighth day on.
NEARER = {
    number: replace(
        MADE,
        source={
            "standing": f"trunk_px={200 if number < 8 else 260} shoulders=0.05 lean_deg=0.0 "
            "frames=20 size=640x480"
        },
    )
    for number in range(16)
}


def data(records: History, today: int) -> dict[str, Any]:
    return progress_data(records.person, progress_of(records, day(today)), "An estimate.")


def whole() -> list[dict[str, Any]]:
    """Return progress in which every field holds something at least once."""
    visit = event(person(), kind=EventKind.CLINIC_VISIT, day=day(60), side=None)
    flare = event(person(), kind=EventKind.FLARE, day=day(110), side=Side.LEFT)
    sudden = {LEFT: [*TURNING[LEFT][:40], *((number, 80.0) for number in range(80, 92, 2))]}
    return [
        data(history(TURNING, events=[visit]), 161),
        data(history(TURNING, events=[flare]), 135),
        data(history(TURNING, events=[visit]), 300),
        data(history(sudden), 84),
        data(history({LEFT: TURNING[LEFT][:8]}), 20),
        data(history({LEFT: [(number, 90.0) for number in NEARER]}, made=NEARER), 20),
        *(
            progress_data(records.person, progress_of(records, NOW.day), "An estimate.")
            for records in story_histories(NOW)
        ),
    ]


def keys(value: Any) -> set[str]:
    if isinstance(value, dict):
        return set(value).union(*map(keys, value.values()))
    return set().union(*map(keys, value)) if isinstance(value, list) else set()


def test_every_field_is_described_and_every_description_is_a_field() -> None:
    page = Path(measure.__file__).parent / "docs/progress-json.md"
    described = set(re.findall(r"`(\w+)`", page.read_text(encoding="utf-8"))) - {"null"}
    written = keys(whole())
    assert written - described == set()
    assert described - written == set()


def test_no_field_of_a_movement_is_empty_everywhere() -> None:
    """Guards the test above: what is described was really written once."""
    movements = [movement for each in whole() for movement in each["movements"]]
    empty = {
        name
        for name in movements[0]
        if all(movement[name] in (None, [], "") for movement in movements)
    }
    assert empty - {"set_up_drifted_by"} == set()


def test_the_order_is_always_the_same() -> None:
    orders = {tuple(movement) for each in whole() for movement in each["movements"]}
    assert len(orders) == 1
    assert list(next(iter(orders)))[:2] == ["movement", "side"]
    assert len({tuple(each) for each in whole()}) == 1


def test_a_turn_is_written_with_its_interval() -> None:
    (flexion,) = data(history(TURNING), 161)["movements"]
    turn = flexion["turn"]
    assert turn["low"] <= turn["day"] <= turn["high"]
    assert turn["before"] == "gaining"
    assert day(70).isoformat() < turn["day"] < day(98).isoformat()
    assert "increased until about" in flexion["verdict_text"]


def test_an_old_verdict_is_not_todays() -> None:
    (flexion,) = data(history(TURNING), 300)["movements"]
    assert flexion["verdict"] == "no-recent-readings"
    assert flexion["lapsed"] == "losing"
    assert flexion["slope"] is None
    assert flexion["expires"] < day(300).isoformat()
    assert "nothing can be said about today" in flexion["verdict_text"]


def test_practice_is_marked() -> None:
    (flexion,) = data(history(TURNING), 161)["movements"]
    assert [reading["practice"] for reading in flexion["readings"][:3]] == [True, True, False]
    assert len(flexion["readings"]) == 81


def test_the_text_is_json_that_anybody_reads() -> None:
    records = history(TURNING)
    progress = progress_of(records, day(161))
    text = progress_json(records.person, progress, "An estimate.")
    assert json.loads(text) == progress_data(records.person, progress, "An estimate.")
    assert text == progress_json(records.person, progress, "An estimate.")
    assert "\\u" not in text


@pytest.mark.parametrize("today", [0, 1, 5])
def test_a_first_session_is_enough(today: int) -> None:
    (flexion,) = data(history({LEFT: [(0, 90.0)]}), today)["movements"]
    assert flexion["verdict"] == "too-early"
    assert flexion["when_known"] is None
    assert flexion["change"] is None


def golden_history() -> History:
    """Return what the golden file was written from: both sides, five weeks, a programme."""
    values = {
        (movement, side): [(number, level + number / 7) for number in range(0, 35, 7)]
        for movement, levels in (
            (Movement.FLEXION, (120.0, 160.0)),
            (Movement.EXTERNAL_ROTATION, (20.0, 64.0)),
        )
        for side, level in zip((Side.LEFT, Side.RIGHT), levels, strict=True)
    }
    records = history(values, who=person(affected=(Side.LEFT,)))
    measurements = [replace(item, stopped_by=LimitingFactor.PAIN) for item in records.measurements]
    plan = Plan(
        id=some_id("plan"),
        person_id=records.person.id,
        first_day=day(2),
        exercises=(
            PlannedExercise(
                exercise=Exercise(listed=ListedExercise.TOWEL),
                times_a_day=1,
                hold_s=10,
                repetitions=10,
            ),
        ),
        pain_limit=4,
    )
    logs = [
        ExerciseLog(
            id=some_id(f"log {number}"),
            person_id=records.person.id,
            exercise=plan.exercises[0].exercise,
            done=moment(f"{day(number)}T16:00:00+00:00"),
            repetitions=repetitions,
        )
        for number, repetitions in ((20, 10), (21, 6), (22, None))
    ]
    return replace(
        records,
        person=replace(records.person, dominant=Side.RIGHT),
        measurements=tuple(measurements),
        plans=(plan,),
        exercises_done=tuple(logs),
    )


def test_golden_file() -> None:
    """Programs read these fields: a change of them is on purpose, and named in the changelog."""
    path = Path(__file__).parent / f"golden/progress-of-schema-{SCHEMA}.json"
    written = json.loads(json.dumps(data(golden_history(), 30)))
    kept = json.loads(path.read_text(encoding="utf-8"))
    assert nearly(written) == nearly(kept)


def nearly(value: Any) -> Any:
    """Return the same without its sentences, and with numbers rounded.

    The last digits may differ between computers, and sentences are held by tests of their own.
    """
    if isinstance(value, dict):
        return [
            (name, bool(item) if name in ("text", "verdict_text") else nearly(item))
            for name, item in value.items()
        ]
    if isinstance(value, list):
        return [nearly(item) for item in value]
    return round(value, 6) if isinstance(value, float) else value
