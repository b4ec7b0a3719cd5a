"""Many clips read by the workers of a Dask cluster (package distributed).

The address is always named by a person; nothing else here opens a connection. Workers are
checked before any work is given to them. What was under way on a worker that is lost is given to
another by the scheduler.
"""

import warnings
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from dataclasses import replace
from typing import Any

from measure.batch import Earlier, in_flight, nothing_earlier
from measure.clip_key import content_hash
from measure.clip_outcome import Outcome, ReadingSettings
from measure.cluster_worker import (
    SentClip,
    WorkOrder,
    order_of,
    read_on_worker,
    what_is_wrong,
)
from measure.errors import ClipError, InputError, MachineError
from measure.manifest import ClipEntry

#: Longest wait for an answer of the scheduler, seconds. Ours.
CONNECT_S = 15
#: Larger clips are not sent along: they wait in the scheduler's memory. Ours.
LARGEST_SENT = 200 << 20
#: Clips under way for each thread of a worker: the next is there when one is done.
_AHEAD = 2


def read_on_cluster(
    address: str,
    entries: Sequence[ClipEntry],
    settings: ReadingSettings,
    *,
    send_clips: bool = False,
    earlier: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[Outcome]:
    """Read clips on a cluster; outcomes as from :func:`measure.batch.read_many`.

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
        crew = _Crew(client, order)
        executor = client.get_executor(pure=False)

        def submit(number: int) -> Future[Outcome]:
            entry = entries[number]
            try:
                sent = _sent(number, entry, send_clips)
            except ClipError as error:
                at_once: Future[Outcome] = Future()
                at_once.set_result(Outcome(number=number, entry=entry, error=error))
                return at_once
            with warnings.catch_warnings():
                warnings.simplefilter("ignore", UserWarning)  # "sending large graph"
                future: Future[Outcome] = executor.submit(read_on_worker, order, sent)
            return future

        done = 0
        for outcome in in_flight(entries, submit, ahead=crew.ahead, earlier=earlier):
            done += not outcome.is_earlier
            progress(done)
            yield replace(outcome, entry=entries[outcome.number])


def _sent(number: int, entry: ClipEntry, whole: bool) -> SentClip:
    digest = content_hash(entry.clip)
    if not whole:
        entry = replace(entry, clip=entry.clip.absolute())
        return SentClip(number=number, entry=entry, sha256=digest)
    if entry.clip.stat().st_size > LARGEST_SENT:
        raise ClipError(
            f"{entry.clip} is larger than {LARGEST_SENT >> 20} MB. Put it where every worker "
            "sees it and leave --send-clips out."
        )
    return SentClip(number=number, entry=entry, sha256=digest, content=entry.clip.read_bytes())


class _Crew:
    """The workers of a cluster, each checked once."""

    def __init__(self, client: Any, order: WorkOrder) -> None:
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
