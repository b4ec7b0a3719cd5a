"""Chart of readings over weeks: bands of both shoulders, pain and exercises beneath."""

import datetime as dt
from collections.abc import Iterable, Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

import pyqtgraph as pg
from PySide6.QtCore import QRectF, Qt, Signal, Slot
from PySide6.QtGui import QColor, QFont, QPainter, QPen
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from gui.drawing.curves import CurvePoint, HistoryCurve
from gui.drawing.interval_band import band_opacity
from gui.style.appearance import Appearance
from gui.text.wording import event_mark, side_title, tr
from gui.widgets.day_axis import DayAxis
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.reading_scale import LEVEL_TICKS, scale_holding
from measure.domain.records import Event

_DAY_S = 86_400.0
#: Both shoulders of one session stand a little apart. [technical]
_APART_S = 0.16 * _DAY_S
#: Where exercises stand under the ratings of pain. [technical]
_EXERCISE_LANE = -2.0
#: Below this the curves could not be read, in sizes of the text. [technical]
_LEAST_HEIGHT = 20
_SYMBOL = {Side.LEFT: "o", Side.RIGHT: "s"}


@dataclass(frozen=True, slots=True, kw_only=True)
class ChartMarks:
    """What stands in a chart beside its readings.

    Attributes
    ----------
    exercises_s
        Times when an exercise was done, seconds since 1970, UTC.
    practice
        Sides and local days whose readings are practice; they are drawn hollow.
    turns
        Sides and the days on which their course turned.
    """

    exercises_s: Sequence[float] = ()
    events: Sequence[Event] = ()
    practice: AbstractSet[tuple[Side, dt.date]] = frozenset()
    turns: Sequence[tuple[Side, dt.date]] = ()


class _IntervalBands(pg.GraphicsObject):  # type: ignore[misc] # pyqtgraph carries no types
    """Upright bands with a mark each; a refusal is an empty dashed frame at the foot."""

    def __init__(
        self,
        appearance: Appearance,
        curve: HistoryCurve,
        movement: Movement,
        width_s: float,
        foot: tuple[float, float],
    ) -> None:
        super().__init__()
        self._appearance, self._curve, self._movement = appearance, curve, movement
        self._width_s, self._foot = width_s, foot
        self._shift_s = -_APART_S if curve.side is Side.LEFT else _APART_S

    def paint(self, painter: QPainter, *_: object) -> None:
        unit = MOVEMENTS[self._movement].unit
        for point in self._curve.points:
            x = point.time_s + self._shift_s
            place = self._place(x, point)
            if point.value is None or point.low is None or point.high is None:
                pen = QPen(self._appearance.colour("edge"), 1.5, Qt.PenStyle.DashLine)
                painter.setBrush(Qt.BrushStyle.NoBrush)
            else:
                pen = QPen(self._appearance.colour(self._curve.side.value), 1.2)
                fill = band_opacity(point.low, point.high, unit)
                painter.setBrush(self._appearance.colour(self._curve.side.value, fill * 0.75))
            pen.setCosmetic(True)
            painter.setPen(pen)
            painter.drawRect(place)

    def _place(self, x: float, point: CurvePoint) -> QRectF:
        low, high = point.low, point.high
        if low is None or high is None:
            low, high = self._foot
        return QRectF(x - self._width_s / 2, low, self._width_s, high - low)

    def boundingRect(self) -> QRectF:
        if not self._curve.points:
            return QRectF()
        bottom, top = _scale(self._movement, self._curve.points)
        first, last = self._curve.points[0].time_s, self._curve.points[-1].time_s
        return QRectF(first - _DAY_S, bottom, last - first + 2 * _DAY_S, top - bottom)


def _scale(movement: Movement, points: Iterable[CurvePoint]) -> tuple[float, float]:
    """Return the scale on which the marks of all readings are seen."""
    return scale_holding(movement, [p.value for p in points if p.value is not None])


