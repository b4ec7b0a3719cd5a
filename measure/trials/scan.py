"""From the quick pass's track to the stretches of time worth a careful look."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import UNKNOWN_CAMERA, CameraSetup, Setup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from measure.domain.reasons import Reason, Verdict, refuse
from measure.domain.tracks import FrameState, Track
from measure.kinematics.angles import middle
from measure.kinematics.fusion import combine
from measure.kinematics.keypoints import posture_of
from measure.trials.quality_gates import (
    SEPARATION,
    person_gate,
    picture_gate,
    rate_gate,
    separation_share,
    upright_gate,
    view_gate,
)
from measure.trials.segmentation import Excursion, Search, Steps, find_trials
from measure.video.sampling import CAREFUL_HZ, NONE, Pace

#: A hold's values stay this close to their median: degrees and fraction. Ours.
STEADY = {Unit.DEGREES: 2.5, Unit.FRACTION: 0.02}
#: Times closer than this are of one frame.
_NEAR_S = 1e-6
#: Rest before a trial that the careful passes also see, seconds.
LEAD_S = 1.5
#: Of the rest before a trial the careful passes look at every so-manyth of their pictures. Ours.
REST_EVERY = 2
#: A shorter hold, seconds, has fewer than eight pictures at their usual rate, and what one picture
#: says scatters. Ours.
SHORT_HOLD_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """Trials of one movement in a track.

    Attributes
    ----------
    view
        The view given, or the one recognised.
    trials
        What the careful passes shall look at.
    windows
        Start and end in seconds for each trial.
    verdict
        Why there is nothing to look at, when `trials` is empty.
    guide
        Shape (n,): the quick value over the track's time.
    """

    view: View
    trials: tuple[Excursion, ...]
    windows: tuple[tuple[float, float], ...]
    verdict: Verdict
    guide: FloatArray


def steps_of(movement: Movement) -> Steps:
    """Return how the series of a movement behaves."""
    facts = MOVEMENTS[movement]
    return Steps(rest=facts.rest, least_travel=facts.least_travel, steady=STEADY[facts.unit])


def search(track: Track, movement: Movement, side: Side, view: View | None, setup: Setup) -> Found:
    """Return the trials in a quick track, or why there are none."""
    facts = MOVEMENTS[movement]
    nothing = np.full(len(track), np.nan)
    seen = track.state == FrameState.SEEN
    chosen = view or recognised_view(track, movement, side, setup.camera)
    if not np.any(seen):
        return Found(
            view=chosen, trials=(), windows=(), verdict=refuse(Reason.NOBODY), guide=nothing
        )
    if chosen not in facts.views:
        return Found(
            view=chosen, trials=(), windows=(), verdict=refuse(Reason.WRONG_VIEW), guide=nothing
        )
    too_slow = rate_gate(track)
    if too_slow.refused_for:
        return Found(view=chosen, trials=(), windows=(), verdict=too_slow, guide=nothing)
    no_rest = np.zeros(len(track), dtype=bool)
    guide = combine([track], movement, side, chosen, no_rest, setup).value
    result = find_trials(track.time_s, guide, steps_of(movement))
    trials = result.excursions
    if all(each.hold_start_s is None for each in trials) and person_gate(track).refused_for:
        trials = ()  # somebody who walks off swings an arm; that is no trial without a hold
    verdict = Verdict() if trials else _why_none(track, movement, side, chosen, result, setup)
    return Found(
        view=chosen,
        trials=trials,
        windows=tuple(window_of(each, movement) for each in trials),
        verdict=verdict,
        guide=guide,
    )


def window_of(trial: Excursion, movement: Movement) -> tuple[float, float]:
    """Return the stretch that the careful passes look at: rest, move, hold.

    External rotation needs the facing stance at the start of the source as well.
    """
    end = trial.end_s if trial.hold_end_s is None else min(trial.end_s, trial.hold_end_s + 0.4)
    if movement is Movement.EXTERNAL_ROTATION:
        return 0.0, end
    return max(trial.rest_start_s, trial.start_s - LEAD_S), end


def closeness(trials: Sequence[Excursion], movement: Movement, fps: float) -> int:
    """Return how many times their usual rate the careful passes need: 2 for a short hold, else 1.

    Parameters
    ----------
    fps
        Pictures a second that there are.
    """
    if movement is Movement.EXTERNAL_ROTATION or fps < 2 * CAREFUL_HZ:
        return 1
    return 2 if any(_is_short(each) for each in trials) else 1


def paces_of(trials: Sequence[Excursion], movement: Movement, times: int = 1) -> tuple[Pace, ...]:
    """Return which of their pictures the careful passes look at.

    Of a hold those of the usual rate, of a short one all. Of the rest half as many are enough, and
    of the ways up and down none, since places do not depend on the pace
    (:class:`measure.pose.network.Landmarker`). Of external rotation all are looked at: how far the
    person has turned is read from every one. Where no hold was seen it is looked for anew.

    Parameters
    ----------
    times
        How many times the usual rate the pictures come at; see :func:`closeness`.
    """
    if movement is Movement.EXTERNAL_ROTATION:
        return ()
    holds: list[Pace] = []
    others: list[Pace] = []
    for trial in trials:
        start_s, end_s = window_of(trial, movement)
        if trial.hold_start_s is None or trial.hold_end_s is None:
            holds.append((start_s, end_s, times))
            continue
        every = 1 if _is_short(trial) else times
        holds.append((trial.hold_start_s, trial.hold_end_s, every))
        others.append((trial.rest_end_s + _NEAR_S, trial.hold_start_s, NONE))
        others.append((trial.hold_end_s, end_s, NONE))
        others.append((start_s, end_s, REST_EVERY * times))
    return (*holds, *others)


def _is_short(trial: Excursion) -> bool:
    if trial.hold_start_s is None or trial.hold_end_s is None:
        return False
    return trial.hold_end_s - trial.hold_start_s < SHORT_HOLD_S


def recognised_view(
    track: Track, movement: Movement, side: Side, camera: CameraSetup = UNKNOWN_CAMERA
) -> View:
    """Return the accepted view that fits the shoulders' separation, else the preferred one."""
    views = MOVEMENTS[movement].views
    if len(views) == 1 or len(track) == 0:
        return views[0]
    posture = posture_of(track, side, camera)
    everywhere = np.ones(len(track), dtype=bool)
    across = float(
        middle(separation_share(posture, float(middle(posture.trunk_px, everywhere))), everywhere)
    )
    for view in views:
        low, high = SEPARATION[view]
        if low <= across <= high:
            return view
    return views[0]


def _why_none(
    track: Track, movement: Movement, side: Side, view: View, result: Search, setup: Setup
) -> Verdict:
    """Return why no trial was found: the person, the view, or the movement itself."""
    posture = posture_of(track, side, setup.camera)
    seen = track.state == FrameState.SEEN
    verdict = person_gate(track)
    if not verdict.refused_for:
        verdict += upright_gate(posture, seen)
    if not verdict.refused_for:
        verdict += picture_gate(track, movement, side, seen)
    if not verdict.refused_for and movement is not Movement.EXTERNAL_ROTATION:
        verdict += view_gate(posture, movement, view, seen, seen)
    if verdict.refused_for:
        return verdict
    if result.moved and not result.neutral_seen:
        return verdict + refuse(Reason.NO_NEUTRAL)
    return verdict + refuse(Reason.NO_MOVE)
