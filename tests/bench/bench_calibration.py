"""`make bench-calibration`: what knowing lens, level and body is worth, on virtual people.

    python -m tests.bench.bench_calibration FOLDER [--write] [--each]

FOLDER is that of the accuracy bench: its clips with their truth, and what the networks saw in
them. The same looks are read again with more and more known: each virtual camera's own lens and
roll, each body's own forearm as a tape would find it; for the reach C7 as a helper would mark it
(which the program does not use for the height: here is tried what it would bring). The people that
nothing was fitted on stand first, then all, among them those that the corrections were fitted on
with nothing known.
`--write` copies the table into calibration/README.md, between its marks.
"""

import argparse
import csv
import math
import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.acquisition import BodySetup, CameraSetup, LensProfile, Setup
from measure.domain.landmarks import FloatArray
from measure.domain.movements import Movement
from measure.kinematics.bias_correction import reach_correction
from measure.kinematics.keypoints import arm_keypoints
from measure.kinematics.rotation import USUAL_FOREARM
from measure.trials.refinement import refine_trial
from measure.trials.scan import scan_for_trials
from sample_clips.body import bodies_folder, load_body, shape_of
from tests.bench.accuracy_cases import Case, load_cases, observation_of, observation_path

_DOCUMENT = Path(__file__).resolve().parents[2] / "calibration/README.md"
_MARKS = re.compile(r"(<!-- known:begin -->\n).*?(<!-- known:end -->)", re.DOTALL)
#: The sets of people, and what they are called in the table.
_PEOPLE = {
    "untouched": ("final",),
    "all": ("fitting", "trial", "checking", "final", "second"),
}
_MOVEMENTS = (Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK)
#: A careful tape measure's standard deviation, as a share of the forearm. Ours.
_TAPE_ERROR = 0.02
#: Bodies that the usual proportion is the mean of.
_BODIES = range(28)
#: The first stance of a clip, seconds.
_FIRST_S = 1.5
#: Times that the clips are drawn anew.
_DRAWS = 2000
_CAMERA = ("nothing", "lens", "lens and roll")
_NAMES = {
    Movement.EXTERNAL_ROTATION: (*_CAMERA, "lens, roll, forearm by tape", "the same, exactly"),
    Movement.HAND_BEHIND_BACK: (*_CAMERA, "C7 marked, to 1 cm", "the same, exactly"),
}
#: How well C7 is marked, as a share of a trunk of 57 cm. Ours.
_MARK_ERROR = 0.01 / 0.57


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """One case read with more and more known, in the order of the names; NaN for no reading."""

    case: Case
    errors: tuple[float, ...]


def c7_of(case: Case, observation: ClipObservation) -> float:
    """Return C7's height over the trunk as a helper would mark it, from the clip's own truth."""
    with case.clip.with_suffix(".csv").open(encoding="utf-8") as file:
        rows = [row for row in csv.DictReader(file) if float(row["time_s"]) < _FIRST_S]
    marked = [(float(row["c7_x_px"]) - 0.5, 0.5 - float(row["c7_y_px"])) for row in rows]
    first = arm_keypoints(observation.coarse.between(0.0, _FIRST_S), case.side)
    hip, trunk = np.nanmedian(first.mid_hip, axis=0), np.nanmedian(first.trunk, axis=0)
    return float((np.median(marked, axis=0) - hip) @ trunk / (trunk @ trunk))


def with_c7(errors: Sequence[float], case: Case, c7: float, usual: float) -> float:
    """Return the error that the reading would have if it went by the person's own C7.

    The reading is a height over the trunk, times a factor that holds the usual height of C7.
    """
    if not math.isfinite(errors[0]):
        return math.nan
    truth = float(np.median([hold[0] for hold in case.holds]))
    value = errors[0] + truth
    offset = reach_correction(case.view).offset
    return offset + (value - offset) * usual / c7 - truth


def lens_of(facts: Mapping[str, Any]) -> LensProfile:
    """Return the profile of a virtual camera: its own optics, as the model of profiles has them."""
    camera = facts["camera"]
    width, height, focal = camera["width"], camera["height"], camera["focal_px"]
    return LensProfile(
        camera_name="virtual",
        width_px=width,
        height_px=height,
        focal_px=(focal, focal),
        centre_px=((width - 1) / 2, (height - 1) / 2),
        distortion=_terms(camera["barrel"], width, height, focal),
        reprojection_px=0.1,
        views=24,
    )


def _terms(
    barrel: float, width: int, height: int, focal: float
) -> tuple[float, float, float, float, float]:
    """Return radial terms that do what the virtual camera's barrel does, by least squares.

    There a point seen at radius r belongs at r (1 + barrel (r / half the width)^2).
    """
    seen = np.linspace(0, math.hypot(width, height) / 2 * 1.15, 400)
    plain = seen * (1 + barrel * (seen / (width / 2)) ** 2) / focal
    powers = np.stack([plain**3, plain**5, plain**7], axis=1)
    k1, k2, k3 = np.linalg.lstsq(powers, seen / focal - plain, rcond=None)[0]
    return float(k1), float(k2), 0.0, 0.0, float(k3)


@cache
def forearm_of(body: int) -> float:
    """Return elbow to wrist over mid-hip to mid-shoulder, between a virtual body's joints."""
    made = load_body(shape_of(body), bodies_folder())
    shoulder, hip = (
        (made.head(f"{bone}.L") + made.head(f"{bone}.R")) / 2
        for bone in ("upperarm01", "upperleg01")
    )
    forearm = np.linalg.norm(made.head("lowerarm01.L") - made.head("wrist.L"))
    return float(forearm / np.linalg.norm(shoulder - hip))


