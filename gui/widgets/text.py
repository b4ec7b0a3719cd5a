"""Plain pieces of a page: labels, buttons and frames with a role of the style sheet."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QLabel,
    QLayout,
    QPushButton,
    QScrollArea,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; roles: title, lead, quiet, small, alarm, or none."""
    made = QLabel(text)
    made.setProperty("role", role)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
    return made


def button(text: str, role: str = "", *, key: str = "", checkable: bool = False) -> QPushButton:
    """Return a button; roles: main, link, tile, word, or none. A key is told beside its text."""
    made = QPushButton()
    made.setProperty("role", role)
    made.setProperty("key", key)
    made.setCheckable(checkable)
    set_text(made, text)
    return made


def set_text(one: QPushButton, text: str) -> None:
    """Give a button another text, keeping the key that is told beside it."""
    key = str(one.property("key") or "")
    one.setText(f"{text}  \u00b7  {key}" if key else text)
    one.setAccessibleName(text.replace("&", "").replace("\n", ", "))
    one.setAccessibleDescription(key)


def card(*contents: QWidget, role: str = "card", spacing: int = 8) -> QFrame:
    """Return a frame with the contents one below the other."""
    made = QFrame()
    made.setProperty("role", role)
    layout = QVBoxLayout(made)
    layout.setContentsMargins(20, 16, 20, 16)
    layout.setSpacing(spacing)
    for content in contents:
        layout.addWidget(content)
    return made


def hairline() -> QFrame:
    made = QFrame()
    made.setProperty("role", "hair")
    made.setFixedHeight(1)
    return made


def scrolled(page: QWidget) -> QScrollArea:
    """Return the page in an area that scrolls when large type does not fit."""
    page.setObjectName("page")
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setWidget(page)
    return area


def clear(layout: QLayout) -> None:
    """Take everything out of a layout, out of sight at once."""
    while (item := layout.takeAt(0)) is not None:
        widget = item.widget()
        if widget is not None:
            widget.hide()
            widget.deleteLater()
