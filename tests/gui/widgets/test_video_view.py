"""The picture and the figure over it go through one transform, mirrored or not, on any screen."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray
from PySide6.QtGui import QColor, QImage
from PySide6.QtWidgets import QApplication

from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.video_view import VideoView, image_of
from measure.domain.landmarks import LANDMARKS, Landmark, Side
from measure.domain.movements import Movement
from measure.live.events import LiveFrame, Phase


def frame(picture: NDArray[np.uint8], points: NDArray[np.float64] | None = None) -> LiveFrame:
    return LiveFrame(picture=picture, frame_id=1, time_s=0, phase=Phase.MOVE, points_px=points)


@pytest.fixture
def view(qapp: QApplication) -> VideoView:
    appearance = Appearance(Scheme.LIGHT)
    made = VideoView(appearance)
    made.resize(700, 500)
    return made


@pytest.mark.parametrize("width", range(638, 645))
def test_pictures_of_any_width_arrive_whole(width: int) -> None:
    chance = np.random.default_rng(width)
    picture = chance.integers(0, 256, (33, width, 3), dtype=np.uint8)
    image = image_of(frame(picture))
    for x, y in ((0, 0), (width - 1, 32), (width // 2, 17)):
        assert QColor(image.pixel(x, y)).getRgb()[:3] == tuple(picture[y, x])


def test_the_image_does_not_change_when_the_memory_is_used_again() -> None:
    picture = np.full((40, 60, 3), 200, dtype=np.uint8)
    image = image_of(frame(picture))
    picture[:] = 0
    assert QColor(image.pixel(30, 20)).getRgb()[:3] == (200, 200, 200)


def middle_of(image: QImage, wanted: tuple[int, int, int]) -> tuple[float, float]:
    """Return the mean place of the pixels of a colour."""
    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(plain.constBits(), np.uint8).reshape(plain.height(), -1)
    pixels = rows[:, : plain.width() * 3].reshape(plain.height(), plain.width(), 3).astype(int)
    ys, xs = np.nonzero(np.abs(pixels - wanted).max(axis=2) < 40)
    assert len(xs), "the dot is not in the picture"
    return float(xs.mean()), float(ys.mean())


@pytest.mark.parametrize("mirrored", [False, True])
@pytest.mark.parametrize("size", [(700, 500), (300, 640), (900, 300)])
@pytest.mark.parametrize("shape", [(720, 1280), (1280, 720), (480, 640)])
def test_a_dot_of_the_picture_and_its_landmark_fall_on_one_place(
    view: VideoView, size: tuple[int, int], shape: tuple[int, int], mirrored: bool
) -> None:
    view.resize(*size)
    view.set_mirrored(mirrored)
    picture = np.zeros((*shape, 3), dtype=np.uint8)
    x, y = shape[1] * 0.3, shape[0] * 0.6
    half = max(shape) // 60
    picture[int(y) - half : int(y) + half + 1, int(x) - half : int(x) + half + 1] = (255, 0, 255)
    view.show_frame(frame(picture))
    transform = view.transform()
    assert transform is not None
    expected = transform.points(np.array([float(int(x)), float(int(y))]))
    found = middle_of(view.grab().toImage(), (255, 0, 255))
    assert found == pytest.approx(tuple(expected), abs=1.5)


def test_the_figure_is_drawn_on_the_landmarks(view: VideoView) -> None:
    picture = np.zeros((360, 640, 3), dtype=np.uint8)
    points = np.full((LANDMARKS, 2), np.nan)
    points[Landmark.LEFT_SHOULDER] = (300, 100)
    points[Landmark.LEFT_ELBOW] = (400, 100)
    points[Landmark.LEFT_WRIST] = (500, 100)
    view.measure_arm(Movement.ABDUCTION, Side.LEFT)
    view.show_frame(frame(picture, points))
    transform = view.transform()
    assert transform is not None
    x, y = transform.points(np.array([350.0, 100.0])).round().astype(int)
    shown = QColor(view.grab().toImage().pixel(int(x), int(y)))
    assert shown.blue() > 150
    assert shown.blue() > shown.red()


def test_without_a_movement_or_points_no_figure_is_drawn(view: VideoView) -> None:
    picture = np.zeros((360, 640, 3), dtype=np.uint8)
    view.measure_arm(None, Side.LEFT)
    view.show_frame(frame(picture, np.full((LANDMARKS, 2), 100.0)))
    transform = view.transform()
    assert transform is not None
    x, y = transform.points(np.array([100.0, 100.0])).round().astype(int)
    assert QColor(view.grab().toImage().pixel(int(x), int(y))).getRgb()[:3] == (0, 0, 0)


def test_words_are_written_after_mirroring(view: VideoView) -> None:
    """The name of the arm stands at the right of the shoulder in both."""
    picture = np.zeros((360, 640, 3), dtype=np.uint8)
    points = np.full((LANDMARKS, 2), np.nan)
    points[Landmark.LEFT_SHOULDER] = (320, 180)
    view.measure_arm(Movement.ABDUCTION, Side.LEFT)
    whites = []
    for mirrored in (False, True):
        view.set_mirrored(mirrored)
        view.show_frame(frame(picture, points))
        whites.append(middle_of(view.grab().toImage(), (255, 255, 255)))
    transform = view.transform()
    assert transform is not None
    shoulder_x = float(transform.points(np.array([320.0, 180.0]))[0])
    assert all(x > shoulder_x for x, _ in whites)
    assert whites[0] == pytest.approx(whites[1], abs=3)


def test_an_empty_view_says_why(view: VideoView) -> None:
    view.show_empty("The camera was unplugged.")
    assert view.transform() is None
    assert not view.grab().isNull()


_SCREEN_TEST = """
import sys
import numpy as np
from PySide6.QtWidgets import QApplication
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.video_view import VideoView
from measure.live.events import LiveFrame, Phase
application = QApplication([])
view = VideoView(Appearance(Scheme.LIGHT))
view.resize(500, 401)
view.set_mirrored(True)
picture = np.zeros((480, 640, 3), dtype=np.uint8)
picture[300:311, 100:111] = (255, 0, 255)
view.show_frame(LiveFrame(picture=picture, frame_id=1, time_s=0, phase=Phase.MOVE))
grabbed = view.grab()
ratio = grabbed.devicePixelRatio()
image = grabbed.toImage()
places = [
    ((x + 0.5) / ratio, (y + 0.5) / ratio)
    for y in range(image.height())
    for x in range(image.width())
    if image.pixelColor(x, y).red() > 200 and image.pixelColor(x, y).green() < 60
]
wanted = view.transform().points(np.array([105.0, 305.0]))
found = np.mean(places, axis=0)
assert np.abs(found - wanted).max() <= 1.0, (found, wanted, ratio)
print(ratio)
"""


@pytest.mark.parametrize("factor", ["1", "1.25", "1.5", "2"])
def test_the_transform_holds_on_fine_screens(factor: str) -> None:
    done = subprocess.run(
        [sys.executable, "-c", _SCREEN_TEST],
        env={**os.environ, "QT_SCALE_FACTOR": factor, "QT_QPA_PLATFORM": "offscreen"},
        cwd=Path(__file__).parents[3],
        capture_output=True,
        text=True,
        timeout=60,
    )
    assert done.returncode == 0, done.stderr
    assert float(done.stdout) == float(factor)