def setups_of(case: Case, random: np.random.Generator) -> tuple[Setup, ...]:
    """Return what is known in each step, in the order of the names."""
    lens = lens_of(case.facts)
    # The virtual camera's roll is counted the other way round.
    roll = -case.facts["camera"]["roll_deg"]
    usual = float(np.mean([forearm_of(body) for body in _BODIES]))
    exact = USUAL_FOREARM * forearm_of(case.facts["body"]) / usual
    taped = exact * (1 + random.normal(0, _TAPE_ERROR))
    level = CameraSetup(name="virtual", lens=lens, roll_deg=roll)
    plain = (Setup(), Setup(camera=CameraSetup(name="virtual", lens=lens)), Setup(camera=level))
    if case.movement is Movement.HAND_BEHIND_BACK:
        return plain
    return (
        *plain,
        Setup(camera=level, body=BodySetup(forearm=taped)),
        Setup(camera=level, body=BodySetup(forearm=exact)),
    )


def read(case: Case, kept: Path, random: np.random.Generator) -> Known:
    """Read a case's first trial in every step, from the looks that are kept."""
    observation = observation_of(case, "heavy", kept)
    truth = float(np.median([hold[0] for hold in case.holds]))
    errors = []
    for setup in setups_of(case, random):
        value = _value(case, observation, setup)
        errors.append(math.nan if value is None else value - truth)
    return Known(case=case, errors=tuple(errors))


def _value(case: Case, observation: ClipObservation, setup: Setup) -> float | None:
    task = replace(case.task, setup=setup)
    found = scan_for_trials(observation.coarse, task)
    if not found.trials:
        return None
    tracks = [each.between(*found.windows[0]) for each in observation.fine.values()]
    if not tracks or not len(tracks[0]):
        return None
    return refine_trial(tracks, found.trials[0], found.task, observation.model).trial.value


def add_marks(found: Sequence[Known], kept: Path, random: np.random.Generator) -> tuple[Known, ...]:
    """Return the cases with the steps in which C7 is marked added to those of the reach."""
    reaches = [each for each in found if each.case.movement is Movement.HAND_BEHIND_BACK]
    heights = {
        each.case.name: c7_of(each.case, observation_of(each.case, "heavy", kept))
        for each in reaches
    }
    usual = {
        view: float(
            np.mean([heights[each.case.name] for each in reaches if each.case.view is view])
        )
        for view in {each.case.view for each in reaches}
    }

    def marked(one: Known) -> Known:
        if one.case.name not in heights:
            return one
        exact = heights[one.case.name]
        steps = tuple(
            with_c7(one.errors, one.case, height, usual[one.case.view])
            for height in (exact + random.normal(0, _MARK_ERROR), exact)
        )
        return replace(one, errors=one.errors + steps)

    return tuple(map(marked, found))


def table(found: Sequence[Known]) -> str:
    """Return the errors by movement, over the cases that are read in every step."""
    lines = [
        "| movement | people | known | clips | mean error | root mean square | its change, 95 % |",
        "|---|---|---|---|---|---|---|",
    ]
    for movement in _MOVEMENTS:
        for people, sets in _PEOPLE.items():
            chosen = [
                each.errors
                for each in found
                if each.case.movement is movement
                and each.case.split in sets
                and np.isfinite(each.errors).all()
            ]
            if chosen:
                lines += _rows(movement, people, np.array(chosen))
    return "\n".join(lines)


def _rows(movement: Movement, people: str, errors: FloatArray) -> list[str]:
    """Return a line for each step.

    Parameters
    ----------
    errors
        Shape (clips, steps).
    """
    digits, unit = (2, "°") if movement is Movement.EXTERNAL_ROTATION else (4, "")
    lines = []
    for name, one in zip(_NAMES[movement], errors.T, strict=True):
        figures = (float(np.mean(np.abs(one))), _root(one))
        told = " | ".join(f"{figure:.{digits}f}{unit}" for figure in figures)
        low, high = change_of_root(errors[:, 0], one)
        change = f"{low:+.{digits}f} to {high:+.{digits}f}{unit}" if name != _CAMERA[0] else ""
        lines.append(f"| {movement.value} | {people} | {name} | {len(one)} | {told} | {change} |")
    return lines


def _root(errors: FloatArray) -> float:
    return float(np.sqrt(np.mean(errors**2)))


def change_of_root(before: FloatArray, after: FloatArray) -> tuple[float, float]:
    """Return the 95 % interval of the change of the root mean square, clips drawn anew."""
    random = np.random.default_rng(1)
    drawn = random.integers(0, len(before), (_DRAWS, len(before)))
    changes = [_root(after[chosen]) - _root(before[chosen]) for chosen in drawn]
    low, high = np.percentile(changes, [2.5, 97.5])
    return float(low), float(high)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--write", action="store_true", help="copy the table into the document")
    parser.add_argument("--each", action="store_true", help="print a line for each clip")
    arguments = parser.parse_args()
    kept = arguments.folder / "tracks"
    random = np.random.default_rng(6)
    chosen = [
        case
        for case in load_cases(arguments.folder)
        if case.movement in _MOVEMENTS
        and any(case.split in sets for sets in _PEOPLE.values())
        and case.readable
        and observation_path(case, "heavy", kept).exists()
    ]
    found = []
    for case in chosen:
        found.append(read(case, kept, random))
        if arguments.each:
            print(case.name, " ".join(f"{error:8.3f}" for error in found[-1].errors), flush=True)
    text = table(add_marks(found, kept, random))
    print(text)
    if arguments.write:
        before = _DOCUMENT.read_text(encoding="utf-8")
        after = _MARKS.sub(lambda marks: f"{marks[1]}{text}\n{marks[2]}", before)
        _DOCUMENT.write_text(after, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
