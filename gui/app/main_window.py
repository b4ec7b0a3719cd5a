"""The window: four words in one row, a page beneath, a menu bar for the rest."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QSize, QTimer, Slot
from PySide6.QtGui import QAction, QActionGroup, QCloseEvent, QKeySequence
from PySide6.QtWidgets import (
    QButtonGroup,
    QFileDialog,
    QHBoxLayout,
    QMainWindow,
    QMenu,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from gui.app.about import about_dialog, keys_dialog, purpose_dialog
from gui.app.help_pages import HelpPage, open_page, page_name
from gui.pages.camera_and_body.calibration_pages import CalibrationPages
from gui.pages.clips.clip_review import ClipsPage
from gui.pages.measuring.camera_setup import SetupPage
from gui.pages.measuring.measure_page import MeasurePage
from gui.pages.progress.progress_page import ProgressPage
from gui.report.files import print_report, report_name, write_report
from gui.report.printer import chosen_printer
from gui.session.services import Services
from gui.session.settings import TEXT_SCALES
from gui.style.palette import Scheme
from gui.text.language import LANGUAGES, SYSTEM
from gui.text.words import tr
from gui.widgets.buttons import FlowRow, button
from gui.widgets.layouts import separator
from gui.widgets.text import label
from measure.domain.records import History, Person

#: How long closing may take altogether, seconds: first the engine, then what waits to be saved.
_CLOSE_ENGINE_S, _CLOSE_RECORDS_S, _CLOSE_SLOW_S = 2.5, 1.5, 0.5
_MESSAGE_MS = 9000
#: Lines of messages at one time. Ours.
_MAX_MESSAGE_LENGTH = 3
#: Where everything still fits, in languages with longer words too; a smaller screen is filled.
SMALLEST_PX = (960, 640)


class MainWindow(QMainWindow):
    """Holds the pages and the services they work with."""

    def __init__(self, services: Services) -> None:
        super().__init__()
        self.services = services
        self.setWindowTitle("Thawline")
        self.setMinimumSize(QSize(*SMALLEST_PX).boundedTo(self.screen().availableSize()))
        self.measure = MeasurePage(services)
        self.progress = ProgressPage(services)
        self.clips = ClipsPage(services)
        self.setup = SetupPage(services)
        self.known = CalibrationPages(services)
        self.words: list[QPushButton] = []
        self._pages = QStackedWidget()
        self._told = label("", "lead")
        self._told.setVisible(False)
        self._told_timer = QTimer(self)
        self._told_timer.setSingleShot(True)
        self._told_timer.timeout.connect(self._told.hide)
        self._who = label("", "quiet")
        self._row = QWidget()
        self._lay_out()
        self._make_menus()
        self._connect()
        self.resize(1280, 800)
        self.restoreGeometry(services.settings.geometry)
        self.go(0)
        self.measure.start.home_button.setFocus()

    def _lay_out(self) -> None:
        row = QHBoxLayout(self._row)
        row.setContentsMargins(24, 4, 24, 0)
        row.setSpacing(self.services.appearance.gap(4))
        words = FlowRow(self.services.appearance.gap(4), filling=False)
        group = QButtonGroup(self)
        for place, (text, page) in enumerate(
            (
                (tr("Measure"), self.measure),
                (tr("Progress"), self.progress),
                (tr("Clips"), self.clips),
                (tr("Set-up"), self.setup),
            )
        ):
            word = button(text, "word", checkable=True)
            group.addButton(word, place)
            self.words.append(word)
            self._pages.addWidget(page)
        self._pages.addWidget(self.known)
        group.idClicked.connect(self.go)
        words.offer(self.words)
        row.addWidget(words, 1)
        self._who.setWordWrap(False)
        row.addWidget(self._who)
        centre = QWidget()
        layout = QVBoxLayout(centre)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self._row)
        self._hair = separator()
        layout.addWidget(self._hair)
        self._told.setContentsMargins(24, 8, 24, 8)
        layout.addWidget(self._told)
        layout.addWidget(self._pages, 1)
        self.setCentralWidget(centre)

    def _connect(self) -> None:
        self.measure.measuring_changed.connect(self._step_back)
        self.measure.message_raised.connect(self.tell)
        self.measure.people_changed.connect(self._show_person)
        self.measure.session_ended.connect(self.progress.reload)
        self.progress.message_raised.connect(self.tell)
        self.clips.message_raised.connect(self.tell)
        self.clips.session_ended.connect(self.progress.reload)
        self.setup.mirror_changed.connect(self._mirror_changed)
        self.setup.calibration_requested.connect(self.show_calibration)
        self.known.message_raised.connect(self.tell)
        self.known.back.connect(partial(self.go, 3))
        keeper = self.services.keeper
        self.services.records.run(lambda: keeper.warnings(), self._warn)

    # -- menus --------------------------------------------------------------------------------

    def _make_menus(self) -> None:
        bar = self.menuBar()
        file = bar.addMenu(tr("&File"))
        self._add(file, tr("Open a &clip..."), "Ctrl+O", self._open_clip)
        self._add(file, tr("Open a &folder of clips..."), "Ctrl+Shift+O", self._open_folder)
        file.addSeparator()
        self._add(file, tr("&Report for a clinic visit..."), "Ctrl+R", self._report)
        self._add(file, tr("&Print the report..."), "Ctrl+P", self._print)
        file.addSeparator()
        leave = self._add(file, tr("&Quit"), "Ctrl+Q", self.close)
        leave.setMenuRole(QAction.MenuRole.QuitRole)
        pages = bar.addMenu(tr("&Go to"))
        for place, word in enumerate(self.words):
            self._add(pages, word.accessibleName(), f"Ctrl+{place + 1}", partial(self.go, place))
        pages.addSeparator()
        self._add(pages, tr("&Home programme"), "Ctrl+H", self._home_programme)
        self._add(pages, tr("&What happened: injection, flare, camera"), "Ctrl+E", self._events)
        view = bar.addMenu(tr("&View"))
        schemes = QActionGroup(self)
        for scheme, text in (
            (Scheme.SYSTEM, tr("As the &system")),
            (Scheme.LIGHT, tr("&Light")),
            (Scheme.DARK, tr("&Dark")),
        ):
            action = self._add(view, text, "", partial(self.choose_scheme, scheme))
            action.setCheckable(True)
            action.setChecked(self.services.settings.scheme is scheme)
            schemes.addAction(action)
        view.addSeparator()
        self._make_language_menu(view)
        view.addSeparator()
        self._add(view, tr("Text &larger"), "Ctrl++", partial(self.change_text, 1))
        self._add(view, tr("Text s&maller"), "Ctrl+-", partial(self.change_text, -1))
        self._add(view, tr("Text as it &was"), "Ctrl+0", partial(self.change_text, 0))
        cues = bar.addMenu(tr("&Cues"))
        self._switch(cues, tr("&Tones"), self.services.settings.tones, self._tones)
        self._switch(cues, tr("&Speech"), self.services.settings.speech, self._speech)
        help_menu = bar.addMenu(tr("&Help"))
        self._add(help_menu, tr("&What this is, and what it is not"), "F1", self._what_this_is)
        self._add(help_menu, tr("&Keys"), "F2", self._keys)
        help_menu.addSeparator()
        for page in HelpPage:
            self._add(help_menu, page_name(page), "", partial(open_page, page, self))
        help_menu.addSeparator()
        about = self._add(help_menu, tr("&About Thawline"), "", self._about)
        about.setMenuRole(QAction.MenuRole.AboutRole)

    def _make_language_menu(self, view: QMenu) -> None:
        menu = view.addMenu(tr("La&nguage"))
        group = QActionGroup(self)
        # A language's own name is the same in all of them.
        for code, name in ((SYSTEM, tr("As the &system")), *LANGUAGES.items()):
            action = self._add(menu, name, "", partial(self.choose_language, code))
            action.setCheckable(True)
            action.setChecked(self.services.settings.language == code)
            group.addAction(action)

    def _add(self, menu: QMenu, text: str, keys: str, slot: object) -> QAction:
        action = QAction(text, self)
        if keys:
            action.setShortcut(QKeySequence(keys))
        action.triggered.connect(slot)
        menu.addAction(action)
        return action

    def _switch(self, menu: QMenu, text: str, on: bool, slot: object) -> None:
        action = QAction(text, self)
        action.setCheckable(True)
        action.setChecked(on)
        action.toggled.connect(slot)
        menu.addAction(action)

    # -- what people do -----------------------------------------------------------------------

    @Slot(int)
    def go(self, place: int) -> None:
        """Show a page by its place in the row."""
        leaving = self._pages.currentWidget()
        self.words[place].setChecked(True)
        page = self._pages.widget(place)
        if page is not leaving:
            if leaving is self.measure:
                self.measure.step_aside()
            self._pages.setCurrentIndex(place)
            measuring = self.measure.measuring is not None
            if page is not self.setup and not measuring:
                self.services.feed.leave()
        self._step_back(page is self.measure and self.measure.under_way)

    @Slot()
    def show_calibration(self) -> None:
        """Show what is known of camera and body; it belongs to the set-up."""
        self._pages.setCurrentWidget(self.known)
        self.known.show_calibration()

    @Slot(str)
    def tell(self, text: str) -> None:
        """Show a message above the page for a while; one that is shown still stays beside it."""
        before = self._told.text() if self._told.isVisible() and text else ""
        lines = dict.fromkeys([*before.splitlines(), *text.splitlines()])
        self._told.setText("\n".join([*lines][-_MAX_MESSAGE_LENGTH:]))
        self._told.setVisible(bool(text))
        self._told_timer.start(_MESSAGE_MS)

    def _warn(self, warnings: tuple[str, ...]) -> None:
        """Show what is wrong with the place of the sessions until something else is told."""
        if warnings:
            self.tell("\n".join(warnings))
            self._told_timer.stop()

    def choose_scheme(self, scheme: Scheme, _checked: bool = False) -> None:
        self.services.settings.scheme = scheme
        self.services.appearance.choose(scheme=scheme)

    def choose_language(self, code: str, _checked: bool = False) -> None:
        """Note the language; pages that are open keep theirs."""
        self.services.settings.language = code
        self.tell(tr("The language changes when Thawline is opened the next time."))

    def change_text(self, step: int, _checked: bool = False) -> None:
        """Make the text larger or smaller by a step, or as it was with 0."""
        appearance = self.services.appearance
        place = TEXT_SCALES.index(appearance.percent) + step if step else 0
        percent = TEXT_SCALES[min(len(TEXT_SCALES) - 1, max(0, place))]
        self.services.settings.text_percent = percent
        appearance.choose(percent=percent)

    @Slot(bool)
    def _tones(self, wanted: bool) -> None:
        self.services.settings.tones = wanted
        self.services.cues.tones_wanted = wanted

    @Slot(bool)
    def _speech(self, wanted: bool) -> None:
        self.services.settings.speech = wanted
        self.services.cues.speech_wanted = wanted

    @Slot()
    def _open_clip(self) -> None:
        self.go(2)
        self.clips.ask_for_clip()

    @Slot()
    def _open_folder(self) -> None:
        self.go(2)
        self.clips.ask_for_folder()

    @Slot()
    def _home_programme(self) -> None:
        self.go(1)
        self.progress.show_plan()

    @Slot()
    def _events(self) -> None:
        self.go(1)
        self.progress.show_events()

    @Slot()
    def _report(self) -> None:
        """Ask where a report goes and write it, beside the window's thread."""
        person, services = self.measure.person, self.services
        if person is None:
            self.tell(tr("Nobody has been measured yet."))
            return
        today = services.today()
        name, _ = QFileDialog.getSaveFileName(
            self,
            tr("Write a report"),
            report_name(person, today, ".pdf"),
            "PDF (*.pdf);;HTML (*.html)",
        )
        if not name:
            return

        def write(history: History) -> None:
            services.slow_worker.run(
                lambda: write_report(history, today, Path(name)),
                lambda _: self.tell(tr("{file} is written.").format(file=Path(name).name)),
                self.tell,
            )

        services.records.run(lambda: services.keeper.history(person.id), write, self.tell)

    @Slot()
    def _print(self) -> None:
        """Ask for a printer and print the report, beside the window's thread."""
        person, services = self.measure.person, self.services
        if person is None:
            self.tell(tr("Nobody has been measured yet."))
            return
        today = services.today()
        printer = chosen_printer(self)
        if printer is None:
            return

        def printed(pages: int) -> None:
            self.tell(tr("Pages sent to the printer: {pages}.").format(pages=pages))

        def on_paper(history: History) -> None:
            services.slow_worker.run(
                lambda: print_report(history, today, printer), printed, self.tell
            )

        services.records.run(lambda: services.keeper.history(person.id), on_paper, self.tell)

    @Slot()
    def _what_this_is(self) -> None:
        purpose_dialog(self).open()

    @Slot()
    def _keys(self) -> None:
        keys_dialog(self).open()

    @Slot()
    def _about(self) -> None:
        about_dialog(self).open()

    # -- what the pages tell ------------------------------------------------------------------

    @Slot(bool)
    def _step_back(self, measuring: bool) -> None:
        """Hide the row of words while an arm is measured: one thing at a time."""
        self._row.setVisible(not measuring)
        self._hair.setVisible(not measuring)

    @Slot(object)
    def _show_person(self, person: Person | None) -> None:
        self.services.person_id = person.id if person else None
        if person is None:
            self._who.setText("")
        else:
            demo = tr(" (demo data)") if person.demo else ""
            self._who.setText(person.pseudonym + demo)
        self.progress.show_person(person)
        self.clips.show_person(person)

    @Slot(bool)
    def _mirror_changed(self, mirrored: bool) -> None:
        self.measure.live.video.set_mirrored(mirrored)

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close at any moment: the engine hands over what it captured, then all is saved."""
        services = self.services
        services.settings.geometry = self.saveGeometry()
        services.settings.save()
        self.hide()
        services.cues.silence()
        self.clips.stop_reading()
        services.slow_worker.run(services.end_reading)
        services.feed.close(_CLOSE_ENGINE_S)
        services.records.run(services.keeper.close)
        services.records.close(_CLOSE_RECORDS_S)
        services.slow_worker.close(_CLOSE_SLOW_S)
        super().closeEvent(event)
