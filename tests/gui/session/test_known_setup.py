"""What calibration knows reaches live measuring, as replay --setup has it; places are compared."""

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest

from calibration.body.record import save_body_lengths
from calibration.known_setup import load_calibrated_setup
from gui.session.known_setup import SetupProvider, load_stored_setup
from gui.session.placement_check import PlacementMonitor
from measure.clips.setup_file import read_setup, write_setup
from measure.domain.acquisition import BodySetup, CameraSetup, Correction, KnownSetup, LensProfile
from measure.domain.calibration_records import BodySource, CameraLevel, StoredCorrection
from measure.domain.measurements import Measurement
from measure.domain.movements import Movement
from measure.domain.standing_pose import STANDING, Neutral, standing_text
from measure.live.events import Phase
from measure.storage.store import Store
from tests.support.gui.measuring_steps import begin_single
from tests.support.gui.scripted_engine import ScriptedEngine
from tests.support.gui.stage import TODAY, WindowHarness

CAMERA = "Integrated Webcam"
#: Of the size that the stage's pictures have.
LENS = LensProfile(
    camera_name=CAMERA,
    width_px=1280,
    height_px=720,
    focal_px=(1000.0, 1000.0),
    centre_px=(640.0, 360.0),
    distortion=(-0.1, 0.0, 0.0, 0.0, 0.0),
    reprojection_px=0.2,
    views=24,
)
STOOD = Neutral(
    trunk_px=120.0,
    middle_px=(320.0, 240.0),
    lean_deg=0.5,
    width_over_trunk=0.02,
    frames=8,
    width_px=640,
    height_px=480,
)


@pytest.fixture
def calibrated(stored_stage: WindowHarness) -> WindowHarness:
    """A stage whose camera and person are known as well as can be."""
    stage = stored_stage
    stage.services.setup_provider = SetupProvider(load_stored_setup)
    stage.services.settings.camera = CAMERA
    who = stage.store.people()[0].id
    body = BodySetup(forearm=0.55, upper_arm=0.62)
    with Store.open() as store:
        store.save_lens(LENS)
        store.save_level(CameraLevel(camera_name=CAMERA, roll_deg=1.5, half_deg=0.3, day=TODAY))
        save_body_lengths(store, who, body, BodySource.TAPE, TODAY)
        store.save_correction(
            StoredCorrection(
                camera_name=CAMERA,
                movement=Movement.ABDUCTION,
                correction=Correction(
                    bias_deg=3.0,
                    gain=0.0,
                    centre_deg=90.0,
                    pairs=40,
                    study="spring",
                    lowest_deg=40.0,
                    highest_deg=150.0,
                ),
                switched_on=True,
            )
        )
    return stage


def test_live_measuring_knows_what_replay_is_given(
    calibrated: WindowHarness, tmp_path: Path
) -> None:
    """The source of the live engine holds, for each movement, what --setup holds."""
    who = calibrated.store.people()[0].id
    with Store.open() as store:
        kept = load_calibrated_setup(store, camera_name=CAMERA, person_id=who, today=TODAY)
    write_setup(tmp_path / "known.json", kept.setup)
    replayed = read_setup(tmp_path / "known.json")
    begin_single(calibrated.window.measure)
    calibrated.settle()
    source = calibrated.engine.source
    assert source is not None
    assert source.setup.camera.lens == LENS
    assert source.setup.camera.roll_deg == 1.5
    assert source.setup.body.upper_arm == 0.62
    assert source.setup_of(Movement.ABDUCTION).correction is not None
    for movement in Movement:
        assert source.setup_of(movement) == replayed.of(movement)


def test_clips_take_what_is_known_of_the_person_and_not_of_the_camera(
    calibrated: WindowHarness,
) -> None:
    services = calibrated.services
    assert services.clip_setup().body.upper_arm == 0.62
    assert services.clip_setup().camera.lens is None
    services.settings.set_already_mirrored(CAMERA, True)
    assert services.clip_setup().camera.already_mirrored
    services.clips = (Path("one.mp4"),)
    assert services.next_source().setup.body == services.clip_setup().body


def test_another_person_is_not_measured_with_this_ones_body(calibrated: WindowHarness) -> None:
    other = calibrated.keeper.add_person("Sorrel")
    calibrated.window.measure.start.person_chosen.emit(other.id)
    calibrated.settle()
    assert calibrated.services.person_id == other.id
    assert calibrated.services.source().setup.body == BodySetup()


