"""What a worker of a cluster does: says what it is, and reads one clip after the other.

The same function as on one computer, :func:`measure.clips.outcome.read_entry`, with a pose
process for each thread of the worker. Nothing here knows how a cluster is spoken to.
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
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality
from measure.system.versions import software

#: Its last digits change no number.
_MAY_DIFFER = ("python",)


@dataclass(frozen=True, slots=True, kw_only=True)
class JobSpec:
    """How all clips of a run are to be read, without the bundles, which workers have.

    Attributes
    ----------
    model
        Name of the deciding model.
    own_model
        Path of a bundle of somebody's own, which every worker must see; or None.
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


def order_of(settings: ReadingSettings) -> JobSpec:
    """Return the order for settings of this computer."""
    own = [each.path for each in settings.models.bundles.values() if each.quality is None]
    return JobSpec(
        model=settings.models.name,
        own_model=own[0].absolute() if own else None,
        hashes=settings.models.hashes,
        software=software(),
        setup=settings.setup,
        every_frame=settings.every_frame,
    )


def what_is_wrong(order: JobSpec) -> str:
    """Return why this worker would not give the same numbers, or nothing."""
    here = software()
    other = [
        f"{name} {here.get(name, 'missing')} instead of {version}"
        for name, version in order.software.items()
        if name not in _MAY_DIFFER and here.get(name) != version
    ]
    if other:
        return ", ".join(other)
    try:
        hashes = models_of(order).hashes
    except ThawlineError as error:
        return str(error)
    differing = [name for name in order.hashes if hashes.get(name) != order.hashes[name]]
    return f"another pose model ({', '.join(differing)})" if differing else ""


def models_of(order: JobSpec) -> ModelSet:
    """Return the models of an order as this worker has them; never goes online.

    Raises
    ------
    ModelError, ModelFileError
        A bundle is not here, or is damaged.
    """
    if order.own_model is not None:
        return ModelSet(name=order.model, bundles={ModelQuality.FULL: load(order.own_model)})
    qualities = [ModelQuality(name) for name in order.hashes]
    return ModelSet(name=order.model, bundles={each: load(each) for each in qualities})


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


def read_on_worker(order: JobSpec, sent: SentClip) -> ClipResult:
    """Read a clip on this worker; every failure becomes part of the outcome."""
    try:
        place = _place(order)
        if sent.content is None:
            _check_content(sent)
            return read_entry(place.process, place.settings, sent.number, sent.entry)
        with tempfile.TemporaryDirectory(prefix="thawline-") as folder:
            clip = Path(folder) / sent.entry.clip.name
            clip.write_bytes(sent.content)
            entry = replace(sent.entry, clip=clip)
            return read_entry(place.process, place.settings, sent.number, entry)
    except ThawlineError as error:
        # Also a model that is missing here: elsewhere the clip may well be read.
        return ClipResult(
            number=sent.number, entry=sent.entry, error=MachineError(f"On a worker: {error}")
        )
    except OSError as error:
        why = f"On a worker: {sent.entry.clip.name} could not be kept ({error.strerror})."
        return ClipResult(number=sent.number, entry=sent.entry, error=MachineError(why))


def _check_content(sent: SentClip) -> None:
    clip = sent.entry.clip
    try:
        same = content_hash(clip) == sent.sha256
    except ClipError:
        raise MachineError(
            f"{clip} is not there. Put the clips where every worker sees them under the same "
            "path, or use --send-clips."
        ) from None
    if not same:
        raise MachineError(f"{clip} is another file than on the computer that sent the work.")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Place:
    """What a thread of a worker keeps from clip to clip."""

    order: JobSpec
    settings: ReadingSettings
    process: PoseProcess


_kept = threading.local()


def _place(order: JobSpec) -> _Place:
    """Return this thread's pose process, started anew for another order.

    Raises
    ------
    MachineError
        The worker is not as the order asks, which one that joined later may be.
    """
    place: _Place | None = getattr(_kept, "place", None)
    if place is not None and place.order == order:
        return place
    wrong = what_is_wrong(order)
    if wrong:
        raise MachineError(f"{wrong}.")
    if place is not None:
        place.process.close()
    models = models_of(order)
    settings = ReadingSettings(models=models, setup=order.setup, every_frame=order.every_frame)
    place = _Place(order=order, settings=settings, process=PoseProcess(models.bundles))
    _kept.place = place
    return place
