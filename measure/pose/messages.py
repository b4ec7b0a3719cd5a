"""What the pose process and its supervisor say to each other: framed messages on a pipe.

A message is a kind, a few plain values and a few arrays. It is written as a fixed head, a JSON
text and the arrays' bytes, so nothing that arrives is ever executed, and anything else on the
pipe is noticed at once. Pose frames travel many to a message.
"""

import json
import math
import os
import struct
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, fields
from enum import StrEnum
from pathlib import Path
from typing import Any, BinaryIO

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, ModelError, PoseProcessError, ThawlineError
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass
from measure.pose_models.catalogue import ModelQuality

_HEAD = struct.Struct(">8sIQ")
_MARK = b"TLPOSE1\n"
_MOST_TEXT = 1 << 20
_MOST_BYTES = 1 << 30
_TYPES = ("<f8", "<i8", "|u1")


class MessageKind(StrEnum):
    """Kinds of message."""

    MODEL = "model"  # to the process: a bundle
    JOB = "job"  # to the process: a clip
    PICTURES = "pictures"  # to the process: pictures kept in memory, or the next of them
    LIVE = "live"  # to the live process: a source
    USE = "use"  # to the live process: which network looks
    READY = "ready"  # from it: started, or a bundle taken
    PROGRESS = "progress"
    FRAMES = "frames"
    DONE = "done"
    ERROR = "error"
    OPENED = "opened"  # from the live process: a source is open
    SEEN = "seen"  # from the live process: one picture looked at
    ALIVE = "alive"  # from the live process: nothing new
    TROUBLE = "trouble"  # from the live process: what keeps pictures from coming, or no more
    ENDED = "ended"  # from the live process: the clip is over


