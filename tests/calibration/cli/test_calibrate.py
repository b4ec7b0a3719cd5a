"""`thawline calibrate`: what is printed, what is kept, wrong use in plain words."""

import datetime as dt
import shlex
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import TypeVar

import cv2
import numpy as np
import pytest

from calibration.agreement.stored_corrections import corrections_for
from calibration.body.record import save_body_lengths
from calibration.cli.level import _way
from calibration.lens.profiles import lens_for
from measure.cli.main import command_parser, main
from measure.domain.acquisition import BodySetup
from measure.domain.calibration_records import BodySource
from measure.domain.landmarks import Landmark
from measure.domain.movements import Movement
from measure.domain.records import Person
from measure.domain.tracks import Track
from measure.storage.store import Store
from measure.system.clock import new_id
from tests.support.virtual_board import USUAL, photographs
from tests.support.virtual_room import Room, standing

T = TypeVar("T")
Said = pytest.CaptureFixture[str]
CAMERA = ["--camera", "garden camera"]


def stored(work: Callable[..., T], *arguments: object) -> T:
    """Return what `work` returns for the user's store."""
    with Store.open() as store:
        return work(store, *arguments)


def calibrate(*words: str) -> int:
    return main(["calibrate", *words])


def test_the_sheet(tmp_path: Path, capsys: Said) -> None:
    assert calibrate("lens", "sheet", str(tmp_path / "board.pdf"), "--paper", "letter") == 0
    assert (tmp_path / "board.pdf").stat().st_size > 1000
    assert "must measure 100 mm" in capsys.readouterr().out


def test_a_profile_from_pictures_is_kept_listed_and_forgotten(
    tmp_path: Path, data_folder: Path, capsys: Said
) -> None:
    for number, grey in enumerate(photographs(USUAL)):
        cv2.imwrite(str(tmp_path / f"{number:02}.png"), grey)
    assert calibrate("lens", "pictures", str(tmp_path), *CAMERA, "--try") == 0
    assert stored(Store.lenses) == []
    assert calibrate("lens", "pictures", str(tmp_path), *CAMERA) == 0
    said = capsys.readouterr().out
    assert "Lens calculated from 16 views" in said
    assert "######" in said
    assert "Saved for garden camera at 640 x 480 pixels." in said
    profile = stored(lens_for, "garden camera", 640, 480)
    assert profile is not None
    assert profile.focal_px[0] == pytest.approx(500, rel=0.01)
    assert calibrate("lens", "list") == 0
    assert "garden camera, 640 x 480 pixels: 65 degrees wide" in capsys.readouterr().out
    assert calibrate("lens", "forget", *CAMERA) == 0
    assert "1 profile removed." in capsys.readouterr().out
    assert calibrate("lens", "list") == 0
    assert "No lens profiles yet" in capsys.readouterr().out


def test_a_refused_lens_is_an_honest_answer(
    tmp_path: Path, data_folder: Path, capsys: Said
) -> None:
    cv2.imwrite(str(tmp_path / "one.png"), photographs(USUAL)[0])
    assert calibrate("lens", "pictures", str(tmp_path), *CAMERA) == 0
    assert "No lens profile was created. Useful views of the board: 1." in capsys.readouterr().out
    assert not data_folder.exists()


def test_a_clip_that_is_none(tmp_path: Path, capsys: Said) -> None:
    assert calibrate("lens", "clip", str(tmp_path / "gone.mp4"), *CAMERA) == 2
    assert "gone.mp4" in capsys.readouterr().err


LINES = ["--size", "640x480", "--line", "100,40:118,450", "--line", "530,38:552,452"]


def test_the_level_from_lines(data_folder: Path, capsys: Said) -> None:
    assert calibrate("level", "lines", *LINES) == 0
    said = capsys.readouterr().out
    assert "degrees clockwise, give or take" in said
    assert "It is tilted by" in said
    assert "typical field of view was assumed" in said
    assert not data_folder.exists()
    assert calibrate("level", "lines", *LINES, *CAMERA) == 0
    kept = stored(Store.level, "garden camera")
    assert kept is not None
    assert kept.roll_deg == pytest.approx(2.7, abs=0.3)
    assert kept.day == dt.date.today()
    assert not kept.fixed


