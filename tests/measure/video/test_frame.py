"""The frame gate: every frame becomes one kind of picture, or is refused in words."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from measure.errors import InputError
from measure.video.frame import FrameNormalizer, Picture, check_size

HEIGHT, WIDTH = 40, 60


def marked() -> NDArray[np.uint8]:
    """Blue left half, red right half, green upper left corner; blue-green-red order."""
    frame = np.zeros((HEIGHT, WIDTH, 3), dtype=np.uint8)
    frame[:, : WIDTH // 2, 0] = 250
    frame[:, WIDTH // 2 :, 2] = 250
    frame[:10, :10] = (0, 250, 0)
    return frame


def test_colours_arrive_as_red_green_blue() -> None:
    rgb = FrameNormalizer().normalize(marked()).rgb
    assert rgb[20, 5].tolist() == [0, 0, 250]
    assert rgb[20, -5].tolist() == [250, 0, 0]
    assert rgb[2, 2].tolist() == [0, 250, 0]


@pytest.mark.parametrize(
    "view",
    [
        lambda frame: frame[:, ::-1],
        lambda frame: frame[::-1],
        lambda frame: frame[3:35, 5:50],
        lambda frame: np.rot90(frame),
        lambda frame: np.asfortranarray(frame),
        lambda frame: np.repeat(frame, 2, axis=0)[::2],
    ],
    ids=["mirrored", "upside down", "cropped", "turned", "column order", "every second row"],
)
def test_views_are_copied_to_memory_of_their_own(view) -> None:  # type: ignore[no-untyped-def]
    frame = view(marked())
    rgb = FrameNormalizer().normalize(frame).rgb
    assert rgb.flags.c_contiguous
    assert not np.shares_memory(rgb, frame)
    assert np.array_equal(rgb, frame[:, :, ::-1])


@pytest.mark.parametrize(
    "frame",
    [
        np.full((40, 60), 128, dtype=np.uint8),
        np.full((40, 60, 1), 128, dtype=np.uint8),
        np.full((40, 60, 4), 128, dtype=np.uint8),
        np.full((40, 60, 3), 128 << 8, dtype=np.uint16),
        np.full((40, 60), 128 << 8, dtype=np.uint16),
        np.full((40, 60, 3), 128 / 255, dtype=np.float32),
        np.full((40, 60, 4), 128 / 255, dtype=np.float64),
    ],
    ids=lambda frame: f"{frame.dtype}{frame.shape}",
)
def test_all_usual_forms_become_one(frame: NDArray[np.float64]) -> None:
    rgb = FrameNormalizer().normalize(frame).rgb
    assert rgb.dtype == np.uint8
    assert rgb.shape == (40, 60, 3)
    assert (rgb == 128).all()


def test_float_frames_are_bounded_and_holes_are_black() -> None:
    frame = np.full((40, 60), 7.0)
    frame[0, 0] = np.nan
    frame[0, 1] = -3.0
    rgb = FrameNormalizer().normalize(frame).rgb
    assert rgb[0, 0, 0] == 0
    assert rgb[0, 1, 0] == 0
    assert rgb[5, 5, 0] == 255


@pytest.mark.parametrize(
    ("frame", "part"),
    [
        (np.zeros((1, 1, 3), dtype=np.uint8), "only 1 x 1 pixels"),
        (np.zeros((0, 0, 3), dtype=np.uint8), "missing or impossible"),
        (np.zeros((40, 60, 2), dtype=np.uint8), "neither a colour nor a grey picture"),
        (np.zeros((40,), dtype=np.uint8), "neither a colour nor a grey picture"),
        (np.zeros((2, 40, 60, 3), dtype=np.uint8), "neither a colour nor a grey picture"),
        (np.zeros((40, 60, 3), dtype=np.int64), "pixels of type int64"),
        (np.zeros((40, 60), dtype=bool), "pixels of type bool"),
    ],
)
def test_unusable_frames_are_refused(frame: NDArray[np.uint8], part: str) -> None:
    with pytest.raises(InputError, match=part):
        FrameNormalizer().normalize(frame)


def test_enormous_sizes_are_refused_before_anything_is_made_of_them() -> None:
    with pytest.raises(InputError, match="more than Thawline can read"):
        check_size(50_000, 50_000)
    check_size(7680, 4320)
    check_size(4320, 7680)


@pytest.mark.parametrize(
    ("quarters", "green_at"),
    [(0, (2, 2)), (1, (2, -3)), (2, (-3, -3)), (3, (-3, 2))],
)
def test_quarter_turns_are_clockwise(quarters: int, green_at: tuple[int, int]) -> None:
    picture = FrameNormalizer(quarter_turns=quarters).normalize(marked())
    assert picture.rgb[green_at].tolist() == [0, 250, 0]
    size = (HEIGHT, WIDTH) if quarters % 2 else (WIDTH, HEIGHT)
    assert (picture.width_px, picture.height_px) == size
    assert FrameNormalizer(quarter_turns=quarters).upright_size(WIDTH, HEIGHT) == size


def test_a_mirrored_source_is_turned_back_after_it_is_upright() -> None:
    rgb = FrameNormalizer(quarter_turns=1, already_mirrored=True).normalize(marked()).rgb
    assert rgb[2, 2].tolist() == [0, 250, 0]


@pytest.mark.parametrize(
    ("aspect", "size"), [(1.0, (60, 40)), (2.0, (120, 40)), (4 / 3, (80, 40)), (0.5, (60, 80))]
)
def test_pixels_are_made_square(aspect: float, size: tuple[int, int]) -> None:
    picture = FrameNormalizer(sample_aspect=aspect).normalize(marked())
    assert (picture.width_px, picture.height_px) == size
    assert picture.rgb.shape == (size[1], size[0], 3)


def test_a_quarter_turn_swaps_the_square_size() -> None:
    picture = FrameNormalizer(sample_aspect=2.0, quarter_turns=3).normalize(marked())
    assert (picture.width_px, picture.height_px) == (40, 120)


@pytest.mark.parametrize("aspect", [0.01, 20.0, float("nan")])
def test_impossible_pixels_are_refused(aspect: float) -> None:
    with pytest.raises(InputError, match="impossible"):
        FrameNormalizer(sample_aspect=aspect)


@settings(max_examples=30, deadline=None)
@given(
    width=st.integers(32, 300),
    height=st.integers(32, 300),
    turns=st.integers(0, 3),
    limit=st.integers(64, 200),
)
def test_size_is_bounded_and_results_keep_the_full_size(
    width: int, height: int, turns: int, limit: int
) -> None:
    gate = FrameNormalizer(quarter_turns=turns, longest_side_px=limit)
    picture = gate.normalize(np.zeros((height, width, 3), dtype=np.uint8))
    assert max(picture.rgb.shape) <= limit
    assert (picture.width_px, picture.height_px) == gate.upright_size(width, height)
    assert {picture.width_px, picture.height_px} == {width, height}


def test_places_are_measured_from_pixel_centres() -> None:
    picture = Picture(rgb=np.zeros((240, 320, 3), dtype=np.uint8), width_px=640, height_px=480)
    places = np.array([[0.0, 0.0], [1.0, 1.0], [0.5, 1.08]])
    expected = [[-0.5, -0.5], [639.5, 479.5], [319.5, 517.9]]
    assert picture.pixels(places) == pytest.approx(np.array(expected))


def test_the_mirror_image_is_a_copy_and_mirrors_about_the_middle() -> None:
    picture = FrameNormalizer().normalize(marked())
    mirrored = picture.mirrored()
    assert mirrored.rgb.flags.c_contiguous
    assert not np.shares_memory(mirrored.rgb, picture.rgb)
    assert np.array_equal(mirrored.rgb[:, WIDTH - 1 - 7], picture.rgb[:, 7])
