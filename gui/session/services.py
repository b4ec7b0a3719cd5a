"""Services of the pages, made once and handed to each of them."""

import datetime as dt
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from calibration.known_setup import CalibratedSetup
from gui.session.audio_cues import AudioCues
from gui.session.engine_feed import EngineBridge
from gui.session.interfaces import (
    CameraFinder,
    ClipBatchReader,
    ThumbnailLoader,
)
from gui.session.known_setup import SetupProvider
from gui.session.known_state import CalibrationStateLoader, empty_calibration_state
from gui.session.model_fetch import ModelFetch
from gui.session.placement_check import PlacementMonitor
from gui.session.repository import SessionRepository
from gui.session.settings import WindowSettings
from gui.session.unanswered_pain import UnansweredPain
from gui.session.undo import UndoList
from gui.style.appearance import Appearance
from gui.workers.worker_thread import BackgroundWorker
from measure.clips.inputs import ClipEntry
from measure.domain.acquisition import BodySetup, CameraSetup, KnownSetup, Setup
from measure.live.events import Source


@dataclass(kw_only=True)
class Services:
    """Everything outside the pages.

    Attributes
    ----------
    records
        The thread that the keeper belongs to.
    slow_worker
        The thread for what takes long: cameras listed, clips opened.
    clips
        Clips that play as if they were the camera, one for each movement; none for a camera.
    today
        The calendar day, from outside for tests.
    local_time
        The local time of the day, for reminders; from outside for tests.
    monotonic_s
        Seconds that never run backwards, for the guided round; from outside for tests.
    setup_provider
        What calibration knows.
    load_calibration
        Reads what is kept of camera and person, for showing it.
    placement_monitor
        Compares where people stand with where they stood; None compares nothing.
    person_id
        Who is measured; set by the window.
    model_fetch
        Fetches the pose model when it is asked for.
    undo
        What was deleted since the start and can be put back.
    unanswered_pain
        Much pain that the safety questions are still to be answered for.
    report_questions
        What people typed for their clinician since the start, by the person's identifier.
    """

    appearance: Appearance
    settings: WindowSettings
    feed: EngineBridge
    cues: AudioCues
    keeper: SessionRepository
    records: BackgroundWorker
    slow_worker: BackgroundWorker
    find_cameras: CameraFinder
    read_clips: ClipBatchReader
    open_clip: ThumbnailLoader
    clips: tuple[Path, ...] = ()
    today: Callable[[], dt.date] = dt.date.today
    local_time: Callable[[], dt.datetime] = dt.datetime.now
    monotonic_s: Callable[[], float] = time.monotonic
    setup_provider: SetupProvider = field(default_factory=SetupProvider)
    load_calibration: CalibrationStateLoader = empty_calibration_state
    placement_monitor: PlacementMonitor | None = None
    person_id: str | None = None
    model_fetch: ModelFetch = field(default_factory=ModelFetch)
    undo: UndoList = field(init=False)
    unanswered_pain: UnansweredPain = field(default_factory=UnansweredPain, init=False)
    report_questions: dict[str, str] = field(default_factory=dict, init=False)
    _clips_used: int = field(default=0, init=False)

    def __post_init__(self) -> None:
        self.undo = UndoList(self.records)

    def current_setup(self) -> CalibratedSetup:
        """Return what is known of the chosen camera and of who is measured."""
        camera = self.settings.camera
        return self.setup_provider.of(
            camera,
            self.person_id,
            self.today(),
            mirrored=self.settings.already_mirrored(camera),
        )

    def source(self) -> Source:
        """Return the camera as it is set, or the first clip, with what is known."""
        if self.clips:
            return self._clip(self.clips[0])
        calibrated = self.current_setup()
        return Source(
            setup=Setup(camera=calibrated.setup.camera, body=calibrated.setup.body),
            by_movement=calibrated.setup,
            lenses=calibrated.lenses,
        )

    def next_source(self) -> Source:
        """Return the source for the next movement: the camera, or the next clip in turn."""
        if not self.clips:
            return self.source()
        clip = self.clips[min(self._clips_used, len(self.clips) - 1)]
        self._clips_used += 1
        return self._clip(clip)

    def clip_setup(self) -> Setup:
        """Return what is known of recorded clips: of the person, and whether they are mirrored.

        Which camera filmed them is not known.
        """
        setup = self.setup_provider.of(None, self.person_id, self.today()).setup
        mirrored = self.settings.already_mirrored(self.settings.camera)
        return Setup(camera=CameraSetup(already_mirrored=mirrored), body=setup.body)

    def clips_setup(self, entries: Sequence[ClipEntry]) -> KnownSetup:
        """Return what is known of a list of clips.

        The person's lengths of body count only where the list names nobody: they hold for that
        person alone.
        """
        setup = self.clip_setup()
        own = not any(entry.person for entry in entries)
        return KnownSetup(camera=setup.camera, body=setup.body if own else BodySetup())

    def _clip(self, clip: Path) -> Source:
        return Source(clip=clip, setup=Setup(body=self.clip_setup().body))

    @property
    def mirrored(self) -> bool:
        """Whether the preview is shown as a mirror image."""
        return self.settings.mirror_preview
