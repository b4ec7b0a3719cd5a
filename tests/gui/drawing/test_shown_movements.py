"""The drawn person: seen from where the camera stands, in human proportions, joints kept."""

import math

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage, QPainter
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

import gui.widgets.figures.position_figure as position_figure
from gui.drawing.person import FOREARM, UPPER_ARM, Body, length, minus, posed
from gui.drawing.scene import paint_scene
from gui.drawing.shown_movements import (
    Shown,
    facing_angle_deg,
    illustrated_angle_deg,
    shown_exercise,
    shown_movement,
)
from gui.style.appearance import Appearance
from gui.widgets.figures.position_figure import PositionView
from measure.domain.exercises import ListedExercise
from measure.domain.landmarks import LANDMARKS, Side, arm
from measure.domain.movements import MOVEMENTS, Movement, Unit
from tests.support.gui.drawn_person import HEIGHT_PX, WIDTH_PX, draw_person

EVERY = pytest.mark.parametrize("movement", list(Movement))
EVERYTHING = pytest.mark.parametrize(
    "shown",
    [shown_movement(movement) for movement in Movement]
    + [shown_exercise(exercise) for exercise in ListedExercise],
    ids=[*Movement, *ListedExercise],
)


def end(movement: Movement, side: Side) -> Body:
    return posed(shown_movement(movement).end, side)


@EVERYTHING
@pytest.mark.parametrize("side", list(Side))
def test_arms_keep_their_length_all_along_the_loop(shown: Shown, side: Side) -> None:
    for step in range(40):
        body = posed(shown.pose_at(shown.round_s * step / 40), side)
        for shoulder, elbow, wrist in (body.arm, body.other_arm):
            assert length(minus(elbow, shoulder)) == pytest.approx(UPPER_ARM, rel=0.02)
            assert length(minus(wrist, elbow)) == pytest.approx(FOREARM, rel=0.02)


@EVERYTHING
def test_the_loop_moves_without_a_jump_and_comes_back(shown: Shown) -> None:
    before = posed(shown.pose_at(0.0), Side.LEFT).arm[2]
    far = 0.0
    for step in range(1, 241):
        wrist = posed(shown.pose_at(shown.round_s * step / 240), Side.LEFT).arm[2]
        assert length(minus(wrist, before)) < 0.03
        far = max(far, length(minus(wrist, posed(shown.start, Side.LEFT).arm[2])))
        before = wrist
    body = posed(shown.pose_at(0.0), Side.LEFT)
    start = posed(shown.start, Side.LEFT)
    assert body.arm[2] == pytest.approx(start.arm[2])
    turned = abs(shown.end.turn - shown.start.turn) + abs(shown.end.shift)
    assert far > 0.05 or turned > 0.1


@EVERYTHING
def test_both_sides_are_mirror_images_of_each_other(shown: Shown) -> None:
    left, right = posed(shown.end, Side.LEFT), posed(shown.end, Side.RIGHT)
    for one, other in zip(left.arm, right.arm, strict=True):
        assert one == pytest.approx((-other[0], other[1], other[2]), abs=1e-9)


