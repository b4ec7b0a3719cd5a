"""Quality gates: conditions that every trial must meet, each with its reason.

Those of one family of movements are in :mod:`measure.trials.elevation_gates`,
:mod:`measure.trials.rotation_gates` and :mod:`measure.trials.reach_gates`. Limits were set just
above normal amounts (trunk motion in arm elevation: Crawford & Jull 1993, Stewart 1995), from the
truth bench or from real people, and want a physiotherapist's judgement. A *refusal* keeps the
trial out of the value; a *note* is shown beside it.
"""

from collections.abc import Iterable

import numpy as np

from measure.domain.landmarks import Landmark, Side, arm
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import GateResult, Reason, note, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import direction_deg, median_over, turn_deg, wrap_deg
from measure.kinematics.fusion import Mask
from measure.kinematics.keypoints import ArmKeypoints

#: The shoulders' signed separation over the trunk, (low, high), by view; from the truth bench, of
#: the front from real people. There nothing else in the picture tells a turned trunk better, nor
#: does the depth that the network gives. [project]
SEPARATION = {
    View.FRONT: (-1.1, -0.45),
    View.BACK: (0.3, 1.1),
    View.SIDE: (-0.42, 0.42),
    View.OBLIQUE: (-0.75, -0.2),
}
#: Share of the image's long side that a landmark must keep from the edge. [project]
EDGE_SHARE = 0.008
#: A landmark with a lower median visibility (0..1) is hidden. Hanging arms of real people whose
#: elbow is seen no better than this, and whose passes agree, are read as well as others. [project]
LEAST_VISIBILITY = 0.2
#: The same for the wrist, from which less of the reading comes. [project]
LEAST_WRIST_VISIBILITY = 0.03
#: Below this visibility the reading is noted as seen badly. [project]
WELL_VISIBLE = 0.3
#: Share of the frames in which a state must occur to count. [project]
OFTEN = 0.25
#: Fewer frames a second than this cannot show a hold. [project]
LEAST_FRAME_RATE = 4.5
#: Trunk axis against the vertical beyond this, degrees: the image is turned. [project]
TURNED_DEG = 50.0
#: Forward or backward lean of the trunk, degrees, that is noted, and refused. [project]
LEAN_NOTE_DEG, LEAN_REFUSE_DEG = 6.0, 12.0
#: Sideways lean of the trunk, degrees, that is noted, and refused. [project]
SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG = 5.0, 10.0


def by_threshold(value: float, note_at: float, refuse_at: float, reason: Reason) -> GateResult:
    """Return a note at `note_at` or more, a refusal at `refuse_at` or more; NaN gives none."""
    if value >= refuse_at:
        return refuse(reason)
    return note(reason) if value >= note_at else GateResult()


def picture_gates(track: Track, task: MeasurementTask, frames: Mask) -> GateResult:
    """Check that the person is there, and the needed landmarks inside the image and seen."""
    return person_gate(track) + picture_gate(track, task, frames)


def merge_results(results: Iterable[GateResult]) -> GateResult:
    return sum(results, GateResult())


def needed_marks(task: MeasurementTask) -> tuple[Landmark, ...]:
    """Return the landmarks without which the movement cannot be read."""
    own, other = arm(task.side), arm(task.side.other)
    marks = (own.shoulder, other.shoulder, own.hip, other.hip, own.elbow, own.wrist)
    return (*marks, own.thumb) if task.facts.behind_back else marks


def person_gate(track: Track) -> GateResult:
    """Check that one and the same person was seen, in enough readable frames."""
    if len(track) == 0:
        return refuse(Reason.NOBODY)
    share = {state: float(np.mean(track.state == state)) for state in FrameState}
    result = GateResult()
    if share[FrameState.SEEN] == 0:
        return refuse(Reason.NOBODY)
    if share[FrameState.OTHER_PERSON] + share[FrameState.AMBIGUOUS] > OFTEN:
        alone = bool(np.all(track.people <= 1))  # then it is a leap that was taken for another
        result += refuse(Reason.MOVED_FAST if alone else Reason.OTHER_PERSON)
    if share[FrameState.NOBODY] > OFTEN:
        result += refuse(Reason.PERSON_LOST)
    if share[FrameState.UNREADABLE] > OFTEN:
        result += refuse(Reason.UNREADABLE_FRAMES)
    elif share[FrameState.UNREADABLE] > 0:
        result += note(Reason.UNREADABLE_FRAMES)
    if float(np.mean(track.people > 1)) > OFTEN:
        result += note(Reason.TWO_PEOPLE)
    return result


def rate_gate(track: Track) -> GateResult:
    """Check that the coarse pass had enough frames a second to see a hold."""
    steps = np.diff(track.time_s)
    slow = len(steps) > 0 and float(np.median(steps)) > 1 / LEAST_FRAME_RATE
    return refuse(Reason.LOW_FRAME_RATE) if slow else GateResult()


