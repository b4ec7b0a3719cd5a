"""A live process whose camera replays a clip's frames from memory, as fast as asked for.

Run as a module: ``python -m tests.bench.replay_camera CLIP FPS`` serves as the live process
with the real network. Times are those of the monotonic clock itself, so whoever sees a frame
knows how old it is.
"""

import sys
import threading
import time
from pathlib import Path

import numpy as np

from measure.camera.capture import CapturedFrame
from measure.live.messages import LIVE_ORDERS
from measure.live.worker import LiveWorker
from measure.pose.worker import WorkerPipes


def frames_of(clip: Path) -> list[np.ndarray]:
    """Return every frame of a clip, blue-green-red, there and back again."""
    import cv2

    capture = cv2.VideoCapture(str(clip))
    frames = []
    while True:
        read, frame = capture.read()
        if not read:
            break
        frames.append(frame)
    capture.release()
    return frames + frames[::-1]


class ReplayCamera:
    """Frames in a loop at a steady rate; a pixel makes each differ from the last."""

    backend = "memory"
    sample_aspect = 1.0

    def __init__(self, frames: list[np.ndarray], fps: float) -> None:
        self._frames = frames
        self._fps = fps
        self._number = 0
        self._stopped = threading.Event()
        self._due_s = time.monotonic()

    def next(self) -> CapturedFrame | None:
        self._due_s = max(self._due_s + 1 / self._fps, time.monotonic() - 1 / self._fps)
        if self._stopped.wait(max(0.0, self._due_s - time.monotonic())):
            return None
        time_s = time.monotonic()
        pixels = self._frames[self._number % len(self._frames)].copy()
        pixels[4::8, 4] = self._number % 251
        self._number += 1
        return CapturedFrame(time_s=time_s, pixels=pixels)

    def stop(self) -> None:
        self._stopped.set()

    def close(self) -> None:
        """Nothing to let go of."""


def main() -> None:
    """Serve as the live process."""
    pipes = WorkerPipes(LIVE_ORDERS)
    from measure.pose.network import PoseNetwork

    frames = frames_of(Path(sys.argv[1]))
    LiveWorker(
        pipes,
        PoseNetwork,
        lambda order: ReplayCamera(frames, float(sys.argv[2])),
    ).serve()


if __name__ == "__main__":
    main()
