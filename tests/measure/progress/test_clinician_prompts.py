"""When to talk to a clinician: each reason, and what is close to it but none."""

import re
from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History, Pain
from measure.progress.clinician_prompts import MEASURE_AGAIN, WORTH_SHOWING, Prompt, PromptKind
from measure.progress.overview import progress_of
from measure.progress.wording import MINUS
from tests.support.progress_histories import Values, day, history
from tests.support.record_samples import event, person, some_id

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
DAYS = [7 * week + each for week in range(16) for each in (0, 2, 4)]


def course(start: float, a_week: float, *, days: list[int] = DAYS, seed: int = 1):  # type: ignore[no-untyped-def]
    scatter = np.random.default_rng(seed).normal(0, 2, len(days))
    return [
        (number, start + a_week * number / 7 + float(off))
        for number, off in zip(days, scatter, strict=True)
    ]


def told(values: Values, today: int = 112, **more: object) -> tuple[Prompt, ...]:
    return progress_of(history(values, **more), day(today)).prompts  # type: ignore[arg-type]


def kinds(values: Values, today: int = 112, **more: object) -> list[PromptKind]:
    return [each.kind for each in told(values, today, **more)]


def twice_in_a_day(first: float, second: float) -> History:
    """Return a history whose only day has two readings of one movement."""
    records = history({LEFT: [(7, first)]})
    (record,) = records.measurements
    again = history({LEFT: [(7, second)]}).measurements[0].measurement
    twin = replace(record, id=some_id("second"), measurement=again)
    return replace(records, measurements=(record, twin))


#: The other shoulder, once a week, level.
OTHER = course(160, 0, days=DAYS[::3], seed=2)


def test_a_confirmed_loss_is_told_with_its_numbers() -> None:
    (prompt,) = told({LEFT: course(140, -2)})
    assert prompt.kind is PromptKind.LOSING
    assert (prompt.movement, prompt.side) == LEFT
    assert prompt.text.startswith("Flexion, left side: readings went down over 15 weeks")
    assert re.search(r"by -[89]° \(-\d+ to -\d+\) a month", prompt.text.replace(MINUS, "-"))
    assert prompt.text.endswith(WORTH_SHOWING)


def test_readings_of_one_day_that_exclude_one_another_are_told_with_both() -> None:
    """An interval of 8° either way lies around each."""
    (prompt,) = progress_of(twice_in_a_day(87.0, 155.0), day(7)).prompts
    assert prompt.kind is PromptKind.SAME_DAY
    assert (prompt.movement, prompt.side) == LEFT
    assert prompt.text == (
        "Flexion, left side: readings on the latest day range from 87° to 155°, more than their "
        f"95 % intervals allow. {MEASURE_AGAIN}"
    )


def test_readings_of_one_day_that_agree_are_not_told() -> None:
    assert progress_of(twice_in_a_day(147.0, 155.0), day(7)).prompts == ()


def test_readings_of_an_earlier_day_that_exclude_one_another_are_not_told() -> None:
    records = twice_in_a_day(87.0, 155.0)
    later = history({LEFT: [(9, 150.0)]}, who=records.person)
    both = replace(
        records,
        sessions=(*records.sessions, *later.sessions),
        measurements=(*records.measurements, *later.measurements),
    )
    assert progress_of(both, day(9)).prompts == ()


def test_a_gain_tells_nothing() -> None:
    assert told({LEFT: course(90, 2), RIGHT: OTHER}) == ()


def test_the_other_side_stiffening_is_told_too() -> None:
    (prompt,) = told({LEFT: course(90, 2), RIGHT: course(160, -2, seed=2)})
    assert prompt.kind is PromptKind.LOSING
    assert (prompt.movement, prompt.side) == RIGHT


def test_a_stall_is_told_with_the_other_side() -> None:
    (prompt,) = told({LEFT: course(100, 0, seed=4), RIGHT: OTHER})
    assert prompt.kind is PromptKind.STALLED
    assert (
        "little or no change over the last 15 weeks (a gain of 5° a month is unlikely"
        in prompt.text
    )
    assert re.search(r"about [56]\d° less than the other side", prompt.text)


def test_three_months_without_gain() -> None:
    """Abduction knows no stall, so after three months this is said instead."""
    left = (Movement.ABDUCTION, Side.LEFT)
    (prompt,) = told({left: course(100, 0)})
    assert prompt.kind is PromptKind.NO_GAIN
    assert "left side: no clear gain over three months" in prompt.text
    assert prompt.text.startswith("Abduction, left side")


def test_no_gain_is_told_once_a_side() -> None:
    values = {
        (movement, Side.LEFT): course(start, 0, seed=start)
        for movement, start in ((Movement.ABDUCTION, 90), (Movement.EXTENSION, 20))
    }
    (prompt,) = told(values)
    assert prompt.movement is None
    assert prompt.text.startswith("Extension, abduction, left side")


