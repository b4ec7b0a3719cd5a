"""Preferences of the window: colours, text size, language, tones, speech and camera."""

from collections.abc import Iterator
from contextlib import contextmanager

from PySide6.QtCore import QObject, Qt, Signal, Slot
from PySide6.QtGui import QGuiApplication

from gui.session.audio_cues import AudioCues
from gui.session.settings import TEXT_SCALES, WindowSettings
from gui.style.appearance import Appearance
from gui.style.palette import Scheme


@contextmanager
def _busy() -> Iterator[None]:
    """Show with the pointer that the whole window is being made anew, which can take seconds."""
    QGuiApplication.setOverrideCursor(Qt.CursorShape.WaitCursor)
    try:
        yield
    finally:
        QGuiApplication.restoreOverrideCursor()


class Preferences(QObject):
    """Applies each choice at once and remembers it."""

    #: Another language was chosen.
    language_chosen = Signal()
    #: Colours or text size are others.
    appearance_chosen = Signal()

    def __init__(
        self,
        appearance: Appearance,
        cues: AudioCues,
        settings: WindowSettings,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._appearance, self._cues = appearance, cues
        self.settings = settings

    def choose_scheme(self, scheme: Scheme) -> None:
        self.settings.scheme = scheme
        with _busy():
            self._appearance.choose(scheme=scheme)
            self.appearance_chosen.emit()

    def choose_language(self, code: str) -> None:
        """Remember the language; the window follows."""
        self.settings.language = code
        with _busy():
            self.language_chosen.emit()

    def choose_percent(self, percent: int) -> None:
        """Give the text a size, one of TEXT_SCALES."""
        self.settings.text_percent = percent
        with _busy():
            self._appearance.choose(percent=percent)
            self.appearance_chosen.emit()

    def change_text(self, step: int, _checked: bool = False) -> None:
        """Make the text larger or smaller by a step, or as it was with 0."""
        place = TEXT_SCALES.index(self._appearance.percent) + step if step else 0
        self.choose_percent(TEXT_SCALES[min(len(TEXT_SCALES) - 1, max(0, place))])

    @Slot(bool)
    def switch_tones(self, wanted: bool) -> None:
        self.settings.tones = self._cues.tones_wanted = wanted

    @Slot(bool)
    def switch_speech(self, wanted: bool) -> None:
        self.settings.speech = self._cues.speech_wanted = wanted
