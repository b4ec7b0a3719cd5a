"""Rebuild the sample clips, or check that the committed ones agree with their truth.

``python -m sample_clips.make`` films all of them (extra ``synth`` and the ``ffmpeg`` program);
``--check`` needs neither.
"""

import argparse
import csv
import hashlib
import json
import struct
import sys
from collections.abc import Iterator, Sequence
from fnmatch import fnmatch
from pathlib import Path
from typing import Any

from sample_clips.motion import MotionPhase
from sample_clips.roster import sample_scenarios
from sample_clips.truth import columns

CLIPS_FOLDER = Path(__file__).parent / "clips"
#: The clips travel with the project: all of them together stay below this.
LARGEST_TOTAL_BYTES = 9_000_000
_SHORTEST_S, _LONGEST_S = 6.0, 20.0


def clip_folder_problems(folder: Path) -> Iterator[str]:
    """Yield each disagreement of a folder of clips and its ``truth.json``, in words."""
    index = folder / "truth.json"
    if not index.is_file():
        yield f"{index} is missing"
        return
    entries = json.loads(index.read_text(encoding="utf-8"))["clips"]
    planned = {f"{scenario.name}.mp4" for scenario in sample_scenarios()}
    listed = {entry["file"] for entry in entries}
    present = {path.name for path in folder.glob("*.mp4")}
    for name in sorted(planned ^ listed):
        yield f"{name}: in only one of the roster and truth.json"
    for name in sorted(listed ^ present):
        yield f"{name}: in only one of the folder and truth.json"
    for entry in entries:
        if entry["file"] in present:
            yield from _clip_faults(folder, entry)
    total = sum(path.stat().st_size for path in folder.glob("*.mp4"))
    if total > LARGEST_TOTAL_BYTES:
        yield f"the clips take {total} bytes, more than {LARGEST_TOTAL_BYTES}"


def _clip_faults(folder: Path, entry: dict[str, Any]) -> Iterator[str]:
    clip = folder / entry["file"]
    content = clip.read_bytes()
    name = clip.name
    if hashlib.sha256(content).hexdigest() != entry["sha256"]:
        yield f"{name}: not the file that truth.json was written for"
    length_s = mp4_length_s(content)
    if abs(length_s - entry["frames"] / entry["fps"]) > 0.05:
        yield f"{name}: lasts {length_s:.2f} s, truth.json says {entry['frames']} frames"
    if not _SHORTEST_S <= length_s <= _LONGEST_S:
        yield f"{name}: lasts {length_s:.2f} s, outside {_SHORTEST_S:g} to {_LONGEST_S:g} s"
    table = clip.with_suffix(".csv")
    if not table.is_file():
        yield f"{table.name} is missing"
        return
    with table.open(encoding="utf-8", newline="") as lines:
        reader = csv.DictReader(lines)
        rows = list(reader)
    if tuple(reader.fieldnames or ()) != columns():
        yield f"{table.name}: other columns than expected"
        return
    if len(rows) != entry["frames"]:
        yield f"{table.name}: {len(rows)} rows for {entry['frames']} frames"
    for repeat, hold in enumerate(entry["holds"]):
        held = [
            float(row["value"])
            for row in rows
            if row["phase"] == MotionPhase.HOLD and int(row["repeat"]) == repeat
        ]
        if not held or abs(sum(held) / len(held) - hold["value"]) > 2e-4:
            yield f"{table.name}: the mean of hold {repeat} is not {hold['value']}"


def mp4_length_s(content: bytes) -> float:
    """Length of an MP4 file from its movie header (ISO/IEC 14496-12, 8.2.2).

    Raises
    ------
    ValueError
        Without a movie header.
    """
    at = content.find(b"mvhd")
    if at < 0:
        raise ValueError("no movie header: not a complete MP4 file")
    if content[at + 4] == 1:
        scale, length = struct.unpack_from(">IQ", content, at + 24)
    else:
        scale, length = struct.unpack_from(">II", content, at + 16)
    return float(length / scale)


def build(folder: Path, only: str) -> None:
    """Film the sample clips whose names match, and bring ``truth.json`` up to date."""
    from tqdm import tqdm

    from sample_clips.body import bodies_folder
    from sample_clips.film import render_clip

    folder.mkdir(parents=True, exist_ok=True)
    index = folder / "truth.json"
    entries = {}
    if index.is_file():
        clips = json.loads(index.read_text(encoding="utf-8"))["clips"]
        entries = {entry["file"]: entry for entry in clips}
    wanted = [scenario for scenario in sample_scenarios() if fnmatch(scenario.name, only)]
    for scenario in tqdm(wanted, unit="clip"):
        made = render_clip(scenario, folder, bodies_folder(), quality=25)
        content = (folder / made["file"]).read_bytes()
        entries[made["file"]] = {**made, "sha256": hashlib.sha256(content).hexdigest()}
        names = [f"{planned.name}.mp4" for planned in sample_scenarios()]
        clips = [entries[name] for name in names if name in entries]
        text = json.dumps({"definitions": "sample_clips/README.md", "clips": clips}, indent=1)
        index.write_text(text + "\n", encoding="utf-8")


def main(arguments: Sequence[str] | None = None) -> int:
    """Exit code 0 when all is well, 1 when the check found faults."""
    parser = argparse.ArgumentParser(prog="python -m sample_clips.make", description=__doc__)
    parser.add_argument(
        "--check", action="store_true", help="render nothing, compare what is there"
    )
    parser.add_argument("--only", default="*", metavar="PATTERN", help="names of clips to film")
    parser.add_argument("--folder", type=Path, default=CLIPS_FOLDER, help="where the clips are")
    options = parser.parse_args(arguments)
    if not options.check:
        build(options.folder, options.only)
    problems = list(clip_folder_problems(options.folder))
    for problem in problems:
        print(problem)
    if not problems:
        print(f"{len(sample_scenarios())} clips agree with their truth")
    return 1 if problems else 0


if __name__ == "__main__":
    sys.exit(main())
