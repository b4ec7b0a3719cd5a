"""Chart of the value over a clip's time, with holds and the shown moment marked."""

from collections.abc import Sequence
from math import ceil, floor
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import QSize, Qt, Signal, Slot
from PySide6.QtGui import QFontMetrics, QPen
from PySide6.QtWidgets import QFrame, QSizePolicy, QVBoxLayout, QWidget

from gui.session.interfaces import ClipCurve
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX, SMALL
from gui.text.wording import tr
from measure.domain.measurements import Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import scale_holding
from measure.domain.vertebral_levels import centimetres_in

#: Least height of the place that the curve has, beside its captions, pixels. [technical]
_LEAST_PX = 110
#: Room above and beneath the plot, so that it stays within the round corners, and beside it,
#: pixels. [technical]
_ROOM_PX, _BESIDE_PX = 5, 3 * GAP_PX // 2
#: Most size of the captions, pixels: beyond it they would take the curve's room. [technical]
_MOST_TYPE_PX = 28
#: Length of a tick that shows its number alone, pixels. [technical]
_NO_TICK_PX = 0
#: Between two numbers beside the curve, degrees and centimetres, and the line that each has
#: across the chart. [technical]
_STEP_DEG, _STEP_CM, _LINE = 90, 10, 0.5
#: Width of the curve, pixels. [technical]
_PEN_PX = 2.5
#: Room before the first moment and after the last, relative to the time between. [technical]
_BEYOND = 0.02
#: One step of zooming. [technical]
_STEP = 1.5


class _UnitAxis(pg.AxisItem):  # type: ignore[misc]
    """An axis whose numbers carry their unit, so that it needs no line of its own for it."""

    unit = ""

    def tickStrings(self, values: Sequence[float], scale: float, spacing: float) -> list[str]:
        return [f"{text}{self.unit}" for text in super().tickStrings(values, scale, spacing)]


