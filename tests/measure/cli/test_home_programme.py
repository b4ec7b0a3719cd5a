"""`thawline plan` and `thawline events`, as somebody types them."""

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import ComparedWithLast, ExerciseLog, PlannedExercise
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import OFFERED_EVENTS, EventKind
from measure.storage.store import Store
from measure.system.clock import Timestamp
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


def logs() -> list[ExerciseLog]:
    with Store.open() as store:
        return store.exercises_done(ROSA.id)


def test_a_plan_is_set_logged_shown_and_ended(capsys: pytest.CaptureFixture[str]) -> None:
    chosen = ("pendulum:20x0:3", "wall-walk:10x15:2:both", "--pain-limit", "4", "--by", "physio")
    assert main(["plan", "rosa", "set", *chosen, "--note", "pendulum: Small circles."]) == 0
    assert main(["plan", "rosa", "done", "pendulum"]) == 0
    with Store.open() as store:
        (plan,) = store.plans(ROSA.id)
    assert plan.exercises == (
        PlannedExercise(
            exercise=Exercise(listed=ListedExercise.PENDULUM),
            repetitions=20,
            hold_s=0,
            times_a_day=3,
            sides=ROSA.affected,
            note="Small circles.",
        ),
        PlannedExercise(
            exercise=Exercise(listed=ListedExercise.WALL_WALK),
            repetitions=10,
            hold_s=15,
            times_a_day=2,
            sides=(Side.LEFT, Side.RIGHT),
        ),
    )
    assert (plan.first_day, plan.pain_limit, plan.chosen_by) == (today(), 4, "physio")
    assert plan.review is None
    (log,) = logs()
    assert log.exercise == Exercise(listed=ListedExercise.PENDULUM)
    assert (log.pain, log.compared, log.repetitions) == (None, None, None)
    capsys.readouterr()
    assert main(["plan", "rosa"]) == 0
    shown = capsys.readouterr().out
    assert "stop at pain 4 of 10. Chosen by: physio." in shown
    assert "Wall walk  10 repetitions, held for 15 s, 2 times a day, both sides" in shown
    assert "20 repetitions, 3 times a day, left" in shown
    assert "Small circles." in shown
    week = [line.split() for line in shown.splitlines()][-1]
    assert week[1:] == ["5", "1"]
    assert main(["plan", "rosa", "end"]) == 0
    capsys.readouterr()
    assert main(["plan", "rosa"]) == 0
    assert "There is no exercise plan for today." in capsys.readouterr().out


def test_an_exercise_of_the_clinicians_own(capsys: pytest.CaptureFixture[str]) -> None:
    review = today() + dt.timedelta(days=28)
    chosen = ("Door  lean:5x20:2", "--own", "Door lean: Lean in a doorway: slowly.")
    asked = ("--pain-limit", "3", "--review", review.isoformat())
    assert main(["plan", "Rosa", "set", *chosen, *asked]) == 0
    assert f"Review on {review.isoformat()}." in capsys.readouterr().out
    with Store.open() as store:
        (plan,) = store.plans(ROSA.id)
    (planned,) = plan.exercises
    assert planned.exercise == Exercise(own_name="Door lean")
    assert planned.note == "Lean in a doorway: slowly."
    assert plan.review == review
    assert main(["plan", "Rosa", "done", "door lean", "--repetitions", "3"]) == 0
    assert "Saved: Door lean, " in capsys.readouterr().out
    assert [log.exercise for log in logs()] == [planned.exercise]
    assert main(["plan", "Rosa"]) == 0
    assert capsys.readouterr().out.splitlines()[-1].split()[1:] == ["2", "1", "1"]
    assert main(["plan", "Rosa", "done", "window lean"]) == 2
    assert "pendulum" in (error := capsys.readouterr().err)
    assert error.rstrip().endswith("Door lean.")


def test_how_an_exercise_went(capsys: pytest.CaptureFixture[str]) -> None:
    went = ("--pain", "3", "--harder", "--repetitions", "6")
    assert main(["plan", "Rosa", "done", "towel", *went]) == 0
    (log,) = logs()
    assert (log.pain, log.compared, log.repetitions) == (3, ComparedWithLast.HARDER, 6)
    assert "6 repetitions, pain 3 of 10, harder" in capsys.readouterr().out
    for wrong, words in (
        (("--pain", "11"), "from 0 (none) to 10"),
        (("--easier", "--same"), "not allowed with"),
        (("--repetitions", "51"), "must be from 0 to 50"),
    ):
        assert main(["plan", "Rosa", "done", "towel", *wrong]) == 2
        assert words in capsys.readouterr().err
    assert logs() == [log]


def test_whether_it_settled_by_the_next_morning(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "Rosa", "done", "towel"]) == 0
    assert main(["plan", "Rosa", "settled", "yes"]) == 2
    assert "Rosa has no exercises logged before today." in capsys.readouterr().err
    with Store.open() as store:
        before = store.now().utc - dt.timedelta(days=2)
        store.save_exercise_log(replace(logs()[0], id="a" * 32, done=Timestamp(utc=before)))
    assert main(["plan", "Rosa", "settled", "yes"]) == 0
    assert main(["plan", "Rosa", "settled", "no"]) == 0
    with Store.open() as store:
        (morning,) = store.next_mornings(ROSA.id)
    assert (morning.day, morning.eased) == (before.date(), False)
    capsys.readouterr()
    assert main(["plan", "Rosa"]) == 0
    assert f"The morning after {before.date().isoformat()}: not settled." in capsys.readouterr().out


