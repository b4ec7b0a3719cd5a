"""What the drawn person does wrong: the pose of a trial that is not counted, where one shows it."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from gui.drawing.person import ArmAngles, Pose
from gui.drawing.shown_movements import Shown, shown_movement
from measure.domain.movements import MOVEMENTS, Direction, Family, Movement
from measure.domain.reasons import Reason

#: How far the drawn elbow is bent, the trunk leans or turns, and the elbow is off the trunk,
#: degrees: enough to be seen at a glance, no limit of any gate. [technical]
_BENT, _LEANS, _TURNED, _OFF = 70.0, 20.0, 40.0, 38.0


def shown_fault(movement: Movement, reason: Reason) -> Shown | None:
    """Return the movement with a fault in it, or None where no pose shows that fault."""
    change = _CHANGES.get(reason)
    if change is None:
        return None
    shown = shown_movement(movement)
    changed = change(movement, shown.end)
    return None if changed is None else replace(shown, end=changed, with_wedge=False)


def _bent(_: Movement, pose: Pose) -> Pose | None:
    arm = pose.arm
    if not isinstance(arm, ArmAngles):
        return None
    return replace(pose, arm=replace(arm, forearm_raised=arm.forearm_raised + _BENT))


def _not_square(movement: Movement, pose: Pose) -> Pose | None:
    arm = pose.arm
    if MOVEMENTS[movement].family is not Family.ROTATION or not isinstance(arm, ArmAngles):
        return None
    return replace(pose, arm=replace(arm, forearm_raised=arm.forearm_raised - _BENT / 2))


def _off_trunk(movement: Movement, pose: Pose) -> Pose | None:
    arm = pose.arm
    if MOVEMENTS[movement].family is not Family.ROTATION or not isinstance(arm, ArmAngles):
        return None
    return replace(pose, arm=replace(arm, raised=_OFF))


def _leaning(movement: Movement, pose: Pose) -> Pose:
    """Lean away from the arm's way, as people do to lift it higher."""
    direction = MOVEMENTS[movement].direction
    if direction is Direction.OUTWARDS:
        return replace(pose, lean_aside=-_LEANS)
    return replace(pose, lean=_LEANS if direction is Direction.BACKWARDS else -_LEANS)


def _turned(_: Movement, pose: Pose) -> Pose:
    return replace(pose, turn=pose.turn + _TURNED)


def _both_arms(_: Movement, pose: Pose) -> Pose:
    return replace(pose, other=pose.arm)


#: How each fault that a pose can show changes the end of a movement.
_CHANGES: Mapping[Reason, Callable[[Movement, Pose], Pose | None]] = {
    Reason.ELBOW_BENT: _bent,
    Reason.ELBOW_NOT_SQUARE: _not_square,
    Reason.ELBOW_OFF_TRUNK: _off_trunk,
    Reason.TRUNK_LEAN: _leaning,
    Reason.TRUNK_TURNED: _turned,
    Reason.OTHER_ARM_RAISED: _both_arms,
}
