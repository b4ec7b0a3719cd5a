"""Trial refiner: fine passes over captured trials while the arm rests, one after the other.

One thread and one pose process of its own, so that live frames go on meanwhile. A trial's frames
stay here until it is refined: a process that dies costs a second try, not the trial.
"""

import queue
import threading
import traceback
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from measure.domain.tracks import PoseFrame
from measure.errors import ThawlineError
from measure.live.trial_detector import CapturedTrial
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import InferencePass, PictureJob
from measure.pose.supervisor import PoseProcess
from measure.trials.fine_passes import FinePlan, run_fine_passes
from measure.trials.refinement import RefinedTrial, refine_trial
from measure.video.sampling import Decimator

#: Stands for the coarse pass where a model's name is asked for; its interval is wider.
COARSE_ONLY = "quick"

#: Longest wait for a sign of life of the process, seconds. [technical]
_STALL_S = 10.0


@dataclass(frozen=True, slots=True, kw_only=True)
class RefineRequest:
    """A trial to be refined.

    Attributes
    ----------
    chosen
        Number of the chosen movement that it belongs to.
    """

    chosen: int
    trial_id: int
    captured: CapturedTrial


@dataclass(frozen=True, slots=True, kw_only=True)
class RefineResult:
    """A refined trial; `coarse_only` where the fine passes could not be made."""

    chosen: int
    trial_id: int
    refined: RefinedTrial
    coarse_only: bool


class TrialRefiner:
    """Refines trials one after the other.

    Parameters
    ----------
    models
        The bundles of the fine passes.
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
        self._thread = threading.Thread(target=self._work, name="refinement", daemon=True)
        self._thread.start()

    def put(self, order: RefineRequest) -> None:
        """Refine a trial as soon as those before it are."""
        self._orders.put(order)

    def close(self, timeout_s: float) -> None:
        """Break off; what is not refined yet is not reported any more."""
        self._closed.set()
        self._orders.put(None)
        self._process.stop()
        self._thread.join(timeout_s)

    def _work(self) -> None:
        try:
            self._prepare()
            while (order := self._orders.get()) is not None and not self._closed.is_set():
                result = self._refined(order)
                del order  # its frames with it
                if not self._closed.is_set():
                    self._tell(result)
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
        candidate, task, coarse = captured.candidate, captured.task, captured.coarse

        def run(plan: FinePlan) -> Mapping[InferencePass, Sequence[PoseFrame]]:
            decimator = Decimator(plan.decimation)
            return self._process.run_pictures(
                PictureJob(
                    passes=plan.passes,
                    pictures=tuple(
                        picture
                        for picture in captured.pictures
                        if decimator.takes(picture.time_s, picture.window)
                    ),
                    width_px=coarse.width_px,
                    height_px=coarse.height_px,
                    alone=plan.alone,
                )
            )

        tracks = run_fine_passes(self._models, task, [candidate], coarse, run)
        return refine_trial(list(tracks.values()), candidate, task, self._models.name)


def refine_from_coarse(order: RefineRequest) -> RefineResult:
    """Refine a trial from the coarse pass alone, with the widest interval."""
    captured = order.captured
    start_s, end_s = captured.pictures[0].time_s, captured.pictures[-1].time_s
    coarse = captured.coarse.between(start_s, end_s)
    return RefineResult(
        chosen=order.chosen,
        trial_id=order.trial_id,
        refined=refine_trial([coarse], captured.candidate, captured.task, COARSE_ONLY),
        coarse_only=True,
    )


def _pose_process(models: ModelSet) -> PoseProcess:
    return PoseProcess(models.bundles, stall_s=_STALL_S)
