"""Reading the bench's cases from what was seen, and holding the readings against truth."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.clips.observation import ClipObservation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.landmarks import arm as landmarks_of
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import MOVEMENTS, Family, Unit
from measure.trials.refinement import RefinedTrial
from measure.trials.scan import ScanResult, scan_for_trials
from tests.bench.accuracy_cases import Case
from tests.bench.plain_line import plain_line_deg


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A case as read.

    Attributes
    ----------
    truth
        Median of the true holds, or None where nothing should be read.
    error
        Reading minus truth, or None for a refusal.
    plain_error
        The heavy pass's elbow line, nothing fitted, minus truth in the hold that was read; None
        for a refusal, where no heavy pass ran, and where there is no such line.
    """

    case: Case
    observation: ClipObservation
    found: ScanResult
    refined: tuple[RefinedTrial, ...]
    measurement: Measurement
    truth: float | None
    error: float | None
    plain_error: float | None

    @property
    def half(self) -> float | None:
        """Half the width of the interval that is shown, or None for a refusal."""
        low, high = self.measurement.low, self.measurement.high
        return None if low is None or high is None else (high - low) / 2

    @property
    def held(self) -> bool:
        """Whether the interval that is shown holds the truth; False for a refusal."""
        low, high = self.measurement.low, self.measurement.high
        if low is None or high is None or self.truth is None:
            return False
        return low <= self.truth <= high

    @property
    def refused(self) -> bool:
        return self.measurement.status is Status.REFUSED

    @property
    def far_off(self) -> bool:
        """Whether it is accepted and wrong by more than 15 degrees or 0.15 of the reach."""
        if self.error is None:
            return False
        degrees = MOVEMENTS[self.case.movement].unit is Unit.DEGREES
        return abs(self.error) > (15.0 if degrees else 0.15)


def judge(case: Case, observation: ClipObservation) -> Judged:
    """Read a case as replay does, and compare with its truth."""
    reading = measurement_from_observation(observation, Setup())
    measurement = reading.measurement
    truth = float(np.median([hold[0] for hold in case.holds])) if case.holds else None
    error = None
    if measurement.value is not None and truth is not None:
        error = measurement.value - truth
    return Judged(
        case=case,
        observation=observation,
        found=scan_for_trials(observation.coarse, case.task),
        refined=reading.refined,
        measurement=measurement,
        truth=truth,
        error=error,
        plain_error=None if error is None else _plain_error(case, observation, reading.refined),
    )


def _plain_error(
    case: Case, observation: ClipObservation, refined: Sequence[RefinedTrial]
) -> float | None:
    track = observation.fine.get("heavy")
    if track is None or MOVEMENTS[case.movement].family is not Family.ELEVATION:
        return None
    elbow = landmarks_of(case.side).elbow
    angles = [
        float(np.nanmedian(plain_line_deg(held.points_px, case.task, elbow)))
        for trial in (each.trial for each in refined)
        if trial.scored and trial.hold_start_s is not None and trial.hold_end_s is not None
        for held in (track.between(trial.hold_start_s, trial.hold_end_s),)
    ]
    return float(np.median(angles)) - float(np.median([hold[0] for hold in case.holds]))
