"""Values of the clinician's own hand: typed with a point or a comma, whatever the language."""

import pytest
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from gui.pages.measuring.typed_values import TypedValues
from measure.domain.landmarks import Side
from measure.domain.movements import Movement


@pytest.mark.parametrize(
    ("typed", "degrees"),
    [("92", 92.0), ("92.5", 92.5), ("92,5", 92.5), ("-5", -5.0), ("", None), ("-", None)],
)
def test_a_point_and_a_comma_are_alike(qtbot: QtBot, typed: str, degrees: float | None) -> None:
    form = TypedValues()
    qtbot.addWidget(form)
    form.offer([(Movement.FLEXION, Side.LEFT)])
    QTest.keyClicks(next(iter(form.fields.values())), typed)
    assert [value.value_deg for value in form.values] == ([] if degrees is None else [degrees])


def test_an_impossible_angle_is_left_out(qtbot: QtBot) -> None:
    form = TypedValues()
    qtbot.addWidget(form)
    form.offer([(Movement.FLEXION, Side.LEFT)])
    QTest.keyClicks(next(iter(form.fields.values())), "925")
    assert form.values == ()
