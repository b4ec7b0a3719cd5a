"""What the marking of real people allows: how near any reading could come to it.

Two answers. *By the estimated scatter*: the mean error of a reading that is always right, when each
marked angle scatters as estimated. *By look-alikes*: hanging arms of different groups whose
skeletons the network draws alike are marked differently; half of that scatter is in no landmark,
so no function of the landmarks comes much nearer, however it is made.
"""

import math
from collections.abc import Sequence

import numpy as np

from measure.domain.landmarks import FloatArray
from measure.domain.movements import Movement
from measure.kinematics.angles import nanmedian
from measure.kinematics.fusion import keypoints_of_passes
from tests.bench.bench_real_readings import ArmReading, program_passes

#: Mean size of a normally distributed error over its standard deviation.
MEAN_OVER_SD = math.sqrt(2 / math.pi)
#: Below this an arm hangs, degrees.
HANGING_DEG = 30.0
#: Skeletons whose places differ by less than this are drawn alike, in trunk lengths.
ALIKE = 0.02
#: Fewest pairs of look-alikes that say something.
_FEWEST_PAIRS = 20


def floor_by_scatter(readings: Sequence[ArmReading]) -> float:
    """Return the mean error of perfect readings of the accepted arms, degrees."""
    noise = [reading.arm.noise_deg for reading in readings if reading.accepted]
    return float(MEAN_OVER_SD * np.mean(noise)) if noise else math.nan


def floor_by_look_alikes(readings: Sequence[ArmReading]) -> tuple[float, int]:
    """Return the least mean error on hanging arms in abduction, degrees, and from how many pairs.

    NaN where too few arms look alike.
    """
    hanging = [
        reading
        for reading in readings
        if reading.accepted
        and reading.arm.task.movement is Movement.ABDUCTION
        and reading.value_deg is not None
        and reading.value_deg < HANGING_DEG
    ]
    if len(hanging) < 2:
        return math.nan, 0
    drawn = np.stack([_drawn(reading) for reading in hanging])
    errors = np.array([reading.error_deg for reading in hanging])
    groups = np.array([reading.arm.group for reading in hanging])
    apart = np.sqrt(np.mean((drawn[:, None] - drawn[None]) ** 2, axis=(2, 3)))
    alike = np.triu(apart < ALIKE, 1) & (groups[:, None] != groups[None])
    count = int(np.sum(alike))
    if count < _FEWEST_PAIRS:
        return math.nan, count
    variance = np.mean((errors[:, None] - errors[None])[alike] ** 2) / 2
    return float(MEAN_OVER_SD * np.sqrt(variance)), count


def _drawn(reading: ArmReading) -> FloatArray:
    """Return an arm's skeleton in its trunk's own frame, shape (6, 2), in trunk lengths."""
    task = reading.arm.task
    passes = [reading.arm.passes[name] for name in program_passes()]
    seen = keypoints_of_passes(passes, task).median
    names = ("shoulder", "elbow", "wrist", "other_shoulder", "hip", "other_hip")
    places = np.stack([nanmedian(getattr(seen, name)) for name in names])
    own, other = places[[0, 4]].mean(axis=0), places[[3, 5]].mean(axis=0)
    middle = places[[0, 3]].mean(axis=0)
    up = middle - places[[4, 5]].mean(axis=0)
    trunk = float(np.hypot(*up))
    across = np.array([up[1], -up[0]]) / trunk
    outwards = across if (own - other) @ across > 0 else -across
    return (places - middle) @ np.stack([outwards, up / trunk], axis=1) / trunk


def floor_text(readings: Sequence[ArmReading]) -> str:
    """Return what the marking allows, as sentences."""
    by_scatter = floor_by_scatter(readings)
    by_pairs, count = floor_by_look_alikes(readings)
    sentences = [
        f"Readings that were always right would show a mean error of {by_scatter:.1f}°, if the "
        "marking scatters as estimated.",
    ]
    if math.isfinite(by_pairs):
        sentences.append(
            f"{count} pairs of hanging arms of different groups look alike to the network to "
            f"{100 * ALIKE:.0f} % of a trunk; what their marked angles differ by beside their "
            f"readings is in no landmark, so nothing made of landmarks would come much nearer than "
            f"{by_pairs:.1f}° there."
        )
    return " ".join(sentences)
