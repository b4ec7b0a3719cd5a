"""What is gathered for a measurement, and what is said about it."""

import dataclasses
import datetime as dt
from pathlib import Path

import pytest

from calibration.known_setup import delete_person_calibration, load_calibrated_setup
from calibration.placement.placement import PLACEMENTS, Placement
from calibration.repository.bodies import BODIES, BodySource, save_body_lengths
from calibration.repository.corrections import (
    CORRECTIONS,
    StoredCorrection,
    corrections_for,
    set_correction_enabled,
)
from calibration.repository.lenses import LENSES
from calibration.repository.levels import LEVELS, CameraLevel
from measure.domain.acquisition import (
    BodySetup,
    Correction,
    KnownSetup,
    LensProfile,
    MovementCorrection,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import InputError

WHO = "0" * 31 + "7"
TODAY = dt.date(2026, 11, 25)
CAMERA = "garden camera"

LENS = LensProfile(
    camera_name=CAMERA,
    width_px=640,
    height_px=480,
    focal_px=(500.0, 500.0),
    centre_px=(320.0, 240.0),
    distortion=(0.0, 0.0, 0.0, 0.0, 0.0),
    reprojection_px=0.2,
    views=16,
)
CORRECTION = Correction(
    bias_deg=3.0,
    gain=-0.05,
    centre_deg=90.0,
    pairs=40,
    study="spring",
    lowest_deg=40.0,
    highest_deg=150.0,
)


def setup_today(**changes: object) -> tuple[KnownSetup, tuple[str, ...]]:
    asked: dict[str, object] = {
        "camera_name": CAMERA,
        "size_px": (640, 480),
        "person_id": WHO,
        "today": TODAY,
    }
    known = load_calibrated_setup(**(asked | changes))  # type: ignore[arg-type]
    return known.setup, tuple(map(str, known.messages))


def test_nothing_known_is_an_honest_set_up(data_folder: Path) -> None:
    setup, remarks = setup_today(camera_name=None, person_id=None)
    assert setup == KnownSetup()
    assert remarks == ("The lens is not calibrated; a usual field of view is assumed.",)
    assert not data_folder.exists()


def test_all_that_is_known(data_folder: Path) -> None:
    LENSES.put(LENS)
    LEVELS.put(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=TODAY))
    save_body_lengths(WHO, BodySetup(upper_arm=0.6), BodySource.TAPE, TODAY)
    CORRECTIONS.put(
        StoredCorrection(
            camera_name=CAMERA,
            movement=Movement.FLEXION,
            correction=CORRECTION,
            switched_on=True,
        )
    )
    setup, remarks = setup_today(quarter_turns=1)
    assert remarks == ()
    assert setup.camera.lens == LENS
    assert setup.camera.roll_deg == 1.5
    assert setup.camera.quarter_turns == 1
    assert setup.body.upper_arm == 0.6
    assert setup.corrections == (
        MovementCorrection(movement=Movement.FLEXION, correction=CORRECTION),
    )
    assert setup.of(Movement.FLEXION).correction == CORRECTION
    assert setup.of(Movement.ABDUCTION).correction is None
    assert setup_today(size_px=None)[0].camera.lens == LENS


def test_a_profile_of_another_size_or_camera_is_refused_in_words(data_folder: Path) -> None:
    LENSES.put(LENS)
    other, said = setup_today(size_px=(1280, 720))
    assert other.camera.lens is None
    assert "calibrated at 640 x 480 pixels and does not hold at 1280 x 720" in said[0]
    elsewhere, said = setup_today(camera_name="desk camera")
    assert elsewhere.camera.lens is None
    assert "not calibrated" in said[0]


@pytest.mark.parametrize("source", [BodySource.POSES, BodySource.TAPE])
def test_a_forearm_is_kept_but_not_used(data_folder: Path, source: BodySource) -> None:
    save_body_lengths(WHO, BodySetup(forearm=0.53, upper_arm=0.6), source, TODAY)
    setup, _ = setup_today()
    assert setup.body.forearm is None
    assert setup.body.upper_arm == 0.6


