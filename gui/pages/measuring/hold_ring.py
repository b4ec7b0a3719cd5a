"""Ring that fills while a hold lasts, with the trial's number inside."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget


class HoldRing(PaintedWidget):
    """How much of the hold is done."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._share = 0.0
        self._inside = ""
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    @property
    def share(self) -> float:
        return self._share

    def show_hold(self, share: float, inside: str) -> None:
        """Show a hold done to a share of 0..1, and a short text inside."""
        share = min(1.0, max(0.0, share))
        if (share, inside) != (self._share, self._inside):
            self._share, self._inside = share, inside
            self.setAccessibleName(tr("hold {percent} % done").format(percent=round(share * 100)))
            self.update()

    def sizeHint(self) -> QSize:
        side = max(64, round(self.window().height() * 0.15))
        return QSize(side, side)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def _fitted(self, height: float, room: float) -> QFont:
        """Return digits so high, or lower ones where the text inside is a long word."""
        font = self.appearance.digit_font(height)
        wide = QFontMetricsF(font).horizontalAdvance(self._inside)
        return font if wide <= room else self.appearance.digit_font(height * room / wide)

    def paint(self, painter: QPainter) -> None:
        side = min(self.width(), self.height())
        thick = side * 0.11
        ring = QRectF(0, 0, side - thick - 2, side - thick - 2)
        ring.moveCenter(QRectF(self.rect()).center())
        pen = QPen(self.appearance.colour("line"), thick)
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
        painter.setPen(pen)
        painter.drawEllipse(ring)
        if self._share > 0:
            pen.setColor(self.appearance.colour("hold"))
            painter.setPen(pen)
            painter.drawArc(ring, 90 * 16, -round(self._share * 360 * 16))
        painter.setPen(self.appearance.colour("ink"))
        painter.setFont(self._fitted(side * 0.26, ring.width() - thick))
        painter.drawText(QRectF(self.rect()), Qt.AlignmentFlag.AlignCenter, self._inside)
