"""Pain from 0 to 10: one flat row with words at its ends, one stop of the Tab key."""

from PySide6.QtCore import QEvent, QObject, Qt, Signal, Slot
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QHBoxLayout, QPushButton, QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import column, row
from gui.widgets.side_by_side import SideBySide
from gui.widgets.text import label

#: The worst imaginable pain, of the usual numeric rating scale. [technical]
MOST_PAIN = 10
#: Width of the questions beside their scales, pixels. [technical]
QUESTION_PX = 250
#: Space between a question and the scale beneath it, pixels. [technical]
_BENEATH_PX = 2


class PainScale(QWidget):
    """Asks one question about pain; may be left out, and emptied by a second press.

    Left and right choose like in a group of radio buttons, and Tab leads to the next question.

    Parameters
    ----------
    question
        Whose answer a screen reader names: "Pain now, 3 of 10".
    with_ends
        Whether words at its ends say what 0 and 10 mean; once is enough for scales in a column.
    """

    #: A number was chosen or taken back by the person.
    picked = Signal()

    def __init__(
        self, question: str, *, with_ends: bool = True, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self.setAccessibleName(question)
        self._group = QButtonGroup(self)
        # An exclusive group could not be emptied.
        self._group.setExclusive(False)
        self.buttons: list[QPushButton] = []
        for pain in range(MOST_PAIN + 1):
            made = button(str(pain), "scale", checkable=True)
            made.setAccessibleName(
                tr("{question}, {pain} of 10").format(question=question, pain=pain)
            )
            made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
            made.installEventFilter(self)
            self._group.addButton(made, pain)
            self.buttons.append(made)
        self._group.idClicked.connect(self._clicked)
        numbers = row(*((member, 1) for member in self.buttons), spacing=GAP_PX)
        layout = column(numbers, on=self, spacing=GAP_PX // 2)
        if with_ends:
            layout.addLayout(scale_ends())
        self.choose(None)

    @property
    def value(self) -> int | None:
        """The chosen pain, or None."""
        chosen = [pain for pain, member in enumerate(self.buttons) if member.isChecked()]
        return chosen[0] if chosen else None

    def choose(self, pain: int | None) -> None:
        """Choose a number, or none, without a signal."""
        for place, member in enumerate(self.buttons):
            member.setChecked(place == pain)
            stop = place == (pain or 0)
            policy = Qt.FocusPolicy.StrongFocus if stop else Qt.FocusPolicy.ClickFocus
            member.setFocusPolicy(policy)

    def button(self, pain: int) -> QPushButton:
        return self.buttons[pain]

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Let the arrow keys choose the number beside."""
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress:
            step = (event.key() == Qt.Key.Key_Right) - (event.key() == Qt.Key.Key_Left)
            if step and watched in self.buttons:
                there = min(MOST_PAIN, max(0, self.buttons.index(watched) + step))
                self.choose(there)
                self.buttons[there].setFocus(Qt.FocusReason.OtherFocusReason)
                self.picked.emit()
                return True
        return super().eventFilter(watched, event)

    @Slot(int)
    def _clicked(self, pain: int) -> None:
        self.choose(pain if self.buttons[pain].isChecked() else None)
        self.picked.emit()


class RatedQuestion(SideBySide):
    """Words beside a scale, or above it where text is large."""

    def __init__(self, appearance: Appearance, words: QWidget, scale: QWidget) -> None:
        self._words = words
        super().__init__(appearance, words, (scale, 1), spacing=appearance.gap(0.5))

    def arrange(self) -> None:
        """Give the words their width beside the scale, and the whole above it."""
        super().arrange()
        self._layout.setSpacing(_BENEATH_PX if self.stacked else self._appearance.gap(0.5))
        self._words.setMinimumWidth(0 if self.stacked else QUESTION_PX)
        self._words.setMaximumWidth(self.maximumWidth() if self.stacked else QUESTION_PX)


def scale_ends() -> QHBoxLayout:
    """Return the words at the ends of a scale."""
    worst = label(tr("10: worst imaginable"), "quiet")
    worst.setAlignment(Qt.AlignmentFlag.AlignRight)
    return row((label(tr("0: no pain"), "quiet"), 1), (worst, 2))


def ends_words() -> str:
    """Return what the ends of a scale mean, in one line."""
    return f"{tr('0: no pain')}, {tr('10: worst imaginable')}"
