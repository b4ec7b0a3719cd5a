"""Preview of the report for a clinic visit: to read, and page by page as it is printed."""

from dataclasses import dataclass, replace

import numpy as np
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize, Qt, Signal, Slot
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QResizeEvent
from PySide6.QtPdf import QPdfDocument
from PySide6.QtWidgets import QWidget

from gui.pages.report.choices_form import ReportChoicesForm
from gui.pages.report.paper_edge import PaperEdge
from gui.pages.report.reading_view import ReadingView
from gui.report.diagrams import PlacedDiagrams
from gui.report.files import report_bytes
from gui.session.services import Services
from gui.style.measures import BAR_PX, CONTENT_PX, GAP_PX, MARGIN_PX
from gui.text.wording import person_name, tr
from gui.widgets.buttons import ButtonRow, button
from gui.widgets.layouts import centred, clear_layout, column, row, separator, widget_with
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import label
from gui.widgets.titled_page import TitledPage
from measure.domain.records import History, Person
from measure.report.page import report_html

#: Width of a rendered page, pixels: sharp at the widest that a page is shown, which is also the
#: widest that this page becomes. [technical]
_WIDTH_PX = 1400
#: Text size up to which the form has room beside the paper, per cent. [technical]
_BESIDE_PERCENT = 120
#: Width of the form beside the paper, in sizes of the text. [technical]
_FORM_WIDTH = 19
#: How much of a page's blank margin is left out at every edge, so that its letters are larger,
#: millimetres. [technical]
_TRIMMED_MM = 6.0
#: Space above and below the buttons of the foot, as on other pages, pixels. [technical]
_FOOT_PX = 3 * GAP_PX // 2
#: What is darker is written, of 255. [technical]
_INK = 128
#: Ground that is seen above a page, pixels. [technical]
_ABOVE_PX = 4


@dataclass(frozen=True, slots=True)
class RenderedPage:
    """A page as a picture, its margin narrower, and its words for those who hear it."""

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
        trim = round(_TRIMMED_MM * 72 / 25.4 / size.width() * _WIDTH_PX)
        shown = picture.copy(picture.rect().adjusted(trim, trim, -trim, -trim))
        pages.append(RenderedPage(shown, document.getAllText(number).text()))
    document.close()
    return pages


def _written_lines(picture: QImage) -> list[tuple[int, int]]:
    """Return the upper and lower edges of the lines that are written in a picture, pixels."""
    grey = picture.convertToFormat(QImage.Format.Format_Grayscale8)
    rows = np.frombuffer(grey.constBits(), np.uint8).reshape(grey.height(), grey.bytesPerLine())
    written = (rows[:, : grey.width()] < _INK).any(axis=1)
    edges = np.flatnonzero(np.diff(written, prepend=False, append=False))
    return [(int(top), int(low)) for top, low in edges.reshape(-1, 2)]


