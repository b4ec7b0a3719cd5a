"""The board: its plan, its sheet at true scale, finding it in pictures."""

import subprocess
from pathlib import Path

import cv2
import numpy as np
import pytest

from calibration.lens.board import CORNERS, SQUARE_MM, SQUARES, board_cells, corners_mm, find_board
from calibration.lens.board_sheet import PAPERS, board_origin_mm, save_board_sheet
from measure.errors import DataError, InputError
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


@pytest.mark.parametrize("name", PAPERS)
def test_the_sheet_is_printed_to_true_scale(name: str, tmp_path: Path) -> None:
    paper = PAPERS[name]
    save_board_sheet(tmp_path / "board.pdf", paper)
    # Rendered with 127 dots an inch, that is 5 dots a millimetre.
    subprocess.run(
        ["pdftoppm", "-r", "127", "-gray", "-png", "-singlefile", "board.pdf", "page"],
        cwd=tmp_path,
        check=True,
    )
    page = cv2.imread(str(tmp_path / "page.png"), cv2.IMREAD_GRAYSCALE)
    assert page is not None
    height, width = page.shape
    assert (width / 5, height / 5) == pytest.approx((paper.width_mm, paper.height_mm), abs=0.3)
    view = find_board(np.asarray(page, dtype=np.uint8))
    assert view is not None
    assert len(view.ids) == CORNERS
    left, top = board_origin_mm(paper)
    expected = (view.board_mm()[:, :2] + [left, top]) * 5 - 0.5
    assert np.abs(view.points_px - expected).max() < 1.0
    # The ruler: the longest dark run below the board is 100 mm.
    below = page[round((top + SQUARES[1] * SQUARE_MM + 2) * 5) :] < 128
    assert max(longest_run(row) for row in below) / 5 == pytest.approx(100, abs=0.6)


def longest_run(row: np.ndarray) -> int:
    edges = np.flatnonzero(np.diff(np.concatenate([[0], row.astype(np.int8), [0]])))
    return int(np.max(edges[1::2] - edges[::2], initial=0))


def test_the_same_sheet_is_the_same_file(tmp_path: Path) -> None:
    for name in ("one.pdf", "two.pdf"):
        save_board_sheet(tmp_path / name)
    assert (tmp_path / "one.pdf").read_bytes() == (tmp_path / "two.pdf").read_bytes()


def test_sheets_that_cannot_be_written(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="must end in"):
        save_board_sheet(tmp_path / "board.txt")
    with pytest.raises(DataError, match="could not be written"):
        save_board_sheet(tmp_path / "gone" / "board.png")
