"""`thawline plan` and `thawline events`, as somebody types them."""

import datetime as dt
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.domain.landmarks import Side
from measure.domain.records import EventKind, PlannedStretch, Stretch
from measure.storage.store import Store
from tests.support.record_samples import person

ROSA = person()


@pytest.fixture(autouse=True)
def rosa(data_folder: Path) -> None:
    """Rosa, without sessions, in the store that the commands use."""
    with Store.open() as store:
        store.save_person(ROSA)


def today() -> dt.date:
    with Store.open() as store:
        return store.now().day


def test_a_plan_is_set_logged_shown_and_ended(capsys: pytest.CaptureFixture[str]) -> None:
    chosen = ("pendulum:3", "wall-walk:2:15", "--pain-limit", "4", "--by", "physiotherapist")
    assert main(["plan", "rosa", "set", *chosen]) == 0
    assert main(["plan", "rosa", "done", "pendulum"]) == 0
    with Store.open() as store:
        (plan,) = store.plans(ROSA.id)
        (log,) = store.stretches(ROSA.id)
    assert plan.stretches == (
        PlannedStretch(stretch=Stretch.PENDULUM, times_a_day=3, hold_s=0),
        PlannedStretch(stretch=Stretch.WALL_WALK, times_a_day=2, hold_s=15),
    )
    assert (plan.first_day, plan.pain_limit, plan.chosen_by) == (today(), 4, "physiotherapist")
    assert log.stretch is Stretch.PENDULUM
    capsys.readouterr()
    assert main(["plan", "rosa"]) == 0
    shown = capsys.readouterr().out
    assert "stop at pain 4 of 10. Chosen by: physiotherapist." in shown
    assert "Wall walk  2            15 s" in shown
    week = [line.split() for line in shown.splitlines()][-1]
    assert week[1:] == ["5", "1"]
    assert main(["plan", "rosa", "end"]) == 0
    capsys.readouterr()
    assert main(["plan", "rosa"]) == 0
    assert "There is no plan of stretches today." in capsys.readouterr().out


def test_a_plan_can_begin_later(capsys: pytest.CaptureFixture[str]) -> None:
    later = today() + dt.timedelta(days=7)
    chosen = ("towel:1:20", "--pain-limit", "3", "--from", later.isoformat())
    assert main(["plan", "Rosa", "set", *chosen]) == 0
    with Store.open() as store:
        assert [each.first_day for each in store.plans(ROSA.id)] == [later]
    capsys.readouterr()
    assert main(["plan", "Rosa"]) == 0
    assert "There is no plan of stretches today." in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("pendulum:3",), "--pain-limit"),
        (("dancing:3", "--pain-limit", "4"), "'dancing:3' is not written like wall-walk:2:15"),
        (("pendulum:often", "--pain-limit", "4"), "is not written like"),
        (("pendulum", "--pain-limit", "4"), "1 to 12 times a day"),
        (("pendulum:3:1:2", "--pain-limit", "4"), "is not written like"),
        (("pendulum:13", "--pain-limit", "4"), "1 to 12 times a day"),
        (("wall-walk:2:600", "--pain-limit", "4"), "0 to 120 seconds"),
        (("pendulum:2", "pendulum:3", "--pain-limit", "4"), "names each stretch once"),
        (("pendulum:2", "--pain-limit", "11"), "from 0 (none) to 10"),
        (("pendulum:2", "--pain-limit", "4", "--from", "31.2.2026"), "is no date like"),
    ],
)
def test_a_wrong_plan_is_refused_in_words(
    arguments: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["plan", "Rosa", "set", *arguments]) == 2
    assert words in capsys.readouterr().err
    with Store.open() as store:
        assert store.plans(ROSA.id) == []


def test_events_are_added_listed_and_deleted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["events", "Rosa"]) == 0
    assert "Nothing has been noted of Rosa." in capsys.readouterr().out
    injected = ("injection", "--day", "2026-09-16", "--side", "left", "--note", "as told")
    assert main(["events", "Rosa", "add", *injected]) == 0
    assert main(["events", "Rosa", "add", "camera-changed"]) == 0
    with Store.open() as store:
        first, second = store.events(ROSA.id)
    assert (first.day, first.kind) == (dt.date(2026, 9, 16), EventKind.INJECTION)
    assert (first.side, first.note) == (Side.LEFT, "as told")
    assert (second.day, second.kind, second.side) == (today(), EventKind.CAMERA_CHANGED, None)
    capsys.readouterr()
    assert main(["events", "Rosa"]) == 0
    assert "1       2026-09-16  injection       left  as told" in capsys.readouterr().out
    assert main(["events", "Rosa", "delete", "1"]) == 0
    with Store.open() as store:
        assert store.events(ROSA.id) == [second]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("add", "dancing"), "invalid choice"),
        (("add", "flare", "--day", "yesterday"), "is no date like 2026-03-14"),
        (("add", "flare", "--note", "x" * 4001), "A note can have 4000 characters"),
        (("delete", "1"), "There is no event 1 of Rosa."),
        (("delete", "0"), "There is no event 0 of Rosa."),
    ],
)
def test_a_wrong_event_is_refused_in_words(
    arguments: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["events", "Rosa", *arguments]) == 2
    assert words in capsys.readouterr().err
    with Store.open() as store:
        assert store.events(ROSA.id) == []


@pytest.mark.parametrize("command", ["plan", "events"])
def test_help_has_examples_and_exit_codes(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main([command, "--help"]) == 0
    told = capsys.readouterr().out
    assert "examples:" in told
    assert "exit codes:" in told


def test_the_help_names_every_stretch(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--help"]) == 0
    told = capsys.readouterr().out
    assert all(each.value in told for each in Stretch)
