"""Round page: one sentence, one count and the drawn exercise while a round is led."""

from math import ceil

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, QTimer, Signal, Slot
from PySide6.QtGui import QFontMetricsF, QResizeEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.pages.exercises.count_view import CountView
from gui.pages.exercises.round_figure import RoundFigure
from gui.pages.exercises.round_frame import HEADLINE_LINES, frame_round
from gui.pages.exercises.round_guidance import RoundGuidance
from gui.protocol.exercise_round import CueKind, ExerciseRound, RoundCue, RoundPhase
from gui.session.services import Services
from gui.style.measures import BODY_PX, LARGE_ENOUGH_PX, MARGIN_PX, TITLE, TITLE_GROWTH
from gui.style.style_sheet import grown
from gui.text.exercise_wording import (
    beside_words,
    how_in_short,
    how_sentence,
    limit_in_short,
    moving_sentences,
    round_sentence,
    round_task_title,
)
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.camera_trouble import FAR, FAR_STEP
from gui.widgets.fitted_sentence import LEAST_SHARE, FittedSentence
from gui.widgets.layouts import column, row
from gui.widgets.text import end_together, label
from measure.domain.home_programme_records import PlannedExercise

#: How often the round is led on, milliseconds. [technical]
_TICK_MS = 50
#: From this text size on how an exercise is done is as large as it can be in a wide window, and as
#: running text in a narrower one. [technical]
_LARGE_PERCENT, _WIDE_PX = 200, 1200
#: Shares of the width for drawing and count. [technical]
_SHARES = (24, 21)
#: Steps of space around drawing and count, beside that beneath them and what is said. [technical]
_ABOVE_GAPS = 1.5
#: Steps of space beneath drawing and count, between what is said beside them, and beside the count.
#: [technical]
_BELOW_GAPS, _SAID_GAPS, _BESIDE_GAPS = 1.5, 2, 3