def test_what_is_old_is_not_used_and_that_is_said(data_folder: Path) -> None:
    LENSES.put(LENS)
    old = TODAY - dt.timedelta(days=200)
    LEVELS.put(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=old))
    save_body_lengths(WHO, BodySetup(forearm=0.53), BodySource.TAPE, old)
    setup, remarks = setup_today()
    assert setup.camera.roll_deg is None
    assert setup.body == BodySetup()
    assert "level is from" in remarks[0]
    assert "body lengths are from" in remarks[1]
    LEVELS.put(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=old, fixed=True))
    assert setup_today()[0].camera.roll_deg == 1.5


def test_a_correction_is_off_until_somebody_switches_it_on(data_folder: Path) -> None:
    with pytest.raises(InputError, match="No correction is kept"):
        set_correction_enabled(CAMERA, Movement.FLEXION, on=True)
    CORRECTIONS.put(
        StoredCorrection(camera_name=CAMERA, movement=Movement.FLEXION, correction=CORRECTION)
    )
    assert corrections_for(CAMERA) == ()
    assert set_correction_enabled(CAMERA, Movement.FLEXION, on=True).switched_on
    assert [each.correction for each in corrections_for(CAMERA)] == [CORRECTION]
    assert corrections_for(None) == ()
    set_correction_enabled(CAMERA, Movement.FLEXION, on=False)
    assert corrections_for(CAMERA) == ()


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"bias_deg": 12.0}, "larger than any study"),
        ({"gain": 0.3}, "larger than any study"),
        ({"bias_deg": -4.0, "gain": -0.19}, "ends of its range"),
        ({"bias_deg": float("nan")}, "cannot be"),
        ({"pairs": 0}, "cannot be"),
        ({"lowest_deg": None}, "studied range is missing"),
    ],
)
def test_corrections_that_no_study_makes_are_not_kept(
    data_folder: Path, changes: dict[str, object], part: str
) -> None:
    one = dataclasses.replace(CORRECTION, **changes)  # type: ignore[arg-type]
    kept = StoredCorrection(camera_name=CAMERA, movement=Movement.FLEXION, correction=one)
    with pytest.raises(InputError, match=part):
        CORRECTIONS.put(kept)
    reach = dataclasses.replace(kept, correction=CORRECTION, movement=Movement.HAND_BEHIND_BACK)
    with pytest.raises(InputError, match="only angles"):
        CORRECTIONS.put(reach)


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"camera_name": " "}, "name"),
        ({"roll_deg": 90.0}, "turned like that"),
        ({"half_deg": -1.0}, "interval"),
        ({"roll_deg": float("nan")}, "turned like that"),
    ],
)
def test_levels_that_cannot_be(data_folder: Path, changes: dict[str, object], part: str) -> None:
    level = CameraLevel(camera_name=CAMERA, roll_deg=1.0, half_deg=0.5, day=TODAY)
    with pytest.raises(InputError, match=part):
        LEVELS.put(dataclasses.replace(level, **changes))  # type: ignore[arg-type]


def test_a_person_is_forgotten_for_good(data_folder: Path) -> None:
    other = "0" * 31 + "8"
    for who in (WHO, other):
        save_body_lengths(who, BodySetup(forearm=0.53), BodySource.TAPE, TODAY)
        PLACEMENTS.put(
            Placement(
                person_id=who,
                movement=Movement.FLEXION,
                side=Side.LEFT,
                camera_name=CAMERA,
                width_px=640,
                height_px=480,
                trunk_px=120.0,
                width_over_trunk=0.0,
                lean_deg=0.0,
                shoulder_width=None,
                roll_deg=None,
                taken=TODAY,
            )
        )
    delete_person_calibration(WHO)
    assert [record.person_id for record in BODIES.all()] == [other]
    assert [placement.person_id for placement in PLACEMENTS.all()] == [other]
    for file in data_folder.iterdir():
        assert WHO not in file.read_text(encoding="utf-8")
