"""Release of freed memory to the system (on Linux; elsewhere it happens by itself).

Each run of a network takes and frees tens of megabytes on several threads. The C library keeps
what was freed in pieces, among them what is still needed, so that a process with 35 MB in use
came to hold 250. Large pieces of their own go back at once, the rest when it is asked for.
"""

import ctypes
import sys
from functools import cache

#: For the environment of a process that runs networks: pieces of a megabyte are of their own, and
#: two megabytes at the end of what each thread was given may wait. Left to itself the C library
#: raises the first limit to 32 MB with the first large piece, and the second to 64; smaller ones
#: would cost hundreds of page faults a frame.
HEAP_LIMITS = {
    "MALLOC_MMAP_THRESHOLD_": str(1 << 20),
    "MALLOC_TRIM_THRESHOLD_": str(2 << 20),
}


def release_freed() -> None:
    """Give freed memory back to the system."""
    library = _c_library()
    if library is not None:
        library.malloc_trim(0)


@cache
def _c_library() -> ctypes.CDLL | None:
    """Return the C library, if it keeps freed memory until asked to release it."""
    library = ctypes.CDLL(None) if sys.platform == "linux" else None
    return library if hasattr(library, "malloc_trim") else None
