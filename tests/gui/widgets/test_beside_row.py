"""Card with rows: in a card that is higher than they are, rows keep together at its top."""

from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.beside_row import list_card

#: Height of a row, and of a card with much more room than two need, pixels.
ROW_PX, CARD_PX = 60, 400


def test_rows_keep_together_in_a_higher_card(qtbot: QtBot, appearance: Appearance) -> None:
    appearance.apply()
    rows = [QWidget() for _ in range(2)]
    for row in rows:
        row.setMinimumHeight(ROW_PX)
    made = list_card(*rows)
    qtbot.addWidget(made)
    made.resize(300, made.sizeHint().height())
    made.show()
    places = [row.geometry() for row in rows]
    made.resize(300, CARD_PX)
    assert [row.geometry() for row in rows] == places
