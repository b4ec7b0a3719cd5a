"""Doubtful lines of a study, named so that they can be looked up: outliers and radians."""

import math
from collections.abc import Sequence

import numpy as np

from calibration.agreement.pairs_table import PairedReading

#: Difference of camera and goniometer that is named whatever the others are, degrees. [project]
OUTLYING_DEG = 30.0
#: Distance from the middle difference that is named, in median absolute deviations. [project]
OUTLYING_DEVIATIONS = 5.0
#: Nearer to the middle than this no line is named, degrees: in a study that agrees closely
#: every deviation is small. [project]
LEAST_OUTLYING_DEG = 10.0
#: Lines named in one note. [technical]
LINES_NAMED = 5
#: All angles within 0 and this look like radians. [source: a half turn is 3.14 radians]
LARGEST_RADIANS = 3.2
#: Fewest readings for a suspicion of radians. [project]
_FEWEST_READINGS = 3


def outlying_pairs(pairs: Sequence[PairedReading]) -> tuple[PairedReading, ...]:
    """Return the pairs whose difference stands out, in the order of the table."""
    whole = [pair for pair in pairs if pair.complete]
    if not whole:
        return ()
    difference = np.array([pair.camera_deg - pair.goniometer_deg for pair in whole])
    distance = np.abs(difference - np.median(difference))
    limit = max(LEAST_OUTLYING_DEG, OUTLYING_DEVIATIONS * float(np.median(distance)))
    outlying = (np.abs(difference) > OUTLYING_DEG) | (distance > limit)
    return tuple(pair for pair, stands_out in zip(whole, outlying, strict=True) if stands_out)


def doubts(pairs: Sequence[PairedReading]) -> list[str]:
    """Return a note for each kind of doubtful line: outliers, and readings like radians."""
    notes = []
    outlying = outlying_pairs(pairs)
    if outlying:
        named = "; ".join(map(_named, outlying[:LINES_NAMED]))
        more = len(outlying) - LINES_NAMED
        rest = f"; and {more} more" if more > 0 else ""
        notes.append(
            f"Readings that stand out, camera against goniometer: {named}{rest}. They count in "
            "every figure; check them for typing errors."
        )
    for instrument in ("camera", "goniometer"):
        readings = [getattr(pair, f"{instrument}_deg") for pair in pairs]
        values = [value for value in readings if math.isfinite(value)]
        if len(values) >= _FEWEST_READINGS and all(0 <= v <= LARGEST_RADIANS for v in values):
            notes.append(
                f"Every {instrument} reading lies between 0 and {LARGEST_RADIANS:g}: are these "
                "radians? The table must give degrees."
            )
    return notes


def _named(pair: PairedReading) -> str:
    where = f"{pair.person}, {pair.side}" if pair.line is None else f"line {pair.line}"
    return f"{where}: {pair.camera_deg:g} against {pair.goniometer_deg:g}"
