"""Fine passes: what is asked for, and who is followed."""

from collections.abc import Mapping, Sequence

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.tracks import PoseFrame, Track
from measure.pose.jobs import InferencePass
from measure.trials.fine_passes import FinePlan, run_fine_passes
from measure.trials.scan import decimation_plan, scan_for_trials
from tests.support.scripted_arm import MODELS
from tests.support.stick_figure import elevation_track, raise_and_hold

TASK = MeasurementTask(Movement.FLEXION, Side.LEFT, View.SIDE)
BESIDE = np.array([-300.0, 0.0])
ASIDE = np.array([1.0, 0.0])


def frames_of(track: Track, shift: int) -> list[PoseFrame]:
    """Return the figure a little aside, and before it in the list another person far from it."""
    return [
        PoseFrame(
            index=n,
            time_s=float(track.time_s[n]),
            points_px=np.stack([points + BESIDE, points + shift * ASIDE]),
            visibility=np.ones((2, len(points))),
            presence=np.ones((2, len(points))),
        )
        for n, points in enumerate(track.points_px)
    ]


@pytest.mark.parametrize(
    ("hold_s", "fps", "factor"), [(2.0, 30.0, 1), (1.2, 30.0, 2), (1.2, 0.0, 1)]
)
def test_every_pass_follows_the_person_of_the_coarse_one(
    hold_s: float, fps: float, factor: int
) -> None:
    series = raise_and_hold(100.0, hold_s=hold_s)
    coarse = elevation_track(series, TASK.movement, TASK.side, View.SIDE)
    plans: list[FinePlan] = []

    def run(plan: FinePlan) -> Mapping[InferencePass, Sequence[PoseFrame]]:
        plans.append(plan)
        return {
            inference_pass: frames_of(coarse, n) for n, inference_pass in enumerate(plan.passes)
        }

    trials = scan_for_trials(coarse, TASK).trials
    tracks = run_fine_passes(MODELS, TASK, trials, coarse, run, fps=fps)
    (plan,) = plans
    assert plan.passes == MODELS.fine()
    assert plan.rate_factor == factor
    assert plan.decimation == decimation_plan(trials, TASK.movement, factor)
    assert plan.alone
    assert list(tracks) == [MODELS.pass_name(inference_pass) for inference_pass in plan.passes]
    for shift, track in enumerate(tracks.values()):
        assert np.allclose(track.points_px, coarse.points_px + shift * ASIDE)
