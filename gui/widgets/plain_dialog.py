"""Dialog with one text, to be closed or agreed to."""

from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from gui.widgets.buttons import ButtonRow, button
from gui.widgets.text import label


def plain_dialog(
    text: str, close: str, parent: QWidget | None = None, *, agree: str = ""
) -> QDialog:
    """Return a dialog with a text and a button that closes it; with `agree` one that accepts, too.

    Closing without agreeing rejects it.
    """
    made = QDialog(parent)
    made.setWindowTitle("Thawline")
    made.setMinimumWidth(420)
    layout = QVBoxLayout(made)
    layout.setContentsMargins(32, 32, 32, 24)
    layout.setSpacing(24)
    layout.addWidget(label(text, "title"))
    closing = button(close, "main")
    closing.clicked.connect(made.reject)
    buttons = [closing]
    if agree:
        other = button(agree)
        other.clicked.connect(made.accept)
        buttons.append(other)
    layout.addWidget(ButtonRow(buttons))
    closing.setFocus()
    return made
