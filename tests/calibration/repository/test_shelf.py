"""Small files of ours: whole or not at all, bounded, and hostile content answered."""

import dataclasses
import json
import os
import stat
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calibration.placement.placement import PLACEMENTS
from calibration.repository.bodies import BODIES
from calibration.repository.corrections import CORRECTIONS
from calibration.repository.lenses import LENSES, check_profile, lens_for
from calibration.repository.levels import LEVELS
from measure.cli.privacy import what_is_kept
from measure.domain.acquisition import LensProfile
from measure.errors import DataError, InputError, MachineError

PROFILE = LensProfile(
    camera_name="Häuschen-Kamera",
    width_px=640,
    height_px=480,
    focal_px=(500.0, 501.0),
    centre_px=(320.0, 240.0),
    distortion=(-0.1, 0.02, 0.0, 0.0, 0.0),
    reprojection_px=0.2,
    views=16,
)


def other(**changes: object) -> LensProfile:
    return dataclasses.replace(PROFILE, **changes)  # type: ignore[arg-type]


def test_there_and_back(data_folder: Path) -> None:
    assert LENSES.all() == ()
    LENSES.put(PROFILE)
    LENSES.put(other(width_px=1280, height_px=720, centre_px=(640.0, 360.0)))
    assert lens_for("Häuschen-Kamera", 640, 480) == PROFILE
    assert lens_for("Häuschen-Kamera", 640, 360) is None
    assert lens_for(None, 640, 480) is None
    better = other(reprojection_px=0.1)
    LENSES.put(better)
    assert lens_for("Häuschen-Kamera", 640, 480) == better
    assert len(LENSES.all()) == 2
    assert LENSES.remove(lambda profile: profile.width_px == 1280) == 1
    assert LENSES.remove(lambda profile: profile.width_px == 1280) == 0
    assert LENSES.all() == (better,)
    assert [each.name for each in data_folder.iterdir()] == ["lens-profiles.json"]


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_the_file_is_closed_to_others(data_folder: Path) -> None:
    LENSES.put(PROFILE)
    assert stat.S_IMODE(LENSES.path.stat().st_mode) == 0o600
    assert stat.S_IMODE(data_folder.stat().st_mode) == 0o700


def test_the_oldest_goes_when_the_shelf_is_full(data_folder: Path) -> None:
    plain = [other(camera_name=f"camera {number}") for number in range(101)]
    for profile in plain[:2]:
        LENSES.put(profile)
    content = json.loads(LENSES.path.read_text(encoding="utf-8"))
    first = content["items"][0]
    content["items"] = [first | {"camera_name": f"camera {number}"} for number in range(100)]
    LENSES.path.write_text(json.dumps(content), encoding="utf-8")
    LENSES.put(plain[100])
    names = [profile.camera_name for profile in LENSES.all()]
    assert len(names) == 100
    assert names[0] == "camera 1"
    assert names[-1] == "camera 100"


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
        (b"", "cut off or damaged"),
        (b"{", "cut off or damaged"),
        (b"[" * 100_000, "cut off or damaged"),
        (b"\xff\xfe\x00", "cut off or damaged"),
        (b"<html>", "cut off or damaged"),
        (b"[]", "no file of this kind"),
        (b'{"what": "placements", "version": 1, "items": []}', "no file of this kind"),
        (b'{"what": "lens-profiles", "version": "1", "items": []}', "no file of this kind"),
        (b'{"what": "lens-profiles", "version": 1, "items": {}}', "no file of this kind"),
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
    data_folder: Path, content: bytes, part: str
) -> None:
    data_folder.mkdir()
    LENSES.path.write_bytes(content)
    for act in (LENSES.all, lambda: LENSES.put(PROFILE), lambda: LENSES.remove(bool)):
        with pytest.raises(DataError, match=part):
            act()
    assert LENSES.path.read_bytes() == content


def test_a_folder_in_the_files_place(data_folder: Path) -> None:
    LENSES.path.mkdir(parents=True)
    with pytest.raises(DataError, match="it is no file"):
        LENSES.all()


def test_a_value_that_makes_no_sense_is_not_kept(data_folder: Path) -> None:
    with pytest.raises(InputError, match="webcam"):
        LENSES.put(other(focal_px=(1.0, 1.0)))
    with pytest.raises(InputError, match="missing"):
        check_profile(other(reprojection_px=float("nan")))
    assert not data_folder.exists()


def test_a_failed_write_leaves_the_old_file(
    data_folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    LENSES.put(PROFILE)
    before = LENSES.path.read_bytes()

    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(MachineError, match="No space left"):
        LENSES.put(other(views=20))
    assert LENSES.path.read_bytes() == before
    assert [each.name for each in data_folder.iterdir()] == ["lens-profiles.json"]


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
def test_any_content_is_a_shelf_or_a_plain_answer(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    folder = tmp_path_factory.mktemp("data")
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("THAWLINE_DATA", str(folder))
        LENSES.path.write_bytes(content)
        with pytest.raises(DataError, match=r"left as it is|newer"):
            LENSES.all()


def test_the_privacy_page_knows_every_shelf(data_folder: Path) -> None:
    data_folder.mkdir()
    shelves = (BODIES, CORRECTIONS, LENSES, LEVELS, PLACEMENTS)
    for shelf in shelves:
        shelf.path.write_text("{}", encoding="utf-8")
    # Models may lie in another folder of this computer; they are not meant here.
    told = {kept.path: kept.what for kept in what_is_kept() if kept.path.parent == data_folder}
    assert set(told) == {shelf.path for shelf in shelves}
    assert not [what for what in told.values() if what.startswith("another file")]