@pytest.mark.parametrize(
    "values",
    [
        {(Movement.ABDUCTION, Side.LEFT): course(90, 2)},
        {(Movement.ABDUCTION, Side.LEFT): course(165, 0)},
        {
            (Movement.ABDUCTION, Side.LEFT): course(150, 0),
            (Movement.ABDUCTION, Side.RIGHT): course(155, 0, days=DAYS[::3], seed=2),
        },
        {(Movement.ABDUCTION, Side.LEFT): course(100, 0, days=DAYS[:30])},
        {(Movement.ABDUCTION, Side.LEFT): course(100, 0, days=DAYS[::6])},
    ],
    ids=["gaining", "usual range", "like the other", "two months and a half", "seldom measured"],
)
def test_nothing_to_say_about_gain(values: Values) -> None:
    assert kinds(values) == []


def test_three_months_count_from_the_latest_break() -> None:
    injected = event(person(), kind=EventKind.INJECTION, day=day(40), side=Side.LEFT)
    assert kinds({(Movement.ABDUCTION, Side.LEFT): course(100, 0)}, events=[injected]) == []


#: Ten weeks about 120 degrees, and what follows about 95.
HIGH, LOW = course(120, 0, days=DAYS[:30]), course(95, 0, days=DAYS[30:37], seed=3)


def test_one_low_session_asks_for_another_measurement() -> None:
    (prompt,) = told({LEFT: HIGH + LOW[:1]}, 71)
    assert prompt.kind is PromptKind.LOW_SESSION
    assert "the latest session was far below the weeks before" in prompt.text
    assert prompt.text.endswith(MEASURE_AGAIN)


def test_a_second_one_tells_a_sudden_loss() -> None:
    (prompt,) = told({LEFT: HIGH + LOW[:2]}, 73)
    assert prompt.kind is PromptKind.DROP
    assert "the last 2 sessions were far below" in prompt.text
    assert re.search(r"by 2[3-7]° on average", prompt.text)
    assert prompt.text.endswith(WORTH_SHOWING)


def test_a_low_session_between_good_ones_is_none() -> None:
    good = course(120, 0, days=DAYS[31:33], seed=4)
    assert kinds({LEFT: HIGH + LOW[:1] + good[:1]}, 73) == []


def test_who_often_reads_low_is_told_later() -> None:
    """With a low session now and then, two running may be chance; four are not."""
    odd = [(number, value - 25 if k % 8 == 5 else value) for k, (number, value) in enumerate(HIGH)]
    assert kinds({LEFT: odd + LOW[:2]}, 73) == [PromptKind.LOW_SESSION]
    assert kinds({LEFT: odd + LOW[:5]}, 80) == [PromptKind.DROP]


def test_nothing_is_told_of_motion_after_three_weeks_without_a_session() -> None:
    assert kinds({LEFT: HIGH + LOW[:2]}, 93) == [PromptKind.DROP]
    assert kinds({LEFT: HIGH + LOW[:2]}, 94) == []


def pain(**ratings: list[int]) -> dict[int, Pain]:
    """Return ratings every third day, the last of them today."""
    length = len(next(iter(ratings.values())))
    return {
        111 - 3 * (length - 1 - k): Pain(**{name: each[k] for name, each in ratings.items()})
        for k in range(length)
    }


@pytest.mark.parametrize(
    ("ratings", "expected"),
    [
        ({"night": [7, 8, 7, 7, 8]}, [PromptKind.HIGH_PAIN]),
        ({"rest": [7, 7, 7, 7, 7]}, [PromptKind.HIGH_PAIN]),
        ({"night": [8, 8, 6, 6, 6]}, []),
        ({"night": [8, 8]}, []),
        ({"worst_24h": [9, 9, 9, 9, 9]}, []),
        ({"worst_24h": [3] * 10 + [6, 7, 6, 6, 7]}, [PromptKind.MORE_PAIN]),
        # The same rise of somebody whose pain comes and goes.
        ({"worst_24h": [1, 5, 3, 6, 1, 4, 5, 2, 0, 4, 6, 7, 6, 6, 7]}, []),
        ({"worst_24h": [3] * 10 + [4, 5, 4, 4, 4]}, []),
        ({"worst_24h": [6] * 10 + [3, 3, 3, 3, 3]}, []),
        ({"worst_24h": [3] + [6] * 5}, []),
    ],
)
def test_pain(ratings: dict[str, list[int]], expected: list[PromptKind]) -> None:
    assert kinds({LEFT: course(90, 2)}, pain=pain(**ratings)) == expected


def test_pain_of_weeks_ago_is_not_told_today() -> None:
    ratings = pain(night=[8, 8, 8, 8, 8])
    assert kinds({LEFT: course(90, 2)}, 150, pain=ratings) == []


def test_no_prompt_advises_a_treatment() -> None:
    texts = " ".join(
        each.text
        for values in (
            {LEFT: course(140, -2)},
            {LEFT: course(100, 0, seed=4), RIGHT: OTHER},
            {(Movement.ABDUCTION, Side.LEFT): course(100, 0)},
        )
        for each in told(values, pain=pain(night=[8] * 5, worst_24h=[8] * 5))
    ).lower()
    assert texts.count("show this to your clinician") == 6
    for word in (
        "injection",
        "steroid",
        "surgery",
        "exercise",
        "medicine",
        "stretch",
        "you should",
    ):
        assert word not in texts
