"""Several passes over the same frames made into one series, in the movement's unit."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.acquisition import Setup
from measure.domain.landmarks import FloatArray, IntArray, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.kinematics.angles import median_over, nanmedian
from measure.kinematics.bias_correction import (
    elevation_correction,
    reach_correction,
    rotation_correction,
)
from measure.kinematics.elevation import elevation_of
from measure.kinematics.keypoints import ArmKeypoints, arm_keypoints
from measure.kinematics.reach import reach_of
from measure.kinematics.rotation import Rotation, rotation_of
from measure.kinematics.rotation_phases import RotationPhases, rotation_phases, zero_azimuth_deg

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class FusedSeries:
    """What p passes over n frames say together.

    Attributes
    ----------
    time_s
        Shape (n,).
    per_pass
        Shape (p, n): the corrected value of each pass.
    value
        Shape (n,): their median.
    against_vertical
        Shape (n,): the value against the picture's vertical, or None where it has no sense.
    rotation_phases, rotation
        Of external rotation: stances of the combined track and the passes' median rotation.
    """

    time_s: FloatArray
    per_pass: FloatArray
    value: FloatArray
    against_vertical: FloatArray | None = None
    rotation_phases: RotationPhases | None = None
    rotation: Rotation | None = None


def median_track(tracks: Sequence[Track]) -> Track:
    """Return the landmark-wise median of passes over the same frames.

    Raises
    ------
    ValueError
        When the passes do not cover the same frames.
    """
    first = tracks[0]
    if any(not np.array_equal(first.time_s, track.time_s) for track in tracks[1:]):
        raise ValueError("the passes do not cover the same frames")
    if len(tracks) == 1:
        return first
    return Track(
        time_s=first.time_s.copy(),
        points_px=nanmedian(np.stack([track.points_px for track in tracks])),
        visibility=nanmedian(np.stack([track.visibility for track in tracks])),
        presence=nanmedian(np.stack([track.presence for track in tracks])),
        state=_most_favourable([track.state for track in tracks]),
        people=np.max([track.people for track in tracks], axis=0),
        width_px=first.width_px,
        height_px=first.height_px,
    )


def _most_favourable(states: Sequence[IntArray]) -> IntArray:
    """Return the lowest state of each frame: seen by one pass is seen."""
    return np.asarray(np.min(states, axis=0), dtype=np.int64)


def fuse_passes(
    tracks: Sequence[Track], movement: Movement, side: Side, view: View, rest: Mask, setup: Setup
) -> FusedSeries:
    """Return the corrected series of passes over the same frames.

    Parameters
    ----------
    rest
        Shape (n,): the neutral frames before the trial.
    """
    if movement is Movement.EXTERNAL_ROTATION:
        return _rotation(tracks, side, setup)
    postures = [arm_keypoints(track, side, setup.camera) for track in tracks]
    if movement is Movement.HAND_BEHIND_BACK:
        return _reach(postures, view, rest)
    return _elevation(postures, movement, view, rest)


def _elevation(
    postures: Sequence[ArmKeypoints], movement: Movement, view: View, rest: Mask
) -> FusedSeries:
    correction = elevation_correction(movement, view)
    passes = [elevation_of(posture, movement, view, rest) for posture in postures]
    per_pass = np.stack(
        [
            correction(each.raw_deg, _number(median_over(each.wrist_line_deg, rest)))
            for each in passes
        ]
    )
    shift = nanmedian(np.stack([each.vertical_deg - each.raw_deg for each in passes]))
    value = nanmedian(per_pass)
    return FusedSeries(
        time_s=postures[0].time_s, per_pass=per_pass, value=value, against_vertical=value + shift
    )


def _rotation(tracks: Sequence[Track], side: Side, setup: Setup) -> FusedSeries:
    phases = rotation_phases(arm_keypoints(median_track(tracks), side, setup.camera))
    correction = rotation_correction()
    rotations, values = [], []
    for track in tracks:
        posture = arm_keypoints(track, side, setup.camera)
        rotation = rotation_of(posture, phases.facing, phases.turned, setup)
        zero = zero_azimuth_deg(track.time_s, rotation.azimuth_deg, phases.turned)
        turn = rotation.turn_deg if np.isfinite(rotation.turn_deg) else 45.0
        value = correction(rotation.azimuth_deg, zero, turn)
        values.append(np.where(phases.turned, value, np.nan))
        rotations.append(rotation)
    return FusedSeries(
        time_s=tracks[0].time_s,
        per_pass=np.stack(values),
        value=nanmedian(np.stack(values)),
        rotation_phases=phases,
        rotation=Rotation(
            azimuth_deg=nanmedian(np.stack([each.azimuth_deg for each in rotations])),
            turn_deg=float(np.median([each.turn_deg for each in rotations])),
            lean_deg=nanmedian(np.stack([each.lean_deg for each in rotations])),
        ),
    )


def _reach(postures: Sequence[ArmKeypoints], view: View, rest: Mask) -> FusedSeries:
    correction = reach_correction(view)
    values = []
    for posture in postures:
        separation = float(median_over(posture.separation_px / posture.trunk_px, rest))
        values.append(correction(reach_of(posture).thumb, _number(separation)))
    return FusedSeries(
        time_s=postures[0].time_s, per_pass=np.stack(values), value=nanmedian(np.stack(values))
    )


def _number(value: FloatArray | float) -> float:
    """Return 0 for an unknown term, so that an unknown correction changes nothing."""
    return float(value) if np.isfinite(value) else 0.0
