"""Band of a reading: its words, and beneath them interval and mark on a numbered scale."""

from dataclasses import dataclass

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter, QTextCharFormat, QTextLayout
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.interval_band import paint_band, paint_refusal, paint_scale
from gui.style.appearance import Appearance
from gui.style.measures import BODY_PX, GAP_PX
from gui.style.style_sheet import grown
from gui.text.wording import basis_sentence, measurement_words, tr, value_words
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import LEVEL_TICKS, scale_of, share_of_scale

#: Size of a reading at 100 % and how much of the growth of text it takes part in, of its range and
#: of what stands beside it; pixels. [technical]
_VALUE_PX, _VALUE_GROWTH = 44, 0.35
_WORDS_PX, _WORDS_GROWTH = 26, 0.5
#: Size of the numbers of the scale, pixels at 100 %. [technical]
_NUMBERS_PX = 16
#: Height of the band with the room for its mark, pixels. [technical]
_BAND_PX = 40
#: Room beside words and scale for half a mark, as beside a check box for its ring, pixels.
#: [technical]
ASIDE_PX = 4
#: Height of a line, relative to its type. [technical]
_LINE = 1.35


@dataclass(frozen=True, slots=True, kw_only=True)
class BandContent:
    """What a band shows: numbers, or none of them and the words that say why.

    What the interval rests on is said where the mouse rests on the band.
    """

    words: str
    #: What the number rests on, as "2 of 3 trials counted"; beside the words where there is room.
    caption: str = ""
    rests_on: str = ""
    value: float | None = None
    low: float | None = None
    high: float | None = None


def band_for_measurement(measurement: Measurement, trials: int) -> BandContent:
    """Return what a reading shows, of so many trials that were made."""
    return BandContent(
        words=measurement_words(measurement),
        caption=_caption(measurement, trials),
        rests_on=basis_sentence(measurement),
        value=measurement.value,
        low=measurement.low,
        high=measurement.high,
    )


def _caption(measurement: Measurement, trials: int) -> str:
    """Return which trials a number was worked out from, or nothing where there is none."""
    counted = sum(trial.scored for trial in measurement.trials)
    if measurement.value is None or not counted:
        return ""
    if trials == 1:
        return tr("from 1 trial")
    return tr("{number} of {total} trials counted").format(number=counted, total=trials)


