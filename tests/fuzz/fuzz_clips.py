"""Damaged clips through the reading path, in the process that decodes them for everybody.

Every clip must end in a reading, an honest refusal or a sentence, within the time, and be left
as it was. Nothing else may be raised, and the process may not die.
"""

import hashlib
import os
import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from measure.clips.read import read_clip
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.errors import ClipError, ThawlineError
from measure.pose.ensemble import ModelSet
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from tests.fuzz.damage import damaged
from tests.support.odd_clips import odd_clip

#: No clip may take longer: seconds of silence, and of work (Linux; elsewhere of time passed).
LONGEST_S = 20.0

TASK = MeasurementTask(Movement.ABDUCTION, Side.LEFT, View.FRONT)

#: Kinds of clip that are damaged, small ones of every container and codec.
KINDS = (
    "ordinary", "index-first", "uneven-times", "starts-at-5s-ts", "motion-jpeg-avi", "ten-bit-hevc",
    "animated-gif", "bare-h264", "interlaced", "wide-pixels-turned-90", "fifteen", "copied-mkv",
)  # fmt: skip


@dataclass
class Tally:
    """What became of the clips."""

    tried: int = 0
    readings: int = 0
    refusals: int = 0
    sentences: int = 0
    slowest_s: float = 0.0
    largest_mb: float = 0.0
    faults: list[str] = field(default_factory=list)


#: Bundles that no network reads.
MODELS = ModelSet(
    name="heavy",
    bundles={
        quality: Bundle(quality=quality, sha256="0" * 64, path=Path("none"), content=b"none")
        for quality in (ModelQuality.FULL, ModelQuality.HEAVY)
    },
)


def scripted_process() -> PoseProcess:
    """Return a process that decodes for real and looks with no network."""
    return PoseProcess(
        MODELS.bundles,
        stall_s=LONGEST_S,
        command=(sys.executable, "-m", "tests.fuzz.scripted_pose"),
    )


def seeds(first: int, count: int) -> Iterator[tuple[int, str]]:
    """Yield each seed with the kind of clip that it damages."""
    for seed in range(first, first + count):
        yield seed, KINDS[seed % len(KINDS)]


def fuzz(process: PoseProcess, models: ModelSet, folder: Path, first: int, count: int) -> Tally:
    """Read damaged clips one after the other with one process."""
    tally = Tally()
    for seed, kind in seeds(first, count):
        clip = folder / f"{seed}{odd_clip(kind).suffix}"
        clip.write_bytes(damaged(odd_clip(kind).read_bytes(), seed))
        _try(process, models, clip, f"{seed} ({kind})", tally)
        clip.unlink()
    return tally


def _try(process: PoseProcess, models: ModelSet, clip: Path, name: str, tally: Tally) -> None:
    tally.tried += 1
    before = hashlib.sha256(clip.read_bytes()).digest()
    number, began_s = process.process_id, _work_s(process)
    try:
        reading = read_clip(process, models, clip, TASK)
    except ClipError as error:
        tally.sentences += 1
        if not str(error).endswith("."):
            tally.faults.append(f"{name}: no sentence: {error}")
    except ThawlineError as error:
        tally.faults.append(f"{name}: {type(error).__name__}: {error}")
    except Exception as error:  # noqa: BLE001 - this is what is looked for
        tally.faults.append(f"{name}: {type(error).__name__}: {error}")
    else:
        tally.readings += reading.measurement.value is not None
        tally.refusals += reading.measurement.value is None
    took_s = _work_s(process) - (began_s if process.process_id == number else 0.0)
    tally.slowest_s = max(tally.slowest_s, took_s)
    tally.largest_mb = max(tally.largest_mb, _resident_mb(process))
    if took_s > LONGEST_S:
        tally.faults.append(f"{name}: took {took_s:.0f} s")
    if hashlib.sha256(clip.read_bytes()).digest() != before:
        tally.faults.append(f"{name}: the clip was changed")


def _work_s(process: PoseProcess) -> float:
    """Seconds of work of the process so far: a busy computer makes no clip slow."""
    try:
        words = Path(f"/proc/{process.process_id}/stat").read_text().rpartition(")")[2].split()
    except OSError:
        return time.monotonic() if sys.platform != "linux" else 0.0
    return (int(words[11]) + int(words[12])) / os.sysconf("SC_CLK_TCK")


def _resident_mb(process: PoseProcess) -> float:
    """Most memory that the process ever held (Linux), megabytes; 0 where that is not told."""
    try:
        lines = Path(f"/proc/{process.process_id}/status").read_text().splitlines()
    except OSError:
        return 0.0
    return next((int(line.split()[1]) / 1024 for line in lines if line.startswith("VmHWM")), 0.0)
