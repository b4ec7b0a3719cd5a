"""Supervision of worker processes: started with their models, watched, ended and started anew.

A crash or a hang of native code, its log noise and its wish to report usage stay in a process of
their own. :class:`PoseProcess` runs jobs in one; :class:`measure.live.supervisor.LiveSupervisor`
keeps another at work on a live source.
"""

import sys
import time
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Self

from measure.domain.tracks import PoseFrame
from measure.errors import PoseProcessError, ThawlineError
from measure.message import TranslatableMessage
from measure.pose.child_process import ChildProcess, SilentWorkerError, WorkerError
from measure.pose.jobs import ClipInference, ClipInfo, ClipJob, InferencePass, PictureJob
from measure.pose.message_pipe import Message
from measure.pose.messages import (
    CLIP_ANSWERS,
    Alive,
    Done,
    Failed,
    JobProgress,
    PoseFrames,
    Ready,
    RunClip,
    model_orders,
    picture_orders,
)
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality

if TYPE_CHECKING:
    from msgspec.msgpack import Decoder

#: Longest silence of a clip worker, seconds: the slowest network takes a tenth of a second a frame.
#: [technical]
STALL_S = 30.0

#: Longest start of a clip worker, seconds: importing the libraries from a cold disk takes long.
#: [technical]
START_S = 120.0

#: Longest wait before the silence is measured anew, seconds. [technical]
_TICK_S = 0.1


class WorkerSupervisor:
    """A worker process at hand: started on demand, given its models, watched, ended.

    After its end, of whatever kind, the next :meth:`prepare` starts another one. Not for several
    threads at once, but for :meth:`stop` and :attr:`process_id`.

    Parameters
    ----------
    module
        The worker's module.
    answers
        The decoder of its answers.
    start_s
        Longest start, and longest loading of a model, seconds.
    command
        How the process is started, in place of the module; tests put others here.
    """

    def __init__(
        self,
        module: str,
        answers: "Decoder[Any]",
        *,
        start_s: float,
        command: tuple[str, ...] | None = None,
    ) -> None:
        self._command = command or (sys.executable, "-P", "-m", module)
        self._answers = answers
        self._start_s = start_s
        self._process: ChildProcess | None = None
        self._loaded: set[ModelQuality] = set()
        self._heard_s = 0.0

    @property
    def process_id(self) -> int | None:
        """The process's number, or None while there is none."""
        process = self._process
        return None if process is None else process.process_id

    def prepare(
        self,
        models: Mapping[ModelQuality, Bundle],
        *,
        cancelled: Callable[[], bool] = lambda: False,
    ) -> None:
        """Start a process where none runs, and give it the models that it does not have yet.

        Parameters
        ----------
        cancelled
            Asked now and then whether to give up.

        Raises
        ------
        WorkerError
            If it does not start.
        """
        if self._process is None or not self._process.is_alive:
            self.drop()
            self._process = ChildProcess(self._command, self._answers)
            self._loaded = set()
            self._await_ready(cancelled)
        for quality in sorted(models.keys() - self._loaded):
            for order in model_orders(quality, models[quality].content):
                self.send(order, self._start_s)
            self._await_ready(cancelled)
            self._loaded.add(quality)

    def send(self, order: Message, limit_s: float) -> None:
        """Give an order; a process that does not take it in time is killed.

        Raises
        ------
        WorkerError
            If there is no process any more.
        """
        self._running.send(order, limit_s)
        self._heard_s = time.monotonic()

    def receive(self, limit_s: float) -> Message:
        """Wait for the next answer.

        Raises
        ------
        WorkerError
            If none came in time, or the process ended or sent something that is no answer.
        """
        self._heard_s = time.monotonic()
        while (answer := self.poll(min(_TICK_S, limit_s), limit_s)) is None:
            pass
        return answer

    def poll(self, wait_s: float, limit_s: float) -> Message | None:
        """Return the next answer, or None if none came within the wait.

        Raises
        ------
        WorkerError
            If the process ended, sent something that is no answer, or gave no sign of life for
            the limit: since the last answer, or the last order.
        """
        answer = self._running.poll(wait_s)
        now_s = time.monotonic()
        if answer is not None:
            self._heard_s = now_s
        elif now_s - self._heard_s >= limit_s:
            raise SilentWorkerError(limit_s)
        return answer

    def stop(self) -> None:
        """End the process at once, from any thread; the work at hand then raises an error."""
        process = self._process
        if process is not None:
            process.stop()

    def drop(self) -> None:
        """End a process that is broken, or busy with what nobody wants any more."""
        if self._process is not None:
            process, self._process = self._process, None
            process.kill()

    def close(self) -> None:
        """Let the process end by itself."""
        if self._process is not None:
            process, self._process = self._process, None
            process.end()

    @property
    def _running(self) -> ChildProcess:
        if self._process is None:
            raise WorkerError("the pose process is not running")
        return self._process

    def _await_ready(self, cancelled: Callable[[], bool]) -> None:
        self._heard_s = began_s = time.monotonic()
        while not cancelled():
            answer = self.poll(min(_TICK_S, self._start_s), self._start_s)
            if isinstance(answer, Ready):
                return
            if answer is not None and not isinstance(answer, Alive):
                break
            if time.monotonic() - began_s > self._start_s:
                break
        raise WorkerError("the pose process did not start as it should")