def picture_gate(track: Track, task: MeasurementTask, frames: Mask) -> GateResult:
    """Check that the needed landmarks are inside the image and not hidden in `frames`."""
    if not np.any(frames):
        return GateResult()
    marks = list(needed_marks(task))
    points = track.points_px[frames][:, marks]
    edge = EDGE_SHARE * max(track.width_px, track.height_px)
    inside = (
        (points[..., 0] >= edge)
        & (points[..., 0] <= track.width_px - 1 - edge)
        & (points[..., 1] >= edge)
        & (points[..., 1] <= track.height_px - 1 - edge)
    ) | np.isnan(points[..., 0])
    result = GateResult()
    if float(np.max(np.mean(~inside, axis=0))) > OFTEN:
        result += refuse(Reason.OUT_OF_PICTURE)
    return result if task.facts.behind_back else result + _hidden_gate(track, task, frames)


def _hidden_gate(track: Track, task: MeasurementTask, frames: Mask) -> GateResult:
    """Check that shoulder, elbow, wrist and hips are seen."""
    own, other = arm(task.side), arm(task.side.other)
    marks = [mark for mark in needed_marks(task) if mark is not own.wrist]
    if task.view is View.SIDE:  # the far shoulder and hip are always hidden there
        marks = [mark for mark in marks if mark not in (other.shoulder, other.hip)]
    seen = min(_visibility(track, mark, frames) for mark in marks)
    wrist = _visibility(track, own.wrist, frames)
    if not (seen >= LEAST_VISIBILITY and wrist >= LEAST_WRIST_VISIBILITY):
        return refuse(Reason.HIDDEN)
    return GateResult() if min(seen, wrist) >= WELL_VISIBLE else note(Reason.HIDDEN)


def _visibility(track: Track, mark: Landmark, frames: Mask) -> float:
    """Return the median visibility of a landmark in the frames, 0..1; 0 where it is not stated."""
    both = np.minimum(track.visibility[frames, mark], track.presence[frames, mark])
    median = float(median_over(both, np.ones(len(both), dtype=bool)))
    return median if np.isfinite(median) else 0.0


def upright_gate(keypoints: ArmKeypoints, frames: Mask) -> GateResult:
    """Check that the head is above the hips: a turned picture still gives a confident pose."""
    up = median_over(direction_deg(keypoints.trunk), frames)
    head = median_over((keypoints.ear + keypoints.other_ear) / 2 - keypoints.mid_hip, frames)
    tilted = abs(float(wrap_deg(up - 90.0))) > TURNED_DEG
    return refuse(Reason.TURNED_PICTURE) if tilted or head[1] <= 0 else GateResult()


def view_gate(keypoints: ArmKeypoints, task: MeasurementTask, rest: Mask, hold: Mask) -> GateResult:
    """Check what the camera sees of the body, and that left and right were not exchanged."""
    view = task.known_view
    across = keypoints.separation_px / float(median_over(keypoints.trunk_px, rest))
    low, high = SEPARATION[view]
    at_rest, during = float(median_over(across, rest)), float(median_over(across, hold))
    if not low <= at_rest <= high:
        return refuse(_reason_of_view(task, at_rest))
    if view is View.SIDE:
        return refuse(Reason.FAR_ARM) if _is_far_arm(keypoints, rest) else GateResult()
    turned_round = {View.FRONT: during > high, View.BACK: during < low / 2}
    return refuse(Reason.SIDES_EXCHANGED) if turned_round.get(view, False) else GateResult()


def _reason_of_view(task: MeasurementTask, separation: float) -> Reason:
    """Return what is wrong with a separation of the shoulders that does not fit the view."""
    if task.facts.behind_back and separation <= SEPARATION[View.FRONT][1]:
        return Reason.FACING_CAMERA
    same_way = (separation < 0) == (task.view is View.FRONT)
    narrow = abs(separation) < min(map(abs, SEPARATION[task.known_view]))
    square_asked = task.view in (View.FRONT, View.BACK)
    return Reason.TRUNK_OBLIQUE if square_asked and same_way and narrow else Reason.WRONG_VIEW


def _is_far_arm(keypoints: ArmKeypoints, rest: Mask) -> bool:
    """Tell whether in a side view the nose points to the far arm's side of the picture."""
    ears = (keypoints.ear + keypoints.other_ear) / 2
    forwards = float(median_over((keypoints.nose - ears)[:, 0] / keypoints.trunk_px, rest))
    near_sign = 1.0 if keypoints.side is Side.RIGHT else -1.0
    return forwards * near_sign < 0


def lean_gate(keypoints: ArmKeypoints, view: View, rest: Mask, hold: Mask) -> GateResult:
    """Check how far the trunk leaned between rest and hold."""
    start, end = median_over(keypoints.trunk, rest), median_over(keypoints.trunk, hold)
    lean = abs(float(turn_deg(start, end)))
    if view is View.SIDE:
        return by_threshold(lean, LEAN_NOTE_DEG, LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)
    return by_threshold(lean, SIDE_LEAN_NOTE_DEG, SIDE_LEAN_REFUSE_DEG, Reason.TRUNK_LEAN)


def value_gate(movement: Movement, value: float) -> GateResult:
    """Check that the value can belong to a shoulder at all."""
    low, high = MOVEMENTS[movement].possible
    return GateResult() if low <= value <= high else refuse(Reason.IMPOSSIBLE_VALUE)
