"""Fusion: several inference passes over the same frames made into one series of values.

One function for each family of movements; :mod:`measure.trials.movement_model` says which
movement uses which.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, IntArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Direction
from measure.domain.tracks import Track
from measure.kinematics.angles import median_over, nanmedian
from measure.kinematics.bias_correction import reach_correction, rotation_correction
from measure.kinematics.elevation import elevation_of, hanging_part_deg
from measure.kinematics.keypoints import ArmKeypoints, arm_keypoints
from measure.kinematics.reach import reach_of
from measure.kinematics.rotation import ASKED_TURN_DEG, Rotation, rotation_of
from measure.kinematics.rotation_phases import RotationPhases, rotation_phases, zero_azimuth_deg

Mask = NDArray[np.bool_]


@dataclass(frozen=True, slots=True, kw_only=True)
class PassKeypoints:
    """The keypoints of one or more passes over the same frames.

    Attributes
    ----------
    per_pass
        Of every pass, in their order.
    median
        Of the landmark-wise median of the passes.
    """

    per_pass: tuple[ArmKeypoints, ...]
    median: ArmKeypoints


@dataclass(frozen=True, slots=True, kw_only=True)
class FusedSeries:
    """The values of p passes over n frames, in the movement's unit.

    Attributes
    ----------
    keypoints
        Of the passes' median.
    per_pass
        Shape (p, n): the value of each pass.
    value
        Shape (n,): their median.
    against_vertical
        Shape (n,): the value against the image's vertical, or None where it has no meaning.
    rotation_phases, rotation
        Of external rotation: phases of the median track and the passes' median rotation.
    """

    keypoints: ArmKeypoints
    per_pass: FloatArray
    value: FloatArray
    against_vertical: FloatArray | None = None
    rotation_phases: RotationPhases | None = None
    rotation: Rotation | None = None

    @property
    def time_s(self) -> FloatArray:
        """Times of the frames, shape (n,)."""
        return self.keypoints.time_s

    def frames(self, chosen: Mask) -> "FusedSeries":
        """Return the chosen frames only; `chosen` has shape (n,).

        What is known of a rotation belongs to the whole series and is left out.
        """
        vertical = self.against_vertical
        return replace(
            self,
            keypoints=self.keypoints.frames(chosen),
            per_pass=self.per_pass[:, chosen],
            value=self.value[chosen],
            against_vertical=None if vertical is None else vertical[chosen],
            rotation_phases=None,
            rotation=None,
        )


def keypoints_of_passes(tracks: Sequence[Track], task: MeasurementTask) -> PassKeypoints:
    """Return the keypoints of passes over the same frames, and of their median.

    Raises
    ------
    ValueError
        When the passes do not cover the same frames, or the lens profile was made at another
        image size.
    """
    side, camera = task.side, task.setup.camera
    median = median_track(tracks)
    per_pass = tuple(arm_keypoints(track, side, camera) for track in tracks)
    return PassKeypoints(
        per_pass=per_pass,
        median=per_pass[0] if len(per_pass) == 1 else arm_keypoints(median, side, camera),
    )


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


def fuse_elevation(passes: PassKeypoints, task: MeasurementTask, rest: Mask) -> FusedSeries:
    """Return the elevation angle, degrees.

    Parameters
    ----------
    rest
        Shape (n,): the neutral frames before the trial, from which extension is counted.
    """
    elevations = [
        elevation_of(keypoints, task.movement, task.known_view) for keypoints in passes.per_pass
    ]
    per_pass = np.stack([elevation.value_deg for elevation in elevations])
    if task.facts.direction is Direction.BACKWARDS:
        per_pass -= hanging_part_deg(elevations, per_pass, rest)
    shift = nanmedian(
        np.stack([elevation.vertical_deg - elevation.value_deg for elevation in elevations])
    )
    value = nanmedian(per_pass)
    return FusedSeries(
        keypoints=passes.median, per_pass=per_pass, value=value, against_vertical=value + shift
    )


def fuse_rotation(passes: PassKeypoints, task: MeasurementTask, rest: Mask) -> FusedSeries:
    """Return the corrected external rotation, degrees; NaN outside the turned phase.

    Parameters
    ----------
    rest
        Not used: the zero pose is found in the series itself.
    """
    phases = rotation_phases(passes.median)
    correction = rotation_correction()
    rotations, values = [], []
    for keypoints in passes.per_pass:
        rotation = rotation_of(keypoints, phases.facing, phases.turned, task.setup)
        zero = zero_azimuth_deg(keypoints.time_s, rotation.azimuth_deg, phases.turned)
        turn = rotation.turn_deg if np.isfinite(rotation.turn_deg) else ASKED_TURN_DEG
        value = correction(rotation.azimuth_deg, zero, turn)
        values.append(np.where(phases.turned, value, np.nan))
        rotations.append(rotation)
    return FusedSeries(
        keypoints=passes.median,
        per_pass=np.stack(values),
        value=nanmedian(np.stack(values)),
        rotation_phases=phases,
        rotation=Rotation(
            azimuth_deg=nanmedian(np.stack([rotation.azimuth_deg for rotation in rotations])),
            turn_deg=float(np.median([rotation.turn_deg for rotation in rotations])),
            lean_deg=nanmedian(np.stack([rotation.lean_deg for rotation in rotations])),
        ),
    )


def fuse_reach(passes: PassKeypoints, task: MeasurementTask, rest: Mask) -> FusedSeries:
    """Return the corrected height of the thumb on the trunk line, as a fraction of it.

    Parameters
    ----------
    rest
        Shape (n,): the neutral frames before the trial.
    """
    correction = reach_correction(task.known_view)
    values = []
    for keypoints in passes.per_pass:
        separation = float(median_over(keypoints.separation, rest))
        values.append(correction(reach_of(keypoints).thumb, _number(separation)))
    return FusedSeries(
        keypoints=passes.median, per_pass=np.stack(values), value=nanmedian(np.stack(values))
    )


def _number(value: FloatArray | float) -> float:
    """Return 0 for an unknown term, so that an unknown correction changes nothing."""
    return float(value) if np.isfinite(value) else 0.0
