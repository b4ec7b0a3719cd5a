"""Fine passes: run the inference passes that refine trials, and follow the person through each."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.measurement_task import MeasurementTask
from measure.domain.tracks import PoseFrame, Track
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import InferencePass
from measure.tracking.offline import track_subject
from measure.trials.scan import decimation_plan, fine_rate_factor
from measure.trials.segmentation import TrialCandidate
from measure.video.sampling import DecimationSpan


@dataclass(frozen=True, slots=True, kw_only=True)
class FinePlan:
    """Which passes run over which frames.

    Attributes
    ----------
    rate_factor
        How many times the usual rate of fine passes the frames come at.
    decimation
        Which frames of that rate are taken.
    alone
        True where the coarse pass never saw two people.
    """

    passes: tuple[InferencePass, ...]
    rate_factor: int
    decimation: tuple[DecimationSpan, ...]
    alone: bool


def run_fine_passes(
    models: ModelSet,
    task: MeasurementTask,
    trials: Sequence[TrialCandidate],
    coarse: Track,
    run: Callable[[FinePlan], Mapping[InferencePass, Sequence[PoseFrame]]],
    *,
    fps: float = 0.0,
) -> dict[str, Track]:
    """Return the track of each fine pass by the pass's name.

    Parameters
    ----------
    coarse
        The coarse pass's track, which tells who is followed.
    run
        Runs a plan: over a clip, or over frames that were kept.
    fps
        Frames a second of the source, or 0 where the frames are kept at their usual rate.
    """
    factor = fine_rate_factor(trials, task.movement, fps)
    plan = FinePlan(
        passes=models.fine(),
        rate_factor=factor,
        decimation=decimation_plan(trials, task.movement, factor),
        alone=bool(np.all(coarse.people <= 1)),
    )
    frames = run(plan)
    return {
        models.pass_name(inference_pass): track_subject(
            frames[inference_pass],
            width_px=coarse.width_px,
            height_px=coarse.height_px,
            reference=coarse,
        )
        for inference_pass in plan.passes
    }
