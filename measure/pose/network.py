"""The pose network: people detected in one frame after the other. The only importer of mediapipe.

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

#: People that the network is asked for: one more than is measured, to notice a second. [project]
PEOPLE_ASKED_FOR = 2

#: Distance in time that the network is given between frames of a fine pass, milliseconds: what was
#: before has no weight in its smoothing then. [project]
_APART_MS = 1_000_000

#: Share of each run's visibility that the library takes when asked for one person, the rest being
#: that of earlier runs, however long ago; measured by running the same frames for one and for two
#: people. [project]
_NEW_SHARE = 0.1

#: Pause after which a fine pass warms up anew, seconds. Frames of a rest lie half a second apart,
#: and are no pause. [project]
_PAUSE_S = 0.7


@dataclass(frozen=True, slots=True, kw_only=True)
class DetectedPoses:
    """The people detected in one frame, in no fixed order.

    Attributes
    ----------
    places
        Shape (people, 33, 2), fractions of the frame: (0, 0) its upper left corner, (1, 1)
        its lower right corner; may lie outside.
    visibility, presence
        Shape (people, 33), 0..1 as the network says of this frame; NaN where it says nothing
        sensible.
    """

    places: FloatArray
    visibility: FloatArray
    presence: FloatArray


class PoseNetwork:
    """One instance of the network, for frames that follow each other in time.

    It remembers the last frame, so another clip, a jump in time or a mirrored
    pass needs a new one. It has to be closed, on the thread that made it: left to the garbage
    collector it can block the whole process.

    Parameters
    ----------
    bundle
        The model's bytes.
    people
        How many it searches for.
    fine
        True for places that do not depend on the frame rate: they are not smoothed over time, and a
        frame in which a person appears, or that follows a pause, is run :data:`WARMUP_RUNS`
        times. The network crops the frame to where it detected the body last, and needs some runs
        until that crop sits well; till then
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
        """Detect people in the next frame.

        Parameters
        ----------
        rgb
            Shape (height, width, 3), contiguous, as :class:`measure.video.frame.Picture` holds it.
        time_s
            The frame's own time. The network smooths by it, unless the pass is a fine one;
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
        poses = self._run_once(rgb, time_s)
        if self._fine:
            paused = self._follows and time_s - self._last_s > _PAUSE_S
            if paused or (len(poses.places) and not self._follows):
                for _ in range(WARMUP_RUNS - 1):
                    again = self._run_once(rgb, time_s)
                    poses = again if len(again.places) else poses
            self._follows, self._last_s = bool(len(poses.places)), time_s
        return poses

    def _run_once(self, rgb: PixelArray, time_s: float) -> DetectedPoses:
        """Run the library once."""
        self._last_ms = (
            self._last_ms + _APART_MS if self._fine else next_millisecond(self._last_ms, time_s)
        )
        try:
            detected = self._native.detect_for_video(
                mp.Image(image_format=mp.ImageFormat.SRGB, data=rgb), self._last_ms
            )
        except (RuntimeError, ValueError) as error:
            raise PoseProcessError(f"The pose network failed: {_first_line(error)}.") from None
        people = _detected_poses(detected.pose_landmarks)
        return (
            self._with_unsmoothed_visibility(people)
            if self._alone and len(people.places)
            else people
        )

    def _with_unsmoothed_visibility(self, person: DetectedPoses) -> DetectedPoses:
        """Return the person with the visibility of the last run alone, not of all before it."""
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
