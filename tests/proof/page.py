"""The page of proof, measure/docs/proof.md: its rows, written by the commands that prove them.

A command that is run with `--write` calls :func:`write`; rows of other commands stay as they are.
"""

import datetime as dt
import re
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
DOCUMENT = ROOT / "measure/docs/proof.md"
_MARKS = re.compile(r"(<!-- proof:begin -->\n).*?(<!-- proof:end -->)", re.DOTALL)
_HEAD = "| what | counted | result | command | day | commit |\n|---|---|---|---|---|---|\n"

#: What is proven, in the order of the page.
SUBJECTS = (
    "damaged files", "damaged clips", "measuring on and on", "daily rounds on and on",
    "killed while saving", "killed during a round", "killed during a batch", "full disk",
    "two programs at once", "pose worker killed", "pose worker frozen", "clocks changed",
    "network traced", "bundle", "wheel and sdist", "other systems", "fresh clone",
)  # fmt: skip


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """What one command showed of one subject.

    Attributes
    ----------
    subject
        One of `SUBJECTS`.
    counts
        What was tried and what came of it, in words.
    faults
        What was not as it should be; empty where everything was.
    command
        As somebody types it.
    """

    subject: str
    counts: str
    faults: tuple[str, ...]
    command: str

    def row(self, day: dt.date, commit: str) -> str:
        """Return the row of the page's table."""
        result = f"{len(self.faults)} faults" if self.faults else "passed"
        cells = (self.subject, self.counts, result, f"`{self.command}`", str(day), commit)
        return f"| {' | '.join(cells)} |"


def write(*proofs: Proof) -> None:
    """Put rows into the page, with today's date and the commit that is checked out."""
    text = DOCUMENT.read_text(encoding="utf-8")
    new = with_rows(text, proofs, dt.date.today(), checked_out_commit())
    DOCUMENT.write_text(new, encoding="utf-8")


def with_rows(document: str, proofs: tuple[Proof, ...], day: dt.date, commit: str) -> str:
    """Return a document whose table has these rows; others that it has are left as they are."""
    marks = _MARKS.search(document)
    assert marks is not None, "the page lost its marks"
    lines = {line.split("|")[1].strip(): line for line in marks[0].splitlines() if "|" in line}
    lines |= {proof.subject: proof.row(day, commit) for proof in proofs}
    table = _HEAD + "".join(f"{lines[each]}\n" for each in SUBJECTS if each in lines)
    return _MARKS.sub(lambda found: found[1] + table + found[2], document)


def checked_out_commit() -> str:
    """Return the commit in short, with a plus where files other than the page differ from it."""

    def git(*words: str) -> str:
        done = subprocess.run(["git", *words], cwd=ROOT, capture_output=True, text=True, check=True)
        return done.stdout.strip()

    other = f":!{DOCUMENT.relative_to(ROOT).as_posix()}"
    changed = git("status", "--porcelain", "--", ".", other)
    return git("rev-parse", "--short", "HEAD") + ("+" if changed else "")


def typed_command(module: str) -> str:
    """Return the command that runs a module as this process was started, without `--write`."""
    return " ".join(["python -m", module, *(each for each in sys.argv[1:] if each != "--write")])


def finish(proofs: tuple[Proof, ...], *, wanted: bool) -> int:
    """Print what was shown, write it where that is wanted, and return the exit code."""
    for proof in proofs:
        print(f"{proof.subject}: {proof.counts}", flush=True)
        print("".join(f"FAULT: {each}\n" for each in proof.faults), end="", flush=True)
    if wanted:
        write(*proofs)
    return 1 if any(proof.faults for proof in proofs) else 0
