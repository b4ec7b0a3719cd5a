"""Overview of camera and body: what is saved, and the ways to measure it."""

from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QFontMetrics
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from gui.session.known_state import (
    CalibrationState,
    correction_words,
    lengths_words,
    lens_words,
    level_words,
    marks_words,
    place_words,
)
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.beside_row import BesideRow, list_card
from gui.widgets.buttons import ShortcutButton, button
from gui.widgets.figures.known_sign import Known, KnownSign
from gui.widgets.layouts import clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label, titled
from gui.widgets.wrapping_check_box import WrappingCheckBox

#: Space between a picture and its words, pixels. [technical]
_BESIDE_SIGN_PX = GAP_PX * 3 // 2
#: Least room for picture and words beside a button, in widths of a digit. [technical]
_LEAST_DIGITS = 22
#: Lines of text that a row has room for: a name, and two about it. [technical]
_ROW_LINES = 3


class CalibrationPage(QWidget):
    """A row for each thing that may be known: its name, its use or how far it is, one button.

    What is measured once stands in one group, what is there to be read in the other.
    """

    lens_wanted = Signal()
    level_wanted = Signal()
    marks_wanted = Signal()
    lengths_wanted = Signal()
    forget_places = Signal()
    study_wanted = Signal()
    retest_wanted = Signal()
    #: A movement, and whether its correction is to be used.
    correction_switched = Signal(object, bool)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.lens, self.level, self.lengths, self.marks, self.place = (
            label("", "quiet") for _ in range(5)
        )
        self.calibrate = _action(tr("Start"), tr("Calibrate the lens"))
        self.uprights = _action(tr("Start"), tr("Mark upright lines"))
        self.mark_back = _action(tr("Start"), tr("Mark neck and pelvis"))
        self.enter = _action(tr("Start"), tr("Enter the lengths"))
        self.forget = _action(tr("Clear"), tr("Delete where I stood"))
        self.study = _action(tr("Open"), tr("Open a table of readings"))
        self.retest = _action(tr("Open"), tr("Show how much my sessions vary"))
        self.leave = button(tr("Back to set-up"), key=tr("Escape"))
        self.corrections: list[WrappingCheckBox] = []
        self._corrections = QVBoxLayout()
        self._signs: list[KnownSign] = []
        self._lines: list[BesideRow] = []
        self._lay_out()
        for source, signal in (
            (self.calibrate, self.lens_wanted),
            (self.uprights, self.level_wanted),
            (self.mark_back, self.marks_wanted),
            (self.enter, self.lengths_wanted),
            (self.forget, self.forget_places),
            (self.study, self.study_wanted),
            (self.retest, self.retest_wanted),
            (self.leave, self.back),
        ):
            source.clicked.connect(signal)
        self._appearance.changed.connect(self._level_buttons)
        self._level_buttons()

    def _lay_out(self) -> None:
        agreement = tr("Camera and goniometer, from a table")
        repeat = tr("From one session to the next")
        agreed = widget_with(column(titled(tr("Agreement"), agreement), self._corrections))
        varies = titled(tr("How much readings vary"), repeat)
        lens = _words(tr("Lens"), self.lens)
        level = _words(tr("Level"), self.level)
        marks = _words(tr("Neck and pelvis"), self.marks)
        lengths = _words(tr("Body lengths"), self.lengths)
        place = _words(tr("Where you stand"), self.place)
        self._measured = list_card(
            self._row(Known.LENS, lens, self.calibrate),
            self._row(Known.LEVEL, level, self.uprights),
            self._row(Known.MARKS, marks, self.mark_back),
            self._row(Known.LENGTHS, lengths, self.enter),
            spacing=2 * GAP_PX,
        )
        self._opened = list_card(
            self._row(Known.VARIATION, varies, self.retest),
            self._row(Known.AGREEMENT, agreed, self.study),
            self._row(Known.PLACE, place, self.forget),
            spacing=2 * GAP_PX,
        )
        groups = SideBySide(
            self._appearance,
            (_group(tr("Optional: for more exact readings"), self._measured), 1),
            (_group(tr("Look up"), self._opened), 1),
            spacing=2 * GAP_PX,
        )
        heading = label(tr("Camera and body"), "display")
        frame_page(self, heading, groups, 1, buttons=[self.leave], spacing=3 * GAP_PX)

    def _row(self, topic: Known, words: QWidget, action: QWidget) -> BesideRow:
        """Return a row: a picture where it has room, words, a button."""
        sign = KnownSign(self._appearance, topic)
        self._signs.append(sign)
        said = row(sign, (column(1, words, 1), 1), spacing=_BESIDE_SIGN_PX)
        line = BesideRow(widget_with(said), action, least_digits=_LEAST_DIGITS)
        self._lines.append(line)
        return line

    @Slot()
    def _level_buttons(self) -> None:
        """Make all buttons as wide as the widest; show pictures where text is small."""
        large = self._appearance.percent >= LARGE_FROM_PERCENT
        words = QFontMetrics(self._appearance.font(self._appearance.px()))
        lines = _ROW_LINES * (words.lineSpacing() + GAP_PX // 4)
        for line, sign in zip(self._lines, self._signs, strict=True):
            sign.setVisible(not large)
            # Where two groups stand side by side, their hairlines meet.
            line.setMinimumHeight(0 if large else lines)
        actions = (
            self.calibrate,
            self.uprights,
            self.mark_back,
            self.enter,
            self.forget,
            self.study,
            self.retest,
        )
        for action in actions:
            action.setMinimumWidth(0)
            action.ensurePolished()
        widest = max(action.sizeHint().width() for action in actions)
        for action in actions:
            action.setMinimumWidth(widest)

    def show_state(self, state: CalibrationState, size_px: tuple[int, int] | None) -> None:
        """Show what is kept, and whether it holds for the camera's pictures of this size."""
        self.lens.setText(lens_words(state, size_px))
        self.level.setText(level_words(state))
        self.lengths.setText(lengths_words(state))
        self.marks.setText(marks_words(state))
        self.place.setText(place_words(state))
        self.forget.setEnabled(bool(state.places))
        self.forget.setVisible(bool(state.places))
        clear_layout(self._corrections)
        self.corrections = []
        for kept in state.corrections:
            box = WrappingCheckBox(self._appearance, correction_words(kept))
            box.setChecked(kept.switched_on)
            box.toggled.connect(partial(self.correction_switched.emit, kept.movement))
            self._corrections.addWidget(box)
            self.corrections.append(box)

    def keep_focus(self) -> None:
        self.calibrate.setFocus(Qt.FocusReason.OtherFocusReason)


def _words(name: str, state: QLabel) -> QWidget:
    """Return the name of a thing that may be known, and beneath it what it takes and its state."""
    return widget_with(column(label(name, "strong"), state, spacing=GAP_PX // 4))


def _group(name: str, members: QWidget) -> QWidget:
    """Return rows beneath the heading of their group, the card as high as the one beside it."""
    return widget_with(column(label(name, "title"), (members, 1), spacing=GAP_PX))


def _action(words: str, name: str) -> ShortcutButton:
    """Return the button of a row: a short word, and its whole name for who hears it."""
    made = button(words)
    made.setAccessibleName(name)
    return made
