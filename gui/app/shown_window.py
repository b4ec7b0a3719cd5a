"""The window on the screen, built anew in another language as soon as one is chosen."""

from PySide6.QtCore import QCoreApplication, QObject, QTimer, Signal, Slot

from gui.app.main_window import MainWindow
from gui.session.services import Services
from gui.text.language import install_language
from gui.text.wording import tr

#: Interval of asking whether background work has ended, milliseconds. [technical]
_ASK_EVERY_MS = 20


class ShownWindow(QObject):
    """Holds the main window. Another one takes its place, with the same services and page.

    A session or the reading of a clip that is under way is never broken off: the language then
    changes when it has ended. An exercise programme that was entered waits to be saved or left;
    what is entered elsewhere goes with it.
    """

    #: Another window was shown in place of the one before.
    replaced = Signal()

    def __init__(self, services: Services, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._waiting = QTimer(self)
        self._waiting.setInterval(_ASK_EVERY_MS)
        self._waiting.timeout.connect(self._replace_if_free)
        self.window = self._make()

    def show(self) -> None:
        self.window.show()

    def _make(self) -> MainWindow:
        with self._services.appearance.styled_when_built():
            window = MainWindow(self._services)
        window.language_chosen.connect(self._change_language)
        return window

    @Slot()
    def _change_language(self) -> None:
        if self.window.has_work_under_way:
            self.window.messages.tell(
                tr("The language changes when the current measurement or reading has ended.")
            )
        elif self.window.keeps_programme:
            self.window.messages.tell(
                tr("The language changes when the exercise programme is saved or left.")
            )
        self._waiting.start()

    @Slot()
    def _replace_if_free(self) -> None:
        """Replace the window once nothing is under way that would answer to the old one."""
        services, window = self._services, self.window
        free = not (window.has_work_under_way or window.keeps_programme)
        if free:
            # Pain that was told before a session is kept, though none was begun.
            window.measure.close_session()
        busy = services.records.busy or services.slow_worker.busy
        if free and not busy:
            self._waiting.stop()
            self._replace()

    def _replace(self) -> None:
        before, services = self.window, self._services
        # Days are typed in words of the language before.
        entered = before.entered
        application = QCoreApplication.instance()
        if application is not None:
            install_language(application, services.settings.language)
        services.cues.follow_language()
        self.window = self._make()
        self.window.take_over(before, entered)
        self.window.show()
        self.window.activateWindow()
        if self.window.shows_settings:
            self.window.settings.settings.focus_language()
        before.hide()
        before.deleteLater()
        self.replaced.emit()
