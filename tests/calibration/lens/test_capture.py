"""Collecting views: what is kept, what is said next, clips and folders of pictures."""

import struct
import zlib
from pathlib import Path

import cv2
import numpy as np
import pytest

from calibration.lens.capture import (
    ENOUGH_VIEWS,
    LensCapture,
    ViewOutcome,
    capture_clip,
    capture_folder,
)
from calibration.lens.fit import LensFitProblem
from measure.errors import ClipError, InputError
from measure.video.frame import Picture
from tests.support.virtual_board import MORE, USUAL, photograph, photographs, poses


def picture(grey: np.ndarray, size: tuple[int, int] = (640, 480)) -> Picture:
    return Picture(
        rgb=np.ascontiguousarray(np.repeat(grey[:, :, None], 3, axis=2)),
        width_px=size[0],
        height_px=size[1],
    )


def test_the_whole_way_from_pictures_to_a_profile() -> None:
    capture = LensCapture("garden camera")
    for grey in photographs(USUAL):
        first = capture.offer(picture(grey))
        assert first.shown is ViewOutcome.MOVING  # no picture before it shows the same place
        second = capture.offer(picture(grey))
        assert second.shown is ViewOutcome.KEPT, second.sentence
        third = capture.offer(picture(grey))
        assert third.shown is ViewOutcome.SAME_VIEW
    assert not third.enough
    assert third.sentence == "Please move or tilt the board: 16 of 24 views."
    more = iter(poses(USUAL, MORE)[16:])
    last = third
    while not last.enough:
        last = capture.offer(picture(photograph(USUAL, next(more), noise=3)), still=True)
    assert last.kept == ENOUGH_VIEWS
    assert last.sentence == "There are enough views. You can still add more."
    fit = capture.fit()
    assert fit.profile is not None
    assert fit.profile.camera_name == "garden camera"
    assert (fit.profile.width_px, fit.profile.height_px) == (640, 480)
    assert fit.profile.focal_px == pytest.approx((500, 500), rel=0.01)


def test_a_picture_shrunk_for_the_analysis_counts_in_its_full_size() -> None:
    capture = LensCapture("garden camera")
    small, full = LensCapture("a"), LensCapture("b")
    grey = photographs(USUAL)[5]
    small.offer(picture(grey), still=True)
    full.offer(picture(grey, (1280, 960)), still=True)
    # Twice the size: the centre of pixel x becomes 2 x + 0.5.
    assert full.views[0].points_px == pytest.approx(small.views[0].points_px * 2 + 0.5)
    assert capture.fit().faults == (LensFitProblem.FEW_VIEWS, LensFitProblem.UNCOVERED)


def test_what_is_said_step_by_step() -> None:
    capture = LensCapture("garden camera")
    blank = np.full((480, 640), 120, dtype=np.uint8)
    assert "Show the whole printed board" in capture.offer(picture(blank)).sentence
    photo = photographs(USUAL)[5]
    assert "still" in capture.offer(picture(photo)).sentence
    said = capture.offer(picture(photo))
    assert said.kept == 1
    assert said.view is not None
    assert not said.enough
    assert "Move the board to the upper left" in said.sentence
    other = capture.offer(picture(photo[:240, :320], (320, 240)))
    assert other.shown is ViewOutcome.OTHER_SIZE
    assert capture.left_out == 1


def test_a_board_that_moves_is_not_kept() -> None:
    capture = LensCapture("garden camera")
    photo = photographs(USUAL)[5]
    for step in range(5):
        moved = np.roll(photo, 4 * step, axis=1)
        assert capture.offer(picture(moved)).shown is ViewOutcome.MOVING
    assert capture.views == ()


def test_boards_held_squarely_are_asked_to_tilt() -> None:
    capture = LensCapture("garden camera")
    for grey in photographs(USUAL)[::6]:  # the untilted ones
        said = capture.offer(picture(grey), still=True)
    assert said.kept == 3
    assert said.sentence.startswith(("Tilt one side of the board", "Move the board"))


def test_a_clip_of_the_board(tmp_path: Path) -> None:
    path = tmp_path / "board.avi"
    writer = cv2.VideoWriter(str(path), cv2.VideoWriter.fourcc(*"MJPG"), 10.0, (640, 480))
    for grey in photographs(USUAL)[:9]:
        for _ in range(3):
            writer.write(picture(grey).rgb)
    writer.release()
    passed: list[float] = []
    capture = capture_clip(path, "garden camera", tick=passed.append)
    assert len(capture.views) == 9
    assert len(passed) == 27
    assert passed[-1] == pytest.approx(2.6, abs=0.01)
    mirrored = capture_clip(path, "garden camera", already_mirrored=True)
    assert mirrored.views == ()


def test_clips_that_cannot_be_read(tmp_path: Path) -> None:
    with pytest.raises(ClipError):
        capture_clip(tmp_path / "gone.mp4", "camera")


def test_a_folder_of_photographs(tmp_path: Path) -> None:
    for number, grey in enumerate(photographs(USUAL)):
        cv2.imwrite(str(tmp_path / f"{number:02}.png"), grey)
    (tmp_path / "notes.txt").write_text("not a picture", encoding="utf-8")
    capture = capture_folder(tmp_path, "garden camera")
    assert len(capture.views) == 16
    assert capture.fit().profile is not None


def png_of(side: int) -> bytes:
    """A picture file of a few bytes whose header says side x side pixels."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        check = zlib.crc32(kind + data)
        return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", check)

    header = struct.pack(">IIBBBBB", side, side, 8, 2, 0, 0, 0)
    parts = chunk(b"IHDR", header) + chunk(b"IDAT", b"") + chunk(b"IEND", b"")
    return b"\x89PNG\r\n\x1a\n" + parts


@pytest.mark.parametrize(
    ("name", "content", "part"),
    [
        ("notes.txt", b"words", "contains no pictures"),
        ("one.png", b"\x89PNG\r\n\x1a\n", "cannot be read"),
        ("one.jpg", b"", "cannot be read"),
        ("wide.png", png_of(50_000), "is too large"),
        ("wide.png", png_of(8_000), "is too large"),
    ],
)
def test_folders_that_cannot_be_used(tmp_path: Path, name: str, content: bytes, part: str) -> None:
    (tmp_path / name).write_bytes(content)
    with pytest.raises(InputError, match=part):
        capture_folder(tmp_path, "camera")


def test_a_folder_that_is_none(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot be read"):
        capture_folder(tmp_path / "gone", "camera")
    for number in range(201):
        (tmp_path / f"{number}.png").touch()
    with pytest.raises(InputError, match="holds 201 pictures"):
        capture_folder(tmp_path, "camera")
