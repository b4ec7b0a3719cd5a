"""Choice of how movements are done: standing or sitting, by themselves or helped."""

from PySide6.QtWidgets import QWidget

from gui.session.settings import WindowSettings
from gui.style.appearance import Appearance
from gui.text.wording import help_name, posture_name, tr
from gui.widgets.buttons import MenuButton
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column
from gui.widgets.side_by_side import SideBySide
from gui.widgets.text import label
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition


class ConductChoice(QWidget):
    """Shows the conduct of the settings, and gives what is chosen."""

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
        apart = tr("Sitting and assisted results are plotted separately.")
        column(
            SideBySide(
                appearance, (self.posture.row, 3), (self.help, 2), spacing=appearance.gap(1)
            ),
            label(apart, "small"),
            on=self,
            spacing=appearance.gap(1),
        )

    @property
    def conduct(self) -> AssessmentCondition:
        """How the movements are done, as chosen."""
        return AssessmentCondition(
            posture=self.posture.value or BodyPosition.STANDING,
            help=self.help.value or Assistance.NONE,
        )
