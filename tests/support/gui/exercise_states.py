"""States of the exercises for the pictures: the programme, today, a round, how it went."""

from collections.abc import Iterator

from gui.app.window_pages import MainPage
from gui.protocol.exercise_round import RoundPhase
from measure.domain.exercises import ListedExercise
from measure.domain.records import EventKind as Happened
from tests.support.gui.stage import WindowHarness


def exercise_states(stage: WindowHarness) -> Iterator[str]:
    """Enter a programme, lead a round of it, and note an event."""
    progress, exercises = stage.window.progress, stage.window.exercises
    stage.window.go(MainPage.EXERCISES)
    stage.settle()
    yield "exercises-empty"
    exercises.show_programme()
    stage.settle()
    for listed in (ListedExercise.PENDULUM, ListedExercise.EXTERNAL_ROTATION):
        line = exercises.programme.lines[listed]
        line.wanted.setChecked(True)
        line.dose.repetitions.choose(10)
        line.dose.hold.choose(0 if listed is ListedExercise.PENDULUM else 15)
        line.dose.times.choose(2)
    exercises.programme.keep.click()
    yield "programme-lacking"
    exercises.programme.pain_limit.choose(4)
    exercises.programme.keep.click()
    stage.settle()
    yield "exercises-today"
    yield from _round(stage)
    stage.window.show_events()
    stage.settle()
    progress.events.kind.choose(Happened.FLARE)
    progress.events.keep.click()
    stage.settle()
    yield "events"
    stage.window.messages.close_it.click()
    progress.show_curves()


def _round(stage: WindowHarness) -> Iterator[str]:
    """Play a round with a clock of its own."""
    exercises = stage.window.exercises
    exercises.today.start.click()
    stage.settle()
    yield "round-ready"
    stage.pass_until(RoundPhase.SWING)
    yield "round-swing"
    stage.pass_until(RoundPhase.MOVE)
    yield "round-move"
    stage.pass_until(RoundPhase.HOLD)
    stage.pass_seconds(3.0)
    yield "round-hold"
    stage.pass_until(RoundPhase.REST)
    yield "round-rest"
    exercises.rounds.round.pause.click()
    yield "round-paused"
    exercises.rounds.round.stop.click()
    exercises.rounds.hurt.pain.button(5).click()
    yield "round-hurts"
    exercises.rounds.hurt.stop.click()
    stage.settle()
    yield "round-rating"
    exercises.rounds.rating.keep.click()
    stage.settle()
    yield "exercises-logged"
