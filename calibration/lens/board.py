"""ChArUco board for lens calibration: its geometry, and its detection in an image.

OpenCV is imported only when the board is drawn or detected. The sheet to print is in
:mod:`calibration.lens.board_sheet`.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray, IntArray
from measure.video.frame import PixelArray

#: Squares across and down: few and large, so that a webcam of 640 x 480 resolves the markers
#: with the board filling a third of the image; it fits both A4 and US Letter. [project]
SQUARES = (8, 5)
#: Side of a square, millimetres. [project]
SQUARE_MM = 32.0
#: Side of a marker, millimetres. [project]
MARKER_MM = 24.0
#: Side of a cell, millimetres; a marker has 6 along a side with its black border, and the same
#: cell divides the squares and their margins evenly. [technical]
CELL_MM = 4.0
#: Number of inner corners between squares, which are detected. [technical]
CORNERS = (SQUARES[0] - 1) * (SQUARES[1] - 1)


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardView:
    """Corners of the board detected in one image.

    Attributes
    ----------
    ids
        Number of each corner on the board, 0..CORNERS - 1, shape (n,).
    points_px
        Position of each corner, pixels of the upright image, shape (n, 2).
    """

    ids: IntArray
    points_px: FloatArray

    def board_mm(self) -> FloatArray:
        """Return the same corners on the board, shape (n, 3), millimetres, z = 0."""
        return corners_mm()[self.ids]


def corners_mm() -> FloatArray:
    """Return all corners on the board by their number, shape (CORNERS, 3), millimetres.

    From the board's upper left edge, x to the right and y down; z is 0.
    """
    across, down = np.meshgrid(np.arange(1, SQUARES[0]), np.arange(1, SQUARES[1]))
    flat = np.stack([across.ravel(), down.ravel(), 0 * down.ravel()], axis=-1)
    return flat.astype(np.float64) * SQUARE_MM


def find_board(picture: PixelArray) -> BoardView | None:
    """Return the corners detected in an image, or None where there are fewer than four.

    Parameters
    ----------
    picture
        Shape (height, width) grey or (height, width, 3) colour, upright, not mirrored: a
        mirrored marker is another marker or none.
    """
    import cv2

    grey = picture if picture.ndim == 2 else cv2.cvtColor(picture, cv2.COLOR_RGB2GRAY)
    corners, ids, _, _ = cv2.aruco.CharucoDetector(_plan()).detectBoard(np.asarray(grey))
    if ids is None or len(ids) < 4:
        return None
    return BoardView(
        ids=np.asarray(ids, dtype=np.int64).ravel(),
        points_px=np.asarray(corners, dtype=np.float64).reshape(-1, 2),
    )


def board_cells() -> NDArray[np.bool_]:
    """Return the pattern, True for black, in cells of CELL_MM; shape (rows, columns)."""
    cells = round(SQUARE_MM / CELL_MM)
    size = (SQUARES[0] * cells, SQUARES[1] * cells)
    return np.asarray(_plan().generateImage(size, marginSize=0, borderBits=1)) < 128


def _plan() -> Any:
    import cv2

    dictionary = cv2.aruco.getPredefinedDictionary(cv2.aruco.DICT_4X4_50)
    return cv2.aruco.CharucoBoard(SQUARES, SQUARE_MM, MARKER_MM, dictionary)
