"""`thawline replay --setup`: what is known beforehand reaches the reading and is told with it."""

import json
from pathlib import Path

import pytest

from measure.cli.main import main
from measure.clips.setup_file import write_setup
from measure.domain.acquisition import (
    CameraSetup,
    KnownSetup,
    LensProfile,
    MovementCorrection,
)
from measure.domain.movements import Movement
from tests.support.setup_samples import sample_correction, sample_lens

TRACKS = Path(__file__).resolve().parents[2] / "tracks"
FLEXION = TRACKS / "trial-flexion-side-000.npz"
EXTENSION = TRACKS / "trial-extension-side-004.npz"

CAMERA = "Garden laptop"
CORRECTED = KnownSetup(
    camera=CameraSetup(name=CAMERA),
    corrections=(
        MovementCorrection(
            movement=Movement.FLEXION,
            correction=sample_correction(
                study="two gardeners, one goniometer", lowest_deg=20.0, highest_deg=170.0
            ),
        ),
    ),
)


def lens(width: int, height: int) -> LensProfile:
    return sample_lens(
        camera_name=CAMERA,
        width_px=width,
        height_px=height,
        centre_px=((width - 1) / 2, (height - 1) / 2),
    )


def read(tracks: Path, tmp_path: Path, known: KnownSetup | None) -> tuple[int, dict]:
    out = tmp_path / "out.json"
    arguments = ["replay", "--from-tracks", str(tracks), "--json", str(out)]
    if known is not None:
        write_setup(tmp_path / "known.json", known)
        arguments += ["--setup", str(tmp_path / "known.json")]
    code = main(arguments)
    return code, json.loads(out.read_text(encoding="utf-8"))["results"][0]


def test_a_correction_changes_its_own_movement_and_is_told(tmp_path: Path) -> None:
    _, plain = read(FLEXION, tmp_path, None)
    code, corrected = read(FLEXION, tmp_path, CORRECTED)
    assert code == 0
    assert plain["value"] - corrected["value"] == pytest.approx(4.0, abs=0.02)
    assert "two gardeners" in json.dumps(corrected)
    assert "two gardeners" not in json.dumps(plain)
    _, other_plain = read(EXTENSION, tmp_path, None)
    _, other = read(EXTENSION, tmp_path, CORRECTED)
    assert other["value"] == other_plain["value"]


def test_a_lens_of_another_picture_size_is_refused_in_words(tmp_path: Path, capsys) -> None:
    known = KnownSetup(camera=CameraSetup(name=CAMERA, lens=lens(1920, 1080)))
    write_setup(tmp_path / "known.json", known)
    arguments = ["replay", "--from-tracks", str(FLEXION), "--setup", str(tmp_path / "known.json")]
    assert main(arguments) == 2
    told = capsys.readouterr()
    assert "does not apply to pictures of 640 x 480" in told.err
    assert "not read" in told.out


def test_a_lens_without_distortion_changes_nothing_of_an_angle(tmp_path: Path) -> None:
    _, plain = read(FLEXION, tmp_path, None)
    known = KnownSetup(camera=CameraSetup(name=CAMERA, lens=lens(640, 480)))
    code, result = read(FLEXION, tmp_path, known)
    assert code == 0
    assert result["value"] == pytest.approx(plain["value"], abs=0.01)


def test_a_file_that_is_no_setup_is_told(tmp_path: Path, capsys) -> None:
    bad = tmp_path / "known.json"
    bad.write_text("{}", encoding="utf-8")
    assert main(["replay", "--from-tracks", str(FLEXION), "--setup", str(bad)]) == 2
    assert "cannot be used as a set-up file" in capsys.readouterr().err


@pytest.mark.parametrize(("option", "name"), [("--csv", "table.csv"), ("--json", "all.json")])
def test_a_file_that_is_replaced_is_named(option, name, capsys, tmp_path):
    words = ["replay", "--from-tracks", str(FLEXION), option, str(tmp_path / name)]
    assert main(words) == 0
    assert "replaced" not in capsys.readouterr().err
    assert main(words) == 0
    assert f"{name} was there and has been replaced." in capsys.readouterr().err
