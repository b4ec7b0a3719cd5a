"""A stick figure with known angles, as a track: what the network would say of a perfect body.

Plane coordinates: x right, y up, the trunk is `trunk_px` long. Camera and figure as in the
table of movements: in a side view the measured arm is the near one.
"""

import numpy as np

from measure.domain.landmarks import LANDMARKS, FloatArray, Landmark, Side, arm
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.video.sampling import COARSE_HZ

UPPER_ARM, FOREARM, HAND = 0.55, 0.50, 0.15
SEPARATION = {View.FRONT: -0.66, View.BACK: 0.66, View.SIDE: 0.0, View.OBLIQUE: -0.47}


def direction(angle_deg: FloatArray) -> FloatArray:
    """Unit vectors, shape (n,) -> (n, 2); 0 points down, positive anticlockwise."""
    angle = np.radians(np.asarray(angle_deg, dtype=np.float64) - 90)
    return np.stack([np.cos(angle), np.sin(angle)], axis=-1)


def turn_of(movement: Movement, view: View, side: Side) -> float:
    """+1 where the movement turns anticlockwise in the picture: known from first principles.

    Facing the camera, the person's left is on the picture's right. Seen from the left side
    the person looks to the picture's left.
    """
    left = side is Side.LEFT
    table = {
        (Movement.ABDUCTION, View.FRONT): 1 if left else -1,
        (Movement.ABDUCTION, View.BACK): -1 if left else 1,
        (Movement.FLEXION, View.SIDE): -1 if left else 1,
        (Movement.EXTENSION, View.SIDE): 1 if left else -1,
    }
    return table[movement, view]


def elevation_track(
    angles_deg: FloatArray,
    movement: Movement,
    side: Side,
    view: View,
    *,
    rate_hz: float = COARSE_HZ,
    elbow_bend_deg: FloatArray | float = 0.0,
    lean_deg: FloatArray | float = 0.0,
    trunk_px: float = 150.0,
    size: tuple[int, int] = (640, 480),
    roll_deg: float = 0.0,
) -> Track:
    """A track of flexion, extension or abduction; `lean_deg` and `roll_deg` turn the trunk."""
    n = len(angles_deg)
    sign = turn_of(movement, view, side)
    lean = np.broadcast_to(np.asarray(lean_deg, dtype=np.float64), (n,))
    bend = np.broadcast_to(np.asarray(elbow_bend_deg, dtype=np.float64), (n,))
    places = np.zeros((n, LANDMARKS, 2))
    own, other = arm(side), arm(side.other)
    up = -direction(sign * lean)
    across = np.stack([up[:, 1], -up[:, 0]], axis=-1)
    own_right = (side is Side.RIGHT) == (view in (View.BACK,))
    half = abs(SEPARATION[view]) / 2 * (1 if own_right else -1)
    for marks, factor in ((own, half), (other, -half)):
        places[:, marks.hip] = 0.7 * factor * across
        places[:, marks.shoulder] = up + factor * across
    arm_direction = sign * (np.asarray(angles_deg, dtype=np.float64) + lean)
    elbow = places[:, own.shoulder] + UPPER_ARM * direction(arm_direction)
    fore = direction(arm_direction + sign * bend)
    places[:, own.elbow] = elbow
    places[:, own.wrist] = elbow + FOREARM * fore
    hang = places[:, other.shoulder] - UPPER_ARM * up
    places[:, other.elbow], places[:, other.wrist] = hang, hang - FOREARM * up
    for marks in (own, other):
        for tip in (marks.thumb, marks.index, marks.pinky):
            places[:, tip] = places[:, marks.wrist]
    places[:, own.thumb] = elbow + (FOREARM + HAND) * fore
    facing = -1.0 if side is Side.LEFT else 1.0
    forward = {View.SIDE: facing, View.FRONT: 0.0, View.BACK: 0.0}[view]
    head = up * 1.35
    for mark in Landmark:
        if mark <= Landmark.MOUTH_RIGHT:
            places[:, mark] = head
        elif mark >= Landmark.LEFT_KNEE:
            places[:, mark] = np.array([0.0, -0.9])
    places[:, Landmark.NOSE] = head + forward * np.array([0.2, 0.0])
    return track_of(places * trunk_px, rate_hz=rate_hz, size=size, roll_deg=roll_deg)


def track_of(
    places: FloatArray,
    *,
    rate_hz: float = COARSE_HZ,
    size: tuple[int, int] = (640, 480),
    roll_deg: float = 0.0,
    centre: tuple[float, float] = (0.5, 0.55),
) -> Track:
    """A track from plane coordinates about mid-hip, shape (n, 33, 2), x right and y up."""
    n = len(places)
    roll = np.radians(roll_deg)
    turned = places @ np.array([[np.cos(roll), np.sin(roll)], [-np.sin(roll), np.cos(roll)]])
    pixels = turned * np.array([1.0, -1.0]) + np.array(size) * np.array(centre)
    return Track(
        time_s=np.arange(n) / rate_hz,
        points_px=pixels,
        visibility=np.ones((n, LANDMARKS)),
        presence=np.ones((n, LANDMARKS)),
        state=np.zeros(n, dtype=np.int64),
        people=np.ones(n, dtype=np.int64),
        width_px=size[0],
        height_px=size[1],
    )


def raise_and_hold(
    peak: float,
    *,
    rest: float = 0.0,
    rate_hz: float = COARSE_HZ,
    rest_s: float = 1.2,
    move_s: float = 2.0,
    hold_s: float = 1.6,
    after_s: float = 1.0,
    repeats: int = 1,
) -> FloatArray:
    """A series: rest, smooth move, hold, return, rest."""
    ease = 3 * np.linspace(0, 1, round(move_s * rate_hz)) ** 2
    ease -= 2 * np.linspace(0, 1, round(move_s * rate_hz)) ** 3
    one = np.concatenate(
        [
            np.zeros(round(rest_s * rate_hz)),
            ease,
            np.ones(round(hold_s * rate_hz)),
            ease[::-1],
            np.zeros(round(after_s * rate_hz)),
        ]
    )
    return rest + (peak - rest) * np.tile(one, repeats)
