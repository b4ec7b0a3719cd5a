"""Agreement page: a study against a goniometer, or the repeatability of own sessions."""

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QLabel, QPlainTextEdit, QScrollArea, QWidget

from gui.pages.camera_and_body.agreement_study import AgreementStudy
from gui.style.appearance import Appearance
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import column
from gui.widgets.text import NoticeBar, label


class AgreementPage(QWidget):
    """Words, and beneath them the plot."""

    #: The AgreementStudy that is to be kept for the camera.
    offers_wanted = Signal(object)
    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = label("", "title")
        self.words = QPlainTextEdit()
        self.words.setReadOnly(True)
        self.words.setAccessibleName(tr("what the readings say"))
        self.words.setTabChangesFocus(True)
        self.plot = QLabel()
        self.plot.setAccessibleName(tr("plot of the differences"))
        self._plot = QScrollArea()
        self._plot.setWidget(self.plot)
        self.keep = button(tr("Keep the study for this camera"))
        self.keep.clicked.connect(self._keep)
        self._study: AgreementStudy | None = None
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        column(
            self.title,
            (self.words, 1),
            (self._plot, 2),
            ButtonRow([self.leave, self.keep]),
            NoticeBar(),
            on=self,
            margins=(24, 8, 24, 16),
            spacing=appearance.gap(1),
        )

    def show_study(self, study: AgreementStudy) -> None:
        """Show what a study says."""
        self._study = study
        self.keep.setVisible(bool(study.offers or study.errors))
        with_plot = study.plot is not None
        self.title.setText(
            tr("Camera against goniometer") if with_plot else tr("How well sessions repeat")
        )
        self.words.setPlainText(study.words)
        self._plot.setVisible(with_plot)
        if study.plot is not None:
            self.plot.setPixmap(QPixmap.fromImage(study.plot))
            self.plot.adjustSize()
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)

    @Slot()
    def _keep(self) -> None:
        if self._study is not None:
            self.offers_wanted.emit(self._study)
