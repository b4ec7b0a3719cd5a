"""Pages of the window: the measuring page from the start, each other one when it is first wanted.

Their modules load plotting, PDF and statistics, which the first page does without.
"""

from dataclasses import dataclass
from enum import IntEnum
from functools import cached_property
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QStackedWidget, QWidget

from gui.pages.measuring.measure_page import MeasurePage
from gui.session.preferences import Preferences
from gui.session.services import Services
from measure.domain.records import Person

if TYPE_CHECKING:
    from gui.app.help_overview import HelpOverview
    from gui.pages.camera_and_body.calibration_pages import CalibrationPages
    from gui.pages.clips.clips_page import ClipsPage
    from gui.pages.exercises.exercises_page import ExercisesPage
    from gui.pages.measuring.camera_setup import SetupPage
    from gui.pages.progress.events import EventEntries
    from gui.pages.progress.goals_page import GoalEntries
    from gui.pages.progress.progress_page import ProgressPage
    from gui.pages.report.preview import ReportPreviewPage
    from gui.pages.settings.settings_pages import SettingsPages


class MainPage(IntEnum):
    """Places of the pages in the row of words."""

    MEASURE = 0
    EXERCISES = 1
    PROGRESS = 2
    CLIPS = 3
    SETUP = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Entered:
    """What is entered and not saved on the pages.

    Attributes
    ----------
    new_name
        The name of a new person.
    progress
        An event or a goal.
    """

    new_name: str
    progress: "EventEntries | GoalEntries | None"


