"""Aggregation: refined trials to one measurement, the median of the scored ones, or a refusal."""

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import BASIS, Measurement, Provenance, Status, Trial
from measure.domain.movements import Unit
from measure.domain.reasons import GateResult, Reason, causes_first
from measure.domain.standing_pose import STANDING, standing_text
from measure.domain.vertebral_levels import level_of, marked_spines
from measure.kinematics.uncertainty import interval_basis, too_wide
from measure.trials.refinement import RefinedTrial

#: Trials farther apart than this are noted, by unit. [project]
WIDE_SPREAD = {Unit.DEGREES: 8.0, Unit.FRACTION: 0.06}
#: Usual standard deviation of a person's trials within a sitting, by unit; the reach in the
#: proportion of the usual spreads of days. [project]
USUAL_SD = {Unit.DEGREES: 2.5, Unit.FRACTION: 0.03}
#: Degrees of freedom that the usual one counts for: 8 sittings of three trials. [project]
USUAL_DEGREES = 16
#: Degrees of freedom that what is known of a person counts for beside a single sitting. [project]
SITTING_DEGREES = 2
#: Standard error of a median over that of a mean, by number of normal values.
#: [source: variances of normal order statistics]
MEDIAN_EFFICIENCY = {2: 1.0, 3: 1.160, 4: 1.092, 5: 1.198, 6: 1.135}
#: The same for more values: the root of half of pi is its limit. [source: 1.2533]
LARGE_MEDIAN_EFFICIENCY = 1.253


def aggregate_refined(
    refined: Sequence[RefinedTrial],
    task: MeasurementTask,
    provenance: Provenance,
    *,
    nothing_found: GateResult | None = None,
    wanted_trials: int = 1,
) -> Measurement:
    """Return the measurement of refined trials; parameters as in :func:`aggregate_trials`.

    It also has the value against the vertical, and how the person stood before the first trial
    that shows it.
    """
    neutral = next((trial.neutral for trial in refined if trial.neutral is not None), None)
    if neutral is not None:
        source = {**provenance.source, STANDING: standing_text(neutral)}
        provenance = replace(provenance, source=source)
    measurement = aggregate_trials(
        [trial.trial for trial in refined],
        task,
        provenance,
        nothing_found=nothing_found,
        wanted_trials=wanted_trials,
    )
    if measurement.status is Status.REFUSED:
        return measurement
    vertical = [
        trial.against_vertical
        for trial in refined
        if trial.trial.scored and trial.against_vertical is not None
    ]
    return replace(measurement, against_vertical=float(np.median(vertical)) if vertical else None)


def aggregate_accepted_trials(measurement: Measurement, accepted: tuple[bool, ...]) -> Measurement:
    """Return the measurement that the accepted trials make; without any, none of them counts."""
    if all(accepted):
        return measurement
    kept = [trial for trial, wanted in zip(measurement.trials, accepted, strict=True) if wanted]
    setup = measurement.provenance.setup
    task = MeasurementTask(measurement.movement, measurement.side, measurement.view, setup)
    made = aggregate_trials(kept, task, measurement.provenance)
    return replace(made, reference=measurement.reference)


