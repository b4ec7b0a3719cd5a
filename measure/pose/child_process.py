"""A child process at the other end of two pipes, the threads that read from it, and its log.

What workers do is elsewhere (:mod:`measure.pose.clip_worker`, :mod:`measure.live.worker`), as is
when they are replaced (:mod:`measure.pose.supervisor`).
"""

import contextlib
import os
import queue
import signal
import subprocess
import threading
from pathlib import Path
from typing import TYPE_CHECKING, Any, BinaryIO, cast

from measure.pose.memory import HEAP_LIMITS
from measure.pose.message_pipe import GarbledError, Message, read_message, write_message
from measure.system.paths import data_folder, log_folder, make_private

if TYPE_CHECKING:
    from msgspec.msgpack import Decoder

#: Messages that may wait for the supervisor; the process then waits too. [technical]
_WAITING = 64

#: Longest wait for a process that was asked to end, seconds. [technical]
_END_S = 5.0

#: Size at which the log becomes the old log, bytes; with the old one twice as much is kept.
#: [technical]
MOST_LOG_BYTES = 1 << 20

#: How much nicer a worker is than the window, so that the window does not wait. [technical]
NICENESS = 5

_AT_ITS_END = os.O_CREAT | os.O_WRONLY | os.O_APPEND


class WorkerError(Exception):
    """The process crashed, hung, failed or sent something that is no answer."""


class SilentWorkerError(WorkerError):
    """The process gave no sign of life for too long."""

    def __init__(self, limit_s: float) -> None:
        super().__init__(f"the pose process gave no sign of life for {limit_s:g} s")


class ChildProcess:
    """A running worker process and the threads that read its answers and its log.

    Parameters
    ----------
    command
        The program and its arguments.
    answers
        The decoder of its answers.
    """

    def __init__(self, command: tuple[str, ...], answers: "Decoder[Any]") -> None:
        self._answers = answers
        try:
            self._popen = subprocess.Popen(
                command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
                env=_environment(),
                creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0)
                | getattr(subprocess, "BELOW_NORMAL_PRIORITY_CLASS", 0),
            )
        except OSError as error:
            raise WorkerError(f"the pose process could not be started ({error.strerror})") from None
        _lower_priority(self._popen.pid)
        self._stdin = cast(BinaryIO, self._popen.stdin)
        self._messages: queue.Queue[Message | GarbledError | None] = queue.Queue(_WAITING)
        self._dropped = threading.Event()
        self._threads = (
            threading.Thread(target=self._take, args=(self._popen.stdout,), daemon=True),
            threading.Thread(target=_keep_log, args=(self._popen.stderr,), daemon=True),
        )
        for thread in self._threads:
            thread.start()

    @property
    def process_id(self) -> int:
        return self._popen.pid

    @property
    def is_alive(self) -> bool:
        return self._popen.poll() is None

    def send(self, message: Message, limit_s: float) -> None:
        """Send a message; a process that does not take it in time is killed."""
        late = threading.Event()

        def give_up() -> None:
            late.set()
            self._popen.kill()

        watch = threading.Timer(limit_s, give_up)
        watch.start()
        try:
            write_message(self._stdin, message)
        except OSError:
            if late.is_set():
                raise SilentWorkerError(limit_s) from None
            raise WorkerError(self._ending()) from None
        finally:
            watch.cancel()

    def poll(self, limit_s: float) -> Message | None:
        """Return the next answer, None if none came in time, or raise what ended the process."""
        try:
            message = self._messages.get(timeout=limit_s)
        except queue.Empty:
            return None
        if message is None:
            raise WorkerError(self._ending())
        if isinstance(message, GarbledError):
            raise WorkerError(f"the pose process answered nonsense: {message}")
        return message

    def end(self) -> None:
        """Let it end: it does when its pipe is closed."""
        with contextlib.suppress(OSError):
            self._stdin.close()
        with contextlib.suppress(subprocess.TimeoutExpired):
            self._popen.wait(_END_S)
        self.kill()

    def stop(self) -> None:
        """End it at once, from any thread; waiting for an answer then raises an error."""
        self._popen.kill()

    def kill(self) -> None:
        """End it at once and wait for its threads."""
        self._dropped.set()
        self._popen.kill()
        self._popen.wait()
        for thread in self._threads:
            thread.join()
        with contextlib.suppress(OSError):
            self._stdin.close()

    def _take(self, pipe: BinaryIO) -> None:
        """Read answers until the pipe ends; each waits here until there is room for it."""
        with pipe:
            while not self._dropped.is_set():
                message: Message | GarbledError | None
                try:
                    message = read_message(pipe, self._answers)
                except (GarbledError, OSError) as error:
                    message = GarbledError(str(error))
                self._wait_to_put(message)
                if not isinstance(message, Message):
                    return

    def _wait_to_put(self, message: Message | GarbledError | None) -> None:
        while not self._dropped.is_set():
            try:
                self._messages.put(message, timeout=0.1)
                return
            except queue.Full:
                continue

    def _ending(self) -> str:
        try:
            code = self._popen.wait(_END_S)
        except subprocess.TimeoutExpired:
            return "the pose process closed its pipe"
        name = signal.strsignal(-code) if code < 0 else None
        return f"the pose process crashed ({name or f'code {code}'})"


def _lower_priority(process_id: int) -> None:
    """Give a process that has just started a lower priority than the window's.

    Its threads inherit this. On Windows it is asked for at the start.
    """
    if hasattr(os, "setpriority"):
        with contextlib.suppress(OSError):
            ours = os.getpriority(os.PRIO_PROCESS, 0)
            os.setpriority(os.PRIO_PROCESS, process_id, ours + NICENESS)


def _environment() -> dict[str, str]:
    """Return the variables that the process is started with."""
    own_folder = str(Path(__file__).resolve().parents[2])
    before = os.environ.get("PYTHONPATH")
    return {
        **HEAP_LIMITS,
        **os.environ,
        "PYTHONPATH": os.pathsep.join([own_folder, before] if before else [own_folder]),
        "OPENCV_LOG_LEVEL": "SILENT",  # its lines may name the clip
        "OPENCV_FFMPEG_LOGLEVEL": "-8",
        "MPLBACKEND": "Agg",  # the network's library imports the plotting one
    }


def log_path() -> Path:
    """Return where the log is kept; beside it lies the one before, ending in ".old".

    It holds what native code writes; no readings, names or clip paths are written there.
    """
    return log_folder() / "pose.log"


def _keep_log(pipe: BinaryIO) -> None:
    """Move everything from a pipe to the log until the pipe ends.

    A log that cannot be written is no reason to stop: the pipe is emptied all the same.
    """
    path = log_path()
    with pipe:
        while piece := os.read(pipe.fileno(), 1 << 16):
            try:
                _append(path, piece)
            except OSError:
                continue


def _append(path: Path, piece: bytes) -> None:
    make_private(data_folder())
    make_private(path.parent)
    if path.exists() and path.stat().st_size + len(piece) > MOST_LOG_BYTES:
        path.replace(path.with_suffix(".old"))
    with os.fdopen(os.open(path, _AT_ITS_END, 0o600), "ab") as log:
        log.write(piece)
