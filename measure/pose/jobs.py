"""What the pose process is asked to do with a clip, and what it answers. Values only."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from measure.domain.tracks import PoseFrame
from measure.pose_models.catalogue import ModelQuality
from measure.video.sampling import DecimationSpan

#: How often a careful pass looks at a picture that it has to find its way into. Ours: from the
#: third look on places change no more than between pictures of somebody who stands still.
WARMUP_RUNS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class InferencePass:
    """One way of looking at every chosen picture of a clip.

    Attributes
    ----------
    quality
        Which network looks.
    mirrored
        True to show it the mirror image. Its landmarks are turned back, so they compare
        directly with those of the other passes.
    """

    quality: ModelQuality
    mirrored: bool = False

    @property
    def name(self) -> str:
        """The quality, followed by " mirrored" for a mirrored pass."""
        return f"{self.quality.value} mirrored" if self.mirrored else self.quality.value


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipJob:
    """A clip to be looked at.

    Attributes
    ----------
    passes
        At least one, each once. The clip is decoded once for all of them.
    rate_hz
        Pictures a second to look at, chosen nearest to a regular grid by their own times;
        None for every picture.
    windows
        Spans of time (start_s, end_s), seconds from the clip's first frame, to look at; those
        that touch count as one. Every span starts without memory of what came before. None
        for the whole clip.
    quarter_turns
        Clockwise quarter turns, 0..3, needed after the clip's own rotation tag was obeyed.
    already_mirrored
        True when the clip shows a mirror image; its pictures are turned back first.
    alone
        True when nobody else is in the pictures, as an earlier look has shown. Looking for a
        second person costs a third of the time.
    careful
        True for places of each picture by itself; otherwise the network smooths them over time,
        and what a frame says depends on the pace. See :class:`measure.pose.network.PoseNetwork`.
    paces
        Spans of time with how many of the chosen pictures are looked at in them; see
        :class:`measure.video.sampling.Decimator`. Outside of them all are.
    """

    clip: Path
    passes: tuple[InferencePass, ...]
    rate_hz: float | None = None
    windows: tuple[tuple[float, float], ...] | None = None
    quarter_turns: int = 0
    already_mirrored: bool = False
    alone: bool = False
    fine: bool = False
    decimation: tuple[DecimationSpan, ...] = ()

    def __post_init__(self) -> None:
        if not self.passes or len(set(self.passes)) != len(self.passes):
            raise ValueError("a job needs at least one pass, and each only once")
        if self.quarter_turns not in range(4):
            raise ValueError(f"quarter_turns must be 0..3, not {self.quarter_turns}")
        if self.rate_hz is not None and not self.rate_hz > 0:
            raise ValueError(f"rate_hz must be above 0, not {self.rate_hz}")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipInfo:
    """What was found out about a clip while it was read.

    Attributes
    ----------
    width_px, height_px
        Size of the upright picture with square pixels; landmarks are in its pixels.
    frames_read
        Frames decoded, chosen or not.
    frames_expected
        Frames that the file states, or None if it states none that can be believed.
    frames_unreadable
        Frames lost to damage.
    duration_s
        Time of the last frame read, seconds from the first. Less than the clip's length when
        the windows end before it.
    measured_fps
        Frames a second by the frames' own times, lost ones counted; 0 where fewer than two
        were read.
    backend
        Decoder and its version.
    rotation_deg
        Clockwise turn applied in all: the file's tag and the asked quarter turns.
    sample_aspect
        Width over height of the frame's pixels before they were made square.
    notes
        What was odd about the clip, one sentence each.
    """

    width_px: int
    height_px: int
    frames_read: int
    frames_expected: int | None
    frames_unreadable: int
    duration_s: float
    measured_fps: float
    backend: str
    rotation_deg: int
    sample_aspect: float
    notes: tuple[str, ...] = ()

    @property
    def share_unreadable(self) -> float:
        """Lost frames over all frames, 0..1."""
        frames = self.frames_read + self.frames_unreadable
        return self.frames_unreadable / frames if frames else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipInference:
    """Everything found in a clip: its facts, and for each pass the people of each frame.

    Attributes
    ----------
    frames
        By pass, in order of time. All passes hold the same frames.
    """

    facts: ClipInfo
    frames: Mapping[InferencePass, tuple[PoseFrame, ...]]
