"""Recorded clips: open, read, scrub, see the hold, accept or leave out a trial, keep."""

from pathlib import Path

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QFileDialog, QListWidget, QWidget

from gui.pages.clips.clip_player import ClipPlayer
from gui.pages.clips.reading_control import ReadingControl
from gui.pages.clips.trial_list import TrialList
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.session.log import SessionRecorder
from gui.session.repository import PendingMeasurement
from gui.session.services import Services
from gui.text.wording import movement_name, notes_words, side_title, task_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.layouts import column, row, widget_with
from gui.widgets.measurement_band import BandContent, MeasurementBand, band_for_measurement
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.records import Pain, Person
from measure.system.clock import new_id

CLIP_ENDINGS = (".mp4", ".mov", ".m4v", ".avi", ".mkv", ".webm")


class ClipsPage(QWidget):
    """Review at the analyst's pace, on the same reading path as live."""

    message_raised = Signal(str)
    session_ended = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._clips: list[Path] = []
        self._analysis: ClipAnalysis | None = None
        self._measurement: Measurement | None = None
        self._person: Person | None = None
        appearance = services.appearance
        self.open_clip = button(tr("Open a clip"))
        self.open_folder = button(tr("Open a folder"))
        self.list = QListWidget()
        self.list.setAccessibleName(tr("clips"))
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setTextElideMode(Qt.TextElideMode.ElideMiddle)
        self.movement = MenuButton(tr("movement"))
        self.movement.offer(list(Movement), movement_name)
        self.side = ChoiceRow(list(Side), side_title, title=tr("side"))
        self.side.choose(Side.RIGHT)
        self.reading = ReadingControl(services)
        self.player = ClipPlayer(appearance)
        self.title = label("", "lead")
        self.band = MeasurementBand(appearance, type_size=1.2)
        self.notes = label("", "quiet")
        self.trials = TrialList(appearance)
        self.keep = button(tr("Keep in the record"), "main")
        self._lay_out()
        self._connect()
        self._show_analysis(None)

    def _lay_out(self) -> None:
        left = column(
            self.open_clip,
            self.open_folder,
            (self.list, 1),
            self.movement,
            self.side.row,
            self.reading,
            spacing=8,
        )
        right = scrollable(
            widget_with(column(self.title, self.band, self.notes, (self.trials, 1))), wide=True
        )
        column(
            (row((left, 22), (self.player, 50), (right, 28), spacing=24), 1),
            row((NoticeBar(), 72), (self.keep, 28), spacing=24),
            on=self,
            margins=(24, 8, 24, 8),
        )

    def _connect(self) -> None:
        self.open_clip.clicked.connect(self.ask_for_clip)
        self.open_folder.clicked.connect(self.ask_for_folder)
        self.list.currentRowChanged.connect(self._choose)
        self.reading.button.clicked.connect(self.read_or_stop)
        self.reading.done.connect(self._read_done)
        self.reading.message_raised.connect(self.message_raised)
        self.trials.accepted_changed.connect(self._accept)
        self.trials.trial_selected.connect(self.player.show_trial)
        self.keep.clicked.connect(self._keep)

    @Slot(object)
    def show_person(self, person: Person | None) -> None:
        """Keep readings for this person from now on."""
        self._person = person
        self._show_keep()

    # -- opening ------------------------------------------------------------------------------

    @Slot()
    def ask_for_clip(self) -> None:
        endings = " ".join(f"*{ending}" for ending in CLIP_ENDINGS)
        names, _ = QFileDialog.getOpenFileNames(
            self, tr("Open clips"), "", tr("Clips ({endings})").format(endings=endings)
        )
        self.open([Path(name) for name in names])

    @Slot()
    def ask_for_folder(self) -> None:
        name = QFileDialog.getExistingDirectory(self, tr("Open a folder of clips"))
        if not name:
            return
        clips = [
            path for path in sorted(Path(name).iterdir()) if path.suffix.lower() in CLIP_ENDINGS
        ]
        if clips:
            self.open(clips)
        else:
            self.message_raised.emit(tr("There are no clips in this folder."))

    def open(self, clips: list[Path]) -> None:
        """Add clips to the list and show the first of them."""
        if not clips:
            return
        first = len(self._clips)
        self._clips.extend(clips)
        self.list.addItems([clip.name for clip in clips])
        for place, clip in enumerate(clips):
            self.list.item(place).setToolTip(clip.name)
        self.list.setCurrentRow(first)

    @property
    def opened(self) -> tuple[Path, ...]:
        """The clips of the list."""
        return tuple(self._clips)

    @property
    def clip(self) -> Path | None:
        """The chosen clip."""
        place = self.list.currentRow()
        return self._clips[place] if 0 <= place < len(self._clips) else None

    @Slot(int)
    def _choose(self, _row: int) -> None:
        clip, services = self.clip, self._services
        self._show_analysis(None)
        if clip is None:
            return
        self.player.show_empty(tr("Opening {clip}").format(clip=clip.name))
        self._guess(clip)
        services.slow_worker.run(
            lambda: services.open_clip(clip),
            lambda pictures: self._opened(clip, pictures),
            self.player.show_empty,
        )

    def _guess(self, clip: Path) -> None:
        """Take movement and side from the file's name where they stand in it."""
        name = clip.stem.lower().replace("_", "-")
        for movement in Movement:
            if movement.value in name:
                self.movement.choose(movement)
        for side in Side:
            if side.value in name:
                self.side.choose(side)

    def _opened(self, clip: Path, pictures: ClipThumbnails) -> None:
        if clip == self.clip:
            self.player.show_clip(pictures)

    # -- reading ------------------------------------------------------------------------------

    @Slot()
    def read_or_stop(self) -> None:
        """Read the clip, or stop reading."""
        if self.reading.running:
            self.reading.stop()
        elif self.clip is not None:
            movement = Movement(self.movement.value)
            self.reading.start(self.clip, movement, self.side.value or Side.RIGHT)

    @Slot(object, object)
    def _read_done(self, clip: Path, analysis: ClipAnalysis) -> None:
        if clip == self.clip:
            self._show_analysis(analysis)

    def _show_analysis(self, analysis: ClipAnalysis | None) -> None:
        self._analysis = analysis
        self._measurement = analysis.measurement if analysis else None
        self.trials.show_measurement(Movement(self.movement.value), self._measurement)
        self._show_measurement()
        if analysis is not None and analysis.measurement.trials:
            self.player.show_trial(analysis.measurement.trials[0])

    def _show_measurement(self) -> None:
        measurement = self._measurement
        self.band.setVisible(measurement is not None)
        if measurement is None:
            self.title.setText("")
            self.notes.setText("")
            self.player.show_analysis(None)
        else:
            self.title.setText(task_title(measurement.movement, measurement.side))
            self.band.show_reading(measurement.movement, band_for_measurement(measurement))
            self.notes.setText(notes_words(measurement))
            self.player.show_analysis(self._analysis, self.trials.accepted)
        self._show_keep()

    def _show_keep(self) -> None:
        self.keep.setEnabled(self._measurement is not None and self._person is not None)
        self.keep.say(tr("Keep in the record"))

    @Slot(object)
    def _accept(self, accepted: tuple[bool, ...]) -> None:
        if self._analysis is None:
            return
        whole = self._analysis.measurement
        if any(accepted):
            self._measurement = self._services.combine_trials(whole, accepted)
            self._show_measurement()
        else:
            self._measurement = None
            self.band.show_reading(whole.movement, BandContent(words=tr("No trial is accepted.")))
            self._show_keep()

    # -- keeping ------------------------------------------------------------------------------

    @Slot()
    def _keep(self) -> None:
        """Keep the reading as a session of its own."""
        measurement, person, services = self._measurement, self._person, self._services
        if measurement is None or person is None:
            return
        conduct = services.settings.conduct
        log = SessionRecorder(services.keeper, services.records, person.id, conduct, Pain(), self)
        log.failed.connect(self.message_raised)
        log.keep(PendingMeasurement(key=new_id(), measurement=measurement, conduct=conduct))
        clip = self.clip
        log.finish(tr("From the clip {name}").format(name=clip.name) if clip else "")
        self.keep.setEnabled(False)
        self.keep.say(tr("Kept"))
        self.session_ended.emit()
