"""The network: a picture in, the people it found out. The only importer of mediapipe.

The library tries to report usage to its maker's servers and has no switch for it. It honours
the usual proxy variables, so they are set to a closed port of this computer before it is
imported: nothing can leave. Import this module in the pose process only.
"""

import os
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from types import TracebackType
from typing import Any, Self

import numpy as np

from measure.domain.landmarks import LANDMARKS, FloatArray
from measure.errors import ModelError, PoseProcessError
from measure.pose.jobs import WARMUP_RUNS
from measure.video.frame import PixelArray

#: Port 9 of this computer, where nothing listens.
_NOWHERE = "http://127.0.0.1:9"
_PROXY_NAMES = ("http_proxy", "https_proxy", "all_proxy", "ftp_proxy")


def close_way_out() -> None:
    """Point every proxy variable of this process at a closed port of this computer."""
    for name in _PROXY_NAMES:
        os.environ[name] = _NOWHERE
        os.environ[name.upper()] = _NOWHERE
    for name in ("no_proxy", "NO_PROXY"):
        os.environ.pop(name, None)


close_way_out()

import mediapipe as mp  # type: ignore[import-untyped]  # noqa: E402 - the way out first
from mediapipe.tasks.python import vision  # type: ignore[import-untyped]  # noqa: E402

#: How many people the network is asked for: one more than is measured, to notice a second.
PEOPLE_ASKED_FOR = 2
#: For careful looks the network is told that pictures lie so far apart, milliseconds: what was
#: before has no weight in its smoothing then. Ours.
_APART_MS = 1_000_000
#: Asked for one person, the library takes this share of each look's visibility and the rest from
#: what it said before, however long ago; found by looking at the same pictures for one and for two.
_NEW_SHARE = 0.1
#: After a pause longer than this, seconds, careful looks find their way anew. Pictures of a rest
#: lie half a second apart, and are no pause. Ours.
_PAUSE_S = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class DetectedPoses:
    """The people found in one picture, in no fixed order.

    Attributes
    ----------
    places
        Shape (people, 33, 2), fractions of the picture: (0, 0) its upper left corner, (1, 1)
        its lower right corner; may lie outside.
    visibility, presence
        Shape (people, 33), 0..1 as the network says of this picture; NaN where it says nothing
        sensible.
    """

    places: FloatArray
    visibility: FloatArray
    presence: FloatArray


