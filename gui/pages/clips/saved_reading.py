"""A clip's reading, and for whom it is saved: on the reading's own line where that has room."""

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QSizePolicy

from gui.pages.clips.measurement_band import ASIDE_PX, MeasurementBand
from gui.style.measures import GAP_PX, SIGN_PADDING_PX
from gui.widgets.layouts import ArrangedWidget, mirrored
from gui.widgets.text import label

#: Room between a reading and that it is saved, pixels. [technical]
_APART_PX = 3 * GAP_PX


class SavedReading(ArrangedWidget):
    """Shows that a reading is saved on its first line, so that nothing beneath moves.

    Where the line is too short it leaves out the day, then what the number rests on, then the
    person; for a sentence in place of a number it stands beneath.
    """

    def __init__(self, band: MeasurementBand) -> None:
        super().__init__()
        self._band = band
        self._words = ("", "", "")
        self.saved = label("", "saved")
        # Its padding is all the room around its words.
        self.saved.setIndent(0)
        for part in (band, self.saved):
            part.setParent(self)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def say(self, words: str, short: str = "", shortest: str = "") -> None:
        """Say that the reading is saved, of which there are shorter words; nothing if it is not."""
        self._words = words, short, shortest
        self.saved.setText(words)
        self.saved.setAccessibleName(words)
        self.saved.setVisible(bool(words))
        self._arrange()
        self.updateGeometry()

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        high = self._band.heightForWidth(width)
        if not self._words[0] or self._fitting(width):
            return high
        return high + GAP_PX + self.saved.heightForWidth(width - ASIDE_PX)

    def sizeHint(self) -> QSize:
        wide = self._band.sizeHint().width()
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        return self._band.minimumSizeHint()

    @property
    def saved_beneath(self) -> bool:
        """Whether that the reading is saved takes a line of its own."""
        return bool(self._words[0]) and self._fitting(self.width()) is None

    def _fitting(self, width: int) -> tuple[str, bool] | None:
        """Return the words that fit on the line, and whether the caption does beside them."""
        whole, short, shortest = self._words
        choices = ((whole, True), (short, True), (whole, False), (short, False), (shortest, False))
        for words, captioned in choices:
            end = self._band.line_end(width, captioned=captioned) + _APART_PX
            if end + self._width(words) <= width:
                return words, captioned
        return None

    def _width(self, words: str) -> int:
        self.saved.ensurePolished()
        return QFontMetrics(self.saved.font()).horizontalAdvance(words) + 1 + 2 * SIGN_PADDING_PX[1]

    def _arrange(self) -> None:
        wide = self.width()
        high = self._band.heightForWidth(wide)
        self._band.setGeometry(0, 0, wide, high)
        fitting = self._fitting(wide) if self._words[0] else None
        self._band.show_caption(fitting is None or fitting[1])
        self.saved.setText(self._words[0] if fitting is None else fitting[0])
        if fitting is None:
            room = wide - ASIDE_PX
            place = QRect(ASIDE_PX, high + GAP_PX, room, self.saved.heightForWidth(room))
        else:
            metrics = QFontMetrics(self.saved.font())
            needed = self._width(fitting[0])
            top = max(0, round(self._band.baseline()) - metrics.ascent() - SIGN_PADDING_PX[0])
            left = self._band.line_end(wide, captioned=fitting[1]) + _APART_PX
            place = QRect(left, top, needed, metrics.height() + 2 * SIGN_PADDING_PX[0])
        self.saved.setWordWrap(fitting is None)
        self.saved.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.saved.setGeometry(mirrored(self, place))
