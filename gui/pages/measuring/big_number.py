"""Large number that is read from across a room."""

from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QResizeEvent
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr, value_words
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.movements import Unit

#: Digits are never lower than this share of the window's height. [technical]
LEAST_SHARE = 1 / 6
#: Steady digits are so high where the width allows it. [technical]
STEADY_SHARE = 0.3
#: Height of the widget, relative to its digits'. [technical]
_AROUND = 1.06


class BigNumber(PaintedWidget):
    """A value with its unit as a small raised sign; a dash where there is none.

    Parameters
    ----------
    steady
        Set at the left, in a size that depends on the window and the width, so that it is the same
        whatever it shows; lower only where its place is.
    """

    def __init__(
        self, appearance: Appearance, *, steady: bool = False, parent: QWidget | None = None
    ) -> None:
        super().__init__(appearance, parent)
        self._steady = steady
        self._text = ""
        self._colour = "ink"
        self.show_value(None, Unit.DEGREES)

    @property
    def text(self) -> str:
        return self._text

    def show_value(
        self, value: float | None, unit: Unit, *, final: bool = False, pale: bool = False
    ) -> None:
        """Show a value; a final one in the colour of readings, one that stands still paler."""
        text = "\u2013" if value is None else value_words(value, unit)
        colour = "arm" if final else "edge" if pale else "ink"
        if (text, colour) != (self._text, self._colour):
            self._text, self._colour = text, colour
            self.setAccessibleName(text if value is not None else tr("no number"))
            self.update()

    def digit_height(self) -> float:
        """Return how high the digits are, in pixels."""
        least = self.window().height() * LEAST_SHARE
        if self._steady:
            return max(least, min(self._most(), self.height() / _AROUND))
        room = self.height() * 0.72
        return max(least, min(room, self._height_for_width()))

    def _most(self) -> float:
        """Return how high steady digits are where there is room, pixels."""
        return min(self.window().height() * STEADY_SHARE, self._height_for_width())

    def sizeHint(self) -> QSize:
        least = self.minimumSizeHint()
        return least.expandedTo(QSize(0, ceil(self._most() * _AROUND))) if self._steady else least

    def minimumSizeHint(self) -> QSize:
        least = self.window().height() * LEAST_SHARE
        return QSize(round(least * 2.9), ceil(least * _AROUND))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._steady and event.size().width() != event.oldSize().width():
            self.updateGeometry()

    def paint(self, painter: QPainter) -> None:
        painter.setPen(self.appearance.colour(self._colour))
        digits, sign = self._parts()
        height = self.digit_height()
        font, small = self.appearance.digit_font(height), self.appearance.digit_font(height * 0.42)
        wide = QFontMetricsF(font).horizontalAdvance(digits)
        whole = wide + QFontMetricsF(small).horizontalAdvance(sign)
        # The first digit itself begins at the edge, not the empty room before it.
        ink = QFontMetricsF(font).tightBoundingRect(digits).left()
        left = -ink if self._steady else (self.width() - whole) / 2
        base = (self.height() + height) / 2
        painter.setFont(font)
        painter.drawText(QPointF(left, base), digits)
        painter.setFont(small)
        lift = QRectF(left + wide, base - height, whole - wide + 2, height)
        top = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
        painter.drawText(lift, int(top | Qt.TextFlag.TextDontClip), sign)

    def _parts(self) -> tuple[str, str]:
        for sign in ("°", " cm"):
            if self._text.endswith(sign):
                return self._text.removesuffix(sign), sign
        return self._text, ""

    def _height_for_width(self) -> float:
        """Return the digit height at which three digits and the sign fill the width."""
        wide = QFontMetricsF(self.appearance.digit_font(100)).horizontalAdvance("000") + 40
        return 100 * self.width() / wide
