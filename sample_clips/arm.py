"""One arm of the virtual person: humerus, elbow, forearm twist, hand and fingers.

Directions are unit vectors in the world. What the arm should do is decided in ``person`` and
``reach``; here is only how the bones follow.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from sample_clips.body import Body
from sample_clips.scenario import HandPosture, Side
from sample_clips.skeleton import frame, turn_about, turn_from_frames

FloatArray = NDArray[np.float64]

#: Share of a twist that the bone nearer to the trunk takes; the farther one takes all of it.
_NEAR_SHARE = 0.45

#: Extra bend of the finger joints in degrees (index finger, other three).
_CURLS = {
    HandPosture.RELAXED: (0.0, 0.0),
    HandPosture.FLAT: (-12.0, -14.0),
    HandPosture.FIST: (55.0, 55.0),
    HandPosture.POINTING: (-8.0, 55.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class ArmGoal:
    """What an arm shall do.

    Attributes
    ----------
    humerus
        Direction shoulder -> elbow, shape (3,).
    bend_towards
        Direction in which the elbow bends, perpendicular to ``humerus``, shape (3,).
    elbow_deg
        True bend: 0 is straight.
    carrying_deg
        How far the straight forearm points outwards; it fades as the elbow bends.
    palm_deg
        0 has the thumb where the elbow bends towards (palm to the thigh when hanging), positive
        is supination, negative pronation.
    hand_turn
        World turn of the hand, shape (3, 3); None keeps it in line with the forearm.
    thumb_out
        Whether the thumb is stretched away from the fingers.
    """

    humerus: FloatArray
    bend_towards: FloatArray
    elbow_deg: float
    carrying_deg: float = 0.0
    palm_deg: float = 0.0
    hand_turn: FloatArray | None = None
    thumb_out: bool = False


class Arm:
    """Rest measures of one arm and the placing of its bones."""

    def __init__(self, body: Body, side: Side) -> None:
        self.side = side
        ending = side.suffix
        self._ending = ending
        self.shoulder = body.head(f"upperarm01{ending}")
        elbow = body.head(f"lowerarm01{ending}")
        wrist = body.head(f"wrist{ending}")
        self.upper_m = float(np.linalg.norm(elbow - self.shoulder))
        self.fore_m = float(np.linalg.norm(wrist - elbow))
        self._upper = (elbow - self.shoulder) / self.upper_m
        self._fore = (wrist - elbow) / self.fore_m
        self._rest_bend_deg = float(np.degrees(np.arccos(self._upper @ self._fore)))
        knuckle = body.head(f"finger3-1{ending}")
        index = body.head(f"finger2-1{ending}")
        little = body.head(f"finger5-1{ending}")
        self._fingers = (knuckle - wrist) / np.linalg.norm(knuckle - wrist)
        # First column along the fingers, second towards the thumb's side of the hand.
        self.hand_frame = frame(self._fingers, index - little)
        self._palm = side.outward * self.hand_frame[:, 2]
        self.thumb_vertex = _thumb_vertex(body, ending)
        thumb = body.head(f"finger1-1{ending}")
        tip = body.vertices[self.thumb_vertex]
        self._thumb = (tip - thumb) / np.linalg.norm(tip - thumb)

    def place(
        self, turns: dict[str, FloatArray], girdle: FloatArray, goal: ArmGoal, hand: HandPosture
    ) -> None:
        """Write the world turns of this arm's bones.

        Parameters
        ----------
        turns
            Receives the turns, by bone name.
        girdle
            World turn of the shoulder girdle, from which the twist of the humerus counts.
        """
        ending = self._ending
        humerus = goal.humerus
        upper = turn_from_frames(frame(self._upper, self._fore), frame(humerus, goal.bend_towards))
        hinge = np.cross(humerus, goal.bend_towards)
        carrying_deg = goal.carrying_deg * max(0.0, np.cos(np.radians(goal.elbow_deg)))
        forearm = (
            turn_about(hinge, goal.elbow_deg)
            @ turn_about(goal.bend_towards, self.side.outward * carrying_deg)
            @ turn_about(hinge, -self._rest_bend_deg)
            @ upper
        )
        swing = _shortest_turn(girdle @ self._upper, humerus) @ girdle
        twist = _angle_about(humerus, swing @ self._fore, upper @ self._fore)
        turns[f"upperarm01{ending}"] = turn_about(humerus, _NEAR_SHARE * twist) @ swing
        turns[f"upperarm02{ending}"] = upper

        along = forearm @ self._fore
        if goal.hand_turn is None:
            bent_towards = np.cross(hinge, along)
            palm = np.radians(goal.palm_deg)
            wanted = self.side.outward * hinge * np.cos(palm) + bent_towards * np.sin(palm)
        else:
            wanted = goal.hand_turn @ self._palm
        twist = _angle_about(along, forearm @ self._palm, wanted)
        turns[f"lowerarm01{ending}"] = turn_about(along, _NEAR_SHARE * twist) @ forearm
        turns[f"lowerarm02{ending}"] = turn_about(along, twist) @ forearm
        if goal.hand_turn is None:
            # The rest pose bends the wrist a little; the hand of a hanging arm does not.
            untwisted = turn_about(along, twist) @ forearm
            straight = _shortest_turn(untwisted @ self._fingers, along)
            palm_turn = _part_of(straight, 0.7) @ untwisted
        else:
            palm_turn = goal.hand_turn
        turns[f"wrist{ending}"] = palm_turn
        self._place_fingers(turns, palm_turn, goal, hand)

    def _place_fingers(
        self, turns: dict[str, FloatArray], palm_turn: FloatArray, goal: ArmGoal, hand: HandPosture
    ) -> None:
        index_deg, others_deg = _CURLS[hand]
        across = palm_turn @ self.hand_frame[:, 1]
        # Fingers bend towards the palm.
        sign = self.side.outward
        for finger in range(2, 6):
            curl = index_deg if finger == 2 else others_deg
            for joint in range(1, 4):
                bent = turn_about(across, -sign * curl * joint)
                turns[f"finger{finger}-{joint}{self._ending}"] = bent @ palm_turn
        if goal.thumb_out:
            out = self.hand_frame @ np.array([0.45, 0.89, 0.0])
            turns[f"finger1-1{self._ending}"] = palm_turn @ _shortest_turn(self._thumb, out)


def _thumb_vertex(body: Body, ending: str) -> int:
    """The skin point that is the tip of the thumb: farthest out on its last bone."""
    bone = body.bones.index(f"finger1-3{ending}")
    carried = np.where(body.bone_indices == bone, body.bone_weights, 0.0).sum(axis=1)
    reach = np.linalg.norm(body.vertices - body.head(f"finger1-2{ending}"), axis=1)
    return int(np.argmax(np.where(carried > 0.9, reach, -1.0)))


def _shortest_turn(start: FloatArray, end: FloatArray) -> FloatArray:
    axis = np.cross(start, end)
    length = float(np.linalg.norm(axis))
    if length < 1e-9:
        return np.eye(3)
    return turn_about(axis, float(np.degrees(np.arctan2(length, start @ end))))


def _part_of(turn: FloatArray, share: float) -> FloatArray:
    angle = np.degrees(np.arccos(np.clip((np.trace(turn) - 1) / 2, -1, 1)))
    if angle < 1e-6:
        return turn
    axis = np.array([turn[2, 1] - turn[1, 2], turn[0, 2] - turn[2, 0], turn[1, 0] - turn[0, 1]])
    return turn_about(axis, float(share * angle))


def _angle_about(axis: FloatArray, start: FloatArray, end: FloatArray) -> float:
    """Signed angle from one direction to another, seen along an axis, in (-180, 180]."""
    start = start - axis * (axis @ start)
    end = end - axis * (axis @ end)
    return float(np.degrees(np.arctan2(axis @ np.cross(start, end), start @ end)))
