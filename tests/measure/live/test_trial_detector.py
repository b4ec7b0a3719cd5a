"""Finding trials while they go on: a stick figure, frame by frame."""

from itertools import pairwise

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.live.events import Phase
from measure.live.trial_detector import HOLD_ASKED_S, OnlineTrialDetector
from measure.tracking.online import SubjectPose
from measure.trials.scan import scan_for_trials
from measure.video.sampling import COARSE_HZ, FINE_HZ
from tests.measure.kinematics.test_rotation import rotation_track
from tests.support.live_figures import person, picture
from tests.support.stick_figure import elevation_track, raise_and_hold

SIZE = (640, 480)
FLEXION = (Movement.FLEXION, Side.RIGHT, View.SIDE)
NOBODY = SubjectPose(state=FrameState.NOBODY, people=0)


def play(watch, series, *, start_s=0.0, movement=FLEXION, absent=()):
    """Feed a series at the coarse rate, frames at the fine one; return trials and progresses."""
    return play_track(watch, elevation_track(series, *movement), start_s=start_s, absent=absent)


def play_track(watch, track, *, start_s=0.0, absent=()):
    """Feed a track, as :func:`play` does."""
    captured, progresses = [], []
    pictures = 0
    for n in range(len(track)):
        time_s = start_s + float(track.time_s[n])
        while start_s + pictures / FINE_HZ <= time_s + 1e-9:
            watch.add_picture(picture(n), pictures, start_s + pictures / FINE_HZ)
            pictures += 1
        trial = watch.update(time_s, NOBODY if n in absent else person(track, n))
        if trial is not None:
            captured.append(trial)
        progresses.append(watch.progress)
    return captured, progresses


def watch_for(movement=FLEXION):
    return OnlineTrialDetector(MeasurementTask(*movement[:2]), SIZE)


def phases_of(progresses):
    phases = [progress.phase for progress in progresses]
    return [phases[0], *(after for before, after in pairwise(phases) if after is not before)]


def test_a_trial_is_captured_on_the_way_back_and_is_the_one_that_a_clip_gives():
    series = raise_and_hold(118.0, after_s=2.0)
    captured, progresses = play(watch_for(), series)
    track = elevation_track(series, *FLEXION)
    in_clip = scan_for_trials(track, MeasurementTask(Movement.FLEXION, Side.RIGHT))
    (trial,) = captured
    assert trial.candidate.hold_start_s == in_clip.trials[0].hold_start_s
    assert trial.candidate.hold_end_s == in_clip.trials[0].hold_end_s
    assert trial.candidate.rest_end_s == in_clip.trials[0].rest_end_s
    start_s, end_s = in_clip.windows[0]
    assert trial.pictures[0].time_s == pytest.approx(start_s, abs=1.1 / FINE_HZ)
    assert trial.pictures[-1].time_s == pytest.approx(end_s, abs=1.1 / FINE_HZ)
    assert phases_of(progresses) == [
        Phase.WAIT_NEUTRAL,
        Phase.MOVE,
        Phase.HOLD,
        Phase.RETURN,
        Phase.REST,
    ]


def test_the_ring_fills_once_while_the_arm_is_still():
    _, progresses = play(watch_for(), raise_and_hold(100.0, hold_s=2.4))
    shares = [progress.hold_share for progress in progresses if progress.phase is Phase.HOLD]
    assert shares == sorted(shares)
    assert shares[0] < 0.6
    assert shares[-1] >= 1 - 1 / COARSE_HZ / HOLD_ASKED_S - 0.01
    assert max(progress.hold_share for progress in progresses) == 1.0


def test_three_trials_one_after_the_other():
    series = np.concatenate([raise_and_hold(peak) for peak in (80, 95, 88)])
    watch = watch_for()
    captured, _ = play(watch, series)
    assert len(captured) == 3
    assert all(trial.task.view is View.SIDE for trial in captured)
    assert watch.task.view is View.SIDE
    ends = [trial.candidate.end_s for trial in captured]
    assert ends == sorted(ends)


def test_no_trial_twice_and_pictures_dropped_after_each():
    watch = watch_for()
    first, _ = play(watch, raise_and_hold(90.0, after_s=2.0))
    second, _ = play(watch, np.zeros(60), start_s=20.0)
    assert len(first) == 1
    assert second == []
    third, _ = play(watch, raise_and_hold(90.0, after_s=2.0), start_s=40.0)
    assert third[0].pictures[0].time_s > 39.0


def test_a_fidget_is_no_trial_but_an_attempt_without_a_hold_is_one():
    short = raise_and_hold(60.0, move_s=0.5, hold_s=0.0, after_s=2.0)
    slow = raise_and_hold(120.0, move_s=1.6, hold_s=0.15, after_s=2.0)
    assert play(watch_for(), short)[0] == []
    ((trial,), _) = play(watch_for(), slow)
    assert trial.candidate.hold_start_s is None


def test_a_source_that_ends_in_the_hold_still_gives_its_trial():
    series = raise_and_hold(90.0)
    in_hold = series[: round((1.2 + 2.0 + 1.5) * COARSE_HZ)]
    watch = watch_for()
    captured, _ = play(watch, in_hold)
    assert captured == []
    (trial,) = watch.finish()
    assert trial.candidate.hold_start_s is not None
    assert watch.finish() == ()


