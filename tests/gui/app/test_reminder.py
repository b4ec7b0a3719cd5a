"""Reminders in the window: off until wanted, quiet, and never in the middle of something."""

import datetime as dt

from gui.app.reminder import Reminder
from gui.app.window_pages import MainPage
from tests.support.gui.stage import WindowHarness


class Hands:
    """A clock that is set by hand."""

    def __init__(self) -> None:
        self.time = dt.datetime(2026, 11, 25, 7, 50)

    def __call__(self) -> dt.datetime:
        return self.time


def test_it_is_off_until_it_is_wanted_and_reminds_once(stage: WindowHarness) -> None:
    settings, clock, shown = stage.services.settings, Hands(), list[str]()
    reminder = Reminder(settings, clock)
    reminder.due.connect(shown.append)
    settings.reminder_times = (dt.time(8), dt.time(9))
    clock.time = clock.time.replace(hour=8, minute=1)
    reminder.check()
    assert shown == []
    settings.reminders = True
    clock.time = clock.time.replace(hour=9)
    for _ in range(3):
        reminder.check()
    assert shown == ["09:00: the time you chose for your exercises."]


def test_it_is_chosen_on_the_page_of_the_exercises(stage: WindowHarness) -> None:
    stage.window.go(MainPage.EXERCISES)
    card, settings = stage.window.exercises.today.reminders, stage.services.settings
    assert not card.wanted.isChecked()
    card.wanted.click()
    card.times.setText("19:00, 8")
    card.times.textEdited.emit(card.times.text())
    assert "Enter times as" in card.hint.text()
    assert settings.reminder_times == ()
    card.times.setText("19:00, 8:30")
    card.times.textEdited.emit(card.times.text())
    assert settings.reminders
    assert settings.reminder_times == (dt.time(8, 30), dt.time(19))


def test_nobody_is_reminded_while_an_arm_is_measured_or_a_round_is_led(
    stage: WindowHarness,
) -> None:
    window = stage.window
    window.measure.measuring_changed.emit(True)
    window._remind("08:00")
    assert window.messages.text != "08:00"
    window.measure.measuring_changed.emit(False)
    window._remind("08:00")
    assert window.messages.text == "08:00"


def test_a_reminder_stays_until_something_is_begun(stage: WindowHarness) -> None:
    window = stage.window
    window._remind("08:00")
    assert window.messages.isVisible()
    assert window.messages.stays
    window.measure.measuring_changed.emit(True)
    assert not window.messages.isVisible()
    window.measure.measuring_changed.emit(False)
    # What else was said stays as it is.
    window._remind("08:00")
    window.messages.tell("Saved.")
    window.measure.measuring_changed.emit(True)
    assert "Saved." in window.messages.text
