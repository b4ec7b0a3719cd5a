"""Deficit to the other side: now, by month, over movements; and what ended movements."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, LimitingFactor, Person
from measure.domain.session_comparison import side_difference
from measure.progress.movement_ends import ends_by_month
from measure.progress.overview import Progress, progress_of
from measure.progress.side_deficit import SideDeficit
from measure.progress.side_wording import (
    deficit_sentence,
    dominance_sentence,
    ends_sentence,
    months_sentence,
    pattern_sentence,
    side_by_side_sentences,
)
from measure.progress.wording import MINUS
from tests.bench.progress_deficits import deficit_coverage
from tests.bench.progress_people import Course
from tests.support.progress_histories import day, history
from tests.support.record_samples import event, person

WEEKS = range(0, 84, 7)
LEFT_STIFF = person(affected=(Side.LEFT,))


def both_sides(pairs: dict[Movement, tuple[float, float]], who: Person = LEFT_STIFF) -> Progress:
    """Return the progress of twelve weekly sessions at constant values of left and right."""
    values = {
        (movement, side): [(number, value) for number in WEEKS]
        for movement, sides in pairs.items()
        for side, value in zip((Side.LEFT, Side.RIGHT), sides, strict=True)
    }
    return progress_of(history(values, who=who), day(80))


def deficit_of(progress: Progress, movement: Movement, side: Side = Side.LEFT) -> SideDeficit:
    found = progress.of(movement, side)
    assert found is not None
    assert found.deficit is not None
    return found.deficit


def test_deficit_in_degrees_and_per_cent_with_intervals() -> None:
    now = deficit_of(both_sides({Movement.FLEXION: (120.0, 160.0)}), Movement.FLEXION).now
    assert now.difference.value == 40
    assert now.difference.low < 40 < now.difference.high
    assert now.share is not None
    assert now.share.percent == 75
    assert 60 < now.share.low < 75 < now.share.high < 90


def test_after_one_session_it_is_the_difference_that_the_session_shows() -> None:
    values = {
        (Movement.FLEXION, Side.LEFT): [(0, 120.0)],
        (Movement.FLEXION, Side.RIGHT): [(0, 160.0)],
    }
    records = history(values, who=LEFT_STIFF, half_width=9.0)
    left, right = (record.measurement for record in records.measurements)
    shown = side_difference(left, right)
    assert shown is not None
    deficit = deficit_of(progress_of(records, day(1)), Movement.FLEXION).now.difference
    assert (deficit.value, deficit.low, deficit.high) == (shown.value, shown.low, shown.high)


@pytest.mark.parametrize("affected", [(), (Side.LEFT, Side.RIGHT)])
def test_without_one_affected_side_there_is_no_deficit(affected: tuple[Side, ...]) -> None:
    progress = both_sides({Movement.FLEXION: (120.0, 160.0)}, person(affected=affected))
    assert all(side.deficit is None for side in progress.sides)
    assert progress.pattern is None


def test_only_the_affected_side_has_one() -> None:
    progress = both_sides({Movement.FLEXION: (120.0, 160.0)})
    other = progress.of(Movement.FLEXION, Side.RIGHT)
    assert other is not None
    assert other.deficit is None


def test_near_zero_there_is_no_share() -> None:
    deficit = deficit_of(
        both_sides({Movement.EXTERNAL_ROTATION: (2.0, 6.0)}), Movement.EXTERNAL_ROTATION
    )
    assert deficit.now.share is None
    assert "%" not in deficit_sentence(deficit.now, Movement.EXTERNAL_ROTATION)


def test_months_begin_anew_where_the_camera_changed() -> None:
    """What was measured before the change in the same month is left out."""
    values = {
        (Movement.FLEXION, side): [
            (number, high if number < 49 else high - 30) for number in range(0, 84, 4)
        ]
        for side, high in ((Side.LEFT, 120.0), (Side.RIGHT, 160.0))
    }
    changed = event(LEFT_STIFF, kind=EventKind.CAMERA_CHANGED, day=day(49), side=None)
    progress = progress_of(history(values, who=LEFT_STIFF, events=[changed]), day(84))
    months = deficit_of(progress, Movement.FLEXION).months
    assert [item.month.month for item in months] == [4, 5, 6]
    assert {item.deficit.difference.value for item in months} == {40.0}
    assert months[1].deficit.this.value == 120
    assert months[2].deficit.this.value == 90


def test_a_month_needs_two_days_of_both_sides() -> None:
    values = {
        (Movement.FLEXION, Side.LEFT): [(number, 120.0) for number in range(0, 84, 4)],
        (Movement.FLEXION, Side.RIGHT): [
            (0, 160.0),
            (1, 160.0),
            (10, 160.0),
            (40, 160.0),
            (41, 160.0),
        ],
    }
    progress = progress_of(history(values, who=LEFT_STIFF), day(84))
    assert [m.month.month for m in deficit_of(progress, Movement.FLEXION).months] == [5]


def test_pattern_names_the_smallest_share_only_beyond_chance() -> None:
    clear = both_sides(
        {Movement.FLEXION: (130.0, 160.0), Movement.EXTERNAL_ROTATION: (15.0, 70.0)}
    ).pattern
    assert clear is not None
    assert clear.smallest is Movement.EXTERNAL_ROTATION
    assert "It is lowest for External rotation" in pattern_sentence(clear)
    near = both_sides(
        {Movement.FLEXION: (130.0, 160.0), Movement.EXTERNAL_ROTATION: (52.0, 70.0)}
    ).pattern
    assert near is not None
    assert near.shares[0][0] is Movement.EXTERNAL_ROTATION
    assert near.smallest is None


def test_pattern_needs_two_movements() -> None:
    assert both_sides({Movement.FLEXION: (130.0, 160.0)}).pattern is None


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ((120.0, 160.0), "40° (29 to 51) less than the other side; 75 % (69 to 81) of its range"),
        (
            (158.0, 160.0),
            f"2° ({MINUS}9 to 13) less than the other side, which may be chance; "
            "99 % (92 to 106) of its range",
        ),
        (
            (160.0, 150.0),
            f"10° ({MINUS}1 to 21) more than the other side, which may be chance; "
            "107 % (99 to 115) of its range",
        ),
    ],
)
def test_words_of_a_deficit(values: tuple[float, float], words: str) -> None:
    now = deficit_of(both_sides({Movement.FLEXION: values}), Movement.FLEXION).now
    assert deficit_sentence(now, Movement.FLEXION) == words


def test_words_of_the_reach_are_levels_and_centimetres() -> None:
    movement = Movement.HAND_BEHIND_BACK
    now = deficit_of(both_sides({movement: (0.2, 0.5)}), movement).now
    words = deficit_sentence(now, movement)
    assert words.startswith("6.6 levels, 18 (")
    assert "of its height above the hips" in words


def test_the_dominant_hand_explains_rotation_and_reach_alone() -> None:
    rotation, reach = Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK
    handed = replace(LEFT_STIFF, dominant=Side.RIGHT)
    both = both_sides({rotation: (30.0, 60.0), reach: (0.3, 0.6)}, handed)
    sentence = dominance_sentence(both)
    assert sentence == (
        "The right hand is the dominant one. In healthy shoulders, the dominant arm turns "
        "outwards about 5° further on average; the dominant hand often reaches a little less far "
        "up the back."
    )
    assert sentence in side_by_side_sentences(both)
    assert "up the back" not in dominance_sentence(both_sides({rotation: (30.0, 60.0)}, handed))
    # Raising the arm has no such difference; and of an unknown hand nothing is said.
    assert dominance_sentence(both_sides({Movement.FLEXION: (120.0, 160.0)}, handed)) == ""
    unknown = replace(LEFT_STIFF, dominant=None)
    assert dominance_sentence(both_sides({rotation: (30.0, 60.0)}, unknown)) == ""


def test_words_of_months() -> None:
    months = deficit_of(both_sides({Movement.FLEXION: (120.0, 160.0)}), Movement.FLEXION).months
    words = months_sentence(months, Movement.FLEXION)
    assert words.startswith("Flexion, compared with the other side, by month: Apr 2026 75 % (")
    assert months_sentence(months[:1], Movement.FLEXION) == ""


def ended(records: History, *factors: LimitingFactor | None) -> History:
    """Return the history with what ended its first measurements."""
    measurements = list(records.measurements)
    for k, factor in enumerate(factors):
        measurements[k] = replace(measurements[k], stopped_by=factor)
    return replace(records, measurements=tuple(measurements))


def test_what_ended_movements_is_counted_by_month_and_side() -> None:
    records = history(
        {
            (Movement.FLEXION, Side.LEFT): [(0, 90.0), (7, None), (14, 90.0), (30, 90.0)],
            (Movement.FLEXION, Side.RIGHT): [(31, 150.0)],
        }
    )
    pain, stiff = LimitingFactor.PAIN, LimitingFactor.STIFFNESS
    months = ends_by_month(ended(records, pain, pain, stiff, None, pain), (Side.LEFT,))
    assert [item.month for item in months] == [dt.date(2026, 4, 1)]
    assert months[0].times == {pain: 2, stiff: 1}
    assert months[0].total == 3
    assert ends_sentence(months) == (
        "What stopped the movements, as reported: Apr 2026 pain 2 of 3, stiffness 1 of 3."
    )
    assert ends_sentence(()) == ""


@pytest.mark.parametrize("course", [Course(), Course(a_month=5, related=0.3)])
def test_intervals_hold_the_truth(course: Course) -> None:
    """Twenty simulated people with three movements each, of which chance may miss some."""
    figures = dict(deficit_coverage(course, 20, 1))
    assert figures.pop("falsely named as the smallest share") <= 5
    assert all(figure > 88 for figure in figures.values()), figures
