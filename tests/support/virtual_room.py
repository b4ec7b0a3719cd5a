"""A virtual room: points in metres before a camera that is rolled and tilted."""

from collections.abc import Mapping
from dataclasses import dataclass

import cv2
import numpy as np

from calibration.placement.viewpoint import PinholeView
from measure.domain.acquisition import LensProfile
from measure.domain.landmarks import LANDMARKS, Landmark, Side, arm
from measure.domain.tracks import Track


@dataclass(frozen=True, kw_only=True)
class Room:
    """Room axes: x right, y up, z away from the camera; the camera at (0, height_m, 0).

    It is turned clockwise by roll and upwards by tilt.
    """

    roll_deg: float = 0.0
    tilt_deg: float = 0.0
    height_m: float = 1.0
    width: int = 1280
    height: int = 720
    focal: float = 1000.0
    centre: tuple[float, float] = (639.5, 359.5)
    distortion: tuple[float, float, float, float, float] = (0.0, 0.0, 0.0, 0.0, 0.0)

    def project(self, points: np.ndarray) -> np.ndarray:
        """Return where points of the room, shape (n, 3), are seen; (n, 2), pixels, y down."""
        roll, tilt = np.radians(self.roll_deg), np.radians(self.tilt_deg)
        forward = np.array([0, np.sin(tilt), np.cos(tilt)])
        up = np.array([0, np.cos(tilt), -np.sin(tilt)])
        right = np.array([1.0, 0, 0])
        # Turned clockwise, the camera's right side goes down and its top goes right.
        turned_right = np.cos(roll) * right - np.sin(roll) * up
        turned_up = np.sin(roll) * right + np.cos(roll) * up
        axes = np.stack([turned_right, -turned_up, forward])
        seen = (np.asarray(points, dtype=np.float64) - [0, self.height_m, 0]) @ axes.T
        matrix = np.array(
            [[self.focal, 0, self.centre[0]], [0, self.focal, self.centre[1]], [0, 0, 1.0]]
        )
        pixels, _ = cv2.projectPoints(
            seen, np.zeros(3), np.zeros(3), matrix, np.array(self.distortion)
        )
        return np.asarray(pixels, dtype=np.float64).reshape(-1, 2)

    def view(self) -> PinholeView:
        """Return the camera with its lens known."""
        lens = LensProfile(
            camera_name="virtual",
            width_px=self.width,
            height_px=self.height,
            focal_px=(self.focal, self.focal),
            centre_px=self.centre,
            distortion=self.distortion,
            reprojection_px=0.1,
            views=20,
        )
        return PinholeView(width_px=self.width, height_px=self.height, lens=lens)

    def unknown(self) -> PinholeView:
        """Return the camera with its lens unknown."""
        return PinholeView(width_px=self.width, height_px=self.height)


def standing(
    room: Room,
    *,
    distance_m: float = 3.0,
    stature_m: float = 1.72,
    turn_deg: float = 0.0,
    arms_deg: float = 0.0,
    beside_m: float = 0.0,
    shares: Mapping[Landmark, float] | None = None,
    error_px: float = 0.0,
    frames: int = 8,
) -> Track:
    """A person standing plumb, as seen in the room; turned from facing the camera.

    Positive turns bring the person's left side to the camera. The arms lie in the frontal
    plane, `arms_deg` out from hanging. The trunk is 0.289 statures, the shoulders 0.196 wide,
    upper arm 0.17, forearm 0.15.
    """
    half, up = 0.098, (0.517, 0.806)
    out, down = np.sin(np.radians(arms_deg)), np.cos(np.radians(arms_deg))
    own = {}
    for sign, side in ((1.0, Side.LEFT), (-1.0, Side.RIGHT)):
        marks = arm(side)
        leg = {"ankle": 0.067, "knee": 0.285}
        own[marks.hip] = (sign * 0.06, up[0])
        own[marks.shoulder] = (sign * half, up[1])
        own[marks.elbow] = (sign * (half + 0.17 * out), up[1] - 0.17 * down)
        own[marks.wrist] = (sign * (half + 0.32 * out), up[1] - 0.32 * down)
        own[Landmark[f"{side.name}_EYE"]] = (sign * 0.02, 0.936)
        for part, high in leg.items():
            own[Landmark[f"{side.name}_{part.upper()}"]] = (sign * 0.05, high)
    turn = np.radians(turn_deg)
    points = np.full((LANDMARKS, 3), np.nan)
    for mark, (left, high) in own.items():
        high = (shares or {}).get(mark, high)
        # Facing the camera, the person's left is to the right of the picture.
        points[mark] = (
            beside_m + left * stature_m * np.cos(turn),
            high * stature_m,
            distance_m - left * stature_m * np.sin(turn),
        )
    finite = np.isfinite(points).all(axis=1)
    pixels = np.full((frames, LANDMARKS, 2), np.nan)
    random = np.random.default_rng(7)
    pixels[:, finite] = room.project(points[finite]) + random.normal(
        0, error_px, (frames, int(finite.sum()), 2)
    )
    return Track(
        time_s=np.arange(frames) / 7.5,
        points_px=pixels,
        visibility=np.ones((frames, LANDMARKS)),
        presence=np.ones((frames, LANDMARKS)),
        state=np.zeros(frames, dtype=np.int64),
        people=np.ones(frames, dtype=np.int64),
        width_px=room.width,
        height_px=room.height,
    )
