"""Bland-Altman plot of one movement, drawn in the window's type and colours.

Left is a disc and right a square, as in the curves; the limits and the bias are named at their
ends, and what lies between the limits is tinted.
"""

from collections.abc import Iterator
from math import ceil, floor, pow

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy

from calibration.agreement.study import Agreement
from gui.drawing.chart_marks import paint_mark
from gui.drawing.chart_scales import ValueScale
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, CARD_RADIUS_PX, CONTENT_PX, GAP_PX
from gui.text.wording import movement_name, side_name, tr
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.landmarks import Side
from measure.progress.wording import number_words

#: Space beside the plot and above it on its card, and least width of both, pixels. [technical]
_BESIDE_PX, _ABOVE_PX, _LEAST_PX = CARD_PADDING_PX, 2 * GAP_PX, CONTENT_PX // 2
#: Height of the field of points at 100 % and its least, pixels, and the power of the size of the
#: text by which larger words take room from it: the whole plot is on the first screen. [technical]
_FIELD_PX, _LEAST_FIELD_PX, _LOWER = 270.0, 140.0, 1.2
#: Up to this text size the scale's name has a line of its own, per cent. [technical]
_BENEATH_PERCENT = 150
#: Letters that the width has room for at least: in a narrow window they are smaller. [technical]
_WIDEST = 30
#: Half the size of a mark, in the height of the type, and its most, pixels. [technical]
_MARK, _MOST_MARK_PX = 0.28, 8.0
#: Width of a line, and of the dots of the trend, pixels; length of its sample. [technical]
_LINE_PX, _DOT_PX, _SAMPLE_PX = 2.0, 4.0, 36.0
#: Steps of the scales' numbers, degrees. [technical]
_STEPS = (1, 2, 5, 10, 20, 50, 100)
#: Least numbers of a scale from which it can be read. [technical]
_LEAST_TICKS = 2
#: Room about the points and the limits, a share of their range. [technical]
_MARGIN = 0.06
#: Opacity of the tint between the limits, and inside a mark. [technical]
_FILL, _INSIDE = 0.1, 0.35


