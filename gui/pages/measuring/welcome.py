"""Welcome page of the first start: what this is, which shoulder is stiff, home or clinic."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from gui.protocol.red_flags import ScreeningPage
from gui.style.appearance import Appearance
from gui.text.safety_wording import screening_text
from gui.text.wording import affected_name, tr
from gui.widgets.buttons import button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.landmarks import Side


class WelcomePage(QWidget):
    """Asks once where this computer is used; the answer is remembered."""

    #: Measure at home, now.
    home = Signal()
    #: Measure patients in a clinic.
    clinic = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        words = screening_text(ScreeningPage.ABOUT)
        self.affected: ChoiceRow[tuple[Side, ...]] = ChoiceRow(
            [(Side.LEFT,), (Side.RIGHT,), tuple(Side)],
            affected_name,
            title=tr("Stiff shoulder"),
            large=True,
            may_be_empty=True,
        )
        self.in_clinic = button(tr("I measure patients in a clinic"))
        self.at_home = button(tr("Start measuring"), "main")
        self.in_clinic.clicked.connect(self.clinic)
        self.at_home.clicked.connect(self.home)
        frame_page(
            self,
            label(words.title, "display"),
            card(*(label(item) for item in words.items), spacing=appearance.gap(1)),
            label(tr("Which shoulder is stiff?"), "title"),
            self.affected.row,
            1,
            buttons=[self.in_clinic, self.at_home],
        )
