"""The board: its geometry and its detection."""

import numpy as np
import pytest

from calibration.lens.board import CORNERS, board_cells, corners_mm, find_board
from tests.support.virtual_board import (
    EVERYWHERE,
    VirtualCamera,
    board_texture,
    photograph,
    poses,
    true_view,
)


def test_the_plan() -> None:
    assert CORNERS == 28
    assert corners_mm()[0] == pytest.approx([32, 32, 0])
    assert corners_mm()[7] == pytest.approx([32, 64, 0])
    assert corners_mm()[-1] == pytest.approx([224, 128, 0])
    cells = board_cells()
    assert cells.shape == (40, 64)
    assert cells[:8, :8].all()  # the first square is black
    assert not cells[0, 8:16].any()  # the white square beside it has a white edge


def test_the_board_is_found_where_it_is() -> None:
    texture = board_texture()
    view = find_board(texture)
    assert view is not None
    assert view.ids.tolist() == list(range(CORNERS))
    # 12 pixels a cell of 4 mm, 48 pixels of margin, pixel centres at whole numbers.
    expected = view.board_mm()[:, :2] * 3 + 48 - 0.5
    assert np.abs(view.points_px - expected).max() < 0.1


def test_a_tilted_board_is_found_within_half_a_pixel() -> None:
    camera = VirtualCamera(640, 480, 500.0, (330.0, 232.0))
    pose = poses(camera, EVERYWHERE)[5]
    view = find_board(photograph(camera, pose, noise=3))
    assert view is not None
    truth = true_view(camera, pose)
    where = dict(zip(truth.ids.tolist(), truth.points_px, strict=True))
    errors = [
        float(np.hypot(*(where[corner] - point)))
        for corner, point in zip(view.ids.tolist(), view.points_px, strict=True)
    ]
    assert len(errors) > 20
    assert np.median(errors) < 0.1
    assert max(errors) < 0.5


@pytest.mark.parametrize(
    "picture",
    [
        np.full((480, 640), 120, dtype=np.uint8),
        np.full((480, 640, 3), 255, dtype=np.uint8),
        np.random.default_rng(0).integers(0, 255, (240, 320, 3)).astype(np.uint8),
        np.ascontiguousarray(board_texture()[:, ::-1]),  # mirrored: other markers, or none
    ],
)
def test_no_board(picture: np.ndarray) -> None:
    assert find_board(picture) is None
