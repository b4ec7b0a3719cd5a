"""The window as the keyboard and a screen reader meet it: its stops, their names, their order."""

from collections import Counter
from collections.abc import Iterator

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QScrollBar, QWidget


def stops(window: QWidget) -> list[QWidget]:
    """Return the visible controls that the Tab key reaches, in its order."""
    found, widget = [], window.nextInFocusChain()
    while widget is not None and widget is not window:
        tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
        if tab and widget.isVisible() and widget.isEnabled() and not widget.focusProxy():
            found.append(widget)
        widget = widget.nextInFocusChain()
    return found


def spoken_name(widget: QWidget) -> str:
    """Return the name that a screen reader gets."""
    interface = QAccessible.queryAccessibleInterface(widget)
    return interface.text(QAccessible.Text.Name) if interface is not None else ""


def complaints(window: QWidget) -> Iterator[str]:
    """Yield stops without a name, and those that cannot be told apart by kind and name."""
    named: Counter[tuple[str, str]] = Counter()
    for widget in stops(window):
        if isinstance(widget, QScrollBar):
            continue
        name = spoken_name(widget)
        if not name.strip():
            parent = type(widget.parentWidget()).__name__
            yield f"{type(widget).__name__} {widget.objectName()!r} on {parent} has no name"
        named[type(widget).__name__, name] += 1
    for (kind, name), count in named.items():
        if count > 1 and name.strip():
            yield f"{count} stops of the kind {kind} are called {name!r}"
