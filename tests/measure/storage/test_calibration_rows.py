"""What is kept about cameras, bodies and places: replaced by key, the newest last, checked."""

import dataclasses
import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from measure.domain.acquisition import BodySetup, LensProfile
from measure.domain.landmarks import Side
from measure.domain.records import History
from measure.errors import DataError, InputError, MachineError
from measure.storage.store import Store
from tests.support import record_samples as sample

ROSA, EMIL = sample.person("Rosa"), sample.person("Emil")


@pytest.fixture
def store() -> Iterator[Store]:
    with Store.in_memory() as store:
        store.save_person(ROSA)
        store.save_person(EMIL)
        yield store


def lens(**changes: object) -> LensProfile:
    return dataclasses.replace(sample.LENS, **changes)  # type: ignore[arg-type]


def test_lenses_there_and_back(store: Store) -> None:
    assert store.lenses() == []
    other = lens(width_px=640, height_px=480, centre_px=(320.0, 240.0))
    store.save_lens(sample.LENS)
    store.save_lens(other)
    assert store.lenses() == [sample.LENS, other]
    better = lens(reprojection_px=0.1)
    store.save_lens(better)
    assert store.lenses() == [other, better]
    store.save_lens(lens(camera_name="Häuschen-Kamera"))
    assert store.delete_lenses("Laptop camera") == 2
    assert store.delete_lenses("Laptop camera") == 0
    assert store.lenses() == [lens(camera_name="Häuschen-Kamera")]


def test_in_memory_too_a_deleted_person_takes_their_body_along(store: Store) -> None:
    store.save_body(sample.body(ROSA))
    assert store.body(ROSA.id) is not None
    store.delete_person(ROSA.id)
    assert store.body(ROSA.id) is None


def test_levels_there_and_back(store: Store) -> None:
    assert store.level("Laptop camera") is None
    store.save_level(sample.LEVEL)
    fixed = dataclasses.replace(sample.LEVEL, fixed=True, camera_name="Desk")
    store.save_level(fixed)
    newer = dataclasses.replace(sample.LEVEL, roll_deg=2.0)
    store.save_level(newer)
    assert (store.level("Laptop camera"), store.level("Desk")) == (newer, fixed)
    assert store.level(None) is None


def test_corrections_there_and_back(store: Store) -> None:
    store.save_correction(sample.CORRECTION)
    other = dataclasses.replace(sample.CORRECTION, camera_name="Desk", switched_on=False)
    store.save_correction(other)
    off = dataclasses.replace(sample.CORRECTION, switched_on=False)
    store.save_correction(off)
    assert store.corrections() == [other, off]


def test_studies_there_and_back(store: Store) -> None:
    store.save_study(sample.STUDY)
    other = dataclasses.replace(sample.STUDY, camera_name="Desk")
    store.save_study(other)
    newer = dataclasses.replace(
        sample.STUDY, error=dataclasses.replace(sample.STUDY.error, study="autumn")
    )
    store.save_study(newer)
    assert store.studies() == [other, newer]
    small = dataclasses.replace(sample.STUDY.error, people=9)
    with pytest.raises(InputError, match="30 pairs of 10 people"):
        store.save_study(dataclasses.replace(sample.STUDY, error=small))


def test_bodies_and_places_there_and_back(store: Store) -> None:
    assert store.body(ROSA.id) is None
    for who in (ROSA, EMIL):
        store.save_body(sample.body(who))
    newer = sample.body(ROSA, lengths_from=None, lengths_day=None, body=BodySetup())
    store.save_body(newer)
    assert (store.body(ROSA.id), store.body(EMIL.id)) == (newer, sample.body(EMIL))
    of_clip = sample.place(ROSA, camera_name=None, roll_deg=None, shoulder_width=0.75)
    for place in (of_clip, sample.place(ROSA), sample.place(EMIL)):
        store.save_placement(place)
    nearer = dataclasses.replace(of_clip, trunk_px=300.0)
    store.save_placement(nearer)
    assert store.placements(ROSA.id) == [sample.place(ROSA), nearer]
    assert store.delete_placements(ROSA.id) == 2
    assert store.placements(ROSA.id) == []
    assert store.placements(EMIL.id) == [sample.place(EMIL)]


