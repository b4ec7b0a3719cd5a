"""`thawline replay` and `thawline demo` as their users call them, with the real model.

One run over a manifest of sample clips serves most tests; the full model alone keeps it short.
"""

import csv
import json
from pathlib import Path

import pytest

from measure.cli.demo import sample_clips
from measure.cli.main import main
from measure.video.sampling import COARSE_HZ
from tests.bench.keep_clips import GOLDEN as GOLDEN_FILE

#: The one long run takes a minute on two quiet processors.
pytestmark = pytest.mark.timeout(600)

CLIPS = Path(__file__).resolve().parents[3] / "sample_clips" / "clips"
READ = ("flexion-left-restricted", "abduction-right-restricted", "extension-left-full")
SAMPLES = {sample.entry.clip.stem: sample for sample in sample_clips(CLIPS)}
GOLDEN = {each["name"]: each for each in json.loads(GOLDEN_FILE.read_text(encoding="utf-8"))}
REFUSED = tuple(name for name, sample in SAMPLES.items() if sample.truth is None)


@pytest.fixture(scope="module")
def replayed(tmp_path_factory):
    """Exit code, results by clip name, and the folder, of one run over a manifest."""
    folder = tmp_path_factory.mktemp("replay")
    manifest = folder / "clips.csv"
    rows = [
        (CLIPS / f"{name}.mp4", SAMPLES[name].entry.movement, SAMPLES[name].entry.side)
        for name in (*READ, *REFUSED)
    ]
    rows.insert(1, (folder / "broken.mp4", "flexion", "left"))
    (folder / "broken.mp4").write_bytes(b"this is no video at all, only text\n" * 20)
    with manifest.open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(("clip", "movement", "side"))
        writer.writerows(rows)
    out = folder / "out.json"
    arguments = ["replay", "--manifest", str(manifest), "--model-quality", "full"]
    code = main([*arguments, "--json", str(out), "--annotate", str(folder / "pictures")])
    document = json.loads(out.read_text(encoding="utf-8"))
    return code, {Path(each["clip"]).stem: each for each in document["results"]}, folder


def test_there_are_four_clips_to_refuse():
    assert len(REFUSED) >= 4


def test_a_broken_clip_gives_exit_code_2_and_stops_nothing(replayed):
    code, results, _ = replayed
    assert code == 2
    assert set(results) == {*READ, *REFUSED, "broken"}
    assert results["broken"]["status"] == "not read"


@pytest.mark.parametrize("name", READ)
def test_readings_hold_the_truth_in_their_interval(replayed, name):
    result = replayed[1][name]
    assert result["status"] == "reading"
    assert result["low"] <= SAMPLES[name].truth <= result["high"]
    assert abs(result["value"] - SAMPLES[name].truth) < 10
    (trial,) = result["trials"]
    assert 0 < trial["start_s"] < trial["hold_start_s"] < trial["hold_end_s"] <= trial["end_s"]
    assert result["model"]["quality"] == "full"
    assert len(result["model"]["sha256"]["full"]) == 64


@pytest.mark.parametrize("name", READ)
def test_the_network_reads_as_when_the_golden_readings_were_kept(replayed, name):
    """Other processors calculate a little differently; a changed network or decoder is seen."""
    assert replayed[1][name]["value"] == pytest.approx(GOLDEN[name]["reading_full"], abs=0.5)


@pytest.mark.parametrize("name", REFUSED)
def test_refusals_have_the_right_reason(replayed, name):
    result = replayed[1][name]
    assert result["status"] == "refused"
    assert result["value"] is None
    assert set(result["reasons"]) & set(SAMPLES[name].expected)


def test_pictures_are_written(replayed):
    names = {path.name for path in (replayed[2] / "pictures").iterdir()}
    stem = "flexion-left-restricted-flexion-left"
    assert {f"{stem}.png", f"{stem}.mp4"} <= names


def test_the_track_holds_every_quick_frame(tmp_path, data_folder):
    clip = CLIPS / "hand-behind-back-right-from-side.mp4"
    track = tmp_path / "track.csv"
    words = ["replay", str(clip), "--movement", "hand-behind-back", "--side", "right"]
    code = main([*words, "--model-quality", "lite", "--track", str(track)])
    assert code == 0
    with track.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    times = [float(row["time_s"]) for row in rows]
    assert times == sorted(times)
    assert len(rows) == pytest.approx(COARSE_HZ * 6.5, abs=2)
    assert {"guide_fraction", "settled_fraction", "part", "state", "people"} <= rows[0].keys()
    assert {"right_thumb_x_px", "right_thumb_y_px", "right_thumb_visibility"} <= rows[0].keys()
    seen = [row for row in rows if row["state"] == "seen"]
    assert len(seen) > 0.9 * len(rows)
    assert all(0 < float(row["right_shoulder_x_px"]) < 640 for row in seen)