@pytest.mark.parametrize(
    ("words", "part"),
    [
        (["--size", "640", "--line", "1,1:1,300"], "is not a size"),
        (["--size", "640x480", "--line", "1;1:1,300"], "is not a point"),
        (["--size", "640x480", "--line", "1,1"], "is not a point"),
        (["--size", "640x480", "--line", "x,1:1,300"], "is not a point"),
        (["--size", "640x480", "--line", "1,1:1,30"], "only 29 pixels"),
        (["--size", "640x480", "--line", "1,1:1,3000"], "outside the picture"),
    ],
)
def test_lines_that_cannot_be(words: list[str], part: str, capsys: Said) -> None:
    assert calibrate("level", "lines", *words) == 2
    assert part in capsys.readouterr().err


@pytest.fixture
def bramble(data_folder: Path) -> str:
    """Somebody in the store; returns the identifier."""
    with Store.open() as store:
        person = Person(id=new_id(), pseudonym="Bramble")
        store.save_person(person)
        return person.id


def show_tracks(monkeypatch: pytest.MonkeyPatch, **tracks: Track) -> None:
    """Let clips show virtual people, without the network."""

    def track_of_clip(clip: Path, *, own_model: Path | None = None) -> Track:
        return tracks[clip.stem]

    monkeypatch.setattr("calibration.body.clip_track.track_from_clip", track_of_clip)


def test_lengths_from_a_tape(bramble: str, capsys: Said) -> None:
    words = ["--person", "bramble", "--trunk", "50", "--upper-arm", "30"]
    assert calibrate("body", "tape", *words) == 0
    said = capsys.readouterr().out
    assert "Upper arm: 0.60" in said
    assert "Forearm: unknown" in said
    record = stored(Store.body, bramble)
    assert record is not None
    assert record.body == BodySetup(upper_arm=0.6)
    assert calibrate("body", "tape", *words[:-1], "300") == 2
    assert "between 20 and 42 cm" in capsys.readouterr().err


def test_lengths_from_poses(bramble: str, capsys: Said, monkeypatch: pytest.MonkeyPatch) -> None:
    room = Room(height_m=1.2)
    show_tracks(
        monkeypatch,
        neutral=standing(room),
        raised=standing(room, arms_deg=80.0),
        side=standing(room, turn_deg=90.0),
    )
    assert calibrate("body", "poses", "neutral.mp4", "raised.mp4", "--person", "Bramble") == 0
    assert "Lengths from poses" in capsys.readouterr().out
    record = stored(Store.body, bramble)
    assert record is not None
    assert record.body.upper_arm == pytest.approx(0.17 / 0.289, rel=0.03)
    assert calibrate("body", "poses", "side.mp4", "--person", "Bramble") == 0
    assert "is not facing the camera" in capsys.readouterr().out


