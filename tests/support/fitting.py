"""What does not fit in a window: texts cut off, things covered, outside or out of reach."""

from collections.abc import Iterator
from itertools import combinations

from PySide6.QtCore import QRect, QRectF, Qt
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSlider,
    QAbstractSpinBox,
    QCheckBox,
    QComboBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QListView,
    QPushButton,
    QRadioButton,
    QScrollArea,
    QScrollBar,
    QStyle,
    QStyleOptionComboBox,
    QTableView,
    QWidget,
)

from gui.pages.clips.measurement_band import MeasurementBand
from gui.widgets.buttons import ElidedButton
from gui.widgets.fitted_sentence import FittedSentence

#: Rounding of text sizes, pixels.
_SLACK_PX = 1.0
#: Edge of a control that counts for nothing, pixels.
_EDGE_PX = 3
#: Letters of a text that name a widget.
_NAMED_BY = 40
#: What a person presses, moves or fills in.
_CONTROLS = (
    QAbstractButton,
    QLineEdit,
    QAbstractSlider,
    QAbstractSpinBox,
    QComboBox,
    QAbstractItemView,
)


def misfits(window: QWidget) -> Iterator[str]:
    """Yield what is cut off, covered, outside or out of reach among the visible widgets of a
    window.
    """
    shown = visible_widgets(window)
    for widget in shown:
        yield from _cut(widget)
        if isinstance(widget, (QLabel, *_CONTROLS)) and not isinstance(widget, QScrollBar):
            yield from _out_of_reach(widget)
        if isinstance(widget, _CONTROLS) and not isinstance(widget, QScrollBar):
            yield from _covered(widget)
    yield from _misplaced(window, shown)


def visible_widgets(window: QWidget) -> list[QWidget]:
    """Return the visible widgets of a window, its menus and dialogs too, parents before children.

    What is hidden hides all that is inside it, so that pages out of sight cost nothing.
    """
    shown: list[QWidget] = []
    parents = [window]
    while parents:
        inside = [child for child in parents.pop().children() if isinstance(child, QWidget)]
        visible = [child for child in inside if child.isVisible()]
        shown += visible
        parents += visible
    return shown


def named(widget: QWidget) -> str:
    """Return how a person finds the widget: its kind and its words."""
    text = getattr(widget, "text", "")
    words = (text() if callable(text) else text) or widget.accessibleName()
    return f"{type(widget).__name__} {str(words)[:_NAMED_BY]!r}"


# -- texts ------------------------------------------------------------------------------------


def _cut(widget: QWidget) -> Iterator[str]:
    """Yield what cannot be read in full on one widget."""
    match widget:
        case QLabel() if widget.text():
            yield from _cut_label(widget)
        case QAbstractButton() if widget.text():
            yield from _cut_button(widget)
        case QComboBox():
            yield from _narrow(widget, widget.currentText(), _room_of_box(widget))
        case QLineEdit():
            yield from _narrow(widget, widget.placeholderText(), _room_of_line(widget))
        case QHeaderView():
            yield from _cut_header(widget)
        case QAbstractItemView():
            yield from _cut_items(widget)
        case MeasurementBand():
            if widget.height() < widget.heightForWidth(widget.width()) - _SLACK_PX:
                yield f"band {widget.words[:_NAMED_BY]!r} is cut off"
        case FittedSentence():
            if not widget._fits(widget.fitted_font()):
                size = widget.size().toTuple()
                yield f"sentence {widget.text[:_NAMED_BY]!r} does not fit {size}"
        case QScrollArea():
            if widget.widget() is not None and widget.widget().width() > widget.viewport().width():
                room = widget.viewport().width()
                yield f"{named(widget.widget())} is wider than its {room} pixels"


def _cut_label(label: QLabel) -> Iterator[str]:
    metrics = QFontMetricsF(label.font())
    if label.wordWrap():
        needed = label.heightForWidth(label.width())
        widest = max(map(metrics.horizontalAdvance, label.text().split()), default=0.0)
    else:
        needed = label.sizeHint().height()
        widest = max(map(metrics.horizontalAdvance, label.text().splitlines()), default=0.0)
    if label.textFormat() is Qt.TextFormat.RichText:
        widest = 0.0
    if label.height() < needed - _SLACK_PX:
        yield f"label {label.text()[:_NAMED_BY]!r}: {label.height()} of {needed} high"
    if label.contentsRect().width() < widest - _SLACK_PX:
        yield f"label {label.text()[:_NAMED_BY]!r}: {label.width()} of {widest:.0f} wide"


def _cut_button(one: QAbstractButton) -> Iterator[str]:
    if isinstance(one, QCheckBox) and one.hasHeightForWidth():
        if one.height() < one.heightForWidth(one.width()) - _SLACK_PX:
            yield f"tick {one.text()[:_NAMED_BY]!r} is {one.height()} high"
    elif isinstance(one, QCheckBox | QRadioButton):
        if one.width() < one.sizeHint().width() - _SLACK_PX:
            yield f"{named(one)}: {one.width()} of {one.sizeHint().width()} wide"
    elif isinstance(one, QPushButton) and not isinstance(one, ElidedButton):
        lines = one.text().replace("&", "").splitlines()
        metrics = QFontMetricsF(one.font())
        yield from _narrow(one, max(lines, key=metrics.horizontalAdvance), one.width())
        if one.height() < len(lines) * metrics.height() - _SLACK_PX:
            yield f"{named(one)} is {one.height()} high"


