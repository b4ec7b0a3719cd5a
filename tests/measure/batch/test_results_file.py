"""What a later run takes over: keyed by content, model and settings, whatever a clip is called."""

import csv
import json
import shutil
from dataclasses import replace
from pathlib import Path

import pytest

from measure.batch import cache_key
from measure.batch.cache_key import MISSING, ResultKeys
from measure.batch.results_file import ResultsFile, save_accepted_trials
from measure.batch.summary import write_table
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.domain.acquisition import CameraSetup, KnownSetup
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, View
from measure.errors import ClipError, DataError, MachineError
from measure.pose.ensemble import ModelSet
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from tests.support import scripted_arm
from tests.support.record_samples import measurement

SETTINGS = ReadingSettings(models=scripted_arm.MODELS)


def another_bundle() -> ModelSet:
    bundle = Bundle(quality=ModelQuality.FULL, sha256="c" * 64, path=Path("full"), content=b"other")
    bundles = {**scripted_arm.MODELS.bundles, ModelQuality.FULL: bundle}
    return ModelSet(name="heavy", bundles=bundles)


@pytest.fixture
def entry(tmp_path: Path) -> ClipEntry:
    clip = scripted_arm.write_clip(tmp_path / "bed.mp4")
    return ClipEntry(clip=clip, movement=Movement.FLEXION, side=Side.LEFT)


def test_a_clip_that_was_moved_or_renamed_keeps_its_key(entry: ClipEntry, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    moved = shutil.copyfile(entry.clip, tmp_path / "elsewhere" / "other name.mov")
    keys = ResultKeys(SETTINGS)
    assert keys.of(replace(entry, clip=moved)) == keys.of(entry)
    # What it is compared with, and whose it is, changes no reading.
    assert keys.of(replace(entry, reference=90.0, person="clover")) == keys.of(entry)


@pytest.mark.parametrize(
    "change",
    [
        {"movement": Movement.EXTENSION},
        {"side": Side.RIGHT},
        {"view": View.SIDE},
    ],
    ids=str,
)
def test_what_a_clip_shows_belongs_to_its_key(entry: ClipEntry, change: dict[str, object]) -> None:
    keys = ResultKeys(SETTINGS)
    assert keys.of(replace(entry, **change)) != keys.of(entry)  # type: ignore[arg-type]


def test_one_byte_more_is_another_clip(entry: ClipEntry) -> None:
    before = ResultKeys(SETTINGS).of(entry)
    entry.clip.write_bytes(entry.clip.read_bytes() + b" ")
    assert ResultKeys(SETTINGS).of(entry) != before


@pytest.mark.parametrize(
    "settings",
    [
        replace(SETTINGS, every_frame=True),
        replace(SETTINGS, setup=KnownSetup(camera=CameraSetup(quarter_turns=1))),
        replace(SETTINGS, models=replace(scripted_arm.MODELS, name="full")),
        replace(SETTINGS, models=another_bundle()),
    ],
    ids=["every frame", "set-up", "model", "bundle"],
)
def test_other_settings_are_other_keys(entry: ClipEntry, settings: ReadingSettings) -> None:
    assert ResultKeys(settings).of(entry) != ResultKeys(SETTINGS).of(entry)


def test_another_version_is_another_key(entry: ClipEntry, monkeypatch: pytest.MonkeyPatch) -> None:
    before = ResultKeys(SETTINGS).of(entry)
    assert ResultKeys(SETTINGS).of(entry) == before
    monkeypatch.setattr(cache_key, "software", lambda: {"thawline": "9.9"})
    assert ResultKeys(SETTINGS).of(entry) != before


def test_what_is_taken_over_and_what_is_tried_again(entry: ClipEntry, tmp_path: Path) -> None:
    others = [
        replace(entry, clip=scripted_arm.write_clip(tmp_path / f"{n}.mp4", peak=50.0 + n))
        for n in range(3)
    ]
    gone = replace(entry, clip=tmp_path / "gone.mp4")
    entries = [entry, *others, gone]
    read = measurement(movement=Movement.FLEXION, side=Side.LEFT)
    outcomes = [
        ClipResult(number=0, entry=entry, measurement=read),
        ClipResult(number=1, entry=others[0], error=ClipError("broken")),
        ClipResult(number=2, entry=others[1], error=MachineError("ours")),
        ClipResult(number=4, entry=gone, error=ClipError("not there")),
    ]
    path = tmp_path / "results.jsonl"
    file = ResultsFile(path, entries, SETTINGS)
    assert [file.cached(number) for number in range(5)] == [None] * 5
    for outcome in outcomes:
        file.add(outcome)

    again = ResultsFile(path, entries, SETTINGS)
    cached = again.cached(0)
    assert cached is not None
    assert cached.is_earlier
    assert cached.measurement == read
    broken = again.cached(1)
    assert broken is not None
    assert isinstance(broken.error, ClipError)
    assert str(broken.error) == "broken"
    assert [again.cached(number) for number in (2, 3, 4)] == [None] * 3
    assert again.key(4).startswith(MISSING)
    assert again.damaged_lines == 0


def test_trials_that_were_left_out_stay_so(entry: ClipEntry, tmp_path: Path) -> None:
    path, read = tmp_path / "results.jsonl", measurement()
    file = ResultsFile(path, [entry], SETTINGS)
    file.add(ClipResult(number=0, entry=entry, measurement=read))
    accepted = (True, False, True, True)
    save_accepted_trials(path, entry, accepted)
    save_accepted_trials(path, replace(entry, side=Side.RIGHT), (False,) * 4)
    again = ResultsFile(path, [entry], SETTINGS)
    cached = again.cached(0)
    assert cached is not None
    assert (cached.accepted, cached.left_out) == (accepted, (2,))
    assert cached.measurement == read
    assert cached.counted is not None
    assert cached.counted.value == 91.0, "the median of 91.25 and 90.75"
    fresh = ClipResult(number=0, entry=entry, measurement=read)
    assert again.with_trials_left_out(fresh).accepted == accepted
    other = replace(fresh, measurement=measurement(trials=read.trials[:2]))
    assert again.with_trials_left_out(other).accepted == (), "other trials than those judged"
    save_accepted_trials(path, entry, (True,) * 4)
    whole = ResultsFile(path, [entry], SETTINGS).cached(0)
    assert whole is not None
    assert whole.counted == read


def test_the_table_names_trials_that_were_left_out(entry: ClipEntry, tmp_path: Path) -> None:
    read = ClipResult(
        number=0, entry=entry, measurement=measurement(), accepted=(True, False, True, True)
    )
    write_table(tmp_path / "table.csv", [read, replace(read, accepted=())])
    with (tmp_path / "table.csv").open(newline="", encoding="utf-8") as file:
        some, every = csv.DictReader(file)
    assert (some["trials"], some["trials_scored"], some["trials_left_out"]) == ("4", "2", "2")
    assert (some["value"], every["value"]) == ("91.0", "91.25")
    assert every["trials_left_out"] == ""


def test_the_same_content_twice_has_a_line_each_and_its_own_name(
    entry: ClipEntry, tmp_path: Path
) -> None:
    twin = replace(entry, clip=shutil.copyfile(entry.clip, tmp_path / "twin.mp4"))
    path = tmp_path / "results.jsonl"
    broken = ClipResult(number=0, entry=entry, error=ClipError("The clip bed.mp4 is empty."))
    ResultsFile(path, [entry, twin], SETTINGS).add(broken)
    for _ in range(2):
        file = ResultsFile(path, [entry, twin], SETTINGS)
        cached = [file.cached(number) for number in range(2)]
        names = ["The clip bed.mp4 is empty.", "The clip twin.mp4 is empty."]
        assert [str(result.error) for result in cached if result is not None] == names
        for result in cached:
            assert result is not None
            file.add(result)
        rows = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines()]
        assert [row["clip"] for row in rows] == [str(entry.clip), str(twin.clip)]
        assert [row["error"]["text"] for row in rows] == names


