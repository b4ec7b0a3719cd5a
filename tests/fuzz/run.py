"""`make fuzz`: damaged clips and files by the thousand.

    python -m tests.fuzz.run [--clips N] [--files N] [--first SEED] [--write]

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
from tests.proof.page import Proof, finish, typed_command

#: Addresses that a process may have; one with the libraries loaded has 2 GB of them.
MOST_BYTES = 6 << 30


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--clips", type=int, default=2000)
    parser.add_argument("--files", type=int, default=2000)
    parser.add_argument("--first", type=int, default=0, help="the first seed")
    parser.add_argument("--write", action="store_true", help="write the rows into the page")
    arguments = parser.parse_args()
    command = typed_command("tests.fuzz.run")
    bound_memory(MOST_BYTES)
    with TemporaryDirectory() as folder:
        os.environ["THAWLINE_DATA"] = folder
        place = Path(folder) / "damaged"
        place.mkdir()
        files = fuzz_files.fuzz(place, arguments.first, arguments.files)
        of_files = Proof(
            subject="damaged files",
            counts=f"{files.tried} files: {files.used} used, {files.sentences} answered in words; "
            f"the slowest took {files.slowest_s:.1f} s; {files.largest_mb:.0f} MB at most",
            faults=tuple(files.faults),
            command=command,
        )
        code = finish((of_files,), wanted=arguments.write)
        with fuzz_clips.scripted_process() as process:
            clips = fuzz_clips.fuzz(
                process, fuzz_clips.MODELS, place, arguments.first, arguments.clips
            )
    of_clips = Proof(
        subject="damaged clips",
        counts=f"{clips.tried} clips: {clips.readings} read, {clips.refusals} refused, "
        f"{clips.sentences} answered in words; the slowest took {clips.slowest_s:.1f} s; "
        f"the process held {clips.largest_mb:.0f} MB at most",
        faults=tuple(clips.faults),
        command=command,
    )
    return code | finish((of_clips,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
