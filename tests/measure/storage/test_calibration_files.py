"""Calibration files of earlier versions are taken into the store; damaged ones stay as they are."""

import dataclasses
import json
import os
import shutil
import stat
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.acquisition import BodySetup
from measure.domain.calibration_records import BodySource
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import DataError, MachineError
from measure.storage import calibration_files, connection
from measure.storage.calibration_files import FILES, LENSES, read_file
from measure.storage.location import backup_files
from measure.storage.saved_files import saved_files
from measure.storage.store import Store
from tests.measure.storage.test_steps import GOLDEN
from tests.support import record_samples as sample

FOLDER = GOLDEN / "calibration-of-version-1"
ROSA = sample.person("Rosa")
LUKASZ = sample.person("Łukasz")
(LENS_FILE,) = (file for file in FILES if file.name == LENSES)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A data folder as version 2 left it: a store and the five files."""
    folder = tmp_path / "data"
    shutil.copytree(FOLDER, folder)
    shutil.copy(GOLDEN / "sessions-of-version-2.sqlite", folder / "sessions.sqlite")
    return folder


def open_in(folder: Path) -> Store:
    return Store.open(folder / "sessions.sqlite")


def assert_all_there(store: Store) -> None:
    """Everything that the golden files hold about cameras and about people in the store."""
    smaller = dataclasses.replace(
        sample.LENS, width_px=640, height_px=480, centre_px=(320.0, 240.25)
    )
    elsewhere = dataclasses.replace(sample.LENS, camera_name="Häuschen-Kamera")
    assert store.lenses() == [sample.LENS, smaller, elsewhere]
    assert store.level("Laptop camera") == sample.LEVEL
    other = store.level("Häuschen-Kamera")
    assert other is not None
    assert (other.roll_deg, other.half_deg, other.fixed) == (0.5, 0.125, True)
    assert store.corrections()[0] == sample.CORRECTION
    assert store.corrections()[1].movement is Movement.ABDUCTION
    assert not store.corrections()[1].switched_on
    assert store.body(ROSA.id) == sample.body(ROSA)
    body = store.body(LUKASZ.id)
    assert body is not None
    assert (body.body, body.lengths_from) == (BodySetup(upper_arm=0.5), BodySource.POSES)
    assert store.placements(ROSA.id) == [
        sample.place(ROSA),
        sample.place(
            ROSA,
            movement=Movement.HAND_BEHIND_BACK,
            side=Side.RIGHT,
            camera_name=None,
            roll_deg=None,
            shoulder_width=0.75,
            width_over_trunk=-0.75,
        ),
    ]
    assert store.placements(LUKASZ.id) == [sample.place(LUKASZ)]


def test_the_golden_files_are_taken_in_and_set_aside(folder: Path) -> None:
    with open_in(folder) as store:
        assert_all_there(store)
        assert len(store.sessions(ROSA.id)) == 2
    assert not list(folder.glob("*.json"))
    for file in FILES:
        aside = file.path(folder / "backups")
        assert aside.read_bytes() == file.path(FOLDER).read_bytes()
    with open_in(folder) as store:
        assert_all_there(store)


def test_a_folder_without_a_store_yet_gets_one(folder: Path) -> None:
    """Calibration came first: of people who are not in the store nothing is taken."""
    (folder / "sessions.sqlite").unlink()
    with open_in(folder) as store:
        assert len(store.lenses()) == 3
        assert store.body(ROSA.id) is None
        store.save_person(ROSA)
        assert store.body(ROSA.id) is None
    # The file that was set aside still holds them: put back, it is taken in again.
    shutil.copy(folder / "backups" / "bodies.json", folder)
    with open_in(folder) as store:
        assert store.body(ROSA.id) == sample.body(ROSA)
    assert len(list((folder / "backups").glob("bodies*.json"))) == 2


def test_what_was_set_aside_is_told_of_when_a_person_is_deleted(folder: Path) -> None:
    open_in(folder).close()
    copies = {copy.name for copy in backup_files(folder / "sessions.sqlite")}
    assert {"bodies.json", "placements.json", "sessions-of-version-2.sqlite"} <= copies


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_what_was_set_aside_is_closed_to_others(folder: Path) -> None:
    open_in(folder).close()
    assert stat.S_IMODE((folder / "backups").stat().st_mode) == 0o700


def test_killed_before_setting_aside_they_are_taken_in_again(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def killed(*arguments: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(connection, "set_aside", killed)
    with pytest.raises(KeyboardInterrupt):
        open_in(folder)
    assert len(list(folder.glob("*.json"))) == 5
    monkeypatch.undo()
    with open_in(folder) as store:
        assert_all_there(store)
    assert not list(folder.glob("*.json"))


def test_killed_half_way_nothing_is_taken_in(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def killed(*arguments: object) -> None:
        raise KeyboardInterrupt

    broken = dataclasses.replace(FILES[-1], write=killed)
    monkeypatch.setattr(calibration_files, "FILES", (*FILES[:-1], broken))
    with pytest.raises(KeyboardInterrupt):
        open_in(folder)
    monkeypatch.undo()
    assert len(list(folder.glob("*.json"))) == 5
    monkeypatch.setattr(connection, "files_in", lambda folder: [])
    with open_in(folder) as store:
        assert store.lenses() == []
    monkeypatch.undo()
    with open_in(folder) as store:
        assert_all_there(store)


def test_a_folder_that_refuses_to_set_aside(folder: Path) -> None:
    (folder / "sessions.sqlite").unlink()
    (folder / "backups").write_text("no folder")
    with pytest.raises(MachineError, match="cannot be used"):
        open_in(folder)
    assert len(list(folder.glob("*.json"))) == 5


GOOD = {"what": "lens-profiles", "version": 1, "items": []}
ITEM = {
    "camera_name": "c",
    "width_px": 640,
    "height_px": 480,
    "focal_px": [500, 500],
    "centre_px": [320, 240],
    "distortion": [0, 0, 0, 0, 0],
    "reprojection_px": 0.2,
    "views": 9,
}


def of(**changes: object) -> bytes:
    return json.dumps(GOOD | {"items": [ITEM | changes]}).encode()


@pytest.mark.parametrize(
    ("content", "part"),
    [
        (b"", "incomplete or damaged"),
        (b"{", "incomplete or damaged"),
        (b"[" * 100_000, "incomplete or damaged"),
        (b"\xff\xfe\x00", "incomplete or damaged"),
        (b"<html>", "incomplete or damaged"),
        (b"[]", "not a file of this kind"),
        (b'{"what": "placements", "version": 1, "items": []}', "not a file of this kind"),
        (b'{"what": "lens-profiles", "version": "1", "items": []}', "not a file of this kind"),
        (b'{"what": "lens-profiles", "version": 1, "items": {}}', "not a file of this kind"),
        (b'{"what": "lens-profiles", "version": 7, "items": []}', "newer Thawline"),
        (b" " * 2_000_001, "far too large"),
        (json.dumps(GOOD | {"items": [ITEM] * 101}).encode(), "more than 100 entries"),
        (json.dumps(GOOD | {"items": [{}]}).encode(), "missing"),
        (of(surprise=1), "unknown field"),
        (of(focal_px=[500]), "a list of 2"),
        (of(focal_px=["500", 500]), "a number"),
        (of(focal_px=[0, 500]), "not that of a webcam"),
        (of(focal_px=[float("nan"), 500]), "finite number"),
        (of(focal_px=[1e308, 500]), "not that of a webcam"),
        (of(width_px=-640), "cannot be"),
        (of(width_px=10**400), "a whole number"),
        (of(centre_px=[-5, 240]), "outside the picture"),
        (of(distortion=[1e6, 0, 0, 0, 0]), "not that of a lens"),
        (of(camera_name=""), "name"),
        (of(camera_name="a\u202eb"), "name"),
        (of(camera_name="x" * 201), "name"),
        (of(views=0), "no views"),
    ],
)
def test_files_that_cannot_be_used_are_left_as_they_are(
    folder: Path, content: bytes, part: str
) -> None:
    """The rest can be used, also what another file held."""
    path = LENS_FILE.path(folder)
    path.write_bytes(content)
    for _ in range(2):
        with open_in(folder) as store:
            for act in (
                store.lenses,
                lambda store=store: store.save_lens(sample.LENS),
                lambda store=store: store.delete_lenses("c"),
            ):
                with pytest.raises(DataError, match=part):
                    act()
            assert store.level("Laptop camera") == sample.LEVEL
            assert len(store.history(ROSA.id).places) == 2
        assert path.read_bytes() == content
        assert [each.name for each in folder.glob("*.json")] == [path.name]
    path.unlink()
    with open_in(folder) as store:
        assert store.lenses() == []


def test_a_hostile_file_of_bodies(folder: Path) -> None:
    content = {"what": "bodies", "version": 1, "items": [{"person_id": ROSA.id, "body": {}}]}
    content["items"][0]["body"] = {"upper_arm": 1e9}  # type: ignore[index]
    (folder / "bodies.json").write_text(json.dumps(content), encoding="utf-8")
    with open_in(folder) as store:
        with pytest.raises(DataError, match="upper arm 1e"):
            store.body(ROSA.id)
        # Deleting would leave what the file may hold of the person.
        with pytest.raises(DataError, match="Rename or delete it"):
            store.delete_person(ROSA.id)
        assert [who.pseudonym for who in store.people()] == ["Rosa", "Łukasz"]


def test_a_folder_in_the_files_place(folder: Path) -> None:
    LENS_FILE.path(folder).unlink()
    LENS_FILE.path(folder).mkdir()
    with open_in(folder) as store, pytest.raises(DataError, match="it is not a file"):
        store.lenses()


@settings(max_examples=150, deadline=None)
@given(
    content=st.binary(max_size=200)
    | st.recursive(
        st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5),
        lambda inner: (
            st.lists(inner, max_size=3)
            | st.dictionaries(
                st.sampled_from(["what", "version", "items", *ITEM]), inner, max_size=4
            )
        ),
        max_leaves=10,
    ).map(lambda data: json.dumps(data).encode())
)
def test_any_content_gets_a_plain_answer(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    path = tmp_path_factory.mktemp("data") / "lens-profiles.json"
    path.write_bytes(content)
    with pytest.raises(DataError, match=r"left as it is|newer"):
        read_file(LENS_FILE, path)


def test_the_privacy_page_knows_every_file(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("THAWLINE_DATA", str(folder))
    # Models may lie in another folder of this computer; they are not meant here.
    listed = {file.path: file.purpose for file in saved_files() if file.path.parent == folder}
    assert set(listed) == {*(file.path(folder) for file in FILES), folder / "sessions.sqlite"}
    assert not [what for what in listed.values() if what.startswith("another file")]
