"""The skeleton of a worker process: its pipes to the supervisor, and the loading of models.

Its two mains are :mod:`measure.pose.clip_worker` and :mod:`measure.live.worker`. A worker takes
orders over its standard input and answers over what was its standard output. Both its text streams
lead to its error stream, which the supervisor keeps in a log, so the noise of native code reaches
no terminal. It ends when its supervisor does.
"""

import faulthandler
import os
import queue
import signal
import sys
import threading
from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Any, BinaryIO

from measure.pose.inference import PoseEstimator
from measure.pose.message_pipe import GarbledError, Message, read_message, write_message
from measure.pose.messages import (
    LoadModel,
    Ready,
)
from measure.pose_models.catalogue import ModelQuality

if TYPE_CHECKING:
    from msgspec.msgpack import Decoder


class WorkerPipes:
    """The worker's end of the pipes; opening it makes this process a worker.

    Parameters
    ----------
    decoder
        The decoder of orders.

    Attributes
    ----------
    orders
        Orders that wait.
    """

    def __init__(self, decoder: "Decoder[Any]") -> None:
        self.orders: queue.SimpleQueue[Message] = queue.SimpleQueue()
        incoming, self._outgoing = _take_pipes()
        self._decoder = decoder
        self._lock = threading.Lock()
        faulthandler.enable()
        signal.signal(signal.SIGINT, signal.SIG_IGN)  # the supervisor decides
        threading.Thread(target=self._listen, args=(incoming,), daemon=True).start()

    def send(self, answer: Message) -> None:
        """Send an answer, from any thread. Without a listener the process ends."""
        try:
            with self._lock:
                write_message(self._outgoing, answer)
        except OSError:
            os._exit(0)

    def _listen(self, incoming: BinaryIO) -> None:
        """Queue orders; end the process when its supervisor is gone, busy or not."""
        try:
            while (order := read_message(incoming, self._decoder)) is not None:
                self.orders.put(order)
                del order  # its frames are not kept while the next order is waited for
        except (GarbledError, OSError):
            os._exit(2)
        os._exit(0)


class Worker:
    """What every worker does: say that it is ready, and take the models it is given.

    Parameters
    ----------
    pipes
        Where orders come from and answers go.
    make_estimator
        Makes a network from the bytes of a bundle.
    """

    def __init__(self, pipes: WorkerPipes, make_estimator: Callable[..., PoseEstimator]) -> None:
        self._pipes = pipes
        self._make_estimator = make_estimator
        self._makers: dict[ModelQuality, Callable[..., PoseEstimator]] = {}
        self._parts: list[bytes] = []

    def send(self, answer: Message) -> None:
        """Send an answer."""
        self._pipes.send(answer)

    def load(self, order: LoadModel) -> None:
        """Use a model from now on, once all its parts have come."""
        self._parts.append(order.content)
        if order.is_last:
            self._makers[order.quality] = partial(self._make_estimator, b"".join(self._parts))
            self._parts = []
            self.send(Ready())


def _take_pipes() -> tuple[BinaryIO, BinaryIO]:
    """Return the two pipes, and lead everything else that is written to the error stream."""
    incoming = os.fdopen(os.dup(0), "rb")
    outgoing = os.fdopen(os.dup(1), "wb")
    os.dup2(2, 1)
    nothing = os.open(os.devnull, os.O_RDONLY)
    os.dup2(nothing, 0)
    os.close(nothing)
    sys.stdout = sys.stderr
    return incoming, outgoing
