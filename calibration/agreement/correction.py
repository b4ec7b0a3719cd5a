"""Correction of the camera against a goniometer: proposed from a study, bounded, cross-validated.

A correction is only proposed here. A person switches it on; it is stored with every reading that
used it and starts a new series.
"""

from dataclasses import dataclass

import numpy as np

from calibration.agreement.pairs_table import PairedReading
from calibration.agreement.study import ENOUGH_PAIRS, ENOUGH_PEOPLE, Agreement
from calibration.agreement.wording import degrees_text
from calibration.statistics.bland_altman import Pairing
from calibration.statistics.deming import ErrorRatio, deming
from calibration.statistics.proportional_bias import proportional_bias
from measure.domain.acquisition import (
    LARGEST_BIAS_DEG,
    LARGEST_CHANGE_DEG,
    LARGEST_GAIN,
    Correction,
)
from measure.domain.landmarks import FloatArray
from measure.domain.movements import MOVEMENTS

#: Largest half-width of the bias's 95 % interval, degrees: beyond it a correction would put an
#: error of its own in the place of the bias. [project]
LOOSEST_BIAS_DEG = 3.0
#: Least range of studied angles for a gain, degrees. [project]
LEAST_RANGE_DEG = 60.0
#: Largest half-width of the gain's 95 % interval, degrees per degree. [project]
LOOSEST_GAIN = 0.1


@dataclass(frozen=True, slots=True, kw_only=True)
class ProposedCorrection:
    """Correction with its leave-one-person-out errors.

    Attributes
    ----------
    error_before_deg, error_after_deg
        Root mean square difference from the goniometer, each person corrected by a correction
        fitted to the others.
    sentence
        The same in words.
    """

    correction: Correction
    error_before_deg: float
    error_after_deg: float
    sentence: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NoCorrection:
    """Reason, in words, why a study yields no correction."""

    sentence: str


def fit_correction(agreement: Agreement, study: str) -> ProposedCorrection | NoCorrection:
    """Return a bounded correction, or the reason why there is none.

    It needs at least 30 simultaneous pairs of at least 10 people: fewer people say little about
    others, and the interval of the bias is then itself a guess. The bias must be shown (its
    interval does not hold zero) and known to 3 degrees; the gain is used only where it is shown,
    known to 0.1 and studied over 60 degrees, and where repeats do not show that it may come from
    unequal errors. A bias over 10 degrees, a gain over 0.2, or a change
    over 15 degrees anywhere in the studied range is refused. Finally the correction must lessen
    the difference in people who were left out of the fit.

    The line difference = a + b mean becomes, solved for the goniometer, a correction of the
    camera's value: gain = b / (1 + b/2), as difference and mean share the camera's value. Where
    repeats give the ratio of the errors, Deming's slope s is used instead: gain = 1 - 1/s.
    """
    name = MOVEMENTS[agreement.movement].name.lower()
    if agreement.pairing is not Pairing.SAME_MOVE or agreement.limits.pairs < ENOUGH_PAIRS:
        return NoCorrection(
            sentence=f"it needs {ENOUGH_PAIRS} pairs of camera and goniometer readings taken at "
            "the same moment."
        )
    if agreement.people < ENOUGH_PEOPLE:
        return NoCorrection(
            sentence=f"it needs {ENOUGH_PEOPLE} people; this study has {agreement.people}."
        )
    bias = agreement.limits.bias
    gain = agreement.gain if _gain_is_known(agreement) else None
    if bias.holds(0.0) and gain is None:
        return NoCorrection(sentence="there is no clear difference to correct.")
    if bias.half_width > LOOSEST_BIAS_DEG:
        return NoCorrection(
            sentence=f"the bias is known only to {degrees_text(bias.half_width)} degrees; "
            f"it needs {LOOSEST_BIAS_DEG:g}. More people would help."
        )
    people = _people(agreement)
    errors = None if agreement.deming is None else agreement.deming.errors
    correction = _fit(people, errors, with_gain=gain is not None, study=study)
    too_large = _too_large(correction)
    if too_large:
        return NoCorrection(sentence=too_large)
    before, after = _left_out(people, errors, with_gain=gain is not None)
    if after >= before:
        return NoCorrection(
            sentence="tested on people who were left out when it was made, it did not reduce the "
            "difference."
        )
    return ProposedCorrection(
        correction=correction,
        error_before_deg=before,
        error_after_deg=after,
        sentence=f"for {name}, {_correction_sentence(correction)}. On people who were left out "
        f"when it was made, the difference from the goniometer fell from {degrees_text(before)} to "
        f"{degrees_text(after)} degrees (root mean square). It starts a new series.",
    )


