"""Agreement page: what a study against a goniometer shows."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QWidget

from gui.pages.camera_and_body.agreement_study import AgreementStudy
from gui.style.measures import CONTENT_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label


class AgreementPage(QWidget):
    """Words, and beneath them the plot."""

    #: The AgreementStudy that is to be kept for the camera.
    offers_wanted = Signal(object)
    back = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.words = label("")
        self.words.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.plot = QLabel()
        self.plot.setAccessibleName(tr("plot of the differences"))
        self.keep = button(tr("Save the study for this camera"))
        self.keep.clicked.connect(self._keep)
        self._study: AgreementStudy | None = None
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            label(tr("Camera against goniometer"), "display"),
            card(self.words),
            self.plot,
            1,
            buttons=[self.leave, self.keep],
            caution=True,
        )

    def show_study(self, study: AgreementStudy) -> None:
        """Show what a study says."""
        self._study = study
        self.keep.setVisible(bool(study.offers or study.errors))
        self.words.setText(study.words)
        if study.plot is not None:
            shown = QPixmap.fromImage(study.plot)
            width = min(shown.width(), CONTENT_PX)
            self.plot.setPixmap(
                shown.scaledToWidth(width, Qt.TransformationMode.SmoothTransformation)
            )
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _keep(self) -> None:
        if self._study is not None:
            self.offers_wanted.emit(self._study)