def test_a_plan_can_begin_later(capsys: pytest.CaptureFixture[str]) -> None:
    later = today() + dt.timedelta(days=7)
    chosen = ("towel:8x20:1", "--pain-limit", "3", "--from", later.isoformat())
    assert main(["plan", "Rosa", "set", *chosen]) == 0
    with Store.open() as store:
        assert [each.first_day for each in store.plans(ROSA.id)] == [later]
    capsys.readouterr()
    assert main(["plan", "Rosa"]) == 0
    assert "There is no exercise plan for today." in capsys.readouterr().out


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (("pendulum:20x0:3",), "--pain-limit"),
        (("dancing:5x5:3", "--pain-limit", "4"), "'dancing' is not a listed exercise"),
        (("pendulum:20x0:3", "--pain-limit", "0"), "To stop at the first pain, give 1"),
        (("pendulum:often", "--pain-limit", "4"), "is not written like wall-walk:10x15:3"),
        (("wall-walk:2:15", "--pain-limit", "4"), "The repetitions come first"),
        (("pendulum:5x0:3:up", "--pain-limit", "4"), "is not written like"),
        (("pendulum:5x0:13", "--pain-limit", "4"), "1 to 12 times a day"),
        (("pendulum:51x0:3", "--pain-limit", "4"), "1 to 50 repetitions"),
        (("wall-walk:5x600:2", "--pain-limit", "4"), "0 to 120 seconds"),
        (("towel:5x0:2", "towel:5x0:3", "--pain-limit", "4"), "only once"),
        (("pendulum:5x0:2", "--pain-limit", "11"), "from 0 (none) to 10"),
        (("towel:5x0:2", "--pain-limit", "4", "--from", "31.2.2026"), "is not a date like"),
        (("towel:5x0:2", "--pain-limit", "4", "--review", "2020-01-01"), "before the first day"),
        (("towel:5x0:2", "--pain-limit", "4", "--own", "Door lean"), "NAME: SENTENCE"),
        (("towel:5x0:2", "--pain-limit", "4", "--own", "Door: Lean."), "not one of the exercises"),
        ((f"{'x' * 61}:5x0:2", "--pain-limit", "4"), "can have 60 characters"),
    ],
)
def test_a_wrong_plan_is_refused_in_words(
    arguments: tuple[str, ...], words: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["plan", "Rosa", "set", *arguments]) == 2
    assert words in capsys.readouterr().err
    with Store.open() as store:
        assert store.plans(ROSA.id) == []


def test_a_plan_that_follows_is_listed_as_an_event(capsys: pytest.CaptureFixture[str]) -> None:
    for day, dose in (("2026-03-01", "5x0:1"), ("2026-03-15", "8x0:1")):
        assert (
            main(["plan", "Rosa", "set", f"towel:{dose}", "--pain-limit", "4", "--from", day]) == 0
        )
    assert main(["events", "Rosa", "add", "therapy-began", "--day", "2026-03-10"]) == 0
    capsys.readouterr()
    assert main(["events", "Rosa"]) == 0
    rows = [line.split() for line in capsys.readouterr().out.splitlines()[-2:]]
    assert rows == [["1", "2026-03-10", "therapy-began"], ["2026-03-15", "programme-changed"]]


def test_events_are_added_listed_and_deleted(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["events", "Rosa"]) == 0
    assert "No events yet for Rosa." in capsys.readouterr().out
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
        (("add", "therapy"), "invalid choice"),
        (("add", "flare", "--day", "yesterday"), "is not a date like 2026-03-14"),
        (("add", "flare", "--note", "x" * 4001), "A note can have 4000 characters"),
        (("delete", "1"), "Rosa has no event 1."),
        (("delete", "0"), "Rosa has no event 0."),
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


def test_the_help_names_every_exercise_and_event_kind(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["plan", "--help"]) == 0
    told = capsys.readouterr().out
    assert all(each.value in told for each in ListedExercise)
    assert main(["events", "--help"]) == 0
    told = capsys.readouterr().out
    assert all(each.value in told for each in OFFERED_EVENTS)


def test_the_same_exercises_again_are_the_same_plan(capsys: pytest.CaptureFixture[str]) -> None:
    chosen = ("plan", "rosa", "set", "towel:8x20:1", "--pain-limit", "3")
    assert main([*chosen, "--from", "2026-01-05", "--by", "physio"]) == 0
    assert main([*chosen, "--primary", "abduction"]) == 0
    with Store.open() as store:
        (plan,) = store.plans(ROSA.id)
    assert plan.first_day == dt.date(2026, 1, 5)
    assert plan.primary == (Movement.ABDUCTION,)
    assert main(["plan", "rosa", "set", "towel:9x20:1", "--pain-limit", "3"]) == 0
    with Store.open() as store:
        assert [plan.first_day for plan in store.plans(ROSA.id)] == [dt.date(2026, 1, 5), today()]
