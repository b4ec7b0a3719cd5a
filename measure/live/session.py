"""What the live engine knows and decides: one source, one chosen movement, its trials.

Everything here runs in the engine's own thread. Frames and events leave through the two
functions given; processes are reached through the link and the settling, which are given too.
"""

import time
from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

from measure.camera.faults import SourceFault
from measure.domain.acquisition import Setup, fit_for_picture
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import Movement, View
from measure.domain.reasons import GateResult
from measure.errors import ThawlineError
from measure.live.events import LiveEvent, LiveEventKind, LiveFrame, Phase, Source
from measure.live.messages import Ended, FaultChanged, SourceOpened, SourceOrder
from measure.live.scene import FrameAnalysis, FrameAnalyzer
from measure.live.source_log import SourceLog
from measure.live.supervisor import FrameResult, WorkerEvent
from measure.live.trial_detector import CapturedTrial, OnlineTrialDetector
from measure.live.trial_ledger import TrialLedger
from measure.live.trial_refiner import RefineRequest, RefineResult, refine_from_coarse
from measure.pose.ensemble import ModelSet
from measure.pose.message_pipe import Text
from measure.pose_models.catalogue import ModelQuality

#: A clock that jumps this far ahead has slept, seconds. Ours.
SLEPT_S = 5.0

#: Troubles that break a trial off; a slow camera only spoils it.
_BREAKING = frozenset(SourceFault) - {SourceFault.CAMERA_SLOW, SourceFault.CLIP_ENDED}


class Link(Protocol):
    """The part of :class:`measure.live.supervisor.LiveSupervisor` that is used."""

    def open(self, order: SourceOrder) -> None: ...
    def use(self, quality: ModelQuality) -> None: ...


class Settler(Protocol):
    """The part of :class:`measure.live.trial_refiner.TrialRefiner` that is used."""

    def put(self, order: RefineRequest) -> None: ...


@dataclass(frozen=True, slots=True, kw_only=True)
class Backends:
    """What a session works with.

    Attributes
    ----------
    models
        The bundles.
    link, settler
        The live process, and the one that settles trials.
    """

    models: ModelSet
    link: Link
    settler: Settler


