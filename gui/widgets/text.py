"""Plain pieces of a page: labels, buttons and frames with a role of the style sheet."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QFrame, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; roles: title, lead, quiet, small, alarm, or none."""
    made = QLabel(text)
    made.setProperty("role", role)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    made.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Minimum)
    return made


def button(text: str, role: str = "", *, tip: str = "", checkable: bool = False) -> QPushButton:
    """Return a button; roles: main, link, tile, word, or none."""
    made = QPushButton(text)
    made.setProperty("role", role)
    made.setCheckable(checkable)
    made.setAccessibleName(text.replace("&", "").replace("\n", ", "))
    if tip:
        made.setToolTip(tip)
        made.setAccessibleDescription(tip)
    return made


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
