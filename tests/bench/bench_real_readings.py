"""Reading real people by the program's own functions, and by lines with nothing fitted.

A photograph is read as a hold whose rest is not known: the gates that compare with the rest pass by
themselves. A clip is read like any clip that was observed before.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

import numpy as np

from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.landmarks import arm as landmarks_of
from measure.domain.reasons import Reason
from measure.domain.tracks import Track
from measure.kinematics.fusion import keypoints_of_passes
from measure.live.trial_refiner import COARSE_ONLY
from measure.pose.ensemble import fine_passes
from measure.pose_models.catalogue import ModelQuality
from measure.trials.movement_model import model_of
from measure.trials.refinement import read_hold
from measure.trials.scan import scan_for_trials
from tests.bench.bench_real_cases import Arm, RealClip
from tests.bench.plain_line import plain_line_deg

#: The deciding models, with those that run beside them.
QUALITIES: dict[str, tuple[ModelQuality, ...]] = {
    "heavy": (ModelQuality.FULL, ModelQuality.HEAVY),
    "full": (ModelQuality.FULL,),
}
ELBOW_LINE, WRIST_LINE = "elbow line", "wrist line"


@dataclass(frozen=True, slots=True, kw_only=True)
class ArmReading:
    """An arm as the program reads it.

    Attributes
    ----------
    value_deg
        Also where the arm is refused; None where the passes disagree.
    half_deg
        Half-width of the shown interval; None for a refusal.
    spread_deg
        How far the passes lie apart; NaN where they disagree.
    plain_deg
        By name: angles of the heavy pass alone against its own trunk line, nothing fitted.
    """

    arm: Arm
    value_deg: float | None
    half_deg: float | None
    spread_deg: float
    refused_for: tuple[Reason, ...]
    notes: tuple[Reason, ...]
    plain_deg: dict[str, float] = field(default_factory=dict)

    @property
    def accepted(self) -> bool:
        return self.half_deg is not None

    @property
    def error_deg(self) -> float:
        """Reading minus marked angle; NaN without a reading."""
        return _apart(self.value_deg, self.arm.marked_deg)

    def plain_error_deg(self, line: str) -> float:
        """Plain line minus marked angle; NaN where the heavy pass saw nobody."""
        return _apart(self.plain_deg.get(line), self.arm.marked_deg)


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipReading:
    """A clip as the program reads it.

    Attributes
    ----------
    coarse_only
        True where the program would look for trials at moments that no fine pass was kept for:
        what is here then comes from the coarse pass.
    """

    clip: RealClip
    value: float | None
    low: float | None
    high: float | None
    reasons: tuple[str, ...]
    coarse_only: bool

    @property
    def error_deg(self) -> float:
        return _apart(self.value, self.clip.clicked_deg)

    @property
    def caught(self) -> bool:
        """Whether a trap was read although it must not be."""
        if not self.clip.trap or self.value is None:
            return False
        within = self.clip.within_deg
        return within is None or not abs(self.error_deg) <= within


def _apart(value: float | None, truth: float | None) -> float:
    if value is None or truth is None:
        return float("nan")
    return (value - truth + 180.0) % 360.0 - 180.0


def program_passes(quality: str = "heavy") -> tuple[str, ...]:
    """Return the names of the fine passes that the program would run."""
    passes = fine_passes(QUALITIES[quality])
    return tuple(inference_pass.name for inference_pass in passes)


def read_arms(arms: Iterable[Arm], quality: str = "heavy") -> list[ArmReading]:
    return [read_arm(arm, quality) for arm in arms]


def read_arm(arm: Arm, quality: str = "heavy") -> ArmReading:
    """Read one arm as a hold whose rest is not known."""
    task = arm.task
    tracks = [arm.passes[name] for name in program_passes(quality)]
    everything = np.ones(len(tracks[0]), dtype=bool)
    fused = model_of(task.movement).estimate(keypoints_of_passes(tracks, task), task, ~everything)
    hold = read_hold(fused, task, everything, everything, quality)
    return ArmReading(
        arm=arm,
        value_deg=hold.value,
        half_deg=hold.half_width,
        spread_deg=hold.spread,
        refused_for=hold.result.refused_for,
        notes=hold.result.notes,
        plain_deg=_plain_lines(arm),
    )


def _plain_lines(arm: Arm) -> dict[str, float]:
    """Return both lines of the heavy pass's last run; nothing where it saw nobody."""
    own, points_px = landmarks_of(arm.task.side), arm.passes[ModelQuality.HEAVY.value].points_px[-1]
    lines = {
        name: float(plain_line_deg(points_px, arm.task, end))
        for name, end in ((ELBOW_LINE, own.elbow), (WRIST_LINE, own.wrist))
    }
    return {name: angle for name, angle in lines.items() if np.isfinite(angle)}


def read_clips(clips: Iterable[RealClip]) -> list[ClipReading]:
    return [read_real_clip(clip) for clip in clips]


def read_real_clip(clip: RealClip) -> ClipReading:
    """Read one clip from what was kept of it."""
    observation = clip.observation
    scan = scan_for_trials(observation.coarse, observation.task(Setup()))
    wanted = program_passes()
    kept: dict[str, Track] = {
        name: track for name, track in observation.fine.items() if name in wanted
    }
    lacking = bool(scan.trials) and not all(observation.covers(window) for window in scan.windows)
    coarse_only = lacking or (bool(scan.trials) and set(kept) != set(wanted))
    if coarse_only:
        observation = replace(
            observation,
            fine={"coarse": observation.coarse},
            windows=scan.windows,
            model=COARSE_ONLY,
        )
    else:
        observation = replace(observation, fine=kept)
    measurement = measurement_from_observation(observation, Setup()).measurement
    return ClipReading(
        clip=clip,
        value=measurement.value,
        low=measurement.low,
        high=measurement.high,
        reasons=tuple(map(str, measurement.reasons)),
        coarse_only=coarse_only,
    )
