"""What the networks saw of a clip: all that a reading needs, without its pictures. Values only."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.pose.jobs import ClipInfo
from measure.video.sampling import COARSE_HZ


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipObservation:
    """What the network found in one clip.

    :func:`measure.clips.read.measurement_from_observation` makes a measurement of it.

    Attributes
    ----------
    view
        The view that was given, or None where it is to be recognised.
    model
        Name of the deciding model; see :class:`measure.pose.ensemble.ModelSet`.
    model_hashes
        SHA-256 of each bundle, by its name.
    passes
        Names of the careful passes for this view, whether there was a trial for them or not.
    software
        Versions that the clip was looked at with.
    quick
        The track of the pass over the whole clip, n frames.
    careful
        By name of the pass: its track over `windows`; empty where no trial was found.
    windows
        Spans (start_s, end_s) that the careful passes looked at.
    quarter_turns, already_mirrored
        How the pictures were turned before anybody looked.
    every_frame
        False for the usual thin rates.
    """

    movement: Movement
    side: Side
    view: View | None
    model: str
    facts: ClipInfo
    coarse: Track
    model_hashes: Mapping[str, str] = field(default_factory=dict)
    passes: tuple[str, ...] = ()
    software: Mapping[str, str] = field(default_factory=dict)
    fine: Mapping[str, Track] = field(default_factory=dict)
    windows: tuple[tuple[float, float], ...] = ()
    quarter_turns: int = 0
    already_mirrored: bool = False
    every_frame: bool = False

    @property
    def rate_hz(self) -> float:
        """Frames a second of the quick track as it was meant; each frame has its own time."""
        fps = self.facts.measured_fps
        if fps <= 0:
            return COARSE_HZ
        return fps if self.every_frame else min(fps, COARSE_HZ)

    def covers(self, window: tuple[float, float]) -> bool:
        """Return whether the careful passes saw all of a span of time."""
        start_s, end_s = window
        return any(first <= start_s and end_s <= last for first, last in self.windows)
