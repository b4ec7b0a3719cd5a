"""Rotation phases of external rotation: facing, turned with the forearm up, zero pose."""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray
from measure.kinematics.keypoints import ArmKeypoints
from measure.kinematics.reach import reach_of

Mask = NDArray[np.bool_]

#: Shoulders' apparent width over the trunk that counts as facing, as a share of the widest.
#: [project]
FACING_SHARE = 0.94
#: Least apparent width over the trunk that can be the facing phase. [project]
LEAST_FACING_WIDTH = 0.42
#: The wrist's height on the trunk line, as a fraction of it, above which a forearm is up (hanging:
#: below 0). [project]
FOREARM_UP = 0.12
#: Shortest facing phase, seconds. [project]
LEAST_FACING_S = 0.5
#: Shortest still stretch that can be the zero pose, seconds: less than two frames lie apart.
#: [project]
LEAST_STILL_S = 0.45


@dataclass(frozen=True, slots=True, kw_only=True)
class RotationPhases:
    """Frames of each phase, shape (n,) each; all False where it was not found."""

    facing: Mask
    turned: Mask


def rotation_phases(keypoints: ArmKeypoints) -> RotationPhases:
    """Return the facing phase at the start and the turned phase that follows it.

    Without a facing phase the whole stretch with the forearm up counts as turned.
    """
    width = np.abs(keypoints.separation)
    up = reach_of(keypoints).wrist > FOREARM_UP
    hanging = ~up & np.isfinite(width)
    none = np.zeros(len(width), dtype=bool)
    first_up = _start_of_longest(up)
    if first_up is None:
        return RotationPhases(facing=none, turned=none)
    early = hanging.copy()
    early[first_up:] = False
    facing = none
    if np.any(early):
        widest = float(np.nanpercentile(width[early], 90))
        if widest >= LEAST_FACING_WIDTH:
            facing = early & (width >= FACING_SHARE * widest)
    if np.any(facing) and np.ptp(keypoints.time_s[facing]) < LEAST_FACING_S:
        facing = none
    turned = up.copy()
    turned[:first_up] = False
    return RotationPhases(facing=facing, turned=turned)


def _start_of_longest(mask: Mask) -> int | None:
    """Return where the longest run of True begins; runs a frame or two apart count as one."""
    indices = np.flatnonzero(mask)
    if len(indices) == 0:
        return None
    breaks = np.flatnonzero(np.diff(indices) > 3)
    starts = np.concatenate([[0], breaks + 1])
    ends = np.concatenate([breaks, [len(indices) - 1]])
    longest = int(np.argmax(indices[ends] - indices[starts]))
    return int(indices[starts[longest]])


def zero_azimuth_deg(time_s: FloatArray, azimuth_deg: FloatArray, turned: Mask) -> float:
    """Return the azimuth of the zero pose: the first still stretch with the forearm up.

    It is the steadiest 0.8 s among the first two seconds; NaN when there is none.
    """
    frames = np.flatnonzero(turned & np.isfinite(azimuth_deg))
    if len(frames) == 0:
        return float("nan")
    best, level = np.inf, float("nan")
    for start in frames:
        since = time_s[start] - time_s[frames[0]]
        if since > 2.0:
            break
        window = frames[(frames >= start) & (time_s[frames] <= time_s[start] + 0.8)]
        if time_s[window[-1]] - time_s[window[0]] < LEAST_STILL_S:
            break
        spread = float(np.ptp(azimuth_deg[window])) + 0.5 * since
        if spread < best:
            best, level = spread, float(np.median(azimuth_deg[window]))
    return level
