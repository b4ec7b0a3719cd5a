"""What a tree of processes holds: memory, open files and connections, threads (Linux)."""

import os
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Usage:
    """Sums over a process and all that it started."""

    memory_mb: float
    handles: int
    threads: int
    processes: int


def usage() -> Usage:
    """Return what this process and its descendants hold now."""
    memory_kb = handles = threads = processes = 0
    for number in descendants(os.getpid()):
        try:
            status = Path(f"/proc/{number}/status").read_text()
            open_here = len(os.listdir(f"/proc/{number}/fd"))
        except OSError:
            continue  # it ended meanwhile
        told = dict(line.split(":", 1) for line in status.splitlines())
        # What files and shared memory take is not counted: it belongs to nobody.
        memory_kb += int(told.get("RssAnon", "0 kB").split()[0])
        threads += int(told["Threads"])
        handles += open_here
        processes += 1
    return Usage(memory_mb=memory_kb / 1024, handles=handles, threads=threads, processes=processes)


def descendants(number: int) -> list[int]:
    """Return a process and all that it started, itself first."""
    found = [number]
    for one in found:
        for path in Path(f"/proc/{one}/task").glob("*/children"):
            try:
                found += [int(each) for each in path.read_text().split()]
            except OSError:
                continue
    return found