class WindowPages(QStackedWidget):
    """Makes pages, tells them who is measured, and passes their messages on."""

    message_raised = Signal(str)
    #: Another page is shown, or another one of the settings.
    turned = Signal()
    #: Whether a round of exercises is led, so that the rest of the window steps back.
    leading_changed = Signal(bool)
    #: The pages of what is known of camera and body are wanted.
    calibration_wanted = Signal()
    #: The settings are wanted.
    settings_wanted = Signal()
    #: The set-up is wanted, also when the pages of camera and body are left.
    setup_wanted = Signal()
    measuring_wanted = Signal()
    #: The progress of the person with this identifier is wanted.
    progress_wanted = Signal(str)
    #: The settings, the help or the report are left for the page that was there before.
    left = Signal()
    #: The report is to be shown.
    report_wanted = Signal()
    #: The report is to be written to a file, or printed, with these choices.
    write_wanted = Signal(object)
    print_wanted = Signal(object)

    def __init__(self, services: Services, preferences: Preferences) -> None:
        super().__init__()
        self._services, self._preferences = services, preferences
        self._person: Person | None = None
        self.measure = MeasurePage(services)
        self.measure.message_raised.connect(self.message_raised)
        self.measure.people_changed.connect(self.show_person)
        self.measure.session_ended.connect(self.reload_progress)
        self.addWidget(self.measure)
        self.measure.start.progress_wanted.connect(self.progress_wanted)
        self.currentChanged.connect(self.turned)

    @cached_property
    def exercises(self) -> "ExercisesPage":
        from gui.pages.exercises.exercises_page import ExercisesPage

        page = ExercisesPage(self._services)
        page.message_raised.connect(self.message_raised)
        page.leading_changed.connect(self.leading_changed)
        page.changed.connect(self.reload_progress)
        # Pain in an exercise counts for what may be measured on the same day.
        page.changed.connect(self.measure.people.read_history)
        page.show_person(self._person)
        self.addWidget(page)
        return page

    @cached_property
    def progress(self) -> "ProgressPage":
        from gui.pages.progress.progress_page import ProgressPage

        page = ProgressPage(self._services)
        page.message_raised.connect(self.message_raised)
        page.report_wanted.connect(self.report_wanted)
        page.measuring_wanted.connect(self.measuring_wanted)
        page.person_chosen.connect(self.measure.choose_person)
        page.session_deleted.connect(self.measure.leave_session)
        # Pain counts for what may be measured on the same day.
        page.pain_corrected.connect(self.measure.people.read_history)
        page.show_person(self._person)
        self.addWidget(page)
        return page

    @cached_property
    def clips(self) -> "ClipsPage":
        from gui.pages.clips.clips_page import ClipsPage

        page = ClipsPage(self._services)
        page.message_raised.connect(self.message_raised)
        page.session_ended.connect(self.reload_progress)
        page.show_person(self._person)
        self.addWidget(page)
        return page

    @cached_property
    def setup(self) -> "SetupPage":
        from gui.pages.measuring.camera_setup import SetupPage

        page = SetupPage(self._services)
        page.mirror_changed.connect(self.measure.live.video.set_mirrored)
        page.calibration_requested.connect(self.calibration_wanted)
        page.settings_requested.connect(self.settings_wanted)
        page.measuring_wanted.connect(self.measuring_wanted)
        self.addWidget(page)
        return page

    @cached_property
    def calibration(self) -> "CalibrationPages":
        from gui.pages.camera_and_body.calibration_pages import CalibrationPages

        page = CalibrationPages(self._services)
        page.message_raised.connect(self.message_raised)
        page.back.connect(self.setup_wanted)
        self.addWidget(page)
        return page

    @cached_property
    def settings(self) -> "SettingsPages":
        from gui.pages.settings.settings_pages import SettingsPages

        pages = SettingsPages(self._services, self._preferences)
        pages.message_raised.connect(self.message_raised)
        pages.back.connect(self.left)
        pages.currentChanged.connect(self.turned)
        pages.setup_wanted.connect(self.setup_wanted)
        pages.changed.connect(self.reload)
        pages.person_chosen.connect(self.measure.choose_person)
        pages.people.progress_wanted.connect(self.progress_wanted)
        self.addWidget(pages)
        return pages

    @cached_property
    def report(self) -> "ReportPreviewPage":
        from gui.pages.report.preview import ReportPreviewPage

        page = ReportPreviewPage(self._services)
        page.left.connect(self.left)
        page.write_wanted.connect(self.write_wanted)
        page.print_wanted.connect(self.print_wanted)
        self.addWidget(page)
        return page

    @cached_property
    def help(self) -> "HelpOverview":
        from gui.app.help_overview import HelpOverview

        page = HelpOverview(self._services.appearance)
        page.left.connect(self.left)
        self.addWidget(page)
        return page

    @property
    def shows_camera(self) -> bool:
        """Whether the page that is shown opens the camera by itself."""
        return self.made("setup") and self.currentWidget() is self.setup

    @property
    def is_reading(self) -> bool:
        """Whether a clip is being read."""
        return self.made("clips") and self.clips.batch.running

    def stop_reading(self, timeout_s: float) -> None:
        """Stop reading clips, if any are being read."""
        if self.made("clips"):
            self.clips.stop(timeout_s)

    @property
    def entered(self) -> Entered:
        """What is entered and not saved, for the pages of another window."""
        return Entered(
            new_name=self.measure.start.in_clinic.who.name.text(),
            progress=self.progress.entered if self.made("progress") else None,
        )

    def resume(self, entered: Entered) -> None:
        """Go on with what was entered on the pages of another window."""
        self.measure.start.in_clinic.who.name.setText(entered.new_name)
        if entered.progress is not None:
            self.progress.resume(entered.progress)

    @property
    def keeps_programme(self) -> bool:
        """Whether an exercise programme was entered and not saved."""
        return self.made("exercises") and self.exercises.keeps_entries

    def in_row(self, place: int) -> QWidget:
        """Return the page of a word in the row, by its place."""
        if place == MainPage.MEASURE:
            return self.measure
        if place == MainPage.EXERCISES:
            return self.exercises
        if place == MainPage.PROGRESS:
            return self.progress
        return self.clips if place == MainPage.CLIPS else self.setup

    @Slot()
    def reload(self) -> None:
        """Show people and records as they are in the store now."""
        self.measure.people.load()
        self.reload_progress()
        if self.made("exercises"):
            self.exercises.reload()

    @Slot()
    def reload_progress(self) -> None:
        """Look the history up anew, if it is shown anywhere."""
        if self.made("progress"):
            self.progress.reload()

    def made(self, name: str) -> bool:
        """Return whether a page was wanted already."""
        return name in self.__dict__

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Show this person's records from now on."""
        self._person = person
        if self.made("exercises"):
            self.exercises.show_person(person)
        if self.made("progress"):
            self.progress.show_person(person)
        if self.made("clips"):
            self.clips.show_person(person)
        if self.made("settings"):
            self.settings.people.reload()
