"""Agreement page: what a study against a goniometer shows."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from calibration.agreement.study import Agreement
from calibration.statistics.bland_altman import LimitsOfAgreement
from gui.pages.camera_and_body.agreement_plot import AgreementPlot, signed_degrees
from gui.pages.camera_and_body.agreement_study import AgreementStudy
from gui.style.appearance import Appearance
from gui.style.measures import BAR_PX, CONTENT_PX, GAP_PX, MARGIN_PX
from gui.text.language import mark_as_english
from gui.text.wording import movement_name, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label, section_heading
from measure.domain.movements import Movement
from measure.progress.wording import number_words


class AgreementPage(QWidget):
    """What the study found with its plots, and beneath them the whole report."""

    #: The AgreementStudy that is to be kept for the camera.
    offers_wanted = Signal(object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.heading = label("", "display")
        self._findings = QVBoxLayout()
        self._findings.setSpacing(2 * GAP_PX)
        self.words = label("")
        mark_as_english(self.words)
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self._appearance = appearance
        self.plots: list[AgreementPlot] = []
        self.keep = button(tr("Save the study for this camera"), "main")
        self.keep.clicked.connect(self._keep)
        self._study: AgreementStudy | None = None
        #: What says where the differences of a study lie, with its limits.
        self._sentences: list[tuple[QLabel, LimitsOfAgreement]] = []
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            self.heading,
            self._findings,
            section_heading(tr("The whole report")),
            card(self.words),
            1,
            buttons=[self.leave, self.keep],
            caution=True,
        )
        appearance.changed.connect(self._fit)

    def show_study(self, study: AgreementStudy) -> None:
        """Show what a study says."""
        self._study = study
        self.keep.setVisible(bool(study.offers or study.errors))
        self._show_findings(study.judged)
        self.words.setText(study.words)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_findings(self, judged: tuple[Agreement, ...]) -> None:
        """Say how far the camera is off: in the heading where there is one movement."""
        clear_layout(self._findings)
        self._sentences.clear()
        self.plots = [AgreementPlot(self._appearance, study) for study in judged]
        alone = len(judged) == 1
        self.heading.setText(
            bias_words(judged[0].movement, judged[0].limits)
            if alone
            else tr("Camera against goniometer")
        )
        for study, plot in zip(judged, self.plots, strict=True):
            if not alone:
                self._findings.addWidget(label(bias_words(study.movement, study.limits), "title"))
            sentence = label("", "lead" if alone else "")
            self._findings.addWidget(sentence)
            self._findings.addWidget(plot)
            self._sentences.append((sentence, study.limits))
        self._fit()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit()

    @Slot()
    def _fit(self) -> None:
        """Say where the differences lie in fewer words where that takes one line instead of two."""
        for sentence, limits in self._sentences:
            sentence.ensurePolished()
            metrics, room = sentence.fontMetrics(), self.width() - 2 * MARGIN_PX - BAR_PX
            words = limits_words(limits)
            if metrics.horizontalAdvance(words) > min(room, CONTENT_PX):
                words = limits_words(limits, brief=True)
            sentence.setText(words)

    @Slot()
    def _keep(self) -> None:
        if self._study is not None:
            self.offers_wanted.emit(self._study)


def bias_words(movement: Movement, limits: LimitsOfAgreement) -> str:
    """Return how much more or less than the goniometer the camera reads, on average."""
    bias = limits.bias.value
    words = (
        tr("{movement}: {amount}\u00b0 more than the goniometer.")
        if bias >= 0
        else tr("{movement}: {amount}\u00b0 less than the goniometer.")
    )
    amount = number_words(abs(bias), 1, tr)
    return words.format(movement=movement_name(movement), amount=amount)


def limits_words(limits: LimitsOfAgreement, *, brief: bool = False) -> str:
    """Return where most differences from the goniometer are expected, and from how many pairs."""
    words = (
        tr("Expected in 95 of 100: {low} to {high} ({count} pairs).")
        if brief
        else tr(
            "In 95 of 100 readings the difference is expected from {low} to {high}. From {count} "
            "pairs."
        )
    )
    return words.format(
        low=signed_degrees(limits.lower.value),
        high=signed_degrees(limits.upper.value),
        count=limits.pairs,
    )
