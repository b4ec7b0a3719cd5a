"""Zip files and arrays from anywhere: what can go wrong with them, and sizes checked first.

A file says itself how large its parts are, and need not tell the truth. Nothing is unpacked
before what it claims was held against what is there.
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

#: All that Python's readers of zip files and arrays raise for one that is damaged, encrypted,
#: packed in an unknown way, or lies about itself.
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
    """Check that a file of numpy arrays holds numbers only, as many as it says, and not too many.

    Parameters
    ----------
    file
        Left at its start.
    most_bytes
        Bound of all arrays together, unpacked.

    Raises
    ------
    ValueError
        Saying what is wrong; others of :data:`ARCHIVE_ERRORS` where it is no such file at all.
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