class HistoryChart(QWidget):
    """The chart of one movement. Choosing a mark tells which measurement it is."""

    picked = Signal(object)

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._movement = Movement.FLEXION
        self._curves: tuple[HistoryCurve, ...] = ()
        self._marks = ChartMarks()
        self._graphics = pg.GraphicsLayoutWidget()
        # As high as there is room for: the library's own wish would make the page scroll.
        policies = QSizePolicy.Policy
        self._graphics.setSizePolicy(policies.Expanding, policies.Ignored)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self._graphics)
        self.setAccessibleName(tr("readings over time"))
        appearance.changed.connect(self.redraw)

    def show_curves(
        self,
        movement: Movement,
        curves: Sequence[HistoryCurve],
        marks: ChartMarks | None = None,
    ) -> None:
        """Draw these curves, and what stands beside them."""
        self._movement, self._curves = movement, tuple(curves)
        self._marks = marks or ChartMarks()
        self.redraw()

    @Slot()
    def redraw(self) -> None:
        """Draw everything anew, in the present look."""
        self._graphics.clear()
        self._graphics.setMinimumHeight(self._appearance.px(_LEAST_HEIGHT))
        self._graphics.setBackground(self._appearance.palette.raised)
        top = self._plot(0, tr("degrees") if self._in_degrees() else tr("level"))
        below = self._plot(1, tr("pain"))
        self._graphics.ci.layout.setRowFixedHeight(1, self._appearance.px(8))
        below.setXLink(top)
        below.setYRange(-3.2, 10.8, padding=0)
        below.getAxis("left").setTicks([[(_EXERCISE_LANE, "\u25b2"), (0, "0"), (10, "10")]])
        top.setYRange(*self._span(), padding=0.0)
        if not self._in_degrees():
            top.getAxis("left").setTicks([[(height, tr(level)) for height, level in LEVEL_TICKS]])
        for curve in self._curves:
            self._draw_curve(top, below, curve)
        self._draw_exercises(below)
        self._draw_days(top)
        for plot in (top, below):
            plot.getAxis("left").setWidth(self._appearance.px(4.2))

    def _span(self) -> tuple[float, float]:
        """Return the part of the scale that the readings need, with room around them."""
        points = [point for curve in self._curves for point in curve.points]
        bottom, top = _scale(self._movement, points)
        low = min((point.low for point in points if point.low is not None), default=bottom)
        high = max((point.high for point in points if point.high is not None), default=top)
        room = (top - bottom) * 0.08
        return max(bottom - room, low - 2 * room), min(top + room, high + room)

    def _in_degrees(self) -> bool:
        return MOVEMENTS[self._movement].unit is Unit.DEGREES

    def _plot(self, row: int, name: str) -> pg.PlotItem:
        plot = self._graphics.addPlot(row=row, col=0, axisItems={"bottom": DayAxis()})
        plot.setMenuEnabled(False)
        plot.hideButtons()
        plot.setMouseEnabled(x=True, y=False)
        plot.showGrid(x=False, y=True, alpha=0.15)
        font = QFont(self._appearance.font(self._appearance.px(0.85)))
        for side in ("left", "bottom"):
            axis = plot.getAxis(side)
            axis.setPen(self._appearance.palette.edge)
            axis.setTextPen(self._appearance.palette.quiet)
            axis.setTickFont(font)
            # Levels are no thousandths of anything.
            axis.enableAutoSIPrefix(False)
        size = f"{self._appearance.px(0.85)}px"
        plot.setLabel("left", name, color=self._appearance.palette.quiet, **{"font-size": size})
        return plot

    def _draw_curve(self, top: pg.PlotItem, below: pg.PlotItem, curve: HistoryCurve) -> None:
        low, high = self._span()
        foot = (low + (high - low) * 0.01, low + (high - low) * 0.06)
        width_s = 0.18 * _DAY_S * self._spread()
        top.addItem(_IntervalBands(self._appearance, curve, self._movement, width_s, foot))
        colour = QColor(self._appearance.colour(curve.side.value))
        shift = -_APART_S if curve.side is Side.LEFT else _APART_S
        readings = curve.readings
        ink, hollow = self._appearance.palette.ink, self._appearance.palette.raised
        marks = pg.ScatterPlotItem(
            x=[point.time_s + shift for point in readings],
            y=[point.value for point in readings],
            data=list(readings),
            symbol=_SYMBOL[curve.side],
            size=max(5, round(self._appearance.px() * 0.36)),
            pen=pg.mkPen(self._appearance.palette.ink, width=1.2),
            brush=[pg.mkBrush(hollow if self._practised(point) else ink) for point in readings],
            hoverable=True,
        )
        marks.sigClicked.connect(self._marked)
        line = pg.PlotCurveItem(
            x=[point.time_s + shift for point in readings],
            y=[point.value for point in readings],
            antialias=True,
            pen=pg.mkPen(
                colour,
                width=1.5,
                style=Qt.PenStyle.SolidLine if curve.side is Side.LEFT else Qt.PenStyle.DashLine,
            ),
        )
        top.addItem(line)
        top.addItem(marks)
        hurt = [point for point in curve.points if point.pain is not None]
        below.addItem(
            pg.ScatterPlotItem(
                x=[point.time_s + shift for point in hurt],
                y=[point.pain for point in hurt],
                symbol=_SYMBOL[curve.side],
                size=round(self._appearance.px() * 0.5),
                pen=pg.mkPen(colour, width=1.5),
                brush=pg.mkBrush(colour),
            )
        )

    def _practised(self, point: CurvePoint) -> bool:
        record = point.record
        return (record.measurement.side, record.taken.day) in self._marks.practice

    def _spread(self) -> float:
        """Return how much wider bands are drawn when the span of time is long."""
        times = [point.time_s for curve in self._curves for point in curve.points]
        days = (max(times) - min(times)) / _DAY_S if times else 1.0
        return min(6.0, max(1.0, days / 25))

    def _draw_exercises(self, below: pg.PlotItem) -> None:
        """Draw a sign for every exercise done, in a lane of their own under the pain."""
        exercises_s = self._marks.exercises_s
        if exercises_s:
            below.addItem(
                pg.ScatterPlotItem(
                    x=list(exercises_s),
                    y=[_EXERCISE_LANE] * len(exercises_s),
                    symbol="t1",
                    size=round(self._appearance.px() * 0.5),
                    pen=None,
                    brush=pg.mkBrush(self._appearance.palette.hold),
                )
            )

    def _draw_days(self, top: pg.PlotItem) -> None:
        """Draw a line with its word on each day of an event or turn within the time shown."""
        days = []
        for event in self._marks.events:
            words = event_mark(event.kind)
            if event.side is not None:
                words = f"{words}, {side_title(event.side).lower()}"
            days.append((event.day, words, Qt.PenStyle.DotLine, 0.04))
        days += [
            (
                day,
                tr("turn, {side}").format(side=side_title(side).lower()),
                Qt.PenStyle.DashLine,
                0.5,
            )
            for side, day in self._marks.turns
        ]
        times = [point.time_s for curve in self._curves for point in curve.points]
        for day, words, style, height in days:
            noon_s = noon_timestamp(day)
            if times and min(times) - _DAY_S <= noon_s <= max(times) + _DAY_S:
                top.addItem(
                    pg.InfiniteLine(
                        pos=noon_s,
                        angle=90,
                        pen=pg.mkPen(self._appearance.palette.edge, width=1.5, style=style),
                        label=words,
                        labelOpts={
                            "color": self._appearance.palette.ink,
                            "position": height,
                            "rotateAxis": (1, 0),
                            "anchors": [(0, 0), (0, 1)],
                        },
                    )
                )

    @Slot(object, object, object)
    def _marked(self, _plot: object, spots: Sequence[pg.SpotItem], _event: object) -> None:
        if len(spots):
            self.picked.emit(spots[0].data().record)


def noon_timestamp(day: dt.date) -> float:
    """Return the noon of a local day in seconds since 1970, UTC."""
    return dt.datetime.combine(day, dt.time(12)).astimezone().timestamp()


def legend_text(curve: HistoryCurve) -> str:
    """Return which sign means which shoulder."""
    sign = "\u25cf" if curve.side is Side.LEFT else "\u25a0"
    return f"{sign} {side_title(curve.side)}"
