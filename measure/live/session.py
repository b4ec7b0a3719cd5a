"""Live session: one source, its person, and the movement chosen.

Everything here runs in the engine's own thread. Frames and events leave through the two
functions given; processes are reached through the supervisor and the refiner, which are given too.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass

from measure.camera.faults import SourceFault
from measure.domain.acquisition import Setup, fit_for_picture
from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import Movement
from measure.errors import ThawlineError
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, Source
from measure.live.messages import Ended, FaultChanged, SourceOpened, SourceOrder
from measure.live.movement_run import MovementRun
from measure.live.scene import FrameAnalyzer
from measure.live.source_log import SourceLog
from measure.live.supervisor import FrameResult, LiveSupervisor, WorkerEvent
from measure.live.trial_detector import CapturedTrial
from measure.live.trial_refiner import RefineResult, TrialRefiner
from measure.pose.ensemble import ModelSet
from measure.pose.message_pipe import Text
from measure.pose_models.catalogue import ModelQuality

#: A clock that jumps this far ahead has slept, seconds. [project]
SLEPT_S = 5.0

#: Troubles that break a trial off; a slow camera only spoils it.
_BREAKING = frozenset(SourceFault) - {SourceFault.CAMERA_SLOW, SourceFault.CLIP_ENDED}


@dataclass(frozen=True, slots=True, kw_only=True)
class Backends:
    """What a session works with.

    Attributes
    ----------
    models
        The bundles.
    supervisor, refiner
        Of the live worker, and of the process that refines trials.
    """

    models: ModelSet
    supervisor: LiveSupervisor
    refiner: TrialRefiner


class LiveSession:
    """The state of a live engine.

    Parameters
    ----------
    backends
        Returns what the session works with, made on first use.
    show
        Takes the newest frame.
    happen
        Takes events, in order.
    clock, wall
        Seconds that never run backwards, and the time of day in seconds.
    loop_clips
        Whether a clip begins anew at its end.

    Attributes
    ----------
    movement
        The run of the chosen movement, or None before the first.
    happen
        Reports an event.
    """

    def __init__(
        self,
        backends: Callable[[], Backends],
        show: Callable[[LiveFrame], None],
        happen: Callable[[LiveEvent], None],
        *,
        clock: Callable[[], float] = time.monotonic,
        wall: Callable[[], float] = time.time,
        loop_clips: bool = False,
    ) -> None:
        self._backends = backends
        self._show = show
        self.happen = happen
        self._clock = clock
        self._wall = wall
        self._loop_clips = loop_clips
        self._clocks_s = (clock(), wall())
        self._source: Source | None = None
        self._opening = 0
        self._log = SourceLog()
        self._size_px: tuple[int, int] | None = None
        self._analyzer: FrameAnalyzer | None = None
        self._trouble: SourceFault | None = None
        self._frames = 0
        self._chosen = 0
        self.movement: MovementRun | None = None

    @property
    def last_s(self) -> float:
        """Time of the source's last frame, seconds."""
        return self._log.last_s

    # -- what callers want --------------------------------------------------------------------

    def open(self, source: Source) -> None:
        """Open a source in place of the one before; trials captured so far stay."""
        self._opening += 1
        self._source = source
        self._log, self._trouble = SourceLog(), None
        self._begin_anew()
        try:
            backends = self._backends()
        except ThawlineError as error:
            self._note_trouble(SourceFault.MODEL_MISSING, str(error))
            return
        camera = source.setup.camera
        backends.supervisor.open(
            SourceOrder(
                session=self._opening,
                clip=source.clip,
                camera=None if camera.name is None else Text(camera.name),
                quarter_turns=camera.quarter_turns,
                already_mirrored=camera.already_mirrored,
                origin_s=self._clock(),
                start_s=0.0,
                loop=self._loop_clips,
                ring="",
                quality=self._quality(backends.models),
            )
        )

    def choose(self, movement: Movement, side: Side, trials: int, practice: int) -> None:
        """Begin a movement; trials of the one before that are not refined yet are dropped."""
        self._chosen += 1
        self.movement = MovementRun(self._chosen, movement, side, trials, practice, self)
        if self._source is not None and self._trouble is not SourceFault.MODEL_MISSING:
            backends = self._backends()
            backends.supervisor.use(self._quality(backends.models))

    def take_position(self) -> None:
        """Capture the position that is held now, for a person who says that it goes no farther."""
        movement = self.movement
        if movement is None or not movement.is_measuring or movement.detector is None:
            return
        captured = movement.detector.take_position()
        if captured is None:
            self.happen(LiveEvent(kind=LiveEventKind.NOT_STILL))
        else:
            self._capture(captured)

    # -- what processes tell ------------------------------------------------------------------

    def take(self, event: WorkerEvent | RefineResult) -> None:
        """Take an event from one of the processes."""
        movement = self.movement
        if isinstance(event, RefineResult):
            if movement is not None:
                movement.take_refined(event)
        elif event.session != self._opening:
            return  # about a source that is no longer wanted
        elif isinstance(event, FrameResult):
            self._take_frame(event)
        elif isinstance(event, SourceOpened):
            self._log.open(event)
        elif isinstance(event, FaultChanged):
            self._take_fault(event)
        elif isinstance(event, Ended):
            detector = None if movement is None else movement.detector
            for captured in detector.finish() if detector is not None else ():
                self._capture(captured)
            self.happen(LiveEvent(kind=LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED))

    def tick(self) -> None:
        """Check the clocks: one that jumped has slept, and the person is searched for anew."""
        before_s, self._clocks_s = self._clocks_s, (self._clock(), self._wall())
        passed_s = [now - before for before, now in zip(before_s, self._clocks_s, strict=True)]
        if max(passed_s) > SLEPT_S and self._source is not None:
            if self._source.clip is None:
                self.open(self._source)
            self._begin_anew()
            self._log.note("The computer slept; the person was looked for anew.")

    @property
    def pending(self) -> int:
        """How many captured trials are not refined yet."""
        return 0 if self.movement is None else self.movement.pending

    def end(self) -> Measurement | None:
        """Return what the captured trials of an unfinished movement make; None without any."""
        return None if self.movement is None else self.movement.left_over()

    def provenance(self, movement: Movement) -> Provenance:
        """Return where a measurement that is made now comes from."""
        return self._log.provenance(self._backends().models, movement, self._setup())

    # -----------------------------------------------------------------------------------------

    def _quality(self, models: ModelSet) -> ModelQuality:
        if self.movement is None:
            return models.coarse(Movement.FLEXION, None).quality
        return models.coarse(self.movement.movement, self.movement.view).quality

    def _begin_anew(self) -> None:
        """Forget the person and a trial that was going on."""
        self._analyzer = None
        if self.movement is not None:
            self.movement.detector = None

    def _take_frame(self, frame: FrameResult) -> None:
        analyzer = self._analyzer_for(frame)
        if analyzer is None:
            return
        self._frames += 1
        self._log.count(frame)
        movement = self.movement
        detector = None
        if movement is not None:
            detector = movement.detector_for(self._setup(), analyzer.size_px)
        measuring = movement is not None and movement.is_measuring
        analysis = analyzer.update(frame, detector, measuring=measuring)
        if analysis.lost:
            self.happen(LiveEvent(kind=LiveEventKind.PERSON_LOST))
        if analysis.captured is not None:
            self._capture(analysis.captured)
        if analysis.hand is not None:
            self.happen(LiveEvent(kind=LiveEventKind.HAND_RAISED, side=analysis.hand))
            if movement is not None:
                movement.toggle_pause()
        if frame.rgb is not None:
            self._show(
                LiveFrame(
                    picture=frame.rgb,
                    frame_id=self._frames,
                    time_s=frame.pose.time_s,
                    phase=self._phase(analysis.phase),
                    points_px=analysis.points_px,
                    value=analysis.value,
                    reasons=analysis.reasons,
                    hold_share=analysis.hold_share if measuring else 0.0,
                    setup_hints=analysis.hints,
                    quality=analysis.quality,
                    size_px=frame.size_px,
                )
            )
        if measuring and frame.coarse and detector is not None:
            analyzer.judge(detector)

    def _analyzer_for(self, frame: FrameResult) -> FrameAnalyzer | None:
        """Return the analyzer for frames of this size, made anew where the size changed."""
        if frame.rgb is not None and (
            self._analyzer is None or self._analyzer.size_px != frame.size_px
        ):
            assert self._source is not None
            self._begin_anew()
            self._size_px = frame.size_px
            source = self._source
            _, unfit = fit_for_picture(source.setup, *frame.size_px, source.lenses)
            if unfit:
                self._log.note(unfit)
            self._analyzer = FrameAnalyzer(frame.size_px)
        return self._analyzer

    def _capture(self, captured: CapturedTrial) -> None:
        assert self.movement is not None
        self.movement.capture(captured, self._backends().refiner)

    def _phase(self, phase: Phase) -> Phase:
        if self._trouble is not None:
            return Phase.TROUBLE
        return phase if self.movement is None else self.movement.phase(phase)

    def _take_fault(self, fault: FaultChanged) -> None:
        if fault.trouble is not None:
            self._note_trouble(fault.trouble, fault.text)
        elif self._trouble is not None:
            self._trouble = None
            self.happen(LiveEvent(kind=LiveEventKind.RECOVERED))

    def _note_trouble(self, trouble: SourceFault, text: str) -> None:
        self._trouble = trouble
        if trouble in _BREAKING:
            self._begin_anew()
        self.happen(LiveEvent(kind=LiveEventKind.TROUBLE, trouble=trouble, text=text))

    def _setup(self) -> Setup:
        """Return the setup for the chosen movement that holds for frames of this size."""
        if self._source is None or self.movement is None:
            return Setup()
        setup = self._source.setup_of(self.movement.movement)
        if self._size_px is None:
            return setup
        return fit_for_picture(setup, *self._size_px, self._source.lenses)[0]
