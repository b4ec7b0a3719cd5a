"""A stand-in for the pose process: a "clip" is a small text that says what its arm does.

The text is JSON with movement, side, view and the angle held; anything else is a broken clip.
The frames are those of the stick figure, chosen as a real clip's would be; every pass sees the
arm a little otherwise. Run by itself, as the pose process is.
"""

import json
import os
import signal
import sys
import time
from pathlib import Path

import numpy as np
import numpy.typing as npt

from measure.domain.landmarks import FloatArray, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import ClipInfo, ClipJob
from measure.pose.message_pipe import Message, read_message, write_message
from measure.pose.messages import (
    CLIP_ORDERS,
    Done,
    Failed,
    JobProgress,
    LoadModel,
    PoseFrames,
    Ready,
)
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from measure.video.sampling import Decimator
from tests.support.stick_figure import elevation_track, raise_and_hold

#: How the stand-in is started.
COMMAND = (sys.executable, "-P", "-m", "tests.support.scripted_arm")
FPS = 30.0

#: Bundles that nobody opens; their hashes still tell them apart.
MODELS = ModelSet(
    name="heavy",
    bundles={
        quality: Bundle(quality=quality, sha256=digit * 64, path=Path(f"{quality}"), content=b"x")
        for quality, digit in ((ModelQuality.FULL, "a"), (ModelQuality.HEAVY, "b"))
    },
)


def write_clip(
    path: Path,
    movement: Movement = Movement.FLEXION,
    side: Side = Side.LEFT,
    peak: float = 100.0,
    **more: object,
) -> Path:
    """Write a "clip".

    `more` may hold view, slow_s (seconds for each look), crash, and flickers_until_s: asked for
    two people, the stand-in sees nobody in two of three frames before that; with nobody, ever.
    """
    content = {"movement": movement, "side": side, "peak": peak, **more}
    path.write_text(json.dumps(content), encoding="utf-8")
    return path


def say(message: Message) -> None:
    write_message(sys.stdout.buffer, message)


def serve(job: ClipJob) -> Message:
    try:
        text = json.loads(job.clip.read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return Failed.of(ClipError(f"The clip {job.clip.name} is broken."))
    if text.get("crash"):
        os.kill(os.getpid(), signal.SIGSEGV)
    time.sleep(text.get("slow_s", 0.0))
    movement, side = Movement(text["movement"]), Side(text["side"])
    view = View(text.get("view", "front" if movement is Movement.ABDUCTION else "side"))
    for number, one in enumerate(job.passes):
        shift = 0.4 * (one.quality is ModelQuality.HEAVY) + 0.2 * one.mirrored
        series = raise_and_hold(text["peak"] + shift, rate_hz=FPS)
        track = elevation_track(series, movement, side, view, rate_hz=FPS, trunk_px=110)
        chosen = _chosen(track.time_s, job)
        flickers = np.arange(len(chosen)) % 3 > 0
        flickers &= track.time_s[chosen] < text.get("flickers_until_s", 0.0)
        seen = (job.alone | ~flickers) & (not text.get("nobody", False))
        frames = [
            PoseFrame(
                index=int(n),
                time_s=float(track.time_s[n]),
                points_px=track.points_px[n][None][: int(there)],
                visibility=track.visibility[n][None][: int(there)],
                presence=track.presence[n][None][: int(there)],
            )
            for n, there in zip(chosen, seen, strict=True)
        ]
        say(PoseFrames.of(number, frames))
        say(JobProgress(share=(number + 1) / len(job.passes)))
    return Done(
        info=ClipInfo(
            width_px=640,
            height_px=480,
            frames_read=len(series),
            frames_expected=len(series),
            frames_unreadable=0,
            duration_s=(len(series) - 1) / FPS,
            measured_fps=FPS,
            backend="script",
            rotation_deg=0,
            sample_aspect=1.0,
        )
    )


def _chosen(time_s: FloatArray, job: ClipJob) -> npt.NDArray[np.int_]:
    step = 1 if job.rate_hz is None else round(FPS / job.rate_hz)
    chosen = np.arange(0, len(time_s), step)
    if job.windows is not None:
        inside = [(time_s[chosen] >= start) & (time_s[chosen] <= end) for start, end in job.windows]
        chosen = chosen[np.any(inside, axis=0)]
    thinning = Decimator(job.decimation)
    return np.array([n for n in chosen.tolist() if thinning.takes(float(time_s[n]))], dtype=int)


def main() -> None:
    say(Ready())
    while (order := read_message(sys.stdin.buffer, CLIP_ORDERS)) is not None:
        if isinstance(order, LoadModel):
            if order.is_last:
                say(Ready())
        else:
            os.chdir(order.folder)
            say(serve(order.job))


if __name__ == "__main__":
    main()
