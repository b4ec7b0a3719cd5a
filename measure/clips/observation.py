"""Clip observation: what the networks saw of a clip, which is all that a reading needs."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from measure.domain.acquisition import Setup
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.pose.jobs import ClipInfo
from measure.video.sampling import COARSE_HZ


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipObservation:
    """What the networks saw in one clip.

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
        Names of the fine passes for this view, whether there was a trial for them or not.
    software
        Versions that the inference ran with.
    coarse
        The track of the pass over the whole clip, n frames.
    fine
        By name of the pass: its track over `windows`; empty where no trial was found.
    windows
        Spans (start_s, end_s) of the fine passes.
    quarter_turns, already_mirrored
        How the frames were turned before inference.
    every_frame
        False for the usual rates.
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

    def task(self, setup: Setup) -> MeasurementTask:
        """Return what was measured, with what is known now."""
        return MeasurementTask(self.movement, self.side, self.view, setup)

    @property
    def rate_hz(self) -> float:
        """Nominal frames a second of the coarse track; each frame has its own time."""
        fps = self.facts.measured_fps
        if fps <= 0:
            return COARSE_HZ
        return fps if self.every_frame else min(fps, COARSE_HZ)

    @property
    def deciding(self) -> Mapping[str, Track]:
        """The fine passes of the deciding model; an older observation holds others besides."""
        own = {name: track for name, track in self.fine.items() if self._decides(name)}
        return own or self.fine

    @property
    def deciding_passes(self) -> tuple[str, ...]:
        """Names of those passes, whether there was a trial for them or not."""
        return tuple(filter(self._decides, self.passes)) or self.passes

    def _decides(self, name: str) -> bool:
        return name.split()[0] == self.model

    def covers(self, window: tuple[float, float]) -> bool:
        """Return whether the fine passes cover a span of time."""
        start_s, end_s = window
        return any(first <= start_s and end_s <= last for first, last in self.windows)
