"""Pairs of camera and goniometer readings, and the study of them."""

import numpy as np

from calibration.agreement.pairs_table import PairedReading
from calibration.agreement.study import (
    Agreement,
    analyse_agreement,
)
from calibration.statistics.bland_altman import Pairing
from measure.domain.landmarks import Side
from measure.domain.movements import Movement


def pair(
    person: str,
    camera: float,
    goniometer: float,
    *,
    movement: Movement = Movement.FLEXION,
    side: Side = Side.LEFT,
    repeat: int | None = None,
    tester: str = "",
) -> PairedReading:
    """Return one row of a table."""
    return PairedReading(
        person=person,
        movement=movement,
        side=side,
        camera_deg=camera,
        goniometer_deg=goniometer,
        repeat=repeat,
        tester=tester,
    )


def judged(pairs: list[PairedReading], pairing: Pairing = Pairing.SAME_MOVE) -> Agreement:
    """Return the study of pairs that suffice for one."""
    result = analyse_agreement(pairs, pairing)
    assert isinstance(result, Agreement)
    return result


def crowd(
    people: int, *, gain: float = 1.0, bias: float = 0.0, seed: int = 1
) -> list[PairedReading]:
    """Return one pair of each person, with noise of 3 degrees."""
    random = np.random.default_rng(seed)
    goniometer = random.uniform(40, 160, people)
    camera = gain * goniometer + bias + random.normal(0, 3, people)
    return [pair(f"P{n}", c, g) for n, (c, g) in enumerate(zip(camera, goniometer, strict=True))]
