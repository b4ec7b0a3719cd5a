"""A virtual room: points in metres before a camera that is rolled and tilted."""

from dataclasses import dataclass

import cv2
import numpy as np

from calibration.sight import Sight
from measure.setup import LensProfile


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

    def look(self, points: np.ndarray) -> np.ndarray:
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

    def sight(self) -> Sight:
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
        return Sight(width_px=self.width, height_px=self.height, lens=lens)

    def unknown(self) -> Sight:
        """Return the camera with its lens unknown."""
        return Sight(width_px=self.width, height_px=self.height)
