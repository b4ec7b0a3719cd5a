"""Goals in the window: named, rated, ended; shown on a card below the charts."""

import datetime as dt
from collections.abc import Callable

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtWidgets import QAbstractButton, QLabel, QLineEdit

from gui.app.window_pages import MainPage
from tests.support import record_samples as sample
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY, WindowHarness


@pytest.fixture
def goals_page(stage: WindowHarness) -> WindowHarness:
    stage.store.merge(demo_history(stage.store.people()[0], TODAY, weeks=6))
    stage.window.go(MainPage.PROGRESS)
    stage.settle()
    stage.window.progress.overview.goals.open.click()
    stage.settle()
    return stage


def add(stage: WindowHarness, words: str) -> None:
    page = stage.window.progress.goals
    page.words.setText(words)
    page.add.click()
    stage.settle()


def test_a_goal_is_named_rated_and_ended(goals_page: WindowHarness) -> None:
    page = goals_page.window.progress.goals
    add(goals_page, "  Put on   a jacket ")
    (goal,) = goals_page.history().goals
    assert (goal.words, goal.first_day) == ("Put on a jacket", TODAY)
    page.ratings[0].button(4).click()
    goals_page.settle()
    page.ratings[0].button(6).click()
    goals_page.settle()
    (rating,) = goals_page.history().goal_ratings
    assert (rating.day, rating.rating, rating.goal_id) == (TODAY, 6, goal.id)
    assert page.ratings[0].value == 6
    page.leave.click()
    strip = goals_page.window.progress.overview.goals
    assert any("6 of 10 on 25 Nov 2026" in each for each in texts(strip))
    goals_page.window.progress.show_goals()
    goals_page.settle()
    page.end_buttons[0].click()  # type: ignore[attr-defined]
    goals_page.settle()
    (goal,) = goals_page.history().goals
    assert goal.last_day == TODAY
    assert len(goals_page.history().goal_ratings) == 1
    assert page.ratings == []


def texts(widget: object) -> list[str]:
    return [label.text() for label in widget.findChildren(QLabel)]  # type: ignore[attr-defined]


def test_three_goals_are_enough(goals_page: WindowHarness) -> None:
    page = goals_page.window.progress.goals
    for words in ("A jacket", "The top shelf", "Digging"):
        assert page.add.isVisible()
        add(goals_page, words)
    assert not page.add.isVisible()
    assert page.enough.isVisible()
    page.end_buttons[1].click()  # type: ignore[attr-defined]
    goals_page.settle()
    assert page.add.isVisible()
    assert len(page.ratings) == 2


def test_nothing_is_saved_without_words(goals_page: WindowHarness) -> None:
    add(goals_page, "   ")
    assert goals_page.history().goals == ()


def test_goals_stand_first_and_the_field_comes_when_it_is_wanted(
    goals_page: WindowHarness,
) -> None:
    page = goals_page.window.progress.goals
    assert page.words.isVisible()
    add(goals_page, "A jacket")
    assert not page.words.isVisible()
    page.add.click()
    assert page.words.isVisible()
    assert page.words.hasFocus()
    assert page.ratings[0].mapTo(page, QPoint()).y() < page.words.mapTo(page, QPoint()).y()


def test_it_says_when_to_rate_again(goals_page: WindowHarness) -> None:
    who = goals_page.history().person
    goal = sample.goal(who)
    goals_page.store.goals.save(goal)
    day = TODAY - dt.timedelta(days=3)
    goals_page.store.goals.save_rating(sample.goal_rating(who, day=day, rating=5))
    goals_page.window.progress.show_goals()
    goals_page.settle()
    said = texts(goals_page.window.progress.goals)
    assert "5 of 10 on 22 Nov 2026. Next rating from 20 Dec 2026 on." in said


def test_every_field_has_a_name_and_escape_leads_back(
    goals_page: WindowHarness, press: Callable[..., None]
) -> None:
    page = goals_page.window.progress.goals
    add(goals_page, "A jacket")
    fields = [*page.findChildren(QAbstractButton), *page.findChildren(QLineEdit)]
    assert [field for field in fields if not field.accessibleName()] == []
    assert "A jacket, 4 of 10" in {field.accessibleName() for field in fields}
    press(Qt.Key.Key_Escape)
    assert not page.isVisible()


@pytest.mark.parametrize(("percent", "named"), [(100, 1), (200, 0)])
def test_a_drawing_stands_beside_the_goals_while_they_leave_it_room(
    goals_page: WindowHarness, percent: int, named: int
) -> None:
    page = goals_page.window.progress.goals
    goals_page.services.appearance.choose(percent=percent)
    for words in ("A jacket", "The top shelf"):
        beside = len(page.ratings) <= named
        assert page._drawn.isVisible() is beside
        add(goals_page, words)
    assert not page._drawn.isVisible()
