"""Page of body lengths: fields beside a figure, what is wrong beneath its field."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QGridLayout, QLineEdit, QWidget

from calibration.body.lengths import TRUNK_CM
from gui.drawing.calibration_guides import Guide
from gui.pages.camera_and_body.guide_panel import GuidePanel
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.layouts import card, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import label
from measure.domain.acquisition import POSSIBLE

TRUNK = "trunk"
LENGTHS = ("upper_arm", "forearm", "shoulder_width")
#: Lines of the grid that a field takes: its name, itself, what is wrong with it, and a gap.
#: [technical]
_LINES = 4
#: Text up to this size leaves room for the figure, per cent. [technical]
_MOST_PERCENT = 115
#: Width of the figure, pixels. [technical]
_FIGURE_PX = 480
#: Width of a field, in heights of its type: a length has few digits. [technical]
_FIELD_TYPES = 7


class BodyLengthsPage(QWidget):
    """Takes the lengths of a body, measured with a tape."""

    #: Lengths in centimetres by name, the trunk among them.
    lengths_typed = Signal(object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.figure = GuidePanel(appearance, Guide.LENGTHS)
        self.figure.setFixedWidth(_FIGURE_PX)
        self._names = {
            TRUNK: tr("trunk, hip to shoulder"),
            "upper_arm": tr("upper arm"),
            "forearm": tr("forearm"),
            "shoulder_width": tr("shoulder to shoulder"),
        }
        self.fields = {name: self._field(words) for name, words in self._names.items()}
        #: What is wrong with a field, beneath it.
        self.wrong = label("", "alarm-text")
        self.keep = button(tr("Save the lengths"), "main", key=tr("Enter"))
        self.keep.setProperty("leads_on", True)
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.keep.clicked.connect(self._keep)
        self.leave.clicked.connect(self.back)
        for field in self.fields.values():
            field.textChanged.connect(self._lead_on)
        bind_keys(self, self.keep, "Return", "Enter")
        self._grid = QGridLayout()
        self._lay_out()

    @staticmethod
    def _field(words: str) -> QLineEdit:
        field = QLineEdit()
        field.setAccessibleName(tr("{length}, centimetres").format(length=words))
        field.setMaxLength(6)
        return field

    def _lay_out(self) -> None:
        self._grid.setHorizontalSpacing(4 * GAP_PX)
        self._grid.setVerticalSpacing(GAP_PX // 2)
        self._labels = {name: label("", "strong") for name in self.fields}
        self._lines = {
            name: widget_with(row(field, (label("cm"), 1), spacing=GAP_PX))
            for name, field in self.fields.items()
        }
        for name, field in self.fields.items():
            self._labels[name].setBuddy(field)
        frame_page(
            self,
            label(tr("Body lengths"), "display"),
            label(
                tr("In centimetres: the trunk and at least one other."),
                "lead",
            ),
            card(row((self._grid, 1), self.figure, spacing=4 * GAP_PX)),
            1,
            buttons=[self.leave, self.keep],
        )
        self._appearance.changed.connect(self._arrange)
        self._arrange()

    @property
    def _columns(self) -> int:
        """One column beside the figure, or two where large text leaves no room for it."""
        return 1 if self._appearance.percent <= _MOST_PERCENT else 2

    @Slot()
    def _arrange(self) -> None:
        """Put the fields in one column beside the figure, numbered as there, or in two."""
        columns = self._columns
        self.figure.setVisible(columns == 1)
        for number, (name, field) in enumerate(self.fields.items(), start=1):
            words = _sentence(self._names[name])
            self._labels[name].setText(f"{number}  {words}" if columns == 1 else words)
            line, column = self._place(name)
            self._grid.addWidget(self._labels[name], line, column, Qt.AlignmentFlag.AlignBottom)
            field.setFixedWidth(self._appearance.px(_FIELD_TYPES))
            self._grid.addWidget(self._lines[name], line + 1, column)
            self._grid.setRowMinimumHeight(line + _LINES - 1, GAP_PX)
            self._grid.setColumnStretch(column, 1)
        self._grid.setColumnStretch(1, columns - 1)
        self._say(TRUNK, "")

    def _place(self, name: str) -> tuple[int, int]:
        """Return the first line and the column of a field in the grid."""
        line, column = divmod(list(self.fields).index(name), self._columns)
        return _LINES * line, column

    def begin(self) -> None:
        """Show the fields without what was typed before."""
        for field in self.fields.values():
            field.clear()
        self._say(TRUNK, "")
        self.fields[TRUNK].setFocus(Qt.FocusReason.OtherFocusReason)

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
        line, column = self._place(name)
        self._grid.addWidget(self.wrong, line + 2, column)
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))
        self._lead_on()
        if wrong:
            give_role(self.keep, "")
            self.fields[name].setFocus(Qt.FocusReason.OtherFocusReason)
            bring_into_view(self.wrong)
            bring_into_view(self.fields[name])

    @Slot()
    def _lead_on(self) -> None:
        """Let saving be what comes next, as after a change of what was refused."""
        give_role(self.keep, "main")


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]


def length_problem(typed: dict[str, float]) -> tuple[str, str]:
    """Return the field at fault and what is wrong with it; no words where all is well."""
    low, high = TRUNK_CM
    if TRUNK not in typed:
        return TRUNK, tr("Type the trunk and at least one other length.")
    if not low <= typed[TRUNK] <= high:
        return TRUNK, tr("Usually {low} to {high} cm. Please measure again.").format(
            low=f"{low:g}", high=f"{high:g}"
        )
    if len(typed) < 2:
        return LENGTHS[0], tr("Type at least one other length too.")
    for name in LENGTHS:
        least, most = (share * typed[TRUNK] for share in POSSIBLE[name])
        if name in typed and not least <= typed[name] <= most:
            return name, tr(
                "With this trunk usually {low} to {high} cm. Please measure again."
            ).format(low=f"{least:.0f}", high=f"{most:.0f}")
    return TRUNK, ""
