"""Pose work on clips, done by a supervised process of its own.

A crash or a hang of native code, its log noise and its wish to report usage stay in that
process. Whatever happens to it, the work at hand ends with an error that names the clip, and
the next piece of work finds a new process.
"""

import sys
from collections.abc import Callable, Iterable, Mapping
from types import TracebackType
from typing import Self

import numpy as np

from measure.domain.tracks import PoseFrame
from measure.errors import PoseProcessError, ThawlineError
from measure.pose.child_process import ChildProcess, WorkerError
from measure.pose.jobs import ClipInference, ClipInfo, ClipJob, InferencePass
from measure.pose.messages import (
    GarbledError,
    Message,
    MessageKind,
    error_of,
    frames_of,
    info_of,
    message_of_job,
)
from measure.pose.picture_job import PictureJob, messages_of_pictures
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality

__all__ = ["ClipInference", "ClipInfo", "ClipJob", "InferencePass", "PoseProcess"]

#: The process counts as hung after so long without a sign of life. Ours: the slowest network
#: takes a tenth of a second a picture.
STALL_S = 30.0

#: Longest start. Ours: importing the libraries from a cold disk takes long.
START_S = 120.0


class PoseProcess:
    """One supervised pose process for many jobs, one after the other.

    The process starts with the first job. Not for several threads at once.

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
        self._start_s = start_s
        self._command = command or (sys.executable, "-P", "-m", "measure.pose.worker")
        self._process: ChildProcess | None = None
        self._sent: set[ModelQuality] = set()

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
        return self._process.process_id if self._process else None

    def run(self, job: ClipJob, progress: Callable[[float], None] | None = None) -> ClipInference:
        """Look at a clip.

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
            If the process crashed, hung or talked nonsense; the text names the clip.
        """
        try:
            done, frames = self._serve(job.passes, [message_of_job(job)], progress)
            return ClipInference(facts=_info(done), frames=frames)
        except WorkerError as fault:
            self._drop()
            raise PoseProcessError(
                f"The clip {job.clip.name} could not be looked at: {fault}. Other clips are not "
                "affected. Try it again; if it fails again, convert the clip to MP4 (H.264)."
            ) from None

    def run_pictures(self, job: PictureJob) -> Mapping[InferencePass, tuple[PoseFrame, ...]]:
        """Look at pictures that were kept in memory.

        Returns
        -------
        Mapping
            By pass: what was found in each picture, in their order.

        Raises
        ------
        ModelError
            If a bundle cannot be used.
        PoseProcessError
            If the process crashed, hung, was stopped or talked nonsense.
        """
        try:
            return self._serve(job.passes, messages_of_pictures(job), None)[1]
        except WorkerError as fault:
            raise PoseProcessError(f"The pictures could not be looked at: {fault}.") from None

    def prepare(self) -> None:
        """Start the process and give it every bundle, so that the first work need not wait.

        Raises
        ------
        PoseProcessError
            If it does not start.
        """
        try:
            self._ready(set(self._models))
        except WorkerError as fault:
            self._drop()
            raise PoseProcessError(f"The pose part could not be started: {fault}.") from None

    def stop(self) -> None:
        """Break off the work at hand, from any thread; it then ends with an error."""
        process = self._process
        if process is not None:
            process.stop()

    def _serve(
        self,
        passes: tuple[InferencePass, ...],
        orders: Iterable[Message],
        progress: Callable[[float], None] | None,
    ) -> tuple[Message, Mapping[InferencePass, tuple[PoseFrame, ...]]]:
        """Give orders; return the last answer and the frames of each pass."""
        missing = {each.quality for each in passes} - self._models.keys()
        if missing:
            raise ValueError(f"no model was given for {', '.join(sorted(missing))}")
        try:
            process = self._ready({each.quality for each in passes})
            for order in orders:
                process.send(order, self._stall_s)
            return self._collect(process, passes, progress or (lambda share: None))
        except BaseException as error:
            if not isinstance(error, ThawlineError):
                self._drop()  # broken, or stopped midway: it may still be busy
            raise

    def close(self) -> None:
        """End the process."""
        if self._process is not None:
            process, self._process = self._process, None
            process.end()

    def _drop(self) -> None:
        if self._process is not None:
            process, self._process = self._process, None
            process.kill()

    def _ready(self, qualities: set[ModelQuality]) -> ChildProcess:
        if self._process is None or not self._process.is_alive:
            self._drop()
            self._process = ChildProcess(self._command)
            self._sent = set()
            self._expect_ready(self._process)
        for quality in sorted(qualities - self._sent):
            self._process.send(_model_message(quality, self._models[quality]), self._start_s)
            self._expect_ready(self._process)
            self._sent.add(quality)
        return self._process

    def _expect_ready(self, process: ChildProcess) -> None:
        message = process.receive(self._start_s)
        if message.kind is not MessageKind.READY:
            raise WorkerError("the pose process did not start as it should")

    def _collect(
        self,
        process: ChildProcess,
        passes: tuple[InferencePass, ...],
        progress: Callable[[float], None],
    ) -> tuple[Message, Mapping[InferencePass, tuple[PoseFrame, ...]]]:
        found: list[list[PoseFrame]] = [[] for _ in passes]
        while True:
            message = process.receive(self._stall_s)
            try:
                if message.kind is MessageKind.FRAMES:
                    found[message.values["pass"]].extend(frames_of(message))
                elif message.kind is MessageKind.PROGRESS:
                    progress(float(message.values["share"]))
                elif message.kind is MessageKind.ERROR:
                    raise _error_from(message)
                elif message.kind is MessageKind.DONE:
                    progress(1.0)
                    return message, dict(zip(passes, map(tuple, found), strict=True))
                else:
                    raise GarbledError(f"{message.kind} at the wrong time")
            except (GarbledError, KeyError, IndexError, TypeError) as error:
                raise _protocol_error(error) from None


def _info(done: Message) -> ClipInfo:
    try:
        return info_of(done)
    except (KeyError, TypeError) as error:
        raise _protocol_error(error) from None


def _protocol_error(error: Exception) -> WorkerError:
    return WorkerError(f"the pose process answered nonsense ({error})")


def _error_from(message: Message) -> Exception:
    error = error_of(message)
    return WorkerError(str(error)) if isinstance(error, PoseProcessError) else error


def _model_message(quality: ModelQuality, bundle: Bundle) -> Message:
    content = np.frombuffer(bundle.content, dtype=np.uint8)
    return Message(
        kind=MessageKind.MODEL, values={"quality": quality.value}, arrays={"bundle": content}
    )
