"""Framing hints: what to change about place and light, from how a person stands in the frame.

Lengths are shares of the frame's height. A standing person's trunk is about half a metre and
the raised hand ends one and a half trunks above the shoulders.
"""

from collections import deque

import numpy as np

from measure.domain.landmarks import FloatArray, Landmark
from measure.kinematics.angles import direction_deg, plane_from_pixels
from measure.live.events import SetupHint
from measure.video.frame import PixelArray

#: Trunk over the frame's height: too far below, too close above. [project]
_TRUNK = (0.14, 0.34)

#: Room that the raised hand needs above the shoulders, in trunk lengths. [project]
_ROOM_ABOVE = 1.35

#: Room below the hips, as a share of the frame's height. [project]
_ROOM_BELOW = 0.03

#: The middle of the person this far from the frame's middle, as a share of its width, is aside.
#: [project]
_ASIDE = 0.22

#: Shoulders' separation over the trunk from which the person faces the camera, or turns the back.
#: [project]
_FACING = 0.3

#: The trunk leaning by this, degrees, as the shoulders do, means a tilted camera. [project]
_TILTED_DEG = 5.0

#: Mean brightness, 0..255, that is dark. [project]
_DARK = 55.0
#: Mean brightness, 0..255, of a person in shadow, and of the bright room beside. [project]
_SHADOW, _BRIGHT = 60.0, 150.0

#: Hints are given when they hold for most of this time, seconds. [project]
_HOLDS_S = 0.8


class FramingAdvisor:
    """Gives hints that hold for a while, so that none flickers."""

    def __init__(self) -> None:
        self._late: deque[tuple[float, frozenset[SetupHint]]] = deque()

    def update(
        self,
        time_s: float,
        points_px: FloatArray | None,
        size_px: tuple[int, int],
        rgb: PixelArray | None,
    ) -> tuple[SetupHint, ...]:
        """Take a frame; return what to change, most important first."""
        hints = set(light_hints(rgb, points_px, size_px) if rgb is not None else ())
        if points_px is not None:
            hints.update(place_hints(points_px, size_px))
        self._late.append((time_s, frozenset(hints)))
        while self._late[0][0] < time_s - _HOLDS_S:
            self._late.popleft()
        most = len(self._late) / 2
        return tuple(
            hint for hint in SetupHint if sum(hint in recent for _, recent in self._late) > most
        )


def place_hints(points_px: FloatArray, size_px: tuple[int, int]) -> tuple[SetupHint, ...]:
    """Return what is wrong with distance, place and level of a person in the frame.

    Parameters
    ----------
    points_px
        Shape (33, 2).
    size_px
        Width and height of the frame that they belong to.
    """
    width, height = size_px
    left, right = points_px[Landmark.LEFT_SHOULDER], points_px[Landmark.RIGHT_SHOULDER]
    hips = points_px[[Landmark.LEFT_HIP, Landmark.RIGHT_HIP]]
    shoulder, hip = (left + right) / 2, hips.mean(axis=0)
    trunk = float(np.hypot(*(shoulder - hip))) / height
    if trunk <= 0.0:
        return ()
    hints: list[SetupHint] = []
    above = shoulder[1] / height - _ROOM_ABOVE * trunk
    below = 1.0 - float(hips[:, 1].max()) / height - _ROOM_BELOW
    if trunk > _TRUNK[1] or (above < 0 and below < 0):
        hints.append(SetupHint.STEP_BACK)
    elif trunk < _TRUNK[0]:
        hints.append(SetupHint.COME_CLOSER)
    elif above < 0:
        hints.append(SetupHint.RAISE_SCREEN)
    elif below < 0:
        hints.append(SetupHint.LOWER_SCREEN)
    separation = (right - left)[0] / (trunk * height)
    aside = float((shoulder[0] + hip[0]) / 2 / width - 0.5)
    if abs(aside) > _ASIDE and abs(separation) > _FACING:
        # Facing the camera, the frame's right is the person's left.
        to_left = (aside < 0) == (separation < 0)
        hints.append(SetupHint.STEP_LEFT if to_left else SetupHint.STEP_RIGHT)
    if _is_tilted(left, right, shoulder - hip, float(separation)):
        hints.append(SetupHint.LEVEL_CAMERA)
    return tuple(hints)


def _is_tilted(left: FloatArray, right: FloatArray, trunk: FloatArray, separation: float) -> bool:
    """Tell whether trunk and shoulder line lean the same way: then the camera is tilted."""
    if abs(separation) < _FACING:
        return False
    across = right - left if right[0] > left[0] else left - right
    lean = float(direction_deg(plane_from_pixels(trunk))) - 90.0
    slope = float(direction_deg(plane_from_pixels(across)))
    return lean * slope > 0 and min(abs(lean), abs(slope)) > _TILTED_DEG


def light_hints(
    rgb: PixelArray, points_px: FloatArray | None, size_px: tuple[int, int]
) -> tuple[SetupHint, ...]:
    """Return what is wrong with the light.

    Parameters
    ----------
    rgb
        The analysed frame; may be smaller than `size_px`.
    points_px
        Shape (33, 2), of the person in pixels of `size_px`, or None.
    """
    mean = float(rgb[::16, ::16].mean())
    if mean < _DARK:
        return (SetupHint.MORE_LIGHT,)
    if points_px is None:
        return ()
    scale = rgb.shape[1] / size_px[0]
    corners = [
        Landmark.LEFT_SHOULDER,
        Landmark.RIGHT_SHOULDER,
        Landmark.LEFT_HIP,
        Landmark.RIGHT_HIP,
        Landmark.NOSE,
    ]
    low = np.clip(points_px[corners].min(axis=0) * scale, 0, None).astype(int)
    high = np.ceil(points_px[corners].max(axis=0) * scale).astype(int)
    person = rgb[low[1] : high[1] : 4, low[0] : high[0] : 4]
    if person.size and float(person.mean()) < _SHADOW and mean > 2 * float(person.mean()):
        bright = float(np.percentile(rgb[::16, ::16], 75)) > _BRIGHT
        return (SetupHint.LIGHT_FROM_FRONT,) if bright else ()
    return ()
