"""Messages that workers and their supervisors exchange: models, jobs, results.

Those of the live worker alone are in :mod:`measure.live.messages`.
"""

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import Any, Self

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import LANDMARKS, FloatArray, IntArray
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, ModelError, PoseProcessError, ThawlineError
from measure.message import TranslatableMessage
from measure.pose.jobs import ClipInfo, ClipJob, KeptPicture, PictureJob
from measure.pose.message_pipe import GarbledError, Message, Text, decoder_of
from measure.pose_models.catalogue import ModelQuality

#: Size of the frames that travel in one message, about, bytes. [technical]
_BATCH_BYTES = 8 << 20

#: Size of a part of a model, bytes. [technical]
_PART_BYTES = 1 << 20

#: Longest text of an error, characters. [technical]
_MOST_TEXT = 2000


class LoadModel(Message, frozen=True, kw_only=True, tag="model"):
    """To a worker: a part of a model to use from now on; READY answers the last part."""

    quality: ModelQuality
    content: bytes
    is_last: bool

    @property
    def size_hint(self) -> int:
        return len(self.content) + 256


class RunClip(Message, frozen=True, kw_only=True, tag="clip"):
    """To the clip worker: a clip; its path may be relative to the folder."""

    job: ClipJob
    folder: Path


class RunPictures(Message, frozen=True, kw_only=True, tag="pictures"):
    """To the clip worker: a job with its first frames; so many batches of further ones follow."""

    job: PictureJob
    batches: int

    @property
    def size_hint(self) -> int:
        return _size_of(self.job.pictures)


class PictureBatch(Message, frozen=True, kw_only=True, tag="picture-batch"):
    """To the clip worker: further frames of a job."""

    pictures: tuple[KeptPicture, ...]

    @property
    def size_hint(self) -> int:
        return _size_of(self.pictures)


class Ready(Message, frozen=True, tag="ready"):
    """From a worker: it has started, or has taken a model."""


class Alive(Message, frozen=True, tag="alive"):
    """From a worker: it is at work and has no news."""


class JobProgress(Message, frozen=True, kw_only=True, tag="progress"):
    """From the clip worker: the share of the job that is done, 0..1."""

    share: float


class PoseFrames(Message, frozen=True, kw_only=True, tag="frames"):
    """From the clip worker: frames of one pass, their arrays joined.

    Attributes
    ----------
    people
        Shape (frames,), how many people of the joined arrays belong to each frame.
    readable
        Shape (frames,), 0 for a frame that could not be analysed.
    points_px, visibility, presence
        Shape (people, 33, 2) and (people, 33), of all frames one after the other.
    """

    pass_number: int
    index: IntArray
    time_s: FloatArray
    people: IntArray
    readable: NDArray[np.uint8]
    points_px: FloatArray
    visibility: FloatArray
    presence: FloatArray

    def __post_init__(self) -> None:
        people = int(self.people.sum())
        by_frame = {array.shape for array in (self.index, self.time_s, self.people, self.readable)}
        if (
            by_frame != {(len(self.people),)}
            or bool((self.people < 0).any())
            or not are_people(people, self.points_px, self.visibility, self.presence)
        ):
            raise GarbledError("frames whose arrays do not fit together")

    @classmethod
    def of(cls, pass_number: int, frames: Sequence[PoseFrame]) -> Self:
        """Return the message that holds frames of a pass, at least one."""
        return cls(
            pass_number=pass_number,
            index=np.array([frame.index for frame in frames], dtype=np.int64),
            time_s=np.array([frame.time_s for frame in frames], dtype=np.float64),
            people=np.array([len(frame.points_px) for frame in frames], dtype=np.int64),
            readable=np.array([frame.readable for frame in frames], dtype=np.uint8),
            points_px=np.concatenate([frame.points_px for frame in frames]),
            visibility=np.concatenate([frame.visibility for frame in frames]),
            presence=np.concatenate([frame.presence for frame in frames]),
        )

    def frames(self) -> list[PoseFrame]:
        """Return the frames; their arrays are views of the joined ones."""
        ends = np.cumsum(self.people).tolist()
        return [
            PoseFrame(
                index=index,
                time_s=time_s,
                points_px=self.points_px[end - count : end],
                visibility=self.visibility[end - count : end],
                presence=self.presence[end - count : end],
                readable=bool(readable),
            )
            for index, time_s, count, end, readable in zip(
                self.index.tolist(),
                self.time_s.tolist(),
                self.people.tolist(),
                ends,
                self.readable.tolist(),
                strict=True,
            )
        ]


