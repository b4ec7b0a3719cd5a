"""One model for each movement, and no other place that asks which movement it is."""

import ast
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import GateResult
from measure.kinematics.fusion import keypoints_of_passes
from measure.trials.movement_model import model_of
from tests.support.stick_figure import elevation_track, raise_and_hold

ROOT = Path(__file__).parents[3]
SERIES = raise_and_hold(60.0)
REST, HOLD = np.arange(len(SERIES)) < 8, SERIES > 59.9


@pytest.mark.parametrize("side", list(Side))
@pytest.mark.parametrize("movement", list(Movement))
def test_a_model_estimates_and_judges_any_track(movement: Movement, side: Side) -> None:
    track = elevation_track(SERIES, Movement.ABDUCTION, side, View.FRONT)
    model, task = model_of(movement), MeasurementTask(movement, side, MOVEMENTS[movement].views[0])
    passes = keypoints_of_passes([track, track], task)
    fused = model.estimate(passes, task, REST)
    assert fused.per_pass.shape == (2, len(track))
    assert np.array_equal(fused.per_pass[0], fused.per_pass[1], equal_nan=True)
    assert fused.keypoints is passes.median
    assert isinstance(model.gates(fused, task, REST, HOLD), GateResult)
    assert model.segmentation.rest == MOVEMENTS[movement].rest


def test_one_pass_is_its_own_median_and_chosen_frames_keep_their_values() -> None:
    track = elevation_track(SERIES, Movement.ABDUCTION, Side.LEFT, View.FRONT)
    task = MeasurementTask(Movement.ABDUCTION, Side.LEFT, View.FRONT)
    passes = keypoints_of_passes([track], task)
    assert passes.median is passes.per_pass[0]
    fused = model_of(task.movement).estimate(passes, task, REST)
    held = fused.frames(HOLD)
    assert np.array_equal(held.value, fused.value[HOLD])
    assert np.array_equal(held.time_s, track.time_s[HOLD])
    assert np.array_equal(held.keypoints.wrist, passes.median.wrist[HOLD])


def test_a_task_without_its_view_says_so() -> None:
    task = MeasurementTask(Movement.ABDUCTION, Side.LEFT)
    with pytest.raises(ValueError, match="not been recognised"):
        _ = task.known_view
    assert task.seen_from(View.BACK).known_view is View.BACK


def branches() -> Iterator[str]:
    """Yield the places of the product that branch on a movement's name."""
    for package in ("measure", "gui", "calibration"):
        for path in sorted((ROOT / package).rglob("*.py")):
            for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
                tests: list[ast.AST] = []
                if isinstance(node, ast.If | ast.IfExp | ast.While):
                    tests = [node.test]
                elif isinstance(node, ast.comprehension):
                    tests = list(node.ifs)
                elif isinstance(node, ast.match_case):
                    tests = [node.pattern]
                elif isinstance(node, ast.Compare):
                    tests = [node]
                if any(names_a_movement(part) for test in tests for part in ast.walk(test)):
                    yield f"{path.relative_to(ROOT).as_posix()}:{getattr(node, 'lineno', '')}"


def names_a_movement(node: ast.AST) -> bool:
    return (
        isinstance(node, ast.Attribute)
        and isinstance(node.value, ast.Name)
        and node.value.id == "Movement"
        and node.attr in Movement.__members__
    )


def test_no_branch_names_a_movement() -> None:
    assert list(branches()) == []
