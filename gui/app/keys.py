"""Dialog of the keys: one a line, drawn as it looks, by the page that it works on."""

from collections.abc import Iterable

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QGridLayout, QSizePolicy, QWidget

from gui.app.about import closable_dialog
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.layouts import Content, row
from gui.widgets.plain_dialog import DIALOG_MARGIN_PX
from gui.widgets.text import label

#: Width of the keys in one column and in two, and the least width in which two have room, in widths
#: of a digit. [technical]
_NARROW_DIGITS, _WIDE_DIGITS, _TWO_DIGITS = 50, 74, 52
#: Most of the window's width that the first of two columns takes. [technical]
_FIRST_SHARE = 0.52
#: Frame and padding of a key above and below its words, pixels: its meaning stands in line with
#: them. [technical]
_KEY_EDGES_PX = (2, 4)
#: Space between two keys one below the other, pixels. [technical]
_BETWEEN_PX = 6
#: Frame and padding of a key at both sides of its words, pixels. [technical]
_BESIDE_KEY_PX = 18

#: Where a key lies in its cell.
_CORNER = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
#: A heading, and below it keys and what they do.
_Group = tuple[str, tuple[tuple[str, str], ...]]


def keys_dialog(parent: QWidget) -> QDialog:
    """Return the dialog; its groups stand in two columns where the window is wide enough."""
    measuring, clinic, exercises = _measuring(), _in_a_clinic(), _exercises()
    clips, everywhere = _clips(), _everywhere()
    room = parent.window().width() - 4 * DIALOG_MARGIN_PX
    wide = _TWO_DIGITS * parent.fontMetrics().horizontalAdvance("0") <= room
    columns: tuple[tuple[_Group, ...], ...] = ((measuring, clinic, exercises, clips, everywhere),)
    if wide:
        columns = ((measuring, clips), (exercises, clinic, everywhere))
    names = [key for column in columns for _, keys in column for key, _ in keys]
    metrics = parent.fontMetrics()
    widest = max(map(metrics.horizontalAdvance, names)) + _BESIDE_KEY_PX
    # A heading takes the room of two keys, so that both columns stay in line.
    sample = _key(names[0])
    sample.ensurePolished()
    apart = 2 * sample.sizeHint().height() + _BETWEEN_PX
    grids = [_column(column, widest, apart) for column in columns]
    if wide:
        # What the keys do while measuring stands in one line each; the others have the rest.
        said = max(metrics.horizontalAdvance(words) for _, keys in columns[0] for _, words in keys)
        grids[0].setColumnMinimumWidth(1, min(said + GAP_PX, round(_FIRST_SHARE * room) - widest))
    # The last column has what the others leave.
    groups: list[Content] = [*grids[:-1], (grids[-1], 1)]
    return closable_dialog(
        parent,
        tr("Keys"),
        label(tr("Keys"), "display"),
        label(tr("You can also pause by raising your other hand."), "quiet"),
        row(*groups, spacing=6 * GAP_PX),
        digits=_WIDE_DIGITS if wide else _NARROW_DIGITS,
    )


def _measuring() -> _Group:
    return (
        tr("Measuring"),
        (
            (tr("S"), tr("Stop: it hurts")),
            (tr("Space"), tr("Pause, continue")),
            (tr("H"), tr("Measure this position")),
            (tr("Backspace"), tr("Delete last trial")),
            (tr("R"), tr("Try again after a problem")),
            (tr("0 to 9"), tr("Pain from 0 to 9")),
            (tr("X"), tr("Pain of 10")),
            (tr("A"), tr("Repeat movement")),
            (tr("Enter"), tr("Continue")),
            (tr("Escape"), tr("Finish and save")),
        ),
    )


def _in_a_clinic() -> _Group:
    return (
        tr("In a clinic"),
        (
            (tr("B"), tr("Measure the chosen movements")),
            (tr("T"), tr("Measure the side that is missing")),
            (tr("M"), tr("Another movement")),
        ),
    )


def _exercises() -> _Group:
    return (
        tr("Exercises"),
        (
            (tr("S"), tr("Stop: it hurts")),
            (tr("Space"), tr("Pause, continue")),
            (tr("N"), tr("Skip exercise")),
            (tr("Escape"), tr("End the exercises")),
        ),
    )


def _clips() -> _Group:
    return (
        tr("Clips"),
        (
            ("R", tr("Read all, or the open clip")),
            (tr("Space"), tr("Play, pause")),
            ("\u2190", tr("One frame back")),
            ("\u2192", tr("One frame forward")),
            (tr("Page Up"), tr("Previous clip")),
            (tr("Page Down"), tr("Next clip")),
            ("+", tr("Enlarge the picture")),
            ("\u2212", tr("Make the picture smaller")),
            ("0", tr("Show the whole picture")),
            ("Z", tr("Enlarge the curve")),
            ("X", tr("Make the curve smaller")),
            ("C", tr("Show the whole curve")),
            (tr("Escape"), tr("Back to the list")),
        ),
    )


def _everywhere() -> _Group:
    return (
        tr("Every page"),
        (
            (tr("F1"), tr("Help")),
            (tr("F2"), tr("Keys")),
            (tr("F10"), tr("Menu")),
            (tr("Ctrl 1 to 5"), tr("Measure, Exercises, Progress, Clips, Set-up")),
            (tr("Ctrl H"), tr("Edit the programme")),
            (tr("Ctrl E"), tr("Events")),
            (tr("Ctrl R"), tr("Report for a clinic visit")),
            (tr("Ctrl Z"), tr("Undo")),
            (tr("Ctrl +"), tr("Larger text")),
            (tr("Ctrl -"), tr("Smaller text")),
            (tr("Escape"), tr("Back")),
        ),
    )


def _column(groups: Iterable[_Group], key_px: int, apart_px: int) -> QGridLayout:
    """Return groups one below the other, what the keys do beginning at one line.

    Parameters
    ----------
    key_px
        Width of the widest key of all columns, pixels.
    apart_px
        Height of the heading of a group below another, with the room above it, pixels.
    """
    grid = QGridLayout()
    grid.setContentsMargins(0, 0, 0, 0)
    grid.setHorizontalSpacing(2 * GAP_PX)
    grid.setVerticalSpacing(_BETWEEN_PX)
    grid.setColumnMinimumWidth(0, key_px)
    grid.setColumnStretch(1, 1)
    line = 0
    for title, keys in groups:
        heading = label(title, "title")
        if line:
            heading.setAlignment(Qt.AlignmentFlag.AlignBottom)
            heading.setMinimumHeight(apart_px)
        grid.addWidget(heading, line, 0, 1, 2)
        for key, words in keys:
            line += 1
            grid.addWidget(_key(key), line, 0, _CORNER)
            what = label(words)
            what.setAlignment(Qt.AlignmentFlag.AlignTop)
            above, below = _KEY_EDGES_PX
            what.setContentsMargins(0, above, 0, below)
            grid.addWidget(what, line, 1)
        line += 1
    grid.setRowStretch(line, 1)
    return grid


def _key(name: str) -> QWidget:
    made = label(name, "key")
    made.setWordWrap(False)
    made.setAlignment(Qt.AlignmentFlag.AlignCenter)
    made.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)
    return made
