"""The kept bundle and a bundle of one's own: verified, or a sentence of its own for each fault."""

import subprocess
import sys
import zipfile
from hashlib import sha256
from pathlib import Path

import pytest

from measure.errors import ModelError, ModelFileError
from measure.pose_models.assembly import (
    DETECTOR_ENTRY,
    LANDMARKS_ENTRY,
    assemble,
    schema_module,
    with_pixel_range,
)
from measure.pose_models.bundles import Bundle, bundle_path, load, own_bundle
from measure.pose_models.catalogue import OFFICIAL, ModelQuality
from measure.system.paths import model_folder
from tests.support.fake_packages import BUNDLES, DETECTOR, LANDMARKS, checksums, tiny_network

FULL = ModelQuality.FULL
PAGE = b"\n<!DOCTYPE html><html><body>Please sign in</body></html>"


@pytest.fixture
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "Żółw ü 日本 %x"
    folder.mkdir()
    monkeypatch.setenv("THAWLINE_MODELS", str(folder))
    return folder


def test_a_verified_bundle_is_loaded_from_a_folder_with_any_name(shelf: Path) -> None:
    bundle_path(FULL).write_bytes(BUNDLES[FULL])
    bundle = load(FULL, checksums())
    assert bundle.content == BUNDLES[FULL]
    assert bundle.sha256 == sha256(BUNDLES[FULL]).hexdigest()
    assert (bundle.quality, bundle.name, bundle.path.parent) == (FULL, "full", shelf)


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (None, "not on this computer yet"),
        (b"", "empty file"),
        (BUNDLES[FULL][:-1], "incomplete"),
        (PAGE, "web page"),
        (BUNDLES[FULL][:-1] + b"\xff", "SHA-256 differs"),
        (BUNDLES[ModelQuality.HEAVY], "SHA-256 differs"),
    ],
)
def test_each_fault_of_a_kept_bundle_is_named_with_its_cure(
    shelf: Path, content: bytes | None, words: str
) -> None:
    if content is not None:
        bundle_path(FULL).write_bytes(content)
    with pytest.raises(ModelError, match=words) as caught:
        load(FULL, checksums())
    assert "thawline model" in str(caught.value)
    assert caught.value.exit_code == 1


def test_a_folder_in_the_place_of_a_bundle_is_named(shelf: Path) -> None:
    bundle_path(FULL).mkdir()
    with pytest.raises(ModelError, match="cannot be read"):
        load(FULL, checksums())


def test_a_stand_in_is_not_taken_for_the_official_bundle(shelf: Path) -> None:
    bundle_path(FULL).write_bytes(BUNDLES[FULL])
    with pytest.raises(ModelError):
        load(FULL)


def compressed(path: Path) -> None:
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as bundle:
        bundle.writestr(DETECTOR_ENTRY, DETECTOR)
        bundle.writestr(LANDMARKS_ENTRY, LANDMARKS[FULL])


def without_landmarks(path: Path) -> None:
    with zipfile.ZipFile(path, "w") as bundle:
        bundle.writestr(DETECTOR_ENTRY, DETECTOR)


def with_text_inside(path: Path) -> None:
    with zipfile.ZipFile(path, "w") as bundle:
        bundle.writestr(DETECTOR_ENTRY, DETECTOR)
        bundle.writestr(LANDMARKS_ENTRY, "some text")


def damaged_inside(path: Path) -> None:
    content = bytearray(BUNDLES[FULL])
    content[len(content) // 2] ^= 0xFF
    path.write_bytes(content)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda path: None, "no file"),
        (lambda path: path.mkdir(), "is a folder"),
        (lambda path: path.write_bytes(b""), "is empty"),
        (lambda path: path.write_bytes(PAGE), "web page"),
        (lambda path: path.write_bytes(DETECTOR), "single network"),
        (lambda path: path.write_bytes(b"some text"), "not a pose bundle"),
        (lambda path: path.write_bytes(BUNDLES[FULL][:-100]), "incomplete or damaged"),
        (damaged_inside, "incomplete or damaged"),
        (compressed, "uncompressed"),
        (without_landmarks, LANDMARKS_ENTRY),
        (with_text_inside, "not a network"),
    ],
)
def test_each_fault_of_an_own_bundle_is_wrong_input(tmp_path: Path, make, words: str) -> None:
    path = tmp_path / "Żółw ü 日本.task"
    make(path)
    with pytest.raises(ModelFileError, match=words) as caught:
        own_bundle(path)
    assert path.name in str(caught.value)
    assert caught.value.exit_code == 2


def test_an_own_bundle_of_any_network_is_taken_under_the_name_own(tmp_path: Path) -> None:
    path = tmp_path / "mine.task"
    path.write_bytes(assemble(DETECTOR, tiny_network(b"trained at home")))
    bundle = own_bundle(path)
    assert (bundle.quality, bundle.name) == (None, "own")
    assert bundle.sha256 == sha256(path.read_bytes()).hexdigest()