class GarbledError(ValueError):
    """What came is no message."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """One message.

    Attributes
    ----------
    values
        Plain values: numbers, texts, and lists and mappings of them.
    arrays
        Float64, int64 or uint8.
    """

    kind: MessageKind
    values: Mapping[str, Any] = field(default_factory=dict)
    arrays: Mapping[str, NDArray[Any]] = field(default_factory=dict)


def write_message(pipe: BinaryIO, message: Message) -> None:
    """Write a message and flush.

    Raises
    ------
    OSError
        If nobody listens any more.
    """
    arrays = {name: np.ascontiguousarray(array) for name, array in message.arrays.items()}
    text = json.dumps(
        {
            "kind": message.kind,
            "values": message.values,
            "arrays": {name: [a.dtype.str, a.shape] for name, a in arrays.items()},
        }
    ).encode("ascii")
    size = sum(array.nbytes for array in arrays.values())
    pipe.write(_HEAD.pack(_MARK, len(text), size))
    pipe.write(text)
    for array in arrays.values():
        pipe.write(array.data.cast("B") if array.nbytes else b"")
    pipe.flush()


def read_message(pipe: BinaryIO) -> Message | None:
    """Wait for the next message; None at the end of the pipe.

    Raises
    ------
    GarbledError
        If anything else came.
    """
    head = pipe.read(_HEAD.size)
    if not head:
        return None
    if len(head) < _HEAD.size:
        raise GarbledError("the pipe ended inside a message")
    mark, text_size, size = _HEAD.unpack(head)
    if mark != _MARK or text_size > _MOST_TEXT or size > _MOST_BYTES:
        raise GarbledError("something else than a message came")
    text, body = pipe.read(text_size), pipe.read(size)
    if len(text) < text_size or len(body) < size:
        raise GarbledError("the pipe ended inside a message")
    try:
        content = json.loads(text)
        arrays = _arrays(content["arrays"], body)
        return Message(kind=MessageKind(content["kind"]), values=content["values"], arrays=arrays)
    except (ValueError, KeyError, TypeError, RecursionError) as error:
        raise GarbledError(f"a message without sense came ({error})") from None


def _arrays(forms: Mapping[str, Any], body: bytes) -> dict[str, NDArray[Any]]:
    arrays: dict[str, NDArray[Any]] = {}
    place = 0
    for name, (kind, shape) in forms.items():
        if kind not in _TYPES or any(length < 0 for length in shape):
            raise ValueError(f"unknown array {name}")
        count = math.prod(shape)
        array = np.frombuffer(body, dtype=kind, count=count, offset=place).reshape(shape)
        place += array.nbytes
        arrays[name] = array
    if place != len(body):
        raise ValueError("bytes left over")
    return arrays


def frames_message(pass_number: int, frames: Sequence[PoseFrame]) -> Message:
    """Return a message that holds frames of one pass."""
    return Message(
        kind=MessageKind.FRAMES,
        values={"pass": pass_number},
        arrays={
            "index": np.array([frame.index for frame in frames], dtype=np.int64),
            "time_s": np.array([frame.time_s for frame in frames], dtype=np.float64),
            "people": np.array([len(frame.points_px) for frame in frames], dtype=np.int64),
            "readable": np.array([frame.readable for frame in frames], dtype=np.uint8),
            "points_px": np.concatenate([frame.points_px for frame in frames]),
            "visibility": np.concatenate([frame.visibility for frame in frames]),
            "presence": np.concatenate([frame.presence for frame in frames]),
        },
    )


def frames_of(message: Message) -> list[PoseFrame]:
    """Return the frames of a message; their arrays are read-only.

    Raises
    ------
    GarbledError
        If the arrays do not fit together.
    """
    try:
        arrays = message.arrays
        counts = arrays["people"]
        after = np.cumsum(counts)
        people = int(after[-1]) if len(after) else 0
        same = {len(arrays[name]) for name in ("index", "time_s", "people", "readable")}
        fits = (
            len(same) == 1
            and bool((counts >= 0).all())
            and arrays["points_px"].shape == (people, LANDMARKS, 2)
            and arrays["visibility"].shape == (people, LANDMARKS)
            and arrays["presence"].shape == (people, LANDMARKS)
        )
    except (KeyError, TypeError) as error:
        raise GarbledError(f"frames without {error}") from None
    if not fits:
        raise GarbledError("frames whose arrays do not fit together")
    return [
        PoseFrame(
            index=int(arrays["index"][n]),
            time_s=float(arrays["time_s"][n]),
            points_px=arrays["points_px"][end - count : end],
            visibility=arrays["visibility"][end - count : end],
            presence=arrays["presence"][end - count : end],
            readable=bool(arrays["readable"][n]),
        )
        for n, (count, end) in enumerate(zip(counts.tolist(), after.tolist(), strict=True))
    ]


def message_of_job(job: ClipJob) -> Message:
    """Return a job as a message."""
    return Message(
        kind=MessageKind.JOB,
        values={
            "clip": os.fspath(job.clip),
            "folder": os.getcwd(),
            "passes": [[each.quality.value, each.mirrored] for each in job.passes],
            "rate_hz": job.rate_hz,
            "windows": job.windows,
            "quarter_turns": job.quarter_turns,
            "already_mirrored": job.already_mirrored,
            "alone": job.alone,
            "fine": job.fine,
            "decimation": job.decimation,
        },
    )


def job_of(message: Message) -> ClipJob:
    """Return the job that a message holds."""
    values = dict(message.values)
    windows = values.pop("windows")
    del values["folder"]
    return ClipJob(
        clip=Path(values.pop("clip")),
        passes=tuple(
            InferencePass(quality=ModelQuality(quality), mirrored=mirrored)
            for quality, mirrored in values.pop("passes")
        ),
        windows=None if windows is None else tuple((start, end) for start, end in windows),
        decimation=tuple((start, end, every) for start, end, every in values.pop("decimation")),
        **values,
    )


def message_of_info(facts: ClipInfo) -> Message:
    """Return the message that ends a job well."""
    values = {each.name: getattr(facts, each.name) for each in fields(ClipInfo)}
    return Message(kind=MessageKind.DONE, values=values)


def info_of(message: Message) -> ClipInfo:
    """Return the facts that a message holds."""
    return ClipInfo(**{**message.values, "notes": tuple(message.values["notes"])})


def error_message(error: Exception) -> Message:
    """Return the message that ends a job badly."""
    text = str(error)
    if _is_lack_of_memory(error):
        text = "the pose process had too little memory; close other programs"
    elif not isinstance(error, ThawlineError):
        text = f"the pose process failed ({type(error).__name__}: {text})"
    name = next((name for name, each in _ERRORS.items() if isinstance(error, each)), "")
    return Message(kind=MessageKind.ERROR, values={"class": name, "text": text[:2000]})


def _is_lack_of_memory(error: Exception) -> bool:
    """Tell whether the system gave no memory; the video library has its own way to say so."""
    return isinstance(error, MemoryError) or "Insufficient memory" in str(error)


def error_of(message: Message) -> ThawlineError:
    """Return the error that a message holds."""
    kind = _ERRORS.get(message.values["class"], PoseProcessError)
    return kind(message.values["text"])


#: Errors that keep their class on the way; others arrive as PoseProcessError.
_ERRORS: Mapping[str, type[ThawlineError]] = {
    each.__name__: each for each in (ClipError, ModelError, PoseProcessError)
}
