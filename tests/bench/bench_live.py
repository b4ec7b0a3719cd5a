"""Measuring live against a bare loop: frames a second, age of what is shown, starting anew.

Run it with ``python -m tests.bench.bench_live``. The bare loop and the engine look at the same
frames from memory with the same network, taking turns, each in a process of its own; what counts
are the ratios of the medians. A movement is chosen all the while, so finding trials is part of it.
"""

import argparse
import os
import signal
import statistics
import subprocess
import sys
import time
from pathlib import Path
from typing import NoReturn

import numpy as np

import sample_clips
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.errors import PoseProcessError
from measure.live.engine import LiveEngine
from measure.live.events import LiveEventKind, LiveFrame, Source
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import PictureJob
from measure.pose.network import PoseNetwork
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import load
from measure.pose_models.catalogue import ModelQuality
from tests.bench.replay_camera import frames_of

CLIP = Path(sample_clips.__file__).parent / "clips" / "flexion-left-full.mp4"

#: A usual camera; it is made faster for a network that is, so that it is never waited for.
USUAL_FPS = 30.0


def bare(
    clip: Path, quality: ModelQuality, seconds: float, paced_fps: float = 0.0
) -> tuple[float, float, float]:
    """Return frames a second of detection alone, its median time and its processor time for
    each frame, both in milliseconds.

    With `paced_fps` it waits for each picture as for a camera's, otherwise for nothing.

    It looks at the frame whose time has come, as one does live: the farther two pictures are
    apart, the more work the network has.
    """
    import cv2

    frames = [
        np.asarray(cv2.cvtColor(frame, cv2.COLOR_BGR2RGB), dtype=np.uint8)
        for frame in frames_of(clip)
    ]
    times: list[float] = []
    with PoseNetwork(load(quality).content) as landmarker:
        start, used = time.perf_counter(), time.process_time()
        while (now := time.perf_counter()) - start < seconds:
            number = round((now - start) * USUAL_FPS)
            if paced_fps:
                number = len(times) + 1
                time.sleep(max(0.0, start + number / paced_fps - now))
                now = time.perf_counter()
            landmarker.detect(frames[number % len(frames)], now - start)
            times.append(time.perf_counter() - now)
        total, used = time.perf_counter() - start, time.process_time() - used
    return len(times) / total, 1000 * statistics.median(times), 1000 * used / len(times)


def bare_apart(
    clip: Path, quality: ModelQuality, seconds: float, paced_fps: float = 0.0
) -> tuple[float, float, float]:
    """Return the same from a process of its own."""
    command = [sys.executable, "-m", "tests.bench.bench_live", "--bare", quality.value]
    done = subprocess.run(
        [*command, "--clip", str(clip), "--seconds", str(seconds), "--paced", str(paced_fps)],
        capture_output=True,
        text=True,
        check=True,
    )
    fps, median_ms, used_ms = map(float, done.stdout.split())
    return fps, median_ms, used_ms


class Idle(PoseProcess):
    """Settles nothing, so that the looks at live pictures are measured alone."""

    def prepare(self) -> None:
        """Start nothing."""

    def run_pictures(self, job: PictureJob) -> NoReturn:
        raise PoseProcessError("The pictures are not looked at.")


class Live:
    """An engine on the replayed frames, with or without settling trials meanwhile."""

    def __init__(
        self, clip: Path, quality: ModelQuality, fps: float, *, settles: bool = False
    ) -> None:
        models = ModelSet(name=quality.value, bundles={quality: load(quality)})
        self.engine = LiveEngine(
            lambda: models,
            command=(sys.executable, "-m", "tests.bench.replay_camera", str(clip), str(fps)),
            make_process=None if settles else lambda models: Idle(models.bundles),
            stall_s=5.0,
        )
        self.engine.start(Source())
        self.engine.choose(Movement.FLEXION, Side.LEFT, 99, 0)

    def __enter__(self) -> "Live":
        return self

    def __exit__(self, *error: object) -> None:
        self.engine.close(4.0)

    def next_frame(self) -> tuple[LiveFrame, float]:
        """Return the next frame and its age when it was there, milliseconds."""
        while (frame := self.engine.newest_frame()) is None:
            time.sleep(0.002)
        return frame, 1000 * (time.monotonic() - frame.time_s)

    def measure(self, seconds: float) -> tuple[float, float, float]:
        """Return frames a second, median age in milliseconds, and this process's own share
        of a processor.
        """
        ages: list[float] = []
        start, used = time.perf_counter(), time.process_time()
        while time.perf_counter() - start < seconds:
            ages.append(self.next_frame()[1])
        span = time.perf_counter() - start
        share = (time.process_time() - used) / span
        return len(ages) / span, statistics.median(ages), share


