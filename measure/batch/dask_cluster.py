"""Many clips read by the workers of a Dask cluster (package distributed).

The address is always named by a person; nothing else here opens a connection. Workers are
checked before any work is given to them. What was under way on a worker that is lost is given to
another by the scheduler.
"""

import warnings
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from typing import Any

from measure.batch.cluster_worker import JobSpec, SentClip, order_of, what_is_wrong
from measure.batch.executor import read_with_executor
from measure.batch.run import Earlier, nothing_earlier
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult, ReadingSettings
from measure.errors import InputError, MachineError

#: Longest wait for an answer of the scheduler, seconds. Ours.
CONNECT_S = 15
#: Clips under way for each thread of a worker: the next is there when one is done.
_AHEAD = 2


def read_on_cluster(
    address: str,
    entries: Sequence[ClipEntry],
    settings: ReadingSettings,
    *,
    send_clips: bool = False,
    cached: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[ClipResult]:
    """Read clips on a cluster; outcomes as from :func:`measure.batch.run.read_many`.

    Parameters
    ----------
    address
        Of the scheduler, such as tcp://10.0.0.5:8786.
    send_clips
        True to send each clip along; False where the workers see the same paths.
    progress
        Told how many clips are done; those of an earlier run do not count.

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
        order = order_of(settings)
        crew = ClusterWorkers(client, order)
        executor = client.get_executor(pure=False)

        def submit(work: Any, order: JobSpec, sent: SentClip, /) -> Future[ClipResult]:
            with warnings.catch_warnings():
                warnings.simplefilter("ignore", UserWarning)  # "sending large graph"
                future: Future[ClipResult] = executor.submit(work, order, sent)
            return future

        yield from read_with_executor(
            submit,
            entries,
            order,
            ahead=crew.ahead,
            send_clips=send_clips,
            cached=cached,
            progress=progress,
        )


class ClusterWorkers:
    """The workers of a cluster, each checked once."""

    def __init__(self, client: Any, order: JobSpec) -> None:
        self._client = client
        self._order = order
        self._checked: set[str] = set()
        if not self.ahead():
            raise MachineError(
                "The cluster has no workers. Start some with: dask worker ADDRESS --nthreads 1"
            )

    def ahead(self) -> int:
        """Return how many clips may be under way, after a look at workers that are new.

        Raises
        ------
        MachineError
            When a worker would give other numbers.
        """
        threads: dict[str, int] = self._client.nthreads()
        new = threads.keys() - self._checked
        if new:
            self._check(sorted(new))
        return _AHEAD * sum(threads.values())

    def _check(self, workers: list[str]) -> None:
        answers = self._client.run(what_is_wrong, self._order, workers=workers, on_error="return")
        # A worker that is lost at this moment answers with a broken connection.
        answers = {
            worker: answer for worker, answer in answers.items() if not isinstance(answer, OSError)
        }
        wrong = [f"{worker}: {answer}" for worker, answer in sorted(answers.items()) if answer]
        if wrong:
            raise MachineError(
                "Not every worker would give the same numbers. Make them alike, or take them "
                "out, and give the same command again:\n  " + "\n  ".join(wrong)
            )
        self._checked.update(answers)
