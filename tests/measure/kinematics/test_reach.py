import numpy as np
import pytest

from measure.domain.landmarks import Landmark, Side
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.reach import reach_of
from tests.support.stick_figure import track_of


def figure(thumb, *, lean=(0.0, 1.0)):
    """A trunk from mid-hip (0, 0) to `lean` with the left thumb at a place, in trunk lengths."""
    places = np.zeros((1, 33, 2))
    up = np.array(lean)
    across = np.array([up[1], -up[0]])
    for sign, side in ((-1, "LEFT"), (1, "RIGHT")):
        places[0, Landmark[f"{side}_SHOULDER"]] = up + 0.3 * sign * across
        places[0, Landmark[f"{side}_HIP"]] = 0.2 * sign * across
    places[0, Landmark.LEFT_THUMB] = thumb
    return arm_keypoints(track_of(places * 150), Side.LEFT)


@pytest.mark.parametrize("height", [-0.2, 0.0, 0.35, 0.8])
@pytest.mark.parametrize("aside", [-0.2, 0.0, 0.15])
def test_height_is_measured_along_the_trunk(height, aside):
    assert reach_of(figure((aside, height))).thumb[0] == pytest.approx(height)


def test_a_leaning_trunk_carries_the_scale_along():
    lean = np.array([np.sin(0.2), np.cos(0.2)])
    reach = reach_of(figure(tuple(0.5 * lean), lean=tuple(lean)))
    assert reach.thumb[0] == pytest.approx(0.5)


def test_a_missing_thumb_is_missing():
    assert np.isnan(reach_of(figure((np.nan, 0.3))).thumb[0])
