"""Frame normalisation: decoded frames brought to the one form that the network accepts.

The form is upright, square pixels, red-green-blue, 8 bits, contiguous memory, bounded size.
Nothing else may build a :class:`Picture`. Mirrored copies are made here too, because a mirrored
*view* of an array has strides that the network's library ignores: it would read other memory
without an error.

Pixel coordinates everywhere have the centres of pixels at whole numbers, as in OpenCV: the left
edge of an image is at x = -0.5, its right edge at x = width - 0.5.
"""

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from measure.domain.landmarks import FloatArray
from measure.errors import InputError
from measure.message import TranslatableMessage

PixelArray = NDArray[np.uint8]

#: Longest side of analysed images, pixels; the network's input is 256 x 256 pixels of the person,
#: so more only costs time and memory. [project]
LONGEST_SIDE_PX = 1280

#: Shortest side of a frame that can hold a measurable person, pixels. [project]
SHORTEST_SIDE_PX = 32

#: Most pixels of a frame from a source, which bounds memory: 8K. [technical]
MOST_PIXELS = 7680 * 4320

#: Largest ratio of a pixel's sides, either way, that is believed. [project]
_MOST_STRETCH = 8.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """An image that the network may analyse.

    Attributes
    ----------
    rgb
        Shape (height, width, 3), contiguous, upright with square pixels, no side longer than
        :data:`LONGEST_SIDE_PX`.
    width_px, height_px
        Size of the same image before that limit; results are in its pixels.
    """

    rgb: PixelArray
    width_px: int
    height_px: int

    def mirrored(self) -> "Picture":
        """Return the mirror image as a contiguous copy."""
        return Picture(
            rgb=np.ascontiguousarray(self.rgb[:, ::-1]),
            width_px=self.width_px,
            height_px=self.height_px,
        )

    def pixels(self, fractions: FloatArray) -> FloatArray:
        """Return the pixels, in the full-size image, of points given as fractions of it.

        Parameters
        ----------
        fractions
            Shape (..., 2): 0 at the left or upper edge, 1 at the right or lower edge.
        """
        size = np.array([self.width_px, self.height_px], dtype=np.float64)
        return np.asarray(fractions, dtype=np.float64) * size - 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class FrameNormalizer:
    """Normalisation of the frames of one source.

    Attributes
    ----------
    sample_aspect
        Width of a frame's pixel over its height, as the frame is delivered (a source that has
        turned the frame gives the inverse after a quarter turn).
    quarter_turns
        Clockwise quarter turns, 0..3, that make the frame upright.
    already_mirrored
        True when the source delivers mirror images; they are turned back here.
    longest_side_px
        Limit of the analysed image.
    """

    sample_aspect: float = 1.0
    quarter_turns: int = 0
    already_mirrored: bool = False
    longest_side_px: int = LONGEST_SIDE_PX

    def __post_init__(self) -> None:
        if not 1 / _MOST_STRETCH <= self.sample_aspect <= _MOST_STRETCH:
            raise InputError(
                TranslatableMessage(
                    "According to the file, the pixels are {ratio} times as wide as high, which "
                    "is impossible. Convert the clip to square pixels.",
                    {"ratio": f"{self.sample_aspect:g}"},
                )
            )

    def upright_size(self, width_px: int, height_px: int) -> tuple[int, int]:
        """Return the width and height that a frame of the given size has when upright."""
        wide, high = self._square(width_px, height_px)
        return (high, wide) if self.quarter_turns % 2 else (wide, high)

    def _square(self, width_px: int, height_px: int) -> tuple[int, int]:
        """Return the size with square pixels: the short side of the pixels is stretched."""
        if self.sample_aspect >= 1:
            return round(width_px * self.sample_aspect), height_px
        return width_px, round(height_px / self.sample_aspect)

    def normalize(self, frame: NDArray[Any]) -> Picture:
        """Return the frame as an image that may be analysed.

        Parameters
        ----------
        frame
            Shape (h, w), (h, w, 1), (h, w, 3) blue-green-red or (h, w, 4) with alpha last;
            uint8, uint16 (full range) or floating (0..1). It is copied, never kept.

        Raises
        ------
        InputError
            The frame is none of these, or too small or too large.
        """
        import cv2

        _check_frame(frame)
        height, width = frame.shape[:2]
        wide, high = self._square(width, height)
        shrink = min(1.0, self.longest_side_px / max(wide, high))
        target = (max(1, round(wide * shrink)), max(1, round(high * shrink)))
        if target != (width, height):
            method = cv2.INTER_AREA if shrink < 1 else cv2.INTER_LINEAR
            frame = cv2.resize(np.ascontiguousarray(frame), target, interpolation=method)
        turned = np.rot90(_eight_bit(frame), k=-self.quarter_turns % 4)
        if self.already_mirrored:
            turned = turned[:, ::-1]
        upright = self.upright_size(width, height)
        return Picture(
            rgb=_red_green_blue(np.ascontiguousarray(turned)),
            width_px=upright[0],
            height_px=upright[1],
        )


