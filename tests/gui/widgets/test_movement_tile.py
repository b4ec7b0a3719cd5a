"""Check boxes of movements: tiles with drawings."""

from PySide6.QtCore import QPoint, Qt
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.widgets.figures.movement_tile import MovementTile
from gui.widgets.figures.position_figure import PositionView
from measure.domain.movements import Movement
from tests.gui.conftest import Place


def test_the_whole_tile_is_pressed_and_in_large_text_it_is_one_line(
    appearance: Appearance, qtbot: QtBot, placed: Place
) -> None:
    tile = MovementTile(appearance, Movement.FLEXION)
    (drawing,) = tile.findChildren(PositionView)
    appearance.choose(percent=100)
    placed(tile, (170, 220))
    assert tile.tiled
    assert drawing.isVisible()
    qtbot.mouseClick(tile, Qt.MouseButton.LeftButton, pos=drawing.geometry().center())
    assert tile.isChecked()
    qtbot.mouseClick(
        tile, Qt.MouseButton.LeftButton, pos=QPoint(tile.width() - 4, tile.height() - 4)
    )
    assert not tile.isChecked()
    high = tile.heightForWidth(170)
    appearance.choose(percent=200)
    assert drawing.isHidden()
    assert tile.heightForWidth(900) < high
