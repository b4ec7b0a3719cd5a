"""The window's typeface, Atkinson Hyperlegible; DejaVu Sans for signs that it lacks.

Figures of running text are as wide as each is. Where numbers stand below each other,
:mod:`gui.drawing.tabular_figures` gives them one width.
"""

from functools import cache
from importlib.resources import files
from pathlib import Path

from PySide6.QtGui import QFont, QFontDatabase, QFontInfo, QGuiApplication

#: The family of all text in the window, made for low vision: letters that are hard to mix up.
FAMILY = "Atkinson Hyperlegible"


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


def window_font() -> QFont:
    """Return a font of the typeface for all text, its figures as wide as each is."""
    return QFont(FAMILY)
