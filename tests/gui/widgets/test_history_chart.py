"""The chart of readings over weeks."""

from dataclasses import replace

from pytestqt.qtbot import QtBot

from gui.drawing.curves import CurvePoint, curves
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.history_chart import HistoryChart
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition
from tests.support.gui.demo_history import demo_history
from tests.support.gui.stage import TODAY
from tests.support.record_samples import person


def test_the_mark_of_a_reading_beyond_the_scale_is_seen(qtbot: QtBot) -> None:
    history = demo_history(person(), TODAY, weeks=4)
    reach = Movement.HAND_BEHIND_BACK
    curve = curves(history, reach, AssessmentCondition())[0]
    highest: CurvePoint = replace(curve.points[0], value=1.0, low=0.9, high=1.1)
    chart = HistoryChart(Appearance(Scheme.LIGHT))
    qtbot.addWidget(chart)
    chart.show_curves(reach, [replace(curve, points=(highest,))])
    low, high = chart._span()
    assert low < 1.0 < high
