"""Welcome page of the first start: which shoulder is stiff, home or clinic, what this is."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.protocol.red_flags import ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import screening_text
from gui.text.wording import affected_name, tr
from gui.widgets.buttons import button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card, column, row
from gui.widgets.page_frame import frame_page
from gui.widgets.position_figure import PositionView
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Person

#: Width and height of the drawn person, pixels. [technical]
_FIGURE_PX = (190, 220)


class WelcomePage(QWidget):
    """Asks once where this computer is used; the answer is remembered."""

    #: Measure at home, now.
    home = Signal()
    #: Measure patients in a clinic.
    clinic = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        words = screening_text(ScreeningPage.ABOUT)
        emergency, *cautions = words.items
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        self.question = label(tr("Which shoulder is stiff?"), "display")
        self.figure = PositionView(appearance)
        self.figure.setFixedSize(*_FIGURE_PX)
        self.in_clinic = button(tr("I measure patients in a clinic"), "link")
        self.at_home = button("", "main")
        self.in_clinic.clicked.connect(self.clinic)
        self.at_home.clicked.connect(self.home)
        self.affected.picked.connect(self._show_choice)
        question = column(
            1,
            self.question,
            self.affected.row,
            1,
            spacing=appearance.gap(2),
        )
        frame_page(
            self,
            row((question, 1), self.figure, spacing=appearance.gap(4)),
            card(
                label(words.title, "title"),
                *(label(item) for item in cautions),
                label(emergency, "strong"),
                spacing=appearance.gap(1),
            ),
            1,
            buttons=[self.in_clinic, self.at_home],
        )
        self._show_choice()

    def show_person(self, person: Person | None) -> None:
        """Ask for the stiff shoulder only of who has not said it yet."""
        said = person is not None and not person.demo and bool(person.affected)
        if person is not None and said:
            self.affected.choose(person.affected)
        self.affected.row.setVisible(not said)
        self.question.setText(
            tr("Measure your shoulder at home") if said else tr("Which shoulder is stiff?")
        )
        self._show_choice()

    @Slot()
    def _show_choice(self) -> None:
        """Draw the chosen shoulder, and lead on once there is one."""
        chosen = self.affected.value
        self.at_home.setEnabled(bool(chosen))
        self.at_home.say(tr("Start measuring") if chosen else tr("Choose a shoulder first"))
        side = chosen[0] if chosen else Side.RIGHT
        self.figure.show_movement(Movement.ABDUCTION, side, mirrored=True)
