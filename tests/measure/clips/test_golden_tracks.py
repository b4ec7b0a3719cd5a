"""What the network saw of a few virtual people, read again: numbers change only on purpose."""

import json
from pathlib import Path

import pytest

from measure.clips.observation_file import load_observation
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit, View
from tests.bench.accuracy_cases import Case
from tests.bench.accuracy_judge import judge

TRACKS = Path(__file__).resolve().parents[2] / "tracks"
CASES = json.loads((TRACKS / "cases.json").read_text(encoding="utf-8"))

#: How far a reading may lie from the truth of its clip, and from the golden reading.
FROM_TRUTH = {Unit.DEGREES: 12.0, Unit.FRACTION: 0.15}
FROM_GOLDEN = {Unit.DEGREES: 0.05, Unit.FRACTION: 0.0005}


def case_of(entry):
    return Case(
        name=entry["name"],
        clip=TRACKS / f"{entry['name']}.mp4",
        movement=Movement(entry["movement"]),
        side=Side(entry["side"]),
        view=View(entry["view"]),
        split="golden",
        expected=tuple(entry["expected"]),
        holds=tuple(tuple(hold) for hold in entry["holds"]),
        facts={},
    )


@pytest.mark.parametrize("entry", CASES, ids=[entry["name"] for entry in CASES])
def test_a_kept_case_reads_as_before(entry):
    case = case_of(entry)
    _, observation = load_observation(TRACKS / f"{case.name}.npz")
    judged = judge(case, observation)
    unit = MOVEMENTS[case.movement].unit
    assert [str(reason) for reason in judged.measurement.reasons] == entry["reasons"]
    if not case.readable:
        assert judged.refused
        assert set(entry["reasons"]) & set(case.expected)
        return
    assert judged.measurement.value == pytest.approx(entry["reading"], abs=FROM_GOLDEN[unit])
    assert abs(judged.error) < FROM_TRUTH[unit]
    assert judged.measurement.low <= judged.truth <= judged.measurement.high


def test_the_kept_cases_cover_every_movement_and_a_refusal():
    assert {entry["movement"] for entry in CASES} == set(map(str, Movement))
    assert any(entry["expected"] != ["reading"] for entry in CASES)