def test_marks_in_a_clip_of_the_back(
    bramble: str, capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    back = standing(Room(height_m=1.2), turn_deg=180.0)
    show_tracks(monkeypatch, back=back)
    hips = back.points_px[0, [Landmark.LEFT_HIP, Landmark.RIGHT_HIP]].mean(axis=0)
    shoulders = back.points_px[0, [Landmark.LEFT_SHOULDER, Landmark.RIGHT_SHOULDER]].mean(axis=0)

    def at(share: float) -> str:
        x, y = hips + share * (shoulders - hips)
        return f"{x:.1f},{y:.1f}"

    words = ["--c7", at(1.2), "--spines", at(0.15), at(0.15), "--person", "Bramble"]
    assert calibrate("body", "marks", "back.mp4", *words) == 0
    assert "C7 above mid-hip: 1.20" in capsys.readouterr().out
    record = stored(Store.body, bramble)
    assert record is not None
    assert record.body.iliac_spines == pytest.approx(0.15, abs=0.005)


def test_what_is_kept_is_shown_with_its_age(bramble: str, capsys: Said) -> None:
    assert calibrate("body", "show", "--person", "Bramble") == 0
    assert "Nothing is saved" in capsys.readouterr().out
    old = dt.date.today() - dt.timedelta(days=400)
    stored(save_body_lengths, bramble, BodySetup(forearm=0.5), BodySource.TAPE, old)
    assert calibrate("body", "show", "--person", "Bramble") == 0
    said = capsys.readouterr().out
    assert "Forearm: 0.50" in said
    assert "Not used until measured again" in said


def test_a_person_nobody_knows(data_folder: Path, capsys: Said) -> None:
    assert calibrate("body", "show", "--person", "Nettle") == 2
    assert "There is no one called 'Nettle'" in capsys.readouterr().err


def test_the_level_from_a_person(
    data_folder: Path, capsys: Said, monkeypatch: pytest.MonkeyPatch
) -> None:
    room = Room(roll_deg=2.0, height_m=1.1, focal=900.0)
    show_tracks(monkeypatch, me=standing(room), far=standing(room, distance_m=30.0))
    assert calibrate("level", "person", "me.mp4", "--stature", "1.72") == 0
    said = capsys.readouterr().out
    assert "Turned clockwise by: 2.0 degrees, give or take 4.0." in said
    assert "Distance: " in said
    assert calibrate("level", "person", "far.mp4") == 0
    assert "Step closer" in capsys.readouterr().out
    assert calibrate("level", "person", "me.mp4", "--stature", "172") == 2


def test_a_correction_from_a_study_is_kept_switched_and_listed(
    tmp_path: Path, data_folder: Path, capsys: Said
) -> None:
    random = np.random.default_rng(1)
    rows = ["person,movement,side,camera_deg,goniometer_deg"]
    for person in range(40):
        angle = random.uniform(40, 150)
        rows.append(f"P{person},flexion,left,{angle + 5 + random.normal(0, 2):.1f},{angle:.1f}")
    path = tmp_path / "spring.csv"
    path.write_text("\n".join(rows), encoding="utf-8")
    assert main(["agreement", str(path), "--keep-for", "garden camera"]) == 0
    assert "switched off" in capsys.readouterr().out
    assert stored(corrections_for, "garden camera") == ()
    assert calibrate("correction", "on", *CAMERA, "--movement", "flexion") == 0
    assert "start a new series" in capsys.readouterr().out
    (found,) = stored(corrections_for, "garden camera")
    assert found.movement is Movement.FLEXION
    assert found.correction.bias_deg == pytest.approx(5, abs=1)
    assert calibrate("correction", "list") == 0
    assert "garden camera, flexion: on; bias" in capsys.readouterr().out
    assert calibrate("correction", "off", *CAMERA, "--movement", "flexion") == 0
    assert len(stored(Store.corrections)) == 1
    assert calibrate("correction", "on", *CAMERA, "--movement", "abduction") == 2


def test_the_commands_start_without_heavy_imports() -> None:
    code = (
        "import sys, argparse\n"
        "from calibration.cli import agreement, calibrate\n"
        "for command in (agreement, calibrate):\n"
        "    command.configure(argparse.ArgumentParser())\n"
        "heavy = {'cv2', 'scipy', 'matplotlib', 'PIL', 'mediapipe', 'sqlite3'} & set(sys.modules)\n"
        "sys.exit(', '.join(sorted(heavy)) or 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_every_command_in_the_document_is_one() -> None:
    text = (Path(__file__).parents[3] / "calibration/README.md").read_text(encoding="utf-8")
    lines = [line.strip() for line in text.splitlines() if line.startswith("    thawline ")]
    assert len(lines) >= 8
    for line in lines:
        words = shlex.split(line)[1:]
        chosen = command_parser(words).parse_args(words)
        assert callable(chosen.run)


@pytest.mark.parametrize(
    ("angle", "words"),
    [(1.26, "1.3 degrees up"), (-0.5, "0.5 degrees down"), (-0.01, "0.0 degrees")],
)
def test_ways_in_words(angle: float, words: str) -> None:
    assert _way(angle, "up", "down") == words


def test_deleting_a_person_forgets_their_body_as_well(
    bramble: str, capsys: Said, data_folder: Path
) -> None:
    words = ["--person", "Bramble", "--trunk", "50", "--upper-arm", "30"]
    assert calibrate("body", "tape", *words) == 0
    assert stored(Store.body, bramble) is not None
    assert main(["people", "delete", "Bramble", "--yes"]) == 0
    assert stored(Store.body, bramble) is None
    for file in data_folder.rglob("*"):
        if file.is_file():
            assert bramble.encode() not in file.read_bytes(), file.name
