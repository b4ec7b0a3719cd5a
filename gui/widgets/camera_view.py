"""Camera's picture on a page, or why it does not come, and the button to try again."""

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QWidget

from gui.session.services import Services
from gui.text.session_wording import trouble_name, trouble_sentence
from gui.text.wording import tr
from gui.widgets.buttons import button
from gui.widgets.fitted_sentence import FittedSentence
from gui.widgets.layouts import column
from gui.widgets.video_view import VideoView
from measure.camera.faults import SourceFault
from measure.live.events import LiveEvent, LiveFrame


class CameraView(QWidget):
    """Shows pictures while its page is seen; a trouble takes the page's sentence until it is over.

    Parameters
    ----------
    sentence
        The page's; `say` speaks through it.
    stills
        Only single pictures are wanted, so a slow camera is no trouble.
    """

    #: A frame came, and the page is seen.
    framed = Signal(object)
    #: An event came, and the page is seen; a trouble is in the sentence already.
    happened = Signal(object)
    #: Whether there is a trouble, as it begins or is over.
    troubled = Signal(bool)

    def __init__(
        self,
        services: Services,
        sentence: FittedSentence,
        *,
        stills: bool = False,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._services, self.sentence, self._stills = services, sentence, stills
        self._words = ""
        #: Whether steps against a trouble stand beside the sentence, which then only names it.
        self.steps_beside = False
        self.video = VideoView(services.appearance, at_left=True)
        self.retry = button(tr("Try again"), "main", key=tr("R"))
        self.retry.setVisible(False)
        self.retry.clicked.connect(self.reopen)
        shortcut = QShortcut(QKeySequence("R"), self.retry)
        shortcut.activated.connect(self.retry.click)
        column(self.video, on=self)
        services.feed.framed.connect(self._take_frame)
        services.feed.happened.connect(self._take_event)

    @property
    def trouble(self) -> SourceFault | None:
        """What keeps the page from its pictures, or None."""
        trouble = self._services.feed.trouble
        return None if self._stills and trouble is SourceFault.CAMERA_SLOW else trouble

    @property
    def lacks_picture(self) -> bool:
        """Whether no picture comes."""
        return bool(self._services.feed.why_no_picture)

    def say(self, words: str) -> None:
        """Say what to do on the page; a trouble goes first."""
        self._words = words
        self._speak()

    def open(self) -> None:
        """Open the camera unless it is open."""
        self.video.show_empty(tr("Opening the camera."))
        if not self._services.feed.running:
            self._services.feed.open(self._services.source())
        self._show_trouble()

    @Slot()
    def reopen(self) -> None:
        """Open the camera anew, as after trouble or another choice."""
        self.video.show_empty(tr("Opening the camera."))
        self._services.feed.reopen(self._services.source())
        self._show_trouble()

    @Slot(object)
    def _take_frame(self, frame: LiveFrame) -> None:
        if self.isVisible() and not self._services.feed.why_no_picture:
            self.video.show_frame(frame)
            self.framed.emit(frame)

    @Slot(object)
    def _take_event(self, event: LiveEvent) -> None:
        if self.isVisible():
            self._show_trouble()
            self.happened.emit(event)

    def _show_trouble(self) -> None:
        """Show what is the matter and what to do, in place of the picture if none comes."""
        trouble, why = self.trouble, self._services.feed.why_no_picture
        if why:
            said = trouble is not None and why == trouble_sentence(trouble)
            self.video.show_empty("" if said else why)
        self.retry.setVisible(trouble is not None)
        self.troubled.emit(trouble is not None)
        self._speak()

    def _speak(self) -> None:
        trouble = self.trouble
        named = trouble_name if self.steps_beside else trouble_sentence
        self.sentence.say(self._words if trouble is None else named(trouble))
