"""Everyday tasks: reached when even the lower end of the interval passes."""

import datetime as dt

import pytest

from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.vertebral_levels import height_of, level_at
from measure.kinematics.uncertainty import difficulty, half_width
from measure.progress.comparison import Block
from measure.progress.milestones import TASKS, milestones


def block(low: float, *, days: int = 5) -> Block:
    day = dt.date(2026, 4, 6)
    return Block(
        value=low + 8, low=low, high=low + 16, half_width=5.0, days=days, first=day, last=day
    )


def reached(movement: Movement, recent: Block) -> list[str]:
    return [each.task.range_words for each in milestones(movement, recent) if each.reached]


@pytest.mark.parametrize(
    ("movement", "low", "expected"),
    [
        (Movement.FLEXION, 89.9, []),
        (Movement.FLEXION, 90.0, ["90°"]),
        (Movement.FLEXION, 129.0, ["90°", "120°"]),
        (Movement.FLEXION, 130.0, ["90°", "120°", "130°"]),
        (Movement.ABDUCTION, 120.0, ["90°", "120°"]),
        (Movement.EXTERNAL_ROTATION, 34.0, ["20°"]),
        (Movement.EXTENSION, 29.0, []),
        (Movement.EXTENSION, 30.0, ["30°"]),
        (Movement.HAND_BEHIND_BACK, -0.2, []),
        (Movement.HAND_BEHIND_BACK, height_of("L3"), ["buttock", "sacrum", "level L4"]),
        (Movement.HAND_BEHIND_BACK, height_of("T7"), [
            "buttock", "sacrum", "level L4", "level L1",
        ]),
    ],
)  # fmt: skip
def test_the_lower_end_decides(movement: Movement, low: float, expected: list[str]) -> None:
    assert reached(movement, block(low)) == expected


def test_a_value_beyond_is_not_enough() -> None:
    assert reached(Movement.FLEXION, block(85)) == []
    assert block(85).value > 90


def test_one_good_day_is_not_enough() -> None:
    assert reached(Movement.FLEXION, block(160, days=2)) == []
    assert len(reached(Movement.FLEXION, block(160, days=3))) == 3


@pytest.mark.parametrize("movement", Movement)
def test_the_least_of_what_is_usual_passes_every_task(movement: Movement) -> None:
    assert all(task.from_value <= MOVEMENTS[movement].usual[0] for task in TASKS[movement])


@pytest.mark.parametrize(
    ("movement", "certain"),
    [
        (Movement.FLEXION, ["90°", "120°", "130°"]),
        (Movement.EXTENSION, ["30°"]),
        (Movement.ABDUCTION, ["90°", "120°"]),
        (Movement.EXTERNAL_ROTATION, ["20°", "35°"]),
        # The strap asks for L1; the interval about T12 ends three levels lower.
        (Movement.HAND_BEHIND_BACK, ["buttock", "sacrum", "level L4"]),
    ],
)
def test_and_passes_it_certainly_with_the_interval_of_a_good_clip(
    movement: Movement, certain: list[str]
) -> None:
    facts = MOVEMENTS[movement]
    view = facts.views[0]
    hardness = difficulty(movement, view, facts.usual[0], 0.0, ())
    low = facts.usual[0] - half_width(movement, view, "heavy", hardness)
    assert reached(movement, block(low)) == certain


def test_tasks_are_listed_the_easiest_first() -> None:
    for tasks in TASKS.values():
        assert [each.from_value for each in tasks] == sorted(each.from_value for each in tasks)


def test_tasks_describe_and_do_not_urge() -> None:
    words = " ".join(each.words for tasks in TASKS.values() for each in tasks)
    assert not {"goal", "target", "only", "must", "should", "try"} & set(words.split())


@pytest.mark.parametrize("level", ["buttock", "sacrum", "L4", "L1"])
def test_a_level_begins_where_it_is_read(level: str) -> None:
    assert level_at(height_of(level)) == level