class AgreementPlot(PaintedWidget):
    """Shows each pair's difference above its mean, on a card."""

    def __init__(self, appearance: Appearance, study: Agreement) -> None:
        super().__init__(appearance)
        self._pairs = [pair for pair in study.pairs if pair.complete]
        self._limits, self._gain = study.limits, study.gain
        if self._gain is not None and self._gain.slope.holds(0.0):
            self._gain = None
        self.setAccessibleName(
            tr("plot of the differences: {movement}").format(movement=movement_name(study.movement))
        )
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def sizeHint(self) -> QSize:
        return QSize(CONTENT_PX, self.heightForWidth(CONTENT_PX))

    def minimumSizeHint(self) -> QSize:
        return QSize(_LEAST_PX, self.heightForWidth(_LEAST_PX))

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        field = max(_LEAST_FIELD_PX, _FIELD_PX * pow(100 / self.appearance.percent, _LOWER))
        line = QFontMetricsF(self._font(width)).height()
        return ceil(field + (2 + self._lines_beneath) * line + 2 * GAP_PX + 2 * _ABOVE_PX)

    @property
    def _lines_beneath(self) -> int:
        """Lines beneath the field: large words of the scale stand in line with its numbers."""
        return 2 if self.appearance.percent <= _BENEATH_PERCENT else 1

    def paint(self, painter: QPainter) -> None:
        self._paint_card(painter)
        font = self._font(self.width())
        painter.setFont(font)
        letters = QFontMetricsF(font)
        field = QRectF(self.rect()).adjusted(_BESIDE_PX, _ABOVE_PX, -_BESIDE_PX, -_ABOVE_PX)
        half = min(letters.height() * _MARK, _MOST_MARK_PX)
        self._paint_key(painter, letters, field, half)
        ends = max(letters.horizontalAdvance(name) for name, _ in self._levels())
        field.adjust(
            letters.horizontalAdvance(f"{_degrees(-20)} "),
            letters.height() + GAP_PX,
            -ends - 2 * GAP_PX,
            -self._lines_beneath * letters.height() - GAP_PX,
        )
        across, up = self._scales(field)
        self._paint_levels(painter, letters, field, up)
        self._paint_scales(painter, letters, field, (across, up))
        self._paint_points(painter, half, across, up)

    def _paint_card(self, painter: QPainter) -> None:
        half = 0.5
        painter.setPen(self.appearance.colour("line"))
        painter.setBrush(self.appearance.colour("raised"))
        sheet = QRectF(self.rect()).adjusted(half, half, -half, -half)
        painter.drawRoundedRect(sheet, CARD_RADIUS_PX, CARD_RADIUS_PX)

    def _paint_key(
        self, painter: QPainter, letters: QFontMetricsF, place: QRectF, half: float
    ) -> None:
        """Write what the height says, and at the right edge whose marks are whose."""
        line = QRectF(place.topLeft(), QPointF(place.right(), place.top() + letters.height()))
        painter.setPen(self.appearance.colour("ink"))
        painter.drawText(line, Qt.AlignmentFlag.AlignLeft, tr("Camera \u2212 goniometer"))
        for side in (side for side in (Side.RIGHT, Side.LEFT) if self._has(side)):
            self._write_at_right(painter, letters, line, side_name(side))
            self._paint_mark(painter, QPointF(line.right() - half, line.center().y()), side, half)
            line.setRight(line.right() - 2 * half - 3 * GAP_PX)
        if self._gain is not None:
            self._write_at_right(painter, letters, line, tr("trend"))
            end = QPointF(line.right(), line.center().y())
            self._paint_trend(painter, end - QPointF(_SAMPLE_PX, 0), end)

    def _write_at_right(
        self, painter: QPainter, letters: QFontMetricsF, line: QRectF, words: str
    ) -> None:
        """Write words at the right end of a line, and take their room off it."""
        painter.setPen(self.appearance.colour("ink"))
        painter.drawText(line, Qt.AlignmentFlag.AlignRight, words)
        line.setRight(line.right() - letters.horizontalAdvance(words) - GAP_PX)

    def _paint_mark(self, painter: QPainter, at: QPointF, side: Side, half: float) -> None:
        colour = self.appearance.colour(side.value)
        inside = self.appearance.colour(side.value, _INSIDE)
        paint_mark(painter, at, side, half, colour, hollow=inside)

    def _paint_trend(self, painter: QPainter, first: QPointF, last: QPointF) -> None:
        pen = QPen(self.appearance.colour("ink"), _DOT_PX)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        pen.setDashPattern([0.01, 2.0])
        painter.setPen(pen)
        painter.drawLine(first, last)

    def _paint_levels(
        self, painter: QPainter, letters: QFontMetricsF, field: QRectF, up: ValueScale
    ) -> None:
        """Draw the limits and the bias, each with its name at its end."""
        high, low = up.y(self._limits.upper.value), up.y(self._limits.lower.value)
        between = QRectF(field.left(), high, field.width(), low - high)
        painter.fillRect(between, self.appearance.colour("arm", _FILL))
        beneath = field.top() - letters.height()
        for number, (name, value) in enumerate(self._levels()):
            style = Qt.PenStyle.SolidLine if number == 1 else Qt.PenStyle.DashLine
            painter.setPen(QPen(self.appearance.colour("ink"), _LINE_PX, style))
            y = up.y(value)
            painter.drawLine(QPointF(field.left(), y), QPointF(field.right(), y))
            # Never one above the other where the limits are narrow.
            beneath = max(y - letters.height() / 2, beneath + letters.height())
            painter.drawText(QPointF(field.right() + 2 * GAP_PX, beneath + letters.ascent()), name)

    def _paint_scales(
        self,
        painter: QPainter,
        letters: QFontMetricsF,
        field: QRectF,
        scales: tuple[ValueScale, ValueScale],
    ) -> None:
        """Draw the two axes, left and beneath, and a line where both read the same."""
        across, up = scales
        painter.setPen(QPen(self.appearance.colour("edge"), 1))
        painter.drawLine(field.bottomLeft(), field.topLeft())
        painter.drawLine(field.bottomLeft(), field.bottomRight())
        if not up.beyond(0.0):
            painter.drawLine(QPointF(field.left(), up.y(0.0)), QPointF(field.right(), up.y(0.0)))
        painter.setPen(self.appearance.colour("quiet"))
        for value in _ticks(up, 1.6 * letters.height()):
            words = _degrees(value)
            left = field.left() - GAP_PX - letters.horizontalAdvance(words)
            middle = (letters.ascent() - letters.descent()) / 2
            painter.drawText(QPointF(left, up.y(value) + middle), words)
        line = field.bottom() + GAP_PX + letters.ascent()
        wide = letters.horizontalAdvance
        ticks = [
            (across.y(value) - wide(words) / 2, words)
            for value in _ticks(across, 2.5 * wide(_degrees(100)))
            for words in [_degrees(value)]
        ]
        # What is counted is named beneath the numbers, in the middle, or in place of the last ones
        # where others stay, or beside them.
        name = tr("Mean of both")
        begins = field.center().x() - wide(name) / 2
        if self._lines_beneath == 1:
            begins = field.right() - wide(name)
            kept = [(left, words) for left, words in ticks if left + wide(words) <= begins - GAP_PX]
            if len(kept) >= _LEAST_TICKS:
                ticks = kept
            else:
                begins = field.right() + wide(_degrees(100)) / 2 + GAP_PX
        for left, words in ticks:
            painter.drawText(QPointF(left, line), words)
        painter.setPen(self.appearance.colour("ink"))
        beneath = (self._lines_beneath - 1) * letters.height()
        painter.drawText(QPointF(begins, line + beneath), name)

    def _paint_points(
        self, painter: QPainter, half: float, across: ValueScale, up: ValueScale
    ) -> None:
        """Draw the pairs, and the line about which they lie where they do not lie level."""
        for pair in self._pairs:
            at = QPointF(across.y(pair.mean_deg), up.y(pair.difference_deg))
            self._paint_mark(painter, at, pair.side, half)
        if self._gain is not None:
            first, last = (
                QPointF(across.y(mean), up.y(self._gain.difference_at(mean)))
                for mean in (self._gain.lowest_deg, self._gain.highest_deg)
            )
            self._paint_trend(painter, first, last)

    def _scales(self, field: QRectF) -> tuple[ValueScale, ValueScale]:
        """Return the scale of the means, from left to right, and that of the differences."""
        means = [pair.mean_deg for pair in self._pairs]
        differences = [pair.difference_deg for pair in self._pairs]
        differences += [value for _, value in self._levels()]
        return (
            _scale(means, field.right(), field.left()),
            _scale(differences, field.top(), field.bottom()),
        )

    def _levels(self) -> Iterator[tuple[str, float]]:
        """Yield what has a line across the plot, from the top down: its name and its value."""
        limits = self._limits
        for words, value in (
            (tr("Upper limit {value}"), limits.upper.value),
            (tr("Average {value}"), limits.bias.value),
            (tr("Lower limit {value}"), limits.lower.value),
        ):
            yield words.format(value=signed_degrees(value)), value

    def _has(self, side: Side) -> bool:
        return any(pair.side is side for pair in self._pairs)

    def _font(self, width: int) -> QFont:
        return self.appearance.font(min(self.appearance.px(), width / _WIDEST))


def signed_degrees(value: float) -> str:
    """Return a difference with its sign and one decimal."""
    return f"{'+' if value >= 0 else chr(0x2212)}{number_words(abs(value), 1, tr)}\u00b0"


def _degrees(value: float) -> str:
    return f"{value:.0f}\u00b0".replace("-", "\u2212")


def _scale(values: list[float], top_px: float, bottom_px: float) -> ValueScale:
    low, high = min(values), max(values)
    margin = _MARGIN * max(high - low, 1.0)
    return ValueScale(low=low - margin, high=high + margin, top_px=top_px, bottom_px=bottom_px)


def _ticks(scale: ValueScale, apart_px: float) -> list[float]:
    """Return the values to name, so far apart in pixels."""
    degree_px = abs(scale.y(scale.low + 1.0) - scale.y(scale.low))
    step = next((step for step in _STEPS if step * degree_px >= apart_px), _STEPS[-1])
    first, last = ceil(scale.low / step), floor(scale.high / step)
    return [float(step * number) for number in range(first, last + 1)]
