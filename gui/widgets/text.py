"""Labels with a role of the style sheet, and the notice of every page with a number."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QWidget,
)

from gui.text.wording import notice


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; roles: title, lead, quiet, small, alarm, or none."""
    made = QLabel(text)
    made.setProperty("role", role)
    made.setWordWrap(True)
    made.setTextFormat(Qt.TextFormat.PlainText)
    policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)
    policy.setHeightForWidth(True)
    made.setSizePolicy(policy)
    return made


class NoticeBar(QWidget):
    """The notice of every page with a number: an estimate, not a diagnosis."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(0, 4, 0, 4)
        self.words = label(notice(), "notice")
        layout.addWidget(self.words)
