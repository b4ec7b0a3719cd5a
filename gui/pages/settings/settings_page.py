"""The settings on one page: text, colours, language, voice and tones, camera, data."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QShowEvent

from gui.pages.settings.data_page import DataPage, data_page_line, data_page_title
from gui.session.preferences import Preferences
from gui.session.services import Services
from gui.session.settings import TEXT_SCALES
from gui.session.tones import Tone
from gui.style.measures import GAP_PX
from gui.style.palette import Scheme
from gui.text.language import LANGUAGES, SYSTEM
from gui.text.wording import tr
from gui.widgets.beside_row import BesideRow, aligned
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import card
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import label, section_heading
from gui.widgets.titled_page import TitledPage
from gui.widgets.topic_button import TopicButton, TopicGrid
from gui.widgets.wrapping_check_box import WrappingCheckBox

#: Space between two settings whose names stand beside them, pixels. [technical]
_BETWEEN_PX = GAP_PX * 3 // 2


def scheme_name(scheme: Scheme) -> str:
    return {
        Scheme.SYSTEM: tr("Same as the system"),
        Scheme.LIGHT: tr("Light"),
        Scheme.DARK: tr("Dark"),
    }[scheme]


def language_name(code: str) -> str:
    """Return a language's own name, which is the same in all of them."""
    return tr("Same as the system") if code == SYSTEM else LANGUAGES[code]


class SettingsPage(TitledPage):
    """Shows what is set and applies each choice at once."""

    #: The page where the camera is chosen and checked is wanted.
    setup_wanted = Signal()
    #: A DataPage is wanted.
    data_wanted = Signal(object)

    def __init__(self, services: Services, preferences: Preferences) -> None:
        super().__init__(services.appearance, tr("Settings"))
        self._services, self._preferences = services, preferences
        self.text = ChoiceRow(
            list(TEXT_SCALES),
            lambda percent: tr("{percent} %").format(percent=percent),
            title=tr("Text size"),
        )
        self.scheme = ChoiceRow(list(Scheme), scheme_name, title=tr("Colours"))
        self.language = ChoiceRow([SYSTEM, *LANGUAGES], language_name, title=tr("Language"))
        appearance, settings = services.appearance, preferences.settings
        self.speech = WrappingCheckBox(appearance, tr("Read each sentence aloud"))
        self.tones = WrappingCheckBox(appearance, tr("Play tones"))
        self.speech.setChecked(settings.speech)
        self.tones.setChecked(settings.tones)
        self.try_speech = button(tr("Test the voice"))
        self.try_tones = button(tr("Test the tones"))
        self.heard = label("", "quiet")
        self.camera = MenuButton(tr("Camera"))
        self.check_camera = button(tr("Check the camera"))
        self.ways = {
            page: TopicButton(data_page_title(page), data_page_line(page)) for page in DataPage
        }
        self._lay_out()
        self._connect()
        self.refresh()

    def _lay_out(self) -> None:
        voice, tones, camera = aligned(
            BesideRow(self.speech, self.try_speech),
            BesideRow(self.tones, self.try_tones),
            BesideRow(self.camera, self.check_camera),
        )
        rows = (
            (tr("Text size"), self.text.row),
            (tr("Colours"), self.scheme.row),
            (tr("Language"), self.language.row),
            (tr("Voice"), voice),
            (tr("Tones"), tones),
            (tr("Camera"), camera),
        )
        lines = (BesideRow(label(name, "strong"), control, filling=True) for name, control in rows)
        self._rows = card(*aligned(*lines))
        self._appearance.changed.connect(self._space)
        self._space()
        self.lay_out(
            self._rows,
            self.heard,
            section_heading(tr("People and data")),
            TopicGrid(list(self.ways.values())),
        )

    @Slot()
    def _space(self) -> None:
        """Keep settings apart, more where large text stands above its control."""
        large = self._appearance.percent >= LARGE_FROM_PERCENT
        rows = self._rows.layout()
        if rows is not None:
            rows.setSpacing(3 * GAP_PX if large else _BETWEEN_PX)

    def _connect(self) -> None:
        preferences = self._preferences
        self.text.picked.connect(self._choose_text)
        self.scheme.picked.connect(self._choose_scheme)
        self.language.picked.connect(self._choose_language)
        self.speech.toggled.connect(preferences.switch_speech)
        self.tones.toggled.connect(preferences.switch_tones)
        self.try_speech.clicked.connect(self._test_speech)
        self.try_tones.clicked.connect(self._test_tones)
        self.camera.picked.connect(self._choose_camera)
        self.check_camera.clicked.connect(self.setup_wanted)
        for page, way in self.ways.items():
            way.clicked.connect(partial(self._want, page))
        preferences.appearance_chosen.connect(self.refresh)

    def _want(self, page: DataPage, _checked: bool = False) -> None:
        self.data_wanted.emit(page)

    @Slot()
    def refresh(self) -> None:
        """Show what is set."""
        self.text.choose(self._appearance.percent)
        self.scheme.choose(self._appearance.scheme)
        self.language.choose(self._preferences.settings.language)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.refresh()
        self._answer("")
        self._show_cameras(())
        services = self._services
        services.slow_worker.run(services.find_cameras, self._show_cameras, self._no_cameras)

    def focus_language(self) -> None:
        """Put the keyboard on the language that was chosen."""
        self.language.button(self._preferences.settings.language).setFocus()

    @Slot()
    def _choose_text(self) -> None:
        self._preferences.choose_percent(self.text.value or TEXT_SCALES[0])

    @Slot()
    def _choose_scheme(self) -> None:
        self._preferences.choose_scheme(self.scheme.value or Scheme.SYSTEM)

    @Slot()
    def _choose_language(self) -> None:
        self._preferences.choose_language(self.language.value or SYSTEM)

    @Slot()
    def _test_speech(self) -> None:
        cues = self._services.cues
        cues.warm_up()
        self._answer(
            tr("You should hear this sentence now.")
            if cues.has_voice
            else tr("No voice was found on this computer. Every sentence is on the screen too.")
        )
        cues.try_voice(tr("This is the voice that speaks while you measure."))

    @Slot()
    def _test_tones(self) -> None:
        cues = self._services.cues
        cues.warm_up()
        self._answer(
            tr("You should hear two falling notes now. They mean that a trial was captured.")
            if cues.has_sound
            else tr("No sound output was found on this computer.")
        )
        cues.try_tone(Tone.CAPTURED)

    def _answer(self, words: str) -> None:
        """Say what should be heard now, or why nothing is."""
        self.heard.setText(words)
        self.heard.setVisible(bool(words))

    # -- camera -------------------------------------------------------------------------------

    def _no_cameras(self, _why: str) -> None:
        self._show_cameras(())

    def _show_cameras(self, names: Sequence[str]) -> None:
        """Offer the cameras that are here, and the chosen one though it may be unplugged."""
        chosen = self._preferences.settings.camera
        offered = list(dict.fromkeys([*names, *([chosen] if chosen else [])]))
        first = tr("No camera was found")
        self.camera.setEnabled(bool(offered))
        self.camera.offer(offered or [first], str)
        self.camera.choose(chosen or (offered or [first])[0])

    @Slot(object)
    def _choose_camera(self, name: str) -> None:
        self._preferences.settings.camera = name
