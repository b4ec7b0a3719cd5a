"""Fitting the small corrections and the intervals, on bodies of the fitting and checking sets.

Corrections of rotation and reach are fitted on the fitting set, robustly, a few coefficients
each, pulled a little towards an earlier experiment's; elevations have none. Interval half-widths
of the movements for which there are no real people come from errors made on bodies that the
correction used for them never saw: each body of the fitting set left out in turn, and the
checking set.
"""

import json
import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from measure.domain.acquisition import Setup
from measure.domain.landmarks import FloatArray
from measure.domain.measurements import IntervalBasis
from measure.domain.movements import MOVEMENTS, Family, Movement, View
from measure.domain.tracks import Track
from measure.kinematics.angles import mean_near_median, median_over
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.reach import reach_of
from measure.kinematics.rotation import ASKED_TURN_DEG, rotation_of
from measure.kinematics.rotation_phases import rotation_phases, zero_azimuth_deg
from measure.kinematics.uncertainty import difficulty, interval_basis
from tests.bench.accuracy_cases import Case
from tests.bench.accuracy_judge import Judged


@dataclass(frozen=True, slots=True, kw_only=True)
class Sample:
    """One trial as the fit sees it: the terms of its movement's correction, and the truth.

    Attributes
    ----------
    value
        What was read.
    terms
        Terms by name; their weighted sum is the value. None of an elevation, which is not
        corrected.
    """

    case: Case
    value: float
    terms: Mapping[str, float]
    truth: float
    spread: float
    notes: tuple[Any, ...]


def samples_of(judged: Sequence[Judged]) -> list[Sample]:
    """Return a sample for every scored trial whose true hold it overlaps."""
    samples = []
    for one in judged:
        holds = one.case.holds
        for settled, window in zip(one.refined, one.found.windows, strict=True):
            trial = settled.trial
            if trial.value is None or trial.hold_start_s is None or trial.hold_end_s is None:
                continue
            shared = [
                min(trial.hold_end_s, end) - max(trial.hold_start_s, start)
                for _, start, end in holds
            ]
            if not shared or max(shared) <= 0:
                continue
            terms = [
                _terms(one, track.between(*window), trial.hold_start_s, trial.hold_end_s)
                for track in one.observation.deciding.values()
            ]
            samples.append(
                Sample(
                    case=one.case,
                    value=trial.value,
                    terms={
                        name: float(np.mean([each[name] for each in terms])) for name in terms[0]
                    },
                    truth=holds[int(np.argmax(shared))][0],
                    spread=settled.spread,
                    notes=trial.flags,
                )
            )
    return samples


def _terms(one: Judged, track: Track, start_s: float, end_s: float) -> dict[str, float]:
    movement, view = one.case.movement, one.found.view
    if MOVEMENTS[movement].family is Family.ELEVATION:
        return {}
    posture = arm_keypoints(track, one.case.side)
    trial = one.found.trials[0]
    hold = (track.time_s >= start_s) & (track.time_s <= end_s)
    rest = (track.time_s >= trial.rest_start_s) & (track.time_s <= trial.rest_end_s)
    if movement is Movement.EXTERNAL_ROTATION:
        stances = rotation_phases(posture)
        rotation = rotation_of(posture, stances.facing, stances.turned, Setup())
        zero = zero_azimuth_deg(track.time_s, rotation.azimuth_deg, stances.turned)
        azimuth = mean_near_median(rotation.azimuth_deg[hold], 10.0)
        turn = rotation.turn_deg if math.isfinite(rotation.turn_deg) else ASKED_TURN_DEG
        return {"offset": 1.0, "azimuth": azimuth, "zero": -zero, "turn": turn}
    height = mean_near_median(reach_of(posture).thumb[hold], 0.04)
    across = float(median_over(posture.separation_px / posture.trunk_px, rest))
    terms = {"offset": 1.0, "height": height}
    return terms | ({"separation": across} if view is View.SIDE else {})


def key_of(sample: Sample) -> tuple[str, str]:
    """Return the place of a sample's correction in ``fitted.json``."""
    if sample.case.movement is Movement.EXTERNAL_ROTATION:
        return "rotation", ""
    return "reach", str(sample.case.view)


_NAMES = {
    "rotation": ("offset", "azimuth", "zero", "turn"),
    "reach": ("offset", "height", "separation"),
}
#: Coefficients found in an earlier experiment on other bodies and clips of the same kind; the
#: fit is pulled towards them, so that few clips cannot lead far astray.
_EARLIER: Mapping[tuple[str, str], Mapping[str, float]] = {
    ("rotation", ""): {"offset": 8.4, "azimuth": 1.02, "zero": 0.40, "turn": 0.41},
    ("reach", "back"): {"offset": 0.06, "height": 1.03},
    ("reach", "side"): {"offset": 0.072, "height": 0.876},
}
#: Scale of each term, so that the pull is alike for all.
_SCALE = {"azimuth": 45.0, "zero": 20.0, "turn": 20.0}