class ClipChart(QFrame):
    """A curve that one can click into, zoom with the wheel and move by dragging."""

    #: A moment, seconds.
    moved = Signal(float)
    #: The plot has another size.
    placed = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._curve: ClipCurve | None = None
        self._trials: tuple[tuple[Trial, bool], ...] = ()
        self._movement = Movement.FLEXION
        self._now_s = 0.0
        #: From the movement's unit to what is shown: the reach is shown in cm.
        self._factor = 1.0
        self._cursor: pg.PlotDataItem | None = None
        self._ends = (0.0, 1.0)
        self._axes = {side: _UnitAxis(side) for side in ("left", "bottom", "top")}
        self._plot = pg.PlotWidget(axisItems=self._axes)
        self._plot.setMenuEnabled(False)
        self._plot.hideButtons()
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        # The wheel and dragging work along the time alone: heights stay comparable.
        self._plot.setMouseEnabled(x=True, y=False)
        # As low as its least height where there is little room; its own wish would be taller.
        self._plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        self._plot.scene().sigMouseClicked.connect(self._clicked)
        self._plot.getPlotItem().vb.sigResized.connect(self.placed)
        self._gutter_px, self._above_px = 0, 0
        layout = QVBoxLayout(self)
        layout.setContentsMargins(_BESIDE_PX, _ROOM_PX, _BESIDE_PX, _ROOM_PX)
        layout.addWidget(self._plot)
        self.setProperty("role", "card")
        self.setAccessibleName(tr("value over time"))
        appearance.changed.connect(self.redraw)

    def show_curve(
        self, movement: Movement, curve: ClipCurve | None, trials: Sequence[tuple[Trial, bool]]
    ) -> None:
        """Draw a curve with its trials, each with whether it is accepted."""
        another = curve is not self._curve
        self._movement, self._curve, self._trials = movement, curve, tuple(trials)
        self.redraw()
        if another:
            self.show_whole()

    @Slot()
    def zoom_in(self) -> None:
        """Show a shorter time, about the marked moment."""
        self._zoom(1 / _STEP)

    @Slot()
    def zoom_out(self) -> None:
        """Show a longer time, about the marked moment."""
        self._zoom(_STEP)

    @Slot()
    def show_whole(self) -> None:
        """Show the whole clip's time."""
        if self._curve is not None and len(self._curve.time_s):
            self._plot.setXRange(*self._whole_s, padding=_BEYOND)

    @property
    def _whole_s(self) -> tuple[float, float]:
        """The first and the last moment of the curve."""
        if self._curve is None or not len(self._curve.time_s):
            return 0.0, 1.0
        return float(self._curve.time_s[0]), float(self._curve.time_s[-1])

    def across(self, time_s: float) -> int:
        """Return how far from the left edge a moment lies while the whole time is shown."""
        first, last = self._whole_s
        share = ((time_s - first) / max(last - first, 1e-9) + _BEYOND) / (1.0 + 2 * _BEYOND)
        box = self._plot.getPlotItem().vb.sceneBoundingRect()
        return int(self._plot.x()) + round(float(box.left()) + share * float(box.width()))

    def make_room(self, gutter_px: int, above_px: int) -> None:
        """Leave room at the left of the chart and above it."""
        if (gutter_px, above_px) == (self._gutter_px, self._above_px):
            return
        self._gutter_px, self._above_px = gutter_px, above_px
        layout = self.layout()
        assert layout is not None
        beside = _BESIDE_PX + 2 * GAP_PX * bool(gutter_px)
        left = gutter_px or _BESIDE_PX
        layout.setContentsMargins(left, _ROOM_PX + above_px, beside, _ROOM_PX)

    @property
    def least_height(self) -> int:
        """Height in which the curve has its least one, without room above the chart."""
        return int(self._plot.minimumHeight()) + 2 * _ROOM_PX

    def minimumSizeHint(self) -> QSize:
        return QSize(super().minimumSizeHint().width(), self.least_height + self._above_px)

    def _zoom(self, factor: float) -> None:
        if self._curve is not None:
            view = self._plot.getPlotItem().vb
            view.scaleBy(x=factor, center=(self._now_s, 0.0))

    def show_moment(self, time_s: float) -> None:
        """Mark the moment of the picture that is shown."""
        self._now_s = time_s
        if self._cursor is not None:
            self._cursor.setData([time_s, time_s], self._ends)

    @Slot()
    def redraw(self) -> None:
        """Draw everything anew, in the present look."""
        appearance, plot = self._appearance, self._plot
        plot.clear()
        plot.setBackground(appearance.palette.raised)
        degrees = MOVEMENTS[self._movement].unit is Unit.DEGREES
        self._factor = 1.0 if degrees else centimetres_in(1.0)
        self._axes["left"].unit, self._axes["bottom"].unit = "\u00b0" if degrees else " cm", " s"
        self._set_axes()
        if self._curve is None:
            return
        scored = [trial.value for trial, _ in self._trials if trial.scored]
        readings = [value for value in scored if value is not None]
        low, high = scale_holding(self._movement, readings)
        self._ends = low * self._factor, high * self._factor
        plot.setYRange(*self._ends, padding=0.03)
        self._draw_scale(_STEP_DEG if degrees else _STEP_CM)
        for trial, accepted in self._trials:
            self._draw_trial(trial, accepted)
        self._write_captions()
        plot.plot(
            self._curve.time_s,
            self._curve.value * self._factor,
            pen=self._curve_pen(),
            connect="finite",
            antialias=True,
        )
        self._cursor = plot.plot(
            [self._now_s, self._now_s], self._ends, pen=pg.mkPen(appearance.palette.ink, width=2)
        )

    def _curve_pen(self) -> QPen:
        """Return a pen whose corners are round."""
        pen: QPen = pg.mkPen(self._appearance.palette.arm, width=_PEN_PX)
        pen.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
        pen.setCapStyle(Qt.PenCapStyle.RoundCap)
        return pen

    def _set_axes(self) -> None:
        """Give the axes the present look, and the curve its least height beside them."""
        appearance = self._appearance
        font = appearance.font(min(_MOST_TYPE_PX, appearance.px(SMALL)))
        for side, axis in self._axes.items():
            axis.enableAutoSIPrefix(False)
            axis.setPen(appearance.palette.edge if side == "bottom" else None)
            axis.setTextPen(appearance.palette.ink if side == "top" else appearance.palette.quiet)
            axis.setStyle(tickFont=font, tickLength=_NO_TICK_PX)
        line = QFontMetrics(font).lineSpacing()
        self._axes["top"].setHeight(line + GAP_PX)
        self._axes["bottom"].setHeight(line + GAP_PX)
        self._plot.showAxis("top")
        self._plot.setMinimumHeight(_LEAST_PX + 2 * (line + GAP_PX) + GAP_PX)

    def _draw_scale(self, step: int) -> None:
        """Draw a line across the chart at each number beside it."""
        low, high = self._ends
        values = range(ceil(low / step) * step, floor(high) + 1, step)
        self._axes["left"].setTicks(
            [[(value, f"{value}{self._axes['left'].unit}") for value in values]]
        )
        for value in values:
            pen = pg.mkPen(self._appearance.colour("edge", _LINE), width=1)
            self._plot.addItem(pg.InfiniteLine(value, angle=0, pen=pen))

    def _write_captions(self) -> None:
        """Write above the chart which trial each stripe is, where nothing crosses it."""
        captions = [
            ((trial.hold_start_s + trial.hold_end_s) / 2, _caption(number, trial, accepted))
            for number, (trial, accepted) in enumerate(self._trials, start=1)
            if trial.hold_start_s is not None and trial.hold_end_s is not None
        ]
        self._axes["top"].setTicks([captions])

    def _draw_trial(self, trial: Trial, accepted: bool) -> None:
        """Draw the hold as an upright stripe, and the value across it where it counts."""
        if trial.hold_start_s is None or trial.hold_end_s is None:
            return
        colour = self._appearance.colour("hold", 0.18 if accepted and trial.scored else 0.06)
        hold = pg.LinearRegionItem(
            (trial.hold_start_s, trial.hold_end_s),
            movable=False,
            brush=pg.mkBrush(colour),
            pen=pg.mkPen(self._appearance.palette.hold, width=1, style=Qt.PenStyle.DotLine),
        )
        self._plot.addItem(hold)
        if accepted and trial.scored and trial.value is not None:
            self._plot.plot(
                [trial.hold_start_s, trial.hold_end_s],
                [trial.value * self._factor] * 2,
                pen=pg.mkPen(self._appearance.palette.ink, width=3),
            )

    @Slot(object)
    def _clicked(self, event: Any) -> None:
        place = self._plot.getPlotItem().vb.mapSceneToView(event.scenePos())
        self.moved.emit(max(0.0, float(place.x())))


def _caption(number: int, trial: Trial, accepted: bool) -> str:
    """Return what stands on a trial's stripe: its number, and whether it does not count."""
    if accepted and trial.scored:
        return str(number)
    words = tr("{number}: not counted") if accepted else tr("{number}: discarded")
    return words.format(number=number)
