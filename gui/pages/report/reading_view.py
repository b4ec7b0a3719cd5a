"""The report to read in the window: the text size of the settings, tables that fit."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QTextDocument
from PySide6.QtWidgets import QFrame, QTextBrowser, QWidget

from gui.report.diagrams import PlacedDiagrams
from gui.style.fonts import window_font
from gui.text.wording import tr
from gui.widgets.fold import MoreBelow
from measure.report.svg import Diagram

#: Size of the running text of a diagram, points. [technical]
_DIAGRAM_PT = 8.0
#: Space around the text, pixels. [technical]
_MARGIN_PX = 24.0


class ReadingView(QTextBrowser):
    """Shows a report as one text that is as wide as its place; it scrolls by itself."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setProperty("role", "paper")
        self.setOpenLinks(False)
        self.setAccessibleName(tr("Report"))
        self._shown: QTextDocument | None = None
        MoreBelow(self, QColor(Qt.GlobalColor.white), round(_MARGIN_PX / 2))

    def show_report(self, html: str, diagrams: PlacedDiagrams, text_px: float) -> None:
        """Show a report whose diagrams are placed in its HTML.

        Parameters
        ----------
        text_px
            Size of running text; diagrams are as much larger as it, where there is room.
        """
        document = QTextDocument(self)
        font = window_font()
        font.setPixelSize(round(text_px))
        document.setDefaultFont(font)
        document.setDocumentMargin(_MARGIN_PX)
        document.setHtml(html)

        def scale(diagram: Diagram) -> float:
            room = self.viewport().width() - 3 * _MARGIN_PX
            return min(text_px / _DIAGRAM_PT, max(room, 1.0) / diagram.width)

        diagrams.draw_in(document, scale)
        self.setDocument(document)
        if self._shown is not None:
            self._shown.deleteLater()
        self._shown = document
