"""Reminders: which time is due, and what counts as a time."""

import datetime as dt

import pytest

from gui.protocol.reminders import reminder_due, times_in

EIGHT, SEVEN_PM = dt.time(8), dt.time(19)


def at(hour: int, minute: int = 0, day: int = 25) -> dt.datetime:
    return dt.datetime(2026, 11, day, hour, minute)


@pytest.mark.parametrize("text", ["8:00, 19:00", "19.00;08.00", "08:00 19:00 8:00"])
def test_times_are_read_in_the_usual_ways(text: str) -> None:
    assert times_in(text) == (EIGHT, SEVEN_PM)


@pytest.mark.parametrize("text", ["eight", "25:00", "8:60", "8", ",".join(["8:00", "9:0"])])
def test_what_is_no_time_is_refused(text: str) -> None:
    with pytest.raises(ValueError):
        times_in(text)
    assert times_in("") == ()


@pytest.mark.parametrize(
    ("since", "now", "due"),
    [
        (at(7, 59), at(8), EIGHT),
        (at(7), at(7, 59), None),
        (at(8), at(8, 1), None),  # told at eight already
        (at(7), at(8, 14), EIGHT),
        (at(7), at(11), None),  # the computer slept through it
        (at(7), at(19, 5), SEVEN_PM),
        (at(23, 50), at(0, 1, day=26), None),
    ],
)
def test_one_time_is_due_once(since: dt.datetime, now: dt.datetime, due: dt.time | None) -> None:
    assert reminder_due((EIGHT, SEVEN_PM), since, now) == due


def test_a_time_before_midnight_is_due_after_it() -> None:
    late = dt.time(23, 55)
    assert reminder_due((late,), at(23, 50), at(0, 1, day=26)) == late
