"""Welcome page of the first start: which shoulder is stiff, home or clinic, what this is."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.protocol.red_flags import ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import screening_text
from gui.text.wording import affected_name, tr
from gui.widgets.buttons import button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.figures.standing_figure import StandingFigure
from gui.widgets.layouts import card, column, row
from gui.widgets.page_frame import frame_page
from gui.widgets.side_by_side import LARGE_FROM_PERCENT, SideBySide
from gui.widgets.text import label
from measure.domain.landmarks import Side
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
        self._appearance = appearance
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        self.question = label(tr("Which shoulder is stiff?"), "display")
        self.figure = StandingFigure(appearance)
        self.figure.setFixedSize(*_FIGURE_PX)
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
        emergency, purpose, *limits, target, pictures = words.items
        asked = column(self.question, self.affected.row, label(purpose, "lead"), 1, spacing=gap(2))
        frame_page(
            self,
            row((asked, 1), self.figure, spacing=gap(4)),
            card(
                label(words.title, "title"),
                SideBySide(
                    self._appearance,
                    (column(*map(label, limits), 1, spacing=gap(1)), 1),
                    (
                        column(
                            *map(label, (target, pictures)),
                            label(emergency, "strong"),
                            1,
                            spacing=gap(1),
                        ),
                        1,
                    ),
                    spacing=gap(4),
                ),
                spacing=gap(1),
            ),
            1,
            buttons=[self.in_clinic, self.at_home],
            spacing=gap(3),
        )

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
        """Draw the chosen shoulder where there is room, and lead on once there is one."""
        chosen = self.affected.value
        self.at_home.setEnabled(bool(chosen))
        self.at_home.say(tr("Start measuring") if chosen else tr("Choose a shoulder first"))
        self.figure.show_sides(chosen or ())
        self.figure.setVisible(self._appearance.percent < LARGE_FROM_PERCENT)
