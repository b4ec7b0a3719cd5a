"""Variance within groups of repeats, pooled. Needs no statistics library, so it loads quickly."""

from collections.abc import Sequence

import numpy as np

from measure.domain.landmarks import FloatArray


def pooled_variance(groups: Sequence[FloatArray]) -> tuple[float, int]:
    """Return the variance within groups and its degrees of freedom (0 without repeats).

    The residual mean square of a one-way analysis of variance.
    """
    degrees = sum(len(group) - 1 for group in groups)
    if degrees == 0:
        return 0.0, 0
    squares = sum(float(np.sum((group - group.mean()) ** 2)) for group in groups)
    return squares / degrees, degrees
