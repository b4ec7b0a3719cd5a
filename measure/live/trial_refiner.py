"""Settles captured trials while the arm rests: careful passes over their pictures, in order.

One thread and one pose process of its own, so that live pictures go on meanwhile. The pictures
stay here until a trial is settled: a process that dies costs a second try, not the trial.
"""

import queue
import threading
import traceback
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import ThawlineError
from measure.live.trial_detector import CapturedTrial
from measure.pose.ensemble import ModelSet
from measure.pose.picture_job import PictureJob
from measure.pose.supervisor import PoseProcess
from measure.tracking.offline import track_subject
from measure.trials.refinement import RefinedTrial, refine_trial
from measure.trials.scan import decimation_plan
from measure.video.sampling import Decimator

#: Stands for the quick pass where a model's name is asked for: it was never measured, so its
#: interval is that of the worst one that was.
COARSE_ONLY = "quick"

#: Longest wait for a sign of life of the process. Ours: it looks at ten pictures a second.
_STALL_S = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RefineRequest:
    """A trial to be settled.

    Attributes
    ----------
    chosen
        Number of the chosen movement that it belongs to.
    """

    chosen: int
    trial_id: int
    captured: CapturedTrial
    movement: Movement
    side: Side
    setup: Setup


@dataclass(frozen=True, slots=True, kw_only=True)
class RefineResult:
    """A settled trial; `hasty` where the careful passes could not be made."""

    chosen: int
    trial_id: int
    refined: RefinedTrial
    coarse_only: bool


class TrialRefiner:
    """Settles trials one after the other.

    Parameters
    ----------
    models
        The bundles to look with.
    tell
        Takes the results; called in the thread.
    make_process
        Makes the pose process; tests put others here.
    """

    def __init__(
        self,
        models: ModelSet,
        tell: Callable[[RefineResult], None],
        make_process: Callable[[ModelSet], PoseProcess] | None = None,
    ) -> None:
        self._models = models
        self._tell = tell
        self._process = (make_process or _pose_process)(models)
        self._orders: queue.SimpleQueue[RefineRequest | None] = queue.SimpleQueue()
        self._closed = threading.Event()
        self._thread = threading.Thread(target=self._work, name="settling", daemon=True)
        self._thread.start()

    def put(self, order: RefineRequest) -> None:
        """Settle a trial as soon as those before it are."""
        self._orders.put(order)

    def close(self, timeout_s: float) -> None:
        """Break off; what is not settled yet is not told any more."""
        self._closed.set()
        self._orders.put(None)
        self._process.stop()
        self._thread.join(timeout_s)

    def _work(self) -> None:
        try:
            self._prepare()
            while (order := self._orders.get()) is not None and not self._closed.is_set():
                news = self._refined(order)
                del order  # its pictures with it
                if not self._closed.is_set():
                    self._tell(news)
        finally:
            self._process.close()

    def _prepare(self) -> None:
        """Start the process ahead of the first trial; a failure shows with that one."""
        try:
            self._process.prepare()
        except ThawlineError:
            traceback.print_exc()

    def _refined(self, order: RefineRequest) -> RefineResult:
        for _ in range(2):
            try:
                refined = self._with_fine_passes(order)
                return RefineResult(
                    chosen=order.chosen, trial_id=order.trial_id, refined=refined, coarse_only=False
                )
            except ThawlineError:
                if self._closed.is_set():
                    break
        return refine_from_coarse(order)

    def _with_fine_passes(self, order: RefineRequest) -> RefinedTrial:
        captured = order.captured
        thinning = Decimator(decimation_plan([captured.found], order.movement))
        pictures = tuple(
            each for each in captured.pictures if thinning.takes(each.time_s, each.window)
        )
        passes = self._models.fine(order.movement, captured.view)
        width, height = captured.size_px
        poses = self._process.run_pictures(
            PictureJob(
                passes=passes,
                pictures=pictures,
                width_px=width,
                height_px=height,
                alone=bool(np.all(captured.coarse.people <= 1)),
            )
        )
        tracks = [
            track_subject(poses[one], width_px=width, height_px=height, reference=captured.coarse)
            for one in passes
        ]
        return refine_trial(
            tracks,
            captured.found,
            order.movement,
            order.side,
            captured.view,
            order.setup,
            self._models.name,
        )


def refine_from_coarse(order: RefineRequest) -> RefineResult:
    """Settle a trial from the quick look alone, with the widest interval."""
    captured = order.captured
    start_s, end_s = captured.pictures[0].time_s, captured.pictures[-1].time_s
    refined = refine_trial(
        [captured.coarse.between(start_s, end_s)],
        captured.found,
        order.movement,
        order.side,
        captured.view,
        order.setup,
        COARSE_ONLY,
    )
    return RefineResult(
        chosen=order.chosen, trial_id=order.trial_id, refined=refined, coarse_only=True
    )


def _pose_process(models: ModelSet) -> PoseProcess:
    return PoseProcess(models.bundles, stall_s=_STALL_S)
