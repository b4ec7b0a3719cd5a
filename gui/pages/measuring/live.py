"""Live page: one sentence, one number and the camera's picture while an arm is measured."""

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.reading_on_body import Reading
from gui.drawing.shown_movements import facing_angle_deg
from gui.pages.measuring.big_number import BigNumber
from gui.pages.measuring.fixed_size_stack import FixedSizeStack
from gui.pages.measuring.live_band import LiveBand
from gui.pages.measuring.live_buttons import LiveButtons
from gui.pages.measuring.trial_row import TrialRow
from gui.protocol.plan import Attempt, AttemptState, MovementTask, SessionStep
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.text.session_wording import reason_phrase
from gui.text.wording import advice_words, range_words, task_title, tr, value_words
from gui.widgets.buttons import button, give_role
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import card, column, row, widget_with
from gui.widgets.position_figure import PositionView, ViewPlan
from gui.widgets.reading_figure import ReadingFigure
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label
from gui.widgets.video_view import VideoView
from measure.domain.movements import MOVEMENTS, Unit
from measure.domain.reading_scale import exceeds_range
from measure.live.events import LiveFrame, Phase

#: Phases in which the drawn position helps more than a number.
_SHOW_POSITION = (
    Phase.OPENING,
    Phase.SEARCHING_FOR_PERSON,
    Phase.WAIT_NEUTRAL,
    Phase.PAUSED,
    Phase.TROUBLE,
)
#: Phases after a trial, in which its result is shown.
_SHOW_RESULT = (Phase.REST, Phase.REFINING, Phase.DONE)

#: Insets at which words and digits begin in one line with the scale, pixels. [technical]
_WORDS_IN_PX, _DIGITS_IN_PX = 3, 6

#: Text size up to which a heading stands above the picture. [technical]
_USUAL_PERCENT = 100

#: Places in the stacks at the right, at the left, and of the whole middle.
_POSITION, _NUMBER = range(2)
_CAMERA, _ON_BODY = range(2)
_PICTURE, _REFUSAL = range(2)


def _final_words(attempt: Attempt, unit: Unit) -> str:
    """Return what kind of number stands above: measured, final, or practice."""
    trial = attempt.trial
    if attempt.state is AttemptState.PRACTICE:
        return tr("practice")
    if trial is None or trial.low is None or trial.high is None:
        return tr("measured")
    if unit is not Unit.DEGREES:
        return tr("final, {range}").format(range=range_words(trial.low, trial.high, unit))
    low, high = (value_words(end, unit) for end in (trial.low, trial.high))
    return tr("final, {low} to {high}").format(low=low, high=high)


