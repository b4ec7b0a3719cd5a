"""`make bench-calibration`: what knowing lens, level and body is worth, on virtual people.

    python -m tests.bench.bench_calibration FOLDER [--write] [--each]

FOLDER is that of the accuracy bench: its clips with their truth, and what the networks saw in
them. The same looks are read again with more and more known: each virtual camera's own lens and
roll, each body's own forearm as a tape would find it. The people that nothing was fitted on are
told apart from those that the corrections were fitted on (with nothing known of their cameras).
`--write` copies the table into docs/calibration.md, between its marks.
"""

import argparse
import math
import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from calibration.known_setup import USUAL_NETWORK_FOREARM
from measure.body import FloatArray
from measure.errors import DataError
from measure.movements import Movement
from measure.replay import reading_of
from measure.setup import BodySetup, CameraSetup, LensProfile, Setup
from sample_clips.body import bodies_folder, load_body, shape_of
from tests.bench.accuracy_cases import Case, kept_path, load_cases, looked_at

_DOCUMENT = Path(__file__).resolve().parents[2] / "docs/calibration.md"
_MARKS = re.compile(r"(<!-- known:begin -->\n).*?(<!-- known:end -->)", re.DOTALL)
#: The sets of people, and what they are called in the table.
_PEOPLE = {
    "untouched": ("final", "second"),
    "of the fit": ("fitting", "trial", "checking"),
}
_MOVEMENTS = (Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK)
#: A careful tape measure's standard deviation, as a share of the forearm. Ours.
_TAPE_ERROR = 0.02
#: Bodies that the usual proportion is the mean of.
_BODIES = range(28)
_NAMES = ("nothing", "lens", "lens and roll", "lens, roll, forearm by tape", "the same, exactly")


@dataclass(frozen=True, slots=True, kw_only=True)
class Known:
    """One case read with more and more known; errors are NaN where nothing was read."""

    case: Case
    errors: tuple[float, ...]


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
    exact = USUAL_NETWORK_FOREARM * forearm_of(case.facts["body"]) / usual
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
    """Read one case in every step."""
    looked = looked_at(case, "heavy", kept)
    truth = float(np.median([hold[0] for hold in case.holds]))
    errors = []
    for setup in setups_of(case, random):
        try:
            value = reading_of(looked, setup).measurement.value
        except DataError:  # a trial was found at another moment than the networks looked at
            value = None
        errors.append(math.nan if value is None else value - truth)
    return Known(case=case, errors=tuple(errors))


def table(found: Sequence[Known]) -> str:
    """Return the errors by movement, over the cases that are read in every step."""
    lines = [
        "| movement | people | known | clips | mean error | root mean square | 95 of 100 within |",
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
    for name, one in zip(_NAMES, errors.T, strict=False):
        figures = (
            float(np.mean(np.abs(one))),
            float(np.sqrt(np.mean(one**2))),
            float(np.percentile(np.abs(one), 95)),
        )
        told = " | ".join(f"{figure:.{digits}f}{unit}" for figure in figures)
        lines.append(f"| {movement.value} | {people} | {name} | {len(one)} | {told} |")
    return lines


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
        and kept_path(case, "heavy", kept).exists()
    ]
    found = []
    for case in chosen:
        found.append(read(case, kept, random))
        if arguments.each:
            print(case.name, " ".join(f"{error:8.3f}" for error in found[-1].errors), flush=True)
    text = table(found)
    print(text)
    if arguments.write:
        before = _DOCUMENT.read_text(encoding="utf-8")
        after = _MARKS.sub(lambda marks: f"{marks[1]}{text}\n{marks[2]}", before)
        _DOCUMENT.write_text(after, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
