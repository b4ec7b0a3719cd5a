"""A set-up as a file: the way there and back, and what is refused."""

import dataclasses
import json
from pathlib import Path

import pytest

from measure.clips.setup_file import LARGEST_FILE_BYTES, read_setup, write_setup
from measure.domain.acquisition import (
    BodySetup,
    CameraSetup,
    KnownSetup,
    MovementCorrection,
    Setup,
    fit_for_picture,
)
from measure.domain.movements import Movement
from measure.errors import DataError, InputError
from tests.support.setup_samples import sample_correction, sample_lens

LENS = sample_lens(
    focal_px=(500.0, 501.0),
    centre_px=(322.0, 238.0),
    distortion=(-0.2, 0.05, 0.001, 0.0, 0.0),
    reprojection_px=0.3,
    views=16,
)
CORRECTION = sample_correction(bias_deg=3.0, gain=0.05)
KNOWN = KnownSetup(
    camera=CameraSetup(name="garden camera", lens=LENS, roll_deg=1.5, quarter_turns=1),
    body=BodySetup(forearm=0.54, c7_height=1.14, iliac_spines=0.15),
    corrections=(MovementCorrection(movement=Movement.FLEXION, correction=CORRECTION),),
)


@pytest.mark.parametrize("known", [KNOWN, KnownSetup()])
def test_what_is_written_is_read_again(tmp_path: Path, known: KnownSetup) -> None:
    write_setup(tmp_path / "known.json", known)
    assert read_setup(tmp_path / "known.json") == known


def test_each_movement_gets_its_own_correction() -> None:
    assert KNOWN.of(Movement.FLEXION) == Setup(
        camera=KNOWN.camera, body=KNOWN.body, correction=CORRECTION
    )
    assert KNOWN.of(Movement.ABDUCTION).correction is None


def test_a_profile_holds_for_its_own_picture_size_only() -> None:
    setup = KNOWN.of(Movement.FLEXION)
    assert fit_for_picture(setup, 640, 480) == (setup, "")
    rest, why = fit_for_picture(setup, 1280, 720)
    assert rest.camera.lens is None
    assert rest.camera.roll_deg == 1.5
    assert "made at 640 x 480 pixels and does not apply to pictures of 1280 x 720" in why
    assert fit_for_picture(Setup(), 1280, 720) == (Setup(), "")
    larger = dataclasses.replace(LENS, width_px=1280, height_px=720)
    found, why = fit_for_picture(setup, 1280, 720, (larger, LENS))
    assert (found.camera.lens, why) == (larger, "")
    assert fit_for_picture(setup, 1920, 1080, (larger, LENS))[0].camera.lens is None
    assert fit_for_picture(setup, 640, 480, (larger, LENS)) == (setup, "")


def written(tmp_path: Path, **changes: object) -> Path:
    path = tmp_path / "known.json"
    write_setup(path, KNOWN)
    content = json.loads(path.read_text(encoding="utf-8")) | changes
    path.write_text(json.dumps(content), encoding="utf-8")
    return path


def camera(**changes: object) -> dict[str, object]:
    lens = dataclasses.asdict(LENS)
    return {"name": "garden camera", "lens": lens} | changes


def lens(**changes: object) -> dict[str, object]:
    return camera(lens=dataclasses.asdict(LENS) | changes)


def corrections(count: int, **changes: object) -> list[dict[str, object]]:
    one = dataclasses.asdict(CORRECTION) | changes
    return [{"movement": "flexion", "correction": one}] * count


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"what": "recipe"}, 'first field is to be "what": "set-up"'),
        ({"version": 2}, "newer Thawline"),
        ({"version": "one"}, "version is missing"),
        ({"colour": "green"}, "unknown field 'colour'"),
        ({"camera": camera(name="desk camera")}, "another camera's lens says nothing"),
        ({"camera": camera(name=None)}, "another camera's lens says nothing"),
        ({"camera": camera(roll_deg=90)}, "turned like that"),
        ({"camera": camera(quarter_turns=4)}, "quarter turns"),
        ({"camera": lens(focal_px=[1.0, 1.0])}, "not that of a webcam"),
        ({"camera": lens(focal_px=[500.0])}, "expected a list of 2"),
        ({"camera": lens(centre_px=[900.0, 1.0])}, "outside the picture"),
        ({"camera": lens(views=0)}, "no views"),
        ({"camera": lens(width_px="wide")}, "expected a whole number"),
        ({"body": {"forearm": 5.3}}, "the forearm 5.3 cannot be"),
        ({"body": {"forearm": "long"}}, "expected a number"),
        ({"corrections": corrections(2)}, "two corrections"),
        ({"corrections": corrections(1, bias_deg=30)}, "larger than any study"),
    ],
)
def test_what_cannot_be_is_refused_in_words(
    tmp_path: Path, changes: dict[str, object], part: str
) -> None:
    path = written(tmp_path, **changes)
    with pytest.raises(DataError, match="cannot be used as a set-up file") as caught:
        read_setup(path)
    assert part in str(caught.value)


@pytest.mark.parametrize("content", [b"", b"{", b"[1]", b"\xff\xfe", b"[" * 50_000])
def test_damage_is_told(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "known.json"
    path.write_bytes(content)
    with pytest.raises(DataError, match=r"known\.json cannot be used as a set-up file"):
        read_setup(path)


def test_no_file_and_far_too_large_a_one(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="There is no file"):
        read_setup(tmp_path / "none.json")
    large = tmp_path / "large.json"
    large.write_bytes(b" " * (LARGEST_FILE_BYTES + 1))
    with pytest.raises(DataError, match="far too large"):
        read_setup(large)
