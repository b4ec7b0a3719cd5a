"""The window has one typeface with one kind of figures, on any system."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QFontInfo, QFontMetricsF
from PySide6.QtWidgets import QHeaderView, QTableView
from pytestqt.qtbot import QtBot

from gui.style.appearance import Appearance
from gui.style.fonts import FAMILY
from gui.widgets.buttons import button
from gui.widgets.text import label

EMPTY = '<?xml version="1.0"?><fontconfig><cachedir>{folder}</cachedir></fontconfig>'
ASK = """
from PySide6.QtGui import QFont, QFontDatabase, QFontInfo, QGuiApplication
from gui.style.fonts import ensure_fonts
application = QGuiApplication([])
print(f"before: {QFontInfo(QFont()).family()}")
ensure_fonts()
print(f"after: {QFontInfo(QFont()).family()}")
print(f"for other signs: {'DejaVu Sans' in QFontDatabase.families()}")
"""


@pytest.mark.skipif(sys.platform != "linux", reason="not on this system: fonts that can be hidden")
def test_where_there_is_no_font_ours_is_used(tmp_path: Path) -> None:
    settings = tmp_path / "fonts.conf"
    settings.write_text(EMPTY.format(folder=tmp_path), encoding="utf-8")
    done = subprocess.run(
        [sys.executable, "-c", ASK],
        env={**os.environ, "FONTCONFIG_FILE": str(settings), "QT_QPA_PLATFORM": "offscreen"},
        cwd=Path(__file__).parents[3],
        capture_output=True,
        text=True,
        timeout=60,
        check=True,
    )
    assert done.stdout.splitlines() == [
        "before: ",
        "after: Atkinson Hyperlegible",
        "for other signs: True",
    ]


def test_labels_and_buttons_are_set_in_the_typeface(appearance: Appearance, qtbot: QtBot) -> None:
    for made in (label("118", "title"), label("118"), button("118", "main")):
        qtbot.addWidget(made)
        made.ensurePolished()
        assert QFontInfo(made.font()).family() == FAMILY
        metrics = QFontMetricsF(made.font())
        assert metrics.horizontalAdvance("1") < metrics.horizontalAdvance("0")


def test_figures_are_the_same_in_tables_labels_and_paintings(
    appearance: Appearance, qtbot: QtBot
) -> None:
    """Those of one width are other shapes, and look like a second typeface."""
    for percent in (100, 200):
        appearance.choose(percent=percent)
        shown = [QTableView(), QHeaderView(Qt.Orientation.Horizontal), label("118")]
        for made in shown:
            qtbot.addWidget(made)
            made.ensurePolished()
        fonts = [*(made.font() for made in shown), appearance.font(appearance.px())]
        widths = [list(map(QFontMetricsF(font).horizontalAdvance, "0123456789")) for font in fonts]
        assert widths == [widths[0]] * len(widths)
