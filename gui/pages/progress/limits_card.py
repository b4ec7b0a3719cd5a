"""Card that shows month by month whether pain or stiffness ended the movements."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import SMALL
from gui.text.wording import tr
from gui.widgets.layouts import card, column
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label
from measure.domain.records import LimitingFactor
from measure.progress.dates import MONTHS
from measure.progress.movement_ends import MonthEnds
from measure.progress.side_wording import END_WORDS, end_times_words

#: Most months that are shown. [technical]
_MOST_MONTHS = 6
#: Colour and opacity of each factor: apart in lightness too.
_STYLE = {
    LimitingFactor.PAIN: ("hold", 0.9),
    LimitingFactor.STIFFNESS: ("arm", 0.45),
    LimitingFactor.WEAKNESS: ("quiet", 0.6),
    LimitingFactor.OTHER: ("quiet", 0.25),
}


class LimitsCard(QWidget):
    """Says in words what the bars show; out of sight without an answer."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = label("", "quiet")
        self.bars = _LimitBars(appearance)
        column(
            card(
                label(tr("What stopped the movements"), "title"),
                self.words,
                self.bars,
                spacing=appearance.gap(1.5),
            ),
            on=self,
        )
        self.hide()

    def show_months(self, months: Sequence[MonthEnds]) -> None:
        """Show the latest of these months, which come the earliest first."""
        latest = months[-_MOST_MONTHS:]
        self.setVisible(bool(latest))
        if latest:
            self.words.setText(month_words(latest[-1]))
            self.bars.show_months(latest)


class _LimitBars(PaintedWidget):
    """A bar for each month, parted by what ended the movements."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._months: tuple[MonthEnds, ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_months(self, months: Sequence[MonthEnds]) -> None:
        self._months = tuple(months)
        self.setAccessibleName(tr("What stopped the movements, month by month"))
        self.setAccessibleDescription(" ".join(map(month_words, months)))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        line = self.appearance.px() * 1.9
        return QSize(300, round(line * (len(self._months) + 1)))

    def paint(self, painter: QPainter) -> None:
        font = self.appearance.font(self.appearance.px(SMALL))
        metrics = QFontMetricsF(font)
        painter.setFont(font)
        line = self.height() / (len(self._months) + 1)
        names = [month_name(item) for item in self._months]
        left = max(map(metrics.horizontalAdvance, names), default=0.0) + 12
        for number, (item, name) in enumerate(zip(self._months, names, strict=True)):
            y = line * number
            painter.setPen(self.appearance.colour("quiet"))
            painter.drawText(QRectF(0, y, left, line), Qt.AlignmentFlag.AlignVCenter, name)
            x, room = left, self.width() - left
            for factor, count in _in_order(item):
                width = room * count / item.total
                bar = QRectF(x, y + line * 0.15, max(width - 2, 1), line * 0.7)
                painter.setPen(Qt.PenStyle.NoPen)
                painter.setBrush(self._colour(factor))
                painter.drawRoundedRect(bar, 4, 4)
                if width > metrics.horizontalAdvance(str(count)) + 12:
                    strong = factor is LimitingFactor.PAIN
                    painter.setPen(self.appearance.colour("raised" if strong else "ink"))
                    painter.drawText(bar, Qt.AlignmentFlag.AlignCenter, str(count))
                x += width
        self._paint_names(painter, metrics, QRectF(left, line * len(self._months), 0, line))

    def _paint_names(self, painter: QPainter, metrics: QFontMetricsF, place: QRectF) -> None:
        """Name the factors that occur, with their colours."""
        x = place.left()
        side = metrics.height() * 0.7
        for factor in _STYLE:
            if not any(factor in item.times for item in self._months):
                continue
            painter.setPen(Qt.PenStyle.NoPen)
            painter.setBrush(self._colour(factor))
            square = QRectF(x, place.center().y() - side / 2, side, side)
            painter.drawRoundedRect(square, 3, 3)
            words = tr(END_WORDS[factor])
            width = metrics.horizontalAdvance(words) + 2
            painter.setPen(self.appearance.colour("ink"))
            text = QRectF(x + side + 6, place.top(), width, place.height())
            painter.drawText(text, Qt.AlignmentFlag.AlignVCenter, words)
            x += side + width + 24

    def _colour(self, factor: LimitingFactor) -> QColor:
        return self.appearance.colour(*_STYLE[factor])


def _in_order(item: MonthEnds) -> list[tuple[LimitingFactor, int]]:
    return [(factor, item.times[factor]) for factor in _STYLE if factor in item.times]


def month_name(item: MonthEnds) -> str:
    return f"{tr(MONTHS[item.month.month - 1])} {item.month.year}"


def month_words(item: MonthEnds) -> str:
    """Return what ended the movements of a month, "Nov 2026: pain 2 of 38, stiffness 36 of 38."."""
    return f"{month_name(item)}: {end_times_words(item, tr)}."