def compare(clip: Path, quality: ModelQuality, seconds: float, repeats: int) -> None:
    """Print speeds and their ratio, and the age of what is shown beyond the network's time."""
    alone, live, paced, ages = [], [], [], []
    for _ in range(repeats):
        alone.append(bare_apart(clip, quality, seconds))
        with Live(clip, quality, max(USUAL_FPS, 1.3 * alone[-1][0])) as run:
            run.next_frame()
            run.measure(1.0)
            live.append(run.measure(seconds))
        # With a camera slower than the network no picture has to wait for the one before.
        slow_fps = min(USUAL_FPS, 0.7 * alone[-1][0])
        paced.append(bare_apart(clip, quality, seconds, slow_fps)[1])
        with Live(clip, quality, slow_fps) as run:
            run.next_frame()
            ages.append(run.measure(seconds)[1])
    bare_fps = statistics.median(fps for fps, *_ in alone)
    bare_ms = statistics.median(paced)
    live_fps = statistics.median(fps for fps, _, _ in live)
    age_ms = statistics.median(ages)
    with Live(clip, quality, USUAL_FPS, settles=True) as run:
        run.next_frame()
        settling_fps = run.measure(3 * seconds)[0]
    name = quality.value
    share = statistics.median(share for *_, share in live)
    print(f"{name}: bare loop {bare_fps:.1f} frames/s, live {live_fps:.1f} frames/s")
    print(f"{name}: ratio {live_fps / bare_fps:.3f} (goal: at least 0.95)")
    print(
        f"{name}: network {bare_ms:.1f} ms, from grab to result {age_ms:.1f} ms: "
        f"{age_ms - bare_ms:.1f} ms more (goal: less than 20)"
    )
    print(f"{name}: {settling_fps:.1f} frames/s while trials are settled as well")
    print(f"{name}: the window's process used {share:.0%} of a processor for it")


def starts(clip: Path, quality: ModelQuality) -> None:
    """Print how long the first picture takes, and the next one after the process was killed."""
    start = time.monotonic()
    with Live(clip, quality, USUAL_FPS) as run:
        run.next_frame()
        print(f"{quality.value}: first picture after {time.monotonic() - start:.1f} s")
        run.measure(2.0)
        process_id = run.engine.process_id
        assert process_id is not None
        os.kill(process_id, signal.SIGKILL)
        killed = time.monotonic()
        while run.next_frame()[0].time_s < killed:
            continue
        print(
            f"{quality.value}: next picture {time.monotonic() - killed:.1f} s after the process "
            "was killed (goal: less than 3)"
        )


def resident_mb(number: int | str) -> float:
    """Return the memory that a process holds now, megabytes (Linux)."""
    lines = Path(f"/proc/{number}/status").read_text().splitlines()
    return next(int(line.split()[1]) / 1024 for line in lines if line.startswith("VmRSS"))


def used_s(number: int) -> float:
    """Return the processor time that a process has used, seconds (Linux)."""
    fields = Path(f"/proc/{number}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def soak(clip: Path, seconds: float) -> None:
    """Print what the window's and the live process hold while a clip plays over and over and
    one movement after the other is measured.
    """
    engine = LiveEngine(loop_clips=True, stall_s=10.0)
    engine.start(Source(clip=clip))
    start, told, done = time.monotonic(), 0.0, 0
    engine.choose(Movement.FLEXION, Side.LEFT, 3, 1)
    while (now := time.monotonic() - start) < seconds:
        engine.newest_frame()
        for event in engine.events():
            if event.kind is LiveEventKind.MEASUREMENT_DONE:
                done += 1
                engine.choose(Movement.FLEXION, Side.LEFT, 3, 1)
            elif event.kind is LiveEventKind.TROUBLE:
                print(f"{now:.0f} s: {event.trouble} {event.text}")
        if now - told > seconds / 10 and engine.process_id is not None:
            told = now
            own, other = resident_mb("self"), resident_mb(engine.process_id)
            print(f"{now:.0f} s: window's process {own:.0f} MB, live process {other:.0f} MB")
        time.sleep(0.008)
    print(f"{done} measurements; closing took", end=" ")
    start = time.monotonic()
    engine.close(4.0)
    print(f"{time.monotonic() - start:.1f} s")


def main() -> None:
    parser = argparse.ArgumentParser(description="Measuring live against a bare loop.")
    parser.add_argument("--clip", type=Path, default=CLIP)
    parser.add_argument("--seconds", type=float, default=8.0)
    parser.add_argument("--repeats", type=int, default=3)
    parser.add_argument("--bare", type=ModelQuality, help=argparse.SUPPRESS)
    parser.add_argument("--paced", type=float, default=0.0, help=argparse.SUPPRESS)
    parser.add_argument(
        "--quality",
        type=ModelQuality,
        nargs="+",
        default=[ModelQuality.FULL, ModelQuality.HEAVY],
    )
    parser.add_argument("--soak", type=float, metavar="SECONDS", help="measure memory instead")
    arguments = parser.parse_args()
    if arguments.soak:
        soak(arguments.clip, arguments.soak)
        return
    if arguments.bare:
        print(*bare(arguments.clip, arguments.bare, arguments.seconds, arguments.paced))
        return
    for quality in arguments.quality:
        compare(arguments.clip, quality, arguments.seconds, arguments.repeats)
    starts(arguments.clip, arguments.quality[0])


if __name__ == "__main__":
    main()
