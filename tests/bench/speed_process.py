"""What processes take, and bare loops and other work done in a process of its own. Linux only."""

import multiprocessing
import os
import time
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any

from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import Bundle


@dataclass(frozen=True, slots=True, kw_only=True)
class Spent:
    """What some work took: seconds by the clock, and by all processors together."""

    clock_s: float
    cpu_s: float


def spent(process: PoseProcess, work: Callable[[], object]) -> Spent:
    """Return what work takes, here and in a pose process that runs already."""
    began = time.perf_counter(), _cpu_s(process)
    work()
    return Spent(clock_s=time.perf_counter() - began[0], cpu_s=_cpu_s(process) - began[1])


def _cpu_s(process: PoseProcess) -> float:
    if process.process_id is None:
        raise ValueError("the pose process does not run")
    text = Path(f"/proc/{process.process_id}/stat").read_text(encoding="utf-8")
    user, system = text.rpartition(")")[2].split()[11:13]
    return time.process_time() + (int(user) + int(system)) / os.sysconf("SC_CLK_TCK")


def memory_mb(process: str | int, kind: str) -> float:
    """Return the memory of a process now ("VmRSS") or at most ("VmHWM")."""
    text = Path(f"/proc/{process}/status").read_text(encoding="utf-8")
    line = next(line for line in text.splitlines() if line.startswith(kind))
    return int(line.split()[1]) / 1024


def elsewhere(work: Callable[..., Any], *arguments: Any) -> Any:
    """Return what work returns, done in a new process."""
    context = multiprocessing.get_context("spawn")
    ours, theirs = context.Pipe()
    child = context.Process(target=_answer, args=(theirs, work, arguments))
    child.start()
    theirs.close()
    try:
        return ours.recv()
    finally:
        child.join()


def _answer(pipe: Connection, work: Callable[..., Any], arguments: tuple[Any, ...]) -> None:
    pipe.send(work(*arguments))


def bare_loop(clip: Path, bundle: Bundle, people: int, most: int = 1_000_000) -> tuple[Spent, int]:
    """Decode every frame of a clip and look for people in it, up to so many frames.

    Returns what it took, and how many frames it were.

    Loading libraries and network is not counted. To be called through :func:`elsewhere`.
    """
    import cv2
    import numpy as np

    from measure.pose.network import PoseNetwork

    source = cv2.VideoCapture(str(clip), cv2.CAP_FFMPEG)
    frames = 0
    with PoseNetwork(bundle.content, people) as network:
        began = time.perf_counter(), time.process_time()
        while frames < most:
            readable, frame = source.read()
            if not readable:
                break
            rgb = np.ascontiguousarray(frame[:, :, ::-1], dtype=np.uint8)
            network.detect(rgb, source.get(cv2.CAP_PROP_POS_MSEC) / 1000)
            frames += 1
        ended = time.perf_counter(), time.process_time()
    return Spent(clock_s=ended[0] - began[0], cpu_s=ended[1] - began[1]), frames
