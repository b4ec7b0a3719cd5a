"""Many clips: two pose processes against one, and the memory of one over hundreds."""

import os
import resource
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from statistics import median

from measure.batch.run import read_many
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ReadingSettings
from measure.pose.ensemble import models_for
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from tests.bench.speed_clips import small_clips, usual_entries
from tests.bench.speed_effort import Effort
from tests.bench.speed_process import Spent, elsewhere, memory_mb
from tests.bench.speed_table import Row

#: A worker has met every kind of clip by then; what it keeps for good is there.
_SETTLED = 20


def two_processes(folder: Path, effort: Effort) -> Iterator[Row]:
    """The same clips by one process on one processor, and by two on two."""
    entries = usual_entries(folder)[:2] * (
        effort.crowd // 2
    )  # of one length, so that both end together
    here = sorted(os.sched_getaffinity(0))
    paces, by_clock, by_cpu, free = [], [], [], []
    for _ in range(effort.rounds):
        one = elsewhere(read_all, entries, 1, here[:1])
        two = elsewhere(read_all, entries, 2, here[:2])
        paces.append(two.clips_an_hour / one.clips_an_hour)
        by_clock.append(one.spent.clock_s / two.spent.clock_s)
        # As if nothing else ran, and both were busy to the end.
        by_cpu.append(2 * one.spent.cpu_s / two.spent.cpu_s)
        free.append(two.clips_an_hour / elsewhere(read_all, entries, 1, here[:2]).clips_an_hour)
    yield Row(
        mark="c",
        what="two processes on two processors over one on one: clips an hour",
        goal="at least 1.9",
        measured=f"{median(paces):.2f} from the first clips read to the last ({effort.rounds} "
        f"rounds of {len(entries)} clips: {' '.join(f'{pace:.2f}' for pace in paces)}); starts "
        f"included {median(by_clock):.2f}, by processor seconds {median(by_cpu):.2f}; over one "
        f"process that may use both, {median(free):.2f}: its passes run side by side already",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class CrowdRead:
    """How processes read clips: what it took, starts included, and their pace once they ran."""

    spent: Spent
    clips_an_hour: float


def read_all(entries: tuple[ClipEntry, ...], workers: int, processors: list[int]) -> CrowdRead:
    """Return how some pose processes on some processors read clips."""
    os.sched_setaffinity(0, processors)
    settings = ReadingSettings(models=models_for(ModelQuality.FULL))
    began = time.perf_counter(), time.process_time()
    read_s = []
    for outcome in read_many(entries, settings, workers=workers):
        if outcome.error is not None:
            raise outcome.error
        read_s.append(time.perf_counter())
    clock_s = time.perf_counter() - began[0]
    # The processes have ended by now, so their time is known.
    children = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = time.process_time() - began[1] + children.ru_utime + children.ru_stime
    # Every process has read one clip by then.
    pace = (len(read_s) - workers) / (read_s[-1] - read_s[workers - 1])
    return CrowdRead(spent=Spent(clock_s=clock_s, cpu_s=cpu_s), clips_an_hour=3600 * pace)


def memory_of_a_worker(folder: Path, effort: Effort) -> Iterator[Row]:
    """Hundreds of clips, one process."""
    grown, most, read = elsewhere(worker_memory, small_clips(folder), effort.many)
    yield Row(
        mark="d",
        what=f"memory of a worker from clip {_SETTLED} to clip {effort.many}",
        goal="grows less than 40 MB",
        measured=f"{grown['pose process']:+.0f} MB in the pose process, {grown['supervisor']:+.0f} "
        f"MB in its supervisor; at most {most['pose process']:.0f} and {most['supervisor']:.0f} MB "
        f"(lite model, {read} of {effort.many} clips with a reading)",
    )


def worker_memory(
    entries: tuple[ClipEntry, ...], count: int
) -> tuple[dict[str, float], dict[str, float], int]:
    """Return by process how its memory grew and the most that it took, and how many were read."""
    settings = ReadingSettings(models=models_for(ModelQuality.LITE))
    started: list[PoseProcess] = []

    def new_process(*arguments: object) -> PoseProcess:
        started.append(PoseProcess(*arguments))  # type: ignore[arg-type]
        return started[-1]

    clips = [entries[number % len(entries)] for number in range(count)]
    now: dict[str, list[float]] = {"pose process": [], "supervisor": []}
    most: dict[str, float] = {}
    read = 0
    for outcome in read_many(clips, settings, workers=1, new_process=new_process):
        read += outcome.measurement is not None and outcome.measurement.value is not None
        for name, process in (("pose process", started[0].process_id), ("supervisor", "self")):
            if process is not None:
                now[name].append(memory_mb(process, "VmRSS"))
                most[name] = memory_mb(process, "VmHWM")
    grown = {
        name: median(each[-_SETTLED // 2 :]) - median(each[_SETTLED // 2 : _SETTLED])
        for name, each in now.items()
    }
    return grown, most, read