def test_the_content_stays_out_of_messages() -> None:
    bundle = Bundle(quality=None, sha256="0", path=Path("x"), content=b"secret" * 100)
    assert "secret" not in repr(bundle)


def pixel_ranges(network: bytes) -> list[tuple[float, float]]:
    """Return the (mean, std) that a network's metadata asks for."""
    schema, words = (schema_module(f"{each}schema_py_generated") for each in ("", "metadata_"))
    model = schema.Model.GetRootAs(network, 0)
    notes = {model.Metadata(i).Name(): model.Metadata(i) for i in range(model.MetadataLength())}
    content = model.Buffers(notes[b"TFLITE_METADATA"].Buffer()).DataAsNumpy().tobytes()
    assert content[4:8] == b"M001"
    tensor = words.ModelMetadata.GetRootAs(content, 0).SubgraphMetadata(0).InputTensorMetadata(0)
    assert tensor.Content().ContentPropertiesType() == words.ContentProperties.ImageProperties
    found = []
    for i in range(tensor.ProcessUnitsLength()):
        options = words.NormalizationOptions()
        options.Init(tensor.ProcessUnits(i).Options().Bytes, tensor.ProcessUnits(i).Options().Pos)
        found.append((options.Mean(0), options.Std(0)))
    return found


def test_the_pixel_range_is_added_in_front_of_the_unchanged_network() -> None:
    network = LANDMARKS[FULL]
    changed = with_pixel_range(network, 127.5, 64.0)
    assert pixel_ranges(changed) == [(127.5, 64.0)]
    start = changed.index(network)
    assert start % 64 == 0
    model = schema_module("schema_py_generated").Model.GetRootAs(changed, 0)
    assert changed[4:8] == b"TFL3"
    assert model.Version() == 3
    assert model.Description() == b"tiny"
    assert model.Subgraphs(0).Tensors(0).Name() == b"picture"
    assert model.Subgraphs(0).Tensors(0).ShapeAsNumpy().tolist() == [1, 2, 2, 3]
    assert model.Buffers(1).DataAsNumpy().tobytes() == FULL.encode() * 9
    assert [model.Metadata(i).Name() for i in range(model.MetadataLength())] == [
        b"min_runtime_version",
        b"TFLITE_METADATA",
    ]


def test_a_network_that_has_metadata_is_left_alone() -> None:
    changed = with_pixel_range(DETECTOR, 127.5, 127.5)
    assert with_pixel_range(changed, 0.0, 255.0) is changed


def test_a_bundle_is_an_aligned_uncompressed_zip_and_always_the_same() -> None:
    bundle = assemble(DETECTOR, LANDMARKS[FULL])
    assert bundle == assemble(DETECTOR, LANDMARKS[FULL])
    for mark in (b"TFL3", b"TFL3"):
        assert mark in bundle
    places = [at for at in range(len(bundle)) if bundle[at + 4 : at + 8] == b"TFL3"]
    # Each network is there with its new root in front of the old one, all aligned.
    assert len(places) == 4
    assert [at % 64 for at in places] == [0, 0, 0, 0]


def test_schemas_are_read_without_the_pose_library_itself() -> None:
    code = (
        "import sys; from measure.pose_models.assembly import schema_module\n"
        "schema_module('schema_py_generated')\n"
        "print('mediapipe' in sys.modules, 'cv2' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.split() == ["False", "False"]


def test_the_official_full_bundle_holds_the_official_networks() -> None:
    """On the real bundle: fetch it beforehand with `thawline model`."""
    bundle = load(FULL)
    assert bundle.path.parent == model_folder()
    with zipfile.ZipFile(bundle.path) as held:
        detector, landmarks = held.read(DETECTOR_ENTRY), held.read(LANDMARKS_ENTRY)
    assert pixel_ranges(detector) == [(127.5, 127.5)]
    assert pixel_ranges(landmarks) == [(0.0, 255.0)]
    old = landmarks[landmarks.index(b"TFL3", 8) - 4 :]
    endings = (sha256(old[: len(old) - padding]).hexdigest() for padding in range(64))
    assert OFFICIAL.landmarks[FULL] in endings


def test_the_official_full_bundle_loads_into_the_network() -> None:
    code = (
        "import numpy as np; from measure.pose.network import PoseNetwork\n"
        "from measure.pose_models.bundles import load\n"
        "from measure.pose_models.catalogue import ModelQuality\n"
        "with PoseNetwork(load(ModelQuality.FULL).content) as network:\n"
        "    detection = network.detect(np.full((240, 320, 3), 90, np.uint8), 0.0)\n"
        "print('people', len(detection.places))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.stdout.strip() == "people 0", done.stderr[-2000:]