class LiveSession:
    """The state of a live engine.

    Parameters
    ----------
    hands
        Returns what the session works with, made on first use.
    show
        Takes the newest frame.
    happen
        Takes events, in order.
    clock, wall
        Seconds that never run backwards, and the time of day in seconds.
    loop_clips
        Whether a clip begins anew at its end.
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
        self._happen = happen
        self._clock = clock
        self._wall = wall
        self._loop_clips = loop_clips
        self._clocks_s = (clock(), wall())
        self._source: Source | None = None
        self._opening = 0
        self._log = SourceLog()
        self._size_px: tuple[int, int] | None = None
        self._scene: FrameAnalyzer | None = None
        self._trouble: SourceFault | None = None
        self._frames = 0
        self._chosen = 0
        self._book: TrialLedger | None = None
        self._watch: OnlineTrialDetector | None = None
        self._view: View | None = None
        self._nothing_found = GateResult()
        self._paused = False
        self._finishing = False
        self._done = False
        self._unsettled: dict[int, RefineRequest] = {}

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
        backends.link.open(
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
        """Begin a movement; trials of the one before that are not settled yet are dropped."""
        self._chosen += 1
        self._book = TrialLedger(movement, side, trials, practice)
        self._view = None
        self._paused = self._finishing = self._done = False
        self._unsettled = {}
        self._nothing_found = GateResult()
        self._watch = None
        if self._source is not None and self._trouble is not SourceFault.MODEL_MISSING:
            backends = self._backends()
            backends.link.use(self._quality(backends.models))

    def pause(self) -> None:
        """Look for no trials until :meth:`resume`."""
        if not self._paused:
            self._paused = True
            self._happen(LiveEvent(kind=LiveEventKind.PAUSED))

    def resume(self) -> None:
        """Go on; an interrupted trial starts anew."""
        if self._paused:
            self._paused = False
            if self._watch is not None:
                self._watch.start_anew(self._log.last_s)
            self._happen(LiveEvent(kind=LiveEventKind.RESUMED))

    def discard_last(self) -> None:
        """Drop the last trial that counts."""
        if self._book is None or self._done:
            return
        trial_id = self._book.discard_last()
        if trial_id is not None:
            self._unsettled.pop(trial_id, None)
            self._happen(
                LiveEvent(
                    kind=LiveEventKind.TRIAL_DISCARDED,
                    trial_id=trial_id,
                    measurement=self._measurement_so_far(),
                )
            )

    def finish_movement(self) -> None:
        """Take no more trials; the movement is done when those captured are settled."""
        if self._book is None or self._done:
            return
        if self._watch is not None:
            self._nothing_found = self._watch.verdict
        self._finishing = True
        self._end_if_settled()

    # -- what processes tell ------------------------------------------------------------------

    def take(self, news: WorkerEvent | RefineResult) -> None:
        """Take what a process tells."""
        if isinstance(news, RefineResult):
            self._take_settled(news)
        elif news.session != self._opening:
            return  # about a source that is no longer wanted
        elif isinstance(news, FrameResult):
            self._take_seen(news)
        elif isinstance(news, SourceOpened):
            self._log.open(news)
        elif isinstance(news, FaultChanged):
            self._take_told(news)
        elif isinstance(news, Ended):
            for captured in self._watch.finish() if self._watch is not None else ():
                self._capture(captured)
            self._happen(LiveEvent(kind=LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED))

    def tick(self) -> None:
        """Look at the clocks: one that jumped has slept, and all is found anew."""
        before_s, self._clocks_s = self._clocks_s, (self._clock(), self._wall())
        passed_s = [now - before for before, now in zip(before_s, self._clocks_s, strict=True)]
        if max(passed_s) > SLEPT_S and self._source is not None:
            if self._source.clip is None:
                self.open(self._source)
            self._begin_anew()
            self._log.note("The computer slept; the person was looked for anew.")

    @property
    def pending(self) -> int:
        """How many captured trials are not settled yet."""
        return 0 if self._book is None or self._done else self._book.pending

    def end(self) -> Measurement | None:
        """Settle what is pending from the quick look, and return what an unfinished movement
        makes; None without any trial.
        """
        for order in list(self._unsettled.values()):
            self._take_settled(refine_from_coarse(order))
        if self._book is None or self._done or not self._book.has_captured:
            return None
        return self._book.measurement(self._provenance())

    # -----------------------------------------------------------------------------------------

    def _quality(self, models: ModelSet) -> ModelQuality:
        movement = self._book.movement if self._book is not None else Movement.FLEXION
        return models.coarse(movement, self._view).quality

    def _begin_anew(self) -> None:
        """Forget the person and a trial that was going on."""
        self._scene = None
        self._watch = None

    def _take_seen(self, seen: FrameResult) -> None:
        if seen.rgb is not None and (self._scene is None or self._scene.size_px != seen.size_px):
            assert self._source is not None
            self._begin_anew()
            self._size_px = seen.size_px
            source = self._source
            _, unfit = fit_for_picture(source.setup, *seen.size_px, source.lenses)
            if unfit:
                self._log.note(unfit)
            self._scene = FrameAnalyzer(seen.size_px)
        if self._scene is None:
            return
        self._frames += 1
        self._log.count(seen)
        measuring = self._is_measuring
        analysis = self._scene.update(seen, self._watch_now(), measuring=measuring)
        if analysis.lost:
            self._happen(LiveEvent(kind=LiveEventKind.PERSON_LOST))
        if analysis.captured is not None:
            self._capture(analysis.captured)
        if analysis.hand is not None:
            self._take_hand(analysis.hand)
        if seen.rgb is not None:
            self._show(
                LiveFrame(
                    picture=seen.rgb,
                    frame_id=self._frames,
                    time_s=seen.pose.time_s,
                    phase=self._phase(analysis),
                    points_px=analysis.points_px,
                    value=analysis.value,
                    reasons=analysis.reasons,
                    hold_share=analysis.hold_share if measuring else 0.0,
                    setup_hints=analysis.hints,
                    quality=analysis.quality,
                    size_px=seen.size_px,
                )
            )
        if measuring and seen.coarse and self._watch is not None:
            self._scene.judge(self._watch)

    @property
    def _is_measuring(self) -> bool:
        return (
            self._book is not None
            and self._book.wants_more
            and not (self._paused or self._finishing or self._done)
        )

    def _watch_now(self) -> OnlineTrialDetector | None:
        """Return the watch over the chosen movement, made where there is none yet."""
        if self._watch is None and self._book is not None and self._scene is not None:
            assert self._source is not None
            book = self._book
            task = MeasurementTask(book.movement, book.side, self._view, self._setup())
            self._watch = OnlineTrialDetector(task, self._scene.size_px)
        return self._watch

    def _phase(self, analysis: FrameAnalysis) -> Phase:
        if self._trouble is not None:
            return Phase.TROUBLE
        if self._book is None:
            return analysis.phase
        if self._done:
            return Phase.DONE
        if self._paused:
            return Phase.PAUSED
        full = self._finishing or not self._book.wants_more
        if full or (analysis.phase is Phase.REST and self._book.pending):
            return Phase.SETTLING
        return analysis.phase

    def _take_hand(self, side: Side) -> None:
        """Tell of a raised hand; during a movement it also pauses, or goes on."""
        self._happen(LiveEvent(kind=LiveEventKind.HAND_RAISED, side=side))
        if self._book is not None and not self._done:
            if self._paused:
                self.resume()
            else:
                self.pause()

    def _take_told(self, told: FaultChanged) -> None:
        if told.trouble is not None:
            self._note_trouble(told.trouble, told.text)
        elif self._trouble is not None:
            self._trouble = None
            self._happen(LiveEvent(kind=LiveEventKind.RECOVERED))

    def _note_trouble(self, trouble: SourceFault, text: str) -> None:
        self._trouble = trouble
        if trouble in _BREAKING:
            self._begin_anew()
        self._happen(LiveEvent(kind=LiveEventKind.TROUBLE, trouble=trouble, text=text))

    def _capture(self, captured: CapturedTrial) -> None:
        assert self._book is not None
        assert self._source is not None
        view = captured.task.known_view
        entry = self._book.capture(view)
        self._view = view
        order = RefineRequest(chosen=self._chosen, trial_id=entry.trial_id, captured=captured)
        self._unsettled[entry.trial_id] = order
        self._backends().settler.put(order)
        self._happen(
            LiveEvent(
                kind=LiveEventKind.TRIAL_CAPTURED, trial_id=entry.trial_id, practice=entry.practice
            )
        )

    def _take_settled(self, news: RefineResult) -> None:
        if news.chosen != self._chosen or self._book is None:
            return
        self._unsettled.pop(news.trial_id, None)
        entry = self._book.refine(news.trial_id, news.refined, coarse_only=news.coarse_only)
        if entry is None:
            return
        self._happen(
            LiveEvent(
                kind=LiveEventKind.TRIAL_REFUSED
                if entry.is_refused
                else LiveEventKind.TRIAL_SETTLED,
                trial_id=entry.trial_id,
                practice=entry.practice,
                trial=news.refined.trial,
                measurement=self._measurement_so_far(),
            )
        )
        self._end_if_settled()

    def _end_if_settled(self) -> None:
        """Tell that the movement is done, once it is."""
        assert self._book is not None
        full = self._book.is_complete or (self._finishing and not self._book.pending)
        if full and not self._done:
            self._done = True
            self._watch = None
            measurement = self._book.measurement(self._provenance(), self._nothing_found)
            self._happen(LiveEvent(kind=LiveEventKind.MEASUREMENT_DONE, measurement=measurement))

    def _measurement_so_far(self) -> Measurement | None:
        assert self._book is not None
        if not self._book.has_refined:
            return None
        return self._book.measurement(self._provenance())

    def _provenance(self) -> Provenance:
        assert self._book is not None
        return self._log.provenance(self._backends().models, self._book.movement, self._setup())

    def _setup(self) -> Setup:
        """Return what is known for the chosen movement and holds for these pictures."""
        if self._source is None or self._book is None:
            return Setup()
        setup = self._source.setup_of(self._book.movement)
        if self._size_px is None:
            return setup
        return fit_for_picture(setup, *self._size_px, self._source.lenses)[0]