def test_starting_anew_forgets_a_trial_under_way():
    watch = watch_for()
    series = raise_and_hold(90.0, after_s=2.0)
    half = len(series) // 2
    play(watch, series[:half])
    assert watch.is_under_way
    watch.start_anew(half / COARSE_HZ)
    captured, _ = play(watch, series[half:], start_s=half / COARSE_HZ)
    assert captured == []


def test_a_person_lost_for_long_has_to_begin_anew():
    series = raise_and_hold(90.0, hold_s=6.0)
    absent = range(20, 20 + round(3.5 * COARSE_HZ))
    watch = watch_for()
    captured, progresses = play(watch, series, absent=absent)
    assert captured == []
    assert Phase.SEARCHING_FOR_PERSON in [progress.phase for progress in progresses]


def test_a_person_who_walks_off_is_told_as_the_reason():
    watch = watch_for()
    play(watch, np.zeros(60), absent=range(20, 60))
    assert watch.gate_result.refused_for == (Reason.PERSON_LOST,)


def test_an_arm_that_never_rests_waits_for_neutral():
    watch = watch_for()
    captured, progresses = play(watch, np.full(40, 70.0))
    assert captured == []
    assert progresses[-1].phase is Phase.WAIT_NEUTRAL
    assert Reason.NO_MOVE in watch.gate_result.refused_for


def test_long_rest_takes_no_more_memory():
    watch = watch_for()
    play(watch, np.zeros(round(60 * COARSE_HZ)))
    assert len(watch._kept.pictures(0.0, 1e9)) <= 9 * FINE_HZ
    assert len(watch.scan.guide) <= 13 * COARSE_HZ


def test_a_trial_after_a_long_rest_has_all_its_pictures():
    series = np.concatenate([np.zeros(300), raise_and_hold(90.0, after_s=2.0)])
    ((trial,), _) = play(watch_for(), series)
    start_s = max(trial.candidate.rest_start_s, trial.candidate.start_s - 1.5)
    assert trial.pictures[0].time_s <= start_s + 1.1 / FINE_HZ


def test_a_trial_longer_than_memory_is_dropped():
    series = raise_and_hold(90.0, hold_s=50.0, after_s=2.0)
    assert play(watch_for(), series)[0] == []


def test_the_value_of_a_frame_between_inferences_is_that_of_the_scan():
    watch = watch_for()
    series = raise_and_hold(90.0)[:25]
    play(watch, series)
    track = elevation_track(series, *FLEXION)
    assert watch.value_of(person(track, 20), 99.0) == pytest.approx(watch.scan.guide[20])
    assert watch.value_of(NOBODY, 99.0) is None


ABDUCTION = (Movement.ABDUCTION, Side.LEFT, View.FRONT)


def test_a_small_raise_counts_when_it_is_held_for_long():
    long = raise_and_hold(12.0, hold_s=3.5, after_s=2.0)
    ((trial,), _) = play(watch_for(ABDUCTION), long, movement=ABDUCTION)
    assert trial.candidate.little
    short = raise_and_hold(12.0, hold_s=1.6, after_s=2.0)
    assert play(watch_for(ABDUCTION), short, movement=ABDUCTION)[0] == []


def test_a_pause_on_the_way_up_is_no_trial_and_none_counts_after_a_usual_one():
    paused = np.concatenate(
        [raise_and_hold(12.0, hold_s=3.5)[:30], raise_and_hold(80.0, rest=12.0)]
    )
    captured, _ = play(watch_for(ABDUCTION), paused[:-6], movement=ABDUCTION)
    assert [trial.candidate.little for trial in captured] == [False]
    watch = watch_for(ABDUCTION)
    first, _ = play(watch, raise_and_hold(80.0, after_s=2.0), movement=ABDUCTION)
    stir = raise_and_hold(12.0, hold_s=3.5, after_s=2.0)
    second, _ = play(watch, stir, start_s=20.0, movement=ABDUCTION)
    assert len(first) == 1
    assert second == []


def test_a_small_rotation_inwards_is_over_when_the_forearm_comes_back():
    zero, held = [-45.0] * 12, [-58.0] * 20
    on, back = list(np.linspace(-59, -63, 5)), list(np.linspace(-55, -45, 4)) + [-45.0] * 4
    for rest_of_it, trials in ((on, 0), (back, 1)):
        watch = OnlineTrialDetector(
            MeasurementTask(Movement.EXTERNAL_ROTATION, Side.LEFT, View.OBLIQUE), SIZE
        )
        captured, _ = play_track(watch, rotation_track(zero + held + rest_of_it, Side.LEFT))
        assert len(captured) == trials


@pytest.mark.parametrize("peak", [0.0, 4.0, 8.0])
def test_a_position_that_the_person_says_is_the_end_is_a_trial(peak):
    watch = watch_for(ABDUCTION)
    held = raise_and_hold(peak, rest_s=1.5, hold_s=2.5, after_s=0.0)
    held = held[: round((1.5 + 2.0 + 2.5) * COARSE_HZ)]
    assert play(watch, held, movement=ABDUCTION)[0] == []
    trial = watch.take_position()
    assert trial is not None
    assert trial.candidate.little
    assert trial.candidate.hold_end_s == pytest.approx((len(held) - 1) / COARSE_HZ)
    assert len(trial.pictures) > 4
    assert watch.take_position() is None


def test_a_moving_arm_is_no_position():
    watch = watch_for(ABDUCTION)
    rising = raise_and_hold(90.0)[: round(2.4 * COARSE_HZ)]
    play(watch, rising, movement=ABDUCTION)
    assert watch.take_position() is None