def test_of_two_lines_for_a_clip_the_last_counts(entry: ClipEntry, tmp_path: Path) -> None:
    path = tmp_path / "results.jsonl"
    file = ResultsFile(path, [entry], SETTINGS)
    read = measurement(movement=Movement.FLEXION, side=Side.LEFT)
    file.add(ClipResult(number=0, entry=entry, error=ClipError("broken")))
    file.add(ClipResult(number=0, entry=entry, measurement=read))
    cached = ResultsFile(path, [entry], SETTINGS).cached(0)
    assert cached is not None
    assert cached.measurement == read


@pytest.mark.parametrize("cut", [1, 9, 40, 200])
def test_half_a_line_is_passed_over_and_written_after(
    entry: ClipEntry, tmp_path: Path, cut: int
) -> None:
    path = tmp_path / "results.jsonl"
    read = measurement(movement=Movement.FLEXION, side=Side.LEFT)
    ResultsFile(path, [entry], SETTINGS).add(ClipResult(number=0, entry=entry, measurement=read))
    path.write_bytes(path.read_bytes()[:cut])
    file = ResultsFile(path, [entry], SETTINGS)
    assert file.cached(0) is None
    assert file.damaged_lines == 1
    file.add(ClipResult(number=0, entry=entry, measurement=read))
    cached = ResultsFile(path, [entry], SETTINGS).cached(0)
    assert cached is not None
    assert cached.measurement == read
    assert json.loads(path.read_text(encoding="utf-8").splitlines()[-1])["person"] == ""


def test_somebody_elses_file_is_left_as_it_is(entry: ClipEntry, tmp_path: Path) -> None:
    path = tmp_path / "diary.txt"
    path.write_text("Monday: sowed beans.\n", encoding="utf-8")
    with pytest.raises(DataError, match="not a results file of Thawline"):
        ResultsFile(path, [entry], SETTINGS)
    assert path.read_text(encoding="utf-8") == "Monday: sowed beans.\n"


def test_a_line_nested_without_end_is_passed_over(entry: ClipEntry, tmp_path: Path) -> None:
    path = tmp_path / "results.jsonl"
    path.write_text('{"key": "' + "x" * 40 + '", "clip": ' + "[" * 100_000 + "\n")
    file = ResultsFile(path, [entry], SETTINGS)
    assert file.damaged_lines == 1
    assert file.cached(0) is None
