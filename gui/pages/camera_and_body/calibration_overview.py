"""Camera and body: what is known beforehand, and the ways to find it out. All of it optional."""

from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
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
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout
from gui.widgets.scroll_page import scrollable
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
        self.lens, self.level, self.lengths, self.marks, self.place = (
            label("", "lead") for _ in range(5)
        )
        self.board = button(tr("Save the board to print"))
        self.calibrate = button(tr("Calibrate the lens"))
        self.uprights = button(tr("Mark upright lines"))
        self.mark_back = button(tr("Mark neck and pelvis"))
        self.forget = button(tr("Forget where I stood"))
        self.study = button(tr("Open a table of readings"))
        self.retest = button(tr("How well my sessions repeat"))
        self.keep = button(tr("Keep the lengths"))
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
        self.wrong = label("")
        self.corrections: list[WrappingCheckBox] = []
        self._corrections = QVBoxLayout()
        self._lay_out()
        for one, signal in (
            (self.board, self.board_wanted),
            (self.calibrate, self.lens_wanted),
            (self.uprights, self.level_wanted),
            (self.mark_back, self.marks_wanted),
            (self.forget, self.forget_places),
            (self.study, self.study_wanted),
            (self.retest, self.retest_wanted),
            (self.leave, self.back),
        ):
            one.clicked.connect(signal)
        self.keep.clicked.connect(self._keep)

    @staticmethod
    def _field(words: str) -> QLineEdit:
        field = QLineEdit()
        field.setAccessibleName(tr("{length}, centimetres").format(length=words))
        field.setMaxLength(6)
        return field

    def _lay_out(self) -> None:
        page = QWidget()
        column = QVBoxLayout(page)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(16)
        lead = tr("What is known makes readings surer. Nothing of it is needed to measure.")
        column.addWidget(label(lead, "lead"))
        why = tr("A printed board, shown all over the picture, tells how the lens draws.")
        self._card(column, tr("Lens"), self.lens, why, self.board, self.calibrate)
        why = tr("A door frame or a plumb line, marked in the picture, tells how it is turned.")
        self._card(column, tr("Level"), self.level, why, self.uprights)
        column.addWidget(self._lengths_card())
        why = tr("Marked once by a helper, for the reach behind the back.")
        self._card(column, tr("Neck and pelvis"), self.marks, why, self.mark_back)
        why = tr("Standing nearer or turned looks like progress and is none.")
        self._card(column, tr("Place"), self.place, why, self.forget)
        why = tr("A clinician's table of camera and goniometer readings tells how they agree.")
        agreement = card(label(tr("Agreement"), "quiet"), label(why), self.study, self.retest)
        within = agreement.layout()
        assert isinstance(within, QVBoxLayout)
        within.addLayout(self._corrections)
        column.addWidget(agreement)
        column.addStretch(1)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 8, 24, 16)
        layout.setSpacing(self._appearance.gap(1))
        layout.addWidget(label(tr("Camera and body"), "title"))
        layout.addWidget(scrollable(page), 1)
        layout.addWidget(self.leave)

    @staticmethod
    def _card(
        column: QVBoxLayout, title: str, state: QLabel, why: str, *buttons: QPushButton
    ) -> None:
        column.addWidget(card(label(title, "quiet"), state, label(why), *buttons))

    def _lengths_card(self) -> QWidget:
        made = card(label(tr("Body lengths"), "quiet"), self.lengths)
        grid = QGridLayout()
        for row, field in enumerate(self.fields.values()):
            words = label(field.accessibleName())
            words.setBuddy(field)
            grid.addWidget(words, row, 0)
            grid.addWidget(field, row, 1)
        grid.setColumnStretch(0, 3)
        grid.setColumnStretch(1, 1)
        layout = made.layout()
        assert isinstance(layout, QVBoxLayout)
        layout.addLayout(grid)
        layout.addWidget(self.wrong)
        end = QHBoxLayout()
        end.addWidget(self.keep)
        layout.addLayout(end)
        self.wrong.setVisible(False)
        return made

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
            one = WrappingCheckBox(self._appearance, correction_words(kept))
            one.setChecked(kept.switched_on)
            one.toggled.connect(partial(self.correction_switched.emit, kept.movement))
            self._corrections.addWidget(one)
            self.corrections.append(one)

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

    def clear_fields(self) -> None:
        for field in self.fields.values():
            field.clear()


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
