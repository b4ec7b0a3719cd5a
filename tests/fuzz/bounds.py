"""Memory while fuzzing: what was taken at most, and an end to what takes without end."""

import sys


def most_memory_mb() -> float:
    """Return the most memory that this process ever held, megabytes; 0 where nobody tells."""
    if sys.platform == "win32":
        return 0.0
    import resource

    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return most / (1 << 20) if sys.platform == "darwin" else most / 1024


def bound_memory(most_bytes: int) -> None:
    """Let this process and those that it starts meet a MemoryError instead of taking it all."""
    if sys.platform == "linux":
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (most_bytes, most_bytes))
