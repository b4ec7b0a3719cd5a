"""Bundled fonts: DejaVu Sans, for print and for systems without fonts."""

from functools import cache
from pathlib import Path

from PySide6.QtGui import QFont, QFontDatabase, QFontInfo


@cache
def add_bundled_fonts() -> None:
    """Let Qt use our fonts too, until the application ends: fonts go with it."""
    from matplotlib import get_data_path

    for name in ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"):
        QFontDatabase.addApplicationFont(str(Path(get_data_path(), "fonts", "ttf", name)))


def ensure_fonts() -> None:
    """Add our fonts on a system without any, where every letter would be an empty box."""
    if not QFontInfo(QFont()).family():
        add_bundled_fonts()
