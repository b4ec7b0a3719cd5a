"""Jobs for the pose process, of clips and of frames held in memory, and their results."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from measure.domain.tracks import PoseFrame
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import PixelArray
from measure.video.sampling import DecimationSpan

#: Number of times a fine pass runs the network on a frame where it has to find the person: from
#: the third run on, places change no more than between frames of a person standing still. [project]
WARMUP_RUNS = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class InferencePass:
    """One run of a network over every chosen frame of a source.

    Attributes
    ----------
    quality
        The network.
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
    """A clip to run one or several passes over.

    Attributes
    ----------
    passes
        At least one, each once. The clip is decoded once for all of them.
    rate_hz
        Frames a second to analyse, chosen nearest to a regular grid by their own times;
        None for every frame.
    windows
        Spans of time (start_s, end_s) to analyse, seconds from the clip's first frame; those
        that touch count as one. Every span starts without memory of what came before. None
        for the whole clip.
    quarter_turns
        Clockwise quarter turns, 0..3, needed after the clip's own rotation tag was obeyed.
    already_mirrored
        True when the clip shows a mirror image; its frames are turned back first.
    alone
        True when an earlier pass has shown that nobody else is in the frames. Searching for a
        second person costs a third of the time.
    fine
        True for places of each frame by itself; otherwise the network smooths them over time,
        and what a frame says depends on the frame rate. See
        :class:`measure.pose.network.PoseNetwork`.
    decimation
        Spans of time and how many of the chosen frames are analysed in them; see
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
        _check_passes(self.passes)
        if self.quarter_turns not in range(4):
            raise ValueError(f"quarter_turns must be 0..3, not {self.quarter_turns}")
        if self.rate_hz is not None and not self.rate_hz > 0:
            raise ValueError(f"rate_hz must be above 0, not {self.rate_hz}")


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPicture:
    """A normalized frame held in memory, and where it belongs in its source.

    Attributes
    ----------
    rgb
        As :class:`measure.video.frame.Picture` holds it.
    index, time_s
        Number and time of its frame.
    window
        Number of the span of time that it belongs to. Every span starts without memory of
        what came before.
    """

    rgb: PixelArray
    index: int
    time_s: float
    window: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureJob:
    """Frames held in memory to run one or several passes over.

    Attributes
    ----------
    passes
        At least one, each once.
    pictures
        In order of time, all of one size.
    width_px, height_px
        Size that results are given in, see :class:`measure.video.frame.Picture`.
    alone
        As in :class:`ClipJob`.
    """

    passes: tuple[InferencePass, ...]
    pictures: tuple[KeptPicture, ...]
    width_px: int
    height_px: int
    alone: bool = False

    def __post_init__(self) -> None:
        _check_passes(self.passes)
        if len({picture.rgb.shape for picture in self.pictures}) != 1:
            raise ValueError("a job needs pictures, all of one size")


def _check_passes(passes: tuple[InferencePass, ...]) -> None:
    if not passes or len(set(passes)) != len(passes):
        raise ValueError("a job needs at least one pass, and each only once")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipInfo:
    """Facts about a clip, established while it was read.

    Attributes
    ----------
    width_px, height_px
        Size of the upright frame with square pixels; landmarks are in its pixels.
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
        Irregularities of the clip, one sentence each.
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
    """The result of a clip job: the clip's facts, and for each pass the people of each frame.

    Attributes
    ----------
    frames
        By pass, in order of time. All passes hold the same frames.
    """

    facts: ClipInfo
    frames: Mapping[InferencePass, tuple[PoseFrame, ...]]
