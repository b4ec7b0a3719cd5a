"""Bytes of messages between processes, whole or changed, as they come out of a pipe."""

import io
import struct
from collections.abc import Callable
from typing import Any

import msgspec

from measure.pose.message_pipe import Message, write_message


def framed(content: bytes) -> io.BytesIO:
    """Return a pipe that holds one message with this content."""
    return io.BytesIO(struct.pack(">8sQ", b"TLPOSE2\n", len(content)) + content)


def changed(message: Message, change: Callable[[dict[str, Any]], object]) -> io.BytesIO:
    """Return a pipe that holds a message after a change of its fields."""
    pipe = io.BytesIO()
    write_message(pipe, message)
    fields = msgspec.msgpack.decode(pipe.getvalue()[16:])
    change(fields)
    return framed(msgspec.msgpack.encode(fields))
