"""Choice of how movements are done: standing or sitting, by themselves or helped."""

from PySide6.QtCore import Slot
from PySide6.QtWidgets import QWidget

from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import conduct_sentence, help_name, posture_name, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.side_by_side import SideBySide
from gui.widgets.text import label
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition


class ConductChoice(QWidget):
    """Says the conduct of the settings in one line, which opens to be changed."""

    def __init__(self, appearance: Appearance, settings: WindowSettings) -> None:
        super().__init__()
        self.posture = ChoiceRow(
            list(BodyPosition),
            lambda position: posture_name(position).capitalize(),
            title=tr("Body position"),
        )
        self.help = MenuButton(tr("help with the movement"))
        self.help.offer(list(Assistance), lambda kind: help_name(kind).capitalize())
        self.posture.choose(settings.conduct.posture)
        self.help.choose(settings.conduct.help)
        self.words = label("")
        self.words.setWordWrap(False)
        self.change = button(tr("Change"), "line-link")
        self.change.setAccessibleName(tr("Change how the movements are done"))
        apart = tr("Sitting and assisted results are plotted separately.")
        gap = appearance.gap
        self._line = widget_with(row(self.words, self.change, 1, spacing=gap(1)))
        self._choices = widget_with(
            column(
                SideBySide(appearance, (self.posture.row, 3), (self.help, 2), spacing=gap(1)),
                label(apart, "quiet"),
                spacing=gap(1),
            )
        )
        column(self._line, self._choices, on=self)
        self.change.clicked.connect(self._open)
        self.fold()

    def fold(self) -> None:
        """Show the conduct as one line."""
        self.words.setText(f"{conduct_sentence(self.conduct)}.")
        self._line.show()
        self._choices.hide()

    @Slot()
    def _open(self) -> None:
        """Show the choices, the keyboard on the first."""
        self._choices.show()
        self._line.hide()
        self.posture.row.buttons[0].setFocus()

    @property
    def conduct(self) -> AssessmentCondition:
        """How the movements are done, as chosen."""
        return AssessmentCondition(
            posture=self.posture.value or BodyPosition.STANDING,
            help=self.help.value or Assistance.NONE,
        )
