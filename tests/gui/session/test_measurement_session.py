"""A running session: engine, guide, cues and saving brought together, without any widget."""

from collections.abc import Iterator
from dataclasses import replace

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from gui.protocol.plan import (
    AttemptState,
    MovementTask,
    NextAction,
    SessionMode,
    SessionPlan,
    SessionStep,
    TaskResult,
)
from gui.session.audio_cues import AudioCues
from gui.session.engine_feed import EngineBridge
from gui.session.log import SessionRecorder
from gui.session.measurement_session import MeasurementSession
from gui.session.repository import SessionRepository
from gui.session.tones import Tone
from gui.session.undo import UndoList
from gui.text.session_wording import not_still_sentence, start_position_sentence
from gui.workers.worker_thread import BackgroundWorker
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import AssessmentCondition, MeasurementRecord, Pain
from measure.live.events import LiveEventKind, Phase, Source
from measure.storage.store import Store
from tests.support.gui.scripted_engine import ScriptedEngine

TASK = MovementTask(movement=Movement.FLEXION, side=Side.LEFT, trials=2, practice=1)


class HeardCues(AudioCues):
    """Cues that note what they would speak and sound."""

    def __init__(self) -> None:
        super().__init__(tones=True, speech=True)
        self.spoken: list[str] = []
        self.sounded: list[Tone] = []

    def say(self, text: str) -> None:
        self.spoken.append(text)

    def sound(self, tone: Tone) -> None:
        self.sounded.append(tone)


class Session:
    """A session of two tasks with everything around it."""

    def __init__(self) -> None:
        self.engine = ScriptedEngine()
        self.keeper = SessionRepository(Store.in_memory)
        self.person = self.keeper.add_person("Rowan", (Side.LEFT,))
        self.worker = BackgroundWorker("records")
        self.undo = UndoList(self.worker)
        self.cues = HeardCues()
        self.feed = EngineBridge(lambda: self.engine)
        log = SessionRecorder(
            self.keeper, self.worker, self.person.id, AssessmentCondition(), Pain(rest=1)
        )
        other = MovementTask(movement=Movement.ABDUCTION, side=Side.LEFT, trials=2, practice=0)
        self.measuring = MeasurementSession(
            self.feed,
            self.cues,
            log,
            SessionPlan([TASK, other]),
            SessionMode.HOME,
            lambda: Source(),
            undo=self.undo,
        )
        self.measuring.begin()
        self.feed.pull()

    def trial(self, value: float, refused_for: tuple[Reason, ...] = ()) -> None:
        """Capture and settle a trial."""
        self.engine.capture(value)
        self.feed.pull()
        self.engine.settle(refused_for)
        self.feed.pull()

    def records(self) -> tuple[MeasurementRecord, ...]:
        """Return what is saved by now."""
        saved: list[tuple[MeasurementRecord, ...]] = []
        store = self.keeper.store
        self.worker.run(lambda: store.history(self.person.id).measurements, saved.append)
        while not saved:
            self.worker.collect()
        return saved[0]


@pytest.fixture
def session(qapp: QApplication) -> Iterator[Session]:
    made = Session()
    yield made
    made.feed.close(2.0)
    made.worker.close(2.0)


def test_beginning_opens_the_source_and_chooses_the_movement(session: Session) -> None:
    assert session.engine.calls == ["start", "choose"]
    assert (session.engine.movement, session.engine.side) == (TASK.movement, TASK.side)
    assert session.cues.spoken[-1] == "Left side to the camera, arm hanging."


def test_every_settled_trial_is_saved_at_once_under_one_key(session: Session) -> None:
    session.trial(100.0)
    assert session.records() == ()
    session.trial(101.0)
    (first,) = session.records()
    assert first.measurement.value == 101.0
    session.trial(103.0)
    (second,) = session.records()
    assert second.id == first.id
    assert second.measurement.value == 102.0
    assert session.measuring.guide.step is SessionStep.PAIN
    session.measuring.answer(4, None)
    (third,) = session.records()
    assert (third.id, third.pain_during) == (first.id, 4)


def test_two_movements_are_saved_under_two_keys(session: Session) -> None:
    for value in (100.0, 101.0, 103.0):
        session.trial(value)
    session.measuring.answer(None, None)
    session.feed.pull()
    for value in (80.0, 82.0):
        session.trial(value)
    movements = [each.measurement.movement for each in session.records()]
    assert movements == [Movement.FLEXION, Movement.ABDUCTION]


def test_a_refused_trial_does_not_count(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0, (Reason.NO_HOLD,))
    assert session.measuring.guide.counted == 0
    assert session.measuring.sentence == "Not counted: not still for a second."
    assert session.cues.sounded[-1] is Tone.REFUSED
    (record,) = session.records()
    assert record.measurement.value is None
    assert record.measurement.trials[0].refused_for == (Reason.NO_HOLD,)


def test_a_discarded_trial_is_taken_back_from_the_store(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0)
    assert len(session.records()) == 1
    session.measuring.discard_last()
    session.feed.pull()
    assert session.records() == ()
    assert session.measuring.guide.counted == 0