class MeasurementBand(PaintedWidget):
    """A reading on its movement's scale. Empty until something is shown.

    What the number is follows its words where there is room. The words begin at the upper edge,
    with no room above them, so that they stand level with what is beside them.
    """

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(appearance, parent)
        self._movement = Movement.FLEXION
        self._shown = BandContent(words="")
        self._with_scale, self._with_caption = True, True
        self._heights: dict[tuple[int, int], int] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @property
    def words(self) -> str:
        return self._shown.words

    def show_reading(self, movement: Movement, shown: BandContent) -> None:
        self._movement, self._shown = movement, shown
        self._heights.clear()
        self.setAccessibleName(shown.words)
        self.setAccessibleDescription(shown.rests_on)
        self.setToolTip(shown.rests_on)
        self.updateGeometry()
        self.update()

    def show_scale(self, shown: bool) -> None:
        """Show the scale, or the words alone where there is little room."""
        self._with_scale = shown
        self.updateGeometry()
        self.update()

    def show_caption(self, shown: bool) -> None:
        """Show what the number rests on where it has room, or leave its line to others."""
        self._with_caption = shown
        self.update()

    def line_end(self, width: int, *, captioned: bool) -> int:
        """Return where the first line ends in a width, with its caption or without, pixels."""
        shown = self._shown
        end = self._caption_left()
        if shown.low is None or end > width:
            return width
        if captioned and shown.caption:
            return round(end + QFontMetricsF(self._caption_font()).horizontalAdvance(shown.caption))
        return round(end) - 2 * GAP_PX

    def baseline(self) -> float:
        """Return where the first line's letters stand, pixels beneath the upper edge."""
        return QFontMetricsF(self._font()).ascent() - self._above()

    def appearance_changed(self) -> None:
        self._heights.clear()
        super().appearance_changed()

    def sizeHint(self) -> QSize:
        return QSize(280, self.heightForWidth(280))

    def minimumSizeHint(self) -> QSize:
        return QSize(120, round(self._line() - self._above()) + self._scale_height())

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._words_height(width) + self._scale_height()

    def paint(self, painter: QPainter) -> None:
        shown, wide = self._shown, self.width()
        painter.setPen(self.appearance.colour("ink"))
        painter.setFont(self._font())
        words = self._words_height(wide)
        self._laid_out(wide)[0].draw(painter, QPointF(ASIDE_PX, -self._above()))
        self._paint_caption(painter)
        if not self._with_scale:
            return
        place = QRectF(ASIDE_PX, words + 8, wide - 2 * ASIDE_PX, _BAND_PX - 16)
        if shown.value is None or shown.low is None or shown.high is None:
            paint_refusal(painter, self.appearance, place)
            return
        paint_scale(painter, self.appearance, place)
        paint_band(
            painter, self.appearance, place, self._movement, shown.value, shown.low, shown.high
        )
        self._paint_numbers(painter, place)

    def _paint_caption(self, painter: QPainter) -> None:
        """Write what the number is after its words, on their line."""
        caption, font = self._shown.caption, self._caption_font()
        left = self._caption_left()
        fits = left + QFontMetricsF(font).horizontalAdvance(caption) <= self.width()
        if fits and self._with_caption:
            painter.setPen(self.appearance.colour("quiet"))
            painter.setFont(font)
            painter.drawText(QPointF(left, self.baseline()), caption)

    def _caption_left(self) -> float:
        value, rest = self._parts()
        words = QFontMetricsF(self._font()).horizontalAdvance(value)
        words += QFontMetricsF(self._rest_font()).horizontalAdvance(rest)
        return ASIDE_PX + words + 2 * GAP_PX

    def _caption_font(self) -> QFont:
        return self.appearance.font(grown(BODY_PX, _WORDS_GROWTH, self.appearance.percent))

    def _paint_numbers(self, painter: QPainter, place: QRectF) -> None:
        """Write what the scale's places are beneath it."""
        painter.setPen(self.appearance.colour("quiet"))
        painter.setFont(self._numbers_font())
        top, high = place.bottom() + 8, self._numbers_height()
        for share, words in self._ticks():
            wide = QFontMetricsF(painter.font()).horizontalAdvance(words) + 2
            middle = place.left() + share * place.width()
            left = min(max(ASIDE_PX, middle - wide / 2), self.width() - ASIDE_PX - wide)
            painter.drawText(
                QRectF(left, top, wide, high), int(Qt.AlignmentFlag.AlignCenter), words
            )

    def _ticks(self) -> list[tuple[float, str]]:
        """Return shares of the scale with what is written there."""
        movement = self._movement
        if MOVEMENTS[movement].unit is Unit.FRACTION:
            return [(share_of_scale(height, movement), tr(level)) for height, level in LEVEL_TICKS]
        low, high = scale_of(movement)
        return [
            (share, value_words(low + share * (high - low), Unit.DEGREES))
            for share in (0.0, 0.5, 1.0)
        ]

    def _px(self) -> int:
        return round(grown(_VALUE_PX, _VALUE_GROWTH, self.appearance.percent))

    def _line(self) -> int:
        return round(self._px() * _LINE)

    def _numbers_font(self) -> QFont:
        return self.appearance.font(grown(_NUMBERS_PX, _WORDS_GROWTH, self.appearance.percent))

    def _numbers_height(self) -> int:
        return round(QFontMetricsF(self._numbers_font()).lineSpacing())

    def _scale_height(self) -> int:
        return (_BAND_PX + self._numbers_height()) * self._with_scale

    def _words_height(self, width: int) -> int:
        """Return the height of the words; kept, for layouts ask a hundred times in a row."""
        key = (width, self._px())
        if key not in self._heights:
            high = max(self._laid_out(width)[1], self._line()) - self._above()
            self._heights[key] = round(high) + 4
        return self._heights[key]

    def _parts(self) -> tuple[str, str]:
        """Return the value and its range, which steps back; of a refusal all words first."""
        words = self._shown.words
        ends = words.find(" (") if self._shown.low is not None else -1
        return (words, "") if ends < 0 else (words[:ends], words[ends:])

    def _laid_out(self, width: int) -> tuple[QTextLayout, float]:
        """Return the words in lines of a width, the value alone bold, and how high they are."""
        value, rest = self._parts()
        form, part = QTextCharFormat(), QTextLayout.FormatRange()
        form.setFont(self._font())
        part.start, part.length, part.format = 0, len(value), form
        laid = QTextLayout(value + rest, self._rest_font() if rest else self._font())
        laid.setFormats([part])
        laid.beginLayout()
        high = 0.0
        while (line := laid.createLine()).isValid():
            line.setLineWidth(max(width - ASIDE_PX, 80))
            line.setPosition(QPointF(0, high))
            high += line.height()
        laid.endLayout()
        return laid, high

    def _above(self) -> float:
        """Return the room that the type leaves above the words, pixels."""
        metrics = QFontMetricsF(self._font())
        return metrics.ascent() + metrics.tightBoundingRect(self._parts()[0]).top() - 1

    def _font(self) -> QFont:
        if self._shown.low is None:
            return self.appearance.font(self.appearance.px())
        return self.appearance.font(self._px(), bold=True)

    def _rest_font(self) -> QFont:
        return self.appearance.font(grown(_WORDS_PX, _WORDS_GROWTH, self.appearance.percent))
