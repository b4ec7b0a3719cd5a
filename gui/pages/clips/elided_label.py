"""A label of one line that is shortened in its middle; its tool tip is the whole."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy

#: Least room for a shortened text, in widths of a digit. [technical]
_LEAST_DIGITS = 8


class ElidedLabel(QLabel):
    """For names of any length."""

    def __init__(self, role: str = "") -> None:
        super().__init__()
        self._whole = ""
        self.setProperty("role", role)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Preferred)

    def say(self, text: str) -> None:
        """Show another text."""
        self._whole = text
        self.setAccessibleName(text)
        self.setToolTip(text)
        self._fit()

    def sizeHint(self) -> QSize:
        return QSize(self.fontMetrics().horizontalAdvance(self._whole), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        least = _LEAST_DIGITS * self.fontMetrics().horizontalAdvance("0")
        return QSize(least, super().minimumSizeHint().height())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    def _fit(self) -> None:
        self.setText(
            self.fontMetrics().elidedText(self._whole, Qt.TextElideMode.ElideMiddle, self.width())
        )
