"""`make fuzz`: damaged clips and files by the thousand.

    python -m tests.fuzz.run [--clips N] [--files N] [--first SEED]

The same seed is the same damage. Ends with 1 when anything but a reading, a refusal or a
sentence came of it.
"""

import argparse
import os
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.fuzz import fuzz_clips, fuzz_files
from tests.fuzz.bounds import bound_memory

#: Addresses that a process may have; one with the libraries loaded has 2 GB of them.
MOST_BYTES = 6 << 30


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--clips", type=int, default=2000)
    parser.add_argument("--files", type=int, default=2000)
    parser.add_argument("--first", type=int, default=0, help="the first seed")
    arguments = parser.parse_args()
    bound_memory(MOST_BYTES)
    with TemporaryDirectory() as folder:
        os.environ["THAWLINE_DATA"] = folder
        place = Path(folder) / "damaged"
        place.mkdir()
        files = fuzz_files.fuzz(place, arguments.first, arguments.files)
        print(
            f"{files.tried} files: {files.used} used, {files.sentences} answered in words, "
            f"{len(files.faults)} faults; the slowest took {files.slowest_s:.1f} s; "
            f"{files.largest_mb:.0f} MB at most",
            flush=True,
        )
        with fuzz_clips.scripted_process() as process:
            clips = fuzz_clips.fuzz(
                process, fuzz_clips.MODELS, place, arguments.first, arguments.clips
            )
    print(
        f"{clips.tried} clips: {clips.readings} read, {clips.refusals} refused, "
        f"{clips.sentences} answered in words, {len(clips.faults)} faults; the slowest took "
        f"{clips.slowest_s:.1f} s; the process held {clips.largest_mb:.0f} MB at most"
    )
    faults = files.faults + clips.faults
    print("".join(f"{fault}\n" for fault in faults), end="")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