def from_normalized(rgb: PixelArray, width_px: int, height_px: int) -> Picture:
    """Return the image of pixels that were normalised before and kept in memory.

    Parameters
    ----------
    rgb, width_px, height_px
        As they were in the :class:`Picture`.

    Raises
    ------
    InputError
        The array cannot come from a :class:`Picture`.
    """
    fits = rgb.dtype == np.uint8 and rgb.ndim == 3 and rgb.shape[2] == 3
    if not fits or max(rgb.shape) > max(LONGEST_SIDE_PX, width_px, height_px):
        raise InputError(
            TranslatableMessage(
                "A saved picture has the shape {shape} and cannot be used.",
                {"shape": str(rgb.shape)},
            )
        )
    return Picture(rgb=np.ascontiguousarray(rgb), width_px=width_px, height_px=height_px)


def _check_frame(frame: NDArray[Any]) -> None:
    has_known_shape = frame.ndim == 2 or (frame.ndim == 3 and frame.shape[2] in (1, 3, 4))
    if not has_known_shape:
        raise InputError(
            TranslatableMessage(
                "A picture has the shape {shape}, which is neither a colour nor a grey picture.",
                {"shape": str(frame.shape)},
            )
        )
    if frame.dtype not in (np.uint8, np.uint16, np.float32, np.float64):
        raise InputError(
            TranslatableMessage(
                "A picture has pixels of type {kind} and cannot be used.",
                {"kind": str(frame.dtype)},
            )
        )
    height, width = frame.shape[:2]
    check_size(width, height)


def check_size(width_px: int, height_px: int) -> None:
    """Check that frames of a size can be measured.

    Raises
    ------
    InputError
        The size is missing, too small or too large.
    """
    if min(width_px, height_px) < 1:
        raise InputError(TranslatableMessage("The size of the picture is missing or impossible."))
    if min(width_px, height_px) < SHORTEST_SIDE_PX:
        raise InputError(
            TranslatableMessage(
                "The picture is only {width} x {height} pixels. At least {least} each way "
                "are needed, 640 x 480 are better.",
                {"width": str(width_px), "height": str(height_px), "least": str(SHORTEST_SIDE_PX)},
            )
        )
    if width_px * height_px > MOST_PIXELS:
        raise InputError(
            TranslatableMessage(
                "The picture is {width} x {height} pixels, more than Thawline can read. Convert "
                "the clip to 1920 x 1080 or smaller.",
                {"width": str(width_px), "height": str(height_px)},
            )
        )


def _eight_bit(frame: NDArray[Any]) -> PixelArray:
    if frame.dtype == np.uint16:
        frame = frame >> 8
    elif frame.dtype != np.uint8:
        frame = np.round(np.clip(np.nan_to_num(frame), 0.0, 1.0) * 255.0)
    pixels: PixelArray = frame.astype(np.uint8, copy=False)
    return pixels


def _red_green_blue(frame: PixelArray) -> PixelArray:
    import cv2

    if frame.ndim == 2 or frame.shape[2] == 1:
        code = cv2.COLOR_GRAY2RGB
    elif frame.shape[2] == 4:
        code = cv2.COLOR_BGRA2RGB
    else:
        code = cv2.COLOR_BGR2RGB
    rgb: PixelArray = np.ascontiguousarray(cv2.cvtColor(frame, code), dtype=np.uint8)
    return rgb
