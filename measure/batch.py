"""Many clips read side by side, each by one of a few pose processes; results as they finish."""

import os
import queue
import threading
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor, as_completed
from dataclasses import dataclass

from measure.errors import ClipError, PoseProcessError, ThawlineError
from measure.manifest import ClipEntry
from measure.passes import Models
from measure.pose import PoseProcess
from measure.replay import ClipReading, read_clip


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one entry: a reading, or the error that kept it from one.

    Attributes
    ----------
    number
        Place of the entry in the list, from 0.
    """

    number: int
    entry: ClipEntry
    reading: ClipReading | None
    error: ThawlineError | None


def usual_workers() -> int:
    """Return how many pose processes suit this computer: as many as processors, at most four.

    Each takes about a gigabyte of memory.
    """
    return min(os.cpu_count() or 1, 4)


def read_many(
    entries: Sequence[ClipEntry],
    models: Models,
    *,
    workers: int,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[Outcome]:
    """Read clips; a bad clip never stops the rest.

    Parameters
    ----------
    workers
        Pose processes working side by side. The readings do not depend on it.
    progress
        Told how many clips are done, in parts of a clip; called from several threads.
    """
    idle: queue.SimpleQueue[PoseProcess] = queue.SimpleQueue()
    processes = [PoseProcess(models.bundles) for _ in range(min(workers, len(entries)) or 1)]
    for process in processes:
        idle.put(process)
    share = _Shares(len(entries), progress)

    def read(number: int) -> Outcome:
        entry, process = entries[number], idle.get()
        try:
            reading = read_clip(
                process,
                models,
                entry.clip,
                entry.movement,
                entry.side,
                view=entry.view,
                progress=lambda done: share.tell(number, done),
            )
        except (ClipError, PoseProcessError) as error:
            return Outcome(number=number, entry=entry, reading=None, error=error)
        else:
            return Outcome(number=number, entry=entry, reading=reading, error=None)
        finally:
            share.tell(number, 1.0)
            idle.put(process)

    pool = ThreadPoolExecutor(len(processes), thread_name_prefix="read")
    try:
        waiting = [pool.submit(read, number) for number in range(len(entries))]
        for done in as_completed(waiting):
            yield done.result()
    finally:
        # Also when the caller stops early: what has not begun is dropped.
        pool.shutdown(wait=False, cancel_futures=True)
        for process in processes:
            process.close()


class _Shares:
    """Adds up how far each clip is."""

    def __init__(self, clips: int, progress: Callable[[float], None]) -> None:
        self._shares = [0.0] * clips
        self._progress = progress
        self._lock = threading.Lock()

    def tell(self, number: int, share: float) -> None:
        with self._lock:
            self._shares[number] = share
            self._progress(sum(self._shares))
