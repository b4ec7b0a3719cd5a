"""Preferences that the menus change: colours, text size, language, tones and speech."""

from PySide6.QtCore import QObject, Signal, Slot

from gui.session.services import Services
from gui.session.settings import TEXT_SCALES
from gui.style.palette import Scheme


class Preferences(QObject):
    """Applies each choice at once and remembers it."""

    #: Another language was chosen.
    language_chosen = Signal()

    def __init__(self, services: Services, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._appearance, self._cues = services.appearance, services.cues
        self.settings = services.settings

    def choose_scheme(self, scheme: Scheme, _checked: bool = False) -> None:
        self.settings.scheme = scheme
        self._appearance.choose(scheme=scheme)

    def choose_language(self, code: str, _checked: bool = False) -> None:
        """Remember the language; the window follows."""
        self.settings.language = code
        self.language_chosen.emit()

    def change_text(self, step: int, _checked: bool = False) -> None:
        """Make the text larger or smaller by a step, or as it was with 0."""
        place = TEXT_SCALES.index(self._appearance.percent) + step if step else 0
        percent = TEXT_SCALES[min(len(TEXT_SCALES) - 1, max(0, place))]
        self.settings.text_percent = percent
        self._appearance.choose(percent=percent)

    @Slot(bool)
    def switch_tones(self, wanted: bool) -> None:
        self.settings.tones = self._cues.tones_wanted = wanted

    @Slot(bool)
    def switch_speech(self, wanted: bool) -> None:
        self.settings.speech = self._cues.speech_wanted = wanted