def _correction_sentence(correction: Correction) -> str:
    way = "taken off" if correction.bias_deg > 0 else "added"
    words = f"{degrees_text(abs(correction.bias_deg))} degrees are {way}"
    if correction.gain == 0:
        return words
    way = "less" if correction.gain > 0 else "more"
    return (
        f"{words} at {degrees_text(correction.centre_deg)} degrees, and {abs(correction.gain):.2f} "
        f"{way} for each degree above"
    )


def _gain_is_known(agreement: Agreement) -> bool:
    gain, line = agreement.gain, agreement.deming
    return (
        gain is not None
        and not gain.slope.holds(0.0)
        and (line is None or not line.slope.holds(1.0))
        and gain.slope.half_width <= LOOSEST_GAIN
        and gain.highest_deg - gain.lowest_deg >= LEAST_RANGE_DEG
    )


#: One person's camera and goniometer readings, in the same order.
_Person = tuple[FloatArray, FloatArray]


def _people(agreement: Agreement) -> list[_Person]:
    """Return each person's camera and goniometer readings."""
    grouped: dict[str, list[PairedReading]] = {}
    for pair in agreement.pairs:
        grouped.setdefault(pair.person, []).append(pair)
    return [
        (
            np.array([pair.camera_deg for pair in pairs]),
            np.array([pair.goniometer_deg for pair in pairs]),
        )
        for pairs in grouped.values()
    ]


def _fit(
    people: list[_Person], errors: ErrorRatio | None, *, with_gain: bool, study: str
) -> Correction:
    """Return the correction fitted to these people's readings.

    The gain comes from Deming's line where the ratio of the errors is known.
    """
    pairs = sum(len(camera) for camera, _ in people)
    cameras, goniometers = [camera for camera, _ in people], [gonio for _, gonio in people]
    line = proportional_bias(cameras, goniometers)
    with_both_errors = None if errors is None else deming(cameras, goniometers, errors)
    centre = float(np.mean([camera.mean() for camera, _ in people]))
    lowest = min(float(camera.min()) for camera, _ in people)
    highest = max(float(camera.max()) for camera, _ in people)
    if not with_gain or line is None:
        bias = float(np.mean([(camera - gonio).mean() for camera, gonio in people]))
        gain = 0.0
    elif with_both_errors is not None:
        gain = 1 - 1 / with_both_errors.slope.value
        at_mean = with_both_errors.at_centre_deg
        bias = at_mean - with_both_errors.centre_deg - gain * (at_mean - centre)
    else:
        slope = line.slope.value
        at_zero = line.at_centre_deg - slope * line.centre_deg
        bias = (at_zero + slope * centre) / (1 + slope / 2)
        gain = slope / (1 + slope / 2)
    return Correction(
        bias_deg=bias,
        gain=gain,
        centre_deg=centre,
        pairs=pairs,
        study=study,
        lowest_deg=lowest,
        highest_deg=highest,
    )


def _too_large(correction: Correction) -> str:
    ends = (correction.lowest_deg, correction.highest_deg)
    changes = [abs(correction.corrected_deg(end) - end) for end in ends if end is not None]
    if abs(correction.bias_deg) > LARGEST_BIAS_DEG:
        what = f"a bias of {degrees_text(correction.bias_deg)} degrees"
    elif abs(correction.gain) > LARGEST_GAIN:
        what = f"a gain error of {correction.gain:.2f}"
    elif max(changes) > LARGEST_CHANGE_DEG:
        what = f"a change of {degrees_text(max(changes))} degrees at the end of the range"
    else:
        return ""
    return (
        f"{what} is too large to correct. Look for its cause: the view, the placement "
        "of camera or goniometer, the zero position."
    )


def _left_out(
    people: list[_Person], errors: ErrorRatio | None, *, with_gain: bool
) -> tuple[float, float]:
    """Return the root mean square difference before and after, each person left out once."""
    before, after = [], []
    for place, (camera, goniometer) in enumerate(people):
        others = people[:place] + people[place + 1 :]
        correction = _fit(others, errors, with_gain=with_gain, study="")
        fixed = np.array([correction.corrected_deg(value) for value in camera])
        before.append(np.mean((camera - goniometer) ** 2))
        after.append(np.mean((fixed - goniometer) ** 2))
    return float(np.sqrt(np.mean(before))), float(np.sqrt(np.mean(after)))
