"""Labels with a role of the style sheet, and the notice of every page with a number."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QLabel,
    QSizePolicy,
    QWidget,
)

from gui.text.wording import notice
from gui.widgets.layouts import centred, column


def label(text: str, role: str = "") -> QLabel:
    """Return a wrapping label; it has a role of the style sheet, or none.

    Roles: display (heading of a page), title (heading of a section), lead (a leading sentence),
    strong, quiet (steps back), small (quiet and small), notice, alarm.
    """
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

    def __init__(self, parent: QWidget | None = None, *, wide: bool = False) -> None:
        super().__init__(parent)
        self.words = label(notice(), "notice")
        column(self.words if wide else centred(self.words), on=self, margins=(0, 4, 0, 4))