@pytest.mark.parametrize(
    ("arguments", "part"),
    [
        ([], "Name a clip"),
        (["a.mp4"], "--movement and --side"),
        (["a.mp4", "--manifest", "b.csv"], "one of these: clips, --manifest"),
        (["--manifest", "b.csv", "--track", "t.csv"], "leave it out with --manifest"),
        (["--from-tracks", "none"], "no saved tracks"),
        (["--from-tracks", "a", "--results", "r.jsonl"], "needs the clips"),
        (["empty", "--movement", "flexion", "--side", "left"], "contains no clips"),
        (["*.mp4", "--movement", "flexion", "--side", "left"], "contains no clips"),
        (["--manifest", "none.csv"], "no file"),
        (["a.mp4", "--movement", "flexion", "--side", "left", "--json", "no/x.json"], "no folder"),
        (["a.mp4", "--movement", "flexion", "--side", "left", "--workers", "0"], "--workers"),
        (["none.mp4", "--movement", "flexion", "--side", "left"], "none.mp4"),
        (["a.mp4", "--movement", "flexion", "--side", "left", "--model", "no.task"], "no.task"),
    ],
)
def test_wrong_use_is_explained_in_a_sentence(arguments, part, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "empty").mkdir()
    assert main(["replay", *arguments]) == 2
    said = capsys.readouterr().err
    assert part in said
    assert "Traceback" not in said


@pytest.mark.parametrize(
    ("outputs", "part"),
    [
        (["--csv", "list.csv"], "list.csv is read by this command"),
        (["--json", "a.mp4"], "a.mp4 is read by this command"),
        (["--results", "./list.csv"], "is read by this command"),
        (["--csv", "same.txt", "--json", "same.txt"], "named for two outputs"),
        (["--csv", "r.jsonl", "--results", "r.jsonl"], "named for two outputs"),
    ],
)
def test_no_output_replaces_what_is_read_or_another_output(
    outputs, part, capsys, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.mp4").write_bytes(b"clip")
    (tmp_path / "list.csv").write_text("clip,movement,side\na.mp4,flexion,left\n", "utf-8")
    assert main(["replay", "--manifest", "list.csv", *outputs]) == 2
    assert part in capsys.readouterr().err
    assert (tmp_path / "a.mp4").read_bytes() == b"clip"
    assert (tmp_path / "list.csv").read_text("utf-8").startswith("clip,movement")


@pytest.mark.parametrize("arguments", [["replay", "a.mp4", "--movement", "jump"], ["nothing"]])
def test_unknown_words_are_wrong_use(arguments, capsys):
    assert main(arguments) == 2
    assert "usage" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "usage", "unknown"),
    [
        (["replay", "a.mp4", "--movment", "flexion"], "usage: thawline replay", "--movment"),
        (["demo", "foo"], "usage: thawline demo", "foo"),
        (["check", "--foo"], "usage: thawline check", "--foo"),
        (["goals", "Rowan", "end", "1", "--foo"], "usage: thawline goals PERSON end", "--foo"),
    ],
)
def test_an_unknown_word_is_named_below_the_usage_of_its_command(arguments, usage, unknown, capsys):
    assert main(arguments) == 2
    said = capsys.readouterr().err
    assert said.startswith(usage)
    assert f"unrecognized arguments: {unknown}" in said


@pytest.mark.parametrize(("option", "name"), [("--csv", "table.csv"), ("--json", "all.json")])
def test_a_file_stays_where_no_clip_could_be_read(option, name, capsys, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "broken.mp4").write_bytes(b"this is no video at all, only text\n" * 20)
    words = ["replay", "broken.mp4", "--movement", "flexion", "--side", "left", option, name]
    kept = tmp_path / name
    kept.write_text("of an earlier run", "utf-8")
    assert main(words) == 2
    assert f"{name} stays as it was, because no clip could be read." in capsys.readouterr().err
    assert kept.read_text("utf-8") == "of an earlier run"
    kept.unlink()
    assert main(words) == 2
    assert "not read" in kept.read_text("utf-8")


def test_sample_clips_are_listed_with_their_truth():
    assert len(SAMPLES) >= 14
    movements = {sample.entry.movement for sample in SAMPLES.values()}
    assert len(movements) == 5
    for sample in SAMPLES.values():
        assert len(sample.times_s) == len(sample.values) > 50


def test_demo_says_when_its_folder_cannot_be_used(tmp_path, capsys):
    blocked = tmp_path / "file"
    blocked.write_text("x", encoding="utf-8")
    assert main(["demo", "--to", str(blocked)]) == 2
    assert "cannot be used" in capsys.readouterr().err
