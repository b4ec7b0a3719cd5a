"""References in a manifest lead to agreement figures and a plot in the run that reads the clips."""

import csv
import json

import pytest

from measure.cli.main import main
from tests.support import replay_of_script, scripted_arm

PEAKS = tuple(range(60, 150, 10))


@pytest.fixture(autouse=True)
def scripted(monkeypatch):
    replay_of_script.put_in_place(monkeypatch)


def study(folder, person="m{}", references=True):
    """A manifest of nine raises, the reference two degrees below the angle held."""
    manifest = folder / "study.csv"
    with manifest.open("w", encoding="utf-8", newline="") as file:
        rows = csv.writer(file)
        rows.writerow(("clip", "movement", "side", "reference", "person"))
        for number, peak in enumerate(PEAKS):
            clip = scripted_arm.write_clip(folder / f"{number}.mp4", peak=float(peak))
            reference = peak - 2 if references else ""
            rows.writerow((clip.name, "flexion", "left", reference, person.format(number)))
        rows.writerow(("gone.mp4", "flexion", "left", 100, "m9"))
    return manifest


def test_figures_and_plot_come_with_the_readings(tmp_path, capsys):
    manifest, out = study(tmp_path), tmp_path / "out"
    words = ["--manifest", str(manifest), "--csv", str(tmp_path / "t.csv")]
    assert main(["replay", *words, "--agreement", str(out)]) == 2  # one clip is not there
    said = capsys.readouterr().out
    with (tmp_path / "t.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    differences = [float(row["difference"]) for row in rows if row["difference"]]
    assert len(differences) == len(PEAKS)
    (found,) = json.loads((out / "agreement.json").read_text(encoding="utf-8"))["studies"]
    assert found["movement"] == "flexion"
    assert found["people"] == len(PEAKS)
    mean = sum(differences) / len(differences)
    assert found["limits"]["bias"]["value"] == pytest.approx(mean, abs=1e-9)
    assert "9 pairs of 9 people" in said
    assert "1 clip(s) with a reference gave no reading" in said
    assert (out / "agreement.png").read_bytes().startswith(b"\x89PNG")


@pytest.mark.parametrize(
    ("person", "references", "part"),
    [
        ("", True, "do not name a person"),
        ("m{}", False, "nothing to compare"),
        ("one and the same", True, "it needs at least"),
    ],
)
def test_too_little_to_compare_is_said_after_the_readings(
    tmp_path, capsys, person, references, part
):
    manifest = study(tmp_path, person, references)
    code = main(["replay", "--manifest", str(manifest), "--agreement", str(tmp_path / "out")])
    caught = capsys.readouterr()
    assert code == 2
    assert part in caught.err
    assert "9 with a reading" in caught.out
    assert not (tmp_path / "out" / "agreement.json").exists()


def test_a_folder_that_cannot_be_is_said_before_any_clip_is_read(tmp_path, capsys):
    blocked = tmp_path / "file"
    blocked.write_text("x", encoding="utf-8")
    words = ["replay", "--manifest", str(study(tmp_path)), "--agreement", str(blocked)]
    assert main(words) == 2
    caught = capsys.readouterr()
    assert "cannot be used" in caught.err
    assert caught.out == ""


def test_help_tells_of_both(capsys):
    assert main(["replay", "--help"]) == 0
    said = capsys.readouterr().out
    assert "--agreement" in said
    assert "exit codes:" in said
    assert "thawline replay --manifest study.csv" in said
