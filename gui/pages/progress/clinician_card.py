"""Card with what is worth a clinician's look; out of sight where there is nothing."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, column, row
from gui.widgets.text import label
from measure.progress.clinician_prompts import Prompt, PromptKind, finding_text


class ClinicianCard(QWidget):
    """Says what the readings show, calmly, and offers the report."""

    report_wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = label("", "title")
        self.words = label("")
        self.report = button(tr("Write the report"))
        self.report.clicked.connect(self.report_wanted)
        column(
            card(
                row((self.title, 1), self.report, spacing=appearance.gap(2)),
                self.words,
                role="notice-card",
                spacing=appearance.gap(1),
            ),
            on=self,
        )
        self.hide()

    def show_prompts(self, prompts: Sequence[Prompt]) -> None:
        """Show these findings, or nothing."""
        self.setVisible(bool(prompts))
        again = all(prompt.kind is PromptKind.LOW_SESSION for prompt in prompts)
        self.title.setText(
            tr("Please measure again on another day")
            if again
            else tr("Please show this to your clinician")
        )
        self.words.setText("\n".join(finding_text(prompt, tr) for prompt in prompts))
        self.report.setVisible(not again)
