"""A dialog that says one thing."""

from PySide6.QtWidgets import QDialog, QVBoxLayout, QWidget

from gui.widgets.text import button, label


def plain_dialog(text: str, close: str, parent: QWidget | None = None) -> QDialog:
    """Return a dialog with a text and one button."""
    made = QDialog(parent)
    made.setWindowTitle("Thawline")
    made.setMinimumWidth(420)
    layout = QVBoxLayout(made)
    layout.setContentsMargins(32, 32, 32, 24)
    layout.setSpacing(24)
    layout.addWidget(label(text, "title"))
    one = button(close, "main")
    one.clicked.connect(made.accept)
    layout.addWidget(one)
    return made
