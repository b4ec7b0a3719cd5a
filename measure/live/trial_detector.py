"""Online trial detection: the phase of a movement while it goes on, and its completed trials.

Trials are found by the same scan as in a clip, on the coarse pass's observations since the last
trial. Values and times come from outside; no processes, no clock.
"""

from dataclasses import dataclass, replace

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.domain.tracks import Track
from measure.kinematics.angles import median_over
from measure.kinematics.fusion import FusedSeries, keypoints_of_passes
from measure.kinematics.rotation_phases import rotation_phases
from measure.live.events import Phase
from measure.live.frame_buffer import FrameBuffer
from measure.pose.jobs import KeptPicture
from measure.tracking.online import SubjectPose
from measure.trials.little_movement import held_until_now
from measure.trials.movement_model import model_of
from measure.trials.scan import LEAD_S, ScanResult, scan_for_trials, window_of
from measure.trials.segmentation import HOLD_SHARE, TrialCandidate, segment_trials
from measure.video.frame import PixelArray

#: How long people are asked to hold, seconds: more than the least hold, so that its edges may be
#: lost. [project]
HOLD_ASKED_S = 1.6
#: Stillness of this length, seconds, begins to fill the band; a slow move is as still as that for
#: less. [project]
_HOLD_SHOWN_S = 0.5
#: A way up and back without a hold, shorter than this, seconds, is no attempt at the movement.
#: [project]
_FIDGET_S = 1.5
#: Wait after a hold, seconds, so that the frames that follow it are there too. [project]
_AFTER_HOLD_S = 0.45
#: A small move counts as a trial when it is held for this long, seconds: on the way to a larger one
#: nobody rests so long. [project]
_LITTLE_HOLD_S = 2.5
#: Wait after the hold of a hand that hardly rose, seconds: its height does not tell its return.
#: [project]
_AFTER_LITTLE_S = 1.0
#: A person lost for this long, seconds, in the middle of a trial has to begin anew. [project]
_LOST_S = 3.0
#: Without the person for most of this time, seconds, the phase is the search for a person.
#: [project]
_SEEN_S = 1.0
#: Rest whose observations are kept before a move begins, seconds. [project]
_REST_S = 12.0
#: Rest whose frames are kept, seconds: a very slow move needs them from before it was noticed.
#: [project]
_REST_PICTURES_S = 8.0
#: A trial with fewer frames cannot be refined. [project]
_LEAST_PICTURES = 4
#: How much of the facing phase is carried over to the next trial, seconds. [project]
_FACING_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class CapturedTrial:
    """A trial as the coarse pass found it, and what the fine passes need.

    Attributes
    ----------
    task
        With the view that was given, or recognised.
    coarse
        The coarse pass's track, from before its rest to its end.
    pictures
        The fine passes' frames, in order of time.
    """

    candidate: TrialCandidate
    task: MeasurementTask
    coarse: Track
    pictures: tuple[KeptPicture, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialProgress:
    """Phase of the movement.

    Attributes
    ----------
    phase
        SEARCHING_FOR_PERSON, WAIT_NEUTRAL, MOVE, HOLD or RETURN; REST when another trial may
        begin.
    hold_share
        How much of the hold is done, 0..1.
    value
        The coarse value, or None.
    """

    phase: Phase
    hold_share: float = 0.0
    value: float | None = None


class OnlineTrialDetector:
    """Finds the trials of one task, one after the other.

    Parameters
    ----------
    task
        Its view is what the camera sees, or None to recognise it with the first trial.
    size_px
        Width and height of the full-size frame.

    Attributes
    ----------
    task
        With the view that was given or recognised; None before the first trial.
    progress
        As of the last frame.
    scan
        Of the observations since the last trial; None just after one.
    """

    def __init__(self, task: MeasurementTask, size_px: tuple[int, int]) -> None:
        self.task = task
        self.progress = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
        self.scan: ScanResult | None = None
        self._model = model_of(task.movement)
        self._kept = FrameBuffer(size_px)
        self._captured_one = False
        self._captured_usual = False
        self._held = False
        self._lost = False
        self._seen_s = -np.inf
        self._scanned_view: View | None = task.view

    @property
    def gate_result(self) -> GateResult:
        """What the scan says about the frames since the last trial, when it found none."""
        if self.scan is None:
            return refuse(Reason.PERSON_LOST if self._lost else Reason.NOBODY)
        return self.scan.gate_result

    def add_picture(self, rgb: PixelArray, index: int, time_s: float) -> None:
        """Keep a frame at the fine passes' rate."""
        self._kept.add_picture(rgb, index, time_s)

    def update(self, time_s: float, person: SubjectPose) -> CapturedTrial | None:
        """Take a frame at the coarse rate; return the trial that it completes, if any."""
        self._kept.add_observation(time_s, person)
        if person.points_px is not None:
            self._seen_s = time_s
        elif time_s - self._seen_s > _LOST_S:
            self._start_anew(time_s)
            self._lost = True
            self.progress = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
            return None
        scan = self._scan_now()
        if scan.trials:
            trial, window = scan.trials[0], scan.windows[0]
            if len(scan.trials) > 1 or self._is_over(trial, scan.fused):
                captured = self._captured(scan, trial, window)
                self._start_anew(trial.end_s)
                self._note_progress()
                return captured
        else:
            self._forget_rest(scan.guide, time_s)
        self._note_progress()
        return None

    def finish(self) -> tuple[CapturedTrial, ...]:
        """Return the trials that had been made when the source ended."""
        if self.scan is None:
            return ()
        pairs = zip(self.scan.trials, self.scan.windows, strict=True)
        captured = [self._captured(self.scan, trial, window) for trial, window in pairs]
        self._start_anew(np.inf)
        return tuple(trial for trial in captured if trial is not None)

    def take_position(self) -> CapturedTrial | None:
        """Return the position that is held now as a trial; None where the arm is not still.

        For a person who says that it goes no farther: then next to no movement is a trial too.
        """
        if self.scan is None:
            return None
        params = self._model.segmentation
        held = held_until_now(self.scan.fused.time_s, self.scan.guide, params)
        if held is None:
            return None
        window = window_of(held, self.scan.task.movement)
        captured = self._captured(self.scan, held, window)
        self._start_anew(held.end_s)
        self._note_progress()
        return captured

    @property
    def is_under_way(self) -> bool:
        """Whether the arm has left its place."""
        return self.progress.phase in (Phase.HOLD, Phase.RETURN) or bool(
            self.scan is not None and self.scan.trials
        )

    def start_anew(self, time_s: float) -> None:
        """Forget what was seen before a time: a trial that was going on does not count."""
        self._start_anew(time_s)
        self._kept.drop_retained()
        self.progress = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)

    def value_of(self, person: SubjectPose, time_s: float) -> float | None:
        """Return the coarse value of one frame; between scans only where the movement allows it."""
        if person.points_px is None:
            return None
        if self._model.starts_facing or self._scanned_view is None:
            return self.progress.value
        frame = FrameBuffer(self._kept.size_px)
        frame.add_observation(time_s, person)
        task = self.task.seen_from(self._scanned_view)
        no_rest = np.zeros(1, dtype=bool)
        fused = self._model.estimate(keypoints_of_passes([frame.track()], task), task, no_rest)
        return value_or_none(fused.value[0])

    def _scan_now(self) -> ScanResult:
        if self._model.starts_facing and self._kept.retains:
            fresh = keypoints_of_passes([self._kept.track(with_retained=False)], self.task)
            if np.any(rotation_phases(fresh.median).facing):
                self._kept.drop_retained()
        self.scan = self._without_pauses(scan_for_trials(self._kept.track(), self.task))
        self._scanned_view = self.scan.view
        return self.scan

    def _without_pauses(self, scan: ScanResult) -> ScanResult:
        """Return the scan less small moves that a larger one may still follow.

        One that is held for long stays, if no trial of the usual size was seen of this person.
        """
        chosen = [
            (trial, window)
            for trial, window in zip(scan.trials, scan.windows, strict=True)
            if not trial.little or (not self._captured_usual and _is_held_long(trial, scan))
        ]
        if len(chosen) == len(scan.trials):
            return scan
        return replace(
            scan,
            trials=tuple(trial for trial, _ in chosen),
            windows=tuple(window for _, window in chosen),
            gate_result=scan.gate_result if chosen else refuse(Reason.NO_MOVE),
        )

    def _is_over(self, trial: TrialCandidate, fused: FusedSeries) -> bool:
        """Tell whether the arm has come back so far that the trial cannot change any more."""
        finite = np.isfinite(fused.value)
        time_s, values = fused.time_s[finite], fused.value[finite]
        late = values[-2:]
        if trial.hold_start_s is None or trial.hold_end_s is None:
            least_travel = self._model.segmentation.least_travel
            return bool(np.all(late <= trial.rest_value + least_travel / 2))
        holding = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
        half_way = (float(np.median(values[holding])) - trial.rest_value) / 2
        if trial.little and abs(half_way) < self._model.facts.least_step / 2:
            return bool(time_s[-1] >= trial.hold_end_s + _AFTER_LITTLE_S)
        waited = bool(time_s[-1] >= trial.hold_end_s + _AFTER_HOLD_S)
        left = (late - trial.rest_value) * np.sign(half_way)  # of a small move, either way
        return waited and bool(np.all(left < abs(half_way)))

    def _captured(
        self, scan: ScanResult, trial: TrialCandidate, window: tuple[float, float]
    ) -> CapturedTrial | None:
        """Return a trial with what belongs to it, or None for one that does not count."""
        start_s, end_s = window
        if self._model.starts_facing:
            if self._kept.retains:
                start_s = trial.rest_start_s - LEAD_S
            start_s = max(start_s, self._kept.whole_from_s)
        fidget = trial.hold_start_s is None and trial.end_s - trial.start_s < _FIDGET_S
        pictures = self._kept.pictures(start_s, end_s)
        if self._model.starts_facing:
            self._carry_facing_over(scan.fused)
        if fidget or start_s < self._kept.whole_from_s or len(pictures) < _LEAST_PICTURES:
            return None
        self._captured_one = True
        self._captured_usual = self._captured_usual or not trial.little
        self.task = scan.task
        return CapturedTrial(
            candidate=trial, task=scan.task, coarse=scan.fused.keypoints.track, pictures=pictures
        )

    def _carry_facing_over(self, fused: FusedSeries) -> None:
        """Keep the end of the facing phase for trials that follow without another one."""
        assert fused.rotation_phases is not None
        facing = fused.time_s[fused.rotation_phases.facing]
        if len(facing):
            self._kept.retain(max(facing[0], facing[-1] - _FACING_S), facing[-1])

    def _start_anew(self, time_s: float) -> None:
        self._kept.forget_before(time_s)
        self._held = False
        self.scan = None

    def _forget_rest(self, guide: FloatArray, time_s: float) -> None:
        """Drop what is too old to belong to a trial, while the arm has not left its place."""
        values = guide[np.isfinite(guide)]
        centre, tolerance = self._model.segmentation.rest
        resting = len(values) == 0 or abs(values[-1] - centre) <= tolerance
        if resting and not self._model.starts_facing:
            self._kept.forget_before(time_s - _REST_S)
            self._kept.forget_pictures_before(time_s - _REST_PICTURES_S)

    def _note_progress(self) -> None:
        """Work out the phase from the last scan."""
        scan, waiting = self.scan, Phase.RETURN if self._captured_one else Phase.WAIT_NEUTRAL
        if scan is None:
            self.progress = TrialProgress(phase=waiting, value=self.progress.value)
        elif not self._kept.seen_lately(_SEEN_S):
            self.progress = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
        elif scan.trials:
            self.progress = self._under_way(scan.trials[0], scan.fused)
        else:
            params, value = self._model.segmentation, value_or_none(scan.guide[-1])
            neutral = segment_trials(scan.fused.time_s, scan.guide, params).neutral_seen
            centre, tolerance = params.rest
            away = value is not None and value > centre + tolerance
            moving = Phase.MOVE if away else self._ready
            self.progress = TrialProgress(phase=moving if neutral else waiting, value=value)

    @property
    def _ready(self) -> Phase:
        return Phase.REST if self._captured_one else Phase.MOVE

    def _under_way(self, trial: TrialCandidate, fused: FusedSeries) -> TrialProgress:
        """Return move, hold or return, and how much of the hold is done."""
        value = value_or_none(fused.value[-1])
        within = np.isfinite(fused.value) & (fused.time_s >= trial.start_s)
        time_s, values = fused.time_s[within], fused.value[within]
        top = float(np.percentile(values, 95))
        floor = trial.rest_value + HOLD_SHARE * (top - trial.rest_value)
        first = len(values)
        while first > 0 and values[first - 1] >= floor:
            if np.ptp(values[first - 1 :]) > 2 * self._model.segmentation.steady:
                break
            first -= 1
        still_s = float(time_s[-1] - time_s[first]) if first < len(values) else 0.0
        share = min(1.0, still_s / HOLD_ASKED_S)
        self._held = self._held or share >= 1.0
        if self._held:
            return TrialProgress(phase=Phase.RETURN, hold_share=1.0, value=value)
        if still_s >= _HOLD_SHOWN_S:
            return TrialProgress(phase=Phase.HOLD, hold_share=share, value=value)
        returning = trial.hold_start_s is not None
        return TrialProgress(phase=Phase.RETURN if returning else Phase.MOVE, value=value)


def value_or_none(value: float) -> float | None:
    """Return a number, or None for NaN."""
    return float(value) if np.isfinite(value) else None


def _is_held_long(trial: TrialCandidate, scan: ScanResult) -> bool:
    """Tell whether a small move is held for long; a position that nothing led to is none."""
    if trial.hold_start_s is None or trial.hold_end_s is None:
        return False
    time_s, facts = scan.fused.time_s, scan.task.facts
    holding = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
    step = abs(float(median_over(scan.fused.value, holding)) - trial.rest_value)
    led = facts.behind_back or step >= facts.least_step / 2
    return led and trial.hold_end_s - trial.hold_start_s >= _LITTLE_HOLD_S
