"""Widgets shown in windows of a size."""

from collections.abc import Callable

import pytest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

Place = Callable[[QWidget, tuple[int, int]], QWidget]


@pytest.fixture
def placed(qtbot: QtBot) -> Place:
    """Put a widget into a window of a size and show it; the windows live as long as the test."""
    windows = []

    def place(widget: QWidget, size: tuple[int, int]) -> QWidget:
        window = QWidget()
        layout = QVBoxLayout(window)
        layout.addWidget(widget)
        layout.addStretch(1)
        window.resize(*size)
        qtbot.addWidget(window)
        window.show()
        qtbot.waitExposed(window)
        windows.append(window)
        return window

    return place