def aggregate_trials(
    trials: Sequence[Trial],
    task: MeasurementTask,
    provenance: Provenance,
    *,
    nothing_found: GateResult | None = None,
    wanted_trials: int = 1,
) -> Measurement:
    """Return the measurement that trials make.

    Parameters
    ----------
    nothing_found
        Why there are no trials at all, when `trials` is empty.
    wanted_trials
        Fewer scored trials than this are noted.
    """
    unit = task.facts.unit
    scored = [trial for trial in trials if trial.scored]
    reasons = _reasons(trials, scored, nothing_found or GateResult())
    common = Measurement(
        movement=task.movement,
        side=task.side,
        view=task.known_view,
        status=Status.REFUSED,
        unit=unit,
        value=None,
        low=None,
        high=None,
        trials=tuple(trials),
        reasons=reasons,
        provenance=provenance,
    )
    if not scored:
        return common
    values = np.array([trial.value for trial in scored], dtype=np.float64)
    value = float(np.median(values))
    half = _half_width(scored, task)
    if too_wide(task.movement, half):
        return replace(common, reasons=tuple(dict.fromkeys((Reason.TOO_UNCERTAIN, *reasons))))
    basis = interval_basis(task.movement, task.known_view, task.setup)
    notes = list(reasons)
    if len(scored) < wanted_trials:
        notes.append(Reason.FEW_TRIALS)
    if float(np.ptp(values)) > WIDE_SPREAD[unit]:
        notes.append(Reason.SPREAD_TRIALS)
    spines = marked_spines(provenance.setup.body)
    return replace(
        common,
        status=Status.READING,
        provenance=replace(provenance, source={**provenance.source, BASIS: str(basis)}),
        value=value,
        low=value - half,
        high=value + half,
        reasons=tuple(dict.fromkeys(notes)),
        best=float(np.max(values)),
        level=level_of(value - half, value, value + half, spines)
        if task.facts.behind_back
        else None,
    )


def _half_width(scored: Sequence[Trial], task: MeasurementTask) -> float:
    """Return the half-width of the interval of what the person can do today.

    Most of the error is shared by the trials of one sitting (body, clothes, placement), so more
    trials do not shrink it; their scatter adds to it as the error of a median. A single trial has
    the interval of that trial: of what else the person can do today it says nothing.
    """
    halves = [
        (trial.high - trial.low) / 2
        for trial in scored
        if trial.low is not None and trial.high is not None
    ]
    shared = float(np.median(halves))
    if len(scored) < 2:
        return shared
    values = np.array([trial.value for trial in scored], dtype=np.float64)
    return math.hypot(shared, scatter_of_median(values, task.facts.unit, task.setup.trial_sd))


def scatter_of_median(values: FloatArray, unit: Unit, known_sd: float | None = None) -> float:
    """Return the half-width of the 95 % interval of what a sitting's median estimates.

    A standard deviation of three trials is itself uncertain by a factor of several, so that of the
    person's sittings before, or the usual one, is taken; where this sitting's trials lie farther
    apart, both count alike.

    Parameters
    ----------
    values
        The scored trials of one sitting, at least two.
    known_sd
        Pooled standard deviation of the person's trials before; None for the usual one.
    """
    usual = known_sd or USUAL_SD[unit]
    squares, count = float(np.sum((values - values.mean()) ** 2)), len(values)
    sd = max(usual, pooled_trial_sd(squares, count - 1, usual, worth=SITTING_DEGREES))
    efficiency = MEDIAN_EFFICIENCY.get(count, LARGE_MEDIAN_EFFICIENCY)
    return 1.96 * efficiency * sd / math.sqrt(count)


def pooled_trial_sd(
    squares: float, degrees: int, usual_sd: float, *, worth: int = USUAL_DEGREES
) -> float:
    """Return a standard deviation of trials pooled with a usual one.

    Parameters
    ----------
    squares, degrees
        Sum of squares about the sittings' means, and its degrees of freedom.
    worth
        Degrees of freedom that the usual one counts for; 8 sittings if not said otherwise.
    """
    return math.sqrt((worth * usual_sd**2 + squares) / (worth + degrees))


def _reasons(
    trials: Sequence[Trial], scored: Sequence[Trial], nothing_found: GateResult
) -> tuple[Reason, ...]:
    """Return the notes of the scored trials, or what refused most of them."""
    if scored:
        counted = Counter(flag for trial in scored for flag in trial.flags)
        refused = [reason for trial in trials for reason in trial.refused_for]
        return tuple(dict.fromkeys([flag for flag, _ in counted.most_common()] + refused))
    if not trials:
        return causes_first(nothing_found.refused_for) + nothing_found.notes
    counted = Counter(reason for trial in trials for reason in trial.refused_for)
    notes = [flag for trial in trials for flag in trial.flags]
    most = causes_first(reason for reason, _ in counted.most_common())
    return tuple(dict.fromkeys([*most, *notes]))
