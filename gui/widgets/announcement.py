"""Announcement of words to screen readers, as they appear."""

from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QWidget


def announce(widget: QWidget, words: str) -> None:
    """Let a screen reader say words that appeared on a widget that is in sight."""
    if words and widget.isVisible():
        QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(widget, words))
