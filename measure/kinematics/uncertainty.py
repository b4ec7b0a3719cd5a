"""Uncertainty: the width of a reading's 95 % interval, from the measured error of its kind.

The *measured* part comes from ``intervals.json``: split conformal prediction (Lei 2018,
doi:10.1080/01621459.2017.1307116) over errors on people left out, each error divided by how hard
its reading was (:func:`difficulty`) and each person counted once. Abduction and flexion rest on
real people whose arms others marked by hand; for the rest there are only virtual people
(:class:`measure.domain.measurements.IntervalBasis`), so an *allowance* for what they lack is
added. An elevation is never shown narrower than `LEAST_HALF_WIDTH`: annotators' habits differ by
about 3 degrees, and points marked on cloth and skin are no goniometer.
"""

import json
import math
from collections.abc import Collection, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from measure.domain.acquisition import Setup
from measure.domain.measurements import IntervalBasis
from measure.domain.movements import MOVEMENTS, Family, Movement, View
from measure.domain.reasons import Reason

#: Spread of the passes that makes a reading √2 times as hard, by family, in its unit. [project]
HARD_SPREAD = {Family.ELEVATION: 8.0, Family.ROTATION: 4.0, Family.REACH: 0.04}
#: Doubts that make a reading harder.
DOUBTS = frozenset(
    {Reason.ELBOW_BENT, Reason.OUT_OF_PLANE, Reason.UNSTEADY_HOLD, Reason.TRUNK_OBLIQUE}
)
#: How many times harder a reading is with such a doubt; from real people. [project]
DOUBT_FACTOR = 1.25
#: How many times harder than a hanging arm one is read that is raised by `HARDEST_FROM_DEG` or
#: more; from real people. [project]
RAISED_FACTOR = 1.5
#: Elevation from which an arm is as hard to read as any, degrees. [project]
HARDEST_FROM_DEG = 90.0
#: How many times harder an elevation is read from the side or from behind; few real people were
#: seen so. [project]
TURNED_FACTOR = 1.15
#: A model that was not measured, or the coarse pass alone, gets the widest interval that was, times
#: this: so much more a single pass errs on real people. [project]
UNMEASURED_FACTOR = 1.25
#: Narrowest half-width that is shown, by family, in its unit. [project]
LEAST_HALF_WIDTH = {Family.ELEVATION: 8.0}
#: A reading whose half-width is larger than this says too little, by family, in its unit.
#: [project]
WIDEST_HALF_WIDTH = {Family.ELEVATION: 20.0, Family.ROTATION: 30.0, Family.REACH: 0.3}


@cache
def measured() -> Mapping[str, Mapping[str, Any]]:
    """Return by "movement:view" the basis, and the half-width at difficulty 1 by model quality."""
    content: Mapping[str, Any] = json.loads(
        files("measure.kinematics").joinpath("intervals.json").read_text(encoding="utf-8")
    )
    return content


def interval_basis(movement: Movement, view: View, setup: Setup | None = None) -> IntervalBasis:
    """Return on which people's errors the interval of a movement rests."""
    if setup is not None and setup.study is not None:
        return IntervalBasis.OWN_STUDY
    return IntervalBasis(measured()[f"{movement}:{view}"]["basis"])


def difficulty(
    movement: Movement, view: View, value: float, spread: float, notes: Collection[Reason]
) -> float:
    """Return how much harder than usual a reading was, 1 or more.

    Parameters
    ----------
    value, spread
        What was read, and how far the passes' values lie apart, in the movement's unit.
    notes
        Doubts noted by the gates.
    """
    family = MOVEMENTS[movement].family
    factor = DOUBT_FACTOR if DOUBTS.intersection(notes) else 1.0
    if family is Family.ELEVATION:
        raised = min(max(value / HARDEST_FROM_DEG, 0.0), 1.0)
        factor *= 1 + (RAISED_FACTOR - 1) * raised
        if view is not View.FRONT:
            factor *= TURNED_FACTOR
    return factor * math.hypot(1.0, spread / HARD_SPREAD[family])


def measured_half_width(movement: Movement, view: View, quality: str) -> float:
    """Return the half-width that the measured errors call for at difficulty 1.

    A model that was not measured gets a wider one than any that was.
    """
    entry = measured()[f"{movement}:{view}"]
    widths = {name: float(width) for name, width in entry.items() if name != "basis"}
    return widths.get(quality, UNMEASURED_FACTOR * max(widths.values()))


def half_width(
    movement: Movement, view: View, quality: str, hardness: float, setup: Setup | None = None
) -> float:
    """Return the half-width of the 95 % interval that is shown, in the movement's unit.

    An agreement study of the camera takes the place of the allowance and of the least width. Its
    bias counts unless a correction of the same study takes it off.

    Parameters
    ----------
    hardness
        As :func:`difficulty` says.
    setup
        What is known; None for nothing.
    """
    measured_half = measured_half_width(movement, view, quality) * hardness
    if setup is None or setup.study is None:
        return with_allowance(movement, measured_half)
    correction = setup.correction
    corrected = correction is not None and correction.study == setup.study.study
    return max(measured_half, setup.study.half_width_deg(corrected=corrected))


def with_allowance(movement: Movement, measured_half: float) -> float:
    """Return a measured half-width with what the measuring could not see."""
    facts = MOVEMENTS[movement]
    return max(measured_half + facts.allowance, LEAST_HALF_WIDTH.get(facts.family, 0.0))


def too_wide(movement: Movement, half: float) -> bool:
    """Return whether an interval of this half-width says too little to be a reading."""
    return half > WIDEST_HALF_WIDTH[MOVEMENTS[movement].family]