@EVERYTHING
@pytest.mark.parametrize("time_s", [None, 1.4])
def test_a_drawing_stays_inside_its_picture(
    appearance: Appearance, shown: Shown, time_s: float | None
) -> None:
    image = QImage(240, 280, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    place = QRectF(6, 6, 228, 268)
    paint_scene(painter, appearance, place, shown, Side.LEFT, time_s=time_s)
    painter.end()
    rim = [(x, y) for x in range(240) for y in (0, 1, 278, 279)]
    rim += [(x, y) for y in range(280) for x in (0, 1, 238, 239)]
    assert all(image.pixelColor(x, y).alpha() == 0 for x, y in rim)
    assert sum(image.pixelColor(120, y).alpha() > 0 for y in range(280)) > 20


def test_facing_the_camera_the_left_arm_is_on_the_right_of_the_picture() -> None:
    assert end(Movement.ABDUCTION, Side.LEFT).arm[2][0] > 0


def test_with_the_back_turned_the_left_arm_is_on_the_left_of_the_picture() -> None:
    assert end(Movement.HAND_BEHIND_BACK, Side.LEFT).arm[1][0] < 0


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize(
    "shown",
    [
        shown_movement(Movement.ABDUCTION),
        shown_movement(Movement.EXTERNAL_ROTATION),
        shown_exercise(ListedExercise.TABLE_SLIDE_SIDEWAYS),
        shown_exercise(ListedExercise.EXTERNAL_ROTATION),
        shown_exercise(ListedExercise.TOWEL),
        shown_movement(Movement.HAND_BEHIND_BACK),
    ],
)
def test_without_a_camera_beside_it_the_left_arm_is_on_the_left(
    appearance: Appearance, shown: Shown, side: Side
) -> None:
    """From the front as in a mirror, and from behind as others see it."""
    image = QImage(240, 280, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_scene(painter, appearance, QRectF(image.rect()), shown, side, time_s=0.0)
    painter.end()
    blue = appearance.colour("arm")
    across = [x - 119.5 for y in range(280) for x in range(240) if image.pixelColor(x, y) == blue]
    assert across
    assert sum(across) * (-1 if side is Side.LEFT else 1) > 0


def test_from_the_side_a_drawing_faces_as_the_picture_of_the_camera_does() -> None:
    assert shown_movement(Movement.FLEXION).as_in_mirror
    assert shown_exercise(ListedExercise.PENDULUM).as_in_mirror
    assert not shown_movement(Movement.HAND_BEHIND_BACK).as_in_mirror


def test_the_left_side_to_the_camera_means_facing_left_in_the_picture() -> None:
    assert end(Movement.FLEXION, Side.LEFT).arm[2][0] < 0


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
def test_the_drawn_angle_is_the_one_of_the_table(movement: Movement) -> None:
    shoulder, _, wrist = end(movement, Side.RIGHT).arm
    across, up, _ = minus(wrist, shoulder)
    angle = math.degrees(math.atan2(abs(across), -up))
    assert angle == pytest.approx(illustrated_angle_deg(movement), abs=0.1)


@EVERY
def test_the_drawing_shows_no_end_to_strive_for(movement: Movement) -> None:
    facts = MOVEMENTS[movement]
    if facts.unit is Unit.DEGREES:
        assert illustrated_angle_deg(movement) <= facts.usual[0]


def test_the_person_moves_only_while_seen_and_where_motion_is_wanted(
    appearance: Appearance, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    view = PositionView(appearance)
    qtbot.addWidget(view)
    view.show_exercise(ListedExercise.PENDULUM, Side.LEFT)
    assert not view.moving
    view.show()
    assert view.moving
    view.hide()
    assert not view.moving
    monkeypatch.setattr(position_figure, "motion_wanted", lambda: False)
    view.show()
    assert not view.moving
    assert view.accessibleName() == "drawing: Pendulum, left arm"


@EVERY
def test_the_drawn_person_has_landmarks_inside_its_picture(
    qapp: QApplication, movement: Movement
) -> None:
    picture, points = draw_person(movement, Side.LEFT, 0.3)
    assert picture.shape == (HEIGHT_PX, WIDTH_PX, 3)
    assert picture.flags.c_contiguous
    assert points.shape == (LANDMARKS, 2)
    assert (points > 0).all()
    assert (points < [WIDTH_PX, HEIGHT_PX]).all()


def test_the_landmarks_lie_on_the_drawn_arm(qapp: QApplication) -> None:
    picture, points = draw_person(Movement.ABDUCTION, Side.LEFT, 80.0)
    marks = arm(Side.LEFT)
    x, y = (points[marks.shoulder] * 0.4 + points[marks.elbow] * 0.6).round().astype(int)
    sleeve = picture[y, x].astype(int)
    assert abs(sleeve - [0x46, 0x67, 0x57]).max() <= 3


@EVERYTHING
@pytest.mark.parametrize("side", list(Side))
def test_close_up_nothing_is_cut_either(appearance: Appearance, shown: Shown, side: Side) -> None:
    image = QImage(240, 280, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    place = QRectF(6, 6, 228, 268)
    for time_s in (0.0, 1.4, 3.4):
        paint_scene(painter, appearance, place, shown, side, time_s=time_s, close=True)
    painter.end()
    rim = [(x, y) for x in range(240) for y in (0, 1, 278, 279)]
    rim += [(x, y) for y in range(280) for x in (0, 1, 238, 239)]
    assert all(image.pixelColor(x, y).alpha() == 0 for x, y in rim)


@pytest.mark.parametrize(
    ("exercise", "turns"),
    [
        (ListedExercise.EXTERNAL_ROTATION, True),
        (ListedExercise.BEHIND_BACK, True),
        (ListedExercise.EXTENSION, False),
        (ListedExercise.PENDULUM, False),
    ],
)
def test_an_arc_above_the_head_says_that_the_body_turns(
    appearance: Appearance, exercise: ListedExercise, turns: bool
) -> None:
    """Where the head is, only the arc has the colour of the measured arm."""
    image = QImage(400, 400, QImage.Format.Format_ARGB32)
    image.fill(0)
    painter = QPainter(image)
    paint_scene(
        painter, appearance, QRectF(image.rect()), shown_exercise(exercise), Side.LEFT, time_s=0.0
    )
    painter.end()
    blue = appearance.colour("arm")
    above = [(x, y) for y in range(70) for x in range(400) if image.pixelColor(x, y) == blue]
    assert bool(above) is turns
