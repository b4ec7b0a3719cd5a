"""Radio button with a name and a line that says what is chosen."""

from PySide6.QtCore import QPoint, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetrics, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QRadioButton, QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.focus_ring import paint_ring, shows_ring
from gui.widgets.layouts import mirrored

#: Room around the words, for the ring of the keyboard, pixels. [technical]
_MARGIN_PX = 6
#: Side of the circle and space after it, in heights of running text. [technical]
_CIRCLE, _AFTER = 1.2, 0.6
#: Space between a name and the line beside it, pixels. [technical]
_BETWEEN_PX = 24


class RadioLine(QRadioButton):
    """One of a list of which exactly one is chosen; its circle begins where its page's text does.

    The lines stand beside the names, in a column, where all of a list have room; else only the
    chosen one has its line, beneath its name. Both texts wrap. The chosen name is bold.
    """

    def __init__(
        self, appearance: Appearance, name: str, line: str, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._name, self._line = name, line
        #: The lines of the list, this one among them.
        self.together: tuple[RadioLine, ...] = (self,)
        self.toggled.connect(self.updateGeometry)
        self.setAccessibleName(name)
        self.setAccessibleDescription(line)
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)
        appearance.changed.connect(self.updateGeometry)

    def sizeHint(self) -> QSize:
        wide = self._line_left() + self._line_width() + _MARGIN_PX
        return QSize(wide, self.heightForWidth(wide))

    def minimumSizeHint(self) -> QSize:
        words = f"{self._name} {self._line}".split()
        widest = max(map(QFontMetrics(self._bold()).horizontalAdvance, words))
        return QSize(self.text_left() + widest + _MARGIN_PX, self._name_height(10_000))

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        beneath = self.isChecked() and not self._beside(width)
        line = self._height_of(self.font(), self._line, width) if beneath else 0
        return self._name_height(width) + line + 2 * _MARGIN_PX

    def hitButton(self, place: QPoint) -> bool:
        return self.rect().contains(place)

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        try:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._paint_circle(painter)
            self._paint_words(painter)
            if shows_ring(self):
                around = self.rect().adjusted(self.text_left() - _MARGIN_PX, 0, 0, 0)
                paint_ring(painter, QRectF(mirrored(self, around)))
        finally:
            painter.end()

    def _paint_circle(self, painter: QPainter) -> None:
        side = round(self._appearance.px(_CIRCLE))
        above = _MARGIN_PX + (QFontMetrics(self._bold()).height() - side) // 2
        circle = QRectF(mirrored(self, QRect(0, above, side, side)))
        chosen = self.isChecked()
        painter.setPen(QPen(self._appearance.colour("arm" if chosen else "edge"), 2))
        painter.setBrush(self._appearance.colour("raised"))
        painter.drawEllipse(circle.adjusted(1, 1, -1, -1))
        if chosen:
            inside = side * 0.28
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self._appearance.colour("arm"))
            painter.drawEllipse(circle.adjusted(inside, inside, -inside, -inside))

    def _paint_words(self, painter: QPainter) -> None:
        left, width = self.text_left(), self.width()
        below = _MARGIN_PX + self._name_height(width)
        name = self._bold() if self.isChecked() else self.font()
        self._paint_text(painter, name, "ink", self._name, QPoint(left, _MARGIN_PX))
        if self._beside(width):
            place = QPoint(self._line_left(), _MARGIN_PX)
            self._paint_text(painter, self.font(), "quiet", self._line, place)
        elif self.isChecked():
            place = QPoint(left, below)
            self._paint_text(painter, self.font(), "quiet", self._line, place)

    def _paint_text(
        self, painter: QPainter, font: QFont, colour: str, text: str, start: QPoint
    ) -> None:
        painter.setFont(font)
        painter.setPen(self._appearance.colour(colour))
        room = QRect(start, QPoint(self.width() - _MARGIN_PX - 1, self.height() - 1))
        painter.drawText(mirrored(self, room), _flags(), text)

    def _beside(self, width: int) -> bool:
        """Return whether every line of the list has room beside its name."""
        return all(line.has_room(width) for line in self.together)

    def has_room(self, width: int) -> bool:
        """Return whether the line has room in this width beside the longest name of the list."""
        return self._line_left() + self._line_width() + _MARGIN_PX <= width

    def name_width(self) -> int:
        """Return the width of the name, pixels."""
        return QFontMetrics(self._bold()).horizontalAdvance(self._name)

    def _line_left(self) -> int:
        names = max(line.name_width() for line in self.together)
        return self.text_left() + names + _BETWEEN_PX

    def _line_width(self) -> int:
        return self.fontMetrics().horizontalAdvance(self._line)

    def text_left(self) -> int:
        """Return where the words begin, pixels."""
        return round(self._appearance.px(_CIRCLE + _AFTER))

    def _name_height(self, width: int) -> int:
        return self._height_of(self._bold(), self._name, width)

    def _height_of(self, font: QFont, text: str, width: int) -> int:
        space = QRect(0, 0, max(60, width - self.text_left() - _MARGIN_PX), 10_000)
        return QFontMetrics(font).boundingRect(space, _flags(), text).height()

    def _bold(self) -> QFont:
        font = QFont(self.font())
        font.setBold(True)
        return font


def _flags() -> int:
    return int(Qt.AlignmentFlag.AlignTop | Qt.TextFlag.TextWordWrap)
