"""Overview of camera and body: what is kept, and the ways to measure it."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QLabel,
    QLineEdit,
    QPushButton,
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
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import card, clear_layout
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.domain.acquisition import POSSIBLE

TRUNK = "trunk"
LENGTHS = ("upper_arm", "forearm", "shoulder_width")


class CalibrationPage(QWidget):
    """A card for each thing that may be known."""

    board_wanted = Signal()
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
        self.lens, self.level, self.lengths, self.marks, self.place = (label("") for _ in range(5))
        self.board = button(tr("Save the board to print"))
        self.calibrate = button(tr("Calibrate the lens"))
        self.uprights = button(tr("Mark upright lines"))
        self.mark_back = button(tr("Mark neck and pelvis"))
        self.forget = button(tr("Delete where I stood"))
        self.study = button(tr("Open a table of readings"))
        self.retest = button(tr("How well my sessions repeat"))
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
        self.wrong = label("", "strong")
        self.corrections: list[WrappingCheckBox] = []
        self._corrections = QVBoxLayout()
        self._lay_out()
        for source, signal in (
            (self.board, self.board_wanted),
            (self.calibrate, self.lens_wanted),
            (self.uprights, self.level_wanted),
            (self.mark_back, self.marks_wanted),
            (self.forget, self.forget_places),
            (self.study, self.study_wanted),
            (self.retest, self.retest_wanted),
            (self.leave, self.back),
        ):
            source.clicked.connect(signal)
        self.keep.clicked.connect(self._keep)

    @staticmethod
    def _field(words: str) -> QLineEdit:
        field = QLineEdit()
        field.setAccessibleName(tr("{length}, centimetres").format(length=words))
        field.setMaxLength(6)
        return field

    def _lay_out(self) -> None:
        cards = (
            _card(
                tr("Lens"),
                tr("Corrects for lens distortion: show a printed board all over the picture."),
                *(self.lens, self.board, self.calibrate),
            ),
            _card(
                tr("Level"),
                tr(
                    "Corrects for a tilted camera: mark a door frame or a plumb line in the "
                    "picture."
                ),
                *(self.level, self.uprights),
            ),
            _card(
                tr("Place"),
                tr("Standing nearer or turned looks like progress and is none."),
                *(self.place, self.forget),
            ),
            _card(
                tr("Neck and pelvis"),
                tr("Marked once by a helper, for the reach behind the back."),
                *(self.marks, self.mark_back),
            ),
            self._lengths_card(),
            card(
                label(tr("Agreement"), "title"),
                label(
                    tr(
                        "A clinician's table of camera and goniometer readings shows how well they "
                        "agree."
                    ),
                    "quiet",
                ),
                ButtonRow([self.study, self.retest]),
                self._corrections,
            ),
        )
        lead = tr("Optional: these steps narrow the uncertainty. You can measure without them.")
        frame_page(
            self,
            label(tr("Camera and body"), "display"),
            label(lead, "lead"),
            *cards,
            1,
            buttons=[self.leave],
        )

    def _lengths_card(self) -> QWidget:
        grid = QGridLayout()
        for line, field in enumerate(self.fields.values()):
            words = label(field.accessibleName())
            words.setBuddy(field)
            grid.addWidget(words, line, 0)
            grid.addWidget(field, line, 1)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 1)
        self.wrong.setVisible(False)
        save = ButtonRow([self.keep])
        return card(label(tr("Body lengths"), "title"), self.lengths, grid, save, self.wrong)

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
                self._say(tr("{text} is no number.").format(text=field.text().strip()))
                return
        self._say(length_problem(typed))
        if self.wrong.isHidden():
            self.lengths_typed.emit(typed)

    def _say(self, wrong: str) -> None:
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))
        if wrong:
            # What is wrong stands below the fields, maybe outside the window.
            bring_into_view(self.wrong)

    def clear_fields(self) -> None:
        for field in self.fields.values():
            field.clear()


def _card(title: str, why: str, state: QLabel, *buttons: QPushButton) -> QWidget:
    """Return a card of one thing that may be known, with the ways to measure it at its foot."""
    return card(label(title, "title"), label(why, "quiet"), state, ButtonRow(buttons))


def length_problem(typed: dict[str, float]) -> str:
    """Return what is wrong with typed lengths, or nothing."""
    if TRUNK not in typed or len(typed) < 2:
        return tr("Type the trunk and at least one other length.")
    low, high = TRUNK_CM
    if not low <= typed[TRUNK] <= high:
        return tr("A trunk measures {low} to {high} cm. Measure again.").format(
            low=f"{low:g}", high=f"{high:g}"
        )
    names = {
        "upper_arm": tr("upper arm"),
        "forearm": tr("forearm"),
        "shoulder_width": tr("shoulder to shoulder"),
    }
    for name in LENGTHS:
        least, most = (share * typed[TRUNK] for share in POSSIBLE[name])
        if name in typed and not least <= typed[name] <= most:
            return tr(
                "With this trunk, {length} measures {low} to {high} cm. Measure again."
            ).format(length=names[name], low=f"{least:.0f}", high=f"{most:.0f}")
    return ""
