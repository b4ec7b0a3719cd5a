"""What the several passes of a reading are worth against one pass of the heavy network.

    python -m tests.bench.bench_passes FOLDER [--write]

FOLDER holds the accuracy bench's clips and, in tracks/, what was seen in them; no network runs.
The good clips of the trial and final sets are read three ways: as usual; from the heavy network's
plain pass alone, with the same trials and corrections; and as a bare loop would, from the largest
uncorrected angle of that pass. `--write` copies the table into measure/docs/analyst.md.
"""

import argparse
import re
import statistics
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np

from measure.clips.observation import ClipObservation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.kinematics.elevation import elevation_of
from measure.kinematics.keypoints import arm_keypoints
from measure.live.trial_refiner import COARSE_ONLY
from measure.trials.scan import scan_for_trials
from tests.bench.accuracy_cases import Case, is_kept, load_cases, observation_of

_DOCUMENT = Path(__file__).resolve().parents[2] / "measure/docs/analyst.md"
_MARKS = re.compile(r"(<!-- passes:begin -->\n).*?(<!-- passes:end -->)", re.DOTALL)
_WAYS = {
    "usual": "usual reading",
    "plain": "heavy network, plain pass alone",
    "largest": "largest uncorrected angle of that pass",
}
_SETS = ("trial", "final")
_RAISED = (Movement.FLEXION, Movement.ABDUCTION, Movement.EXTENSION)
_GROUPS = {
    "raised arm": _RAISED,
    "external rotation": (Movement.EXTERNAL_ROTATION,),
    "reach": (Movement.HAND_BEHIND_BACK,),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Errors:
    """How far each way is from the truth of one clip; None where it gives no value."""

    movement: Movement
    usual: float | None
    plain: float | None
    largest: float | None


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--write", action="store_true", help="copy the table into the document")
    arguments = parser.parse_args()
    kept = arguments.folder / "tracks"
    found = [
        errors(case, observation_of(case, "heavy", kept))
        for case in load_cases(arguments.folder)
        if case.split in _SETS and case.readable and is_kept(case, "heavy", kept)
    ]
    text = "\n".join(_table(found)) + "\n"
    print(text)
    if arguments.write:
        document = _DOCUMENT.read_text(encoding="utf-8")
        written = _MARKS.sub(lambda marks: f"{marks[1]}{text}{marks[2]}", document)
        _DOCUMENT.write_text(written, encoding="utf-8")


def errors(case: Case, observation: ClipObservation) -> Errors:
    """Read a clip three ways."""
    truth = statistics.median(hold[0] for hold in case.holds)
    plain = {name: track for name, track in observation.fine.items() if name == "heavy"}
    values = {
        "usual": measurement_from_observation(observation, Setup()).measurement.value,
        "plain": None,
        "largest": None,
    }
    if plain:
        alone = replace(observation, fine=plain, model=COARSE_ONLY)
        values["plain"] = measurement_from_observation(alone, Setup()).measurement.value
        values["largest"] = _largest(alone)
    apart = {name: None if value is None else value - truth for name, value in values.items()}
    return Errors(movement=case.movement, **apart)


def _largest(observation: ClipObservation) -> float | None:
    """Return the largest angle between arm and trunk line; only raised arms have one."""
    movement = observation.movement
    if movement not in _RAISED:
        return None
    track = observation.fine["heavy"]
    view = scan_for_trials(
        observation.coarse, movement, observation.side, observation.view, Setup()
    ).view
    no_rest = np.zeros(len(track), dtype=bool)
    raw = elevation_of(arm_keypoints(track, observation.side), movement, view, no_rest).raw_deg
    return float(np.nanmax(raw)) if np.isfinite(raw).any() else None


def _table(found: list[Errors]) -> Iterator[str]:
    yield f"{len(found)} good clips of the trial and final sets, model heavy."
    yield ""
    yield "| movement | read | clips | mean abs. error | P95 | worst |"
    yield "|---|---|---|---|---|---|"
    for title, movements in _GROUPS.items():
        ways = [name for name in _WAYS if name != "largest" or movements == _RAISED]
        unit, digits = "°", 1
        if MOVEMENTS[movements[0]].unit is Unit.FRACTION:
            unit, digits = "", 3
        told = [[getattr(one, name) for name in ways] for one in found if one.movement in movements]
        # Only clips that every way gives a value for.
        known = [np.abs(row) for row in told if None not in row]
        for name, column in zip(ways, np.transpose(known), strict=True):
            figures = (np.mean(column), np.quantile(column, 0.95), np.max(column))
            cells = " | ".join(f"{figure:.{digits}f}{unit}" for figure in figures)
            yield f"| {title} | {_WAYS[name]} | {len(known)} of {len(told)} | {cells} |"


if __name__ == "__main__":
    main()
