"""Band of a reading: interval, mark and the words beneath."""

from dataclasses import dataclass

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPainter
from PySide6.QtWidgets import QSizePolicy, QWidget

from gui.drawing.interval_band import paint_band, paint_guide, paint_refusal, paint_scale
from gui.style.appearance import Appearance
from gui.text.wording import basis_sentence, measurement_words, tr, trial_words
from gui.widgets.painted_widget import PaintedWidget
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import MOVEMENTS, Movement


@dataclass(frozen=True, slots=True, kw_only=True)
class BandContent:
    """What a band shows: numbers, or none of them and the words that say why.

    A waiting one may have a guide value, which is drawn as a hollow mark without a band. What the
    interval rests on is said where the mouse rests on the band.
    """

    words: str
    rests_on: str = ""
    value: float | None = None
    low: float | None = None
    high: float | None = None
    waiting: bool = False


def band_for_measurement(measurement: Measurement | None) -> BandContent:
    """Return what a reading shows; None is a movement without any captured trial."""
    if measurement is None:
        return BandContent(words=tr("Not measured."))
    return BandContent(
        words=measurement_words(measurement),
        rests_on=basis_sentence(measurement),
        value=measurement.value,
        low=measurement.low,
        high=measurement.high,
    )


def band_for_trial(trial: Trial, movement: Movement) -> BandContent:
    words = trial_words(trial, MOVEMENTS[movement].unit)
    if not trial.scored:
        return BandContent(words=words)
    return BandContent(words=words, value=trial.value, low=trial.low, high=trial.high)


class MeasurementBand(PaintedWidget):
    """A reading on its movement's scale. Empty until something is shown.

    The words are set in a role of the type scale, but never smaller than a share of the window's
    height, `least_share`.
    """

    def __init__(
        self,
        appearance: Appearance,
        *,
        type_size: float = 1.0,
        least_share: float = 0.0,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(appearance, parent)
        self._movement: Movement | None = None
        self._shown = BandContent(words="")
        self._type_size, self._least_share = type_size, least_share
        self._title = ""
        self._heights: dict[tuple[int, float], int] = {}
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @property
    def words(self) -> str:
        return self._shown.words

    def show_reading(self, movement: Movement, shown: BandContent, title: str = "") -> None:
        if (movement, shown, title) == (self._movement, self._shown, self._title):
            return
        self._movement, self._shown, self._title = movement, shown, title
        self._heights.clear()
        self.setAccessibleName(f"{title}: {shown.words}" if title else shown.words)
        self.setAccessibleDescription(shown.rests_on)
        self.setToolTip(shown.rests_on)
        self.updateGeometry()
        self.update()

    def appearance_changed(self) -> None:
        self._heights.clear()
        super().appearance_changed()

    def sizeHint(self) -> QSize:
        return QSize(280, self._band_height() + self._title_height() + self._words_height(280))

    def minimumSizeHint(self) -> QSize:
        return QSize(120, self._band_height() + self._title_height() + self._line())

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return self._band_height() + self._title_height() + self._words_height(width)

    def paint(self, painter: QPainter) -> None:
        top = self._title_height()
        if self._title:
            painter.setPen(self.appearance.colour("quiet"))
            painter.setFont(self.appearance.font(self._px() * 0.92))
            painter.drawText(
                QRectF(0, 0, self.width(), top), Qt.AlignmentFlag.AlignLeft, self._title
            )
        place = QRectF(6, top + 8, self.width() - 12, self._band_height() - 16)
        shown = self._shown
        if self._movement is not None:
            if shown.value is not None and shown.low is not None and shown.high is not None:
                paint_scale(painter, self.appearance, place)
                paint_band(
                    painter,
                    self.appearance,
                    place,
                    self._movement,
                    shown.value,
                    shown.low,
                    shown.high,
                )
            elif shown.waiting:
                paint_scale(painter, self.appearance, place)
                if shown.value is not None:
                    paint_guide(painter, self.appearance, place, self._movement, shown.value)
            else:
                paint_refusal(painter, self.appearance, place)
        painter.setPen(self.appearance.colour("quiet" if shown.waiting else "ink"))
        painter.setFont(self._font())
        space = QRectF(0, top + self._band_height(), self.width(), self.height())
        painter.drawText(space, self._flags(), shown.words)

    def _px(self) -> float:
        return max(self._least_share * self.window().height(), self.appearance.px(self._type_size))

    def _line(self) -> int:
        return round(self._px() * 1.45)

    def _band_height(self) -> int:
        return round(self._px() * 1.2) + 20

    def _title_height(self) -> int:
        return self._line() if self._title else 0

    def _words_height(self, width: int) -> int:
        """Return the height of the words; kept, for layouts ask a hundred times in a row."""
        key = (width, self._px())
        if key not in self._heights:
            space = QRectF(0, 0, max(width, 80), 10_000)
            metrics = QFontMetricsF(self._font())
            needed = metrics.boundingRect(space, self._flags(), self._shown.words)
            self._heights[key] = round(max(needed.height(), self._line())) + 4
        return self._heights[key]

    def _font(self) -> QFont:
        strong = self._shown.low is not None
        return self.appearance.font(self._px(), bold=strong)

    @staticmethod
    def _flags() -> int:
        top = Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop
        return int(top | Qt.TextFlag.TextWordWrap)
