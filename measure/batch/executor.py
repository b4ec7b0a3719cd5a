"""Many clips read through any executor of `concurrent.futures`, here or on other computers.

Its workers keep a pose process each from clip to clip; see :mod:`measure.batch.cluster_worker`. On
this computer :mod:`measure.batch.run` does without, since its threads share what they know of each
clip.
"""

from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import Future
from dataclasses import replace
from typing import Protocol

from measure.batch.cache_key import content_hash
from measure.batch.cluster_worker import JobSpec, SentClip, read_on_worker
from measure.batch.run import Earlier, nothing_earlier, submit_bounded
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.errors import ClipError

#: Larger clips are not sent along: they wait in a scheduler's memory. Ours.
LARGEST_SENT = 200 << 20


class Submit(Protocol):
    """Gives work to an executor, as :meth:`concurrent.futures.Executor.submit` does."""

    def __call__(
        self,
        work: Callable[[JobSpec, SentClip], ClipResult],
        order: JobSpec,
        sent: SentClip,
        /,
    ) -> Future[ClipResult]: ...


def read_with_executor(
    submit: Submit,
    entries: Sequence[ClipEntry],
    order: JobSpec,
    *,
    ahead: Callable[[], int],
    send_clips: bool = False,
    cached: Earlier = nothing_earlier,
    progress: Callable[[float], None] = lambda done: None,
) -> Iterator[ClipResult]:
    """Read clips; outcomes as from :func:`measure.batch.run.read_many`.

    Parameters
    ----------
    submit
        An executor's method of that name.
    ahead
        Returns how many clips may be under way, at least 1.
    send_clips
        True to send each clip along; False where the workers see the same paths.
    progress
        Told how many clips are done; those of an earlier run do not count.
    """

    def begin(number: int) -> Future[ClipResult]:
        entry = entries[number]
        try:
            return submit(read_on_worker, order, _sent(number, entry, send_clips))
        except ClipError as error:
            at_once: Future[ClipResult] = Future()
            at_once.set_result(ClipResult(number=number, entry=entry, error=error))
            return at_once

    done = 0
    for outcome in submit_bounded(entries, begin, ahead=ahead, cached=cached):
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