def test_what_is_too_old_is_told_once_and_not_used(calibrated: WindowHarness) -> None:
    who = calibrated.store.people()[0].id
    old = TODAY - dt.timedelta(days=200)
    with Store.open() as store:
        save_body_lengths(store, who, BodySetup(forearm=0.55), BodySource.TAPE, old)
    told: list[str] = []
    calibrated.window.measure.message_raised.connect(told.append)
    begin_single(calibrated.window.measure)
    calibrated.settle()
    assert calibrated.engine.source is not None
    assert calibrated.engine.source.setup.body == BodySetup()
    (said,) = told
    assert "The body lengths are from 2026-05-09, more than 180 days ago." in said
    assert calibrated.services.setup_provider.take_messages() == ()
    calibrated.services.source()
    assert calibrated.services.setup_provider.take_messages() == ()


def test_a_damaged_file_keeps_nobody_from_measuring(
    calibrated: WindowHarness, data_folder: Path
) -> None:
    (data_folder / "bodies.json").write_text("{", encoding="utf-8")
    source = calibrated.services.source()
    assert (source.setup.body, source.setup.camera.lens) == (BodySetup(), None)
    assert source.setup.camera.name == CAMERA
    (remark,) = calibrated.services.setup_provider.take_messages()
    assert "incomplete or damaged" in str(remark)


def test_without_calibration_nothing_is_known(stage: WindowHarness) -> None:
    stage.services.settings.set_already_mirrored(None, True)
    known = stage.services.current_setup()
    assert known.setup.camera.already_mirrored
    assert known.setup == KnownSetup(camera=CameraSetup(already_mirrored=True))
    assert known.lenses == ()


def test_the_profile_of_the_pictures_size_is_at_hand(calibrated: WindowHarness) -> None:
    larger = replace(LENS, width_px=1920, height_px=1080)
    with Store.open() as store:
        store.save_lens(larger)
    source = calibrated.services.source()
    assert source.setup.camera.lens == larger
    assert source.lenses == (LENS, larger)


def test_profiles_of_other_picture_sizes_are_told_once(calibrated: WindowHarness) -> None:
    with Store.open() as store:
        store.delete_lenses(CAMERA)
        store.save_lens(replace(LENS, width_px=640, height_px=480))
        store.save_lens(replace(LENS, width_px=1920, height_px=1080))
    told: list[str] = []
    calibrated.window.measure.message_raised.connect(told.append)
    page = calibrated.window.measure
    begin_single(page)
    calibrated.settle()
    expected = (
        "The lens was calibrated at 1920 x 1080, 640 x 480 pixels, which does not apply at "
        "1280 x 720; a typical field of view is assumed. Calibrate the lens at this size too."
    )
    assert told == [expected]
    calibrated.engine.show(Phase.MOVE, 40.0)
    calibrated.settle()
    assert told == [expected]


def test_a_profile_that_fits_is_nothing_to_tell(calibrated: WindowHarness) -> None:
    with Store.open() as store:
        store.save_lens(replace(LENS, width_px=1920, height_px=1080))
    told: list[str] = []
    calibrated.window.measure.message_raised.connect(told.append)
    begin_single(calibrated.window.measure)
    calibrated.settle()
    assert told == []


def measure_once(stage: WindowHarness, monkeypatch: pytest.MonkeyPatch, stood: Neutral) -> None:
    """Let one movement be measured, by somebody who stands so."""
    made = ScriptedEngine.measurement

    def with_stance(engine: ScriptedEngine) -> Measurement | None:
        found = made(engine)
        if found is None:
            return None
        provenance = replace(found.provenance, source={STANDING: standing_text(stood)})
        return replace(found, provenance=provenance)

    with monkeypatch.context() as patched:
        patched.setattr(ScriptedEngine, "measurement", with_stance)
        begin_single(stage.window.measure)
        stage.settle()
        for _ in range(3):
            stage.engine.capture(100.0)
            stage.settle()
            stage.engine.settle()
            stage.settle()
    page = stage.window.measure
    page.pain.done.click()
    stage.settle()


def test_who_stands_elsewhere_hears_it_with_the_reading(
    stored_stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    stage = stored_stage
    who = stage.store.people()[0].id
    stage.services.placement_monitor = PlacementMonitor(stage.services.records, lambda: TODAY)
    told: list[str] = []
    stage.window.measure.message_raised.connect(told.append)
    measure_once(stage, monkeypatch, STOOD)
    assert told == []
    with Store.open() as store:
        (kept,) = store.placements(who)
    assert (kept.trunk_px, kept.taken) == (120.0, TODAY)
    stage.window.measure.summary.finish.click()
    stage.settle()
    measure_once(stage, monkeypatch, replace(STOOD, trunk_px=150.0, lean_deg=7.0))
    assert told == [
        "You are about 20 % nearer than on 2026-11-25. Step back a little. The camera or your "
        "body leans about 6 degrees compared with 2026-11-25. Set the camera level and stand "
        "upright."
    ]
    summary = stage.window.measure.summary
    labels = summary.findChildren(type(summary.title))
    said = [one.text().replace("\xa0", " ") for one in labels]
    assert f"Right: {told[0]}" in said
    with Store.open() as store:
        assert store.placements(who) == [kept]
