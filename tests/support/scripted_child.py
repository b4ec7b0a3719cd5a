"""A stand-in for the pose process that behaves as its first argument says. Run by itself."""

import os
import signal
import sys
import time

import numpy as np

from measure.domain.landmarks import LANDMARKS
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, ModelError
from measure.pose.jobs import ClipInfo
from measure.pose.message_pipe import Message, read_message, write_message
from measure.pose.messages import (
    CLIP_ORDERS,
    Done,
    Failed,
    JobProgress,
    LoadModel,
    PoseFrames,
    Ready,
    RunClip,
)

FACTS = ClipInfo(
    width_px=64,
    height_px=48,
    frames_read=3,
    frames_expected=3,
    frames_unreadable=0,
    duration_s=0.1,
    measured_fps=30.0,
    backend="script",
    rotation_deg=0,
    sample_aspect=1.0,
)


def say(message: Message) -> None:
    write_message(sys.stdout.buffer, message)


def frames(number: int, pass_number: int = 0) -> Message:
    nothing = np.empty((0, LANDMARKS))
    one = PoseFrame(
        index=number,
        time_s=number / 30,
        points_px=np.empty((0, LANDMARKS, 2)),
        visibility=nothing,
        presence=nothing,
    )
    return PoseFrames.of(pass_number, [one])


def serve(behaviour: str, name: str) -> None:
    """Answer one job."""
    say(JobProgress(share=0.25))
    say(frames(0))
    if behaviour == "crashes" and "bad" in name:
        os.kill(os.getpid(), signal.SIGSEGV)
    if behaviour == "ends" and "bad" in name:
        sys.exit(7)
    if behaviour == "hangs" and "bad" in name:
        time.sleep(60)
    if behaviour == "garbage" and "bad" in name:
        sys.stdout.buffer.write(b"Segmentation what? " * 5)
        sys.stdout.buffer.flush()
        time.sleep(60)
    if behaviour == "nonsense" and "bad" in name:
        say(frames(1, pass_number=9))
    if behaviour == "out of turn" and "bad" in name:
        say(Ready())
    if behaviour == "half a message":
        sys.stdout.buffer.write(b"TLPOSE2\n\0\0")
        sys.stdout.buffer.flush()
        sys.exit(0)
    if behaviour == "refuses" and "bad" in name:
        return say(Failed.of(ClipError("The clip bad.mp4 is empty.")))
    if behaviour == "model" and "bad" in name:
        return say(Failed.of(ModelError("The model is old.")))
    if behaviour == "fails" and "bad" in name:
        return say(Failed.of(ZeroDivisionError("x")))
    say(frames(1))
    say(frames(2))
    return say(Done(info=FACTS))


def main(behaviour: str) -> None:
    if behaviour == "never starts":
        time.sleep(60)
    if behaviour == "chatters":
        sys.stderr.write("native noise\n" * 200_000)
    say(Ready())
    if behaviour == "stops listening":
        time.sleep(60)
    while (order := read_message(sys.stdin.buffer, CLIP_ORDERS)) is not None:
        if isinstance(order, LoadModel):
            if order.is_last:
                say(Ready())
        else:
            serve(behaviour, order.job.clip.name if isinstance(order, RunClip) else "bad")


if __name__ == "__main__":
    main(sys.argv[1])
