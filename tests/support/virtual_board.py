"""A virtual camera that photographs the printed board: pictures with a known lens.

The picture is drawn by following each pixel's ray through the lens to the board, with OpenCV's
own undistortion, so it does not share code with what is tested.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import cv2
import numpy as np

from calibration.lens.board import CELL_MM, SQUARE_MM, SQUARES, BoardView, board_cells, corners_mm

#: Rays a pixel along each direction, averaged.
RAYS = 2
CELL_PX = 12
MARGIN_PX = 4 * CELL_PX


@dataclass(frozen=True)
class VirtualCamera:
    width: int
    height: int
    focal: float
    centre: tuple[float, float]
    distortion: tuple[float, float, float, float, float] = (0.0, 0.0, 0.0, 0.0, 0.0)

    @property
    def matrix(self) -> np.ndarray:
        return np.array(
            [[self.focal, 0, self.centre[0]], [0, self.focal, self.centre[1]], [0, 0, 1.0]]
        )


@dataclass(frozen=True)
class BoardPose:
    """Turn (rotation vector, radians) and place of the board's middle (mm before the camera)."""

    turn: tuple[float, float, float]
    middle: tuple[float, float, float]

    def rotation(self) -> np.ndarray:
        return np.asarray(cv2.Rodrigues(np.array(self.turn))[0])

    def shift(self) -> np.ndarray:
        half = np.array([SQUARES[0], SQUARES[1], 0]) * SQUARE_MM / 2
        return np.asarray(np.array(self.middle) - self.rotation() @ half)


@lru_cache(maxsize=1)
def board_texture() -> np.ndarray:
    """The board as grey values, CELL_PX pixels a cell, with a white margin."""
    cells = np.kron(board_cells(), np.ones((CELL_PX, CELL_PX)))
    grey = np.where(cells > 0, 20, 235).astype(np.uint8)
    return np.pad(grey, MARGIN_PX, constant_values=235)


@lru_cache(maxsize=4)
def rays(camera: VirtualCamera) -> np.ndarray:
    """Return the directions (X/Z, Y/Z) of RAYS x RAYS rays a pixel, by row; shape (n, 1, 2)."""
    offsets = (np.arange(RAYS) + 0.5) / RAYS - 0.5
    x = (np.arange(camera.width)[:, None] + offsets).ravel()
    y = (np.arange(camera.height)[:, None] + offsets).ravel()
    pixels = np.stack(np.meshgrid(x, y), axis=-1).reshape(-1, 1, 2).astype(np.float32)
    seen = cv2.undistortPoints(pixels, camera.matrix, np.array(camera.distortion))
    return np.asarray(seen, dtype=np.float32)


def photograph(camera: VirtualCamera, pose: BoardPose, *, noise: float = 0.0) -> np.ndarray:
    """Return a grey picture of the board before a grey wall, shape (height, width), uint8."""
    # The board's plane z = 0 maps to directions by [r1 r2 t]; its inverse maps back. The
    # board is tilted so little that no ray of the picture looks past its plane's horizon.
    rotation = pose.rotation()
    to_view = np.stack([rotation[:, 0], rotation[:, 1], pose.shift()], axis=1)
    to_texture = np.diag([CELL_PX / CELL_MM, CELL_PX / CELL_MM, 1.0])
    to_texture[:2, 2] = MARGIN_PX - 0.5
    place = cv2.perspectiveTransform(rays(camera), to_texture @ np.linalg.inv(to_view))
    size = (camera.height * RAYS, camera.width * RAYS)
    fine = cv2.remap(
        board_texture(),
        place[..., 0].reshape(size),
        place[..., 1].reshape(size),
        cv2.INTER_LINEAR,
        borderValue=(120.0,),
    )
    picture = cv2.resize(fine, (camera.width, camera.height), interpolation=cv2.INTER_AREA).astype(
        np.float32
    )
    if noise:
        picture += noise * grain(picture.shape)
    whole: np.ndarray = np.clip(np.rint(picture), 0, 255).astype(np.uint8)
    return whole


@lru_cache(maxsize=4)
def grain(shape: tuple[int, ...]) -> np.ndarray:
    return np.random.default_rng(1).standard_normal(shape, dtype=np.float32)


@lru_cache(maxsize=4)
def photographs(camera: VirtualCamera) -> tuple[np.ndarray, ...]:
    """Return pictures of the board all over the camera's picture, tilted in turn."""
    return tuple(photograph(camera, pose, noise=3) for pose in poses(camera, EVERYWHERE))


def true_view(camera: VirtualCamera, pose: BoardPose, error_px: float = 0.0) -> BoardView:
    """Return the corners inside the picture where the camera sees them, with Gaussian error."""
    points, _ = cv2.projectPoints(
        corners_mm(),
        np.array(pose.turn),
        pose.shift(),
        camera.matrix,
        np.array(camera.distortion),
    )
    points = points.reshape(-1, 2)
    random = np.random.default_rng(abs(hash(pose)) % 2**32)
    inside = ((points > 3) & (points < [camera.width - 4, camera.height - 4])).all(axis=1)
    points = points + random.normal(0, error_px, points.shape)
    return BoardView(ids=np.flatnonzero(inside), points_px=points[inside])


def poses(camera: VirtualCamera, places: Sequence[tuple[float, float]]) -> list[BoardPose]:
    """Return poses that show the board at places of the picture (-1..1), tilted in turn."""
    tilts = [(0.0, 0.0), (0.45, 0.1), (-0.4, 0.2), (0.1, 0.5), (0.1, -0.5), (0.3, -0.3)]
    placed = []
    for number, (across, down) in enumerate(places):
        tilt = tilts[number % len(tilts)]
        far = 1.35 * SQUARES[0] * SQUARE_MM * camera.focal / camera.width
        far *= 1.0 + 0.35 * (number % 3)
        half = np.array([camera.width, camera.height]) / 2
        x, y = np.array([across, down]) * half * far / camera.focal
        placed.append(
            BoardPose(turn=(tilt[0], tilt[1], 0.1 * (number % 5 - 2)), middle=(x, y, far))
        )
    return placed


#: Places that cover the picture.
EVERYWHERE = [
    (across, down)
    for down in (-0.55, 0.0, 0.55)
    for across in (-0.6, -0.2, 0.2, 0.6)
] + [(-0.75, -0.7), (0.75, -0.7), (-0.75, 0.7), (0.75, 0.7)]  # fmt: skip
#: The same and half as many again, as the guided capture asks for, and some to spare.
MORE = EVERYWHERE + [(0.8 * across, 0.8 * down) for across, down in EVERYWHERE[::-1]]

#: A usual webcam, its axis a little off the middle, with little distortion.
USUAL = VirtualCamera(640, 480, 500.0, (330.0, 232.0), (-0.05, 0.02, 0.001, -0.001, 0.0))
