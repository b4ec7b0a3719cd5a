"""Settings and data: the page of the settings, the pages of data, and the ways between."""

from typing import TypeVar

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QStackedWidget

from gui.pages.settings.backups import BackupPage
from gui.pages.settings.body_tracking import BodyTrackingPage
from gui.pages.settings.data_page import DataPage
from gui.pages.settings.people import PeoplePage
from gui.pages.settings.saved_files import SavedFilesPage
from gui.pages.settings.settings_page import SettingsPage
from gui.pages.settings.transfer import TransferPage
from gui.session.preferences import Preferences
from gui.session.services import Services
from gui.widgets.titled_page import TitledPage

AnyPage = TypeVar("AnyPage", bound=TitledPage)


class SettingsPages(QStackedWidget):
    """Shows one of its pages."""

    message_raised = Signal(str)
    #: The pages are left.
    back = Signal()
    setup_wanted = Signal()
    #: People or records changed.
    changed = Signal()
    #: The identifier of the person to be measured from now on.
    person_chosen = Signal(str)

    def __init__(self, services: Services, preferences: Preferences) -> None:
        super().__init__()
        #: Whether leaving a page of data leads to the settings.
        self.from_settings = True
        self.settings = self._added(SettingsPage(services, preferences), self.back)
        self.people = self._added(PeoplePage(services), self._leave_data)
        self.transfer = self._added(TransferPage(services), self._leave_data)
        self.backups = self._added(BackupPage(services), self._leave_data)
        self.saved = self._added(SavedFilesPage(services), self._leave_data)
        self.model = self._added(BodyTrackingPage(services), self._leave_data)
        self._by_name: dict[DataPage, TitledPage] = {
            DataPage.PEOPLE: self.people,
            DataPage.TRANSFER: self.transfer,
            DataPage.BACKUP: self.backups,
            DataPage.SAVED: self.saved,
            DataPage.MODEL: self.model,
        }
        self.settings.setup_wanted.connect(self.setup_wanted)
        self.settings.data_wanted.connect(self.show_data)
        self.people.changed.connect(self.changed)
        self.transfer.changed.connect(self.changed)
        self.backups.changed.connect(self.changed)
        self.people.chosen.connect(self.person_chosen)
        services.undo.put_back.connect(self.people.reload)

    def _added(self, page: AnyPage, leave: object) -> AnyPage:
        page.left.connect(leave)
        page.message_raised.connect(self.message_raised)
        self.addWidget(page)
        return page

    @Slot(object)
    def show_data(self, page: DataPage, *, from_settings: bool = True) -> None:
        """Show a page of data; leaving it leads back to the settings only from there."""
        self.from_settings = from_settings
        self.setCurrentWidget(self._by_name[page])

    @Slot()
    def _leave_data(self) -> None:
        """Go back to where the page of data was opened."""
        if self.from_settings:
            self.show_settings()
        else:
            self.back.emit()

    @Slot()
    def show_settings(self) -> None:
        self.from_settings = True
        self.setCurrentWidget(self.settings)
