"""Band of the changes that may be chance, about no change; what lies beyond it is likely real."""

from math import ceil

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy

from gui.style.appearance import Appearance
from gui.style.measures import BUTTON_RADIUS_PX, GAP_PX, LARGE_ENOUGH_PX, TITLE
from gui.text.wording import tr
from gui.widgets.painted_widget import PaintedWidget

#: Half of the drawn scale, in the largest band's half width. [technical]
_REACH = 2.1
#: Height of the band at 100 %, and of one that stands alone, pixels: larger text around it takes
#: room from it. [technical]
_HIGH_PX, _HIGH_ALONE_PX = 40.0, 176.0
#: How fast larger text takes room from the one that stands alone: a power of its size. [technical]
_LOWER = 1.5
#: Opacity of the tint of what is likely real, on its ground. [technical]
_FILL = 0.3
#: Thickness of the mark of no change and of the band's ends, pixels. [technical]
_MARK_PX, _END_PX = 4.0, 3.0


class ChangeBand(PaintedWidget):
    """What lies within may be chance, what lies beyond is tinted; the ends have their amounts."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self._share, self._amount, self._alone = 1.0, "", True

    def show_change(self, share: float, amount: str, *, alone: bool) -> None:
        """Show a band.

        Parameters
        ----------
        share
            Its size over that of the largest one beside it.
        amount
            The least change that is likely real, with its unit; empty where none is known yet.
        alone
            Whether it is the only one, and so a large one.
        """
        self._share, self._amount, self._alone = share, amount, alone
        self.setAccessibleName(
            tr("drawing: changes of less than {amount} may be chance").format(amount=amount)
            if amount
            else tr("drawing: small changes may be chance")
        )
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        lines = 1 + bool(self._amount)
        return QSize(480, ceil(self._band_px() + lines * (self._line_px() + GAP_PX)))

    def minimumSizeHint(self) -> QSize:
        return QSize(240, self.sizeHint().height())

    def paint(self, painter: QPainter) -> None:
        line, high = self._line_px(), self._band_px()
        ground = QRectF(0, line + GAP_PX, self.width(), high)
        half = ground.width() / 2 / _REACH * self._share
        band = QRectF(0, 0, 2 * half, high)
        band.moveCenter(ground.center())
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour("arm", _FILL))
        painter.drawRoundedRect(ground, BUTTON_RADIUS_PX, BUTTON_RADIUS_PX)
        painter.fillRect(band, self.appearance.colour("sunken"))
        painter.setPen(QPen(self.appearance.colour("arm"), _END_PX))
        for x in (band.left(), band.right()):
            painter.drawLine(QPointF(x, band.top()), QPointF(x, band.bottom()))
        painter.setPen(QPen(self.appearance.colour("ink"), _MARK_PX))
        middle = band.center().x()
        painter.drawLine(QPointF(middle, band.top()), QPointF(middle, band.bottom()))
        self._name(painter, band, ground)
        if self._amount:
            self._measure(painter, band)

    def _name(self, painter: QPainter, band: QRectF, ground: QRectF) -> None:
        """Write above the band and beside it what changes there mean."""
        beside = tr("likely real")
        for place, word, bold in (
            (QRectF(ground.topLeft(), band.bottomLeft()), beside, True),
            (band, tr("may be chance"), False),
            (QRectF(band.topRight(), ground.bottomRight()), beside, True),
        ):
            self._write(painter, QPointF(place.center().x(), 0), word, bold=bold)

    def _measure(self, painter: QPainter, band: QRectF) -> None:
        """Write beneath the band's ends and its middle what changes they are."""
        top = band.bottom() + GAP_PX
        ends = [
            self._write(painter, QPointF(x, top), f"{sign}{self._amount}")
            for x, sign in ((band.left(), "\u2212"), (band.right(), "+"))
        ]
        words = tr("no change")
        wide = QFontMetricsF(self.appearance.font(self._type_px())).horizontalAdvance(words)
        if wide + 4 * GAP_PX < ends[1].left() - ends[0].right():
            self._write(painter, QPointF(band.center().x(), top), words)

    def _write(self, painter: QPainter, top: QPointF, words: str, *, bold: bool = False) -> QRectF:
        """Write words that are centred beneath a point; return where they stand."""
        font = self.appearance.font(self._type_px(), bold=bold)
        wide = QFontMetricsF(font).horizontalAdvance(words) + 2
        place = QRectF(top.x() - wide / 2, top.y(), wide, self._line_px())
        painter.setFont(font)
        painter.setPen(self.appearance.colour("ink"))
        painter.drawText(place, int(Qt.AlignmentFlag.AlignCenter), words)
        return place

    def _line_px(self) -> float:
        return QFontMetricsF(self.appearance.font(self._type_px(), bold=True)).height()

    def _type_px(self) -> int:
        """Return the size of the words: larger where the band stands alone and has the room."""
        px = self.appearance.px()
        return max(px, min(self.appearance.px(TITLE), LARGE_ENOUGH_PX)) if self._alone else px

    def _band_px(self) -> float:
        high = _HIGH_ALONE_PX * (100 / self.appearance.percent) ** _LOWER
        return max(high, _HIGH_PX) if self._alone else _HIGH_PX
