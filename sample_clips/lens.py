"""Virtual webcam: its place, and the projection of points in the room onto pixels.

The camera stands at -y and looks along +y; z is up. Pixels count from the top left corner of
the picture, x to the right and y downwards; the middle of the first pixel is at 0.5.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sample_clips.scenario import Camera

FloatArray = NDArray[np.float64]

#: Free border of a picture, as a share of its height.
_MARGIN = 0.03


@dataclass(frozen=True, slots=True, kw_only=True)
class VirtualLens:
    """A camera in place.

    Attributes
    ----------
    position
        Shape (3,), metres.
    axes
        Rows: right, down and forwards of the picture, shape (3, 3).
    focal_px
        Focal length in pixels of the undistorted picture.
    width, height
        Pixels.
    barrel
        See ``Camera.barrel``.
    """

    position: FloatArray
    axes: FloatArray
    focal_px: float
    width: int
    height: int
    barrel: float

    def project(self, points: FloatArray) -> FloatArray:
        """Pixels of points, (N, 3) to (N, 2); NaN behind the camera."""
        seen = (points - self.position) @ self.axes.T
        depth = np.where(seen[:, 2] > 0.05, seen[:, 2], np.nan)
        flat = seen[:, :2] / depth[:, None] * self.focal_px
        return self._distorted(flat) + np.array([self.width, self.height]) / 2

    def _distorted(self, flat: FloatArray) -> FloatArray:
        if self.barrel == 0:
            return flat
        half = self.width / 2
        bent = flat.copy()
        for _ in range(25):
            radius = (bent**2).sum(axis=1, keepdims=True) / half**2
            bent = flat / (1 + self.barrel * radius)
        return bent

    @property
    def zoom(self) -> float:
        """How much wider a straight rendering must see, so that bending fills the picture."""
        return 1 + self.barrel * (1 + (self.height / self.width) ** 2)

    @property
    def vertical_deg(self) -> float:
        """Vertical field of view of that rendering."""
        return float(2 * np.degrees(np.arctan(self.height / 2 * self.zoom / self.focal_px)))

    def source_pixels(self) -> NDArray[np.int64] | None:
        """Flat index into the straight rendering for each pixel, or None without distortion."""
        if self.barrel == 0:
            return None
        y, x = np.mgrid[0 : self.height, 0 : self.width] + 0.5
        x, y = x - self.width / 2, y - self.height / 2
        bend = (1 + self.barrel * (x**2 + y**2) / (self.width / 2) ** 2) / self.zoom
        column = np.clip(np.floor(x * bend + self.width / 2), 0, self.width - 1).astype(np.int64)
        row = np.clip(np.floor(y * bend + self.height / 2), 0, self.height - 1).astype(np.int64)
        return np.asarray(row * self.width + column, dtype=np.int64)


def place_lens(camera: Camera, aim_m: float) -> VirtualLens:
    """Stand a camera so that the middle of its picture shows a height at the person."""
    pitch, roll = np.radians(camera.pitch_deg), np.radians(camera.roll_deg)
    forward = np.array([0.0, np.cos(pitch), np.sin(pitch)])
    up = np.array([0.0, -np.sin(pitch), np.cos(pitch)])
    right = np.array([1.0, 0.0, 0.0])
    # What is seen turns clockwise when the camera turns the other way.
    turned_right = right * np.cos(roll) + up * np.sin(roll)
    turned_down = -(up * np.cos(roll) - right * np.sin(roll))
    height = aim_m - camera.distance_m * np.tan(pitch)
    return VirtualLens(
        position=np.array([-camera.aside_m, -camera.distance_m, height]),
        axes=np.array([turned_right, turned_down, forward]),
        focal_px=float(camera.width / 2 / np.tan(np.radians(camera.hfov_deg) / 2)),
        width=camera.width,
        height=camera.height,
        barrel=camera.barrel,
    )


def fitting_lens(camera: Camera, points: FloatArray) -> VirtualLens | None:
    """Aim so that points, shape (N, 3), lie about the middle of the picture's height.

    None when they do not fit with a small margin: the camera stands too near.
    """
    aim = float((points[:, 2].min() + points[:, 2].max()) / 2)
    for _ in range(6):
        lens = place_lens(camera, aim)
        pixels = lens.project(points)
        low, high = pixels.min(axis=0), pixels.max(axis=0)
        if np.isnan(low).any():
            return None
        off = (low[1] + high[1] - camera.height) / 2
        aim -= float(off) * camera.distance_m / lens.focal_px * 0.9
    margin = _MARGIN * camera.height
    size = np.array([camera.width, camera.height])
    fits = bool((low >= margin).all() and (high <= size - margin).all())
    return lens if fits else None
