"""Appearance in force: palette, type sizes and style sheet, handed to every widget."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPalette
from PySide6.QtWidgets import QApplication

from gui.style.fonts import ensure_fonts, window_font
from gui.style.measures import BODY_PX, GAP_PX
from gui.style.palette import DARK, LIGHT, Palette, Scheme
from gui.style.style_sheet import style_sheet


class Appearance(QObject):
    """Which colours and sizes are in force; `changed` tells painters to paint anew."""

    changed = Signal()
    #: The window has another size: what is a share of its height needs another.
    window_resized = Signal()

    def __init__(self, scheme: Scheme = Scheme.SYSTEM, percent: int = 100) -> None:
        super().__init__()
        self._scheme = scheme
        self._percent = percent
        ensure_fonts()
        QApplication.styleHints().colorSchemeChanged.connect(self._system_changed)

    @property
    def scheme(self) -> Scheme:
        return self._scheme

    @property
    def percent(self) -> int:
        return self._percent

    @property
    def dark(self) -> bool:
        if self._scheme is Scheme.SYSTEM:
            return QApplication.styleHints().colorScheme() is Qt.ColorScheme.Dark
        return self._scheme is Scheme.DARK

    @property
    def palette(self) -> Palette:
        return DARK if self.dark else LIGHT

    def choose(self, *, scheme: Scheme | None = None, percent: int | None = None) -> None:
        """Change the scheme, the text size, or both, and apply them."""
        self._scheme = scheme or self._scheme
        self._percent = percent or self._percent
        self.apply()

    def apply(self) -> None:
        """Put the look on the whole application."""
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.setPalette(self._qt_palette())
            application.setFont(self.font(self.px()))
            # Without it Qt would style every widget again for each widget around it.
            application.setStyleSheet("")
            application.setStyleSheet(style_sheet(self.palette, self._percent))
        self.changed.emit()

    @contextmanager
    def styled_when_built(self) -> Iterator[None]:
        """Let widgets be built plain, and put the look on the whole application afterwards.

        Qt styles every widget again for each widget around it while a styled tree is built.
        """
        application = QApplication.instance()
        if isinstance(application, QApplication):
            application.setStyleSheet("")
        try:
            yield
        finally:
            self.apply()

    def px(self, role: float = 1.0) -> int:
        """Return a type size in pixels, for a size of :mod:`gui.style.measures`."""
        return round(BODY_PX * role * self._percent / 100)

    def gap(self, times: float = 1.0) -> int:
        """Return a distance in pixels; it does not grow with the text, to leave room for it."""
        return round(GAP_PX * times)

    def font(self, px: float, *, bold: bool = False) -> QFont:
        """Return the font of what is painted."""
        font = window_font()
        font.setPixelSize(max(1, round(px)))
        font.setWeight(QFont.Weight.Bold if bold else QFont.Weight.Normal)
        return font

    def digit_font(self, height: float) -> QFont:
        """Return the font whose digits are so high, in pixels."""
        font = self.font(100, bold=True)
        measured = QFontMetricsF(font).tightBoundingRect("0").height()
        font.setPixelSize(max(1, round(100 * height / max(measured, 1.0))))
        return font

    def colour(self, name: str, opacity: float = 1.0) -> QColor:
        """Return a colour of the palette by name."""
        colour = QColor(str(getattr(self.palette, name)))
        colour.setAlphaF(opacity)
        return colour

    def _qt_palette(self) -> QPalette:
        roles = QPalette.ColorRole
        palette = QPalette()
        for role, name in (
            (roles.Window, "ground"),
            (roles.Base, "raised"),
            (roles.AlternateBase, "sunken"),
            (roles.Button, "raised"),
            (roles.WindowText, "ink"),
            (roles.Text, "ink"),
            (roles.ButtonText, "ink"),
            (roles.PlaceholderText, "quiet"),
            (roles.ToolTipBase, "raised"),
            (roles.ToolTipText, "ink"),
            (roles.Highlight, "arm"),
            (roles.HighlightedText, "on_arm"),
            (roles.Link, "arm"),
        ):
            palette.setColor(role, self.colour(name))
        for role in (roles.WindowText, roles.Text, roles.ButtonText):
            palette.setColor(QPalette.ColorGroup.Disabled, role, self.colour("quiet"))
        return palette

    @Slot()
    def _system_changed(self) -> None:
        if self._scheme is Scheme.SYSTEM:
            self.apply()
