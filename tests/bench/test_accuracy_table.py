"""The accuracy tables count what was read, held and refused, of hand-made readings."""

from pathlib import Path
from typing import Any, cast

import pytest

from measure.domain.landmarks import Side
from measure.domain.measurements import Measurement, Provenance, Status
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.reasons import Reason
from tests.bench import accuracy_table as tables
from tests.bench.accuracy_cases import Case
from tests.bench.accuracy_goals import goals_table
from tests.bench.accuracy_judge import Judged

REFUSED = None


def judged(
    truth: float,
    value: float | None,
    half: float = 8.0,
    *,
    movement: Movement = Movement.FLEXION,
    elbow_deg: float = 5.0,
    expected: tuple[str, ...] = ("reading",),
) -> Judged:
    """A case as read; without a value it was refused for a bent elbow."""
    case = Case(
        name="clip",
        clip=Path("clip.mp4"),
        movement=movement,
        side=Side.LEFT,
        view=View.SIDE,
        split="final",
        expected=expected,
        holds=((truth, 2.0, 4.0),),
        facts={"holds": [{"elbow_flexion_deg": elbow_deg}], "kind": "both-arms"},
    )
    measurement = Measurement(
        movement=movement,
        side=Side.LEFT,
        view=View.SIDE,
        status=Status.REFUSED if value is None else Status.READING,
        unit=MOVEMENTS[movement].unit,
        value=value,
        low=None if value is None else value - half,
        high=None if value is None else value + half,
        trials=(),
        reasons=(Reason.ELBOW_BENT,) if value is None else (),
        provenance=Provenance(model="heavy"),
    )
    return Judged(
        case=case,
        observation=cast(Any, None),
        found=cast(Any, None),
        refined=(),
        measurement=measurement,
        truth=truth,
        error=None if value is None else value - truth,
        plain_error=None if value is None else -4.0,
    )


def test_a_row_counts_errors_refusals_and_intervals() -> None:
    group = [judged(100, 103), judged(100, 99), judged(100, 80), judged(100, REFUSED)]
    cells = [cell.strip() for cell in tables.row("flexion", group).split("|")[1:-1]]
    assert cells[:4] == ["flexion", "4", "3", "elbow-bent 1"]
    assert cells[4:6] == ["-6.0°", "8.0°"]
    assert cells[7:] == ["1", "2 of 3", "8.0°", "-4.0°, 4.0°"]


def test_a_row_of_refusals_has_as_many_cells() -> None:
    row = tables.row("flexion", [judged(100, REFUSED)])
    assert row.count("|") == tables.HEADER.splitlines()[0].count("|")


def test_summary_keeps_clips_to_be_refused_apart() -> None:
    trap = judged(100, REFUSED, expected=("elbow-bent",))
    other = judged(100, REFUSED, expected=("hidden",))
    text = tables.summary([judged(100, 101), trap, other, judged(9, 9, expected=("hidden",))])
    assert "1 good clips: 1 read, 1 of them within" in text
    assert "3 clips that must be refused: 2 refused, 1 of them with an expected reason" in text


@pytest.mark.parametrize(
    ("value", "seen", "verdict"),
    [(102.0, "2.0° (1 of 1 read)", "reached"), (103.0, "3.0° (1 of 1 read)", "not reached")],
)
def test_goals(value: float, seen: str, verdict: str) -> None:
    reach = judged(0.3, 0.34, 0.1, movement=Movement.HAND_BEHIND_BACK)
    stiff = [judged(20, 25)] * 17 + [judged(20, 40), judged(20, REFUSED)]
    bent = judged(90, 96, elbow_deg=20)
    lines = goals_table([judged(100, value), bent, reach], stiff, []).splitlines()
    assert f"| mean error, flexion | at most 2.5° | {seen} | {verdict} |" in lines
    assert (
        "| mean error, hand-behind-back | at most 0.030 | 0.040 (1 of 1 read) | not reached |"
    ) in lines
    assert "| mean error, extension | at most 2.0° | none read | not reached |" in lines
    assert any("elbow bent" in line and "6.0° (1 of 1 read)" in line for line in lines)
    assert lines[-1].endswith("| at least 89 % | 17 of 19 | reached |")
