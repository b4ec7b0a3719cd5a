"""The one sentence of the week, for the demo people and for who has hardly begun."""

import datetime as dt
from dataclasses import replace

import pytest

from measure.demo.story import story_histories
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.progress.overview import progress_of
from measure.progress.week_sentence import (
    NOTHING_YET,
    forecast_sentence,
    joined,
    other_sentence,
    week_sentence,
)
from measure.system.clock import Timestamp
from tests.support import record_samples as sample

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
            "Right shoulder: more movement in hand behind back; little or no recent change in "
            "flexion and external rotation.",
        ),
    ],
)
def test_what_is_said_of_the_affected_shoulder(name: str, sentence: str) -> None:
    assert week_sentence(progress_of(HISTORIES[name], NOW.day)) == sentence


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
    assert week_sentence(progress_of(History(person=sample.person()), NOW.day)) == NOTHING_YET


def test_names_in_a_sentence() -> None:
    assert joined([Movement.FLEXION]) == "flexion"
    assert joined([Movement.FLEXION, Movement.ABDUCTION]) == "flexion and abduction"