def test_impossible_values_are_not_saved(store: Store) -> None:
    with pytest.raises(InputError, match="webcam"):
        store.save_lens(lens(focal_px=(1.0, 1.0)))
    with pytest.raises(InputError, match="missing"):
        store.save_lens(lens(reprojection_px=float("nan")))
    with pytest.raises(InputError, match="interval"):
        store.save_level(dataclasses.replace(sample.LEVEL, half_deg=-1.0))
    with pytest.raises(InputError, match="no day"):
        store.save_body(sample.body(ROSA, marks_day=None))
    with pytest.raises(InputError, match="no such size"):
        store.save_placement(sample.place(ROSA, trunk_px=0.0))
    assert (store.lenses(), store.level("Laptop camera"), store.body(ROSA.id)) == ([], None, None)


def test_nothing_is_saved_about_people_who_are_not_in_the_store(store: Store) -> None:
    nobody = sample.person("Nobody")
    for save in (
        lambda: store.save_body(sample.body(nobody)),
        lambda: store.save_placement(sample.place(nobody)),
    ):
        with pytest.raises(InputError, match="no longer saved here"):
            save()


def test_deleting_a_person_deletes_their_body_and_places(tmp_path: Path) -> None:
    path = tmp_path / "sessions.sqlite"
    with Store.open(path) as store:
        for who in (ROSA, EMIL):
            store.save_person(who)
            store.save_body(sample.body(who))
            store.save_placement(sample.place(who, camera_name=f"{who.pseudonym}'s own camera"))
        assert store.delete_person(ROSA.id)
        assert store.body(ROSA.id) is None
        assert store.placements(ROSA.id) == []
        assert store.body(EMIL.id) == sample.body(EMIL)
    for file in tmp_path.iterdir():
        assert b"Rosa's own camera" not in file.read_bytes()


def test_a_history_carries_body_and_places(store: Store) -> None:
    places = (sample.place(ROSA), sample.place(ROSA, side=Side.RIGHT))
    history = History(person=ROSA, body=sample.body(ROSA), places=places)
    merged = store.merge(history)
    assert (merged.added, merged.same, merged.kept) == (3, 0, 0)
    assert store.history(ROSA.id) == history
    merged = store.merge(history)
    assert (merged.added, merged.same, merged.kept) == (0, 3, 0)
    elsewhere = dataclasses.replace(
        history,
        body=sample.body(ROSA, marks_day=sample.place(ROSA).taken),
        places=(sample.place(ROSA, trunk_px=200.0), sample.place(ROSA, camera_name=None)),
    )
    merged = store.merge(elsewhere)
    assert (merged.added, merged.same, merged.kept) == (1, 0, 2)
    assert store.body(ROSA.id) == sample.body(ROSA)
    assert store.placements(ROSA.id) == [*places, sample.place(ROSA, camera_name=None)]


@pytest.mark.parametrize(
    "change",
    [
        "UPDATE lens SET focal_px = '[500]'",
        "UPDATE lens SET focal_px = '[0, 500]'",
        "UPDATE lens SET width_px = -640",
        "UPDATE lens SET reprojection_px = 9e999",
        "UPDATE camera_level SET roll_deg = 90",
        "UPDATE camera_level SET day = '2026-13-41'",
        "UPDATE correction SET movement = 'somersault'",
        "UPDATE correction SET bias_deg = 99",
        "UPDATE body SET upper_arm = 7",
        "UPDATE body SET lengths_from = 'guess'",
        "UPDATE placement SET trunk_px = -1",
        "UPDATE placement SET side = 'middle'",
    ],
)
def test_rows_that_this_program_never_wrote(change: str, store: Store) -> None:
    store.save_lens(sample.LENS)
    store.save_level(sample.LEVEL)
    store.save_correction(sample.CORRECTION)
    store.save_body(sample.body(ROSA))
    store.save_placement(sample.place(ROSA))
    assert store._connection.execute(change).rowcount == 1

    def read_all() -> None:
        store.lenses()
        store.level("Laptop camera")
        store.corrections()
        store.history(ROSA.id)

    with pytest.raises(DataError, match="is damaged"):
        read_all()


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_a_failed_write_leaves_what_was_kept(tmp_path: Path) -> None:
    with Store.open(tmp_path / "sessions.sqlite") as store:
        store.save_lens(sample.LENS)
        store._connection.execute("PRAGMA query_only = ON")
        with pytest.raises(MachineError):
            store.save_lens(lens(views=20))
        store._connection.execute("PRAGMA query_only = OFF")
        assert store.lenses() == [sample.LENS]
