"""Live page: one sentence, one number and the camera's picture while an arm is measured."""

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QWidget

from gui.drawing.shown_movements import facing_angle_deg
from gui.pages.measuring.hold_ring import HoldRing
from gui.pages.measuring.trial_row import TrialRow
from gui.protocol.plan import Attempt, AttemptState, SessionStep
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.text.session_wording import frame_phrase
from gui.text.wording import advice_words, range_words, task_title, tr
from gui.widgets.big_number import BigNumber
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.fixed_size_stack import FixedSizeStack
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.measurement_band import BandContent, MeasurementBand
from gui.widgets.position_figure import PositionView, ViewPlan
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label
from gui.widgets.video_view import VideoView
from measure.domain.movements import MOVEMENTS, Unit
from measure.live.events import LiveFrame, Phase

#: Phases in which the drawn position helps more than a number.
_SHOW_POSITION = (
    Phase.OPENING,
    Phase.SEARCHING_FOR_PERSON,
    Phase.WAIT_NEUTRAL,
    Phase.PAUSED,
    Phase.TROUBLE,
)


#: Places in the stack at the right.
_POSITION, _NUMBER, _REFUSAL = range(3)


def _refinement_words(attempt: Attempt, unit: Unit) -> str:
    """Return what kind of number stands above: refined, being refined, or practice."""
    trial = attempt.trial
    if attempt.state is AttemptState.PRACTICE:
        return tr("practice, not counted")
    if trial is None or trial.low is None or trial.high is None:
        return tr("calculating")
    return tr("settled: {range}").format(range=range_words(trial.low, trial.high, unit))


class LivePage(QWidget):
    """Shows a :class:`MeasurementSession` while it measures."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._measuring: MeasurementSession | None = None
        self.sentence = FittedSentence(appearance)
        self.video = VideoView(appearance)
        self.figure = PositionView(appearance)
        self.plan = ViewPlan(appearance)
        self.number = BigNumber(appearance)
        self.ring = HoldRing(appearance)
        self.refusal = MeasurementBand(appearance, least_share=3 / 80)
        self.title = label("", "quiet")
        self.quality = label("", "lead")
        self.trials = TrialRow(appearance)
        self.pause = button(tr("Pause"), key=tr("Space"))
        self.here = button(tr("Measure this position"), key=tr("H"))
        self.discard = button(tr("Discard the last"), key=tr("Backspace"))
        self.stop = button(tr("Stop and keep"), key=tr("Escape"))
        self.retry = button(tr("Try again"), "main", key=tr("R"))
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        position = widget_with(row((self.figure, 5), (self.plan, 2)), "page")
        number = widget_with(column(1, (self.number, 6), 1), "page")
        refusal = widget_with(column(1, self.refusal, 1), "page")
        self._right = FixedSizeStack([position, number, scrollable(refusal, wide=True)])
        where = column(1, self.title, self.quality, 1)
        state = row(self.ring, (where, 1), spacing=gap(2))
        right = column((self._right, 1), state)
        middle = row((self.video, 57), (right, 43), spacing=gap(3))
        seen = widget_with(column((middle, 1), self.trials, spacing=gap(1)))
        column(
            self.sentence,
            (scrollable(seen, wide=True), 1),
            ButtonRow([self.pause, self.here, self.discard, self.stop, self.retry]),
            NoticeBar(),
            on=self,
            margins=(24, 8, 24, 8),
            spacing=gap(1),
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
        holding = frame.phase in (Phase.HOLD, Phase.RETURN)
        self.ring.show_hold(frame.hold_share if holding else 0.0, self._trial_number())

    @Slot()
    def refresh(self) -> None:
        """Show where the guide stands."""
        measuring = self._measuring
        if measuring is None:
            return
        guide, task = measuring.guide, measuring.guide.task
        self.title.setText(task_title(task.movement, task.side))
        self.sentence.say(measuring.sentence)
        self.video.measure_arm(task.movement, task.side)
        self.figure.show_movement(task.movement, task.side, mirrored=self._mirrored)
        self.plan.show_turn(
            facing_angle_deg(task.movement, task.side), task.side, mirrored=self._mirrored
        )
        self.trials.show_guide(guide)
        self.ring.show_hold(self.ring.share, self._trial_number())
        self.pause.say(tr("Go on") if guide.paused else tr("Pause"))
        self.here.setEnabled(not guide.paused and measuring.trouble is None)
        self.discard.setEnabled(guide.can_discard)
        if why := measuring.why_no_picture:
            self.video.show_empty(why)
        self.retry.setVisible(measuring.trouble is not None)

    def _trial_number(self) -> str:
        guide = self._measuring.guide if self._measuring else None
        if guide is None:
            return ""
        if guide.practice_left:
            return tr("try")
        return f"{min(guide.counted + 1, guide.task.trials)}/{guide.task.trials}"

    def _show_value(self, measuring: MeasurementSession, frame: LiveFrame) -> None:
        """Show the guide while moving, then the captured trial on its way to a reading."""
        task = measuring.guide.task
        unit = MOVEMENTS[task.movement].unit
        attempt = measuring.guide.attempts[-1] if measuring.guide.attempts else None
        waiting = measuring.trouble is not None or measuring.guide.paused
        if frame.phase in _SHOW_POSITION or waiting:
            self._right.set_current_index(_POSITION)
            self.quality.setText("" if waiting else frame_phrase(frame))
        elif frame.phase not in (Phase.REST, Phase.REFINING, Phase.DONE) or attempt is None:
            self._right.set_current_index(_NUMBER)
            self.number.show_value(frame.value, unit)
            self.quality.setText(tr("rough value; {words}").format(words=frame_phrase(frame)))
        elif attempt.state is AttemptState.REFUSED and attempt.trial is not None:
            self._right.set_current_index(_REFUSAL)
            advice = advice_words(attempt.trial.refused_for)
            self.refusal.show_reading(task.movement, BandContent(words=advice))
            self.quality.setText("")
        else:
            self._right.set_current_index(_NUMBER)
            trial = attempt.trial
            value = attempt.guide_value if trial is None else trial.value
            scored = attempt.state is AttemptState.SCORED
            self.number.show_value(value, unit, final=scored)
            self.quality.setText(_refinement_words(attempt, unit))

    def keep_focus(self) -> None:
        """Put the keyboard where Space means pause."""
        self.pause.setFocus(Qt.FocusReason.OtherFocusReason)
