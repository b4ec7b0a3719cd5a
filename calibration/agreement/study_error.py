"""Errors of a study in the form that makes the intervals of later readings."""

import math

from calibration.agreement.study import Agreement
from calibration.statistics.bland_altman import Pairing
from measure.domain.error_sizes import ENOUGH_PAIRS, ENOUGH_PEOPLE, LARGEST_ERROR_DEG, StudyError


def study_error(agreement: Agreement, study: str) -> StudyError | None:
    """Return how far the camera was off, or None where the study is too small to make intervals.

    The goniometer errs too. Its own error is taken off where numbered repeats tell it; otherwise
    all of the difference is held against the camera, and the interval is too wide rather than
    too narrow.
    """
    limits = agreement.limits
    if (
        agreement.pairing is not Pairing.SAME_MOVE
        or limits.pairs < ENOUGH_PAIRS
        or agreement.people < ENOUGH_PEOPLE
        or max(limits.sd.value, limits.bias.half_width, abs(limits.bias.value)) > LARGEST_ERROR_DEG
    ):
        return None
    errors = None if agreement.deming is None else agreement.deming.errors
    of_goniometer = 0.0 if errors is None else errors.goniometer_variance
    return StudyError(
        sd_deg=math.sqrt(max(0.0, limits.sd.value**2 - of_goniometer)),
        bias_deg=limits.bias.value,
        bias_half_deg=limits.bias.half_width,
        pairs=limits.pairs,
        people=agreement.people,
        study=study,
    )
