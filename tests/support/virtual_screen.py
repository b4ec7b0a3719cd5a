"""A screen that is not there (Xvfb), for tests and benches that need a real one."""

import contextlib
import os
import shutil
import subprocess
from collections.abc import Iterator


def can_be_made() -> bool:
    return shutil.which("Xvfb") is not None


@contextlib.contextmanager
def virtual_screen() -> Iterator[str]:
    """Yield the name that programs find the screen by."""
    read, write = os.pipe()
    screen = subprocess.Popen(
        ["Xvfb", "-displayfd", str(write), "-screen", "0", "1366x900x24", "-nolisten", "tcp"],
        pass_fds=[write],
        stderr=subprocess.DEVNULL,
    )
    os.close(write)
    try:
        with os.fdopen(read) as told:
            number = told.readline().strip()
        yield f":{number}"
    finally:
        screen.terminate()
        screen.wait(20)
