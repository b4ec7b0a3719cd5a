"""What a report is to hold: the person's question, since when, and how many pages."""

from PySide6.QtCore import QLocale, Slot
from PySide6.QtWidgets import QDialog, QLineEdit, QWidget

from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.language import LANGUAGES
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.date_field import DateField
from gui.widgets.layouts import column
from gui.widgets.text import label
from gui.widgets.wrapping_check_box import WrappingCheckBox
from measure.report.choices import LONGEST_QUESTION, ReportChoices


class ReportChoicesDialog(QDialog):
    """Asks for the question to print and for the layout; everything can be left as it is."""

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Report for a clinic visit"))
        self.question = QLineEdit()
        self.question.setMaxLength(LONGEST_QUESTION)
        self.question.setAccessibleName(tr("Your question to the clinician"))
        self.since = DateField(appearance, tr("Tell what changed since this day"))
        self.details = WrappingCheckBox(
            appearance, tr("Further pages: events, everyday tasks, refusals, how to read it")
        )
        self.landscape = WrappingCheckBox(appearance, tr("Page wider than high"))
        go_on, cancel = button(tr("Continue"), "main"), button(tr("Cancel"))
        go_on.clicked.connect(self._accept_if_possible)
        cancel.clicked.connect(self.reject)
        self.problem = label("", "problem")
        column(
            label(tr("Your question to the clinician (you can leave this empty)")),
            self.question,
            label(tr("Changes since (empty: since the latest clinic visit or event)")),
            self.since,
            self.problem,
            self.details,
            self.landscape,
            ButtonRow([go_on, cancel]),
            on=self,
            margins=(4 * GAP_PX, 4 * GAP_PX, 4 * GAP_PX, 3 * GAP_PX),
            spacing=GAP_PX,
        )
        # A button knows its dialog only now.
        go_on.setDefault(True)
        self.question.setFocus()

    @property
    def choices(self) -> ReportChoices:
        """What was chosen, in the window's language."""
        code = QLocale().name().partition("_")[0]
        return ReportChoices(
            since=self.since.day,
            question=self.question.text(),
            details=self.details.isChecked(),
            landscape=self.landscape.isChecked(),
            language=code if code in LANGUAGES else "en",
            tr=tr,
        )

    @Slot()
    def _accept_if_possible(self) -> None:
        """Go on, unless what was typed as a day is none."""
        if self.since.text.text().strip() and self.since.day is None:
            self.problem.setText(tr("Please type the day as 2026-03-14, or leave it empty."))
            self.since.text.setFocus()
            return
        self.accept()


def asked_choices(appearance: Appearance, parent: QWidget) -> ReportChoices | None:
    """Ask what a report is to hold; return None when the dialog was cancelled."""
    dialog = ReportChoicesDialog(appearance, parent)
    return dialog.choices if dialog.exec() == QDialog.DialogCode.Accepted else None
