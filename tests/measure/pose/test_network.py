"""The network's wrapper with the real network, in a process of its own."""

import itertools
import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

from measure.pose.memory import HEAP_LIMITS
from tests.support import landmarker_trial, real_model


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """What the trial said; it must end by itself, and soon."""
    folder = tmp_path_factory.mktemp("Żółw ü 日本 %x")
    model = folder / "pose model.task"
    model.write_bytes(real_model.bundle().content)
    done = subprocess.run(
        [sys.executable, str(Path(landmarker_trial.__file__)), str(model)],
        capture_output=True,
        timeout=90,
        check=False,
        env=os.environ | HEAP_LIMITS,
    )
    assert done.returncode == 0, done.stderr.decode()[-2000:]
    answer: dict[str, Any] = json.loads(done.stdout.splitlines()[-1])
    return answer


def test_nothing_can_leave(told: dict[str, Any]) -> None:
    assert told["proxies"] == ["http://127.0.0.1:9"]
    assert told["no_proxy"] is None


def test_the_library_sees_the_pixels_of_every_view(told: dict[str, Any]) -> None:
    assert told["pixels_survive"] is True


def test_odd_times_become_milliseconds_that_increase(told: dict[str, Any]) -> None:
    assert told["milliseconds"] == [0, 1, 33, 34, 35, 67, 68, 69, 1000]
    assert told["shape"] == [33, 2]


@pytest.mark.parametrize("kind", ["view", "grey", "floats"])
def test_pictures_that_passed_no_gate_are_refused_and_harm_nothing(
    told: dict[str, Any], kind: str
) -> None:
    assert "had not passed the frame gate" in told[kind]
    assert told["after refusals"] == ""


def test_after_closing_it_says_so_instead_of_seeing_nobody(told: dict[str, Any]) -> None:
    assert "after it had been closed" in told["after close"]


def test_a_failed_network_says_so_and_can_be_closed(told: dict[str, Any]) -> None:
    assert told["poisoned"].startswith("PoseProcessError: The pose network failed")


def test_plain_inference_takes_each_frame_once_at_its_own_time(told: dict[str, Any]) -> None:
    assert told["plain looks"] == [[-1, 1, 2, -1, 4], [0, 250, 500, 750, 1000]]


def test_fine_inference_settles_on_whom_it_finds_and_forgets_what_was(told: dict[str, Any]) -> None:
    used, asked_ms = told["careful looks"]
    assert used == [-1, 3, 4, -1, 7]
    assert all(later - before > 500_000 for before, later in itertools.pairwise(asked_ms))


def test_after_a_pause_fine_inference_warms_up_again(told: dict[str, Any]) -> None:
    assert told["looks after a pause"][0] == [2, 5]  # it was lost at first sight


def test_every_network_opened_was_closed(told: dict[str, Any]) -> None:
    assert told["opened"] == told["closed"] == 10 + landmarker_trial.OPENINGS


def test_opening_and_closing_again_and_again_keeps_memory_flat(told: dict[str, Any]) -> None:
    assert told["growth_mb"] < 10


def test_a_broken_bundle_is_a_model_error(told: dict[str, Any]) -> None:
    assert told["broken bundle"].startswith("ModelError: The pose model could not be loaded")
