"""`thawline replay --person`: who stands otherwise than when the place was kept is told so."""

import dataclasses
import datetime as dt
from pathlib import Path

import pytest

from calibration.placement.check import compare_or_save_placement
from calibration.placement.placement import PlacementDrift
from measure.cli.main import main
from measure.clips.observation_file import load_observation
from measure.clips.read import measurement_from_observation
from measure.domain.acquisition import Setup
from measure.domain.calibration_records import Placement
from measure.domain.measurements import Measurement
from measure.domain.records import Person
from measure.report.measurement_wording import value_text
from measure.storage.store import Store
from tests.calibration.conftest import WHO

TRACKS = Path(__file__).resolve().parents[2] / "tracks"
FLEXION = TRACKS / "trial-flexion-side-000.npz"
Said = pytest.CaptureFixture[str]


@pytest.fixture
def bramble(data_folder: Path) -> None:
    with Store.open() as store:
        store.save_person(Person(id=WHO, pseudonym="Bramble"))


def kept_places() -> list[Placement]:
    with Store.open() as store:
        return store.placements(WHO)


def replay(tracks: Path, *more: str) -> int:
    return main(["replay", "--from-tracks", str(tracks), *more])


def test_nothing_is_said_before_a_place_is_kept_nor_at_the_same_place(
    bramble: None, capsys: Said
) -> None:
    assert replay(FLEXION, "--person", "Bramble") == 0
    assert "You are" not in capsys.readouterr().out
    assert kept_places() == []
    assert replay(FLEXION, "--person", "Bramble", "--keep-place") == 0
    assert "the place is saved." in capsys.readouterr().out
    assert replay(FLEXION, "--person", "Bramble") == 0
    assert "against" not in capsys.readouterr().out


@pytest.mark.parametrize(
    ("change", "part"),
    [
        ({"trunk_px": 136.8 / 1.2}, "You are about 17 % nearer than on"),
        ({"trunk_px": 136.8 * 1.2}, "You are about 20 % farther away than on"),
        ({"width_over_trunk": 0.2}, "You are turned about 17 degrees compared with"),
        ({"lean_deg": 7.0}, "The camera or your body leans about 6 degrees compared with"),
        (
            {"camera_name": None, "width_px": 1280},
            "The camera or the picture size is not the same as on",
        ),
    ],
)
def test_a_sentence_comes_with_the_reading(
    bramble: None, capsys: Said, change: dict[str, object], part: str
) -> None:
    replay(FLEXION, "--person", "Bramble", "--keep-place")
    (kept,) = kept_places()
    with Store.open() as store:
        store.delete_placements(WHO)
        store.save_placement(dataclasses.replace(kept, **change))  # type: ignore[arg-type]
    capsys.readouterr()
    assert replay(FLEXION, "--person", "Bramble") == 0
    out = capsys.readouterr().out
    assert f"{part} {kept.taken.isoformat()}" in out
    assert value_text(measured(FLEXION)) in out


def test_a_place_needs_somebody_known(bramble: None, capsys: Said) -> None:
    assert replay(FLEXION, "--keep-place") == 2
    assert "--person NAME" in capsys.readouterr().err
    assert replay(FLEXION, "--person", "Nobody") == 2
    assert "Nobody" in capsys.readouterr().err


def test_the_first_reading_before_a_camera_keeps_the_place_and_a_refusal_does_not(
    store: Store,
) -> None:
    day = dt.date(2026, 11, 25)
    refused = measured(TRACKS / "hopeless-flexion-from-front-00.npz")
    assert compare_or_save_placement(store, refused, WHO, day) == ()
    assert store.placements(WHO) == []
    first = measured(FLEXION)
    assert compare_or_save_placement(store, first, WHO, day) == ()
    (kept,) = store.placements(WHO)
    nearer = dataclasses.replace(kept, trunk_px=kept.trunk_px / 1.2)
    store.save_placement(nearer)
    (change,) = compare_or_save_placement(store, first, WHO, day)
    assert change.drift is PlacementDrift.NEARER
    assert store.placements(WHO) == [nearer]


def test_places_are_shown_and_forgotten(bramble: None, capsys: Said) -> None:
    assert main(["calibrate", "place", "show", "--person", "Bramble"]) == 0
    assert "No place is saved yet" in capsys.readouterr().out
    replay(FLEXION, "--person", "Bramble", "--keep-place")
    assert main(["calibrate", "place", "show", "--person", "Bramble"]) == 0
    assert "flexion, right: before a camera without a name" in capsys.readouterr().out
    assert main(["calibrate", "place", "forget", "--person", "Bramble"]) == 0
    assert "1 place deleted." in capsys.readouterr().out


def measured(tracks: Path) -> Measurement:
    return measurement_from_observation(load_observation(tracks)[1], Setup()).measurement
