"""Reading of one clip in the background: started and stopped by a button, with its progress."""

from pathlib import Path

from PySide6.QtCore import QTimer, Signal, Slot
from PySide6.QtWidgets import QProgressBar, QWidget

from gui.session.interfaces import ClipAnalysis
from gui.session.services import Services
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.layouts import column
from measure.domain.landmarks import Side
from measure.domain.movements import Movement

#: Time between two updates of the progress bar, milliseconds. [technical]
_PROGRESS_MS = 100


class ReadingControl(QWidget):
    """Reads a clip in the slow thread; the person may stop it."""

    #: The clip and its ClipAnalysis.
    done = Signal(object, object)
    message_raised = Signal(str)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._share = 0.0
        self._wanted = True
        self.button = button(tr("Read this clip"), "main")
        self.progress = QProgressBar()
        self.progress.setRange(0, 100)
        self.progress.setAccessibleName(tr("share read"))
        self.progress.setVisible(False)
        self._timer = QTimer(self)
        self._timer.setInterval(_PROGRESS_MS)
        self._timer.timeout.connect(self._show_share)
        column(self.button, self.progress, on=self, spacing=8)

    @property
    def running(self) -> bool:
        return self._services.slow_worker.busy and self._share < 1.0 and self._timer.isActive()

    def start(self, clip: Path, movement: Movement, side: Side) -> None:
        """Begin to read."""
        self._wanted, self._share = True, 0.0
        self.progress.setVisible(True)
        self.button.say(tr("Stop reading"))
        self._timer.start()
        self._services.slow_worker.run(
            lambda: self._services.read_clip(clip, movement, side, self._note_share),
            lambda analysis: self._end(clip, analysis),
            self._fail,
        )

    def stop(self) -> None:
        """Let a reading that is under way end as soon as it can."""
        self._wanted = False

    def _note_share(self, share: float) -> bool:
        """Note the share done, in the reading thread; a plain number needs no lock."""
        self._share = share
        return self._wanted

    @Slot()
    def _show_share(self) -> None:
        self.progress.setValue(round(self._share * 100))

    def _end(self, clip: Path, analysis: ClipAnalysis) -> None:
        self._show_idle()
        self.done.emit(clip, analysis)

    def _fail(self, why: str) -> None:
        self._show_idle()
        self.message_raised.emit(why)

    def _show_idle(self) -> None:
        self._timer.stop()
        self.progress.setVisible(False)
        self.button.say(tr("Read this clip"))
