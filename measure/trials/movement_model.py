"""Movement models: how each movement is estimated, segmented and judged.

A model joins what a movement's facts say (:mod:`measure.domain.movements`) with the estimator and
the gates of its family. Nothing else in the program asks which movement it deals with.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import MOVEMENTS, Family, Movement, MovementFacts, Unit
from measure.domain.reasons import GateResult
from measure.kinematics.fusion import (
    FusedSeries,
    Mask,
    PassKeypoints,
    fuse_elevation,
    fuse_reach,
    fuse_rotation,
)
from measure.trials.elevation_gates import elevation_gates
from measure.trials.reach_gates import reach_gates
from measure.trials.rotation_gates import rotation_gates
from measure.trials.segmentation import SegmentationParams

#: A hold's values stay this close to their median, by unit. [project]
STEADY = {Unit.DEGREES: 2.5, Unit.FRACTION: 0.02}
#: Frames of a hold farther than this from its median are left out of its mean, by unit. [project]
NEAR_MEDIAN = {Unit.DEGREES: 5.0, Unit.FRACTION: 0.04}
#: Passes whose hold means differ by more than this disagree, by family, in the movement's unit.
#: [project]
AGREEMENT = {Family.ELEVATION: 7.0, Family.ROTATION: 16.0, Family.REACH: 0.10}

#: (passes, task, rest frames) to the corrected series.
Estimate = Callable[[PassKeypoints, MeasurementTask, Mask], FusedSeries]
#: (series, task, rest frames, hold frames) to what the gates say.
Gates = Callable[[FusedSeries, MeasurementTask, Mask, Mask], GateResult]


@dataclass(frozen=True, slots=True, kw_only=True)
class MovementModel:
    """How one movement is measured.

    Attributes
    ----------
    estimate
        Makes the series of values from the keypoints of passes.
    gates
        Judges a trial: which reasons refuse it, and which are noted.
    starts_facing
        True where the person faces the camera first and then turns: how far is read from every
        frame, so the fine passes cover the source from its start and leave out none.
    """

    facts: MovementFacts
    estimate: Estimate
    gates: Gates
    starts_facing: bool = False

    @property
    def segmentation(self) -> SegmentationParams:
        """How its series behaves."""
        return SegmentationParams(
            rest=self.facts.rest,
            least_travel=self.facts.least_travel,
            steady=STEADY[self.facts.unit],
        )

    @property
    def near_median(self) -> float:
        """Frames of a hold farther than this from its median are left out, in its unit."""
        return NEAR_MEDIAN[self.facts.unit]

    @property
    def agreement(self) -> float:
        """How far the passes may lie apart; see :func:`measure.trials.refinement.consensus`."""
        return AGREEMENT[self.facts.family]


def _model(facts: MovementFacts) -> MovementModel:
    match facts.family:
        case Family.ELEVATION:
            return MovementModel(facts=facts, estimate=fuse_elevation, gates=elevation_gates)
        case Family.ROTATION:
            return MovementModel(
                facts=facts, estimate=fuse_rotation, gates=rotation_gates, starts_facing=True
            )
        case Family.REACH:
            return MovementModel(facts=facts, estimate=fuse_reach, gates=reach_gates)


_MODELS: Mapping[Movement, MovementModel] = {
    movement: _model(facts) for movement, facts in MOVEMENTS.items()
}


def model_of(movement: Movement) -> MovementModel:
    """Return the model of a movement."""
    return _MODELS[movement]
