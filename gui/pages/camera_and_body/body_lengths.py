"""Page of body lengths: fields beside a figure, what is wrong with one beside it."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QGridLayout, QLineEdit, QSizePolicy, QWidget

from calibration.body.lengths import TRUNK_CM
from gui.drawing.calibration_guides import Guide
from gui.pages.camera_and_body.guide_panel import GuidePanel
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX, LINE
from gui.text.wording import tr
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.layouts import card, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.scroll_page import bring_into_view
from gui.widgets.text import SignedLine, label
from measure.domain.acquisition import POSSIBLE

TRUNK = "trunk"
LENGTHS = ("upper_arm", "forearm", "shoulder_width")
#: Lines of the grid that a field takes: its name, itself, what is wrong beneath it, and a gap.
#: [technical]
_LINES = 4
#: Text up to these sizes leaves room for the figure beside one column of fields, and beside two,
#: per cent. [technical]
_ONE_PERCENT, _TWO_PERCENT = 115, 150
#: Width of the figure beside one column and beside two, and most height of the card that it fills,
#: pixels. [technical]
_FIGURE_PX, _NARROW_PX, _CARD_PX = 440, 240, 560
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
        self._names = {
            TRUNK: tr("trunk, hip to shoulder"),
            "upper_arm": tr("upper arm"),
            "forearm": tr("forearm"),
            "shoulder_width": tr("shoulder to shoulder"),
        }
        self.fields = {name: self._field(words) for name, words in self._names.items()}
        #: What is wrong with a field, beside it, or beneath where there is no figure.
        self.wrong = SignedLine("\u2717", "", "alarm-text")
        #: What to type, or to look at again.
        self.advice = label("", "lead")
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
        self._grid.setVerticalSpacing(GAP_PX // 2)
        self._labels = {name: label("", "strong") for name in self.fields}
        self._lines = {
            name: widget_with(row(field, (label("cm"), 1), spacing=GAP_PX))
            for name, field in self.fields.items()
        }
        for name, field in self.fields.items():
            self._labels[name].setBuddy(field)
        self._card = card((row((self._grid, 1), self.figure, spacing=4 * GAP_PX), 1))
        frame_page(
            self,
            label(tr("Body lengths"), "display"),
            self.advice,
            (self._card, 1),
            0,
            buttons=[self.leave, self.keep],
        )
        self._appearance.changed.connect(self._arrange)
        self._arrange()

    @property
    def _columns(self) -> int:
        """One column beside the figure, or two where large text leaves no room for it."""
        return 1 if self._appearance.percent <= _ONE_PERCENT else 2

    @Slot()
    def _arrange(self) -> None:
        """Put the fields in one column beside the figure, numbered as there, or in two.

        Two have room beneath each line for what is wrong, so that nothing moves when that is said.
        """
        columns = self._columns
        beside, beneath = columns == 1, 0 if columns == 1 else self._appearance.px(LINE)
        pictured = self._appearance.percent <= _TWO_PERCENT
        self.figure.setVisible(pictured)
        self.figure.setFixedWidth(_FIGURE_PX if beside else _NARROW_PX)
        self.figure.setMaximumHeight(_CARD_PX if beside else _NARROW_PX)
        fills = QSizePolicy.Policy.Preferred if beside else QSizePolicy.Policy.Maximum
        self._card.setSizePolicy(QSizePolicy.Policy.Preferred, fills)
        self._card.setMaximumHeight(_CARD_PX if beside else self.maximumHeight())
        self._grid.setHorizontalSpacing((2 if pictured else 4) * GAP_PX)
        for number, (name, field) in enumerate(self.fields.items(), start=1):
            words = _sentence(self._names[name])
            # Where the figure shows it the columns have no room for from where to where it goes.
            brief = words if beside else words.partition(",")[0]
            self._labels[name].setText(f"{number}  {brief}" if pictured else words)
            line, column = self._place(name)
            wide = 2 if beside else 1
            at = Qt.AlignmentFlag.AlignBottom
            self._grid.addWidget(self._labels[name], line, column, 1, wide, at)
            field.setFixedWidth(self._appearance.px(_FIELD_TYPES))
            self._grid.addWidget(self._lines[name], line + 1, column)
            # Beneath the last ones nothing follows that could move.
            last = line == self._place(LENGTHS[-1])[0]
            self._grid.setRowMinimumHeight(line + 2, 0 if last else beneath)
            if line:
                self._grid.setRowMinimumHeight(line - 1, GAP_PX)
                self._grid.setRowStretch(line - 1, int(beside))
        self._grid.setColumnStretch(0, columns - 1)
        self._grid.setColumnStretch(1, 1)
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
        """Say beside a field what is wrong with it, and go there; nothing where all is well."""
        line, column = self._place(name)
        line, column = (line + 1, 1) if self._columns == 1 else (line + 2, column)
        self._grid.addWidget(self.wrong, line, column, Qt.AlignmentFlag.AlignVCenter)
        for other, field in self.fields.items():
            give_role(field, "wrong" if wrong and other == name else "")
        self.wrong.say("\u2717", wrong)
        self.wrong.setVisible(bool(wrong))
        self.keep.setEnabled(not wrong)
        usual = tr("In centimetres: the trunk and at least one other.")
        again = tr("Check the length marked \u2717, then save.")
        self.advice.setText(again if wrong else usual)
        if wrong:
            self.fields[name].setFocus(Qt.FocusReason.OtherFocusReason)
            bring_into_view(self.wrong)
            bring_into_view(self.fields[name])

    @Slot()
    def _lead_on(self) -> None:
        """Let what was refused be saved after a change."""
        self.keep.setEnabled(True)


def _sentence(words: str) -> str:
    return words[:1].upper() + words[1:]


def length_problem(typed: dict[str, float]) -> tuple[str, str]:
    """Return the field at fault and what is wrong with it; no words where all is well."""
    low, high = TRUNK_CM
    if TRUNK not in typed:
        return TRUNK, tr("Type the trunk and at least one other length.")
    if not low <= typed[TRUNK] <= high:
        return TRUNK, tr("Usually {low} to {high} cm.").format(low=f"{low:g}", high=f"{high:g}")
    if len(typed) < 2:
        return LENGTHS[0], tr("Type at least one other length too.")
    for name in LENGTHS:
        least, most = (share * typed[TRUNK] for share in POSSIBLE[name])
        if name in typed and not least <= typed[name] <= most:
            return name, tr("With this trunk {low} to {high} cm.").format(
                low=f"{least:.0f}", high=f"{most:.0f}"
            )
    return TRUNK, ""
