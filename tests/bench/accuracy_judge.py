"""Reading the bench's cases from what was seen, and holding the readings against truth."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from measure.clips.observation import ClipObservation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.measurements import Measurement, Status
from measure.domain.movements import Movement
from measure.kinematics.uncertainty import measured_half_width
from measure.trials.refinement import RefinedTrial
from measure.trials.scan import ScanResult, scan_for_trials
from tests.bench.accuracy_cases import Case


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A case as read.

    Attributes
    ----------
    truth
        Median of the true holds, or None where nothing should be read.
    error
        Reading minus truth, or None for a refusal.
    half
        Measured half-width of the interval, without the allowance for the real world.
    """

    case: Case
    observation: ClipObservation
    found: ScanResult
    refined: tuple[RefinedTrial, ...]
    measurement: Measurement
    truth: float | None
    error: float | None
    half: float | None

    @property
    def refused(self) -> bool:
        return self.measurement.status is Status.REFUSED

    @property
    def gross(self) -> bool:
        """Accepted, and wrong by more than anybody could live with."""
        if self.error is None:
            return False
        return abs(self.error) > gross_limit(self.case.movement)


def gross_limit(movement: Movement) -> float:
    if movement is Movement.EXTERNAL_ROTATION:
        return 20.0
    return 0.15 if movement is Movement.HAND_BEHIND_BACK else 10.0


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
        half=_measured_half(measurement, reading.refined, observation.model),
    )


def _measured_half(
    measurement: Measurement, settled: Sequence[RefinedTrial], quality: str
) -> float | None:
    halves = [
        measured_half_width(
            measurement.movement, measurement.view, quality, each.spread, each.trial.flags
        )
        for each in settled
        if each.trial.scored
    ]
    return float(np.median(halves)) if halves else None
