"""Overview of camera and body: what is kept, and the ways to measure it."""

from functools import partial

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QGridLayout,
    QLabel,
    QLineEdit,
    QVBoxLayout,
    QWidget,
)

from calibration.body.lengths import TRUNK_CM
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
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import clear_layout, column, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label, titled
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.acquisition import POSSIBLE

TRUNK = "trunk"
LENGTHS = ("upper_arm", "forearm", "shoulder_width")


class CalibrationPage(QWidget):
    """A line for each thing that may be known: its name, how far it is, one button."""

    lens_wanted = Signal()
    level_wanted = Signal()
    marks_wanted = Signal()
    #: Lengths in centimetres by name, the trunk among them.
    lengths_typed = Signal(object)
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
        self.calibrate = button(tr("Calibrate the lens"))
        self.uprights = button(tr("Mark upright lines"))
        self.mark_back = button(tr("Mark neck and pelvis"))
        self.forget = button(tr("Delete where I stood"))
        self.study = button(tr("Open a table of readings"))
        self.retest = button(tr("Show how much my sessions vary"))
        self.enter = button(tr("Enter the lengths"))
        self.keep = button(tr("Save the lengths"))
        self.leave = button(tr("Back to set-up"), key=tr("Escape"))
        self.fields = {
            name: self._field(words)
            for name, words in (
                (TRUNK, tr("trunk, hip to shoulder")),
                ("upper_arm", tr("upper arm")),
                ("forearm", tr("forearm")),
                ("shoulder_width", tr("shoulder to shoulder")),
            )
        }
        self.wrong = label("", "alarm")
        self.corrections: list[WrappingCheckBox] = []
        self._corrections = QVBoxLayout()
        self._lay_out()
        for source, signal in (
            (self.calibrate, self.lens_wanted),
            (self.uprights, self.level_wanted),
            (self.mark_back, self.marks_wanted),
            (self.forget, self.forget_places),
            (self.study, self.study_wanted),
            (self.retest, self.retest_wanted),
            (self.leave, self.back),
        ):
            source.clicked.connect(signal)
        self.enter.clicked.connect(self._show_form)
        self.keep.clicked.connect(self._keep)

    @staticmethod
    def _field(words: str) -> QLineEdit:
        field = QLineEdit()
        field.setAccessibleName(tr("{length}, centimetres").format(length=words))
        field.setMaxLength(6)
        return field

    def _lay_out(self) -> None:
        agreement = tr(
            "A clinician's table of camera and goniometer readings shows how well they agree."
        )
        repeat = tr("How much your own sessions vary when nothing changes.")
        lead = tr("Optional: each of these makes the range narrower.")
        rows = [
            BesideRow(_words(name, words), control)
            for name, words, control in (
                (tr("Lens"), self.lens, self.calibrate),
                (tr("Level"), self.level, self.uprights),
                (tr("Neck and pelvis"), self.marks, self.mark_back),
            )
        ]
        lengths = BesideRow(_words(tr("Body lengths"), self.lengths), self.enter)
        agreed = widget_with(column(titled(tr("Agreement"), agreement), self._corrections))
        frame_page(
            self,
            label(tr("Camera and body"), "display"),
            label(lead),
            list_card(
                *rows,
                widget_with(column(lengths, self._lengths_form(), spacing=GAP_PX)),
                BesideRow(_words(tr("Place"), self.place), self.forget),
                BesideRow(agreed, self.study),
                BesideRow(titled(tr("Repeatability"), repeat), self.retest),
            ),
            1,
            buttons=[self.leave],
        )

    def _lengths_form(self) -> QWidget:
        grid = QGridLayout()
        for line, field in enumerate(self.fields.values()):
            words = label(_sentence(field.accessibleName()))
            words.setBuddy(field)
            grid.addWidget(words, 2 * line, 0)
            grid.addWidget(field, 2 * line, 1)
        for place, share in enumerate((4, 2, 2)):
            grid.setColumnStretch(place, share)
        self._grid = grid
        self._say(TRUNK, "")
        self._form = widget_with(column(grid, ButtonRow([self.keep]), spacing=GAP_PX))
        self._form.setVisible(False)
        return self._form

    def show_state(self, state: CalibrationState, size_px: tuple[int, int] | None) -> None:
        """Show what is kept, and whether it holds for the camera's pictures of this size."""
        self.lens.setText(lens_words(state, size_px))
        self.level.setText(level_words(state))
        self.lengths.setText(lengths_words(state))
        self.marks.setText(marks_words(state))
        self.place.setText(place_words(state))
        self.forget.setEnabled(bool(state.places))
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

    @Slot()
    def _show_form(self) -> None:
        """Show the fields of the lengths, or put them away again."""
        self._form.setVisible(self._form.isHidden())
        if not self._form.isHidden():
            self.fields[TRUNK].setFocus(Qt.FocusReason.OtherFocusReason)
            bring_into_view(self.keep)

    @Slot()
    def _keep(self) -> None:
        """Take what was typed, or say what is wrong with it."""
        typed: dict[str, float] = {}
        for name, field in self.fields.items():
            text = field.text().strip().replace(",", ".")
            if not text:
                continue
            try:
                typed[name] = float(text)
            except ValueError:
                words = tr("{text} is not a number.").format(text=field.text().strip())
                self._say(name, words)
                return
        self._say(*length_problem(typed))
        if self.wrong.isHidden():
            self.lengths_typed.emit(typed)

    def _say(self, name: str, wrong: str) -> None:
        """Say beneath a field what is wrong with it, and go there; nothing where all is well."""
        line = 2 * list(self.fields).index(name)
        self._grid.addWidget(self.wrong, line + 1, 0, 1, 3)
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))
        if wrong:
            self.fields[name].setFocus(Qt.FocusReason.OtherFocusReason)
            bring_into_view(self.wrong)
            bring_into_view(self.fields[name])

    def clear_fields(self) -> None:
        """Put the fields away, without what was typed."""
        for field in self.fields.values():
            field.clear()
        self._form.setVisible(False)


def _words(name: str, state: QLabel) -> QWidget:
    """Return the name of a thing that may be known, and beneath it how far it is."""
    return widget_with(column(label(name, "strong"), state, spacing=GAP_PX // 4))


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]


def length_problem(typed: dict[str, float]) -> tuple[str, str]:
    """Return the field at fault and what is wrong with it; no words where all is well."""
    low, high = TRUNK_CM
    if TRUNK not in typed:
        return TRUNK, tr("Type the trunk and at least one other length.")
    if not low <= typed[TRUNK] <= high:
        return TRUNK, tr("A trunk should measure {low} to {high} cm. Please measure again.").format(
            low=f"{low:g}", high=f"{high:g}"
        )
    if len(typed) < 2:
        return LENGTHS[0], tr("Type at least one other length too.")
    names = {
        "upper_arm": tr("upper arm"),
        "forearm": tr("forearm"),
        "shoulder_width": tr("shoulder to shoulder"),
    }
    for name in LENGTHS:
        least, most = (share * typed[TRUNK] for share in POSSIBLE[name])
        if name in typed and not least <= typed[name] <= most:
            return name, tr(
                "With this trunk, {length} should measure {low} to {high} cm. Please measure again."
            ).format(length=names[name], low=f"{least:.0f}", high=f"{most:.0f}")
    return TRUNK, ""
