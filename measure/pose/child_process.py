"""A process of our own at the other end of two pipes, and the threads that listen to it.

What such processes do is elsewhere (:mod:`measure.pose.worker`, :mod:`measure.live.worker`);
this is how one is started, spoken to, waited for and ended, whatever it does.
"""

import contextlib
import os
import queue
import signal
import subprocess
import threading
from pathlib import Path
from typing import BinaryIO, cast

from measure.pose.log import keep_log
from measure.pose.memory import HEAP_LIMITS
from measure.pose.messages import GarbledError, Message, read_message, write_message

#: Messages that may wait for the supervisor; the process then waits too.
_WAITING = 64

#: Longest wait for a process that was asked to end.
_END_S = 5.0


class WorkerError(Exception):
    """The process crashed, hung, failed or talked nonsense."""


class ChildProcess:
    """A running pose process and the thread that takes what it says."""

    def __init__(self, command: tuple[str, ...]) -> None:
        try:
            self._popen = subprocess.Popen(
                command,
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
                env=_environment(),
                creationflags=getattr(subprocess, "CREATE_NO_WINDOW", 0),
            )
        except OSError as error:
            raise WorkerError(f"the pose process could not be started ({error.strerror})") from None
        self._stdin = cast(BinaryIO, self._popen.stdin)
        self._messages: queue.Queue[Message | GarbledError | None] = queue.Queue(_WAITING)
        self._dropped = threading.Event()
        self._threads = (
            threading.Thread(target=self._take, args=(self._popen.stdout,), daemon=True),
            threading.Thread(target=keep_log, args=(self._popen.stderr,), daemon=True),
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
            ending = _no_sign(limit_s) if late.is_set() else self._ending()
            raise WorkerError(ending) from None
        finally:
            watch.cancel()

    def receive(self, limit_s: float) -> Message:
        """Return the next message, or raise what happened instead."""
        message = self.poll(limit_s)
        if message is None:
            raise WorkerError(_no_sign(limit_s))
        return message

    def poll(self, limit_s: float) -> Message | None:
        """Return the next message, None if none came in time, or raise what ended it."""
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
        """End it at once, from any thread; whoever waits for a message is told."""
        self._popen.kill()

    def kill(self) -> None:
        self._dropped.set()
        self._popen.kill()
        self._popen.wait()
        for thread in self._threads:
            thread.join()
        with contextlib.suppress(OSError):
            self._stdin.close()

    def _take(self, pipe: BinaryIO) -> None:
        """Take messages until the pipe ends; each waits here until it is asked for."""
        with pipe:
            while not self._dropped.is_set():
                message: Message | GarbledError | None
                try:
                    message = read_message(pipe)
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


def _no_sign(limit_s: float) -> str:
    return f"the pose process gave no sign of life for {limit_s:g} s"


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
