"""The window has one typeface, its figures stand below each other, on any system."""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from PySide6.QtGui import QFontInfo, QFontMetricsF
from PySide6.QtWidgets import QTableView
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


@pytest.mark.parametrize("bold", [False, True])
def test_all_figures_have_one_width(appearance: Appearance, bold: bool) -> None:
    metrics = QFontMetricsF(appearance.font(60, bold=bold))
    assert len({metrics.horizontalAdvance(figure) for figure in "0123456789"}) == 1


def test_labels_and_buttons_are_set_in_the_typeface(appearance: Appearance, qtbot: QtBot) -> None:
    for made in (label("118", "title"), label("118"), button("118", "main")):
        qtbot.addWidget(made)
        made.ensurePolished()
        assert QFontInfo(made.font()).family() == FAMILY
        metrics = QFontMetricsF(made.font())
        assert metrics.horizontalAdvance("1") < metrics.horizontalAdvance("0")


def test_figures_of_a_table_line_up_after_each_style_sheet(
    appearance: Appearance, qtbot: QtBot
) -> None:
    for percent in (100, 200):
        appearance.choose(percent=percent)
        table = QTableView()
        qtbot.addWidget(table)
        table.ensurePolished()
        metrics = QFontMetricsF(table.font())
        assert metrics.horizontalAdvance("1") == metrics.horizontalAdvance("0")
