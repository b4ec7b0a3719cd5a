"""Pictures kept in memory that the pose process looks at, and how they travel to it.

They have been through the frame gate before and are handed on as they are.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from measure.pose.jobs import InferencePass
from measure.pose.messages import GarbledError, Message, MessageKind
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import PixelArray

#: Bytes of pictures that travel in one message, about. Ours.
_TOGETHER_BYTES = 8 << 20


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptPicture:
    """An analysed picture and where it belongs in its source.

    Attributes
    ----------
    rgb
        As :class:`measure.video.frame.Picture` holds it.
    index, time_s
        Number and time of its frame.
    window
        Number of the span of time that it belongs to. Every span starts without memory of
        what came before.
    """

    rgb: PixelArray
    index: int
    time_s: float
    window: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureJob:
    """Pictures to be looked at.

    Attributes
    ----------
    passes
        At least one, each once.
    pictures
        In order of time, all of one size.
    width_px, height_px
        Size that results are given in, see :class:`measure.video.frame.Picture`.
    alone
        As in :class:`measure.pose.jobs.ClipJob`.
    """

    passes: tuple[InferencePass, ...]
    pictures: tuple[KeptPicture, ...]
    width_px: int
    height_px: int
    alone: bool = False

    def __post_init__(self) -> None:
        if not self.passes or len(set(self.passes)) != len(self.passes):
            raise ValueError("a job needs at least one pass, and each only once")
        if len({each.rgb.shape for each in self.pictures}) != 1:
            raise ValueError("a job needs pictures, all of one size")


def messages_of_pictures(job: PictureJob) -> Iterator[Message]:
    """Yield the messages that hold a job: one that says how many follow, then those."""
    each_bytes = job.pictures[0].rgb.nbytes
    together = max(1, _TOGETHER_BYTES // each_bytes)
    parts = [
        job.pictures[start : start + together] for start in range(0, len(job.pictures), together)
    ]
    yield Message(
        kind=MessageKind.PICTURES,
        values={
            "passes": [[each.quality.value, each.mirrored] for each in job.passes],
            "width_px": job.width_px,
            "height_px": job.height_px,
            "alone": job.alone,
            "parts": len(parts),
        },
    )
    for part in parts:
        yield _part(part)


def _part(pictures: Sequence[KeptPicture]) -> Message:
    return Message(
        kind=MessageKind.PICTURES,
        arrays={
            "rgb": np.stack([each.rgb for each in pictures]),
            "index": np.array([each.index for each in pictures], dtype=np.int64),
            "time_s": np.array([each.time_s for each in pictures], dtype=np.float64),
            "window": np.array([each.window for each in pictures], dtype=np.int64),
        },
    )


def pictures_of(first: Message, next_message: Callable[[], Message]) -> PictureJob:
    """Return the job whose first message came; the others are asked for.

    Raises
    ------
    GarbledError
        If something else came between them.
    """
    values = first.values
    pictures: list[KeptPicture] = []
    for _ in range(values["parts"]):
        part = next_message()
        if part.kind is not MessageKind.PICTURES or "rgb" not in part.arrays:
            raise GarbledError("other orders came between pictures")
        arrays = part.arrays
        pictures += [
            KeptPicture(
                rgb=rgb,
                index=int(arrays["index"][n]),
                time_s=float(arrays["time_s"][n]),
                window=int(arrays["window"][n]),
            )
            for n, rgb in enumerate(arrays["rgb"])
        ]
    return PictureJob(
        passes=tuple(
            InferencePass(quality=ModelQuality(quality), mirrored=mirrored)
            for quality, mirrored in values["passes"]
        ),
        pictures=tuple(pictures),
        width_px=values["width_px"],
        height_px=values["height_px"],
        alone=values["alone"],
    )