#: How many clips the earlier coefficients count as: hardly any. The thumb was held in another way
#: there, and the forearm's line ended at the wrist.
_PULL = {"rotation": 0.3, "reach": 0.3}


def fit(samples: Sequence[Sample]) -> dict[str, float]:
    """Return the coefficients of one correction, by iteratively reweighted least squares."""
    names = [name for name in _NAMES[key_of(samples[0])[0]] if name in samples[0].terms]
    matrix = np.array([[each.terms[name] for name in names] for each in samples])
    wanted = np.array([each.truth for each in samples])
    earlier = _EARLIER[key_of(samples[0])]
    neutral = np.array([earlier.get(name, 0.0) for name in names])
    scale = np.array([_SCALE.get(name, 1.0) for name in names])
    design, target = matrix / scale, wanted - matrix @ neutral
    weights = np.ones(len(samples))
    pulls = np.sqrt(_PULL[key_of(samples[0])[0]]) * np.eye(len(names))
    solution = np.zeros(len(names))
    for _ in range(30):
        rows = np.vstack([design * weights[:, None], pulls])
        solution = np.linalg.lstsq(
            rows, np.concatenate([target * weights, np.zeros(len(names))]), rcond=None
        )[0]
        left = np.abs(target - design @ solution)
        typical = max(1.4826 * float(np.median(left)), 1e-6)
        weights = np.sqrt(1 / np.maximum(1.0, left / (1.5 * typical)))
    found = neutral + solution / scale
    return {
        name: float(f"{found[names.index(name)]:.5g}") if name in names else 0.0
        for name in _NAMES[key_of(samples[0])[0]]
    }


def apply(coefficients: Mapping[str, float], sample: Sample) -> float:
    return sum(coefficients[name] * value for name, value in sample.terms.items())


def fit_all(samples: Sequence[Sample]) -> dict[str, Any]:
    """Return the content of ``fitted.json``."""
    content: dict[str, Any] = {"rotation": {}, "reach": {}}
    for key, group in _corrected(samples).items():
        family, name = key
        coefficients = fit(group)
        content[family] = coefficients if not name else content[family] | {name: coefficients}
    return content


def _corrected(samples: Sequence[Sample]) -> dict[tuple[str, str], list[Sample]]:
    """Return the samples of movements that are corrected, by the place of their correction."""
    groups: dict[tuple[str, str], list[Sample]] = {}
    for sample in samples:
        if sample.terms:
            groups.setdefault(key_of(sample), []).append(sample)
    return dict(sorted(groups.items()))


def too_few_bodies(samples: Sequence[Sample]) -> tuple[str, ...]:
    """Return the corrections for which one body cannot be left out and the others fitted on."""
    return tuple(
        " ".join(key).strip()
        for key, group in _corrected(samples).items()
        if len({sample.case.facts["body"] for sample in group}) < 2
    )


def unseen_scores(fitting: Sequence[Sample], checking: Sequence[Sample]) -> dict[str, list[float]]:
    """Return |error| / difficulty on bodies left out, by "movement:view".

    Only of movements whose interval rests on virtual people.
    """
    scores: dict[str, list[float]] = {}
    for sample in (*fitting, *checking):
        if not sample.terms:
            _score(scores, sample, sample.value)
    checked = _corrected(checking)
    for key, group in _corrected(fitting).items():
        for body in sorted({sample.case.facts["body"] for sample in group}):
            coefficients = fit([each for each in group if each.case.facts["body"] != body])
            for sample in group:
                if sample.case.facts["body"] == body:
                    _score(scores, sample, apply(coefficients, sample))
        coefficients = fit(group)
        for sample in checked.get(key, []):
            _score(scores, sample, apply(coefficients, sample))
    return scores


def _score(scores: dict[str, list[float]], sample: Sample, value: float) -> None:
    movement, view = sample.case.movement, sample.case.view
    if interval_basis(movement, view) is not IntervalBasis.VIRTUAL_PEOPLE:
        return
    hard = difficulty(movement, view, value, sample.spread, sample.notes)
    scores.setdefault(f"{movement}:{view}", []).append(abs(value - sample.truth) / hard)


def conformal(scores: Sequence[float], share: float = 0.95) -> float:
    """Return the split-conformal quantile of scores; the largest where they are few."""
    ranked: FloatArray = np.sort(np.asarray(scores, dtype=np.float64))
    place = math.ceil((len(ranked) + 1) * share)
    return float(ranked[min(place, len(ranked)) - 1])


def write(path: Path, content: Mapping[str, Any]) -> None:
    path.write_text(json.dumps(content, indent=2) + "\n", encoding="utf-8")
