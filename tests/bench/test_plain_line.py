"""A plain line has the angle that it was drawn with, whatever way it is looked at."""

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, Side
from measure.domain.landmarks import arm as landmarks_of
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from tests.bench.plain_line import plain_line_deg


@pytest.mark.parametrize("angle_deg", [-20.0, 5.0, 90.0, 170.0])
@pytest.mark.parametrize("roll_deg", [0.0, 12.0])
@pytest.mark.parametrize(
    ("movement", "view", "side", "towards"),
    [
        (Movement.ABDUCTION, View.FRONT, Side.LEFT, 1),
        (Movement.ABDUCTION, View.FRONT, Side.RIGHT, -1),
        (Movement.ABDUCTION, View.BACK, Side.LEFT, -1),
        (Movement.FLEXION, View.SIDE, Side.RIGHT, 1),
        (Movement.EXTENSION, View.SIDE, Side.RIGHT, -1),
    ],
)
def test_angle_of_the_upper_arm(
    angle_deg: float, roll_deg: float, movement: Movement, view: View, side: Side, towards: int
) -> None:
    """The arm goes to the image's right (+1) or left (-1); the whole person may be tilted."""
    own, other = landmarks_of(side), landmarks_of(side.other)
    points = np.full((LANDMARKS, 2), np.nan)
    points[own.shoulder], points[other.shoulder] = (110.0, 100.0), (90.0, 100.0)
    points[own.hip], points[other.hip] = (108.0, 200.0), (92.0, 200.0)
    angle = np.radians(angle_deg)
    points[own.elbow] = points[own.shoulder] + 50 * np.array(
        [towards * np.sin(angle), np.cos(angle)]
    )
    roll = np.radians(roll_deg)
    turn = np.array([[np.cos(roll), -np.sin(roll)], [np.sin(roll), np.cos(roll)]])
    task = MeasurementTask(movement, side, view)
    found = plain_line_deg((points @ turn.T)[None], task, own.elbow)
    assert found == pytest.approx(np.array([angle_deg]))
    assert np.isnan(plain_line_deg(points, task, own.wrist))
