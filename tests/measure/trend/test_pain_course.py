"""The step in a course of pain ratings, by hand."""

import math

import numpy as np
import pytest

from measure.trend.pain_course import PAIN_RELATED, USUAL_PAIN_RATINGS, USUAL_PAIN_SD, step


def test_a_step_without_scatter_is_exact() -> None:
    rise, error, before = step(np.array([3.0] * 8 + [6.0] * 4), 4)
    assert (rise, before) == (pytest.approx(3.0), pytest.approx(3.0))
    # Nothing is left over, so the usual scatter alone counts, by its weight.
    usual = USUAL_PAIN_RATINGS * USUAL_PAIN_SD**2 * (1 - PAIN_RELATED**2)
    variance = usual / (12 - 2 + USUAL_PAIN_RATINGS)
    # By hand for r = 0.5: whitened, the first value weighs 3/4, the others 1/4 each, the first
    # after the step 1: the information about the step, the level known, is 1 + 3 * 0.25.
    ones, both, after = 0.75 + 11 * 0.25, 0.5 + 3 * 0.25, 1 + 3 * 0.25
    assert error == pytest.approx(math.sqrt(variance / (after - both**2 / ones)))


def test_turned_over_the_step_is_the_opposite() -> None:
    ratings = np.array([3.0, 4, 2, 5, 3, 4, 3, 6, 7, 6, 5])
    rise, error, _ = step(ratings, 4)
    fall, same, _ = step(10 - ratings, 4)
    assert (fall, same) == (pytest.approx(-rise), pytest.approx(error))
