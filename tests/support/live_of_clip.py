"""Plays a clip live for some seconds and prints how many pictures showed a person."""

import sys
import time
from pathlib import Path

from measure.live.engine import LiveEngine
from measure.live.events import Source


def main() -> None:
    engine = LiveEngine(stall_s=20.0)
    engine.start(Source(clip=Path(sys.argv[1])))
    seen, until_s = 0, time.monotonic() + 60.0
    while seen < int(sys.argv[2]) and time.monotonic() < until_s:
        frame = engine.newest_frame()
        seen += frame is not None and frame.points_px is not None
        time.sleep(0.005)
    engine.close(4.0)
    print(seen)


if __name__ == "__main__":
    main()
