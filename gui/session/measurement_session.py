"""A running session: brings together plan, engine, guidance and what is saved. No widgets."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from PySide6.QtCore import QObject, Signal, Slot

from gui.protocol.plan import MovementTask, NextAction, SessionMode, SessionPlan, SessionStep
from gui.protocol.red_flags import pain_requires_screening
from gui.session.audio_cues import AudioCues
from gui.session.engine_feed import EngineBridge
from gui.session.log import SessionRecorder
from gui.session.placement_check import PlacementMonitor
from gui.session.repository import PendingMeasurement
from gui.session.setup_messages import SetupMessages
from gui.session.spoken_guidance import SpokenGuidance
from gui.session.undo import Undoable, UndoList
from gui.text.session_wording import (
    live_sentence,
    next_sentence,
    not_still_sentence,
    pain_without_reading,
)
from gui.text.wording import tr
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import LimitingFactor
from measure.domain.session_facts import ClinicianValue
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, Source
from measure.system.clock import new_id


class MeasurementSession(QObject):
    """One session. Pages show it and call its slots; everything happens in the window's thread."""

    #: The guide moved on, or a trial, a trouble or a pause came or went.
    changed = Signal()
    framed = Signal(object)
    #: The sentence of the moment.
    said = Signal(str)
    #: The step is another one.
    stepped = Signal()

    def __init__(
        self,
        feed: EngineBridge,
        cues: AudioCues,
        log: SessionRecorder,
        guide: SessionPlan,
        mode: SessionMode,
        next_source: Callable[[], Source],
        parent: QObject | None = None,
        *,
        place: PlacementMonitor | None = None,
        undo: UndoList | None = None,
    ) -> None:
        super().__init__(parent)
        self.guide = guide
        self.mode = mode
        self.log = log
        self.sentence = ""
        #: Readings of earlier that day, to which those of the other side are compared.
        self.earlier: Mapping[tuple[Movement, Side], Measurement] = {}
        self.messages = SetupMessages(place, self)
        self._feed = feed
        self._next_source = next_source
        self._cues = cues
        self._guidance = SpokenGuidance(cues)
        self._frame: LiveFrame | None = None
        self._held: float | None = None
        self._key = new_id()
        self._undo = undo
        self._undoable: list[Undoable] = []
        feed.framed.connect(self._take_frame)
        feed.happened.connect(self._take_event)
        feed.left_over.connect(self._take_left_over)

    @property
    def trouble(self) -> SourceFault | None:
        """What keeps the movement from going on; a clip that has ended is none."""
        trouble = self._feed.trouble
        return None if trouble is SourceFault.CLIP_ENDED else trouble

    @property
    def why_no_picture(self) -> str:
        """What keeps pictures from coming; empty while they come."""
        return "" if self.trouble is None else self._feed.why_no_picture

    @property
    def asks_for_check(self) -> bool:
        """Whether the last answer about pain calls for the safety questions."""
        outcomes = self.guide.outcomes
        return bool(outcomes) and pain_requires_screening(outcomes[-1].pain, self._pain_before)

    @property
    def pain_rose_from(self) -> int | None:
        """The pain from which the last answer rose, where the rise alone calls for questions."""
        outcomes = self.guide.outcomes
        rose = self.asks_for_check and not pain_requires_screening(outcomes[-1].pain, None)
        return self._pain_before if rose else None

    @property
    def _pain_before(self) -> int | None:
        """What the last answer is compared with: the pain before the session.

        Where nobody said that, the least pain of the movements before it of the same arm: the
        other shoulder says nothing about this one.
        """
        if self.log.pain.rest is not None or not self.guide.outcomes:
            return self.log.pain.rest
        *earlier, last = self.guide.outcomes
        same_arm = (outcome for outcome in earlier if outcome.task.side is last.task.side)
        return min((said.pain for said in same_arm if said.pain is not None), default=None)

    # -- what people do -----------------------------------------------------------------------

    def begin(self) -> None:
        """Begin the task at hand."""
        task = self.guide.task
        self._key = new_id()
        self._frame = None
        self._guidance.begin_movement()
        source = self._next_source()
        engine = self._feed.open(source) if source.clip is None else self._feed.reopen(source)
        engine.choose(task.movement, task.side, task.trials, task.practice)
        self._speak()
        self.stepped.emit()

    @Slot()
    def toggle_pause(self) -> None:
        engine = self._feed.engine
        if self.guide.step is not SessionStep.MEASURING or engine is None:
            return
        if self.guide.paused:
            engine.resume()
        else:
            engine.pause()

    @Slot()
    def take_position(self) -> None:
        """Measure the position that is held now: the person says that it goes no farther."""
        engine = self._feed.engine
        if (
            self.guide.step is SessionStep.MEASURING
            and not self.guide.paused
            and engine is not None
        ):
            engine.take_position()

    @Slot()
    def discard_last(self) -> None:
        engine = self._feed.engine
        if self.guide.can_discard and engine is not None:
            engine.discard_last()

    @Slot()
    def stop_movement(self, *, hurts: bool = False) -> None:
        """Take no more trials of this movement and keep what there is.

        Parameters
        ----------
        hurts
            Whether the person stopped because of pain, which is then asked in any case, also if
            it is said while captured trials are still being refined.
        """
        ending = self.guide.is_ending
        if self.guide.step is not SessionStep.MEASURING or (ending and not hurts):
            return
        self.guide.end_movement(hurts=hurts)
        if not ending:
            self._finish_movement()
        else:
            self._speak()
            self.changed.emit()

    @Slot()
    def finish_here(self) -> None:
        """End the session in the middle of a movement, and keep what there is."""
        if self.guide.step is not SessionStep.MEASURING or self.guide.is_ending:
            return
        self.guide.finish_here()
        if self.guide.step is SessionStep.MEASURING:
            self._finish_movement()
        else:
            self._guidance.end_movement(self.guide.step)
            self.stepped.emit()

    def _finish_movement(self) -> None:
        """Let captured trials be refined, and say so at once: it may take seconds."""
        if self._feed.engine is not None:
            self._feed.engine.finish_movement()
        self._speak()
        self.changed.emit()

    def answer(
        self,
        pain: int | None,
        stopped_by: LimitingFactor | None,
        after: NextAction = NextAction.GO_ON,
    ) -> None:
        """Note pain and what ended the movement, beside the reading, and go on as wanted.

        The next movement needs no other word, unless this one hurt so much that questions follow.
        """
        guide = self.guide
        outcome = guide.answer(pain, stopped_by)
        if outcome.measurement is not None and (outcome.captured or outcome.measurement.reasons):
            self._keep(outcome.measurement, pain, stopped_by)
        elif pain is not None:
            self.log.add_to_note(pain_without_reading(outcome, pain))
        if after is NextAction.STOP:
            guide.end_session()
        if self.asks_for_check:
            self.stepped.emit()
        elif after is NextAction.AGAIN:
            self.again()
        elif guide.step is SessionStep.NEXT and guide.pain_at_limit is None:
            self.go_on()
        else:
            self._cues.say(next_sentence(guide))
            self.stepped.emit()

    def go_on(self) -> None:
        self.guide.go_on()
        self.begin()

    def again(self) -> None:
        self.guide.again()
        self.begin()

    def add(self, *tasks: MovementTask) -> None:
        """Begin tasks that were not planned."""
        self.guide.add(*tasks)
        self.begin()

    @Slot()
    def end_session(self) -> None:
        """Leave out what has not begun."""
        self.guide.end_session()
        self.stepped.emit()

    def finish(self, note: str, typed_in: Sequence[ClinicianValue] = ()) -> None:
        """Mark the session as finished; measurements left over are still kept."""
        self.log.finish(note, typed_in, clinic_visit=self.mode is SessionMode.CLINIC)
        self._cues.silence()
        self._feed.framed.disconnect(self._take_frame)
        self._feed.happened.disconnect(self._take_event)

    def abandon(self) -> None:
        """Go without saving anything more."""
        self.log.forget()
        self.finish("")

    @Slot()
    def retry(self) -> None:
        """Open the source anew after trouble; trials captured so far stay."""
        source = self._feed.source
        if source is not None:
            self._feed.reopen(source)
            self.changed.emit()

    # -- what the engine tells ----------------------------------------------------------------

    @Slot(object)
    def _take_frame(self, frame: LiveFrame) -> None:
        self._frame = frame
        self.messages.check_lens(self._feed.source, frame.full_size_px)
        if frame.phase is Phase.HOLD and frame.value is not None:
            self._held = frame.value
        measuring = self.guide.step is SessionStep.MEASURING
        self._guidance.follow_phase(frame.phase, measuring=measuring)
        self._speak()
        self.framed.emit(frame)

    @Slot(object)
    def _take_event(self, event: LiveEvent) -> None:
        step = self.guide.step
        if event.kind is LiveEventKind.NOT_STILL:
            self._answer(not_still_sentence())
            return
        if event.kind is LiveEventKind.TRIAL_CAPTURED and event.value is None:
            event = replace(event, value=self._held)
        self.guide.take(event)
        if event.trouble is SourceFault.CLIP_ENDED:
            self.stop_movement()
        if step is SessionStep.MEASURING:
            self._keep_progress(event)
            self._offer_undo(event.kind)
            if event.kind is LiveEventKind.MEASUREMENT_DONE and event.measurement is not None:
                self.messages.compare_place(self.guide.task, event.measurement, self.log.person_id)
            self._guidance.follow_event(event.kind)
        self._speak()
        self.changed.emit()
        if self.guide.step is not step:
            self._guidance.end_movement(self.guide.step)
            self.stepped.emit()

    @Slot(object)
    def _take_left_over(self, measurement: Measurement) -> None:
        """Keep what the captured trials made of a movement that was broken off."""
        task = self.guide.task
        same_arm = (measurement.movement, measurement.side) == (task.movement, task.side)
        if self.guide.step is SessionStep.MEASURING and same_arm:
            self._keep(measurement)

    def _keep_progress(self, event: LiveEvent) -> None:
        """Save after every trial, so that nothing captured hangs on what follows."""
        if event.kind is LiveEventKind.TRIAL_DISCARDED and event.measurement is None:
            self.log.drop(self._key)
        elif event.measurement is not None and event.measurement.trials:
            self._keep(event.measurement)

    def _offer_undo(self, kind: LiveEventKind) -> None:
        """Let a discarded trial be put back until its movement is done."""
        engine = self._feed.engine
        if self._undo is None or engine is None:
            return
        if kind is LiveEventKind.TRIAL_DISCARDED:
            words = tr("The last trial is deleted. You can undo this until the movement ends.")
            self._undoable.append(self._undo.offer(words, engine.restore_last))
        elif kind is LiveEventKind.MEASUREMENT_DONE:
            for entry in self._undoable:
                self._undo.withdraw(entry)
            self._undoable = []

    def _keep(
        self,
        measurement: Measurement,
        pain: int | None = None,
        stopped_by: LimitingFactor | None = None,
    ) -> None:
        self.log.keep(
            PendingMeasurement(
                key=self._key,
                measurement=measurement,
                conduct=self.log.conduct,
                pain_during=pain,
                stopped_by=stopped_by,
            )
        )

    def _answer(self, sentence: str) -> None:
        """Say a sentence that stands until the next one of the moment."""
        self._cues.say(sentence)
        self.said.emit(sentence)

    def _speak(self) -> None:
        if self.guide.step is not SessionStep.MEASURING:
            return
        if self._frame is None and self._feed.size_px is not None and self.trouble is None:
            return  # pictures come already; the next one tells what to do
        sentence = live_sentence(self.guide, self._frame, self.trouble)
        if sentence != self.sentence:
            self.sentence = sentence
            self._cues.say(sentence)
            self.said.emit(sentence)
