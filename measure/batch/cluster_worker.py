"""Work of a cluster's worker: check that it gives the same numbers, and read one clip at a time.

Clips are read by :func:`measure.clips.outcome.read_entry`, as on one computer, with a pose
process for each thread of the worker. Independent of the kind of cluster.
"""

import tempfile
import threading
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from measure.batch.cache_key import content_hash
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings, read_entry
from measure.domain.acquisition import KnownSetup
from measure.errors import ClipError, MachineError, ThawlineError
from measure.pose.ensemble import ModelSet
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import load, own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.system.versions import software

#: Packages whose version changes no number.
_MAY_DIFFER = ("python",)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSpec:
    """How all clips of a run are to be read, without the bundles, which workers have.

    Attributes
    ----------
    model
        Name of the deciding model.
    own_model
        Path of the user's own bundle, which every worker must see; or None.
    hashes
        SHA-256 of each bundle by its name.
    software
        Versions that every worker must have.
    """

    model: str
    own_model: Path | None
    hashes: Mapping[str, str]
    software: Mapping[str, str]
    setup: KnownSetup = field(default_factory=KnownSetup)
    every_frame: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SentClip:
    """A clip on its way to a worker.

    Attributes
    ----------
    sha256
        Of its bytes.
    content
        The bytes; None where the worker opens the same path.
    """

    number: int
    entry: ClipEntry
    sha256: str
    content: bytes | None = field(default=None, repr=False)


def job_spec(settings: ReadingSettings) -> JobSpec:
    """Return the specification of a run with the settings of this computer."""
    own = [bundle.path for bundle in settings.models.bundles.values() if bundle.quality is None]
    return JobSpec(
        model=settings.models.name,
        own_model=own[0].absolute() if own else None,
        hashes=settings.models.hashes,
        software=software(),
        setup=settings.setup,
        every_frame=settings.every_frame,
    )


def mismatch(spec: JobSpec) -> str:
    """Return why this worker would not give the same numbers, or nothing."""
    installed = software()
    other = [
        f"{name} {installed.get(name, 'missing')} instead of {version}"
        for name, version in spec.software.items()
        if name not in _MAY_DIFFER and installed.get(name) != version
    ]
    if other:
        return ", ".join(other)
    try:
        hashes = models_of(spec).hashes
    except ThawlineError as error:
        return str(error)
    differing = [name for name in spec.hashes if hashes.get(name) != spec.hashes[name]]
    return f"another pose model ({', '.join(differing)})" if differing else ""


def models_of(spec: JobSpec) -> ModelSet:
    """Return the models of a run as this worker has them; never goes online.

    Raises
    ------
    ModelError, ModelFileError
        A bundle is not here, or is damaged.
    """
    if spec.own_model is not None:
        return ModelSet(name=spec.model, bundles={ModelQuality.FULL: own_bundle(spec.own_model)})
    qualities = [ModelQuality(name) for name in spec.hashes]
    return ModelSet(name=spec.model, bundles={quality: load(quality) for quality in qualities})


def read_on_worker(spec: JobSpec, sent: SentClip) -> ClipResult:
    """Read a clip on this worker; every failure becomes part of the result."""
    try:
        reader = _reader(spec)
        if sent.content is None:
            _check_content(sent)
            return read_entry(reader.process, reader.settings, sent.number, sent.entry)
        with tempfile.TemporaryDirectory(prefix="thawline-") as folder:
            clip = Path(folder) / sent.entry.clip.name
            clip.write_bytes(sent.content)
            entry = replace(sent.entry, clip=clip)
            return read_entry(reader.process, reader.settings, sent.number, entry)
    except ThawlineError as error:
        # Also a model that is missing here: elsewhere the clip may well be read.
        failure = f"On a worker: {error}"
    except OSError as error:
        failure = f"On a worker: {sent.entry.clip.name} could not be saved ({error.strerror})."
    return ClipResult(number=sent.number, entry=sent.entry, error=MachineError(failure))


def _check_content(sent: SentClip) -> None:
    clip = sent.entry.clip
    try:
        same = content_hash(clip) == sent.sha256
    except ClipError:
        raise MachineError(
            f"{clip} is missing. Put the clips where every worker can read them under the same "
            "path, or use --send-clips."
        ) from None
    if not same:
        raise MachineError(f"{clip} is not the same file as on the computer that sent the work.")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Reader:
    """What a thread of a worker keeps from clip to clip."""

    spec: JobSpec
    settings: ReadingSettings
    process: PoseProcess


_of_this_thread = threading.local()


def _reader(spec: JobSpec) -> _Reader:
    """Return this thread's reader; its pose process is started anew for another specification.

    Raises
    ------
    MachineError
        The worker does not match, which may happen to a worker that joined later.
    """
    reader: _Reader | None = getattr(_of_this_thread, "reader", None)
    if reader is not None and reader.spec == spec:
        return reader
    if wrong := mismatch(spec):
        raise MachineError(f"{wrong}.")
    if reader is not None:
        reader.process.close()
    models = models_of(spec)
    settings = ReadingSettings(models=models, setup=spec.setup, every_frame=spec.every_frame)
    reader = _Reader(spec=spec, settings=settings, process=PoseProcess(models.bundles))
    _of_this_thread.reader = reader
    return reader
