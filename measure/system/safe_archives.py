"""Safe archives: checks of zip files and numpy arrays of unknown origin before they are unpacked.

A file states the size of its parts itself and may be wrong. Nothing is unpacked before the stated
sizes were compared with the bytes that are there.
"""

import math
import struct
import tarfile
import tokenize
import zipfile
import zlib
from typing import BinaryIO

import numpy as np
from numpy.lib import format as npy

#: Errors that Python's readers of zip files and arrays raise for a file that is damaged, encrypted,
#: packed in an unknown way, or inconsistent.
ARCHIVE_ERRORS: tuple[type[Exception], ...] = (
    EOFError,
    KeyError,
    MemoryError,
    OSError,
    RuntimeError,  # encrypted; not implemented; nested too deeply
    SyntaxError,
    TypeError,
    ValueError,
    struct.error,
    tarfile.TarError,
    tokenize.TokenError,
    zipfile.BadZipFile,
    zlib.error,
)

_READ_HEADER = {
    (1, 0): npy.read_array_header_1_0,
    (2, 0): npy.read_array_header_2_0,
}


def check_arrays(file: BinaryIO, most_bytes: int) -> None:
    """Check that a file of numpy arrays holds only numbers, as many as stated, within a bound.

    Parameters
    ----------
    file
        Left at its start.
    most_bytes
        Largest size of all arrays together, unpacked.

    Raises
    ------
    ValueError
        The text says what is wrong; others of :data:`ARCHIVE_ERRORS` where it is no such file.
    """
    with zipfile.ZipFile(file) as packed:
        entries = packed.infolist()
        if sum(entry.file_size for entry in entries) > most_bytes:
            raise ValueError("it holds more than any file of this kind")
        for entry in entries:
            with packed.open(entry) as member:
                _check_array(member, entry)  # type: ignore[arg-type]
    file.seek(0)


def _check_array(member: BinaryIO, entry: zipfile.ZipInfo) -> None:
    read_header = _READ_HEADER.get(npy.read_magic(member))
    if read_header is None:
        raise ValueError("an array has an unknown form")
    shape, _, kind = read_header(member)
    if np.dtype(kind).kind not in "fiub":
        raise ValueError("an array holds something else than numbers")
    if (
        min(shape, default=0) < 0
        or math.prod(shape) * kind.itemsize > entry.file_size - member.tell()
    ):
        raise ValueError("an array says that it is larger than it is")
