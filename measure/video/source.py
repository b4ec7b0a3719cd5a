"""Sources of frames: recorded clips decoded through OpenCV's FFmpeg backend.

A :class:`FrameSource` gives frames one after the other with each frame's own time, and what the
clip states about itself. Reading a clip to its end, gaps and damage included, is
:mod:`measure.video.reader`.
"""

import math
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from measure.errors import ClipError, InputError
from measure.message import TranslatableMessage
from measure.video.container import check_clip
from measure.video.frame import check_size

#: Lowest and highest frame rate that is believed, frames a second. [project]
_BELIEVABLE_FPS = (1.0, 1000.0)

#: Largest number of frames that is believed: a day at 100 frames a second. [project]
_BELIEVABLE_FRAMES = 8_640_000

#: Frame rate of a clip with neither times nor a believable rate, frames a second. [project]
_ASSUMED_FPS = 30.0

#: Frames read to find out whether a clip carries times at all. [project]
_PROBED_FRAMES = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceFacts:
    """Properties that a source states; hints unless described otherwise.

    Attributes
    ----------
    width_px, height_px
        Size of the frames as they are delivered, after rotation, before any stretching.
    stated_fps
        Frames a second as the file states them, or None if not believable.
    stated_frames
        Number of frames as the file states it, or None if not believable. For the progress
        bar only.
    backend
        Decoder and its version.
    rotation_deg
        Clockwise turn that the decoder applied because the file's tag asks for it.
    sample_aspect
        Width over height of a delivered frame's pixel (inverted already for a quarter turn).
    deep_colour
        True when the clip has more than 8 bits a colour, which are cut down to 8.
    times_known
        False when the file carries no times; they are then counted from the stated rate.
    """

    width_px: int
    height_px: int
    stated_fps: float | None
    stated_frames: int | None
    backend: str
    rotation_deg: int = 0
    sample_aspect: float = 1.0
    deep_colour: bool = False
    times_known: bool = True

    @property
    def stated_duration_s(self) -> float | None:
        """Length of the clip as stated, seconds."""
        if self.stated_fps is None or self.stated_frames is None:
            return None
        return self.stated_frames / self.stated_fps


class FrameSource(Protocol):
    """Frames one after the other. Used and closed on one thread."""

    @property
    def facts(self) -> SourceFacts: ...

    def grab(self) -> bool:
        """Go to the next frame; False if it could not be decoded or there is none."""

    def time_s(self) -> float:
        """Return the own time of the frame last grabbed, from any zero."""

    def retrieve(self) -> NDArray[Any] | None:
        """Return the frame last grabbed, shape (h, w, 3) blue-green-red uint8, or None."""

    def close(self) -> None: ...


def open_clip(clip: Path) -> FrameSource:
    """Open a recorded clip.

    Raises
    ------
    ClipError
        The file is no clip that can be read; the text says why.
    """
    check_clip(clip)
    probe = _OpenCvClip(clip, times_known=True)
    try:
        times = [probe.time_s() for _ in range(_PROBED_FRAMES) if probe.grab()]
    finally:
        probe.close()
    times_known = len(times) < 2 or (all(map(math.isfinite, times)) and len(set(times)) > 1)
    return _OpenCvClip(clip, times_known=times_known)


class _OpenCvClip:
    """A clip decoded by OpenCV's own FFmpeg, which turns frames by the rotation tag itself."""

    def __init__(self, clip: Path, *, times_known: bool) -> None:
        # Nothing but local files, whatever a container's content asks for.
        os.environ.setdefault("OPENCV_FFMPEG_CAPTURE_OPTIONS", "protocol_whitelist;file")
        import cv2

        self._capture = cv2.VideoCapture()
        self._capture.setExceptionMode(False)
        self._times_known = times_known
        self._grabbed = -1
        # An absolute path: FFmpeg would take "name:rest" for an address.
        opened = self._capture.open(os.path.abspath(clip), cv2.CAP_FFMPEG)
        if not opened:
            raise ClipError(
                TranslatableMessage(
                    "The clip {clip} contains no pictures that can be decoded: its beginning is "
                    "damaged, it has sound only, or it uses an unknown codec. Convert the "
                    "video to H.264.",
                    {"clip": clip.name},
                )
            )
        try:
            self._facts = self._stated_facts()
            check_size(self._facts.width_px, self._facts.height_px)
        except InputError as error:
            self.close()
            raise ClipError(
                TranslatableMessage(
                    "The clip {clip}: {error}", {"clip": clip.name, "error": error.message}
                )
            ) from None

    @property
    def facts(self) -> SourceFacts:
        return self._facts

    def grab(self) -> bool:
        grabbed = bool(self._capture.grab())
        self._grabbed += grabbed
        return grabbed

    def time_s(self) -> float:
        import cv2

        if self._times_known:
            return float(self._capture.get(cv2.CAP_PROP_POS_MSEC)) / 1000.0
        return self._grabbed / (self._facts.stated_fps or _ASSUMED_FPS)

    def retrieve(self) -> NDArray[Any] | None:
        retrieved, frame = self._capture.retrieve()
        return np.asarray(frame) if retrieved and frame is not None else None

    def close(self) -> None:
        self._capture.release()

    def _stated_facts(self) -> SourceFacts:
        import cv2

        stated = self._capture.get
        # The tag says how far the stored frame is to be turned; OpenCV has done it already.
        self._capture.set(cv2.CAP_PROP_ORIENTATION_AUTO, 1)
        turned = round(_number(stated(cv2.CAP_PROP_ORIENTATION_META))) % 360
        aspect = _aspect(stated(cv2.CAP_PROP_SAR_NUM), stated(cv2.CAP_PROP_SAR_DEN))
        fps = _number(stated(cv2.CAP_PROP_FPS))
        frames = _number(stated(cv2.CAP_PROP_FRAME_COUNT))
        return SourceFacts(
            width_px=round(_number(stated(cv2.CAP_PROP_FRAME_WIDTH))),
            height_px=round(_number(stated(cv2.CAP_PROP_FRAME_HEIGHT))),
            stated_fps=fps if _BELIEVABLE_FPS[0] <= fps <= _BELIEVABLE_FPS[1] else None,
            stated_frames=round(frames) if 0 < frames <= _BELIEVABLE_FRAMES else None,
            backend=f"{self._capture.getBackendName()} in OpenCV {cv2.__version__}",
            rotation_deg=turned,
            sample_aspect=1 / aspect if turned % 180 == 90 else aspect,
            deep_colour=_is_deep(stated(cv2.CAP_PROP_CODEC_PIXEL_FORMAT)),
            times_known=self._times_known,
        )


def _number(value: float) -> float:
    return value if math.isfinite(value) else 0.0


def _aspect(wide: float, high: float) -> float:
    """Return a pixel's width over its height; 1 where the file does not say."""
    return wide / high if _number(wide) > 0 and _number(high) > 0 else 1.0


def _is_deep(pixel_format: float) -> bool:
    """Return whether FFmpeg's code of a pixel format stands for more than 8 bits a colour.

    Its last byte is the depth of a deep format, and a letter otherwise.
    """
    return round(_number(pixel_format)) >> 24 in (9, 10, 12, 14, 16)
