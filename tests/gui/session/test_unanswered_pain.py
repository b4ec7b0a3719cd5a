"""Pain that waits for answers: kept by person, answered once, for the day."""

import datetime as dt
from dataclasses import replace

import pytest

from gui.session.unanswered_pain import UnansweredPain
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History, Pain
from measure.system.clock import new_id
from tests.support.gui.measuring_steps import screening_today
from tests.support.progress_histories import history
from tests.support.record_samples import person


@pytest.fixture
def garden() -> History:
    return history({(Movement.FLEXION, Side.LEFT): [(0, 90.0)]}, pain={0: Pain(rest=3)})


def test_it_waits_until_answered_whatever_was_answered_before(garden: History) -> None:
    waiting, today = UnansweredPain(), garden.sessions[0].started.day
    earlier = [screening_today(garden.person, today)]
    assert waiting.at_beginning(garden, earlier, today) is None
    waiting.ask(garden.person.id, 8)
    assert waiting.at_beginning(garden, earlier, today) == 8
    assert waiting.when_told(None, garden, today) == 8
    # The questions asked for another cause change nothing.
    waiting.ask(garden.person.id, None)
    assert waiting.at_beginning(garden, earlier, today) == 8
    waiting.answer(garden.person.id, today)
    assert waiting.at_beginning(garden, earlier, today) is None
    assert waiting.when_told(8, garden, today) is None
    assert waiting.when_told(9, garden, today) == 9
    assert waiting.when_told(8, garden, today + dt.timedelta(days=1)) == 8


def test_it_is_one_persons_alone(garden: History) -> None:
    waiting, today = UnansweredPain(), garden.sessions[0].started.day
    other = replace(person(), id=new_id())
    waiting.ask(other.id, 8)
    waiting.answer(garden.person.id, today)
    assert waiting.at_beginning(garden, [], today) is None
    assert waiting.at_beginning(History(person=other), [], today) == 8
