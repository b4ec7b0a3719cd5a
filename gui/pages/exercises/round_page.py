"""Round page: one sentence, one count and the drawn exercise while a round is led."""

from PySide6.QtCore import QEvent, QObject, QPoint, Qt, QTimer, Signal, Slot
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.pages.exercises.count_view import CountView
from gui.pages.exercises.round_figure import RoundFigure
from gui.pages.exercises.round_frame import HEADLINE_LINES, frame_round
from gui.pages.exercises.round_guidance import RoundGuidance
from gui.protocol.exercise_round import CueKind, ExerciseRound, RoundCue, RoundPhase
from gui.session.services import Services
from gui.text.exercise_wording import (
    beside_words,
    how_sentence,
    limit_in_short,
    moving_sentences,
    round_sentence,
    round_task_title,
)
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column, row
from gui.widgets.text import label

#: How often the round is led on, milliseconds. [technical]
_TICK_MS = 50
#: From this text size on how an exercise is done is as large as it can be in a wide window, and as
#: running text in a narrower one. [technical]
_LARGE_PERCENT, _WIDE_PX = 200, 1200
#: Shares of the width for drawing, count and what is said: the last begins where the large button
#: does. [technical]
_SHARES = (21, 23, 22)
#: Steps of space beneath drawing and count. [technical]
_BELOW_GAPS = 1.5


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
        #: How it is done once more, beside the count, where it has room.
        self.reminder = label("", "lead")
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
        # How it is done is read before it begins, then its name stands there.
        self.position.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Preferred)
        about = row((self.title, 1), (self.how, 1), self.position, spacing=gap(3))
        said = column(1, self.reminder, self.beside, self.limit, 1, spacing=gap(1))
        figure, count, words = _SHARES
        middle = row((self.figure, figure), (self.count, count), (said, words), spacing=gap(2))
        middle.setContentsMargins(0, 0, 0, gap(_BELOW_GAPS))
        frame_round(
            self,
            self._appearance,
            self.sentence,
            about,
            (middle, 1),
            others={
                self.pause: (tr("Pause"), tr("Continue")),
                self.skip: (tr("Skip exercise"),),
                self.end: (tr("End the exercises"),),
            },
            large=self.stop,
        )
        self.stop.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Remind of how it is done only where there is room."""
        if watched is self.stop and event.type() in (QEvent.Type.Resize, QEvent.Type.Move):
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
        small = self._appearance.percent >= _LARGE_PERCENT and self.width() < _WIDE_PX
        give_role(self.how, "" if small else "lead")
        self.how.setVisible(ready)
        self.title.setVisible(not ready)
        self.beside.say(beside_words(guided))
        self.beside.setVisible(bool(self.beside.text))
        self.reminder.setText("" if ready else self.how.text())
        self.reminder.setVisible(bool(self.reminder.text()) and self._has_room_to_remind())
        here, of = guided.position
        self.position.setText(tr("Exercise {here} of {of}").format(here=here, of=of))
        self.position.setVisible(of > 1)
        self.pause.say(tr("Continue") if guided.paused else tr("Pause"))
        give_role(self.pause, "main" if guided.paused else "")
        give_role(self.stop, "large-second" if guided.paused else "large-main")

    def _has_room_to_remind(self) -> bool:
        """Return whether how it is done fits above what else is said beside the count."""
        gap = self._appearance.gap
        top = self.count.mapTo(self, QPoint(0, 0)).y()
        room = self.stop.y() - top - gap(1 + _BELOW_GAPS)
        said = (self.beside.minimumSizeHint(), self.limit.minimumSizeHint())
        needed = sum(hint.height() for hint in said) + gap(len(said))
        return self.reminder.heightForWidth(self.limit.width()) + needed <= room