class Done(Message, frozen=True, kw_only=True, tag="done"):
    """From the clip worker: the job is done; facts of the clip, if it was one."""

    info: ClipInfo | None = None


class Failed(Message, frozen=True, kw_only=True, tag="failed"):
    """From the clip worker: the job ended with an error."""

    error: str
    text: Text
    message: str = ""  # JSON of the message, where the text is one to translate

    @classmethod
    def of(cls, error: Exception) -> Self:
        """Return the message for an error; only some keep their class."""
        text = str(error)
        if _is_lack_of_memory(error):
            text = "the pose process had too little memory; close other programs"
        elif not isinstance(error, ThawlineError):
            text = f"the pose process failed ({type(error).__name__}: {text})"
        name = next((name for name, kind in _ERRORS.items() if isinstance(error, kind)), "")
        said = error.message if isinstance(error, ThawlineError) else ""
        message = json.dumps(_plain(said)) if said and len(text) <= _MOST_TEXT else ""
        return cls(error=name, text=Text(text[:_MOST_TEXT]), message=message)

    def exception(self) -> ThawlineError:
        """Return the error."""
        kind = _ERRORS.get(self.error, PoseProcessError)
        return kind(_message(json.loads(self.message)) if self.message else str(self.text))


def _plain(message: TranslatableMessage | str) -> Any:
    """Return a message as plain data: a text, or a template with its values."""
    if isinstance(message, str):
        return message
    return [message.template, {name: _plain(value) for name, value in message.values.items()}]


def _message(plain: Any) -> TranslatableMessage | str:
    if isinstance(plain, str):
        return plain
    template, values = plain
    return TranslatableMessage(template, {name: _message(value) for name, value in values.items()})


#: Errors that keep their class on the way; others arrive as PoseProcessError.
_ERRORS: Mapping[str, type[ThawlineError]] = {
    kind.__name__: kind for kind in (ClipError, ModelError, PoseProcessError)
}


def _is_lack_of_memory(error: Exception) -> bool:
    """Tell whether the system gave no memory; the video library has its own way to say so."""
    return isinstance(error, MemoryError) or "Insufficient memory" in str(error)


def are_people(
    people: int, points_px: FloatArray, visibility: FloatArray, presence: FloatArray
) -> bool:
    """Return whether arrays are those of so many people."""
    return (
        points_px.shape == (people, LANDMARKS, 2)
        and visibility.shape == (people, LANDMARKS)
        and presence.shape == (people, LANDMARKS)
    )


def model_orders(quality: ModelQuality, content: bytes) -> Iterator[LoadModel]:
    """Yield the orders that hold a model, in parts: one large buffer would take longer."""
    starts = range(0, max(1, len(content)), _PART_BYTES)
    for start in starts:
        part = content[start : start + _PART_BYTES]
        yield LoadModel(quality=quality, content=part, is_last=start == starts[-1])


def picture_orders(job: PictureJob) -> Iterator[Message]:
    """Yield the orders that hold a job, in batches of bounded size."""
    size = max(1, _BATCH_BYTES // job.pictures[0].rgb.nbytes)
    starts = range(size, len(job.pictures), size)
    yield RunPictures(job=replace(job, pictures=job.pictures[:size]), batches=len(starts))
    for start in starts:
        yield PictureBatch(pictures=job.pictures[start : start + size])


def _size_of(pictures: Sequence[KeptPicture]) -> int:
    return sum(picture.rgb.nbytes + 256 for picture in pictures) + 1024


#: What the clip worker takes, and what it answers.
CLIP_ORDERS = decoder_of(LoadModel | RunClip | RunPictures | PictureBatch)
CLIP_ANSWERS = decoder_of(Ready | Alive | JobProgress | PoseFrames | Done | Failed)
