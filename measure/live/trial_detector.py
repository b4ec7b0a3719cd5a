"""Watches one movement while it goes on: where it stands, and when a trial has been made.

Trials are found by the same search as in a clip, on what the quick look has seen since the last
trial. Values and times come from outside; no processes, no clock.
"""

from dataclasses import dataclass

import numpy as np

from measure.domain.acquisition import Setup
from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement, View
from measure.domain.reasons import GateResult, Reason, refuse
from measure.domain.tracks import Track
from measure.kinematics.fusion import fuse_passes
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.rotation_phases import rotation_phases
from measure.live.events import Phase
from measure.live.frame_buffer import FrameBuffer
from measure.pose.picture_job import KeptPicture
from measure.tracking.online import SubjectPose
from measure.trials.scan import LEAD_S, ScanResult, scan_for_trials, segmentation_params
from measure.trials.segmentation import HOLD_SHARE, TrialCandidate, segment_trials
from measure.video.frame import PixelArray

#: How long people are asked to hold, seconds. Ours: more than the least hold, so that its edges
#: may be lost.
HOLD_ASKED_S = 1.6

#: Stillness of this length begins to fill the ring; a slow move is as still as that for less.
_HOLD_SHOWN_S = 0.5

#: A way up and back without a hold, shorter than this, is no attempt at the movement. Ours.
_FIDGET_S = 1.5

#: Wait after a hold, so that the pictures that follow it are there too, seconds.
_AFTER_HOLD_S = 0.45

#: A person lost for so long in the middle of a trial has to begin anew. Ours.
_LOST_S = 3.0

#: Without the person for most of so long, somebody is looked for, seconds.
_SEEN_S = 1.0

#: Rest that is kept before a move begins, seconds: looks, and pictures, which a very slow move
#: needs from before it was noticed. Ours.
_REST_S, _REST_PICTURES_S = 12.0, 8.0

#: A trial with fewer pictures cannot be looked at again.
_LEAST_PICTURES = 4

