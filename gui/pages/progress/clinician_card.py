"""Card with what is worth a clinician's look; out of sight where there is nothing."""

from collections.abc import Sequence

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QBoxLayout, QWidget

from gui.pages.progress.empty_history import ROOMY_PERCENT
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX
from gui.text.wording import movement_name, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, column, row
from gui.widgets.text import label
from measure.progress.clinician_prompts import TO_MEASURE_AGAIN, Prompt, finding_text


class ClinicianCard(QWidget):
    """Says calmly that there is something to show, what it is behind a link; offers the report."""

    report_wanted = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.title = label("", "strong")
        self.words = label("")
        self.seen = button(tr("What was seen"), "link", checkable=True)
        self.seen.toggled.connect(self.words.setVisible)
        self.report = button(tr("Save the report"), "link")
        self.report.clicked.connect(self.report_wanted)
        self._line = row((self.title, 1), row(self.seen, self.report, 1, spacing=appearance.gap(1)))
        notice = card(self._line, self.words, role="notice-card", spacing=appearance.gap(0.5))
        beside, above = CARD_PADDING_PX, appearance.gap(1)
        around = notice.layout()
        if around is not None:
            around.setContentsMargins(beside, above, beside, above)
        column(notice, on=self)
        appearance.changed.connect(self._fit)
        self._fit()
        self.words.hide()
        self.hide()

    @Slot()
    def _fit(self) -> None:
        """Put the links beside the title, or in large text beneath it."""
        directions = QBoxLayout.Direction
        roomy = self._appearance.percent <= ROOMY_PERCENT
        self._line.setDirection(directions.LeftToRight if roomy else directions.TopToBottom)

    def show_prompts(self, prompts: Sequence[Prompt]) -> None:
        """Show these findings, or nothing."""
        self.setVisible(bool(prompts))
        again = all(prompt.kind in TO_MEASURE_AGAIN for prompt in prompts)
        self.title.setText(
            _again_words(prompts) if again else tr("Please show this to your clinician")
        )
        self.words.setText("\n".join(finding_text(prompt, tr) for prompt in prompts))
        self.report.setVisible(not again)
        self.seen.setChecked(False)


def _again_words(prompts: Sequence[Prompt]) -> str:
    """Return what to measure again, each movement with its arm."""
    tasks = [
        tr("{movement}, {side} arm").format(
            movement=movement_name(movement), side=tr(prompt.side.value)
        )
        for prompt in prompts
        if prompt.side is not None
        for movement in prompt.movements
    ]
    return tr("Please measure again on another day: {tasks}").format(tasks="; ".join(tasks))
