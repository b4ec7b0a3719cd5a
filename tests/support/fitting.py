"""What does not fit in a window: texts cut off, things over each other or beyond the edge."""

from collections.abc import Iterator
from itertools import combinations

from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractScrollArea,
    QCheckBox,
    QLabel,
    QPushButton,
    QScrollArea,
    QWidget,
)

from gui.widgets.buttons import ElidedButton
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.measurement_band import MeasurementBand

#: Rounding of text sizes, pixels.
_SLACK_PX = 1.0


def misfits(window: QWidget) -> Iterator[str]:
    """Yield what is cut off, covered or outside among the visible widgets of a window."""
    for label in window.findChildren(QLabel):
        if label.isVisible() and label.text():
            yield from _cut_label(label)
    for one in window.findChildren(QAbstractButton):
        if one.isVisible() and one.text():
            yield from _cut_button(one)
    for band in window.findChildren(MeasurementBand):
        if band.isVisible() and band.height() < band.heightForWidth(band.width()) - _SLACK_PX:
            yield f"band {band.words[:40]!r} is cut off"
    for sentence in window.findChildren(FittedSentence):
        if sentence.isVisible() and not sentence._fits(sentence.fitted_font()):
            yield f"sentence {sentence.text[:40]!r} does not fit {sentence.size().toTuple()}"
    for area in window.findChildren(QScrollArea):
        if area.isVisible() and area.widget().width() > area.viewport().width():
            yield f"{named(area.widget())} is wider than its {area.viewport().width()} pixels"
    yield from _misplaced(window)


def named(widget: QWidget) -> str:
    """Return how a person finds the widget: its kind and its words."""
    text = getattr(widget, "text", "")
    words = text() if callable(text) else text
    return f"{type(widget).__name__} {str(words)[:40]!r}"


def _cut_label(label: QLabel) -> Iterator[str]:
    metrics = QFontMetricsF(label.font())
    if label.wordWrap():
        needed = label.heightForWidth(label.width())
        widest = max(metrics.horizontalAdvance(word) for word in label.text().split())
    else:
        needed = label.sizeHint().height()
        widest = max(metrics.horizontalAdvance(line) for line in label.text().splitlines())
    if label.height() < needed - _SLACK_PX:
        yield f"label {label.text()[:40]!r}: {label.height()} of {needed} high"
    if label.contentsRect().width() < widest - _SLACK_PX:
        yield f"label {label.text()[:40]!r}: {label.width()} of {widest:.0f} wide"


def _cut_button(one: QAbstractButton) -> Iterator[str]:
    if isinstance(one, QCheckBox):
        if one.height() < one.heightForWidth(one.width()) - _SLACK_PX:
            yield f"tick {one.text()[:40]!r} is {one.height()} high"
    elif isinstance(one, QPushButton) and not isinstance(one, ElidedButton):
        lines = one.text().replace("&", "").splitlines()
        needed = max(QFontMetricsF(one.font()).horizontalAdvance(line) for line in lines)
        if one.width() < needed - _SLACK_PX:
            yield f"button {one.text()[:40]!r}: {one.width()} of {needed:.0f} wide"


def _misplaced(window: QWidget) -> Iterator[str]:
    """Yield what a layout has put outside its parent, or over something beside it."""
    for parent in (window, *window.findChildren(QWidget)):
        layout = parent.layout()
        if layout is None or not parent.isVisible():
            continue
        shown = [
            child
            for child in parent.findChildren(QWidget)
            if child.parentWidget() is parent and child.isVisible() and not child.isWindow()
        ]
        scrolls = isinstance(parent, QAbstractScrollArea)
        for child in shown:
            if not scrolls and not parent.rect().contains(child.geometry()):
                place, room = child.geometry().getRect(), parent.size().toTuple()
                yield f"{named(child)} at {place} is outside of {named(parent)} {room}"
        for one, other in combinations(shown, 2):
            if not one.geometry().intersected(other.geometry()).isEmpty():
                yield f"{named(one)} lies over {named(other)}"
