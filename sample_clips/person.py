"""Virtual person: motion of trunk, shoulder girdle and arms through a scenario."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from sample_clips.arm import Arm, ArmGoal
from sample_clips.body import Body
from sample_clips.motion import MotionPhase, MotionState
from sample_clips.reach import ReachPath, TrunkSurface
from sample_clips.scenario import Compensation, ExtraEvent, HandPosture, Movement, Scenario, Side
from sample_clips.skeleton import PosedBones, place_bones, turn_about
from sample_clips.truth import hand_height

FloatArray = NDArray[np.float64]

_X, _Y, _Z = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
#: How much of the trunk's lean each spine bone has taken, from the sacrum up.
_SPINE = (("spine05", 0.0), ("spine04", 0.3), ("spine03", 0.55), ("spine02", 0.8), ("spine01", 1.0))
#: Raising below this moves the humerus alone, in degrees (setting phase of the scapula).
_SETTING_DEG = 25.0
#: Upward turn of the girdle in the body model's rest pose, whose arms are raised by 41 degrees.
_REST_GIRDLE_DEG = 5.0
#: Distance walked when leaving the room, in metres.
_WALK_M = 3.6


@dataclass(frozen=True, slots=True, kw_only=True)
class _ArmState:
    """What one arm should do, in the frame of the upright body."""

    raise_deg: float = 0.0
    plane: Movement = Movement.FLEXION
    aside_deg: float = 6.0
    outward_turn_deg: float = 0.0
    elbow_deg: float = 12.0
    carrying_deg: float = 0.0
    palm_deg: float = 0.0


class Sway:
    """Slow wandering without trend: sums of sines, a fixed course for each seed and name."""

    def __init__(self, seed: int) -> None:
        self._seed = seed

    def at(self, name: str, time_s: float, size: float) -> float:
        """Value at a time, about -``size`` to ``size``."""
        rng = np.random.default_rng([self._seed, *name.encode()])
        rates = rng.uniform([0.07, 0.17, 0.33], [0.13, 0.29, 0.5])
        phases = rng.uniform(0, 2 * np.pi, 3)
        shares = np.array([0.55, 0.3, 0.15])
        return float(size * (shares @ np.sin(2 * np.pi * rates * time_s + phases)))


class VirtualPerson:
    """One body that plays one scenario."""

    def __init__(self, body: Body, scenario: Scenario) -> None:
        self.body = body
        self.scenario = scenario
        self.arms = {side: Arm(body, side) for side in Side}
        self._sway = Sway(scenario.seed)
        self._back = TrunkSurface(body)
        self._stand = np.array([0.0, 0.0, -float(body.vertices[:, 2].min())])
        rng = np.random.default_rng([scenario.seed, 11])
        self._slouch_deg = float(rng.uniform(-1.5, 4.0))
        self._gaze_deg = float(rng.uniform(-8.0, 8.0))
        self._hang_deg = self._clear_of_hips() + scenario.posture.hang_deg
        self._wrist_ends: tuple[float, ...] = ()
        if scenario.movement is Movement.HAND_BEHIND_BACK:
            peaks = (scenario.peak, *(scenario.peak + step for step in scenario.peers))
            self._wrist_ends = tuple(self._wrist_end_for(peak) for peak in peaks)

    def pose(self, now: MotionState) -> PosedBones:
        """Bones at one moment, in metres; the floor is z = 0, the camera looks along +y."""
        scenario = self.scenario
        end = self._wrist_ends[now.repeat] if self._wrist_ends else 0.0
        return self._pose(now, self._peak(now.repeat), end, scenario.compensation)

    def follow(self, now: MotionState, goals: Mapping[Side, ArmGoal]) -> PosedBones:
        """Bones when both arms are given, in the thorax's frame; trunk and girdle go along."""
        turns = self._trunk(now, Compensation())
        for side, goal in goals.items():
            raise_deg = float(np.degrees(np.arccos(np.clip(-goal.humerus[2], -1, 1))))
            state = _ArmState(raise_deg=raise_deg, plane=Movement.ABDUCTION)
            self._girdle(turns, side, state, 0.0, now)
            girdle = turns[f"shoulder01{side.suffix}"]
            placed = _turned(goal, turns["spine01"])
            self.arms[side].place(turns, girdle, placed, self.scenario.hand)
        return place_bones(self.body, turns, self._root_at(now))

    def thorax_forward(self, bones: PosedBones) -> FloatArray:
        """Direction that the thorax faces, shape (3,)."""
        return np.asarray(-bones.turns[self.body.bones.index("spine01")][:, 1], dtype=np.float64)

    def _peak(self, repeat: int) -> float:
        return self.scenario.peak + (self.scenario.peers[repeat - 1] if repeat else 0.0)

    def _pose(
        self, now: MotionState, peak: float, wrist_end: float, cheat: Compensation
    ) -> PosedBones:
        scenario, side = self.scenario, self.scenario.side
        turns = self._trunk(now, cheat)
        thorax = turns["spine01"]
        measured = self._measured_arm(now, peak, cheat)
        states = {side: measured, side.other: self._other_arm(now, peak)}
        for arm_side in Side:
            shrug = cheat.shrug_deg * now.raised if arm_side is side else 0.0
            self._girdle(turns, arm_side, states[arm_side], shrug, now)
        goals = {arm_side: _in_thorax(states[arm_side], arm_side) for arm_side in Side}
        root_at = self._root_at(now)
        if scenario.movement is Movement.HAND_BEHIND_BACK and now.raised > 0:
            goals[side] = self._reach(turns, root_at, goals[side], wrist_end, now.raised)
        for arm_side in Side:
            hand = scenario.hand if arm_side is side else HandPosture.RELAXED
            girdle = turns[f"shoulder01{arm_side.suffix}"]
            self.arms[arm_side].place(turns, girdle, _turned(goals[arm_side], thorax), hand)
        self._legs(turns, now)
        return place_bones(self.body, turns, root_at)

    def _root_at(self, now: MotionState) -> FloatArray:
        away = np.copysign(_WALK_M, self.scenario.heading_deg) * max(0.0, now.gone - 0.2)
        walked = np.array([away, 0.0, 0.0])
        return np.asarray(self.body.heads[0] + self._stand + walked)

    def _trunk(self, now: MotionState, cheat: Compensation) -> dict[str, FloatArray]:
        scenario, time_s = self.scenario, now.time_s
        out = scenario.side.outward
        heading_deg = scenario.heading_deg * now.turned
        if scenario.story is ExtraEvent.WALKS_OFF:
            ahead = np.copysign(90.0, heading_deg)
            heading_deg += (ahead - heading_deg) * min(1.0, now.gone / 0.25)
        root = turn_about(_Z, heading_deg + self._sway.at("turn", time_s, 0.8))
        lean = cheat.lean_deg * now.raised
        forward = self._slouch_deg + self._sway.at("lean", time_s, 0.6)
        forward += 0.4 * np.sin(2 * np.pi * 0.27 * time_s)
        aside = self._sway.at("aside", time_s, 0.6)
        if scenario.movement is Movement.FLEXION:
            forward -= lean
        elif scenario.movement is Movement.ABDUCTION:
            aside -= out * lean
        else:
            forward += lean
        turn = out * cheat.trunk_turn_deg * now.raised
        turns = {"root": root}
        for bone, share in _SPINE:
            turns[bone] = (
                root
                @ turn_about(_Z, share * turn)
                @ turn_about(_Y, share * aside)
                @ turn_about(_X, share * forward)
            )
        gaze = turn_about(_Z, self._gaze_deg * 0.5 + self._sway.at("gaze", time_s, 5.0))
        turns["neck01"] = root @ turn_about(_X, 0.6 * forward) @ turn_about(_Z, 0.3 * turn)
        turns["head"] = root @ gaze @ turn_about(_X, self._sway.at("nod", time_s, 3.0))
        return turns

    def _other_arm(self, now: MotionState, peak: float) -> _ArmState:
        share = self.scenario.posture.other_arm
        if share > 0:
            return self._measured_arm(now, share * peak, Compensation())
        return _ArmState(
            aside_deg=self._hang_deg,
            raise_deg=2.0 + self._sway.at("other arm", now.time_s, 1.5),
            elbow_deg=14.0 + self._sway.at("other elbow", now.time_s, 2.0),
            carrying_deg=self.scenario.posture.carrying_deg,
        )

    def _measured_arm(self, now: MotionState, peak: float, cheat: Compensation) -> _ArmState:
        movement, posture = self.scenario.movement, self.scenario.posture
        carrying = posture.carrying_deg
        share = now.raised
        wobble = share * self._sway.at("hold", now.time_s, 0.5)
        hang = self._hang_deg
        bend = cheat.elbow_bend_deg + self._sway.at("elbow", now.time_s, 1.0)
        elbow = 9.0 + share * (bend - 9.0)
        if movement is Movement.FLEXION or movement is Movement.EXTENSION:
            sign = 1 if movement is Movement.FLEXION else -1
            lateral = hang + share * (4.0 + cheat.out_of_plane_deg - hang)
            return _ArmState(
                raise_deg=1.0 + share * (sign * peak - 1.0) + wobble,
                plane=movement,
                aside_deg=lateral,
                outward_turn_deg=share * posture.twist_deg,
                elbow_deg=elbow,
                carrying_deg=carrying,
            )
        if movement is Movement.ABDUCTION:
            return _ArmState(
                raise_deg=hang + share * (peak - hang) + wobble,
                plane=movement,
                aside_deg=2.0 + share * cheat.out_of_plane_deg,
                outward_turn_deg=share * min(45.0, max(0.0, peak - 30.0)),
                elbow_deg=elbow,
                carrying_deg=carrying,
                palm_deg=20.0 * share,
            )
        if movement is Movement.EXTERNAL_ROTATION:
            squared = now.squared
            return _ArmState(
                raise_deg=1.0 + squared * self._sway.at("upper arm", now.time_s, 1.5),
                aside_deg=hang + squared * share * cheat.out_of_plane_deg,
                outward_turn_deg=share * peak + squared * self._sway.at("zero", now.time_s, 1.5),
                elbow_deg=10.0 + squared * (80.0 + cheat.elbow_bend_deg - 5.0),
                carrying_deg=carrying,
                palm_deg=0.0,
            )
        return _ArmState(raise_deg=1.0, aside_deg=hang, elbow_deg=10.0, carrying_deg=carrying)

    def _girdle(
        self,
        turns: dict[str, FloatArray],
        side: Side,
        state: _ArmState,
        shrug_deg: float,
        now: MotionState,
    ) -> None:
        """Clavicle and scapula follow the humerus: about 2:1 after a setting phase.

        Inman, Saunders & Abbott 1944 describe the rhythm; its share between the clavicle and the
        scapula in this rig was chosen to keep the shoulder's shape. [project]
        """
        thorax, out = turns["spine01"], side.outward
        upward = max(0.0, abs(state.raise_deg) - _SETTING_DEG) / (1 + self.scenario.rhythm)
        if state.plane is Movement.FLEXION and state.raise_deg < 0:
            upward = 0.0
        upward -= _REST_GIRDLE_DEG
        forward = 0.0
        if state.plane is Movement.FLEXION:
            forward = 6.0 * np.sin(np.radians(np.clip(state.raise_deg, 0, 90)))
        if state.plane is Movement.EXTENSION:
            forward = -0.12 * abs(state.raise_deg)
        if self.scenario.movement is Movement.HAND_BEHIND_BACK and side is self.scenario.side:
            forward = 5.0 * now.raised
        clavicle = (
            thorax
            @ turn_about(_Z, -out * forward)
            @ turn_about(_Y, -out * (0.2 * upward + shrug_deg))
        )
        turns[f"clavicle{side.suffix}"] = clavicle
        turns[f"shoulder01{side.suffix}"] = clavicle @ turn_about(_Y, -out * 0.5 * upward)

    def _reach(
        self,
        turns: dict[str, FloatArray],
        root_at: FloatArray,
        hanging: ArmGoal,
        wrist_end: float,
        progress: float,
    ) -> ArmGoal:
        side, arm = self.scenario.side, self.arms[self.scenario.side]
        scratch = dict(turns)
        thorax = turns["spine01"]
        girdle = turns[f"shoulder01{side.suffix}"]
        arm.place(scratch, girdle, _turned(hanging, thorax), self.scenario.hand)
        bones = place_bones(self.body, scratch, root_at)
        names = self.body.bones
        anchor = names.index("spine01")
        shoulder = bones.heads[names.index(f"upperarm01{side.suffix}")]
        local = thorax.T @ (shoulder - bones.heads[anchor]) + self.body.heads[anchor]
        path = ReachPath(
            arm=arm,
            back=self._back,
            hip_m=float(self.body.head("upperleg01.L")[2]),
            end_m=wrist_end,
        )
        return path.goal(local, hanging, thorax.T @ scratch[f"wrist{side.suffix}"], progress)

    def _wrist_end_for(self, peak: float) -> float:
        """Height of the wrist in the rest frame that brings the thumb tip to a fraction."""
        hip = float(self.body.head("upperleg01.L")[2])
        line = float(self.body.head("neck01")[2]) - hip
        end = hip + peak * line - 0.1
        still = MotionState(
            time_s=0, phase=MotionPhase.HOLD, repeat=0, raised=1, turned=1, squared=1, gone=0
        )
        for _ in range(5):
            bones = self._pose(still, peak, end, self.scenario.compensation)
            tip = self.thumb_tip(bones, self.scenario.side)
            end += 0.9 * (peak - hand_height(self.body, bones, tip)) * line
        return end

    def thumb_tip(self, bones: PosedBones, side: Side) -> FloatArray:
        """Skin point at the tip of a thumb, shape (3,)."""
        last = self.body.bones.index(f"finger1-3{side.suffix}")
        offset = self.body.vertices[self.arms[side].thumb_vertex] - self.body.heads[last]
        return np.asarray(bones.heads[last] + bones.turns[last] @ offset)

    def _legs(self, turns: dict[str, FloatArray], now: MotionState) -> None:
        if now.gone <= 0:
            return
        swing = 18.0 * np.sin(2 * np.pi * 0.9 * now.time_s)
        for side in Side:
            step = side.outward * swing
            turns[f"upperleg01{side.suffix}"] = turns["root"] @ turn_about(_X, step)
            turns[f"lowerleg01{side.suffix}"] = turns["root"] @ turn_about(
                _X, step - 12.0 - abs(step) * 0.5
            )

    def _clear_of_hips(self) -> float:
        """Angle to the side at which a hanging hand clears the thigh, in degrees."""
        arm = self.arms[Side.LEFT]
        wrist_z = float(arm.shoulder[2]) - arm.upper_m - arm.fore_m
        room = self._back.width_m(wrist_z + 0.05) + 0.035 - float(arm.shoulder[0])
        return float(np.clip(np.degrees(np.arcsin(room / (arm.upper_m + arm.fore_m))), 4, 16))


def _in_thorax(state: _ArmState, side: Side) -> ArmGoal:
    """The arm in the frame of the thorax: raised from hanging in its plane."""
    out = side.outward
    if state.plane is Movement.ABDUCTION:
        lift = turn_about(_Y, -out * state.raise_deg)
        tilt = turn_about(_X, -state.aside_deg)
    else:
        lift = turn_about(_X, -state.raise_deg)
        tilt = turn_about(_Y, -out * state.aside_deg)
    humerus = lift @ tilt @ np.array([0.0, 0.0, -1.0])
    ahead = lift @ tilt @ np.array([0.0, -1.0, 0.0])
    ahead = turn_about(humerus, -out * state.outward_turn_deg) @ ahead
    return ArmGoal(
        humerus=humerus,
        bend_towards=ahead,
        elbow_deg=state.elbow_deg,
        carrying_deg=state.carrying_deg,
        palm_deg=state.palm_deg,
    )


def _turned(goal: ArmGoal, turn: FloatArray) -> ArmGoal:
    return replace(
        goal,
        humerus=turn @ goal.humerus,
        bend_towards=turn @ goal.bend_towards,
        hand_turn=None if goal.hand_turn is None else turn @ goal.hand_turn,
    )
