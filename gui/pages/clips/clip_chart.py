"""Chart of the value over a clip's time, with holds and the shown moment marked."""

from collections.abc import Sequence
from typing import Any

import pyqtgraph as pg
from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.session.interfaces import ClipCurve
from gui.style.appearance import Appearance
from gui.text.wording import tr
from measure.domain.measurements import Trial
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import scale_holding
from measure.domain.vertebral_levels import centimetres_in

#: Least height, in heights of running text. [technical]
_LEAST_HEIGHT = 6.0
#: One step of zooming. [technical]
_STEP = 1.5


class _UnitAxis(pg.AxisItem):  # type: ignore[misc]
    """An axis whose numbers carry their unit, so that it needs no line of its own for it."""

    unit = ""

    def tickStrings(self, values: Sequence[float], scale: float, spacing: float) -> list[str]:
        return [f"{text}{self.unit}" for text in super().tickStrings(values, scale, spacing)]


class ClipChart(QWidget):
    """A curve that one can click into, zoom with the wheel and move by dragging."""

    #: A moment, seconds.
    moved = Signal(float)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._curve: ClipCurve | None = None
        self._trials: tuple[tuple[Trial, bool], ...] = ()
        self._movement = Movement.FLEXION
        self._now_s = 0.0
        #: From the movement's unit to what is shown: the reach is shown in cm.
        self._factor = 1.0
        self._cursor: pg.InfiniteLine | None = None
        self._axes = {side: _UnitAxis(side) for side in ("left", "bottom")}
        self._plot = pg.PlotWidget(axisItems=self._axes)
        self._plot.setMenuEnabled(False)
        self._plot.hideButtons()
        self._plot.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        # The wheel and dragging work along the time alone: heights stay comparable.
        self._plot.setMouseEnabled(x=True, y=False)
        # As low as its least height where there is little room; its own wish would be taller.
        self._plot.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Ignored)
        self._plot.scene().sigMouseClicked.connect(self._clicked)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._plot)
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
            ends = float(self._curve.time_s[0]), float(self._curve.time_s[-1])
            self._plot.setXRange(*ends, padding=0.02)

    def _zoom(self, factor: float) -> None:
        if self._curve is not None:
            view = self._plot.getPlotItem().vb
            view.scaleBy(x=factor, center=(self._now_s, 0.0))

    def show_moment(self, time_s: float) -> None:
        """Mark the moment of the picture that is shown."""
        self._now_s = time_s
        if self._cursor is not None:
            self._cursor.setValue(time_s)

    @Slot()
    def redraw(self) -> None:
        """Draw everything anew, in the present look."""
        appearance, plot = self._appearance, self._plot
        plot.setMinimumHeight(appearance.px(_LEAST_HEIGHT))
        plot.clear()
        plot.setBackground(appearance.palette.raised)
        degrees = MOVEMENTS[self._movement].unit is Unit.DEGREES
        self._axes["left"].unit, self._axes["bottom"].unit = "\u00b0" if degrees else " cm", " s"
        for axis in self._axes.values():
            axis.enableAutoSIPrefix(False)
            axis.setPen(appearance.palette.edge)
            axis.setTextPen(appearance.palette.quiet)
            axis.setTickFont(appearance.font(appearance.px(0.85)))
        if self._curve is None:
            return
        scored = [trial.value for trial, _ in self._trials if trial.scored]
        readings = [value for value in scored if value is not None]
        self._factor = 1.0 if degrees else centimetres_in(1.0)
        low, high = scale_holding(self._movement, readings)
        plot.setYRange(low * self._factor, high * self._factor, padding=0.03)
        for number, (trial, accepted) in enumerate(self._trials, start=1):
            self._draw_trial(number, trial, accepted)
        plot.plot(
            self._curve.time_s,
            self._curve.value * self._factor,
            pen=pg.mkPen(appearance.palette.arm, width=2),
            connect="finite",
        )
        self._cursor = pg.InfiniteLine(
            self._now_s, pen=pg.mkPen(appearance.palette.ink, width=1.5), movable=False
        )
        plot.addItem(self._cursor)

    def _draw_trial(self, number: int, trial: Trial, accepted: bool) -> None:
        """Draw the hold as an upright stripe with the trial's number, and the value across it."""
        if trial.hold_start_s is None or trial.hold_end_s is None:
            return
        colour = self._appearance.colour("hold", 0.28 if accepted and trial.scored else 0.08)
        hold = pg.LinearRegionItem(
            (trial.hold_start_s, trial.hold_end_s),
            movable=False,
            brush=pg.mkBrush(colour),
            pen=pg.mkPen(self._appearance.palette.hold, width=1, style=Qt.PenStyle.DotLine),
        )
        self._plot.addItem(hold)
        text = pg.TextItem(
            _caption(number, trial, accepted), color=self._appearance.palette.ink, anchor=(0.5, 0.0)
        )
        text.setFont(self._appearance.font(self._appearance.px(0.85), bold=True))
        text.setPos((trial.hold_start_s + trial.hold_end_s) / 2, self._top())
        self._plot.addItem(text)
        if trial.scored and trial.value is not None:
            self._plot.plot(
                [trial.hold_start_s, trial.hold_end_s],
                [trial.value * self._factor] * 2,
                pen=pg.mkPen(self._appearance.palette.ink, width=3),
            )

    def _top(self) -> float:
        """Return the value at the chart's upper edge."""
        return float(self._plot.getPlotItem().vb.viewRange()[1][1])

    @Slot(object)
    def _clicked(self, event: Any) -> None:
        place = self._plot.getPlotItem().vb.mapSceneToView(event.scenePos())
        self.moved.emit(max(0.0, float(place.x())))


def _caption(number: int, trial: Trial, accepted: bool) -> str:
    """Return what stands on a trial's stripe: its number, and whether it does not count."""
    if accepted and trial.scored:
        return str(number)
    words = tr("{number}: not measured") if accepted else tr("{number}: discarded")
    return words.format(number=number)