#: So much of the facing stance is carried over to the next trial, seconds.
_FACING_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class CapturedTrial:
    """A trial as the quick look found it, and what the careful look needs.

    Attributes
    ----------
    found, view
        As in :class:`measure.trials.scan.ScanResult`.
    quick
        The quick look's track, from before its rest to its end.
    pictures
        The careful passes' pictures, in order of time.
    size_px
        Width and height of the full-size picture.
    """

    found: TrialCandidate
    view: View
    coarse: Track
    pictures: tuple[KeptPicture, ...]
    size_px: tuple[int, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class TrialProgress:
    """Where the movement stands.

    Attributes
    ----------
    phase
        LOOKING_FOR_PERSON, WAIT_NEUTRAL, MOVE, HOLD or RETURN; REST when another trial may
        begin.
    hold_share
        How much of the hold is done, 0..1.
    value
        The quick value, or None.
    """

    phase: Phase
    hold_share: float = 0.0
    value: float | None = None


class OnlineTrialDetector:
    """Finds the trials of one movement of one side, one after the other.

    Parameters
    ----------
    size_px
        Width and height of the full-size picture.
    view
        What the camera sees, or None to recognise it with the first trial.

    Attributes
    ----------
    standing
        As of the last frame.
    view
        The one given or recognised; None before the first trial.
    track
        What the quick look saw since the last trial; None just after one.
    """

    def __init__(
        self,
        movement: Movement,
        side: Side,
        setup: Setup,
        size_px: tuple[int, int],
        view: View | None = None,
    ) -> None:
        self.standing = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
        self.view = view
        self.movement = movement
        self.side = side
        self._setup = setup
        self._steps = segmentation_params(movement)
        self._kept = FrameBuffer(size_px)
        self._captured_one = False
        self._held = False
        self._lost = False
        self._seen_s = -np.inf
        self._found: ScanResult | None = None
        self._view_seen: View | None = view
        self.track: Track | None = None

    @property
    def view_seen(self) -> View | None:
        """The view as the last search took it."""
        return self._view_seen

    @property
    def verdict(self) -> GateResult:
        """What the search says about the frames since the last trial, when it found none."""
        if self._found is None:
            return refuse(Reason.PERSON_LOST if self._lost else Reason.NOBODY)
        return self._found.verdict

    @property
    def guide(self) -> FloatArray:
        """The quick value over the frames of `track`."""
        return np.empty(0) if self._found is None else self._found.guide

    def add_picture(self, rgb: PixelArray, index: int, time_s: float) -> None:
        """Keep a picture of the careful passes' grid."""
        self._kept.add_picture(rgb, index, time_s)

    def update(self, time_s: float, person: SubjectPose) -> CapturedTrial | None:
        """Take a frame of the quick grid; return the trial that it completes, if any."""
        self._kept.add_observation(time_s, person)
        if person.points_px is not None:
            self._seen_s = time_s
        elif time_s - self._seen_s > _LOST_S:
            self._start_anew(time_s)
            self._lost = True
            self.standing = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
            return None
        track, found = self._search()
        if found.trials:
            trial, window = found.trials[0], found.windows[0]
            if len(found.trials) > 1 or self._is_over(trial, track, found.guide):
                captured = self._captured(trial, window)
                self._start_anew(trial.end_s)
                self._note_standing(time_s)
                return captured
        else:
            self._forget_rest(found.guide, time_s)
        self._note_standing(time_s)
        return None

    def finish(self) -> tuple[CapturedTrial, ...]:
        """Return the trials that had been made when the source ended."""
        if self._found is None:
            return ()
        pairs = zip(self._found.trials, self._found.windows, strict=True)
        captured = [self._captured(trial, window) for trial, window in pairs]
        self._start_anew(np.inf)
        return tuple(each for each in captured if each is not None)

    @property
    def is_under_way(self) -> bool:
        """Whether the arm has left its place."""
        return self.standing.phase in (Phase.HOLD, Phase.RETURN) or bool(
            self._found is not None and self._found.trials
        )

    def start_anew(self, time_s: float) -> None:
        """Forget what was seen before a time: a trial that was going on does not count."""
        self._start_anew(time_s)
        self._kept.drop_retained()
        self.standing = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)

    def value_of(self, person: SubjectPose, time_s: float) -> float | None:
        """Return the quick value of one frame; between looks only for movements that allow it."""
        if person.points_px is None:
            return None
        if self.movement is Movement.EXTERNAL_ROTATION or self._view_seen is None:
            return self.standing.value
        one = FrameBuffer(self._kept.size_px)
        one.add_observation(time_s, person)
        alone = np.zeros(1, dtype=bool)
        series = fuse_passes(
            [one.track()], self.movement, self.side, self._view_seen, alone, self._setup
        )
        return known_or_none(series.value[0])

    def _search(self) -> tuple[Track, ScanResult]:
        if self.movement is Movement.EXTERNAL_ROTATION:
            fresh = self._kept.track(with_retained=False)
            if np.any(rotation_phases(arm_keypoints(fresh, self.side, self._setup.camera)).facing):
                self._kept.drop_retained()
        track = self._kept.track()
        found = scan_for_trials(track, self.movement, self.side, self.view, self._setup)
        self.track, self._found, self._view_seen = track, found, found.view
        return track, found

    def _is_over(self, trial: TrialCandidate, track: Track, guide: FloatArray) -> bool:
        """Tell whether the arm has come back so far that the trial cannot change any more."""
        known = np.isfinite(guide)
        time_s, values = track.time_s[known], guide[known]
        late = values[-2:]
        if trial.hold_start_s is None or trial.hold_end_s is None:
            return bool(np.all(late <= trial.rest_value + self._steps.least_travel / 2))
        holding = (time_s >= trial.hold_start_s) & (time_s <= trial.hold_end_s)
        half = (trial.rest_value + float(np.median(values[holding]))) / 2
        waited = bool(time_s[-1] >= trial.hold_end_s + _AFTER_HOLD_S)
        return waited and bool(np.all(late < half))

    def _captured(self, trial: TrialCandidate, window: tuple[float, float]) -> CapturedTrial | None:
        """Return a trial with what belongs to it, or None for one that is none."""
        assert self.track is not None
        assert self._found is not None
        start_s, end_s = window
        if self.movement is Movement.EXTERNAL_ROTATION:
            if self._kept.retains:
                start_s = trial.rest_start_s - LEAD_S
            start_s = max(start_s, self._kept.whole_from_s)
        fidget = trial.hold_start_s is None and trial.end_s - trial.start_s < _FIDGET_S
        pictures = self._kept.pictures(start_s, end_s)
        if self.movement is Movement.EXTERNAL_ROTATION:
            self._carry_facing_over(self.track)
        if fidget or start_s < self._kept.whole_from_s or len(pictures) < _LEAST_PICTURES:
            return None
        self._captured_one = True
        self.view = self._found.view
        return CapturedTrial(
            found=trial,
            view=self._found.view,
            coarse=self.track,
            pictures=pictures,
            size_px=self._kept.size_px,
        )

    def _carry_facing_over(self, track: Track) -> None:
        """Keep the end of the facing stance for trials that follow without another one."""
        posture = arm_keypoints(track, self.side, self._setup.camera)
        facing = track.time_s[rotation_phases(posture).facing]
        if len(facing):
            self._kept.retain(max(facing[0], facing[-1] - _FACING_S), facing[-1])

    def _start_anew(self, time_s: float) -> None:
        self._kept.forget_before(time_s)
        self._held = False
        self.track = self._found = None

    def _forget_rest(self, guide: FloatArray, time_s: float) -> None:
        """Drop what is too old to belong to a trial, while the arm has not left its place."""
        values = guide[np.isfinite(guide)]
        centre, tolerance = self._steps.rest
        resting = len(values) == 0 or abs(values[-1] - centre) <= tolerance
        if resting and self.movement is not Movement.EXTERNAL_ROTATION:
            self._kept.forget_before(time_s - _REST_S)
            self._kept.forget_pictures_before(time_s - _REST_PICTURES_S)

    def _note_standing(self, time_s: float) -> None:
        """Work out what the person is doing, from the last search."""
        found, track = self._found, self.track
        value = None if found is None else known_or_none(found.guide[-1])
        if found is None or track is None:
            phase = Phase.RETURN if self._captured_one else Phase.WAIT_NEUTRAL
            self.standing = TrialProgress(phase=phase, value=self.standing.value)
        elif not self._kept.seen_lately(_SEEN_S):
            self.standing = TrialProgress(phase=Phase.SEARCHING_FOR_PERSON)
        elif found.trials:
            self.standing = self._under_way(found.trials[0], track, found.guide, value)
        else:
            neutral = segment_trials(track.time_s, found.guide, self._steps).neutral_seen
            centre, tolerance = self._steps.rest
            away = value is not None and value > centre + tolerance
            waiting = Phase.RETURN if self._captured_one else Phase.WAIT_NEUTRAL
            moving = Phase.MOVE if away else self._ready
            self.standing = TrialProgress(phase=moving if neutral else waiting, value=value)

    @property
    def _ready(self) -> Phase:
        return Phase.REST if self._captured_one else Phase.MOVE

    def _under_way(
        self, trial: TrialCandidate, track: Track, guide: FloatArray, value: float | None
    ) -> TrialProgress:
        """Return move, hold or return, and how much of the hold is done."""
        within = np.isfinite(guide) & (track.time_s >= trial.start_s)
        time_s, values = track.time_s[within], guide[within]
        top = float(np.percentile(values, 95))
        floor = trial.rest_value + HOLD_SHARE * (top - trial.rest_value)
        first = len(values)
        while first > 0 and values[first - 1] >= floor:
            if np.ptp(values[first - 1 :]) > 2 * self._steps.steady:
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


def known_or_none(value: float) -> float | None:
    """Return a number, or None for NaN."""
    return float(value) if np.isfinite(value) else None
