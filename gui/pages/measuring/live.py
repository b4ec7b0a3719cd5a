"""Live page: one sentence, one number and the camera's picture while an arm is measured."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QApplication, QWidget

from gui.drawing.reading_on_body import Reading
from gui.pages.measuring.big_number import BigNumber
from gui.pages.measuring.live_band import HoldBar, LiveBand
from gui.pages.measuring.live_buttons import CautionLine, LiveButtons
from gui.pages.measuring.live_grid import (
    LiveGrid,
    PausePanel,
    PositionPanel,
    RefusalPanel,
    advice_card,
    ending_with_picture,
)
from gui.pages.measuring.trial_row import TrialRow
from gui.protocol.plan import (
    Attempt,
    AttemptState,
    MovementTask,
    SessionPlan,
    SessionStep,
    faces_away_from_screen,
)
from gui.session.measurement_session import MeasurementSession
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.text.session_wording import (
    change_of_arm,
    correction,
    expected_sentences,
    kind_words,
    position_seen_from_screen,
    reason_phrase,
    trouble_name,
)
from gui.text.wording import (
    advice_words,
    movement_name,
    notice,
    short_notice,
    task_title,
    tr,
)
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.camera_trouble import FAR, FAR_RIGHT, FAR_STEP, FAR_WRONG, CameraTrouble
from gui.widgets.figures.reading_figure import ReadingFigure
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.fixed_size_stack import FixedSizeStack
from gui.widgets.layouts import column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import ElidedLabel, tag
from gui.widgets.video_view import VideoView
from measure.domain.movements import MOVEMENTS
from measure.domain.reading_scale import exceeds_range
from measure.domain.reasons import Reason
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

#: Reasons that say that a trial would not count however it is done: no number is shown then.
_WRONG_POSITION = frozenset(
    {Reason.WRONG_VIEW, Reason.FACING_CAMERA, Reason.FAR_ARM, Reason.OUT_OF_PICTURE}
)
#: How long someone stands wrongly before the page says so in its largest words, seconds. [project]
_WRONG_POSITION_S = 1.0

#: Height of the smaller words that are read from afar, as a share of the page's. [technical]
_WORDS_SHARE = 1 / 26
_FAR_ROLES = ("tag", FAR, FAR_WRONG, FAR_RIGHT)
#: Height of the steps against a trouble: they stand alone. [technical]
_STEPS_SHARE = 1 / 19
#: Room for the sentence, in lines of its least type: one line may be larger. [technical]
_SENTENCE_LINES = 1.25
#: From this text size on what stands above the picture moves closer together. [technical]
_CLOSE_PERCENT = 150

#: Space above the sentence, between the lines and beneath the trials, and the width from which the
#: lines have it between them, pixels. [technical]
_ENDS_PX, _WIDE_PX = 12, 1200

#: Places in the stacks.
_CAMERA, _ON_BODY, _REFUSAL = range(3)
_POSITION, _NUMBER, _REASON, _PAUSE = range(4)
_GRID, _TROUBLE = range(2)


class LivePage(QWidget):
    """Shows a :class:`MeasurementSession` while it measures."""

    #: Digits or reasons are shown, which need the whole window.
    room_wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._measuring: MeasurementSession | None = None
        #: Who is measured.
        self.person_name = ""
        self._in_trouble = False
        #: Sizes of what is read from afar, and of steps against a trouble.
        self._sizes_px = 0, 0
        #: What the session says.
        self._said = ""
        #: The second sentence about how to stand where it is shown beside the picture.
        self._rest = ""
        #: What to change about how the person stands before a trial can count, and since when.
        self._to_correct = ""
        self._wrong_since_s: float | None = None
        #: That the other arm is to move now, before what is measured.
        self.change = tag()
        #: The last value of the movement, and whether it was held: what stands on the way back.
        self._kept: tuple[float | None, bool] = (None, False)
        self.sentence = FittedSentence(appearance, lines=_SENTENCE_LINES)
        #: What is measured, and whom.
        self.title = ElidedLabel(FAR)
        self.hold = HoldBar(appearance)
        self.video = VideoView(appearance, at_left=True)
        self.position = PositionPanel(appearance)
        self.number = BigNumber(appearance, steady=True)
        self.kind = FittedSentence(appearance, lines=1, quiet=True)
        self.band = LiveBand(appearance)
        self.on_body = ReadingFigure(appearance, from_afar=True)
        self.refusal = RefusalPanel(appearance)
        top = Qt.AlignmentFlag.AlignTop
        self.reason, self.rest = (
            FittedSentence(appearance, lines=1, plain=True, upright=top) for _ in range(2)
        )
        self.paused = PausePanel(appearance)
        self.trials = TrialRow(appearance)
        self.hint = FittedSentence(
            appearance, lines=1, quiet=True, upright=Qt.AlignmentFlag.AlignBottom
        )
        self.retry = button(tr("Try again"), "main", key=tr("R"))
        saved = tr("Trials measured so far are saved.")
        self.trouble = CameraTrouble(appearance, kept=saved)
        self.stop = button(tr("Finish and save"), key=tr("Escape"))
        self.hurts = button(tr("Stop: it hurts"), "main", key=tr("S"))
        self.discard = button(tr("Delete last trial"), "line-link", key=tr("Backspace"))
        self.caution = CautionLine(appearance, self.discard)
        self.here = button(tr("Measure this position"), key=tr("H"))
        self.pause = button(tr("Pause"), key=tr("Space"))
        self.buttons = LiveButtons(
            appearance,
            {
                self.stop: (tr("Finish and save"), tr("Finish")),
                self.here: (tr("Measure this position"),),
                self.pause: (tr("Pause"), tr("Continue")),
                self.hurts: (tr("Stop: it hurts"),),
            },
            self.retry,
        )
        self._lay_out()
        bind_keys(self, self.pause, "Space")
        bind_keys(self, self.here, "H")
        bind_keys(self, self.discard, "Backspace", "Delete")
        bind_keys(self, self.stop, "Escape")
        bind_keys(self, self.hurts, "S")
        bind_keys(self, self.retry, "R")
        appearance.changed.connect(self._size_words)

    def _lay_out(self) -> None:
        shown = column(self.number, self.kind, self.band, 1, spacing=GAP_PX // 2)
        number = widget_with(shown, "page")
        # What to do about a trial that is not counted stands on a card like the drawing's.
        advice = advice_card(self.reason, self.rest)
        panels = self.position, advice, self.paused
        position, reason, paused = map(ending_with_picture, panels)
        on_body = widget_with(column(self.on_body))
        self._left = FixedSizeStack([self.video, on_body, self.refusal])
        self._right = FixedSizeStack([position, number, reason, paused])
        beside = widget_with(column((self._right, 1), self.hint, spacing=GAP_PX))
        grid = LiveGrid(self._left, self.trials, beside)
        grid.divided.connect(self.trouble.divide)
        grid.divided.connect(self.buttons.divide)
        self._middle = FixedSizeStack([grid, self.trouble])
        named = row(self.change, (self.title, 1), spacing=2 * GAP_PX)
        side = MARGIN_PX
        self._top = column(self.sentence, named, self.hold, margins=(0, 0, side, 0))
        # The bar of the scrolled middle lies in the margin.
        self._area = scrollable(self._middle, wide=True)
        grid.show_through(self._area)
        middle = row(self._area, margins=(0, 0, side - BAR_PX, 0))
        self._shown = column(self._top, (middle, 1))
        self._foot = column(self.buttons, self.caution)
        column((self._shown, 1), separator(), self._foot, on=self, spacing=0)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._size_words()

    @Slot()
    def _size_words(self) -> None:
        """Give what is read from afar the size that the window's height asks for."""
        close = self._appearance.percent >= _CLOSE_PERCENT
        gap = GAP_PX // 2 if close else GAP_PX
        self._foot.setSpacing(gap)
        self._foot.setContentsMargins(MARGIN_PX, GAP_PX, MARGIN_PX, gap)
        ends = GAP_PX if close else _ENDS_PX
        wide = self.width() >= _WIDE_PX
        # With what a line has itself it is as much as beneath the bar.
        self._top.setSpacing(ends if wide else GAP_PX // 2)
        self._shown.setSpacing(2 * GAP_PX if wide else GAP_PX)
        self._shown.setContentsMargins(MARGIN_PX, ends, 0, ends)
        self._expect_words()
        self._speak()
        px = max(self._appearance.px(), round(self.height() * _WORDS_SHARE))
        steps = max(px, round(self.height() * _STEPS_SHARE))
        if (px, steps) != self._sizes_px:
            self._sizes_px = px, steps
            roles = ", ".join(f'QLabel[role="{role}"]' for role in _FAR_ROLES)
            self.setStyleSheet(
                f"{roles} {{ font-size: {px}px; }}"
                f'QLabel[role="{FAR_STEP}"] {{ font-size: {steps}px; }}'
            )
            self.position.pair.set_words_px(px)
            self.buttons.want_px(px)

    def show_measuring(self, measuring: MeasurementSession, *, mirrored: bool) -> None:
        """Show this session from now on."""
        self.release()
        self._measuring, self._mirrored = measuring, mirrored
        self._said = measuring.sentence
        self.video.set_mirrored(mirrored)
        measuring.framed.connect(self.take_frame)
        measuring.changed.connect(self.refresh)
        measuring.stepped.connect(self.refresh)
        measuring.said.connect(self._say)
        self.video.show_empty(tr("Opening the camera."))
        self._to_correct, self._wrong_since_s = "", None
        # Nothing of the person or the arm before is seen until this one's first frame.
        self._show_position()
        self.refresh()

    def release(self) -> None:
        """Let go of the session."""
        measuring = self._measuring
        if measuring is None:
            return
        measuring.framed.disconnect(self.take_frame)
        measuring.changed.disconnect(self.refresh)
        measuring.stepped.disconnect(self.refresh)
        measuring.said.disconnect(self._say)
        self._measuring = None

    @Slot(object)
    def take_frame(self, frame: LiveFrame) -> None:
        """Draw one frame: its picture, its landmarks, its value."""
        measuring = self._measuring
        if measuring is None or measuring.guide.step is not SessionStep.MEASURING:
            return
        if not measuring.why_no_picture:
            self.video.show_frame(frame)
        self._check_position(frame)
        self._show_value(measuring, frame)
        self._show_hint(measuring, frame)

    @Slot(str)
    def _say(self, words: str) -> None:
        """Take what the session says now."""
        self._said = words
        self._speak()

    def _expect_words(self) -> None:
        """Have room for all that is said in the course of the task."""
        if self._measuring is None:
            return
        guide = self._measuring.guide
        said = expected_sentences(guide)
        self.sentence.expect(tuple(self._divided(words)[0] for words in said))

    def _divided(self, words: str) -> tuple[str, str]:
        """Return what is said in the largest words, and what of it stands beside the picture.

        How else to stand goes there rather than make the words small; others have two lines then.
        """
        first, stop, rest = words.partition(". ")
        first, room = f"{first}{stop.rstrip()}", self.sentence.has_room_for
        aside = self._measuring and words == position_seen_from_screen(self._measuring.guide)
        if aside and not room([words], times=_SENTENCE_LINES) and self.hint.has_room_for([rest]):
            return first, rest
        broken = not room([words]) and room([first, rest])
        return f"{first}\n{rest}" if broken and stop else words, ""

    def _speak(self) -> None:
        """Show what to do in the largest words, or what a trial lacked."""
        self._rest = ""
        if self._measuring is not None and self._measuring.trouble is not None:
            shown = trouble_name(self._measuring.trouble)
        elif self._to_correct:
            shown = self._to_correct
        else:
            shown, self._rest = self._divided(self._said.removeprefix(self.change.text()).lstrip())
        stop = tr("Stop before it becomes painful.")
        # What to do leads; when to stop is as large, in the regular weight.
        self.sentence.say(shown, lighter=stop)
        self.caution.words.setText(short_notice() if stop in shown else notice())

    def _check_position(self, frame: LiveFrame) -> None:
        """Say in the largest words what to change where no trial can count as the person stands."""
        moving = frame.phase in (Phase.MOVE, Phase.HOLD)
        reason = next(iter(frame.reasons), None) if moving else None
        if reason not in _WRONG_POSITION:
            self._wrong_since_s = None
        elif self._wrong_since_s is None:
            self._wrong_since_s = frame.time_s
        since = self._wrong_since_s
        lasts = since is not None and frame.time_s - since >= _WRONG_POSITION_S
        advice = correction(reason) if lasts and reason is not None else ""
        if advice != self._to_correct:
            self._to_correct = advice
            self._speak()

    @Slot()
    def refresh(self) -> None:
        """Show where the guide stands."""
        measuring = self._measuring
        if measuring is None:
            return
        guide, task = measuring.guide, measuring.guide.task
        self._show_title(guide)
        self._expect_words()
        self._say(measuring.sentence)
        self.video.measure_arm(task.movement, task.side)
        self.position.pair.show_movement(task.movement, task.side, is_mirrored=self._mirrored)
        self.trials.show_guide(guide)
        self._show_ways(measuring)
        if measuring.why_no_picture:
            # The sentence says what is the matter; once is enough.
            self.video.show_empty("")
        self._show_hint(measuring, None)
        if measuring.trouble is not None or guide.paused:
            self._show_position(paused=guide.paused)
        self._show_trouble(measuring)

    def _show_title(self, guide: SessionPlan) -> None:
        """Say whose movement it is, after a word about a change of arm until a trial is taken."""
        task = guide.task
        change = "" if guide.attempts else change_of_arm(guide)
        self.change.setText(change)
        self.change.setVisible(change != "")
        whole = task_title(task.movement, task.side)
        title = movement_name(task.movement) if change else whole
        self.title.say(f"{self.person_name}: {title}" if self.person_name else title)

    def _show_ways(self, measuring: MeasurementSession) -> None:
        """Offer what can be done now."""
        guide, in_trouble = measuring.guide, measuring.trouble is not None
        self.pause.say(tr("Continue") if guide.paused else tr("Pause"))
        give_role(self.pause, "main" if guide.paused else "")
        give_role(self.hurts, "" if guide.paused else "main")
        # Stopping for pain works at every moment, but never by a second press of Enter.
        self.hurts.setEnabled(guide.can_stop_for_pain)
        others = (self.stop, self.here, self.pause, self.discard)
        if guide.is_ending and QApplication.focusWidget() in others:
            self._area.setFocus()
        for member in (self.stop, self.pause):
            member.setEnabled(not guide.is_ending)
        self.discard.setEnabled(guide.can_discard and not guide.is_ending)
        self.here.setEnabled(not (guide.paused or guide.is_ending))
        self.retry.setVisible(in_trouble)
        for member in (self.here, self.pause, self.hurts):
            member.setVisible(not in_trouble)
        self.discard.setVisible(guide.can_discard and not in_trouble)

    def _show_trouble(self, measuring: MeasurementSession) -> None:
        """Show in place of all else what keeps the movement from going on."""
        trouble = measuring.trouble
        if trouble is not None:
            self.trouble.say(trouble)
        self._middle.set_current_index(_GRID if trouble is None else _TROUBLE)
        if (trouble is not None) is not self._in_trouble:
            self._in_trouble = trouble is not None
            if self.isVisible():
                self.keep_focus()

    def _show_hint(self, measuring: MeasurementSession, frame: LiveFrame | None) -> None:
        """Say what spoils the movement while it lasts, else how to pause from where one stands."""
        guide = measuring.guide
        if guide.paused:
            self.hint.say(tr("Other hand up: continue."))
        elif self._rest:
            self.hint.say(self._rest, strong=True)
        elif self._to_correct:
            self.hint.say(tr("Other hand up: pause."))
        elif frame is not None and frame.phase in (Phase.MOVE, Phase.HOLD) and frame.reasons:
            note = tr("Note: {what}.").format(what=reason_phrase(frame.reasons[0]))
            self.hint.say(correction(frame.reasons[0]) or note, marked=True)
        elif faces_away_from_screen(guide.task.movement) and not guide.attempts:
            self.hint.say(tr("Listen for the voice."), strong=True)
        else:
            self.hint.say(tr("Other hand up: pause."))

    def _show_position(self, *, paused: bool = False) -> None:
        self._show(_CAMERA, _PAUSE if paused else _POSITION)

    def _show(self, left: int, right: int) -> None:
        """Show something in place of the picture, and something beside it."""
        self.hold.show_share(None)
        changed = (left, right) != (self._left.index, self._right.index)
        self._left.set_current_index(left)
        self._right.set_current_index(right)
        if right != _REASON:
            # Words that are not seen have no width, and would ask for room by it.
            self.reason.say("")
            self.rest.say("")
        if changed and right != _POSITION:
            self.room_wanted.emit()

    def _show_value(self, measuring: MeasurementSession, frame: LiveFrame) -> None:
        """Show the guide while moving, then the captured trial on its way to a reading."""
        guide = measuring.guide
        attempt = guide.attempts[-1] if guide.attempts else None
        waiting = measuring.trouble is not None or guide.paused
        if frame.phase in _SHOW_POSITION or waiting:
            self._show_position(paused=guide.paused)
            self.position.plan.show_step(next(iter(frame.setup_hints), None))
        elif frame.phase not in _SHOW_RESULT or attempt is None:
            self._show_moving(guide.task, frame, practice=guide.practice_left > 0)
        elif attempt.state is AttemptState.REFUSED and attempt.trial is not None:
            self._show_refusal(guide.task, attempt.trial.refused_for)
        else:
            self._show_result(guide.task, attempt)

    def _show_refusal(self, task: MovementTask, reasons: Sequence[Reason]) -> None:
        """Show what kept a trial from being counted, and what to do about it."""
        self._show(_REFUSAL, _REASON)
        self.reason.say(correction(reasons[0]) or advice_words(reasons[:1]), strong=True)
        self.rest.say(tr("Rest, then begin again."))
        self.refusal.show_refusal(task.movement, task.side, reasons[0], is_mirrored=self._mirrored)

    def _show_moving(self, task: MovementTask, frame: LiveFrame, *, practice: bool) -> None:
        """Show the arm's value as a guide; on the way back what was held stays."""
        unit, movement = MOVEMENTS[task.movement].unit, task.movement
        if self._to_correct:
            self._show_position()
            return
        self._show(_CAMERA, _NUMBER)
        if frame.phase is Phase.RETURN:
            value, held = self._kept
            self.number.show_value(value, unit, pale=True)
            passed = tr("practice") if practice else tr("rough value")
            self.kind.say(tr("value held") if held else passed)
            self.band.show_measured(movement, value)
            return
        value = None if exceeds_range(movement, frame.value) else frame.value
        self._kept = value, frame.phase is Phase.HOLD
        self.number.show_value(value, unit)
        self.kind.say(tr("practice") if practice else tr("rough value"))
        self.band.show_moving(movement, value)
        if frame.phase is Phase.HOLD:
            self.hold.show_share(frame.hold_share)

    def _show_result(self, task: MovementTask, attempt: Attempt) -> None:
        """Show a captured trial, pale until it is final."""
        unit, movement, trial = MOVEMENTS[task.movement].unit, task.movement, attempt.trial
        value = attempt.guide_value if trial is None else trial.value
        if exceeds_range(movement, value):
            value = None
        final = attempt.state is AttemptState.SCORED
        self.number.show_value(value, unit, final=final, pale=not final)
        self.kind.say(kind_words(attempt, unit))
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
