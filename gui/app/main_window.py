"""The window: five words and the menu in one row, a page beneath."""

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QSize, Signal, Slot
from PySide6.QtGui import QCloseEvent, QResizeEvent
from PySide6.QtWidgets import QMainWindow, QPushButton, QWidget

from gui.app.head import Head
from gui.app.menus import fill_menus
from gui.app.page_area import PageArea
from gui.app.page_focus import PageFocus
from gui.app.reminder import Reminder
from gui.app.report_dialogs import ReportDialogs
from gui.app.tray_notice import TrayNotice
from gui.app.window_pages import Entered, MainPage, WindowPages
from gui.pages.settings.data_page import DataPage
from gui.session.preferences import Preferences
from gui.session.services import Services
from gui.text.wording import listed_name, tr
from gui.widgets.layouts import column, widget_with
from gui.widgets.message_bar import MessageBar
from gui.widgets.plain_dialog import plain_dialog
from measure.domain.records import Person

if TYPE_CHECKING:
    from gui.app.help_overview import HelpOverview
    from gui.pages.camera_and_body.calibration_pages import CalibrationPages
    from gui.pages.clips.clips_page import ClipsPage
    from gui.pages.exercises.exercises_page import ExercisesPage
    from gui.pages.measuring.camera_setup import SetupPage
    from gui.pages.progress.progress_page import ProgressPage
    from gui.pages.report.preview import ReportPreviewPage
    from gui.pages.settings.settings_pages import SettingsPages

#: Longest time for the engine to close and hand over its trials, seconds. [technical]
_CLOSE_ENGINE_S = 2.5
#: Longest time for what waits to be saved, seconds. [technical]
_CLOSE_RECORDS_S = 8.0
#: Longest time for listing cameras and reading clips to end, seconds. [technical]
_CLOSE_SLOW_S = 0.5
#: Width and height where everything still fits, in languages with longer words too, pixels; a
#: smaller screen is filled. [technical]
SMALLEST_PX = (960, 640)
#: Width and height at the first start, pixels; a smaller screen is filled. [technical]
USUAL_PX = (1280, 800)
#: Room that a window's frame and title may need on the screen, pixels. [technical]
_FRAME_PX = QSize(8, 40)


