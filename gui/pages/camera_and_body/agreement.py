"""Agreement page: what a study against a goniometer shows."""

from PySide6.QtCore import QLocale, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QSizePolicy, QVBoxLayout, QWidget

from calibration.statistics.bland_altman import LimitsOfAgreement
from gui.pages.camera_and_body.agreement_study import AgreementStudy
from gui.style.appearance import Appearance
from gui.style.measures import CARD_PADDING_PX, CARD_RADIUS_PX, CONTENT_PX, GAP_PX
from gui.text.wording import movement_name, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout
from gui.widgets.page_frame import frame_page
from gui.widgets.painted_widget import PaintedWidget
from gui.widgets.text import label, section_heading
from measure.domain.movements import Movement
from measure.progress.wording import number_words

#: Space beside the plot and above it on its paper, and least width of both, pixels. [technical]
_BESIDE_PX, _ABOVE_PX, _LEAST_PX = CARD_PADDING_PX, 2 * GAP_PX, CONTENT_PX // 2


class PlotView(PaintedWidget):
    """Shows a plot on a sheet of white paper, with round corners as cards have them."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__(appearance)
        self._image = QImage()
        self.setAccessibleName(tr("plot of the differences"))
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @property
    def empty(self) -> bool:
        """Whether there is no plot."""
        return self._image.isNull()

    def show_plot(self, image: QImage) -> None:
        """Show another plot."""
        self._image = image
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        return QSize(CONTENT_PX, self.heightForWidth(CONTENT_PX))

    def minimumSizeHint(self) -> QSize:
        return QSize(_LEAST_PX, self.heightForWidth(_LEAST_PX))

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        image = self._image
        wide = width - 2 * _BESIDE_PX
        return wide * image.height() // max(1, image.width()) + 2 * _ABOVE_PX

    def paint(self, painter: QPainter) -> None:
        half = 0.5
        sheet = QRectF(self.rect()).adjusted(half, half, -half, -half)
        painter.setPen(self.appearance.colour("line"))
        painter.setBrush(Qt.GlobalColor.white)
        painter.drawRoundedRect(sheet, CARD_RADIUS_PX, CARD_RADIUS_PX)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        place = self.rect().adjusted(_BESIDE_PX, _ABOVE_PX, -_BESIDE_PX, -_ABOVE_PX)
        painter.drawImage(place, self._image)


class AgreementPage(QWidget):
    """What the study found, its plot, and beneath them the whole report."""

    #: The AgreementStudy that is to be kept for the camera.
    offers_wanted = Signal(object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.heading = label("", "display")
        self._findings = QVBoxLayout()
        self._findings.setSpacing(GAP_PX)
        self.words = label("")
        # Reports are in English, whatever language the window speaks.
        self.words.setLocale(QLocale(QLocale.Language.English))
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.plot = PlotView(appearance)
        self.keep = button(tr("Save the study for this camera"), "main")
        self.keep.clicked.connect(self._keep)
        self._study: AgreementStudy | None = None
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            self.heading,
            self._findings,
            self.plot,
            section_heading(tr("The whole report")),
            card(self.words),
            1,
            buttons=[self.leave, self.keep],
            caution=True,
        )

    def show_study(self, study: AgreementStudy) -> None:
        """Show what a study says."""
        self._study = study
        self.keep.setVisible(bool(study.offers or study.errors))
        self._show_findings(study.findings)
        self.words.setText(study.words)
        if study.plot is not None:
            self.plot.show_plot(study.plot)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    def _show_findings(self, findings: tuple[tuple[Movement, LimitsOfAgreement], ...]) -> None:
        """Say how far the camera is off: in the heading where there is one movement."""
        clear_layout(self._findings)
        alone = len(findings) == 1
        heading = bias_words(*findings[0]) if alone else tr("Camera against goniometer")
        self.heading.setText(heading)
        for movement, limits in findings:
            if not alone:
                self._findings.addWidget(label(bias_words(movement, limits), "title"))
            self._findings.addWidget(label(limits_words(limits), "lead" if alone else ""))

    @Slot()
    def _keep(self) -> None:
        if self._study is not None:
            self.offers_wanted.emit(self._study)


def bias_words(movement: Movement, limits: LimitsOfAgreement) -> str:
    """Return how much more or less than the goniometer the camera reads, on average."""
    bias = limits.bias.value
    words = (
        tr("{movement}: the camera reads {amount}\u00b0 more.")
        if bias >= 0
        else tr("{movement}: the camera reads {amount}\u00b0 less.")
    )
    amount = number_words(abs(bias), 1, tr)
    return words.format(movement=movement_name(movement), amount=amount)


def limits_words(limits: LimitsOfAgreement) -> str:
    """Return where most differences from the goniometer are expected, and from how many pairs."""
    return tr(
        "In 95 of 100 readings the difference is expected from {low} to {high}. From {count} pairs."
    ).format(low=_signed(limits.lower.value), high=_signed(limits.upper.value), count=limits.pairs)


def _signed(value: float) -> str:
    return f"{'+' if value >= 0 else chr(0x2212)}{number_words(abs(value), 1, tr)}\u00b0"
