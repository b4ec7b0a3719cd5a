"""The printed sheet at true scale."""

import subprocess
from pathlib import Path

import cv2
import numpy as np
import pytest

from calibration.lens.board import CORNERS, SQUARE_MM, SQUARES, find_board
from calibration.lens.board_sheet import PAPERS, board_origin_mm, save_board_sheet
from measure.errors import DataError, InputError


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
    with pytest.raises(DataError, match="cannot be written"):
        save_board_sheet(tmp_path / "gone" / "board.png")
