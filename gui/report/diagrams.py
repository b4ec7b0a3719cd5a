"""Diagrams of a report inside a text document: placeholders in its HTML, then painted objects."""

import re
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QByteArray, QRect, QRectF, QSizeF
from PySide6.QtGui import (
    QPainter,
    QPyTextObject,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
)
from PySide6.QtSvg import QSvgRenderer

from measure.report.svg import FONT, Diagram, Words, as_svg

#: Placeholder of a diagram in the text until it is laid out; characters of the private use area,
#: which no text of a report contains.
_PLACE = "\ue000{}\ue001"
_PLACES = re.compile("\ue000(\\d+)\ue001")
#: Type of a diagram's text object, and the property with its number. [technical]
_DIAGRAM = int(QTextFormat.ObjectTypes.UserObject) + 1
_NUMBER = int(QTextFormat.Property.UserProperty) + 1


class PlacedDiagrams:
    """The diagrams of one HTML text, in the order of their placeholders."""

    def __init__(self) -> None:
        self._diagrams: list[Diagram] = []

    def place(self, diagram: Diagram) -> str:
        """Return the placeholder of a diagram, which is kept for its place."""
        self._diagrams.append(diagram)
        return _PLACE.format(len(self._diagrams) - 1)

    def words(self) -> str:
        """Return every letter that the diagrams write."""
        return "".join(
            mark.text
            for diagram in self._diagrams
            for mark in diagram.marks
            if isinstance(mark, Words)
        )

    def draw_in(self, document: QTextDocument, scale: Callable[[Diagram], float]) -> None:
        """Replace the placeholders in a document by painted diagrams.

        Parameters
        ----------
        scale
            Returns the length of a point of a diagram in the document's unit.
        """
        drawer = _DiagramTextObject(self._diagrams, scale, document)
        document.documentLayout().registerHandler(_DIAGRAM, drawer)
        # From the end, so that the placeholders before keep their positions.
        for match in reversed(list(_PLACES.finditer(document.toPlainText()))):
            cursor = QTextCursor(document)
            cursor.setPosition(match.start())
            cursor.setPosition(match.end(), QTextCursor.MoveMode.KeepAnchor)
            shape = QTextCharFormat()
            shape.setObjectType(_DIAGRAM)
            shape.setProperty(_NUMBER, int(match[1]))
            shape.setToolTip(self._diagrams[int(match[1])].description)
            cursor.insertText("\ufffc", shape)


def without_places(html: str) -> str:
    """Return a text without the placeholders of diagrams."""
    return _PLACES.sub("", html)


class _DiagramTextObject(QPyTextObject):
    """Painter of the diagrams at their places in the text."""

    def __init__(
        self, diagrams: list[Diagram], scale: Callable[[Diagram], float], parent: QTextDocument
    ) -> None:
        super().__init__(parent)
        self._diagrams, self._scale = diagrams, scale

    def intrinsicSize(self, document: Any, position: int, shape: QTextFormat) -> QSizeF:
        diagram = self._diagrams[shape.property(_NUMBER)]
        scale = self._scale(diagram)
        return QSizeF(diagram.width * scale, diagram.height * scale)

    def drawObject(
        self,
        painter: QPainter,
        place: QRectF | QRect,
        document: Any,
        position: int,
        shape: QTextFormat,
    ) -> None:
        svg = as_svg(self._diagrams[shape.property(_NUMBER)], FONT)
        QSvgRenderer(QByteArray(svg.encode("utf-8"))).render(painter, QRectF(place))
