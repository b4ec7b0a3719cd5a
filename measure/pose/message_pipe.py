"""Typed messages on a pipe: their encoding, their framing, and the checks on arrival.

Every kind of message is a tagged structure, written as MessagePack behind a fixed head. Nothing
that arrives is ever executed, and anything else on the pipe is noticed at once.
"""

import os
import struct
from pathlib import Path
from typing import Any, BinaryIO, TypeVar, get_args

import msgspec
import numpy as np

_HEAD = struct.Struct(">8sQ")
_MARK = b"TLPOSE2\n"

#: Largest message, bytes. [technical]
MOST_BYTES = 1 << 30

#: Code of MessagePack's extension type for the bytes of an array. [technical]
_ARRAY_BYTES = 1

_AnyMessage = TypeVar("_AnyMessage")


class GarbledError(ValueError):
    """Bytes that are no message, or a message that does not belong there."""


class Text(str):
    """A text that may hold parts of a file name that is no valid Unicode."""

    __slots__ = ()


class Message(msgspec.Struct, frozen=True, tag_field="kind"):
    """Any message."""

    @property
    def size_hint(self) -> int:
        """Bytes that it takes, about: a buffer that grows to many would be copied several times."""
        return 1 << 16


def write_message(pipe: BinaryIO, message: Message) -> None:
    """Write a message and flush.

    Raises
    ------
    OSError
        If nobody listens any more.
    """
    content = bytearray(_HEAD.size + message.size_hint)
    _ENCODER.encode_into(message, content, _HEAD.size)
    _HEAD.pack_into(content, 0, _MARK, len(content) - _HEAD.size)
    pipe.write(content)
    pipe.flush()


def read_message(
    pipe: BinaryIO, decoder: "msgspec.msgpack.Decoder[_AnyMessage]"
) -> _AnyMessage | None:
    """Wait for the next message; None at the end of the pipe. Its arrays are read-only.

    Raises
    ------
    GarbledError
        If anything else came.
    """
    head = pipe.read(_HEAD.size)
    if not head:
        return None
    if len(head) < _HEAD.size:
        raise GarbledError("the pipe ended inside a message")
    mark, size = _HEAD.unpack(head)
    if mark != _MARK or size > MOST_BYTES:
        raise GarbledError("something else than a message came")
    content = pipe.read(size)
    if len(content) < size:
        raise GarbledError("the pipe ended inside a message")
    try:
        return decoder.decode(content)
    except (msgspec.MsgspecError, ValueError, TypeError, RecursionError) as error:
        raise GarbledError(f"a message without sense came ({error})") from None


def decoder_of(kinds: Any) -> "msgspec.msgpack.Decoder[Any]":
    """Return the decoder for a union of kinds of message."""
    return msgspec.msgpack.Decoder(
        kinds, dec_hook=_from_plain, ext_hook=lambda code, content: content
    )


def _to_plain(value: Any) -> Any:
    """Return what stands for a value of a type that MessagePack has not."""
    if isinstance(value, np.ndarray):
        array = np.ascontiguousarray(value)
        content = array.data.cast("B") if array.nbytes else b""
        return array.dtype.str, value.shape, msgspec.msgpack.Ext(_ARRAY_BYTES, content)
    if isinstance(value, np.generic):
        return value.item()
    if isinstance(value, Path):
        return os.fsencode(value)
    if isinstance(value, Text):
        return value.encode("utf-8", "surrogatepass")
    raise NotImplementedError(type(value))


def _from_plain(kind: Any, value: Any) -> Any:
    """Return the value of a type that something stands for."""
    if kind is Path:
        return Path(os.fsdecode(value))
    if kind is Text:
        return Text(value if isinstance(value, str) else str(value, "utf-8", "surrogatepass"))
    ((dtype,),) = (get_args(part) for part in get_args(kind)[1:])
    stated, shape, content = value
    if stated != np.dtype(dtype).str or not isinstance(content, memoryview):
        raise ValueError("an array of another type")
    if not all(isinstance(length, int) and 0 <= length <= MOST_BYTES for length in shape):
        raise ValueError("an array without a shape")
    return np.frombuffer(content, dtype=dtype).reshape(shape)


_ENCODER = msgspec.msgpack.Encoder(enc_hook=_to_plain)
