"""Arm keypoints: named places of trunk and arms in each frame, in plane coordinates."""

from dataclasses import dataclass, fields, replace

import numpy as np
from numpy.typing import NDArray

from measure.domain.acquisition import UNKNOWN_CAMERA, CameraSetup
from measure.domain.landmarks import FloatArray, Landmark, Side, arm
from measure.domain.tracks import Track
from measure.kinematics.angles import corner_deg, length, plane_from_pixels
from measure.kinematics.camera_geometry import undistort_and_level


@dataclass(frozen=True, slots=True, kw_only=True)
class ArmKeypoints:
    """Named places of one person over n frames, each of shape (n, 2), pixels, y up.

    "Other" is the arm that is not measured; `hand` is the middle of the three landmarks of the
    hand. Missing is NaN.

    Attributes
    ----------
    track
        What they were read from: pixels of the real image, visibility and states.
    side
        The measured arm.
    """

    track: Track
    side: Side
    shoulder: FloatArray
    elbow: FloatArray
    wrist: FloatArray
    thumb: FloatArray
    hand: FloatArray
    other_shoulder: FloatArray
    hip: FloatArray
    other_hip: FloatArray
    ear: FloatArray
    other_ear: FloatArray
    nose: FloatArray

    def __len__(self) -> int:
        return len(self.track)

    @property
    def time_s(self) -> FloatArray:
        """Times of the frames, shape (n,)."""
        return self.track.time_s

    @property
    def mid_shoulder(self) -> FloatArray:
        return (self.shoulder + self.other_shoulder) / 2

    @property
    def mid_hip(self) -> FloatArray:
        return (self.hip + self.other_hip) / 2

    @property
    def trunk(self) -> FloatArray:
        """From mid-hip to mid-shoulder, shape (n, 2)."""
        return self.mid_shoulder - self.mid_hip

    @property
    def trunk_px(self) -> FloatArray:
        """Length of the trunk line, shape (n,)."""
        return length(self.trunk)

    @property
    def separation_px(self) -> FloatArray:
        """From the left shoulder to the right one along x, shape (n,).

        Negative when the camera sees the front, positive when it sees the back.
        """
        across = (self.shoulder - self.other_shoulder)[:, 0]
        return across if self.side is Side.RIGHT else -across

    @property
    def separation(self) -> FloatArray:
        """The shoulders' signed separation over the trunk's length, frame by frame, shape (n,)."""
        return self.separation_px / self.trunk_px

    @property
    def elbow_deg(self) -> FloatArray:
        """The measured arm's apparent elbow angle in the picture, shape (n,), 180 straight."""
        return corner_deg(self.shoulder, self.elbow, self.wrist)

    def frames(self, chosen: NDArray[np.bool_]) -> "ArmKeypoints":
        """Return the keypoints of the chosen frames only; `chosen` has shape (n,)."""
        points = {name: getattr(self, name)[chosen] for name in _POINTS}
        return replace(self, track=self.track.frames(chosen), **points)


_POINTS = tuple(field.name for field in fields(ArmKeypoints) if field.name not in ("track", "side"))


def arm_keypoints(track: Track, side: Side, camera: CameraSetup = UNKNOWN_CAMERA) -> ArmKeypoints:
    """Return the keypoints of a track, with `side` as the measured arm.

    Parameters
    ----------
    camera
        Where its lens or level is known, keypoints are those that an ideal, level camera sees.

    Raises
    ------
    ValueError
        When the lens profile was made at another image size.
    """
    size = np.array([track.width_px, track.height_px], dtype=np.float64)
    points = plane_from_pixels(undistort_and_level(track.points_px, camera, size))
    own, other = arm(side), arm(side.other)
    return ArmKeypoints(
        track=track,
        side=side,
        shoulder=points[:, own.shoulder],
        elbow=points[:, own.elbow],
        wrist=points[:, own.wrist],
        thumb=points[:, own.thumb],
        hand=points[:, [own.thumb, own.index, own.pinky]].mean(axis=1),
        other_shoulder=points[:, other.shoulder],
        hip=points[:, own.hip],
        other_hip=points[:, other.hip],
        ear=points[:, own.ear],
        other_ear=points[:, other.ear],
        nose=points[:, Landmark.NOSE],
    )