class PoseProcess:
    """One supervised clip worker for many jobs, one after the other.

    The process starts with the first job. Whatever happens to it, the job at hand ends with an
    error that names the clip, and the next one finds a new process. Not for several threads at
    once, but for :meth:`stop`.

    Parameters
    ----------
    models
        The bundle for each quality that jobs may ask for.
    stall_s, start_s
        Longest time without a sign of life at work and at the start, seconds.
    command
        How the process is started; tests put others here.
    """

    def __init__(
        self,
        models: Mapping[ModelQuality, Bundle],
        *,
        stall_s: float = STALL_S,
        start_s: float = START_S,
        command: tuple[str, ...] | None = None,
    ) -> None:
        self._models = dict(models)
        self._stall_s = stall_s
        self._worker = WorkerSupervisor(
            "measure.pose.clip_worker", CLIP_ANSWERS, start_s=start_s, command=command
        )

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    @property
    def process_id(self) -> int | None:
        """The running process's number, or None."""
        return self._worker.process_id

    def run(self, job: ClipJob, progress: Callable[[float], None] | None = None) -> ClipInference:
        """Run the passes of a job over a clip.

        Parameters
        ----------
        progress
            Called several times a second with the share done, 0..1; an exception from it
            stops the work and goes on to the caller.

        Raises
        ------
        ClipError
            If the clip cannot be read.
        ModelError
            If a bundle cannot be used.
        PoseProcessError
            If the process crashed, hung or sent nonsense; the text names the clip.
        """
        try:
            orders = [RunClip(job=job, folder=Path.cwd())]
            info, frames = self._run(job.passes, orders, progress)
            if info is None:
                raise _protocol_error("done without facts of the clip")
            return ClipInference(facts=info, frames=frames)
        except WorkerError as fault:
            self._worker.drop()
            raise PoseProcessError(
                TranslatableMessage(
                    "The clip {clip} could not be read: {fault}. Other clips are not affected. "
                    "Try again; if it fails again, convert the clip to MP4 (H.264).",
                    {"clip": job.clip.name, "fault": str(fault)},
                )
            ) from None

    def run_pictures(self, job: PictureJob) -> Mapping[InferencePass, tuple[PoseFrame, ...]]:
        """Run the passes of a job over frames held in memory.

        Returns
        -------
        Mapping
            By pass: the people of each frame, in the frames' order.

        Raises
        ------
        ModelError
            If a bundle cannot be used.
        PoseProcessError
            If the process crashed, hung, was stopped or sent nonsense.
        """
        try:
            return self._run(job.passes, picture_orders(job), None)[1]
        except WorkerError as fault:
            raise PoseProcessError(
                TranslatableMessage(
                    "The pictures could not be read: {fault}.", {"fault": str(fault)}
                )
            ) from None

    def prepare(self) -> None:
        """Start the process and give it every bundle, so that the first job need not wait.

        Raises
        ------
        PoseProcessError
            If it does not start.
        """
        try:
            self._worker.prepare(self._models)
        except WorkerError as fault:
            self._worker.drop()
            raise PoseProcessError(
                TranslatableMessage(
                    "Body tracking could not be started: {fault}.", {"fault": str(fault)}
                )
            ) from None

    def stop(self) -> None:
        """Break off the work at hand, from any thread; it then ends with an error."""
        self._worker.stop()

    def close(self) -> None:
        """End the process."""
        self._worker.close()

    def _run(
        self,
        passes: tuple[InferencePass, ...],
        orders: Iterable[Message],
        progress: Callable[[float], None] | None,
    ) -> tuple[ClipInfo | None, Mapping[InferencePass, tuple[PoseFrame, ...]]]:
        """Give orders; return the clip's facts and the frames of each pass."""
        qualities = {inference_pass.quality for inference_pass in passes}
        missing = qualities - self._models.keys()
        if missing:
            raise ValueError(f"no model was given for {', '.join(sorted(missing))}")
        try:
            self._worker.prepare({quality: self._models[quality] for quality in qualities})
            for order in orders:
                self._worker.send(order, self._stall_s)
            return self._collect(passes, progress or (lambda share: None))
        except BaseException as error:
            if not isinstance(error, ThawlineError):
                self._worker.drop()  # broken, or stopped midway: it may still be busy
            raise

    def _collect(
        self, passes: tuple[InferencePass, ...], progress: Callable[[float], None]
    ) -> tuple[ClipInfo | None, Mapping[InferencePass, tuple[PoseFrame, ...]]]:
        frames: list[list[PoseFrame]] = [[] for _ in passes]
        while True:
            answer = self._worker.receive(self._stall_s)
            match answer:
                case PoseFrames():
                    if not 0 <= answer.pass_number < len(frames):
                        raise _protocol_error(f"frames of pass {answer.pass_number}")
                    frames[answer.pass_number].extend(answer.frames())
                case JobProgress():
                    progress(answer.share)
                case Failed():
                    raise _error_of(answer)
                case Done():
                    progress(1.0)
                    return answer.info, dict(zip(passes, map(tuple, frames), strict=True))
                case _:
                    raise _protocol_error(f"{type(answer).__name__} at the wrong time")


def _protocol_error(text: str) -> WorkerError:
    return WorkerError(f"the pose process answered nonsense ({text})")


def _error_of(answer: Failed) -> Exception:
    error = answer.exception()
    return WorkerError(str(error)) if isinstance(error, PoseProcessError) else error
