"""The window's typeface, Atkinson Hyperlegible; DejaVu Sans for signs that it lacks."""

from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from PySide6.QtGui import QFont, QFontDatabase, QFontInfo, QGuiApplication
from PySide6.QtWidgets import QApplication

#: The family of all text in the window, made for low vision: letters that are hard to mix up.
FAMILY = "Atkinson Hyperlegible"
#: Kinds of widgets whose figures stand in columns; Qt takes text here, its types say bytes.
_IN_COLUMNS: tuple[Any, ...] = ("QTableView", "QHeaderView")


@cache
def add_bundled_fonts() -> None:
    """Let Qt use DejaVu Sans too, until the application ends: fonts go with it."""
    from matplotlib import get_data_path

    for name in ("DejaVuSans.ttf", "DejaVuSans-Bold.ttf"):
        QFontDatabase.addApplicationFont(str(Path(get_data_path(), "fonts", "ttf", name)))


@cache
def add_typeface() -> None:
    """Let Qt use our typeface, until the application ends."""
    folder = files("fontpkg_atkinson_hyperlegible") / "files"
    for name in ("AtkinsonHyperlegible-Regular.ttf", "AtkinsonHyperlegible-Bold.ttf"):
        QFontDatabase.addApplicationFontFromData((folder / name).read_bytes())


@cache
def ensure_fonts() -> None:
    """Set the application in our typeface; signs that it lacks come from the system's fonts.

    On a system without any they come from DejaVu Sans: every such sign would be an empty box.
    """
    if not QFontInfo(QFont()).family():
        add_bundled_fonts()
    add_typeface()
    QGuiApplication.setFont(window_font())


def line_up_columns() -> None:
    """Give tables figures of one width; to be called after each new style sheet, which forgets."""
    for kind in _IN_COLUMNS:
        QApplication.setFont(column_font(), kind)


def window_font() -> QFont:
    """Return a font of the typeface for running text, its figures as wide as each is."""
    return QFont(FAMILY)


def column_font() -> QFont:
    """Return a font of the typeface with figures all of one width, so that columns line up."""
    font = window_font()
    font.setFeature(QFont.Tag("tnum"), 1)
    return font
