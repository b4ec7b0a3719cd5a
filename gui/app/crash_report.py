"""Crash report: says that something broke, goes on if possible, offers versions and traceback."""

import sys
import threading
import traceback
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QObject, QtMsgType, Signal, Slot, qInstallMessageHandler, qVersion
from PySide6.QtWidgets import QApplication, QDialog, QPlainTextEdit, QWidget

from gui.style.measures import BUTTON_PADDING_PX, GAP_PX
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.plain_dialog import DIALOG_MARGIN_PX, frame_dialog
from gui.widgets.text import label
from measure.system.versions import software

#: Most and least lines of the details that are seen at once. [technical]
_MOST_LINES, _LEAST_LINES = 9, 3
#: Room between the details and what stands above them, pixels. [technical]
_ABOVE_PX = 2 * GAP_PX


def crash_report_text(
    kind: type[BaseException], error: BaseException, trace: TracebackType | None
) -> str:
    """Return versions and traceback, without the person's home folder in the paths."""
    versions = {**software(), "qt": qVersion()}
    lines = [f"{name} {number}" for name, number in versions.items()]
    text = "\n".join([*lines, "", *traceback.format_exception(kind, error, trace)])
    return text.replace(str(Path.home()), "~")


class CrashDialog(QDialog):
    """What happened, in plain words; the details can be copied, and shown."""

    def __init__(self, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Something went wrong"))
        self.text = QPlainTextEdit(text)
        self.text.setReadOnly(True)
        self.text.setAccessibleName(tr("details"))
        self.text.setVisible(False)
        self.details = button(tr("Show details"))
        self.details.clicked.connect(self._show_or_hide)
        self.copy = button(tr("Copy the details"))
        self.copy.clicked.connect(self._copy)
        self.go_on = button(tr("Continue"), "main")
        self.go_on.clicked.connect(self.accept)
        calm = tr(
            "Everything saved so far is safe. You can continue. If it happens again, close the "
            "window and open it again."
        )
        title = label(tr("Something went wrong inside Thawline."), "title")
        buttons = [self.details, self.copy, self.go_on]
        frame_dialog(self, title, label(calm), self.text, buttons=buttons, spacing=_ABOVE_PX)
        self.go_on.setFocus()

    @Slot()
    def _show_or_hide(self) -> None:
        """Show the details in whole lines below the rest, or close them again."""
        if self.text.isHidden():
            self.details.say(tr("Hide details"))
            self.text.setFixedHeight(self._height_of_details())
            self.text.setVisible(True)
            self.resize(self.width(), self.height() + _ABOVE_PX + self.text.height())
        else:
            self.details.say(tr("Show details"))
            self.text.setVisible(False)
            self.resize(self.width(), self.height() - _ABOVE_PX - self.text.height())

    def _height_of_details(self) -> int:
        """Return the height of as many lines as the window has room for."""
        parent = self.parentWidget()
        whole = parent.window().size() if parent is not None else self.screen().availableSize()
        room = whole.height() - 2 * DIALOG_MARGIN_PX - self.height() - _ABOVE_PX
        edges = 2 * (BUTTON_PADDING_PX[0] + 1) + round(self.text.document().documentMargin())
        line = self.text.fontMetrics().lineSpacing()
        lines = max(_LEAST_LINES, min(_MOST_LINES, (room - edges) // line))
        return min(lines, self.text.blockCount()) * line + edges

    @Slot()
    def _copy(self) -> None:
        QApplication.clipboard().setText(self.text.toPlainText())


class CrashReporter(QObject):
    """Shows exceptions that were not caught, of any thread."""

    _broke = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.dialog: CrashDialog | None = None
        self._broke.connect(self._show)
        self._before = sys.excepthook, threading.excepthook

    def install(self) -> None:
        """Take over until `remove`."""
        sys.excepthook = self._take
        threading.excepthook = self._take_from_thread

    def remove(self) -> None:
        sys.excepthook, threading.excepthook = self._before

    def _take(
        self, kind: type[BaseException], error: BaseException, trace: TracebackType | None
    ) -> None:
        traceback.print_exception(kind, error, trace)
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
            return
        self._broke.emit(crash_report_text(kind, error, trace))

    def _take_from_thread(self, what: threading.ExceptHookArgs) -> None:
        if what.exc_value is not None:
            self._take(what.exc_type, what.exc_value, what.exc_traceback)

    @Slot(str)
    def _show(self, text: str) -> None:
        """Show the first; what follows while it is open is told in the terminal only."""
        if self.dialog is not None and self.dialog.isVisible():
            return
        self.dialog = CrashDialog(text, QApplication.activeWindow())
        self.dialog.open()


#: Words of Qt's messages about the platform that are of no use to a person.
_NOISE = (
    "propagatesizehints",
    "pipewire",
    "pulseaudio",
    "qt multimedia",
    "text-to-speech",
    "xdg_runtime_dir",
)


def quiet_qt() -> None:
    """Keep Qt's messages about the platform from the terminal; other warnings stay."""

    def write(kind: QtMsgType, _where: object, text: str) -> None:
        if kind is not QtMsgType.QtDebugMsg and not any(word in text.lower() for word in _NOISE):
            print(text, file=sys.stderr)

    qInstallMessageHandler(write)
