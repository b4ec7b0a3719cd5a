"""The quick track as points for motion files: axes, units, gaps. No file formats here.

Motion files want x to the right, y upwards and z; a camera sees no depth, so z is 0 and every
point lies in the picture's plane. Lengths stay pixels: only somebody who has measured how long
a pixel is at the person's distance may ask for metres.
"""

from dataclasses import dataclass

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.tracks import FrameState
from measure.errors import InputError

#: Names of the points, in the order of the network's landmarks.
LABELS = tuple(mark.name for mark in Landmark)


@dataclass(frozen=True, slots=True, kw_only=True)
class MotionPoints:
    """Points of one person over n frames.

    Attributes
    ----------
    time_s
        Shape (n,): true times from the clip's first frame.
    places
        Shape (n, 33, 3): x right, y up from the picture's lowest row, z 0; NaN where the
        person was not seen.
    units
        "px" or "m".
    rate_hz
        Frames a second as meant; the true times differ from it by up to half a frame of the
        clip, more where the clip's own times are uneven.
    """

    time_s: FloatArray
    places: FloatArray
    units: str
    rate_hz: float


def motion_points(observation: ClipObservation, metres_per_px: float | None = None) -> MotionPoints:
    """Return the points of a clip.

    Parameters
    ----------
    metres_per_px
        Length of a pixel at the person's distance, where it was measured; None leaves pixels.

    Raises
    ------
    InputError
        For a length that is none.
    """
    if metres_per_px is not None and not (np.isfinite(metres_per_px) and metres_per_px > 0):
        raise InputError(f"{metres_per_px:g} m is no length of a pixel.")
    track = observation.coarse
    places = np.zeros((len(track), len(LABELS), 3))
    places[:, :, 0] = track.points_px[:, :, 0]
    places[:, :, 1] = track.height_px - 1 - track.points_px[:, :, 1]
    places *= metres_per_px or 1.0
    unknown = (track.state != FrameState.SEEN)[:, None] | ~np.isfinite(places).all(axis=2)
    places[unknown] = np.nan
    return MotionPoints(
        time_s=track.time_s,
        places=places,
        units="px" if metres_per_px is None else "m",
        rate_hz=observation.rate_hz,
    )
