"""The drawn person: seen from where the camera stands, the measured arm where it belongs."""

import math

import pytest

from gui.drawing.posture_figure import body_figure, facing_angle_deg, illustrated_angle_deg
from gui.widgets.position_figure import facing_text
from measure.domain.landmarks import LANDMARKS, Side, arm
from measure.domain.movements import MOVEMENTS, Movement, Unit
from tests.support.gui.drawn_person import HEIGHT_PX, WIDTH_PX, draw_person

EVERY = pytest.mark.parametrize("movement", list(Movement))


def angle_at_shoulder(arm_points: tuple[tuple[float, float], ...]) -> float:
    """Return the angle between straight down and the arm, degrees."""
    (sx, sy), _, (wx, wy) = arm_points
    return math.degrees(math.atan2(abs(wx - sx), wy - sy))


@EVERY
def test_the_mirror_image_exchanges_left_and_right_of_the_picture(movement: Movement) -> None:
    plain = body_figure(movement, Side.LEFT, mirrored=False)
    mirrored = body_figure(movement, Side.LEFT, mirrored=True)
    for point, mirrored_point in zip(plain.end_arm, mirrored.end_arm, strict=True):
        assert point == pytest.approx((-mirrored_point[0], mirrored_point[1]))


@EVERY
def test_both_sides_are_mirror_images_of_each_other(movement: Movement) -> None:
    left = body_figure(movement, Side.LEFT, mirrored=False)
    right = body_figure(movement, Side.RIGHT, mirrored=True)
    assert left.end_arm[2] == pytest.approx(right.end_arm[2])


def test_facing_the_camera_the_left_arm_is_on_the_right_of_the_picture() -> None:
    assert body_figure(Movement.ABDUCTION, Side.LEFT, mirrored=False).end_arm[2][0] > 0


def test_with_the_back_turned_the_left_arm_is_on_the_left_of_the_picture() -> None:
    drawn = body_figure(Movement.HAND_BEHIND_BACK, Side.LEFT, mirrored=False)
    assert drawn.end_arm[1][0] < 0
    assert drawn.turned_away


def test_the_left_side_to_the_camera_means_facing_left_in_the_picture() -> None:
    drawn = body_figure(Movement.FLEXION, Side.LEFT, mirrored=False)
    assert drawn.nose[0] < drawn.head[0]
    assert drawn.end_arm[2][0] < 0


@pytest.mark.parametrize(
    ("movement", "side", "degrees"),
    [
        (Movement.FLEXION, Side.LEFT, -90),
        (Movement.FLEXION, Side.RIGHT, 90),
        (Movement.EXTERNAL_ROTATION, Side.LEFT, -45),
        (Movement.HAND_BEHIND_BACK, Side.LEFT, 180),
    ],
)
def test_the_turn_brings_the_measured_arm_to_the_camera(
    movement: Movement, side: Side, degrees: float
) -> None:
    assert facing_angle_deg(movement, side) == degrees


@pytest.mark.parametrize("movement", [Movement.FLEXION, Movement.EXTENSION, Movement.ABDUCTION])
@pytest.mark.parametrize("share", [0.0, 0.5, 1.0])
def test_the_drawn_angle_is_the_one_asked_for(movement: Movement, share: float) -> None:
    drawn = body_figure(movement, Side.RIGHT, mirrored=False, share=share)
    assert angle_at_shoulder(drawn.end_arm) == pytest.approx(
        illustrated_angle_deg(movement) * share, abs=0.1
    )


@EVERY
def test_the_drawing_shows_no_end_to_strive_for(movement: Movement) -> None:
    facts = MOVEMENTS[movement]
    if facts.unit is Unit.DEGREES:
        assert illustrated_angle_deg(movement) <= facts.usual[0]


@pytest.mark.parametrize(
    ("degrees", "words"),
    [
        (0, "face the screen"),
        (180, "back to the screen"),
        (-90, "side to the screen"),
        (45, "half turned"),
    ],
)
def test_the_turn_in_words(degrees: float, words: str) -> None:
    assert facing_text(degrees) == words


@EVERY
def test_the_drawn_person_has_landmarks_inside_its_picture(movement: Movement) -> None:
    picture, points = draw_person(movement, Side.LEFT, 0.3)
    assert picture.shape == (HEIGHT_PX, WIDTH_PX, 3)
    assert picture.flags.c_contiguous
    assert points.shape == (LANDMARKS, 2)
    assert (points > 0).all()
    assert (points < [WIDTH_PX, HEIGHT_PX]).all()


def test_the_landmarks_lie_on_the_drawn_arm() -> None:
    picture, points = draw_person(Movement.ABDUCTION, Side.LEFT, 80.0)
    marks = arm(Side.LEFT)
    x, y = (points[marks.shoulder] * 0.4 + points[marks.elbow] * 0.6).round().astype(int)
    sleeve = picture[y, x].astype(int)
    assert abs(sleeve - [0x46, 0x67, 0x57]).max() <= 3
