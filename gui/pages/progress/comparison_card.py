"""Card that compares the affected shoulder with the other one: facts, no diagnosis."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import SMALL
from gui.text.wording import movement_name, tr
from gui.widgets.layouts import card, column
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.progress.overview import Progress
from measure.progress.shoulder import SideProgress
from measure.progress.side_deficit import PATTERN_MOVEMENTS, Share, SideDeficit
from measure.progress.side_wording import (
    SIDES_CAUTION,
    SMALLEST,
    deficit_sentence,
    dominance_sentence,
    pattern_sentence,
)

#: Per cent at the right end of the scale; shares beyond are cut off. [technical]
_END_PERCENT = 120.0
#: Largest share of the width that names may take beside the bands; else they stand above them.
#: [technical]
_NAMES_SHARE = 0.34


class ComparisonCard(QWidget):
    """Shares of the other side in one small figure, and the same in words."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = label("", "title")
        self.figure = SharesFigure(appearance)
        self.words = label("")
        self.caution = label(tr(SIDES_CAUTION), "small")
        column(
            card(
                self.title,
                self.figure,
                self.words,
                self.caution,
                spacing=appearance.gap(1.5),
            ),
            on=self,
        )
        self.hide()

    def show_progress(self, progress: Progress | None) -> None:
        """Show the affected side beside the other one; nothing without both."""
        sides = [] if progress is None else _compared(progress)
        self.setVisible(bool(sides))
        if progress is None or not sides:
            return
        title = tr("Left compared with right")
        if sides[0][0].side is Side.RIGHT:
            title = tr("Right compared with left")
        self.title.setText(title)
        shares = [(side.movement, what.now.share) for side, what in sides if what.now.share]
        self.figure.show_shares(sides[0][0].side, shares)
        lines = [
            tr("{movement}: {words}.").format(
                movement=movement_name(side.movement),
                words=deficit_sentence(what.now, side.movement, tr),
            )
            for side, what in sides
        ]
        if progress.pattern is not None and progress.pattern.smallest is not None:
            smallest = movement_name(progress.pattern.smallest)
            lines.append(tr(SMALLEST).format(movement=smallest))
        lines.append(dominance_sentence(progress, tr))
        self.words.setText("\n".join(filter(None, lines)))
        if progress.pattern is not None:
            self.figure.setAccessibleDescription(pattern_sentence(progress.pattern, tr))


def _compared(progress: Progress) -> list[tuple[SideProgress, SideDeficit]]:
    """Return the sides that are compared, the movements of the pattern first."""
    order = [*PATTERN_MOVEMENTS, *(m for m in Movement if m not in PATTERN_MOVEMENTS)]
    sides = [(side, side.deficit) for side in progress.usual if side.deficit is not None]
    return sorted(sides, key=lambda item: order.index(item[0].movement))


class SharesFigure(PaintedWidget):
    """A line for each movement: its share of the other side as a band with a mark."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._side = Side.LEFT
        self._shares: tuple[tuple[Movement, Share], ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_shares(self, side: Side, shares: Sequence[tuple[Movement, Share]]) -> None:
        """Show the shares of a side, the first at the top."""
        self._side, self._shares = side, tuple(shares)
        self.setAccessibleName(tr("Range compared with the other side"))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(300, round(self.appearance.px() * (2.4 * len(self._shares) + 1.6)))

    def paint(self, painter: QPainter) -> None:
        font = self.appearance.font(self.appearance.px(SMALL))
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        names = [movement_name(movement) for movement, _ in self._shares]
        widest = max(map(metrics.horizontalAdvance, names), default=0.0) + metrics.height()
        beside = widest < _NAMES_SHARE * self.width()
        left = widest if beside else metrics.height()
        foot = self.appearance.px(1.6)
        place = QRectF(left, 0, self.width() - left - metrics.height(), self.height() - foot)
        if place.width() <= 0 or not self._shares:
            return
        self._paint_scale(painter, metrics, place)
        line = place.height() / len(self._shares)
        for number, ((_, share), name) in enumerate(zip(self._shares, names, strict=True)):
            row = QRectF(place.left(), line * number, place.width(), line)
            text = QRectF(0, row.top(), left, line)
            if not beside:
                text = QRectF(0, row.top(), self.width(), line / 2)
                row = row.adjusted(0, line / 2, 0, 0)
            painter.setPen(self.appearance.colour("ink"))
            painter.drawText(text, Qt.AlignmentFlag.AlignVCenter, name)
            self._paint_share(painter, row, share)

    def _paint_scale(self, painter: QPainter, metrics: QFontMetricsF, place: QRectF) -> None:
        """Paint the quarters of the other side's range; all of it stands out."""
        close = place.width() < 6 * metrics.horizontalAdvance("100 %  ")
        for percent in (0, 50, 100) if close else (0, 25, 50, 75, 100):
            x = _x(place, percent)
            whole = percent == 100
            pen = QPen(self.appearance.colour("edge" if whole else "line"), 2 if whole else 1)
            painter.setPen(pen)
            painter.drawLine(QPointF(x, place.top()), QPointF(x, place.bottom() + 4))
            words = f"{percent} %"
            width = metrics.horizontalAdvance(words) + 4
            text = QRectF(x - width / 2, place.bottom() + 4, width, metrics.height() * 1.3)
            painter.setPen(self.appearance.colour("quiet"))
            painter.drawText(text, Qt.AlignmentFlag.AlignCenter, words)

    def _paint_share(self, painter: QPainter, row: QRectF, share: Share) -> None:
        name = self._side.value
        low, high = _x(row, share.low), _x(row, share.high)
        band = QRectF(low, row.top() + row.height() * 0.24, high - low, row.height() * 0.52)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(self.appearance.colour(name, 0.32))
        painter.drawRoundedRect(band, 5, 5)
        painter.setBrush(self.appearance.colour(name))
        at = _x(row, share.percent)
        mark = QRectF(at - 2.5, band.top() - 3, 5, band.height() + 6)
        painter.drawRoundedRect(mark, 2, 2)


def _x(place: QRectF, percent: float) -> float:
    share = min(1.0, max(0.0, percent / _END_PERCENT))
    return place.left() + place.width() * share
