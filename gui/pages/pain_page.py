"""After a movement: the reading, how much it hurt, what stopped it. As easy as the angle."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from gui.look import Look
from gui.measuring import Measuring
from gui.widgets.big_number import BigNumber
from gui.widgets.choices import Choices
from gui.widgets.notice_line import NoticeLine
from gui.widgets.reading_band import ReadingBand, Shown, shown_measurement
from gui.widgets.sentence import Sentence
from gui.widgets.text import button, label
from gui.words import stopped_by_name, task_title, tr
from measure.movements import MOVEMENTS, Unit
from measure.records import StoppedBy


class PainPage(QWidget):
    """Asks for pain 0 to 10 and what ended the movement; both may be left out."""

    #: (pain or None, StoppedBy or None)
    answered = Signal(object, object)

    def __init__(self, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._look = look
        self.sentence = Sentence(look, lines=1)
        self.sentence.say(tr("How much did it hurt?"))
        self.title = label("", "lead")
        self.number = BigNumber(look)
        self.band = ReadingBand(look, least_share=3 / 100)
        self.pain = Choices(
            list(range(11)), str, may_be_empty=True, large=True, title=tr("pain from 0 to 10")
        )
        self.reason = Choices(
            list(StoppedBy),
            stopped_by_name,
            may_be_empty=True,
            large=True,
            title=tr("what stopped it"),
        )
        self.done = button(tr("Continue"), "main", key=tr("Enter"))
        self.done.clicked.connect(self._answer)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._lay_out()

    def _lay_out(self) -> None:
        drawn = QVBoxLayout()
        drawn.addStretch(1)
        drawn.addWidget(self.title)
        drawn.addWidget(self.band)
        drawn.addStretch(1)
        reading = QHBoxLayout()
        reading.setSpacing(self._look.gap(5))
        reading.addWidget(self.number, 4)
        reading.addLayout(drawn, 6)
        ends = QHBoxLayout()
        worst = label(tr("10: the worst imaginable"), "quiet")
        worst.setAlignment(Qt.AlignmentFlag.AlignRight)
        ends.addWidget(label(tr("0: no pain"), "quiet"))
        ends.addWidget(worst)

        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 8, 24, 8)
        layout.setSpacing(self._look.gap(1))
        layout.addLayout(reading, 30)
        layout.addWidget(self.sentence)
        layout.addWidget(self.pain.row, 13)
        layout.addLayout(ends)
        layout.addWidget(label(tr("What stopped the movement?"), "lead"))
        layout.addWidget(self.reason.row, 10)
        layout.addWidget(self.done)
        layout.addWidget(NoticeLine())

    def ask(self, measuring: Measuring) -> None:
        """Ask about the movement that has just ended."""
        task, measurement = measuring.guide.task, measuring.guide.measurement
        self.title.setText(task_title(task.movement, task.side))
        unit = MOVEMENTS[task.movement].unit
        value = measurement.value if measurement else None
        self.number.show_value(value, unit, settled=True)
        # A reach is read in levels of the spine; its share of the way would tell nobody anything.
        self.number.setVisible(value is not None and unit is Unit.DEGREES)
        shown = (
            shown_measurement(measurement)
            if measurement
            else Shown(words=tr("Nothing was captured."))
        )
        self.band.show_reading(task.movement, shown)
        self.pain.choose(None)
        self.reason.choose(None)
        self.setFocus()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, text = event.key(), event.text()
        if key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._answer()
        elif text.isascii() and text.isdigit():
            self.pain.choose(int(text))
        elif text.lower() == "x":
            self.pain.choose(10)
        else:
            super().keyPressEvent(event)

    @Slot()
    def _answer(self) -> None:
        self.answered.emit(self.pain.value, self.reason.value)
