"""Recorded clips: open, read, scrub, see the hold, accept or leave out a trial, keep."""

from pathlib import Path

import numpy as np
from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import (
    QFileDialog,
    QHBoxLayout,
    QListWidget,
    QProgressBar,
    QSlider,
    QVBoxLayout,
    QWidget,
)

from gui.pages.clips.trial_list import TrialList
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.session.log import SessionRecorder
from gui.session.repository import PendingMeasurement
from gui.session.services import Services
from gui.text.wording import movement_name, side_title, task_title, tr
from gui.widgets.buttons import MenuButton, button
from gui.widgets.choice_row import ChoiceRow
from gui.widgets.clip_chart import ClipChart
from gui.widgets.measurement_band import BandContent, MeasurementBand, band_for_measurement
from gui.widgets.scroll_page import scrollable
from gui.widgets.text import NoticeBar, label
from gui.widgets.video_view import VideoView
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Trial
from measure.domain.movements import Movement
from measure.domain.records import Pain, Person
from measure.live.events import LiveFrame, Phase
from measure.system.clock import new_id

CLIP_ENDINGS = (".mp4", ".mov", ".m4v", ".avi", ".mkv", ".webm")
#: Steps of the slider in a second.
_STEPS_S = 20


class ClipsPage(QWidget):
    """Review at the analyst's pace, on the same reading path as live."""

    message_raised = Signal(str)
    session_ended = Signal()

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self._clips: list[Path] = []
        self._pictures: ClipThumbnails | None = None
        self._reading: ClipAnalysis | None = None
        self._measurement: Measurement | None = None
        self._person: Person | None = None
        self._share = 0.0
        self._wanted = True
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
        self.read = button(tr("Read this clip"), "main")
        self.progress = QProgressBar()
        self.progress.setRange(0, 100)
        self.progress.setAccessibleName(tr("share read"))
        self.video = VideoView(appearance, smooth=True)
        self.video.show_empty(tr("Open a clip or a folder of clips."))
        self.slider = QSlider(Qt.Orientation.Horizontal)
        self.slider.setAccessibleName(tr("moment of the clip"))
        self.moment = label("", "quiet")
        self.moment.setWordWrap(False)
        self.chart = ClipChart(appearance)
        self.title = label("", "lead")
        self.band = MeasurementBand(appearance, type_size=1.2)
        self.trials = TrialList(appearance)
        self.keep = button(tr("Keep in the record"), "main")
        self._lay_out()
        self._connect()
        self._show_reading(None)

    def _lay_out(self) -> None:
        left = QVBoxLayout()
        left.setSpacing(8)
        for one in (self.open_clip, self.open_folder):
            left.addWidget(one)
        left.addWidget(self.list, 1)
        for other in (self.movement, self.side.row, self.read, self.progress):
            left.addWidget(other)
        middle = QVBoxLayout()
        middle.addWidget(self.video, 6)
        scrub = QHBoxLayout()
        scrub.addWidget(self.slider, 8)
        scrub.addWidget(self.moment, 1)
        middle.addLayout(scrub)
        middle.addWidget(self.chart, 4)
        side = QWidget()
        right = QVBoxLayout(side)
        right.setContentsMargins(0, 0, 0, 0)
        right.addWidget(self.title)
        right.addWidget(self.band)
        right.addWidget(self.trials, 1)
        row = QHBoxLayout()
        row.setSpacing(24)
        row.addLayout(left, 22)
        row.addLayout(middle, 50)
        row.addWidget(scrollable(side), 28)
        beneath = QHBoxLayout()
        beneath.setSpacing(24)
        beneath.addWidget(NoticeBar(), 72)
        beneath.addWidget(self.keep, 28)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(24, 8, 24, 8)
        layout.addLayout(row, 1)
        layout.addLayout(beneath)

    def _connect(self) -> None:
        self.open_clip.clicked.connect(self.ask_for_clip)
        self.open_folder.clicked.connect(self.ask_for_folder)
        self.list.currentRowChanged.connect(self._choose)
        self.read.clicked.connect(self.read_or_stop)
        self.slider.valueChanged.connect(self._scrubbed)
        self.chart.moved.connect(self.show_moment)
        self.trials.accepted_changed.connect(self._accept)
        self.trials.trial_selected.connect(self._show_trial)
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
        if name:
            folder = Path(name)
            found = [
                each for each in sorted(folder.iterdir()) if each.suffix.lower() in CLIP_ENDINGS
            ]
            if found:
                self.open(found)
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
    def clip(self) -> Path | None:
        """The chosen clip."""
        row = self.list.currentRow()
        return self._clips[row] if 0 <= row < len(self._clips) else None

    @Slot(int)
    def _choose(self, _row: int) -> None:
        clip, services = self.clip, self._services
        self._pictures = None
        self._show_reading(None)
        if clip is None:
            return
        self.video.show_empty(tr("Opening {clip}").format(clip=clip.name))
        self._guess(clip)
        services.slow_worker.run(
            lambda: services.open_clip(clip),
            lambda pictures: self._opened(clip, pictures),
            self.video.show_empty,
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
        if clip != self.clip:
            return
        self._pictures = pictures
        self.slider.setRange(0, max(1, round(pictures.duration_s * _STEPS_S)))
        self.show_moment(0.0)

    # -- reading ------------------------------------------------------------------------------

    @Slot()
    def read_or_stop(self) -> None:
        """Read the clip, or stop reading."""
        if self._services.slow_worker.busy and self._share < 1.0 and self.progress.isVisible():
            self._wanted = False
            return
        clip = self.clip
        if clip is None:
            return
        movement, side = Movement(self.movement.value), self.side.value or Side.RIGHT
        self._wanted, self._share = True, 0.0
        self.progress.setVisible(True)
        self.read.say(tr("Stop reading"))
        self._services.slow_worker.run(
            lambda: self._services.read_clip(clip, movement, side, self._told_share),
            lambda reading: self._read_done(clip, reading),
            self._read_failed,
        )
        self._watch = self.startTimer(100)

    def stop_reading(self) -> None:
        """Let a reading that is under way end as soon as it can."""
        self._wanted = False

    def _told_share(self, share: float) -> bool:
        """Note the share done, in the reading thread; a plain number needs no lock."""
        self._share = share
        return self._wanted

    def timerEvent(self, event: object) -> None:
        self.progress.setValue(round(self._share * 100))

    def _read_ended(self) -> None:
        self.killTimer(self._watch)
        self.progress.setVisible(False)
        self.read.say(tr("Read this clip"))

    def _read_failed(self, why: str) -> None:
        self._read_ended()
        self.message_raised.emit(why)

    def _read_done(self, clip: Path, reading: ClipAnalysis) -> None:
        self._read_ended()
        if clip == self.clip:
            self._show_reading(reading)

    def _show_reading(self, reading: ClipAnalysis | None) -> None:
        self._reading = reading
        self._measurement = reading.measurement if reading else None
        movement = Movement(self.movement.value)
        self.progress.setVisible(False)
        self.trials.show_measurement(movement, self._measurement)
        self._show_measurement()
        first = reading.measurement.trials[0] if reading and reading.measurement.trials else None
        if first is not None:
            self._show_trial(first)

    def _show_measurement(self) -> None:
        found = self._measurement
        if found is None or self._reading is None:
            self.title.setText("")
            self.band.setVisible(False)
            self.chart.setVisible(False)
            self.chart.show_curve(Movement(self.movement.value), None, ())
        else:
            self.title.setText(task_title(found.movement, found.side))
            self.band.setVisible(True)
            self.chart.setVisible(True)
            self.band.show_reading(found.movement, band_for_measurement(found))
            trials = zip(self._reading.measurement.trials, self.trials.accepted, strict=True)
            self.chart.show_curve(found.movement, self._reading.curve, tuple(trials))
            self.video.measure_arm(found.movement, found.side)
        self._show_keep()

    def _show_keep(self) -> None:
        self.keep.setEnabled(self._measurement is not None and self._person is not None)
        self.keep.say(tr("Keep in the record"))

    @Slot(object)
    def _accept(self, accepted: tuple[bool, ...]) -> None:
        if self._reading is None:
            return
        if any(accepted):
            self._measurement = self._services.combine_trials(self._reading.measurement, accepted)
            self._show_measurement()
        else:
            self._measurement = None
            self.band.show_reading(
                self._reading.measurement.movement, BandContent(words=tr("No trial is accepted."))
            )
            self._show_keep()

    # -- looking ------------------------------------------------------------------------------

    @Slot(int)
    def _scrubbed(self, step: int) -> None:
        self._draw_moment(step / _STEPS_S)

    @Slot(object)
    def _show_trial(self, trial: Trial) -> None:
        if trial.hold_start_s is not None and trial.hold_end_s is not None:
            self.show_moment((trial.hold_start_s + trial.hold_end_s) / 2)

    @Slot(float)
    def show_moment(self, time_s: float) -> None:
        """Show the picture of a moment."""
        step = round(time_s * _STEPS_S)
        if self.slider.value() == step:
            self._draw_moment(time_s)
        self.slider.setValue(step)

    def _draw_moment(self, time_s: float) -> None:
        self.moment.setText(f"{time_s:.1f} s")
        self.chart.show_moment(time_s)
        if self._pictures is None:
            return
        picture = self._pictures.at(time_s)
        points = None
        if self._reading is not None and len(self._reading.track):
            track = self._reading.track
            nearest = int(np.argmin(np.abs(track.time_s - time_s)))
            shrink = picture.shape[1] / track.width_px
            points = (track.points_px[nearest] + 0.5) * shrink - 0.5
        self.video.show_frame(
            LiveFrame(
                picture=picture, frame_id=0, time_s=time_s, phase=Phase.DONE, points_px=points
            )
        )

    # -- keeping ------------------------------------------------------------------------------

    @Slot()
    def _keep(self) -> None:
        """Keep the reading as a session of its own."""
        found, person, services = self._measurement, self._person, self._services
        if found is None or person is None:
            return
        conduct = services.settings.conduct
        log = SessionRecorder(services.keeper, services.records, person.id, conduct, Pain(), self)
        log.failed.connect(self.message_raised)
        log.keep(PendingMeasurement(key=new_id(), measurement=found, conduct=conduct))
        clip = self.clip
        log.finish(tr("From the clip {name}").format(name=clip.name) if clip else "")
        self.keep.setEnabled(False)
        self.keep.say(tr("Kept"))
        self.session_ended.emit()
