"""The pose process itself: started by :mod:`measure.pose.supervisor`, never by hand.

It takes bundles and clips over its standard input and answers over what was its standard
output. Both its text streams lead to its error stream, which the supervisor keeps in a log, so
the noise of native code reaches no terminal. It ends when its supervisor does.
"""

import contextlib
import faulthandler
import os
import queue
import signal
import sys
import threading
import traceback
from collections.abc import Callable, Mapping, Sequence
from functools import partial
from typing import Any, BinaryIO

from measure.domain.tracks import PoseFrame
from measure.errors import ThawlineError
from measure.pose.jobs import ClipJob
from measure.pose.memory import release_freed
from measure.pose.messages import (
    GarbledError,
    Message,
    MessageKind,
    error_message,
    frames_message,
    job_of,
    message_of_info,
    read_message,
    write_message,
)
from measure.pose.picture_job import PictureJob, pictures_of
from measure.pose_models.catalogue import ModelQuality


def main() -> None:
    """Serve jobs until the supervisor closes the pipe or is gone."""
    incoming, outgoing = take_pipes()
    faulthandler.enable()
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # the supervisor decides
    from measure.pose.network import PoseNetwork  # takes a second, and closes the way out first

    answers = Answers(outgoing)
    orders: queue.Queue[Message] = queue.Queue()
    threading.Thread(target=listen, args=(incoming, orders), daemon=True).start()
    makers: dict[ModelQuality, Callable[..., PoseNetwork]] = {}
    answers.send(Message(kind=MessageKind.READY))
    while True:
        _take(orders.get(), orders, makers, answers)
        release_freed()


def _take(
    order: Message,
    orders: "queue.Queue[Message]",
    makers: dict[ModelQuality, Callable[..., Any]],
    answers: "Answers",
) -> None:
    """Do what an order says; nothing of it is kept but the bundles."""
    from measure.pose.network import PoseNetwork

    if order.kind is MessageKind.MODEL:
        bundle = order.arrays["bundle"].tobytes()
        makers[ModelQuality(order.values["quality"])] = partial(PoseNetwork, bundle)
        answers.send(Message(kind=MessageKind.READY))
    elif order.kind is MessageKind.PICTURES:
        job = pictures_of(order, orders.get)
        _serve(partial(_picture_job_done, job, makers, answers), answers)
    elif order.kind is MessageKind.JOB:
        with contextlib.suppress(OSError):
            os.chdir(order.values["folder"])  # a clip's path may be relative to it
        _serve(partial(_info_of_clip, job_of(order), makers, answers), answers)
        if PoseNetwork.opened != PoseNetwork.closed:
            os.write(2, b"a network was left open\n")
            os._exit(3)


def _info_of_clip(
    job: ClipJob, makers: Mapping[ModelQuality, Callable[..., Any]], answers: "Answers"
) -> Message:
    from measure.pose.runner import run_job

    return message_of_info(
        run_job(job, _makers_for(makers, alone=job.alone, fine=job.fine), answers)
    )


def _picture_job_done(
    job: PictureJob, makers: Mapping[ModelQuality, Callable[..., Any]], answers: "Answers"
) -> Message:
    from measure.pose.runner import run_picture_job

    run_picture_job(job, _makers_for(makers, alone=job.alone, fine=True), answers)
    return Message(kind=MessageKind.DONE)


def _makers_for(
    makers: Mapping[ModelQuality, Callable[..., Any]], *, alone: bool, fine: bool
) -> Mapping[ModelQuality, Callable[..., Any]]:
    """Return makers of networks that look for one person, or for two, as the job wants."""
    how: dict[str, Any] = {"fine": fine, **({"people": 1} if alone else {})}
    return {quality: partial(make, **how) for quality, make in makers.items()}


def _serve(work: Callable[[], Message], answers: "Answers") -> None:
    try:
        done = work()
    except ThawlineError as error:
        answers.send(error_message(error))
    except Exception as error:  # noqa: BLE001 - the top of the process
        # Where it happened, for the log; not its text, which may name the clip.
        traceback.print_tb(error.__traceback__)
        answers.send(error_message(error))
    else:
        answers.send(done)


def take_pipes() -> tuple[BinaryIO, BinaryIO]:
    """Return the two pipes, and lead everything else that is written to the error stream."""
    incoming = os.fdopen(os.dup(0), "rb")
    outgoing = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)
    nothing = os.open(os.devnull, os.O_RDONLY)
    os.dup2(nothing, 0)
    os.close(nothing)
    sys.stdout = sys.stderr
    return incoming, outgoing


def listen(incoming: BinaryIO, orders: "queue.Queue[Message]") -> None:
    """Queue what the supervisor says; end the process when it is gone, busy or not."""
    try:
        while (order := read_message(incoming)) is not None:
            orders.put(order)
            del order  # pictures are not kept while the next order is waited for
    except (GarbledError, OSError):
        os._exit(2)
    os._exit(0)


class Answers:
    """Sends answers; may be used from several threads. Without a listener the process ends."""

    def __init__(self, outgoing: BinaryIO) -> None:
        self._outgoing = outgoing
        self._lock = threading.Lock()

    def send(self, message: Message) -> None:
        try:
            with self._lock:
                write_message(self._outgoing, message)
        except OSError:
            os._exit(0)  # nobody listens any more

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None:
        self.send(frames_message(pass_number, frames))

    def progress(self, share: float) -> None:
        self.send(Message(kind=MessageKind.PROGRESS, values={"share": share}))


if __name__ == "__main__":
    main()