class PoseNetwork:
    """One run of the network over pictures that follow each other in time.

    It remembers the last picture, so a new run (another clip, a jump in time, a mirrored
    pass) needs a new one. It has to be closed, on the thread that made it: left to the garbage
    collector it can block the whole process.

    Parameters
    ----------
    bundle
        The model's bytes.
    people
        How many it looks for.
    careful
        True for places that do not depend on the pace: they are not smoothed over time, and a
        picture in which somebody is found anew, or that follows a pause, is looked at
        :data:`WARMUP_RUNS` times. The network looks at a part of the picture that it takes from
        where it saw the body last, and needs some looks until that part sits well; till then
        places are off by some hundredths of the trunk.
    """

    opened = 0
    closed = 0

    def __init__(
        self, bundle: bytes, people: int = PEOPLE_ASKED_FOR, *, fine: bool = False
    ) -> None:
        options = vision.PoseLandmarkerOptions(
            base_options=mp.tasks.BaseOptions(
                **_asset(bundle), delegate=mp.tasks.BaseOptions.Delegate.CPU
            ),
            running_mode=vision.RunningMode.VIDEO,
            num_poses=people,
        )
        try:
            self._native = vision.PoseLandmarker.create_from_options(options)
        except OSError as error:
            # The native library is loaded here, and wants libEGL and libGLESv2 on Linux.
            raise ModelError(
                f"The pose library could not be loaded ({_first_line(error)}). Run "
                "`thawline check`: it names the system libraries that are missing."
            ) from None
        except (RuntimeError, ValueError) as error:
            raise ModelError(
                f"The pose model could not be loaded ({_first_line(error)}). "
                "Run `thawline model` to check it and fetch it again."
            ) from None
        self._is_open = True
        self._alone = people == 1
        self._fine = fine
        self._follows = False
        self._smoothed: FloatArray | None = None
        self._last_ms = -1
        self._last_s = 0.0
        PoseNetwork.opened += 1

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def detect(self, rgb: PixelArray, time_s: float) -> DetectedPoses:
        """Find people in the next picture.

        Parameters
        ----------
        rgb
            Shape (height, width, 3), contiguous, as :class:`measure.video.frame.Picture` holds it.
        time_s
            The picture's own time. The network smooths by it, unless the look is a careful one;
            it gets whole milliseconds that always increase, whatever is given here.

        Raises
        ------
        PoseProcessError
            If the network fails; it then has to be closed and made anew.
        """
        if not self._is_open:
            raise PoseProcessError("The pose network was used after it had been closed.")
        if rgb.dtype != np.uint8 or rgb.ndim != 3 or not rgb.flags.c_contiguous:
            raise PoseProcessError("A picture that had not passed the frame gate was refused.")
        found = self._run_once(rgb, time_s)
        if self._fine:
            paused = self._follows and time_s - self._last_s > _PAUSE_S
            if paused or (len(found.places) and not self._follows):
                for _ in range(WARMUP_RUNS - 1):
                    again = self._run_once(rgb, time_s)
                    found = again if len(again.places) else found
            self._follows, self._last_s = bool(len(found.places)), time_s
        return found

    def _run_once(self, rgb: PixelArray, time_s: float) -> DetectedPoses:
        """Let the library look once."""
        self._last_ms = (
            self._last_ms + _APART_MS if self._fine else next_millisecond(self._last_ms, time_s)
        )
        try:
            found = self._native.detect_for_video(
                mp.Image(image_format=mp.ImageFormat.SRGB, data=rgb), self._last_ms
            )
        except (RuntimeError, ValueError) as error:
            raise PoseProcessError(f"The pose network failed: {_first_line(error)}.") from None
        people = _detected_poses(found.pose_landmarks)
        return (
            self._with_unsmoothed_visibility(people)
            if self._alone and len(people.places)
            else people
        )

    def _with_unsmoothed_visibility(self, person: DetectedPoses) -> DetectedPoses:
        """Return the person with the visibility of the last look alone, not of all before it."""
        smoothed, self._smoothed = self._smoothed, person.visibility
        if smoothed is None:
            return person
        kept = 1 - _NEW_SHARE
        return replace(
            person,
            visibility=np.clip((person.visibility - kept * smoothed) / _NEW_SHARE, 0.0, 1.0),
        )

    def close(self) -> None:
        """End the run. Closing twice does nothing; a failed network closes without an error."""
        if not self._is_open:
            return
        self._is_open = False
        PoseNetwork.closed += 1
        try:
            self._native.close()
        except (RuntimeError, ValueError) as error:
            # A failed graph reports its old error again when it is closed.
            self._native._handle = None
            os.write(2, f"closing the network: {_first_line(error)}\n".encode())


@cache
def _asset(bundle: bytes) -> dict[str, Any]:
    """Return the model as the library takes it: on Linux a file in memory.

    From a file the library makes a network in half the time; it copies bytes several times. The
    file is no path of the disk, so what was checked is what is read, and it goes with the process.
    """
    if hasattr(os, "memfd_create") and os.path.isdir("/proc/self/fd"):
        kept = os.memfd_create("pose model")
        with os.fdopen(os.dup(kept), "wb") as file:
            file.write(bundle)
        return {"model_asset_path": f"/proc/self/fd/{kept}"}
    return {"model_asset_buffer": bundle}


def _detected_poses(people: Sequence[Any]) -> DetectedPoses:
    """Return the library's landmarks of each person as arrays."""
    values = np.array(
        [
            [(mark.x, mark.y, mark.visibility, mark.presence) for mark in person]
            for person in people
        ],
        dtype=np.float64,  # None becomes NaN
    ).reshape(len(people), LANDMARKS, 4)
    return DetectedPoses(
        places=values[:, :, :2],
        visibility=_sensible(values[:, :, 2]),
        presence=_sensible(values[:, :, 3]),
    )


def next_millisecond(last_ms: int, time_s: float) -> int:
    """Return the time in whole milliseconds, moved up to stay above the last one."""
    wanted = round(time_s * 1000.0) if np.isfinite(time_s) else 0
    return max(last_ms + 1, wanted)


def _sensible(confidence: FloatArray) -> FloatArray:
    """Return confidences with everything outside 0..1 as NaN."""
    with np.errstate(invalid="ignore"):
        good = (confidence >= 0.0) & (confidence <= 1.0)
    return np.where(good, confidence, np.nan)


def _first_line(error: Exception) -> str:
    lines = str(error).strip().splitlines() or [type(error).__name__]
    return lines[0][:200].rstrip(" :.")
