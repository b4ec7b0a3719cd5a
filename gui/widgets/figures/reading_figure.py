"""A reading on a small body: the widget of live results, result cards and progress."""

from PySide6.QtCore import QRectF, QSize
from PySide6.QtGui import QPainter, QPen
from PySide6.QtWidgets import QWidget

from gui.drawing.reading_on_body import Reading, paint_reading_on_body
from gui.style.appearance import Appearance
from gui.style.measures import CARD_RADIUS_PX, SMALL
from gui.text.wording import range_words, side_name, tr, value_words
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.movements import MOVEMENTS

#: Height of the names of places where they are read from afar, as a share of the window's height.
#: [technical]
_AFAR_SHARE = 1 / 20


class ReadingFigure(PaintedWidget):
    """Shows where on the body a reading lies; its words are those beside it on the page.

    Parameters
    ----------
    from_afar
        Whether it is seen from across the room.
    floor
        Whether the floor under the feet is seen, where feet are.
    """

    def __init__(
        self,
        appearance: Appearance,
        *,
        from_afar: bool = False,
        floor: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._from_afar, self._floor = from_afar, floor
        self._reading: Reading | None = None
        self._mirrored: bool | None = None

    def show_reading(self, reading: Reading | None, *, mirrored: bool | None = None) -> None:
        """Show a reading, beside a camera's picture turned about like it; None shows nothing."""
        if (reading, mirrored) != (self._reading, self._mirrored):
            self._reading, self._mirrored = reading, mirrored
            self.setAccessibleName("" if reading is None else _spoken(reading))
            self.update()

    def sizeHint(self) -> QSize:
        return QSize(300, 260)

    def minimumSizeHint(self) -> QSize:
        return QSize(160, 120)

    def paint(self, painter: QPainter) -> None:
        if self._reading is not None:
            usual = self.appearance.px(SMALL)
            afar = self._from_afar
            if afar:
                self._paint_ground(painter)
            paint_reading_on_body(
                painter,
                self.appearance,
                QRectF(self.rect()).adjusted(2, 2, -2, -2),
                self._reading,
                words_px=self.window().height() * _AFAR_SHARE if afar else usual,
                mirrored=self._mirrored,
                from_afar=afar,
                floor=self._floor,
            )

    def _paint_ground(self, painter: QPainter) -> None:
        """Paint the card that a figure fills to its edge."""
        painter.setPen(QPen(self.appearance.colour("line"), 1))
        painter.setBrush(self.appearance.colour("raised"))
        edge = QRectF(self.rect()).adjusted(0.5, 0.5, -0.5, -0.5)
        painter.drawRoundedRect(edge, CARD_RADIUS_PX, CARD_RADIUS_PX)


def _spoken(reading: Reading) -> str:
    unit = MOVEMENTS[reading.movement].unit
    if reading.value is None:
        words = tr("no reading")
    elif reading.low is None or reading.high is None:
        words = value_words(reading.value, unit)
    else:
        words = (
            f"{value_words(reading.value, unit)} ({range_words(reading.low, reading.high, unit)})"
        )
    return tr("drawing on the body, {side} arm: {words}").format(
        side=side_name(reading.side), words=words
    )
