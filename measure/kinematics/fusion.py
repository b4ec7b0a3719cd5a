"""Several passes over the same frames made into one series, in the movement's unit."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from measure.domain.acquisition import Setup
from measure.domain.landmarks import FloatArray, IntArray, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.kinematics.angles import median_known, middle
from measure.kinematics.bias_correction import (
    elevation_correction,
    reach_correction,
    rotation_correction,
)
from measure.kinematics.elevation import elevation_of
from measure.kinematics.keypoints import Posture, posture_of
from measure.kinematics.reach import reach_of
from measure.kinematics.rotation import Rotation, rotation_of
from measure.kinematics.rotation_phases import Stances, find_stances, zero_level

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class Combined:
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
    stances, rotation
        Of external rotation: stances of the combined track and the passes' median rotation.
    """

    time_s: FloatArray
    per_pass: FloatArray
    value: FloatArray
    against_vertical: FloatArray | None = None
    stances: Stances | None = None
    rotation: Rotation | None = None


def combined_track(tracks: Sequence[Track]) -> Track:
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
        points_px=median_known(np.stack([track.points_px for track in tracks])),
        visibility=median_known(np.stack([track.visibility for track in tracks])),
        presence=median_known(np.stack([track.presence for track in tracks])),
        state=_most_favourable([track.state for track in tracks]),
        people=np.max([track.people for track in tracks], axis=0),
        width_px=first.width_px,
        height_px=first.height_px,
    )


def _most_favourable(states: Sequence[IntArray]) -> IntArray:
    """Return the lowest state of each frame: seen by one pass is seen."""
    return np.asarray(np.min(states, axis=0), dtype=np.int64)


def combine(
    tracks: Sequence[Track], movement: Movement, side: Side, view: View, rest: Mask, setup: Setup
) -> Combined:
    """Return the corrected series of passes over the same frames.

    Parameters
    ----------
    rest
        Shape (n,): the neutral frames before the trial.
    """
    if movement is Movement.EXTERNAL_ROTATION:
        return _rotation(tracks, side, setup)
    postures = [posture_of(track, side, setup.camera) for track in tracks]
    if movement is Movement.HAND_BEHIND_BACK:
        return _reach(postures, view, rest)
    return _elevation(postures, movement, view, rest)


def _elevation(postures: Sequence[Posture], movement: Movement, view: View, rest: Mask) -> Combined:
    correction = elevation_correction(movement, view)
    passes = [elevation_of(posture, movement, view, rest) for posture in postures]
    per_pass = np.stack(
        [correction(each.raw_deg, _number(middle(each.wrist_line_deg, rest))) for each in passes]
    )
    shift = median_known(np.stack([each.vertical_deg - each.raw_deg for each in passes]))
    value = median_known(per_pass)
    return Combined(
        time_s=postures[0].time_s, per_pass=per_pass, value=value, against_vertical=value + shift
    )


def _rotation(tracks: Sequence[Track], side: Side, setup: Setup) -> Combined:
    stances = find_stances(posture_of(combined_track(tracks), side, setup.camera))
    correction = rotation_correction()
    rotations, values = [], []
    for track in tracks:
        posture = posture_of(track, side, setup.camera)
        rotation = rotation_of(posture, stances.facing, stances.turned, setup)
        zero = zero_level(track.time_s, rotation.azimuth_deg, stances.turned)
        turn = rotation.turn_deg if np.isfinite(rotation.turn_deg) else 45.0
        value = correction(rotation.azimuth_deg, zero, turn)
        values.append(np.where(stances.turned, value, np.nan))
        rotations.append(rotation)
    return Combined(
        time_s=tracks[0].time_s,
        per_pass=np.stack(values),
        value=median_known(np.stack(values)),
        stances=stances,
        rotation=Rotation(
            azimuth_deg=median_known(np.stack([each.azimuth_deg for each in rotations])),
            turn_deg=float(np.median([each.turn_deg for each in rotations])),
            lean_deg=median_known(np.stack([each.lean_deg for each in rotations])),
        ),
    )


def _reach(postures: Sequence[Posture], view: View, rest: Mask) -> Combined:
    correction = reach_correction(view)
    values = []
    for posture in postures:
        separation = float(middle(posture.separation_px / posture.trunk_px, rest))
        values.append(correction(reach_of(posture).thumb, _number(separation)))
    return Combined(
        time_s=postures[0].time_s, per_pass=np.stack(values), value=median_known(np.stack(values))
    )


def _number(value: FloatArray | float) -> float:
    """Return 0 for an unknown term, so that an unknown correction changes nothing."""
    return float(value) if np.isfinite(value) else 0.0
