"""`thawline progress` and `thawline demo --story`, as somebody types them."""

import json
from pathlib import Path
from typing import Any

import pytest

from measure.cli.main import main
from measure.storage.store import Store
from tests.support.record_samples import person


@pytest.fixture
def loaded(data_folder: Path, capsys: pytest.CaptureFixture[str]) -> str:
    """What loading the story printed."""
    assert main(["demo", "--story"]) == 0
    return capsys.readouterr().out


def as_json(name: str, capsys: pytest.CaptureFixture[str]) -> dict[str, Any]:
    assert main(["progress", name, "--json"]) == 0
    found: dict[str, Any] = json.loads(capsys.readouterr().out)
    return found


@pytest.mark.usefixtures("loaded")
def test_a_table_with_verdicts_and_the_prompt(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "demo-bramble"]) == 0
    out = capsys.readouterr().out
    assert "demo-Bramble (demo: a made-up person)" in out
    (row,) = [line for line in out.splitlines() if line.startswith("Flexion") and "right *" in line]
    assert row.rstrip().endswith("stalled")
    assert "worth showing to a clinician" in out
    assert "An estimate, not a diagnosis" in out


@pytest.mark.usefixtures("loaded")
def test_what_lay_before_a_break_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "demo-thistle"]) == 0
    out = capsys.readouterr().out
    assert "begin anew where the way of measuring changed" in out
    (before,) = [line for line in out.splitlines() if line.startswith("Before “injection”")]
    assert "Flexion losing" in before


@pytest.mark.usefixtures("loaded")
def test_json_says_the_same_in_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json("demo-Bramble", capsys)
    assert found["demo"] is True
    (flexion,) = [
        each
        for each in found["movements"]
        if (each["movement"], each["side"]) == ("flexion", "right")
    ]
    assert flexion["verdict"] == "stalled"
    assert flexion["unit"] == "deg"
    assert flexion["recent"]["low"] < flexion["recent"]["value"] < flexion["recent"]["high"]
    low, high = flexion["slope_interval"]
    assert low < flexion["slope_per_month"] < high
    assert flexion["short_by"] > 15
    assert flexion["milestones"][0] == {
        "range": "90°",
        "task": "reach a shelf at shoulder height",
        "reached": True,
    }
    assert found["prompts"][0]["kind"] == "stalled"
    assert found["prompts"][0]["movement"] == "flexion"


@pytest.mark.usefixtures("loaded")
def test_too_little_data_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json("demo-Clover", capsys)
    assert {each["verdict"] for each in found["movements"]} == {"too-early"}
    assert found["prompts"] == []
    assert all(each["slope_per_month"] is None for each in found["movements"])


@pytest.mark.usefixtures("loaded")
def test_a_break_is_listed(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json("demo-Thistle", capsys)
    breaks = {each["side"]: each["breaks"] for each in found["movements"]}
    assert breaks["right"] == []
    assert [each["why"] for each in breaks["left"]] == ["injection"]


def test_loading_the_story_says_that_it_is_made_up(
    loaded: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert loaded.startswith("Demo data: these people and all their readings are made up.")
    assert main(["demo", "--story"]) == 0
    assert capsys.readouterr().out.count("left as it is") == 4


def test_somebody_without_readings(data_folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    with Store.open() as store:
        store.save_person(person("Rosa"))
    assert main(["progress", "Rosa"]) == 0
    assert "No reading has been kept yet." in capsys.readouterr().out
    assert as_json("Rosa", capsys)["movements"] == []


@pytest.mark.usefixtures("loaded")
def test_nobody_of_that_name(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "Nobody"]) == 2
    captured = capsys.readouterr()
    assert "demo-Marigold" in captured.err
    assert captured.out == ""
