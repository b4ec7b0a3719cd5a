"""Shared frames: frames handed from the live worker to the window's process in shared memory.

A few slots of equal size: the one side fills a free slot and says so over the pipe, the other
copies the frame out and frees the slot. Nothing here is ever written to a disk.
"""

import contextlib
import os
import sys
from multiprocessing import resource_tracker, shared_memory
from typing import Self

import numpy as np

from measure.video.frame import LONGEST_SIDE_PX, PixelArray

#: Slots: one being filled, one being copied, and room for a hiccup. [technical]
SLOTS = 6

_SLOT_BYTES = LONGEST_SIDE_PX * LONGEST_SIDE_PX * 3


class SharedFrameRing:
    """The slots. The window's process makes them, the live worker joins by name.

    Memory that no frame has used yet takes no room.
    """

    def __init__(self, memory: shared_memory.SharedMemory, *, owner: bool) -> None:
        assert memory.buf is not None
        self._memory = memory
        self._bytes = memory.buf
        self._owner = owner

    @classmethod
    def make(cls) -> Self:
        """Make free slots."""
        size = SLOTS + SLOTS * _SLOT_BYTES
        return cls(shared_memory.SharedMemory(create=True, size=size), owner=True)

    @classmethod
    def join(cls, name: str) -> Self:
        """Use the slots that another process made."""
        return cls(_attached(name), owner=False)

    @property
    def name(self) -> str:
        return self._memory.name

    def put(self, rgb: PixelArray) -> int | None:
        """Fill a free slot and return its number, or None if all are taken.

        Parameters
        ----------
        rgb
            Shape (h, w, 3), no side longer than :data:`measure.video.frame.LONGEST_SIDE_PX`.
        """
        for slot in range(SLOTS):
            if self._bytes[slot] == 0:
                self._view(slot, rgb.shape)[...] = rgb
                self._bytes[slot] = 1
                return slot
        return None

    def take(self, slot: int, shape: tuple[int, int]) -> PixelArray:
        """Copy a frame of the given height and width out of a slot, and free the slot."""
        copy: PixelArray = self._view(slot, (*shape, 3)).copy()
        self._bytes[slot] = 0
        return copy

    def free_all(self) -> None:
        """Free every slot, when nobody fills them any more."""
        for slot in range(SLOTS):
            self._bytes[slot] = 0

    def close(self) -> None:
        """Let go; the process that made them also removes them."""
        with contextlib.suppress(BufferError):  # a frame is still being copied out
            self._memory.close()
        if self._owner:
            with contextlib.suppress(FileNotFoundError):
                self._memory.unlink()

    def _view(self, slot: int, shape: tuple[int, ...]) -> PixelArray:
        start = SLOTS + slot * _SLOT_BYTES
        return np.ndarray(shape, dtype=np.uint8, buffer=self._bytes, offset=start)


def _attached(name: str) -> shared_memory.SharedMemory:
    """Return memory that another process made and will remove.

    Before Python 3.13 a process that joins notes it for removal at its own end, too early.
    """
    if sys.version_info >= (3, 13):
        return shared_memory.SharedMemory(name=name, track=False)
    if os.name != "posix":
        return shared_memory.SharedMemory(name=name)
    note, resource_tracker.register = resource_tracker.register, lambda *ignored: None
    try:
        return shared_memory.SharedMemory(name=name)
    finally:
        resource_tracker.register = note
