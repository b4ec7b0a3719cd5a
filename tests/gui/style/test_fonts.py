"""On a system without fonts the window still shows letters."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

EMPTY = '<?xml version="1.0"?><fontconfig><cachedir>{folder}</cachedir></fontconfig>'
ASK = """
from PySide6.QtGui import QFont, QFontInfo, QGuiApplication
from gui.style.fonts import ensure_fonts
application = QGuiApplication([])
print(f"before: {QFontInfo(QFont()).family()}")
ensure_fonts()
print(f"after: {QFontInfo(QFont()).family()}")
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
    assert done.stdout.splitlines() == ["before: ", "after: DejaVu Sans"]