def test_a_discarded_trial_is_put_back_until_the_movement_ends(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0)
    session.measuring.discard_last()
    session.feed.pull()
    assert session.records() == ()
    assert session.undo.next is not None
    session.undo.undo()
    session.records()
    session.feed.pull()
    assert session.measuring.guide.counted == 1
    (record,) = session.records()
    assert [each.value for each in record.measurement.trials] == [101.0]
    session.measuring.discard_last()
    session.feed.pull()
    session.measuring.stop_movement()
    session.feed.pull()
    assert session.undo.next is None


def test_there_is_nothing_to_discard_before_a_trial(session: Session) -> None:
    session.measuring.discard_last()
    assert "discard_last" not in session.engine.calls


def test_a_position_that_is_not_held_still_is_answered(session: Session) -> None:
    said: list[str] = []
    session.measuring.said.connect(said.append)
    session.measuring.take_position()
    session.engine.happen(LiveEventKind.NOT_STILL)
    session.feed.pull()
    assert said == [not_still_sentence()] == session.cues.spoken[-1:]
    assert session.measuring.guide.counted == 0


def test_pausing_by_key_and_by_the_raised_hand(session: Session) -> None:
    session.measuring.toggle_pause()
    session.feed.pull()
    assert session.measuring.guide.paused
    assert session.measuring.sentence == "Paused. Let the arm rest."
    session.measuring.toggle_pause()
    session.feed.pull()
    assert not session.measuring.guide.paused
    session.engine.happen(LiveEventKind.PAUSED)
    session.feed.pull()
    assert session.measuring.guide.paused
    assert session.engine.calls[-2:] == ["pause", "resume"]


def test_stopping_keeps_what_there_is(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0)
    session.measuring.stop_movement()
    session.feed.pull()
    assert session.measuring.guide.step is SessionStep.PAIN
    (record,) = session.records()
    assert record.measurement.value == 101.0


def test_trouble_is_said_and_goes_away(session: Session) -> None:
    session.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    session.feed.pull()
    assert session.measuring.trouble is SourceFault.CAMERA_UNPLUGGED
    assert "unplugged" in session.measuring.sentence
    session.engine.happen(LiveEventKind.RECOVERED)
    session.feed.pull()
    assert session.measuring.trouble is None


def test_trying_again_opens_the_source_anew_and_keeps_the_trials(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0)
    session.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_STUCK)
    session.feed.pull()
    session.measuring.retry()
    assert session.engine.calls[-1] == "start"
    assert session.measuring.trouble is None
    assert session.measuring.guide.counted == 1


def test_the_end_of_a_clip_ends_the_movement(session: Session) -> None:
    session.trial(100.0)
    session.trial(101.0)
    session.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED)
    session.feed.pull()
    session.feed.pull()
    assert session.measuring.guide.step is SessionStep.PAIN
    assert session.measuring.trouble is None


def test_leaving_in_the_middle_keeps_what_was_captured(session: Session) -> None:
    session.trial(100.0)
    session.engine.capture(102.0)
    session.feed.pull()
    session.feed.close(2.0)
    (record,) = session.records()
    assert record.measurement.value == 102.0
    assert session.engine.closed


def test_tones_mark_move_hold_and_capture(session: Session) -> None:
    session.engine.show(Phase.MOVE, 20.0)
    session.feed.pull()
    session.engine.show(Phase.HOLD, 90.0)
    session.feed.pull()
    session.engine.show(Phase.HOLD, 90.0)
    session.feed.pull()
    session.engine.capture(90.0)
    session.feed.pull()
    assert session.cues.sounded == [Tone.NEUTRAL, Tone.MOVE, Tone.HOLD, Tone.CAPTURED]


def test_spoken_cues_tell_when_to_stand_go_stay_and_come_back(
    session: Session,
) -> None:
    for phase in (
        *(
            Phase.OPENING,
            Phase.SEARCHING_FOR_PERSON,
            Phase.WAIT_NEUTRAL,
            Phase.SEARCHING_FOR_PERSON,
        ),
        *(Phase.WAIT_NEUTRAL, Phase.MOVE, Phase.HOLD, Phase.RETURN, Phase.REST, Phase.RETURN),
    ):
        session.engine.show(phase, 90.0)
        session.feed.pull()
    assert session.cues.sounded == [Tone.NEUTRAL, Tone.MOVE, Tone.HOLD, Tone.RETURN]


def test_the_end_of_a_movement_is_heard_and_what_comes_next_is_spoken(session: Session) -> None:
    for value in (100.0, 101.0, 103.0):
        session.trial(value)
    assert session.cues.sounded[-1] is Tone.DONE
    assert session.cues.spoken[-1] == "Done. Let the arm rest. How much did it hurt?"
    heard = len(session.cues.spoken)
    session.measuring.answer(2, None)
    session.feed.pull()
    assert session.cues.spoken[heard:] == [start_position_sentence(Movement.ABDUCTION, Side.LEFT)]


