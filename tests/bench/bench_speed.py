"""`make bench`: speed as a ratio within one run, and memory as a clip grows.

    python -m tests.bench.bench_speed [--clip FILE] [--seconds N]

The pose process looks at every frame of a clip; a bare loop decodes and detects the same
frames with the same network in this run. A longer clip is the clip repeated (needs the program
ffmpeg). Memory is read from /proc, so that part runs on Linux only.
"""

import argparse
import multiprocessing
import subprocess
import tempfile
import time
from multiprocessing.connection import Connection
from pathlib import Path

from measure.clip_job import ClipJob, PosePass
from measure.pose import PoseProcess
from measure.pose_model import Bundle, ModelQuality, obtain

_CLIPS = Path(__file__).resolve().parents[2] / "sample_clips" / "clips"
_PASS = PosePass(quality=ModelQuality.FULL)
#: Pictures a second that the memory part looks at, so that ten minutes do not take ten.
_THIN_HZ = 1.5
_ROUNDS = 3


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--clip", type=Path, default=_CLIPS / "flexion-left-restricted.mp4")
    parser.add_argument("--seconds", type=int, default=20, help="length of the timed clip")
    arguments = parser.parse_args()
    bundle = obtain(ModelQuality.FULL)
    with tempfile.TemporaryDirectory() as folder:
        timed = repeated(arguments.clip, Path(folder), arguments.seconds)
        ratio(timed, bundle)
        memory(arguments.clip, Path(folder), bundle)


def repeated(clip: Path, folder: Path, seconds: int) -> Path:
    """Return the clip repeated up to a length."""
    target = folder / f"{seconds}s.mp4"
    command = ["ffmpeg", "-nostdin", "-loglevel", "error", "-stream_loop", "-1", "-i", str(clip)]
    subprocess.run([*command, "-t", str(seconds), "-c", "copy", str(target)], check=True)
    return target


def ratio(clip: Path, bundle: Bundle) -> None:
    """Print frames a second of the bare loop and of the pose process, and their ratio."""
    rates = []
    with PoseProcess({ModelQuality.FULL: bundle}) as process:
        process.run(ClipJob(clip=clip, passes=(_PASS,), windows=((0.0, 1.0),)))  # warm-up
        for number in range(_ROUNDS):
            bare = bare_rate(clip, bundle)
            start = time.perf_counter()
            poses = process.run(ClipJob(clip=clip, passes=(_PASS,)))
            ours = len(poses.frames[_PASS]) / (time.perf_counter() - start)
            rates.append(ours / bare)
            print(
                f"round {number + 1}: bare loop {bare:.1f}, pose process {ours:.1f} frames a "
                f"second, ratio {ours / bare:.2f}"
            )
    print(f"pose process over bare loop, median: {sorted(rates)[_ROUNDS // 2]:.2f}")


def bare_rate(clip: Path, bundle: Bundle) -> float:
    """Return the frames a second of a loop that decodes and detects, in a process of its own."""
    ours, theirs = multiprocessing.get_context("spawn").Pipe()
    child = multiprocessing.get_context("spawn").Process(
        target=_bare_loop, args=(clip, bundle.content, theirs)
    )
    child.start()
    rate: float = ours.recv()
    child.join()
    return rate


def _bare_loop(clip: Path, bundle: bytes, answer: Connection) -> None:
    import cv2
    import numpy as np

    from measure.landmarker import Landmarker

    source = cv2.VideoCapture(str(clip), cv2.CAP_FFMPEG)
    frames = 0
    with Landmarker(bundle) as network:
        start = time.perf_counter()
        while True:
            readable, frame = source.read()
            if not readable:
                break
            rgb = np.ascontiguousarray(frame[:, :, ::-1])
            network.detect(rgb, source.get(cv2.CAP_PROP_POS_MSEC) / 1000)
            frames += 1
        answer.send(frames / (time.perf_counter() - start))


def memory(clip: Path, folder: Path, bundle: Bundle) -> None:
    """Print the highest memory of both processes after a clip of one and of ten minutes."""
    peaks = {}
    for minutes in (1, 10):
        long = repeated(clip, folder, 60 * minutes)
        ours, theirs = multiprocessing.get_context("spawn").Pipe()
        child = multiprocessing.get_context("spawn").Process(
            target=_look_thinly, args=(long, bundle, theirs)
        )
        child.start()
        peaks[minutes] = ours.recv()
        child.join()
        print(f"{minutes}-minute clip: {peaks[minutes]:.0f} MB at most")
    print(f"ten minutes over one: {peaks[10] - peaks[1]:+.0f} MB")


def _look_thinly(clip: Path, bundle: Bundle, answer: Connection) -> None:
    with PoseProcess({ModelQuality.FULL: bundle}) as process:
        process.run(ClipJob(clip=clip, passes=(_PASS,), rate_hz=_THIN_HZ))
        answer.send(_peak_mb("self") + _peak_mb(str(process.process_id)))


def _peak_mb(process: str) -> float:
    text = Path(f"/proc/{process}/status").read_text(encoding="utf-8")
    line = next(line for line in text.splitlines() if line.startswith("VmHWM"))
    return int(line.split()[1]) / 1024


if __name__ == "__main__":
    main()