class MainWindow(QMainWindow):
    """Holds the pages and the services they work with."""

    #: Another language was chosen, and is in the settings.
    language_chosen = Signal()

    def __init__(self, services: Services) -> None:
        super().__init__()
        self.services = services
        self.setWindowTitle("Thawline")
        self.setMinimumSize(QSize(*SMALLEST_PX).boundedTo(self.screen().availableSize()))
        self.preferences = Preferences(services.appearance, services.cues, services.settings, self)
        self._pages = WindowPages(services, self.preferences)
        self.measure = self._pages.measure
        self.reports = ReportDialogs(services, self)
        self.messages = MessageBar()
        self._head = Head(
            self, (tr("Measure"), tr("Exercises"), tr("Progress"), tr("Clips"), tr("Set-up"))
        )
        #: Place in the row of the word that was chosen last.
        self.place: int = MainPage.MEASURE
        self._tray = TrayNotice(self)
        self._reminded = ""
        self._reminder = Reminder(services.settings, services.local_time, self)
        self._lay_out()
        fill_menus(self._head.menus, self, self.preferences)
        self._connect()
        self._focus = PageFocus(self._pages)
        self.resize(QSize(*USUAL_PX))
        self.restoreGeometry(services.settings.geometry)
        self._fit_to_screen()
        self.go(MainPage.MEASURE)
        self.measure.start.keep_focus()

    def _fit_to_screen(self) -> None:
        """Keep the whole window on the screen, also one that was larger when it was closed."""
        room = self.screen().availableGeometry()
        size = self.size().boundedTo(room.size() - _FRAME_PX).expandedTo(self.minimumSize())
        self.resize(size)
        frame = self.frameGeometry()
        if not room.contains(frame):
            self.move(
                max(room.left(), min(frame.left(), room.right() - frame.width())),
                max(room.top(), min(frame.top(), room.bottom() - frame.height())),
            )

    def _lay_out(self) -> None:
        area = PageArea(self._pages, self.messages)
        self.setCentralWidget(widget_with(column(self._head, (area, 1), spacing=0)))

    @property
    def words(self) -> list[QPushButton]:
        """The words in the row, by the place of their page."""
        return self._head.words

    def _connect(self) -> None:
        self._head.picked.connect(self.go)
        self.measure.measuring_changed.connect(self._step_back)
        self.measure.people_changed.connect(self._show_person)
        self.measure.progress_wanted.connect(partial(self.go, MainPage.PROGRESS))
        self.measure.report_wanted.connect(self.show_report)
        self.measure.exercises_wanted.connect(partial(self.go, MainPage.EXERCISES))
        self._reminder.due.connect(self._remind)
        self._pages.leading_changed.connect(self._step_back)
        self._pages.calibration_wanted.connect(self.show_calibration)
        self._pages.setup_wanted.connect(partial(self.go, MainPage.SETUP))
        self._pages.settings_wanted.connect(self.show_settings)
        self._pages.measuring_wanted.connect(self._measure)
        self._pages.left.connect(self._go_back)
        self._pages.report_wanted.connect(self.show_report)
        self._pages.write_wanted.connect(self.reports.write)
        self._pages.print_wanted.connect(self.reports.print)
        self.preferences.language_chosen.connect(self.language_chosen)
        self._pages.progress_wanted.connect(self._open_progress)
        self.measure.live.room_wanted.connect(self.messages.give_way)
        self._pages.turned.connect(self.messages.leave_page)
        undo = self.services.undo
        undo.offered.connect(self.messages.offer)
        undo.put_back.connect(self.messages.drop_offer)
        undo.put_back.connect(self._pages.reload)
        self.messages.undo.clicked.connect(undo.undo)
        for source in (self._pages, self.reports, undo):
            source.message_raised.connect(self.messages.tell)
        self.services.records.run(lambda: self.services.keeper.store.warnings, self._warn)

    @Slot()
    def _measure(self) -> None:
        """Go to measuring, and begin where nothing else has to be chosen."""
        self.go(MainPage.MEASURE)
        self.measure.begin()

    @Slot(str)
    def _open_progress(self, person_id: str) -> None:
        """Show somebody's progress; report and exercises are theirs from now on too."""
        self.measure.choose_person(person_id)
        self.go(MainPage.PROGRESS)

    @property
    def exercises(self) -> "ExercisesPage":
        return self._pages.exercises

    @property
    def progress(self) -> "ProgressPage":
        return self._pages.progress

    @property
    def clips(self) -> "ClipsPage":
        return self._pages.clips

    @property
    def setup(self) -> "SetupPage":
        return self._pages.setup

    @property
    def calibration(self) -> "CalibrationPages":
        return self._pages.calibration

    @property
    def settings(self) -> "SettingsPages":
        return self._pages.settings

    @property
    def report(self) -> "ReportPreviewPage":
        return self._pages.report

    @property
    def help(self) -> "HelpOverview":
        return self._pages.help

    @property
    def shows_settings(self) -> bool:
        """Whether the settings or one of their pages are shown."""
        return self._pages.made("settings") and self._pages.currentWidget() is self.settings

    @Slot()
    def show_settings(self) -> None:
        """Show the settings; leaving them leads back to the page of the word that was chosen."""
        self._show(self.settings)
        self._head.mark(None)
        self.settings.show_settings()
        self._step_back(False)

    def show_data(self, page: DataPage, _checked: bool = False) -> None:
        """Show a page of people and data; leaving it leads back to the page before."""
        from_settings = self.shows_settings and self.settings.from_settings
        self.show_settings()
        self.settings.show_data(page, from_settings=from_settings)

    @Slot()
    def show_report(self) -> None:
        """Show the report of the measured person as it would be printed."""
        self._show(self._pages.report)
        self._pages.report.show_report(self.reports.person)
        self._step_back(False)

    @Slot()
    def show_help(self) -> None:
        self._show(self._pages.help)
        self._head.mark(None)
        self._step_back(False)

    @Slot()
    def _go_back(self) -> None:
        self.go(self.place)

    @Slot(int)
    def go(self, place: int) -> None:
        """Show a page by its place in the row."""
        self.place = place
        self._head.mark(place)
        page = self._pages.in_row(place)
        self._show(page)
        measuring = page is self.measure and self.measure.under_way
        self._step_back(measuring or (place == MainPage.EXERCISES and self.exercises.leading))

    def _show(self, page: QWidget) -> None:
        """Show any page; leaving the measuring page pauses, leaving the camera closes it."""
        leaving = self._pages.currentWidget()
        if page is leaving:
            return
        if leaving is self.measure:
            self.measure.step_aside()
        elif self._pages.made("exercises") and leaving is self.exercises:
            self.exercises.step_aside()
        self._pages.setCurrentWidget(page)
        if not self._pages.shows_camera and self.measure.measuring is None:
            self.services.feed.leave()

    @Slot()
    def show_calibration(self) -> None:
        """Show what is known of camera and body; it belongs to the set-up."""
        self._pages.setCurrentWidget(self.calibration)
        self.calibration.show_calibration()

    @Slot()
    def open_clip(self) -> None:
        self.go(MainPage.CLIPS)
        self.clips.ask_for_clip()

    @Slot()
    def open_folder(self) -> None:
        self.go(MainPage.CLIPS)
        self.clips.ask_for_folder()

    @Slot()
    def show_home_programme(self) -> None:
        self.go(MainPage.EXERCISES)
        self.exercises.show_programme()

    @Slot()
    def show_events(self) -> None:
        self.go(MainPage.PROGRESS)
        self.progress.show_events()

    @property
    def has_work_under_way(self) -> bool:
        """Whether a session, a round of exercises or the reading of a clip is under way."""
        pages = self._pages
        leading = pages.made("exercises") and pages.exercises.leading
        return self.measure.measuring is not None or leading or pages.is_reading

    @property
    def keeps_programme(self) -> bool:
        """Whether an exercise programme was entered and not saved."""
        return self._pages.keeps_programme

    @property
    def entered(self) -> Entered:
        """What else is entered and not saved, for another window to go on with."""
        return self._pages.entered

    def take_over(self, before: "MainWindow", entered: Entered) -> None:
        """Show the page, the clips and the entries of another window, in the same place.

        The entries are as they were understood in that window's language.
        """
        self.setGeometry(before.geometry())
        self.setWindowState(before.windowState())
        if before._pages.made("clips"):
            self.clips.take_over(before.clips)
        self.go(before.place)
        self._pages.resume(entered)
        if before.shows_settings:
            self.show_settings()

    def _warn(self, warnings: tuple[str, ...]) -> None:
        """Show what is wrong with the place of the sessions until another message comes."""
        if warnings:
            self.messages.tell("\n".join(warnings), stays=True)

    @Slot(str)
    def _remind(self, words: str) -> None:
        """Show a reminder, but never while an arm is measured or a round is led."""
        if self._head.isHidden():
            return
        # Who is to be reminded is rarely looking: it stays until something else is said or begun.
        self.messages.tell(words, stays=True)
        self._reminded = words
        if not self.isActiveWindow():
            self._tray.show_words(words)

    @Slot(bool)
    def _step_back(self, under_way: bool) -> None:
        """Hide the head while an arm is measured or a round is led."""
        self._head.setVisible(not under_way)
        if under_way and self._reminded and self.messages.text == self._reminded:
            self.messages.tell("")

    @Slot(object)
    def _show_person(self, person: Person | None) -> None:
        self.services.person_id = person.id if person else None
        self.reports.person = person
        if person is None:
            self._head.show_who("")
        else:
            self._head.show_who(listed_name(person))

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.services.appearance.window_resized.emit()

    def _ask_about_entries(self) -> None:
        asked = plain_dialog(
            tr("Close without saving the programme?"),
            tr("Keep editing"),
            self,
            more=tr("What you have changed in the exercise programme will be lost."),
            agree=tr("Close without saving"),
        )
        asked.rejected.connect(self.show_home_programme)
        asked.accepted.connect(self._close_without_entries)
        asked.open()

    @Slot()
    def _close_without_entries(self) -> None:
        self.exercises.give_up_entries()
        self.close()

    def closeEvent(self, event: QCloseEvent) -> None:
        """Close at any moment: the engine hands over what it captured, then all is saved.

        A programme that was entered and not saved is asked about first.
        """
        if self.keeps_programme:
            event.ignore()
            self._ask_about_entries()
            return
        services = self.services
        services.settings.geometry = self.saveGeometry()
        services.settings.save()
        self.hide()
        services.cues.silence()
        self.measure.close_session()
        services.model_fetch.close()
        self._pages.stop_reading(_CLOSE_SLOW_S)
        services.feed.close(_CLOSE_ENGINE_S)
        services.records.run(services.keeper.close)
        services.records.close(_CLOSE_RECORDS_S)
        services.slow_worker.close(_CLOSE_SLOW_S)
        super().closeEvent(event)
