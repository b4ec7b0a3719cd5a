"""Many clips read side by side by a few pose processes; results are yielded as they finish."""

import os
import queue
import threading
from collections.abc import Callable, Generator, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ThreadPoolExecutor, wait

from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings, internal_error, read_entry
from measure.errors import ModelError
from measure.pose.supervisor import PoseProcess

#: Returns the result of an earlier run for the entry of a number, or None.
Earlier = Callable[[int], ClipResult | None]


def usual_workers() -> int:
    """Return how many pose processes suit this computer: as many as processors, at most four.

    Each takes about a gigabyte of memory.
    """
    return min(os.cpu_count() or 1, 4)


def nothing_earlier(number: int) -> ClipResult | None:
    """Return that no earlier run read this entry."""
    return None


def read_many(
    entries: Sequence[ClipEntry],
    settings: ReadingSettings,
    *,
    workers: int,
    cached: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
    new_process: Callable[..., PoseProcess] = PoseProcess,
) -> Generator[ClipResult, None, None]:
    """Read clips; a bad clip never stops the rest. Closing the generator stops reading.

    Parameters
    ----------
    workers
        Pose processes working side by side. The readings do not depend on it.
    cached
        Returns the result of an earlier run, which is yielded instead.
    progress
        Called with the number of clips that are done, in parts of a clip, from several threads.
        Clips that an earlier run read do not count. An exception from it ends the clip under way
        with an error.
    new_process
        Makes a pose process for bundles; it starts with its first clip.

    Raises
    ------
    ModelError
        A bundle cannot be used.
    """
    idle: queue.SimpleQueue[PoseProcess] = queue.SimpleQueue()
    processes = [
        new_process(settings.models.bundles) for _ in range(min(workers, len(entries)) or 1)
    ]
    for process in processes:
        idle.put(process)
    shares = ProgressSum(progress)

    def read(number: int) -> ClipResult:
        process = idle.get()
        try:
            return read_entry(process, settings, number, entries[number], shares.of(number))
        finally:
            # The process first: an exception from `progress` must not take it along.
            idle.put(process)
            shares.finish(number)

    pool = ThreadPoolExecutor(len(processes), thread_name_prefix="read")
    try:
        yield from submit_bounded(
            entries,
            lambda number: pool.submit(read, number),
            ahead=lambda: 2 * len(processes),
            cached=cached,
        )
    finally:
        # Also when the caller stops early: what has not begun is dropped.
        pool.shutdown(wait=False, cancel_futures=True)
        for process in processes:
            process.close()


def submit_bounded(
    entries: Sequence[ClipEntry],
    submit: Callable[[int], Future[ClipResult]],
    *,
    ahead: Callable[[], int],
    cached: Earlier = nothing_earlier,
) -> Iterator[ClipResult]:
    """Submit the entries one after the other and yield results as they come.

    Only a few are under way at a time, so that a long list takes no more memory than a short
    one.

    Parameters
    ----------
    submit
        Gives the entry of a number to an executor.
    ahead
        Returns how many entries may be under way, at least 1.
    """
    waiting: dict[Future[ClipResult], int] = {}
    for number in range(len(entries)):
        if (earlier := cached(number)) is not None:
            yield earlier
            continue
        while len(waiting) >= max(1, ahead()):
            yield from _finished(waiting, entries)
        waiting[submit(number)] = number
    while waiting:
        yield from _finished(waiting, entries)


def _finished(
    waiting: dict[Future[ClipResult], int], entries: Sequence[ClipEntry]
) -> Iterator[ClipResult]:
    """Wait for at least one entry and yield those that are done, the first given first."""
    done, _ = wait(waiting, return_when=FIRST_COMPLETED)
    for future in sorted(done, key=waiting.__getitem__):
        number = waiting.pop(future)
        try:
            yield future.result()
        except ModelError:
            raise
        except Exception as error:  # noqa: BLE001 - the top of whatever ran it
            failure = internal_error(entries[number], error)
            yield ClipResult(number=number, entry=entries[number], error=failure)


class ProgressSum:
    """Sum of the shares of all clips that are done."""

    def __init__(self, progress: Callable[[float], None]) -> None:
        self._under_way: dict[int, float] = {}
        self._finished = 0
        self._progress = progress
        self._lock = threading.Lock()

    def of(self, number: int) -> Callable[[float], None]:
        """Return the progress callback of one clip, called with its share that is done."""

        def update(share: float) -> None:
            with self._lock:
                self._under_way[number] = share
                self._report()

        return update

    def finish(self, number: int) -> None:
        with self._lock:
            self._under_way.pop(number, None)
            self._finished += 1
            self._report()

    def _report(self) -> None:
        self._progress(self._finished + sum(self._under_way.values()))
