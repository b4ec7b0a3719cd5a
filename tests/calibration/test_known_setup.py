"""What is gathered for a measurement, and what is said about it."""

import dataclasses
import datetime as dt

import pytest

from calibration.agreement.stored_corrections import corrections_for, set_correction_enabled
from calibration.body.record import save_body_lengths
from calibration.known_setup import load_calibrated_setup
from measure.domain.acquisition import (
    BodySetup,
    Correction,
    KnownSetup,
    LensProfile,
    MovementCorrection,
)
from measure.domain.calibration_records import BodySource, CameraLevel, StoredCorrection
from measure.domain.movements import Movement
from measure.errors import InputError
from measure.storage.store import Store
from tests.calibration.conftest import WHO

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


def setup_today(store: Store, **changes: object) -> tuple[KnownSetup, tuple[str, ...]]:
    asked: dict[str, object] = {
        "camera_name": CAMERA,
        "size_px": (640, 480),
        "person_id": WHO,
        "today": TODAY,
    }
    known = load_calibrated_setup(store, **(asked | changes))  # type: ignore[arg-type]
    return known.setup, tuple(map(str, known.messages))


def test_nothing_known_is_an_honest_set_up(store: Store) -> None:
    setup, remarks = setup_today(store, camera_name=None, person_id=None)
    assert setup == KnownSetup()
    assert remarks == ("The lens is not calibrated; a typical field of view is assumed.",)


def test_all_that_is_known(store: Store) -> None:
    store.save_lens(LENS)
    store.save_level(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=TODAY))
    save_body_lengths(store, WHO, BodySetup(upper_arm=0.6), BodySource.TAPE, TODAY)
    store.save_correction(
        StoredCorrection(
            camera_name=CAMERA,
            movement=Movement.FLEXION,
            correction=CORRECTION,
            switched_on=True,
        )
    )
    setup, remarks = setup_today(store, quarter_turns=1)
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
    assert setup_today(store, size_px=None)[0].camera.lens == LENS


def test_a_profile_of_another_size_or_camera_is_refused_in_words(store: Store) -> None:
    store.save_lens(LENS)
    other, said = setup_today(store, size_px=(1280, 720))
    assert other.camera.lens is None
    assert "calibrated at 640 x 480 pixels, which does not apply at 1280 x 720" in said[0]
    elsewhere, said = setup_today(store, camera_name="desk camera")
    assert elsewhere.camera.lens is None
    assert "not calibrated" in said[0]


@pytest.mark.parametrize("source", [BodySource.POSES, BodySource.TAPE])
def test_a_forearm_is_kept_but_not_used(store: Store, source: BodySource) -> None:
    save_body_lengths(store, WHO, BodySetup(forearm=0.53, upper_arm=0.6), source, TODAY)
    setup, _ = setup_today(store)
    assert setup.body.forearm is None
    assert setup.body.upper_arm == 0.6


def test_what_is_old_is_not_used_and_that_is_said(store: Store) -> None:
    store.save_lens(LENS)
    old = TODAY - dt.timedelta(days=200)
    store.save_level(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=old))
    save_body_lengths(store, WHO, BodySetup(forearm=0.53), BodySource.TAPE, old)
    setup, remarks = setup_today(store)
    assert setup.camera.roll_deg is None
    assert setup.body == BodySetup()
    assert "level is from" in remarks[0]
    assert "body lengths are from" in remarks[1]
    store.save_level(
        CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.4, day=old, fixed=True)
    )
    assert setup_today(store)[0].camera.roll_deg == 1.5


def test_a_correction_is_off_until_somebody_switches_it_on(store: Store) -> None:
    with pytest.raises(InputError, match="There is no correction"):
        set_correction_enabled(store, CAMERA, Movement.FLEXION, on=True)
    store.save_correction(
        StoredCorrection(camera_name=CAMERA, movement=Movement.FLEXION, correction=CORRECTION)
    )
    assert corrections_for(store, CAMERA) == ()
    assert set_correction_enabled(store, CAMERA, Movement.FLEXION, on=True).switched_on
    assert [each.correction for each in corrections_for(store, CAMERA)] == [CORRECTION]
    assert corrections_for(store, None) == ()
    set_correction_enabled(store, CAMERA, Movement.FLEXION, on=False)
    assert corrections_for(store, CAMERA) == ()


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
    store: Store, changes: dict[str, object], part: str
) -> None:
    one = dataclasses.replace(CORRECTION, **changes)  # type: ignore[arg-type]
    kept = StoredCorrection(camera_name=CAMERA, movement=Movement.FLEXION, correction=one)
    with pytest.raises(InputError, match=part):
        store.save_correction(kept)
    reach = dataclasses.replace(kept, correction=CORRECTION, movement=Movement.HAND_BEHIND_BACK)
    with pytest.raises(InputError, match="only angles"):
        store.save_correction(reach)


@pytest.mark.parametrize(
    ("changes", "part"),
    [
        ({"camera_name": " "}, "name"),
        ({"roll_deg": 90.0}, "turned like that"),
        ({"half_deg": -1.0}, "interval"),
        ({"roll_deg": float("nan")}, "turned like that"),
    ],
)
def test_levels_that_cannot_be(store: Store, changes: dict[str, object], part: str) -> None:
    level = CameraLevel(camera_name=CAMERA, roll_deg=1.0, half_deg=0.5, day=TODAY)
    with pytest.raises(InputError, match=part):
        store.save_level(dataclasses.replace(level, **changes))  # type: ignore[arg-type]
