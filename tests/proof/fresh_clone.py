"""The two commands of the README on a fresh clone: empty home, no caches, new environment.

    python -m tests.proof.fresh_clone [--only demo] [--write]

Clones the last commit into a temporary folder and runs `make demo` and then `make test` there, as
somebody would who has just got the project. Needs the network, as they do. Ends with 1 where one of
them fails or takes longer than it should.
"""

import argparse
import os
import subprocess
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory

from tests.proof.page import ROOT, Proof, finish

#: Commands with the minutes that they may take on two processors, and what they are.
COMMANDS = {
    "demo": (2.5, "set-up from nothing, then all sample clips"),
    "test": (15.0, "all tests, after the demo"),
}


def timed(target: str, clone: Path, home: Path) -> tuple[float, str]:
    """Run `make` with a target in a clone; return the minutes, and its last lines if it failed."""
    began_s = time.monotonic()
    done = subprocess.run(
        ["make", target],
        cwd=clone,
        env={"PATH": os.environ["PATH"], "HOME": str(home), "LANG": "C.UTF-8"},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        check=False,
    )
    minutes = (time.monotonic() - began_s) / 60
    last = " ".join(done.stdout.strip().splitlines()[-5:])
    return minutes, last if done.returncode else ""


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--only", choices=COMMANDS, nargs="+", default=list(COMMANDS))
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    arguments = parser.parse_args()
    faults, took = [], []
    with TemporaryDirectory() as folder:
        clone, home = Path(folder) / "clone", Path(folder) / "home"
        home.mkdir()
        subprocess.run(["git", "clone", "--quiet", str(ROOT), str(clone)], check=True)
        for target in arguments.only:
            most, what = COMMANDS[target]
            minutes, failed = timed(target, clone, home)
            took.append(f"`make {target}` ({what}) {minutes:.1f} minutes, at most {most:g} wanted")
            if failed:
                faults.append(f"make {target}: {failed}")
            elif minutes > most:
                faults.append(f"make {target} took {minutes:.1f} minutes")
    proof = Proof(
        subject="fresh clone",
        counts="; ".join(took),
        faults=tuple(faults),
        command=" ".join(
            ["python -m tests.proof.fresh_clone"]
            + (["--only", *arguments.only] if list(COMMANDS) != arguments.only else [])
        ),
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
