"""Preview of the report for a clinic visit, page by page as it is printed."""

from dataclasses import dataclass

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtPdf import QPdfDocument
from PySide6.QtWidgets import QWidget

from gui.pages.report.choices_form import ReportChoicesForm
from gui.report.files import report_bytes
from gui.session.services import Services
from gui.style.measures import CONTENT_PX, MARGIN_PX
from gui.text.wording import tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import centred, clear_layout, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.domain.records import History, Person

#: Width of a rendered page, pixels: sharp at the widest that a page is shown, which is also the
#: widest that this page becomes. [technical]
_WIDTH_PX = 1400
#: Text size up to which the form has room beside the paper, per cent. [technical]
_BESIDE_PERCENT = 120
#: Width of the form beside the paper, in sizes of the text. [technical]
_FORM_WIDTH = 21


@dataclass(frozen=True, slots=True)
class RenderedPage:
    """A page as a picture, and its words for those who hear it."""

    picture: QImage
    words: str


def rendered_pages(pdf: bytes) -> list[RenderedPage]:
    """Return the pages of a PDF; called in the window's thread, where Qt's reader has to live."""
    content = QBuffer()
    content.setData(QByteArray(pdf))
    content.open(QIODevice.OpenModeFlag.ReadOnly)
    document = QPdfDocument()
    document.load(content)
    pages = []
    for number in range(document.pageCount()):
        size = document.pagePointSize(number)
        height_px = round(_WIDTH_PX * size.height() / size.width())
        picture = QImage(_WIDTH_PX, height_px, QImage.Format.Format_RGB32)
        picture.fill(Qt.GlobalColor.white)
        painter = QPainter(picture)
        painter.drawImage(0, 0, document.render(number, QSize(_WIDTH_PX, height_px)))
        painter.end()
        pages.append(RenderedPage(picture, document.getAllText(number).text()))
    document.close()
    return pages


class PaperSheet(QWidget):
    """A page of paper, as wide as there is room, or so wide that all of it is seen."""

    def __init__(self, page: RenderedPage) -> None:
        super().__init__()
        self._picture = page.picture
        self.setAccessibleDescription(page.words)

    def fit_height(self, height_px: int | None) -> None:
        """Be no higher than this from now on, or with None as wide as there is room."""
        shape = self._picture.size()
        wide = _WIDTH_PX if height_px is None else height_px * shape.width() // shape.height()
        self.setMaximumWidth(wide)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        shape = self._picture.size()
        self.setFixedHeight(round(event.size().width() * shape.height() / shape.width()))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(QRectF(self.rect()), self._picture)
        painter.end()


class ReportPreviewPage(TitledPage):
    """Shows the report of the measured person; it is written or printed from here."""

    #: Each with the choices of the form.
    write_wanted = Signal(object)
    print_wanted = Signal(object)

    def __init__(self, services: Services) -> None:
        super().__init__(services.appearance, tr("Report for a clinic visit"))
        self._services = services
        self.state = label("")
        self.write = button(tr("Save as a file..."), "main")
        self.print = button(tr("Print..."))
        self.form = ReportChoicesForm(services.appearance)
        self.write.clicked.connect(lambda: self.write_wanted.emit(self.form.choices))
        self.print.clicked.connect(lambda: self.print_wanted.emit(self.form.choices))
        self.form.changed.connect(self._show_again)
        self._person: Person | None = None
        self.sheets: list[PaperSheet] = []
        self.options = button(tr("Options"), checkable=True)
        self.options.toggled.connect(self._fit)
        self.whole = button(tr("Whole page"), checkable=True)
        self.whole.toggled.connect(self._fit_sheets)
        paper = QWidget()
        self._column = column(on=paper, spacing=self._appearance.gap(2))
        self._paper = scrollable(paper, wide=True)
        self._choices = scrollable(self.form, wide=True)
        self._lay_out()
        self._appearance.changed.connect(self._fit)
        self._fit()

    def _lay_out(self) -> None:
        """Put the paper beside the form; the foot stays in the window."""
        gap = self._appearance.gap
        shown = column(self.state, (self._paper, 1), spacing=gap(1))
        beside = widget_with(row(self._choices, (shown, 1), spacing=gap(3)))
        head = widget_with(row((self.title, 1), self.whole, self.options, spacing=gap(2)))
        foot = ButtonRow([self.leave, self.print, self.write], wide=True)
        margins = (MARGIN_PX, gap(1.5), MARGIN_PX, gap(1.5))
        parts = (
            centred(head, margins=(MARGIN_PX, gap(2), MARGIN_PX, gap(1))),
            (centred(beside, margins=(MARGIN_PX, 0, MARGIN_PX, 0)), 1),
            separator(),
            centred(foot, margins=margins),
        )
        column(*parts, on=self, spacing=0)
        for part in (head, beside, foot):
            part.setMaximumWidth(_WIDTH_PX)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._fit_sheets()

    @Slot()
    def _fit(self) -> None:
        """Large text leaves the page to the paper; the form then opens in its place."""
        roomy = self._appearance.percent <= _BESIDE_PERCENT
        opened = self.options.isChecked()
        self.options.setVisible(not roomy)
        narrow = self._appearance.px(_FORM_WIDTH)
        self._choices.setMaximumWidth(narrow if roomy else CONTENT_PX)
        self._choices.setVisible(roomy or opened)
        self._paper.setVisible(roomy or not opened)
        self.whole.setVisible(roomy or not opened)

    @Slot()
    def _fit_sheets(self) -> None:
        """Show the paper as wide as there is room, or every page whole."""
        whole = self.whole.isChecked()
        self.whole.say(tr("Full width") if whole else tr("Whole page"))
        for sheet in self.sheets:
            sheet.fit_height(self._paper.viewport().height() if whole else None)

    def show_report(self, person: Person | None) -> None:
        """Make the report of a person as it is now, and show it."""
        self._person = person
        self._show_pages([])
        if person is None:
            self._say(tr("No one has been measured yet."))
            return
        self.title.setText(tr("Report for a clinic visit: {name}").format(name=person.pseudonym))
        self._say(tr("The report is being prepared."))
        services, today, choices = self._services, self._services.today(), self.form.choices

        def render(history: History) -> None:
            services.slow_worker.run(
                lambda: report_bytes(history, today, ".pdf", choices)[0],
                lambda pdf: self._show_pages(rendered_pages(pdf)),
                self._say,
            )

        services.records.run(lambda: services.keeper.store.history(person.id), render, self._say)

    @Slot()
    def _show_again(self) -> None:
        self.show_report(self._person)

    def _say(self, words: str) -> None:
        self.state.setText(words)
        self.state.setVisible(bool(words))

    def _show_pages(self, pages: list[RenderedPage]) -> None:
        clear_layout(self._column)
        self._say("")
        self.sheets = [PaperSheet(page) for page in pages]
        for number, sheet in enumerate(self.sheets, start=1):
            sheet.setAccessibleName(
                tr("Page {number} of {count}").format(number=number, count=len(pages))
            )
            self._column.addWidget(sheet)
        self._fit_sheets()
        for way in (self.write, self.print):
            way.setEnabled(bool(pages))
