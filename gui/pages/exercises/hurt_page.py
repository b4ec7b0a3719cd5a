"""Page after "Stop: it hurts": how much, and whether to leave it at that for today."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QWidget

from gui.pages.exercises.round_frame import HEADLINE_LINES, frame_round
from gui.protocol.red_flags import HIGH_PAIN
from gui.style.appearance import Appearance
from gui.text.exercise_wording import limit_passed_sentence
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.choice_row import ChoiceRow, typed_rating
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import card, column, row
from gui.widgets.text import label
from measure.domain.landmarks import Side

#: Least height of the buttons of the numbers, and type of the numbers, beside the drawing and
#: without it, pixels: they are the page. [technical]
_SCALE_PX, _NUMBER_PX = (104, 128), (40, 52)
#: Text size from which the numbers take the whole width, per cent. [technical]
_ALONE_FROM_PERCENT = 200


class HurtPage(QWidget):
    """Asks for the pain, which may be left out, and offers to stop; it never pushes on."""

    #: The pain 0..10 or None.
    stopped = Signal(object)
    #: The pain 0..6 or None, and the next exercise is wanted.
    next_wanted = Signal(object)
    #: The pain 0..10 or None, and the exercise that was stopped is wanted again.
    back_wanted = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._limit = 0
        self._more = False
        self.sentence = FittedSentence(appearance, lines=HEADLINE_LINES)
        self.sentence.say(tr("Let the arm rest. How much does it hurt?"))
        self.pain = ChoiceRow(
            list(range(11)), str, may_be_empty=True, large=True, title=tr("pain from 0 to 10")
        )
        self.passed = label("", "title")
        self.back = button(tr("Back"), key=tr("Escape"))
        self.next = button(tr("Next exercise"), key=tr("N"))
        self.stop = button(tr("Stop for today"), "large-main", key=tr("Enter"))
        self.pain.picked.connect(self._show)
        self.back.clicked.connect(self._go_back)
        self.next.clicked.connect(self._go_on)
        self.stop.clicked.connect(self._stop)
        bind_keys(self, self.next, "N")
        bind_keys(self, self.stop, "Return", "Enter")
        bind_keys(self, self.back, "Escape")
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAccessibleName(self.sentence.text)
        self._lay_out()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        worst = label(tr("10: worst imaginable"), "lead")
        worst.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._advice = card(self.passed, role="notice-card")
        # Nothing moves when the note comes.
        kept = self._advice.sizePolicy()
        kept.setRetainSizeWhenHidden(True)
        self._advice.setSizePolicy(kept)
        ends = row(label(tr("0: no pain"), "lead"), worst)
        self._block = column(
            1,
            column(self.pain.row, ends, spacing=gap(1)),
            column(self._advice, 1),
            0,
            spacing=gap(3),
        )
        self._figure = StandingFigure(self._appearance)
        frame_round(
            self,
            self._appearance,
            self.sentence,
            (row((self._figure, 4), (self._block, 13), spacing=gap(3)), 1),
            others={self.back: (tr("Back"),), self.next: (tr("Next exercise"),)},
            large=self.stop,
        )
        self._appearance.changed.connect(self._leave_room)
        self._leave_room()

    @Slot()
    def _leave_room(self) -> None:
        """Do without the drawing where large numbers need its room."""
        beside = self._appearance.percent < _ALONE_FROM_PERCENT
        self._figure.setVisible(beside)
        # The numbers are beside the middle of the drawing; without it all is in the middle.
        beneath, end = range(2, 4)
        self._block.setStretch(beneath, int(beside))
        self._block.setStretch(end, int(not beside))
        self.pain.row.setMinimumHeight(_SCALE_PX[not beside])
        px = _NUMBER_PX[not beside]
        self.pain.row.setStyleSheet(f"QPushButton {{ font-size: {px}px; }}")

    def ask(self, limit: int, side: Side | None, *, more: bool) -> None:
        """Ask after an exercise was stopped.

        Parameters
        ----------
        limit
            Pain rating, 1..10, at which the programme says to stop.
        side
            The arm of the exercise, or None where none was stated.
        more
            Whether another exercise could follow.
        """
        self._limit, self._more = limit, more
        self._figure.show_sides(() if side is None else (side,))
        self.pain.choose(None)
        self._show()
        self.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        pain = typed_rating(event.text())
        if pain is None:
            super().keyPressEvent(event)
        else:
            self._choose(pain)

    def _choose(self, pain: int) -> None:
        self.pain.choose(pain)
        self._show()

    @Slot()
    def _show(self) -> None:
        """Say when the limit was passed; after much pain no other exercise is offered."""
        pain = self.pain.value
        passed = pain is not None and pain >= self._limit
        self.passed.setText(limit_passed_sentence(self._limit) if passed else "")
        self._advice.setVisible(passed)
        self.next.setVisible(self._more and (pain is None or pain < HIGH_PAIN))

    @Slot()
    def _go_back(self) -> None:
        self.back_wanted.emit(self.pain.value)

    @Slot()
    def _go_on(self) -> None:
        self.next_wanted.emit(self.pain.value)

    @Slot()
    def _stop(self) -> None:
        self.stopped.emit(self.pain.value)
