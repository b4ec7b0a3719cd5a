"""The committed clips agree with their truth, and the check notices when they don't."""

import json
import shutil
from collections import Counter
from pathlib import Path

import pytest

from sample_clips.make import CLIPS_FOLDER, clip_folder_problems, main, mp4_length_s
from sample_clips.scenario import Movement, Side

ENTRIES = json.loads((CLIPS_FOLDER / "truth.json").read_text(encoding="utf-8"))["clips"]


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(CLIPS_FOLDER, tmp_path / "clips"))


def test_committed_clips_agree_with_their_truth(capsys: pytest.CaptureFixture[str]) -> None:
    assert list(clip_folder_problems(CLIPS_FOLDER)) == []
    assert main(["--check"]) == 0
    assert f"{len(ENTRIES)} clips agree" in capsys.readouterr().out


def test_committed_clips_show_all_there_is_to_show() -> None:
    readings = [entry for entry in ENTRIES if entry["expected"] == ["reading"]]
    assert len(readings) >= 14
    shown = {(entry["movement"], entry["side"]) for entry in readings}
    assert shown == {(movement, side) for movement in Movement for side in Side}
    assert Counter(len(entry["holds"]) for entry in readings)[3] == 1
    sizes = {(entry["camera"]["width"], entry["camera"]["height"]) for entry in readings}
    assert sizes == {(640, 480), (480, 640)}
    for entry in readings:
        for hold in entry["holds"]:
            assert hold["end_s"] - hold["start_s"] >= 1.3


def test_four_clips_must_be_refused() -> None:
    reasons = [entry["expected"] for entry in ENTRIES if entry["expected"] != ["reading"]]
    assert reasons == [
        ["wrong-view"],
        ["out-of-picture"],
        ["out-of-picture"],
        ["nobody", "person-lost"],
    ]


def test_missing_truth(tmp_path: Path) -> None:
    assert [
        fault.endswith("truth.json is missing") for fault in clip_folder_problems(tmp_path)
    ] == [True]


def test_missing_clip(copy: Path) -> None:
    (copy / ENTRIES[0]["file"]).unlink()
    assert list(clip_folder_problems(copy)) == [
        f"{ENTRIES[0]['file']}: in only one of the folder and truth.json"
    ]
    assert main(["--check", "--folder", str(copy)]) == 1


def test_exchanged_clip(copy: Path) -> None:
    shutil.copy(copy / ENTRIES[3]["file"], copy / ENTRIES[0]["file"])
    found = list(clip_folder_problems(copy))
    assert any("not the file that truth.json was written for" in fault for fault in found)


def test_shortened_table(copy: Path) -> None:
    table = copy / ENTRIES[0]["file"].replace(".mp4", ".csv")
    lines = table.read_text(encoding="utf-8").splitlines()
    table.write_text("\n".join(lines[:-1]) + "\n", encoding="utf-8")
    assert list(clip_folder_problems(copy)) == [
        f"{table.name}: {len(lines) - 2} rows for {ENTRIES[0]['frames']} frames"
    ]


def test_altered_value(copy: Path) -> None:
    table = copy / ENTRIES[0]["file"].replace(".mp4", ".csv")
    text = table.read_text(encoding="utf-8")
    held = next(line for line in text.splitlines() if ",hold," in line)
    parts = held.split(",")
    parts[3] = "12.0000"
    table.write_text(text.replace(held, ",".join(parts)), encoding="utf-8")
    assert list(clip_folder_problems(copy)) == [
        f"{table.name}: the mean of hold 0 is not {ENTRIES[0]['holds'][0]['value']}"
    ]


def test_renamed_column(copy: Path) -> None:
    table = copy / ENTRIES[0]["file"].replace(".mp4", ".csv")
    text = table.read_text(encoding="utf-8")
    table.write_text(text.replace("time_s", "seconds", 1), encoding="utf-8")
    assert list(clip_folder_problems(copy)) == [f"{table.name}: other columns than expected"]


def test_length_of_a_cut_off_clip() -> None:
    with pytest.raises(ValueError, match="not a complete MP4"):
        mp4_length_s(b"\x00\x00\x00\x18ftypisom")