class RoundPage(QWidget):
    """Leads a round: by the clock, by keys, without a camera."""

    #: A repetition was done.
    progressed = Signal()
    #: "Stop: it hurts" was pressed; the round waits.
    hurts = Signal()
    #: The round is over, or was ended.
    ended = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        appearance = services.appearance
        self._appearance = appearance
        self._monotonic_s = services.monotonic_s
        self._guidance = RoundGuidance(services.cues)
        #: The round that is led; None before the first.
        self.guided: ExerciseRound | None = None
        self.sentence = FittedSentence(appearance, lines=HEADLINE_LINES)
        self.figure = RoundFigure(appearance)
        self.count = CountView(appearance)
        self.beside = FittedSentence(appearance, lines=1)
        self.beside.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.limit = FittedSentence(appearance, quiet=True)
        self.title = label("", "lead")
        self.how = label("", "lead")
        #: How it is done beside the count, where it has room.
        self.reminder = label("", "lead")
        policy = self.reminder.sizePolicy()
        policy.setHorizontalPolicy(QSizePolicy.Policy.Ignored)
        self.reminder.setSizePolicy(policy)
        self.position = label("", "lead")
        self.pause = button(tr("Pause"), key=tr("Space"))
        self.skip = button(tr("Skip exercise"), key=tr("N"))
        self.end = button(tr("End the exercises"), key=tr("Escape"))
        self.stop = button(tr("Stop: it hurts"), "large-main", key=tr("S"))
        self.pause.clicked.connect(self._toggle)
        self.skip.clicked.connect(self._skip)
        self.end.clicked.connect(self._end)
        self.stop.clicked.connect(self._stop)
        bind_keys(self, self.pause, "Space")
        bind_keys(self, self.skip, "N")
        bind_keys(self, self.end, "Escape")
        bind_keys(self, self.stop, "S")
        self._timer = QTimer(self, interval=_TICK_MS)
        self._timer.timeout.connect(self.advance)
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self.position.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        about = row((self.title, 1), (self.how, 1), self.position, 0, spacing=gap(3))
        said = column(1, self.reminder, self.beside, self.limit, 1, spacing=gap(_SAID_GAPS))
        figure, count = _SHARES
        seen = row(
            (self.figure, figure),
            (self.count, count),
            margins=(0, gap(_ABOVE_GAPS), gap(_BESIDE_GAPS), gap(_ABOVE_GAPS)),
            spacing=gap(2),
        )
        # What is said begins where the large button does.
        middle = row((seen, 2), (said, 1), margins=(0, 0, 0, gap(_BELOW_GAPS)), spacing=gap(2))
        frame_round(
            self,
            self._appearance,
            self.sentence,
            about,
            (middle, 1),
            others={
                self.pause: (tr("Pause"), tr("Continue")),
                self.skip: (tr("Skip exercise"), tr("Next exercise"), tr("Finish")),
                self.end: (tr("End the exercises"),),
            },
            large=self.stop,
        )
        for part in (self.sentence, self.limit, self.stop):
            part.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Say beside the count what has room there, as soon as the room is known."""
        if event.type() is QEvent.Type.Resize or (
            watched is self.stop and event.type() is QEvent.Type.Move
        ):
            self._show()
        return super().eventFilter(watched, event)

    def lead(self, guided: ExerciseRound, limit: int) -> None:
        """Lead a round from its beginning.

        Parameters
        ----------
        limit
            Pain rating, 1..10, at which the programme says to stop.
        """
        self.guided = guided
        self.limit.say(limit_in_short(limit))
        self.sentence.expect(moving_sentences())
        self._guidance.begin(guided)
        self._timer.start()
        self._show()
        self.pause.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def advance(self) -> None:
        """Go on to the present moment."""
        guided = self.guided
        if guided is None:
            return
        was_paused = guided.paused
        self._follow(guided.advance(self._monotonic_s()))
        if guided.paused and not was_paused:
            self._guidance.pause()

    @Slot()
    def step_aside(self) -> None:
        """Pause, as while another page is shown."""
        if self.guided is not None and not self.guided.over and not self.guided.paused:
            self.guided.pause()
            self._guidance.pause()
            self._show()

    def go_on_after_pain(self) -> None:
        """Leave the exercise that hurt and get ready for the next one."""
        if self.guided is not None:
            self._follow(self.guided.leave_exercise())

    def finish(self) -> None:
        """Let go of the round; what was done stays."""
        self._timer.stop()
        if self.guided is not None:
            self.guided.stop()

    @Slot()
    def _toggle(self) -> None:
        guided = self.guided
        if guided is None:
            return
        if guided.paused:
            self._follow(guided.go_on())
        else:
            self.step_aside()

    @Slot()
    def _skip(self) -> None:
        if self.guided is not None:
            self._follow(self.guided.next_exercise())

    @Slot()
    def _end(self) -> None:
        self.finish()
        self._guidance.pause()
        self.ended.emit()

    @Slot()
    def _stop(self) -> None:
        self.step_aside()
        self.hurts.emit()

    def _follow(self, happened: list[RoundCue]) -> None:
        """Sound, save and show what happened."""
        guided = self.guided
        if guided is None:
            return
        self._guidance.follow(guided, happened)
        if any(cue.kind is CueKind.REPETITION_DONE for cue in happened):
            self.progressed.emit()
        self._show()
        if guided.over and self._timer.isActive():
            self._timer.stop()
            self.ended.emit()

    def _show(self) -> None:
        guided = self.guided
        if guided is None:
            return
        task = guided.task
        self.sentence.say(round_sentence(guided))
        self.figure.show_round(guided)
        self.count.show_round(guided)
        self.title.setText(round_task_title(task))
        ready = guided.phase is RoundPhase.READY and not guided.paused
        self.how.setText(how_sentence(task.planned))
        self.reminder.setText(end_together(how_in_short(task.planned)))
        small = self._appearance.percent >= _LARGE_PERCENT and self.width() < _WIDE_PX
        give_role(self.how, "" if small else "lead")
        self.title.setVisible(not ready)
        self.beside.say(beside_words(guided))
        self._show_how(task.planned, ready=ready)
        here, of = guided.position
        self.position.setText(tr("Exercise {here} of {of}").format(here=here, of=of))
        self.position.setVisible(of > 1)
        self.pause.say(tr("Continue") if guided.paused else tr("Pause"))
        last = guided.upcoming is None
        ends = tr("Finish") if last else tr("Next exercise")
        self.skip.say(ends if guided.open_ended else tr("Skip exercise"))
        give_role(self.pause, "main" if guided.paused else "")
        give_role(self.stop, "large-second" if guided.paused else "large-main")

    def _far_px(self) -> int:
        """Return the size of what is read from afar, pixels."""
        return ceil(self.window().height() * LEAST_SHARE)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Let how it is done be as large as when to stop, where it has room."""
        super().resizeEvent(event)
        self.setStyleSheet(f'QLabel[role="{FAR}"] {{ font-size: {self._far_px()}px; }}')

    def _show_how(self, planned: PlannedExercise, *, ready: bool) -> None:
        """Say in short how it is done beside the count, unless something else is counted there.

        When to stop has its room in any case. Before it begins, how it is done matters more than
        what the countdown leads to, and is said in full above where that fits on a line or there is
        no room beside the count.
        """
        counts = bool(self.beside.text)
        counted = counts and self._room(self.limit, self.beside) >= 0
        role = self._fitting_role(counted=counted) if ready or not counts else ""
        if ready and role != FAR:
            role = self._fitting_role(counted=False)
            counted = counted and not role
        self.beside.setVisible(counted)
        self.reminder.setVisible(bool(role))
        give_role(self.reminder, role or "lead")
        more = self.how.text() != how_in_short(planned) and self._in_a_line()
        self.how.setVisible(ready and bool(self.how.text()) and (more or not role))

    def _in_a_line(self) -> bool:
        """Return whether all of how it is done fits beside which exercise it is."""
        both = (self.how, self.position)
        written = sum(shown.fontMetrics().horizontalAdvance(shown.text()) for shown in both)
        return written + self._appearance.gap(6) + 2 * MARGIN_PX <= self.width()

    def _room(self, *said: FittedSentence) -> float:
        """Return the height that is left beside the count with these sentences, pixels."""
        gap = self._appearance.gap
        about = self.position.fontMetrics().lineSpacing()
        if not self.title.isHidden():
            about = max(about, self.title.heightForWidth(self.title.width()))
        room = self.stop.y() - self.sentence.geometry().bottom() - about - gap(3 + _BELOW_GAPS)
        return room - sum(part.minimumSizeHint().height() + gap(_SAID_GAPS) for part in said)

    def _fitting_role(self, *, counted: bool) -> str:
        """Return the role of the largest type in which how it is done has room beside the count.

        Empty where it has none, or nothing is said of it.
        """
        appearance, text = self._appearance, self.reminder.text()
        room = self._room(self.limit, self.beside) if counted else self._room(self.limit)
        sizes = {
            FAR: self._far_px(),
            FAR_STEP: max(appearance.px(), LARGE_ENOUGH_PX),
            "lead": round(grown(BODY_PX * TITLE, TITLE_GROWTH, appearance.percent)),
        }
        wrapped, place = int(Qt.TextFlag.TextWordWrap), QRectF(0, 0, self.limit.width(), 100_000)
        for role, px in sizes.items():
            needed = QFontMetricsF(appearance.font(px)).boundingRect(place, wrapped, text)
            if text and needed.height() <= room:
                return role
        return ""