class PaperSheet(QWidget):
    """A page of paper as wide as its place, so that it is read as it is printed."""

    def __init__(self, page: RenderedPage) -> None:
        super().__init__()
        self._picture = page.picture
        self._lines = _written_lines(page.picture)
        self.setAccessibleDescription(page.words)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        shape = self._picture.size()
        self.setFixedHeight(round(event.size().width() * shape.height() / shape.width()))

    def fold_spans(self) -> list[tuple[int, int]]:
        """Return the edges of what is written in a line, pixels."""
        scale = self.height() / self._picture.height()
        return [(int(top * scale), int(low * scale) + 1) for top, low in self._lines]

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
        self.form.question.textEdited.connect(self._keep_question)
        self._person: Person | None = None
        self.sheets: list[PaperSheet] = []
        self.options = button(tr("Options"), checkable=True)
        self.options.toggled.connect(self._fit)
        #: Leads from the sheet as it is printed to the report to read, and back.
        self.other_kind = button("")
        self.other_kind.clicked.connect(self._change_kind)
        self._whole, self._kind_chosen = False, False
        self._choose_kind()
        self.reading = ReadingView()
        # The paper's bar stands in the margin; the sheet ends where the foot does.
        edge = PaperEdge(services.appearance, self.reading)
        self._sheet = widget_with(row((edge, 1), margins=(0, 0, BAR_PX, 0)))
        paper = QWidget()
        self._column = column(
            on=paper,
            margins=(0, _ABOVE_PX, 0, 0),
            spacing=self._appearance.gap(2),
        )
        self._paper = scrollable(paper, wide=True)
        self._choices = scrollable(self.form, wide=True)
        self._lay_out()
        self._appearance.changed.connect(self._grow)
        self._fit()

    @Slot()
    def _grow(self) -> None:
        """Take another text size; the report is written anew."""
        self._choose_kind()
        self._fit()
        if self.isVisible():
            self._show_again()

    def _choose_kind(self) -> None:
        """Open on the sheet as it is printed, with large text on the report to read."""
        if not self._kind_chosen:
            self._whole = self._appearance.percent <= _BESIDE_PERCENT
        self.other_kind.say(tr("Reading view") if self._whole else tr("As printed"))

    def _lay_out(self) -> None:
        """Put the paper beside the form; the foot stays in the window."""
        gap = self._appearance.gap
        shown = column(self.state, (self._sheet, 1), (self._paper, 1), spacing=gap(1))
        form = column((self._choices, 1), margins=(0, _ABOVE_PX, 0, 0))
        # Between the form and the paper lies the form's bar as well.
        beside = widget_with(row(form, (shown, 1), spacing=gap(2) - BAR_PX))
        head = widget_with(row((self.title, 1), self.other_kind, self.options, spacing=gap(2)))
        foot = ButtonRow([self.leave, self.print, self.write], wide=True)
        margins = (MARGIN_PX, _FOOT_PX, MARGIN_PX, _FOOT_PX)
        parts = (
            centred(head, margins=(MARGIN_PX, MARGIN_PX, MARGIN_PX, gap(2))),
            (centred(beside, margins=(MARGIN_PX, 0, MARGIN_PX - BAR_PX, gap(2))), 1),
            separator(),
            centred(foot, margins=margins),
        )
        column(*parts, on=self, spacing=0)
        for part in (head, beside, foot):
            part.setMaximumWidth(_WIDTH_PX + BAR_PX * (part is beside))

    @Slot()
    def _fit(self) -> None:
        """Large text leaves the page to the report; the form then opens in its place."""
        roomy = self._appearance.percent <= _BESIDE_PERCENT
        opened = self.options.isChecked() and not roomy
        self.options.setVisible(not roomy)
        narrow = self._appearance.px(_FORM_WIDTH)
        narrow = max(narrow, self._choices.minimumSizeHint().width())
        self._choices.setMaximumWidth(narrow if roomy else CONTENT_PX)
        self._choices.setVisible(roomy or opened)
        whole = self._whole
        self._sheet.setVisible(not opened and not whole)
        self._paper.setVisible(not opened and whole)
        self.other_kind.setVisible(not opened)

    @Slot()
    def _change_kind(self) -> None:
        """Show the other kind of preview, from now on at every text size."""
        self._whole, self._kind_chosen = not self._whole, True
        self._choose_kind()
        self._fit()
        self._show_again()

    def show_report(self, person: Person | None) -> None:
        """Make the report of a person as it is now, and show it."""
        self._person = person
        self._ready(False)
        if person is None:
            self.reading.clear()
            self._say(tr("No one has been measured yet."))
            return
        self.title.setText(tr("Report for a clinic visit: {name}").format(name=person_name(person)))
        self.form.ask(self._services.report_questions.get(person.id, ""))
        self._prepare(person)

    def _prepare(self, person: Person) -> None:
        self._say(tr("The report is being prepared."))
        services = self._services
        show = self._print if self._whole else self._write
        services.records.run(lambda: services.keeper.store.history(person.id), show, self._say)

    def _write(self, history: History) -> None:
        """Show the report to read."""
        today, choices = self._services.today(), self.form.choices
        text_px, diagrams = self._appearance.px(), PlacedDiagrams()
        chosen = replace(choices, reading_px=text_px)

        def show(html: str) -> None:
            self.reading.show_report(html, diagrams, text_px)
            self._ready(True)

        self._services.slow_worker.run(
            lambda: report_html(history, today, chosen, draw=diagrams.place, for_screen=False),
            show,
            self._say,
        )

    def _print(self, history: History) -> None:
        """Show the report's pages."""
        today, choices = self._services.today(), self.form.choices
        self._services.slow_worker.run(
            lambda: report_bytes(history, today, ".pdf", choices)[0],
            lambda pdf: self._show_pages(rendered_pages(pdf)),
            self._say,
        )

    def _ready(self, ready: bool) -> None:
        """Say nothing more where the report is shown, and let it be written only then."""
        if ready:
            self._say("")
        for way in (self.write, self.print):
            way.setEnabled(ready)

    @Slot()
    def _show_again(self) -> None:
        """Show the same report with what is chosen now.

        It can be written meanwhile: a press on the button is what ends the typing of a question,
        and a button disabled by that would never be clicked.
        """
        if self._person is not None:
            self._prepare(self._person)

    @Slot(str)
    def _keep_question(self, words: str) -> None:
        """Keep the question of this person for when the page is shown again."""
        if self._person is not None:
            self._services.report_questions[self._person.id] = words

    def _say(self, words: str) -> None:
        self.state.setText(words)
        self.state.setVisible(bool(words))

    def _show_pages(self, pages: list[RenderedPage]) -> None:
        clear_layout(self._column)
        self.sheets = [PaperSheet(page) for page in pages]
        for number, sheet in enumerate(self.sheets, start=1):
            sheet.setAccessibleName(
                tr("Page {number} of {count}").format(number=number, count=len(pages))
            )
            self._column.addWidget(PaperEdge(self._appearance, sheet))
        self._ready(True)
