"""Reading the bench's cases from their kept tracks, and holding the readings against truth."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from measure.body import Track
from measure.intervals import measured_half_width
from measure.measurement import measurement_of
from measure.movements import Movement
from measure.passes import careful_passes
from measure.pose_model import ModelQuality
from measure.readings import Measurement, Provenance, Status
from measure.search import Found, search
from measure.settle import Settled, settle
from measure.setup import Setup
from tests.bench.accuracy_cases import Case, CaseTracks

QUALITIES: Mapping[str, tuple[ModelQuality, ...]] = {
    "heavy": (ModelQuality.FULL, ModelQuality.HEAVY),
    "full": (ModelQuality.FULL,),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Judged:
    """A case read at one quality.

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
    quality: str
    found: Found
    settled: tuple[Settled, ...]
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


def careful_tracks(case: Case, tracks: CaseTracks, quality: str) -> Sequence[Track]:
    passes = careful_passes(case.movement, case.view, QUALITIES[quality])
    return [tracks.careful[one] for one in passes]


def judge(case: Case, tracks: CaseTracks, quality: str) -> Judged:
    """Read a case as replay does, and compare with its truth."""
    found = search(tracks.quick, case.movement, case.side, case.view, Setup())
    careful = careful_tracks(case, tracks, quality)
    settled = tuple(
        settle(
            [track.between(*window) for track in careful],
            trial,
            case.movement,
            case.side,
            found.view,
            Setup(),
            quality,
        )
        for trial, window in zip(found.trials, found.windows, strict=True)
    )
    measurement = measurement_of(
        [each.trial for each in settled],
        movement=case.movement,
        side=case.side,
        view=found.view,
        provenance=Provenance(model=quality),
        nothing_found=found.verdict,
        against_vertical=[each.against_vertical for each in settled],
    )
    truth = float(np.median([hold[0] for hold in case.holds])) if case.holds else None
    error = None
    if measurement.value is not None and truth is not None:
        error = measurement.value - truth
    return Judged(
        case=case,
        quality=quality,
        found=found,
        settled=settled,
        measurement=measurement,
        truth=truth,
        error=error,
        half=_measured_half(measurement, settled, quality),
    )


def _measured_half(
    measurement: Measurement, settled: Sequence[Settled], quality: str
) -> float | None:
    halves = [
        measured_half_width(
            measurement.movement, measurement.view, quality, each.spread, each.trial.flags
        )
        for each in settled
        if each.trial.scored
    ]
    return float(np.median(halves)) if halves else None
