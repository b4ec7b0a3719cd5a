"""Welcome page of the first start: what this is, which shoulder is stiff, home or clinic."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.protocol.red_flags import ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import screening_text
from gui.text.wording import affected_name, tr
from gui.widgets.buttons import button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import card, column, row, separator
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import SignedLine, end_together, label
from measure.domain.landmarks import Side
from measure.domain.records import Person

#: Width and least height of the drawn person, and least height of the answers, pixels. [technical]
_FIGURE_PX, _ANSWERS_PX = (200, 300), 72


class WelcomePage(QWidget):
    """Asks once where this computer is used; the answer is remembered."""

    #: Measure at home, now.
    home = Signal()
    #: Measure patients in a clinic.
    clinic = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        self.question = label(tr("Which shoulder is stiff?"), "title")
        self._rule = separator()
        self.figure = StandingFigure(appearance, asked=True)
        self.in_clinic = button(tr("I measure patients in a clinic"), "link")
        self.at_home = button("", "main")
        self.in_clinic.clicked.connect(self.clinic)
        self.at_home.clicked.connect(self.home)
        self.affected.picked.connect(self._show_choice)
        appearance.changed.connect(self._show_choice)
        self._lay_out()
        self._show_choice()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        words = screening_text(ScreeningPage.ABOUT)
        emergency, purpose, device, numbers, target, pictures = words.items
        title = label(tr("Measure your shoulder at home"), "display")
        self.affected.row.setMinimumHeight(_ANSWERS_PX)
        self.figure.setFixedWidth(_FIGURE_PX[0])
        self.figure.setMinimumHeight(_FIGURE_PX[1])
        asked = column(self.question, self.affected.row, spacing=gap(1))
        about = column(
            label(words.title, "title"),
            *(SignedLine("\u2022", line) for line in (device, numbers, target, pictures)),
            SignedLine("\u2022", emergency, "strong"),
            spacing=gap(1),
        )
        said = column(asked, self._rule, about, 1, spacing=gap(3))
        frame_page(
            self,
            column(title, label(end_together(purpose), "lead"), spacing=gap(1)),
            card(row((said, 1), self.figure, spacing=gap(4))),
            1,
            buttons=[self.in_clinic, self.at_home],
        )

    def show_person(self, person: Person | None) -> None:
        """Ask for the stiff shoulder only of who has not said it yet."""
        if person is None and self.affected.row.isHidden():
            self.affected.choose(None)
        said = person is not None and not person.demo and bool(person.affected)
        if person is not None and said:
            self.affected.choose(person.affected)
        for part in (self.question, self.affected.row, self._rule):
            part.setVisible(not said)
        self._show_choice()

    @Slot()
    def _show_choice(self) -> None:
        """Draw the chosen shoulder where there is room, and lead on once there is one."""
        chosen = self.affected.value
        self.at_home.setEnabled(bool(chosen))
        self.at_home.say(tr("Start measuring") if chosen else tr("Choose a shoulder first"))
        self.figure.show_sides(chosen or ())
        # The words need the whole width where text is large.
        self.figure.setVisible(self._appearance.percent < LARGE_FROM_PERCENT)
