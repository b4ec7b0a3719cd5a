"""Plain lines of an arm against the trunk, nothing fitted: what estimators have to beat."""

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.landmarks import arm as landmarks_of
from measure.domain.measurement_task import MeasurementTask
from measure.kinematics.angles import plane_from_pixels, turn_deg, wrap_deg
from measure.kinematics.elevation import sense


def plain_line_deg(points_px: FloatArray, task: MeasurementTask, end: Landmark) -> FloatArray:
    """Return the line from the shoulder to a landmark against mid-shoulder to mid-hip, degrees.

    Parameters
    ----------
    points_px
        Landmarks in the image, shape (..., L, 2).
    task
        An elevation in a known view.
    end
        Elbow or wrist of the measured arm.

    Returns
    -------
    Angles in [-90, 270), shape (...); NaN where a point is missing.
    """
    points = plane_from_pixels(points_px)
    own, other = landmarks_of(task.side), landmarks_of(task.side.other)
    hips = points[..., own.hip, :] + points[..., other.hip, :]
    shoulder = points[..., own.shoulder, :]
    down = hips - shoulder - points[..., other.shoulder, :]
    sign = sense(task.movement, task.known_view, task.side)
    turned = sign * turn_deg(down, points[..., end, :] - shoulder)
    return np.asarray(wrap_deg(turned, lowest=-90.0))
