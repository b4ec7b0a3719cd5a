"""Many clips read on other computers: through any executor, and by a Dask cluster's workers.

The address of a cluster is always given by the user; nothing else here opens a connection.
Workers are checked before any work is given to them, and the scheduler gives the clips of a lost
worker to another. Needs the package distributed.
"""

import warnings
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from dataclasses import replace
from typing import Any

from measure.batch.cache_key import content_hash
from measure.batch.cluster_worker import JobSpec, SentClip, job_spec, mismatch, read_on_worker
from measure.batch.run import Earlier, nothing_earlier, submit_bounded
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.errors import ClipError, InputError, MachineError

#: Longest wait for an answer of the scheduler, seconds. [technical]
CONNECT_S = 15
#: Clips under way for each thread of a worker: the next is there when one is done. [technical]
_AHEAD = 2
#: Larger clips are not sent along, bytes: they would wait in a scheduler's memory. [technical]
LARGEST_SENT = 200 << 20


def read_on_cluster(
    address: str,
    entries: Sequence[ClipEntry],
    settings: ReadingSettings,
    *,
    send_clips: bool = False,
    cached: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[ClipResult]:
    """Read clips on a cluster; results as from :func:`measure.batch.run.read_many`.

    Parameters
    ----------
    address
        Of the scheduler, such as tcp://10.0.0.5:8786.
    send_clips, cached, progress
        As for :func:`read_with_executor`.

    Raises
    ------
    InputError
        When the package is missing.
    MachineError
        When there is no such cluster, it has no workers, or one of them would give other
        numbers.
    """
    try:
        import distributed
    except ImportError:
        raise InputError(
            "A cluster needs the package distributed. Install it with: "
            "pip install 'thawline[cluster]'"
        ) from None
    connect: Any = distributed.Client
    try:
        client = connect(address, timeout=CONNECT_S, set_as_default=False)
    except (OSError, ValueError) as error:
        raise MachineError(
            f"No cluster answers at {address} ({error}). Start a scheduler with: dask scheduler"
        ) from error
    with client:
        spec = job_spec(settings)
        workers = ClusterWorkers(client, spec)
        executor = client.get_executor(pure=False)

        def submit(*call: Any) -> Future[ClipResult]:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore", UserWarning)  # "sending large graph"
                future: Future[ClipResult] = executor.submit(*call)
            return future

        yield from read_with_executor(
            submit,
            entries,
            spec,
            ahead=workers.ahead,
            send_clips=send_clips,
            cached=cached,
            progress=progress,
        )


def read_with_executor(
    submit: Callable[..., Future[ClipResult]],
    entries: Sequence[ClipEntry],
    spec: JobSpec,
    *,
    ahead: Callable[[], int],
    send_clips: bool = False,
    cached: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[ClipResult]:
    """Read clips through any executor; results as from :func:`measure.batch.run.read_many`.

    Parameters
    ----------
    submit
        :meth:`concurrent.futures.Executor.submit` of the executor.
    ahead
        Returns how many clips may be under way, at least 1.
    send_clips
        True to send each clip along; False where the workers see the same paths.
    cached
        Returns the result of an earlier run, which is yielded instead.
    progress
        Called with the number of clips that are done; those of an earlier run do not count.
    """

    def begin(number: int) -> Future[ClipResult]:
        entry = entries[number]
        try:
            return submit(read_on_worker, spec, _sent(number, entry, send_clips))
        except ClipError as error:
            failed: Future[ClipResult] = Future()
            failed.set_result(ClipResult(number=number, entry=entry, error=error))
            return failed

    done = 0
    for result in submit_bounded(entries, begin, ahead=ahead, cached=cached):
        done += not result.is_earlier
        progress(done)
        yield replace(result, entry=entries[result.number])


def _sent(number: int, entry: ClipEntry, whole: bool) -> SentClip:
    digest = content_hash(entry.clip)
    if not whole:
        entry = replace(entry, clip=entry.clip.absolute())
        return SentClip(number=number, entry=entry, sha256=digest)
    if entry.clip.stat().st_size > LARGEST_SENT:
        raise ClipError(
            f"{entry.clip} is larger than {LARGEST_SENT >> 20} MB. Put it where every worker can "
            "read it, and leave --send-clips out."
        )
    return SentClip(number=number, entry=entry, sha256=digest, content=entry.clip.read_bytes())


class ClusterWorkers:
    """The workers of a cluster, each checked once."""

    def __init__(self, client: Any, spec: JobSpec) -> None:
        self._client = client
        self._spec = spec
        self._checked: set[str] = set()
        if not self.ahead():
            raise MachineError(
                "The cluster has no workers. Start some with: dask worker ADDRESS --nthreads 1"
            )

    def ahead(self) -> int:
        """Return how many clips may be under way, after a check of workers that are new.

        Raises
        ------
        MachineError
            When a worker would give other numbers.
        """
        threads: dict[str, int] = self._client.nthreads()
        if new := threads.keys() - self._checked:
            self._check(sorted(new))
        return _AHEAD * sum(threads.values())

    def _check(self, workers: list[str]) -> None:
        answers = self._client.run(mismatch, self._spec, workers=workers, on_error="return")
        # A worker that is lost at this moment answers with a broken connection.
        answers = {
            worker: answer for worker, answer in answers.items() if not isinstance(answer, OSError)
        }
        wrong = [f"{worker}: {answer}" for worker, answer in sorted(answers.items()) if answer]
        if wrong:
            raise MachineError(
                "Some workers would give different numbers. Make their versions the same, or "
                "remove them, and give the same command again:\n  " + "\n  ".join(wrong)
            )
        self._checked.update(answers)
