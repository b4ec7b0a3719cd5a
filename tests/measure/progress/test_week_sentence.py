"""The one sentence of the week, for the demo people and for who has hardly begun."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.demo.story import story_histories
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History
from measure.progress.overview import progress_of
from measure.progress.sentences import doubt_sentence, shown_change, verdict_words
from measure.progress.week_sentence import (
    NOT_STATED,
    NOTHING_YET,
    counted_sentence,
    forecast_sentence,
    joined,
    other_sentence,
    so_far_sentence,
    week_sentence,
)
from measure.system.clock import Timestamp
from tests.support import record_samples as sample
from tests.support.progress_histories import day, history

NOW = Timestamp(utc=dt.datetime(2026, 11, 25, 18, tzinfo=dt.UTC))
HISTORIES = {records.person.pseudonym: records for records in story_histories(NOW)}


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        (
            "demo-Marigold",
            "Left shoulder: more movement than before.",
        ),
        (
            "demo-Bramble",
            "Right shoulder: little or no recent change in flexion and external rotation; more "
            "movement earlier in hand behind back, by now no longer clear.",
        ),
        (
            "demo-Thistle",
            "Left since 17 Sep 2026 (injection): more movement in flexion and external "
            "rotation; probably more movement in hand behind back.",
        ),
    ],
)
def test_what_is_said_of_the_affected_shoulder(name: str, sentence: str) -> None:
    assert week_sentence(progress_of(HISTORIES[name], NOW.day)) == sentence


@pytest.mark.parametrize(
    ("name", "sentence"),
    [
        ("demo-Marigold", "Left: more movement than before."),
        (
            "demo-Thistle",
            "Left since 17 Sep: more movement in flexion and external rotation; probably more "
            "movement in hand behind back.",
        ),
    ],
)
def test_the_same_in_fewer_words_where_there_is_little_room(name: str, sentence: str) -> None:
    assert week_sentence(progress_of(HISTORIES[name], NOW.day), brief=True) == sentence


def test_the_headline_and_the_line_of_a_movement_say_the_same() -> None:
    """A gain whose interval includes 0 by now is no gain of today, in any sentence."""
    progress = progress_of(HISTORIES["demo-Bramble"], NOW.day)
    behind = progress.of(Movement.HAND_BEHIND_BACK, Side.RIGHT)
    assert behind is not None
    slope = shown_change(behind)
    assert slope is not None
    assert slope.low < 0 < slope.high
    assert verdict_words(behind) == "increase shown on 7 Oct 2026, by now no longer clear"
    assert doubt_sentence(behind) == ""


def test_what_was_not_measured_since_an_event_is_no_news_of_today() -> None:
    """Flexion was measured after it, the reach behind the back was not."""
    records = HISTORIES["demo-Thistle"]
    last = max(
        record.taken.day
        for record in records.measurements
        if record.measurement.movement is Movement.HAND_BEHIND_BACK
    )
    treated = sample.event(
        records.person,
        kind=EventKind.MANIPULATION,
        day=last + dt.timedelta(days=1),
        side=Side.LEFT,
    )
    progress = progress_of(replace(records, events=(*records.events, treated)), NOW.day)
    assert week_sentence(progress) == (
        "Left since 20 Nov 2026 (manipulation under anaesthesia): too early to say for "
        "flexion and external rotation; no readings yet of hand behind back."
    )
    assert counted_sentence(progress) == ""


def test_while_it_is_too_early_it_says_when_a_gain_would_show() -> None:
    progress = progress_of(HISTORIES["demo-Clover"], NOW.day)
    assert week_sentence(progress) == "Right shoulder: too early to say."
    assert forecast_sentence(progress).startswith("A gain of 5° a month would show in ")
    assert forecast_sentence(progress).endswith("weeks.")


def test_where_something_can_be_said_nothing_is_foretold() -> None:
    assert forecast_sentence(progress_of(HISTORIES["demo-Marigold"], NOW.day)) == ""


def test_the_other_shoulder_is_spoken_of_only_where_it_changed() -> None:
    records = HISTORIES["demo-Marigold"]
    assert other_sentence(progress_of(records, NOW.day)) == ""
    swapped = replace(records, person=replace(records.person, affected=(Side.RIGHT,)))
    sentence = other_sentence(progress_of(swapped, NOW.day))
    assert sentence == "Left shoulder: more movement than before."


def test_two_shoulders_of_which_the_same_is_said_share_a_sentence() -> None:
    records = HISTORIES["demo-Clover"]
    both = replace(records, person=replace(records.person, affected=(Side.LEFT, Side.RIGHT)))
    sentence = week_sentence(progress_of(both, NOW.day))
    assert sentence.startswith("Both shoulders: too early to say")
    assert sentence.count("too early") == 1


def test_a_long_pause_leaves_nothing_to_say_of_today() -> None:
    later = NOW.day + dt.timedelta(days=40)
    sentence = week_sentence(progress_of(HISTORIES["demo-Marigold"], later))
    assert "no readings in the last three weeks" in sentence


def test_nobody_measured_yet() -> None:
    """What is missing is named, and so is an affected side that was never entered."""
    main = "flexion, external rotation and hand behind back"
    stated = replace(sample.person(), affected=(Side.LEFT,))
    unknown = replace(stated, affected=())
    for person, words in ((stated, NOTHING_YET), (unknown, NOT_STATED)):
        sentence = week_sentence(progress_of(History(person=person), NOW.day))
        assert sentence == words.format(movements=main)


def test_names_in_a_sentence() -> None:
    assert joined([Movement.FLEXION]) == "flexion"
    assert joined([Movement.FLEXION, Movement.ABDUCTION]) == "flexion and abduction"


def test_the_first_sessions_are_named_as_practice_until_one_counts() -> None:
    who = sample.person(affected=(Side.LEFT,))

    def said(*days: int) -> str:
        values = {(Movement.FLEXION, Side.LEFT): [(number, 90.0) for number in days]}
        return so_far_sentence(progress_of(history(values, who=who), day(days[-1])))

    none_yet = "So far 0 of the 8 sessions and 0 of the 4 weeks it takes."
    practice = "The first 2 sessions are for practice and do not count."
    assert said(0) == said(0, 2) == f"{none_yet} {practice}"
    assert said(0, 2, 4) == "So far 1 of the 8 sessions and 0 of the 4 weeks it takes."
