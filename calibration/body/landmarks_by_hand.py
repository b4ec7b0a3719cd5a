"""C7 and the iliac spines, marked by hand in an image of the back.

C7 is the most prominent bone at the base of the neck, the head bent a little forward; the iliac
spines are the two dimples above the buttocks.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import POSSIBLE, is_possible
from measure.domain.landmarks import FloatArray, Landmark
from measure.errors import InputError

#: Largest distance of C7 from the trunk line, share of the trunk's length. [project]
MAX_LATERAL_OFFSET = 0.15

Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class BackLandmarks:
    """Heights above mid-hip along the trunk line, over the trunk's length."""

    c7_height: float
    iliac_spines: float


def locate_back_landmarks(
    places: Mapping[Landmark, Point], c7_px: Point, spines_px: tuple[Point, Point]
) -> BackLandmarks:
    """Return the heights of C7 and the iliac spines on the trunk line.

    Parameters
    ----------
    places
        Shoulders and hips in the same image, pixels, y down; of a person seen from the back.
    c7_px, spines_px
        The marks, pixels.

    Raises
    ------
    InputError
        When shoulders or hips are missing, the image shows the front, or a mark is impossible.
    """
    names = (
        Landmark.LEFT_SHOULDER,
        Landmark.RIGHT_SHOULDER,
        Landmark.LEFT_HIP,
        Landmark.RIGHT_HIP,
    )
    if not all(mark in places for mark in names):
        raise InputError("Shoulders and hips were not found in the picture. Take another one.")
    left, right, left_hip, right_hip = (np.array(places[mark], dtype=np.float64) for mark in names)
    if left[0] >= right[0]:
        raise InputError("The picture does not show the back. Mark a picture of the back.")
    hip, shoulder = (left_hip + right_hip) / 2, (left + right) / 2
    along = shoulder - hip
    c7 = _on_trunk(np.array(c7_px, dtype=np.float64), hip, along, "C7")
    spines = [_on_trunk(np.array(spine, dtype=np.float64), hip, along, "") for spine in spines_px]
    middle = float(np.mean(spines))
    for name, words, value in (
        ("c7_height", "C7", c7),
        ("iliac_spines", "the dimples of the pelvis", middle),
    ):
        if not is_possible(name, value):
            low, high = POSSIBLE[name]
            raise InputError(
                f"The mark of {words} lies at {value:.2f} of the way from hips to shoulders; "
                f"{low:g} to {high:g} is possible. Mark it again."
            )
    return BackLandmarks(c7_height=c7, iliac_spines=middle)


def _on_trunk(mark: FloatArray, hip: FloatArray, along: FloatArray, name: str) -> float:
    """Return the height of a mark along the trunk; C7 must also lie on its line."""
    if not np.isfinite(mark).all():
        raise InputError("A mark is not a number. Mark it again.")
    square = float(along @ along)
    beside = float(np.cross(np.append(along, 0), np.append(mark - hip, 0))[2]) / square
    if name and abs(beside) > MAX_LATERAL_OFFSET:
        raise InputError(f"The mark of {name} lies beside the spine. Mark it again.")
    return float((mark - hip) @ along) / square
