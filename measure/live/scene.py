"""Frame analysis: who is there, what the movement's value is, and what to say, frame by frame.

Everything that depends on the frame's size or on one opening of a source lives here and is
made anew with it. No threads, no processes.
"""

from dataclasses import dataclass

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState
from measure.live.events import Phase, SetupHint
from measure.live.frame_quality import recent_flags, visibility_score
from measure.live.framing_hints import FramingAdvisor
from measure.live.hand_gesture import RaisedHandDetector
from measure.live.supervisor import FrameResult
from measure.live.trial_detector import CapturedTrial, OnlineTrialDetector
from measure.tracking.online import OnlineTracker, SubjectPose
from measure.video.frame import PixelArray

#: Views in which both hands are seen apart at any time.
_OPEN_VIEWS = frozenset({View.FRONT, View.BACK})

#: A camera with fewer frames a second needs more light. [project]
_DIM_FPS = 14.0

#: Without the person for this long, seconds, the loss is reported. [project]
_LOST_S = 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameAnalysis:
    """What one frame shows.

    Attributes
    ----------
    points_px
        Shape (33, 2), pixels of the analysed frame, or None.
    phase, hold_share, value, reasons, quality, hints
        As in :class:`measure.live.events.LiveFrame`.
    captured
        The trial that this frame completed.
    hand
        A hand that has just been raised long enough.
    lost
        True once, when the person has been gone for a while.
    """

    points_px: FloatArray | None
    phase: Phase
    hold_share: float
    value: float | None
    reasons: tuple[Reason, ...]
    quality: float | None
    hints: tuple[SetupHint, ...]
    captured: CapturedTrial | None
    hand: Side | None
    lost: bool


class FrameAnalyzer:
    """Analyses frames of one size from one opening of a source.

    Parameters
    ----------
    size_px
        Width and height of the full-size frame.
    """

    def __init__(self, size_px: tuple[int, int]) -> None:
        self.size_px = size_px
        self._person = OnlineTracker(*size_px)
        self._hints = FramingAdvisor()
        self._hand = RaisedHandDetector()
        self._seen_s: float | None = None
        self._reasons: tuple[Reason, ...] = ()
        self._quality: float | None = None

    def update(
        self, seen: FrameResult, watch: OnlineTrialDetector | None, *, measuring: bool
    ) -> FrameAnalysis:
        """Analyse a frame.

        Parameters
        ----------
        watch
            Of the chosen movement, or None.
        measuring
            Whether trials are searched for at this moment.
        """
        time_s = seen.pose.time_s
        person = self._person.add(seen.pose)
        lost = self._note_presence(person, time_s)
        captured = None
        if watch is not None and measuring:
            captured = self._measure(seen, watch, person)
        hints = list(self._hints.update(time_s, person.points_px, self.size_px, seen.rgb))
        if 0 < seen.fps < _DIM_FPS and SetupHint.MORE_LIGHT not in hints:
            hints.append(SetupHint.MORE_LIGHT)
        phase, share, value = self._standing(watch, person, time_s)
        hands = self._hands(watch, measuring=measuring)
        return FrameAnalysis(
            points_px=self._in_picture(person.points_px, seen.rgb),
            phase=phase,
            hold_share=share,
            value=value,
            reasons=self._reasons if person.points_px is not None else _absence(person),
            quality=self._quality if person.points_px is not None else None,
            hints=tuple(hints),
            captured=captured,
            hand=self._hand.raised(time_s, person, hands),
            lost=lost,
        )

    def _measure(
        self, seen: FrameResult, watch: OnlineTrialDetector, person: SubjectPose
    ) -> CapturedTrial | None:
        time_s = seen.pose.time_s
        if seen.fine and seen.rgb is not None:
            watch.add_picture(seen.rgb, seen.pose.index, time_s)
        if not seen.coarse:
            return None
        return watch.update(time_s, person)

    def judge(self, watch: OnlineTrialDetector) -> None:
        """Note what spoils this moment, for the frames that follow: this one need not wait."""
        scan = watch.scan
        if scan is None or not len(scan.fused.keypoints):
            return
        self._reasons = recent_flags(scan)
        self._quality = visibility_score(scan.fused.keypoints.track, scan.task.side)

    def _standing(
        self, watch: OnlineTrialDetector | None, person: SubjectPose, time_s: float
    ) -> tuple[Phase, float, float | None]:
        if watch is None:
            there = self._seen_s is not None and time_s - self._seen_s <= _LOST_S
            return (Phase.REST if there else Phase.SEARCHING_FOR_PERSON), 0.0, None
        value = watch.value_of(person, time_s)
        return watch.progress.phase, watch.progress.hold_share, value

    def _hands(self, watch: OnlineTrialDetector | None, *, measuring: bool) -> frozenset[Side]:
        """Return the hands that may give a sign.

        While measuring it is the other one; seen from the side only while the arm rests, since
        the network draws the hidden arm along with the near one.
        """
        if watch is None:
            return frozenset(Side)
        open_view = watch.task.facts.views[0] in _OPEN_VIEWS
        if open_view or not measuring or not watch.is_under_way:
            return frozenset({watch.task.side.other})
        return frozenset()

    def _note_presence(self, person: SubjectPose, time_s: float) -> bool:
        """Note whether the person is there; return True once after they went."""
        if person.points_px is not None:
            self._seen_s = time_s
        elif self._seen_s is not None and time_s - self._seen_s > _LOST_S:
            self._seen_s = None
            return True
        return False

    def _in_picture(
        self, points_px: FloatArray | None, rgb: PixelArray | None
    ) -> FloatArray | None:
        """Return points in pixels of the analysed picture, which may be smaller."""
        if points_px is None or rgb is None:
            return None
        scale = rgb.shape[1] / self.size_px[0]
        return points_px if scale == 1.0 else (points_px + 0.5) * scale - 0.5


def _absence(person: SubjectPose) -> tuple[Reason, ...]:
    if person.state is FrameState.UNREADABLE:
        return (Reason.UNREADABLE_FRAMES,)
    if person.state in (FrameState.OTHER_PERSON, FrameState.AMBIGUOUS):
        return (Reason.OTHER_PERSON,)
    return (Reason.NOBODY,)