class LivePage(QWidget):
    """Shows a :class:`MeasurementSession` while it measures."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._measuring: MeasurementSession | None = None
        #: Who is measured.
        self.person_name = ""
        self._in_trouble = False
        #: The last value of the movement, and whether it was held: what stands on the way back.
        self._kept: tuple[float | None, bool] = (None, False)
        self.sentence = FittedSentence(appearance)
        #: What is measured, and whom.
        self.title = label("", "strong")
        self.video = VideoView(appearance, at_left=True)
        self.figure = PositionView(appearance)
        self.plan = ViewPlan(appearance)
        self.number = BigNumber(appearance, steady=True)
        self.kind = FittedSentence(appearance, lines=1, quiet=True)
        self.band = LiveBand(appearance)
        self.on_body = ReadingFigure(appearance)
        self.advice = FittedSentence(appearance)
        #: The movement as it counts, beside the advice after a refusal.
        self.example = PositionView(appearance)
        self.trials = TrialRow(appearance)
        self.hint = FittedSentence(appearance, lines=1, quiet=True)
        self.pause = button(tr("Pause"), key=tr("Space"))
        self.here = button(tr("Measure this position"), key=tr("H"))
        self.discard = button(tr("Delete last trial"), key=tr("Backspace"))
        self.stop = button(tr("Finish and save"), key=tr("Escape"))
        self.retry = button(tr("Try again"), "main", key=tr("R"))
        self.buttons = LiveButtons(
            appearance, [self.pause, self.here, self.discard, self.stop, self.retry]
        )
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        position = widget_with(row((self.figure, 5), (self.plan, 2)), "page")
        # The words begin where the digits and the scale do.
        kind, figures = (
            row(member, margins=(left, 0, 0, 0))
            for member, left in ((self.kind, _WORDS_IN_PX), (self.number, _DIGITS_IN_PX))
        )
        number = widget_with(column(1, figures, kind, self.band, 1, spacing=gap(0.5)), "page")
        self._right = FixedSizeStack([position, number])
        self._left = FixedSizeStack([self.video, self.on_body])
        left = column(self.title, (self._left, 1), self.trials, spacing=gap(0.5))
        picture = widget_with(row((left, 57), (self._right, 43), spacing=gap(3)), "page")
        refusal = card(row((self.example, 1), (self.advice, 2), spacing=gap(3)))
        self._middle = FixedSizeStack([picture, refusal])
        seen = widget_with(column((self._middle, 1), self.hint, spacing=gap(0.5)))
        column(
            self.sentence,
            (scrollable(seen, wide=True), 1),
            self.buttons,
            NoticeBar(wide=True),
            on=self,
            margins=(24, 8, 24, 4),
            spacing=gap(0.75),
        )

    def show_measuring(self, measuring: MeasurementSession, *, mirrored: bool) -> None:
        """Show this session from now on."""
        self.release()
        self._measuring, self._mirrored = measuring, mirrored
        self.video.set_mirrored(mirrored)
        measuring.framed.connect(self.take_frame)
        measuring.changed.connect(self.refresh)
        measuring.stepped.connect(self.refresh)
        measuring.said.connect(self.sentence.say)
        self.video.show_empty(tr("Opening the camera."))
        self.refresh()

    def release(self) -> None:
        """Let go of the session."""
        measuring = self._measuring
        if measuring is None:
            return
        measuring.framed.disconnect(self.take_frame)
        measuring.changed.disconnect(self.refresh)
        measuring.stepped.disconnect(self.refresh)
        measuring.said.disconnect(self.sentence.say)
        self._measuring = None

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        """Draw one frame: its picture, its landmarks, its value."""
        measuring = self._measuring
        if measuring is None or measuring.guide.step is not SessionStep.MEASURING:
            return
        if not measuring.why_no_picture:
            self.video.show_frame(frame)
        self._show_value(measuring, frame)
        self._show_hint(measuring, frame)

    @Slot()
    def refresh(self) -> None:
        """Show where the guide stands."""
        measuring = self._measuring
        if measuring is None:
            return
        guide, task = measuring.guide, measuring.guide.task
        title = task_title(task.movement, task.side)
        # Large type leaves less room for it above the picture.
        give_role(self.title, "title" if self._appearance.percent <= _USUAL_PERCENT else "strong")
        self.title.setText(f"{self.person_name}: {title}" if self.person_name else title)
        self.sentence.say(measuring.sentence)
        self.video.measure_arm(task.movement, task.side)
        for drawn in (self.figure, self.example):
            drawn.show_movement(task.movement, task.side, mirrored=self._mirrored)
        self.plan.show_turn(
            facing_angle_deg(task.movement, task.side), task.side, mirrored=self._mirrored
        )
        self.trials.show_guide(guide)
        self.pause.say(tr("Continue") if guide.paused else tr("Pause"))
        give_role(self.pause, "main" if guide.paused else "")
        self.discard.setEnabled(guide.can_discard)
        in_trouble = measuring.trouble is not None
        self.here.setEnabled(not guide.paused)
        for member in (self.pause, self.here, self.discard):
            member.setVisible(not in_trouble)
        self.retry.setVisible(in_trouble)
        if in_trouble is not self._in_trouble:
            self._in_trouble = in_trouble
            if self.isVisible():
                self.keep_focus()
        if measuring.why_no_picture:
            # The sentence says what is the matter; once is enough.
            self.video.show_empty("")
        self._show_hint(measuring, None)
        if in_trouble or guide.paused:
            self._show_position()

    def _show_hint(self, measuring: MeasurementSession, frame: LiveFrame | None) -> None:
        """Say what spoils the movement while it lasts, else how to pause from where one stands."""
        if measuring.trouble is not None:
            self.hint.say("")
        elif measuring.guide.paused:
            self.hint.say(tr("Raise your other hand to continue."))
        elif frame is not None and frame.phase in (Phase.MOVE, Phase.HOLD) and frame.reasons:
            self.hint.say(tr("Note: {what}.").format(what=reason_phrase(frame.reasons[0])))
        else:
            self.hint.say(tr("Raise your other hand to pause."))

    def _show_position(self) -> None:
        self._show(_CAMERA, _POSITION)

    def _show(self, left: int, right: int) -> None:
        """Show the picture or the reading on the body, and the position or the number."""
        self._middle.set_current_index(_PICTURE)
        self._left.set_current_index(left)
        self._right.set_current_index(right)

    def _show_value(self, measuring: MeasurementSession, frame: LiveFrame) -> None:
        """Show the guide while moving, then the captured trial on its way to a reading."""
        guide = measuring.guide
        attempt = guide.attempts[-1] if guide.attempts else None
        waiting = measuring.trouble is not None or guide.paused
        if frame.phase in _SHOW_POSITION or waiting:
            self._show_position()
        elif frame.phase not in _SHOW_RESULT or attempt is None:
            self._show_moving(guide.task, frame, practice=guide.practice_left > 0)
        elif attempt.state is AttemptState.REFUSED and attempt.trial is not None:
            self._middle.set_current_index(_REFUSAL)
            self.advice.say(advice_words(attempt.trial.refused_for[:1]))
        else:
            self._show_result(guide.task, attempt)

    def _show_moving(self, task: MovementTask, frame: LiveFrame, *, practice: bool) -> None:
        """Show the arm's value as a guide; on the way back what was held stays."""
        unit, movement = MOVEMENTS[task.movement].unit, task.movement
        self._show(_CAMERA, _NUMBER)
        if frame.phase is Phase.RETURN:
            value, held = self._kept
            self.number.show_value(value, unit, pale=True)
            self.kind.say(tr("measured") if held else tr("rough value"))
            self.band.show_measured(movement, value)
            return
        value = None if exceeds_range(movement, frame.value) else frame.value
        self._kept = value, frame.phase is Phase.HOLD
        self.number.show_value(value, unit)
        self.kind.say(tr("practice") if practice else tr("rough value"))
        if frame.phase is Phase.HOLD:
            self.band.show_hold(movement, value, frame.hold_share)
        else:
            self.band.show_moving(movement, value)

    def _show_result(self, task: MovementTask, attempt: Attempt) -> None:
        """Show a captured trial, pale until it is final."""
        unit, movement, trial = MOVEMENTS[task.movement].unit, task.movement, attempt.trial
        value = attempt.guide_value if trial is None else trial.value
        final = attempt.state is AttemptState.SCORED
        self.number.show_value(value, unit, final=final, pale=not final)
        self.kind.say(_final_words(attempt, unit))
        if final and trial is not None and trial.low is not None and trial.high is not None:
            self._show(_ON_BODY, _NUMBER)
            self.band.show_final(movement, value, (trial.low, trial.high))
            reading = Reading(
                movement=movement, side=task.side, value=value, low=trial.low, high=trial.high
            )
            self.on_body.show_reading(reading, mirrored=self._mirrored)
        else:
            self._show(_CAMERA, _NUMBER)
            self.band.show_measured(movement, value)

    def keep_focus(self) -> None:
        """Put the keyboard where Space means pause, or trying again where nothing can be paused."""
        wanted = self.retry if self._in_trouble else self.pause
        wanted.setFocus(Qt.FocusReason.OtherFocusReason)
