"""`thawline progress` and `thawline demo --story`, as somebody types them."""

import datetime as dt
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
    assert row.rstrip().endswith("levelled off")
    assert "show this to your clinician" in out
    assert "An estimate, not a diagnosis" in out


@pytest.mark.usefixtures("loaded")
def test_what_lay_before_a_break_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "demo-thistle"]) == 0
    out = capsys.readouterr().out
    assert "start again where the way of measuring changed" in out
    (before,) = [line for line in out.splitlines() if line.startswith("Before “injection”")]
    assert "Flexion decreasing" in before


@pytest.mark.usefixtures("loaded")
def test_json_says_the_same_in_numbers(capsys: pytest.CaptureFixture[str]) -> None:
    found = as_json("demo-Bramble", capsys)
    assert (found["format"], found["schema"], found["demo"]) == ("thawline-progress", 3, True)
    (flexion,) = [
        each
        for each in found["movements"]
        if (each["movement"], each["side"]) == ("flexion", "right")
    ]
    assert flexion["verdict"] == "stalled"
    assert flexion["unit"] == "deg"
    assert flexion["recent"]["low"] < flexion["recent"]["value"] < flexion["recent"]["high"]
    slope = flexion["slope"]
    assert slope["low"] < slope["per_month"] < slope["high"]
    assert flexion["short_by"] > 15
    assert flexion["milestones"][0] == {
        "task": "reach a shelf at shoulder height",
        "range": "90°",
        "reached": True,
    }
    assert found["prompts"][0]["kind"] == "stalled"
    assert found["prompts"][0]["movements"] == ["flexion"]


@pytest.mark.usefixtures("loaded")
def test_too_little_data_is_said_and_when_more_could_be_known(
    capsys: pytest.CaptureFixture[str],
) -> None:
    found = as_json("demo-Clover", capsys)
    assert {each["verdict"] for each in found["movements"]} == {"too-early"}
    assert found["prompts"] == []
    assert all(each["slope"] is None for each in found["movements"])
    (known,) = [
        each["when_known"]
        for each in found["movements"]
        if (each["movement"], each["side"]) == ("flexion", "right")
    ]
    assert [gain["per_month"] for gain in known["gains"]] == [2, 5, 10]
    assert main(["progress", "demo-Clover"]) == 0
    assert f"Flexion, right: {known['text']}" in capsys.readouterr().out


@pytest.mark.usefixtures("loaded")
def test_an_earlier_day_is_shown_as_it_was(capsys: pytest.CaptureFixture[str]) -> None:
    today = as_json("demo-Thistle", capsys)
    early = dt.date.fromisoformat(today["day"]) - dt.timedelta(days=84)
    assert main(["progress", "demo-Thistle", "--on", early.isoformat(), "--json"]) == 0
    then = json.loads(capsys.readouterr().out)
    assert then["day"] == early.isoformat()
    (flexion,) = [
        each
        for each in then["movements"]
        if (each["movement"], each["side"]) == ("flexion", "left")
    ]
    # Before the injection.
    assert flexion["verdict"] == "losing"
    assert flexion["events"] == []
    assert all(reading["day"] <= early.isoformat() for reading in flexion["readings"])


@pytest.mark.usefixtures("loaded")
def test_an_impossible_day_is_refused(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "demo-Thistle", "--on", "yesterday"]) == 2
    assert "not a date like" in capsys.readouterr().err


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
    assert "There are no readings yet." in capsys.readouterr().out
    assert as_json("Rosa", capsys)["movements"] == []


@pytest.mark.usefixtures("loaded")
def test_nobody_of_that_name(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["progress", "Nobody"]) == 2
    captured = capsys.readouterr()
    assert "demo-Marigold" in captured.err
    assert captured.out == ""