@pytest.mark.parametrize(
    ("pain", "after", "step", "movement"),
    [
        (2, NextAction.GO_ON, SessionStep.MEASURING, Movement.ABDUCTION),
        (2, NextAction.AGAIN, SessionStep.MEASURING, Movement.FLEXION),
        (2, NextAction.STOP, SessionStep.FINISHED, Movement.FLEXION),
        (7, NextAction.GO_ON, SessionStep.NEXT, Movement.FLEXION),
        (7, NextAction.AGAIN, SessionStep.NEXT, Movement.FLEXION),
        (7, NextAction.STOP, SessionStep.FINISHED, Movement.FLEXION),
    ],
)
def test_one_answer_is_enough_to_go_on_unless_it_hurt_much(
    session: Session, pain: int, after: NextAction, step: SessionStep, movement: Movement
) -> None:
    for value in (100.0, 101.0, 103.0):
        session.trial(value)
    session.measuring.answer(pain, None, after)
    session.feed.pull()
    guide = session.measuring.guide
    assert (guide.step, guide.task.movement) == (step, movement)
    assert session.engine.calls.count("choose") == (2 if step is SessionStep.MEASURING else 1)
    (record,) = session.records()
    assert record.pain_during == pain


def test_trouble_that_came_between_two_movements_is_said(session: Session) -> None:
    for value in (100.0, 101.0, 103.0):
        session.trial(value)
    session.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    session.feed.pull()
    session.measuring.answer(2, None)
    assert session.measuring.trouble is SourceFault.CAMERA_UNPLUGGED
    assert "unplugged" in session.measuring.sentence


def test_every_sentence_is_spoken_once(session: Session) -> None:
    for _ in range(5):
        session.engine.show(Phase.HOLD, 90.0)
        session.feed.pull()
    assert session.cues.spoken.count("Hold it there, gently.") == 1


@pytest.mark.parametrize(("pain", "asks"), [(2, False), (3, False), (4, True), (7, True)])
def test_much_or_rising_pain_asks_for_the_check(session: Session, pain: int, asks: bool) -> None:
    for value in (100.0, 101.0, 103.0):
        session.trial(value)
    session.measuring.answer(pain, None)
    assert session.measuring.asks_for_check is asks


@pytest.mark.parametrize(
    ("said", "rest", "asks", "rose_from"),
    [
        # The other arm says nothing about this one.
        ([(Side.RIGHT, 0), (Side.LEFT, 3)], None, False, None),
        ([(Side.RIGHT, 0), (Side.LEFT, 6)], None, False, None),
        # A rise within an arm counts, whatever the other did between, and from its least pain.
        ([(Side.LEFT, 0), (Side.LEFT, 3)], None, True, 0),
        ([(Side.LEFT, 1), (Side.RIGHT, 3), (Side.LEFT, 4)], None, True, 1),
        ([(Side.LEFT, 1), (Side.LEFT, 3), (Side.LEFT, 4)], None, True, 1),
        ([(Side.LEFT, None), (Side.LEFT, 2), (Side.RIGHT, 0), (Side.LEFT, 4)], None, False, None),
        # What was said before measuring counts first.
        ([(Side.LEFT, 1), (Side.LEFT, 4)], 2, False, None),
        ([(Side.RIGHT, 0), (Side.LEFT, 5)], 2, True, 2),
        # So much pain calls for them in any case.
        ([(Side.RIGHT, 0), (Side.LEFT, 7)], None, True, None),
        ([(Side.LEFT, 0), (Side.LEFT, 8)], None, True, None),
        ([(Side.LEFT, None)], None, False, None),
    ],
)
def test_pain_rises_within_an_arm(
    session: Session,
    monkeypatch: pytest.MonkeyPatch,
    said: list[tuple[Side, int | None]],
    rest: int | None,
    asks: bool,
    rose_from: int | None,
) -> None:
    outcomes = [TaskResult(task=replace(TASK, side=side), pain=pain) for side, pain in said]
    monkeypatch.setattr(session.measuring.guide, "_outcomes", outcomes)
    session.measuring.log.pain = Pain(rest=rest)
    measuring = session.measuring
    assert (measuring.asks_for_check, measuring.pain_rose_from) == (asks, rose_from)


def test_an_attempt_shows_first_the_guide_then_the_reading(session: Session) -> None:
    session.trial(100.0)
    session.engine.capture(102.0)
    session.feed.pull()
    attempt = session.measuring.guide.attempts[-1]
    assert (attempt.state, attempt.guide_value) == (AttemptState.REFINING, 102.0)


def test_the_newest_frame_wins_and_is_told_once(session: Session, qtbot: QtBot) -> None:
    frames: list[object] = []
    session.measuring.framed.connect(frames.append)
    for value in range(200):
        session.engine.show(Phase.MOVE, float(value % 4))
    session.feed.pull()
    session.feed.pull()
    assert [frame.value for frame in frames] == [3.0]  # type: ignore[attr-defined]


def test_after_letting_go_nothing_more_is_taken(session: Session) -> None:
    session.measuring.finish("")
    session.engine.capture(99.0)
    session.feed.pull()
    assert session.measuring.guide.attempts == ()