def _narrow(widget: QWidget, text: str, room: float) -> Iterator[str]:
    needed = QFontMetricsF(widget.font()).horizontalAdvance(text)
    if room < needed - _SLACK_PX:
        yield f"{type(widget).__name__} {text[:_NAMED_BY]!r}: {room:.0f} of {needed:.0f} wide"


def _room_of_box(box: QComboBox) -> int:
    option = QStyleOptionComboBox()
    box.initStyleOption(option)
    field = QStyle.SubControl.SC_ComboBoxEditField
    return box.style().subControlRect(QStyle.ComplexControl.CC_ComboBox, option, field, box).width()


def _room_of_line(line: QLineEdit) -> int:
    margins = line.textMargins()
    return line.contentsRect().width() - margins.left() - margins.right()


def _cut_header(header: QHeaderView) -> Iterator[str]:
    model = header.model()
    if header.orientation() is not Qt.Orientation.Horizontal or model is None:
        return
    for column in range(header.count()):
        text = str(model.headerData(column, header.orientation()) or "")
        if not header.isSectionHidden(column):
            room, needed = header.sectionSize(column), header.sectionSizeHint(column)
            if room < needed - _SLACK_PX:
                yield f"heading {text[:_NAMED_BY]!r}: {room} of {needed} wide"


def _cut_items(view: QAbstractItemView) -> Iterator[str]:
    """Yield texts of a list or table that are shortened and have no tool tip with the whole."""
    model, metrics = view.model(), QFontMetricsF(view.font())
    if model is None:
        return
    columns = model.columnCount() if isinstance(view, QTableView) else 1
    for row in range(model.rowCount()):
        for column in range(columns):
            index = model.index(row, column)
            place = view.visualRect(index)
            text = str(index.data(Qt.ItemDataRole.DisplayRole) or "")
            if not text or place.isEmpty() or index.data(Qt.ItemDataRole.ToolTipRole):
                continue
            if isinstance(view, QListView) and view.wordWrap():
                flags = int(Qt.TextFlag.TextWordWrap | Qt.AlignmentFlag.AlignLeft)
                words = metrics.boundingRect(QRectF(place), flags, text)
                if words.height() > place.height() + _SLACK_PX:
                    yield f"item {text[:_NAMED_BY]!r}: {place.height()} of {words.height()} high"
                continue
            needed = max(map(metrics.horizontalAdvance, text.splitlines()))
            if place.width() < needed - _SLACK_PX:
                yield f"item {text[:_NAMED_BY]!r}: {place.width()} of {needed:.0f} wide"


# -- places -----------------------------------------------------------------------------------


def _out_of_reach(widget: QWidget) -> Iterator[str]:
    """Yield whether a part of a widget lies where neither the window nor scrolling shows it."""
    inner: QWidget = widget
    place = widget.rect()
    while not inner.isWindow():
        outer = inner.parentWidget()
        place = QRect(inner.mapTo(outer, place.topLeft()), place.size())
        scrolled = isinstance(outer.parentWidget(), QAbstractScrollArea)
        if scrolled and outer.parentWidget().viewport() is outer:
            # The contents scroll: from here on the area itself has to be in reach.
            place = outer.rect()
        elif not outer.rect().contains(place):
            yield f"{named(widget)}: {place.getRect()} is outside of {named(outer)}"
            return
        inner = outer


def _covered(widget: QWidget) -> Iterator[str]:
    """Yield what lies over a control where it can be seen."""
    window, seen = widget.window(), widget.visibleRegion().boundingRect()
    if min(seen.width(), seen.height()) <= 2 * _EDGE_PX:
        return
    inside = seen.adjusted(_EDGE_PX, _EDGE_PX, -_EDGE_PX, -_EDGE_PX)
    for point in (inside.center(), inside.topLeft(), inside.bottomRight()):
        place = widget.mapTo(window, point)
        top = window.childAt(place)
        if top is None or top is widget or widget.isAncestorOf(top):
            continue
        if not top.isAncestorOf(widget):
            yield f"{named(top)} lies over {named(widget)}"
            return


def _misplaced(window: QWidget, shown: list[QWidget]) -> Iterator[str]:
    """Yield what a layout has put outside its parent, or over something beside it."""
    children: dict[QWidget, list[QWidget]] = {}
    for widget in shown:
        if not widget.isWindow():
            children.setdefault(widget.parentWidget(), []).append(widget)
    for parent, beside in children.items():
        if parent.layout() is None:
            continue
        scrolls = isinstance(parent, QAbstractScrollArea)
        for child in beside:
            if not scrolls and not parent.rect().contains(child.geometry()):
                place, room = child.geometry().getRect(), parent.size().toTuple()
                yield f"{named(child)} at {place} is outside of {named(parent)} {room}"
        for one, other in combinations(beside, 2):
            if not one.geometry().intersected(other.geometry()).isEmpty():
                yield f"{named(one)} lies over {named(other)}"


def hidden_main_buttons(window: QWidget) -> Iterator[str]:
    """Yield main buttons that cannot be seen whole without scrolling."""
    for button in visible_widgets(window):
        if isinstance(button, QPushButton) and button.property("role") == "main":
            seen = button.visibleRegion().boundingRect()
            if seen != button.rect():
                yield f"main button {button.text()[:_NAMED_BY]!r} is seen in {seen.getRect()}"
