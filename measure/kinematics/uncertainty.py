"""Uncertainty: the width of a reading's 95 % interval, from the measured error of its kind.

The interval has two parts. The *measured* part comes from ``intervals.json``, written by the
accuracy bench: split conformal prediction (Lei 2018, doi:10.1080/01621459.2017.1307116) over
the errors on virtual people that no correction was fitted on, each error divided by how hard
its reading was (:func:`difficulty`). The *allowance* is the project's own: real people, clothes
and rooms differ more from each other than virtual ones, and the network's points lie beside
anatomical joint centres by amounts that differ between people. It is to be replaced by an
agreement study.
"""

import json
import math
from collections.abc import Collection, Mapping
from functools import cache
from importlib.resources import files
from typing import Any

from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from measure.domain.reasons import Reason

#: Spread of the passes that makes a reading √2 times as hard, by unit. [project]
HARD_SPREAD = {Unit.DEGREES: 4.0, Unit.FRACTION: 0.04}
#: Doubts that make a reading harder.
DOUBTS = frozenset({Reason.ELBOW_BENT, Reason.OUT_OF_PLANE, Reason.UNSTEADY_HOLD})
#: How many times harder a reading is with such a doubt; from the truth bench. [project]
DOUBT_FACTOR = 1.5
#: A model that was not measured gets the widest interval that was, times this. [project]
UNMEASURED_FACTOR = 2.0


@cache
def measured() -> Mapping[str, Mapping[str, float]]:
    """Return the half-width at difficulty 1, by "movement:view" and then by model quality."""
    content: Mapping[str, Any] = json.loads(
        files("measure.kinematics").joinpath("intervals.json").read_text(encoding="utf-8")
    )
    return content


def difficulty(movement: Movement, spread: float, notes: Collection[Reason]) -> float:
    """Return how much harder than usual a reading was, 1 or more.

    Parameters
    ----------
    spread
        How far the passes' values lie apart, in the movement's unit.
    notes
        Doubts noted by the gates.
    """
    unit = MOVEMENTS[movement].unit
    factor = DOUBT_FACTOR if DOUBTS.intersection(notes) else 1.0
    return factor * math.hypot(1.0, spread / HARD_SPREAD[unit])


def measured_half_width(
    movement: Movement, view: View, quality: str, spread: float, notes: Collection[Reason]
) -> float:
    """Return the half-width that the bench's errors call for, without the allowance.

    A model that was not measured gets a wider one than any that was.
    """
    by_quality = measured()[f"{movement}:{view}"]
    base = by_quality.get(quality, UNMEASURED_FACTOR * max(by_quality.values()))
    return base * difficulty(movement, spread, notes)


def half_width(
    movement: Movement, view: View, quality: str, spread: float, notes: Collection[Reason]
) -> float:
    """Return the half-width of the 95 % interval that is shown, in the movement's unit."""
    return (
        measured_half_width(movement, view, quality, spread, notes) + MOVEMENTS[movement].allowance
    )
