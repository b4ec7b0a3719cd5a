"""Write the part of a set of real people that may be passed on: what this folder holds.

    python -m tests.real_people.extract FOLDER

FOLDER holds the whole set. Depth is left out, which nothing reads, and numbers are rounded; a
reading changes by a few hundredths of a degree at most.
"""

import argparse
import gzip
import io
import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from tests.bench.bench_real_cases import IN_TREE, read_json

#: Sources whose annotations or clicks may be passed on as numbers; see README.md.
PASSED_ON = frozenset({"coco", "exercise-photos", "free-exercise-db"})
#: Decimals of places in pixels, and of confidences.
_PIXELS, _CONFIDENCE = 1, 2


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    folder = parser.parse_args().folder
    arms: dict[str, Any] = {"people": {}, "arms": []}
    for path in sorted(folder.glob("arms*.json.gz")):
        content = read_json(path)
        chosen = [arm for arm in content["arms"] if arm["source"] in PASSED_ON]
        names = sorted({arm["person"] for arm in chosen})
        arms["arms"] += chosen
        arms["people"] |= {name: _person(content["people"][name]) for name in names}
    _write("arms", arms)
    clips = read_json(folder / "series.json.gz")
    kept = {
        kind: [_clip(entry) for entry in clips[kind] if entry["source"] in PASSED_ON]
        for kind in ("series", "traps")
    }
    _write("series", kept)
    return 0


def _person(person: Mapping[str, Any]) -> dict[str, Any]:
    passes = {
        name: [run and {**run, "landmarks": _rounded(run["landmarks"])} for run in runs]
        for name, runs in person["passes"].items()
    }
    return {**person, "passes": passes}


def _clip(entry: Mapping[str, Any]) -> dict[str, Any]:
    fine = {name: _track(track) for name, track in entry["careful"].items()}
    return {**entry, "quick": _track(entry["quick"]), "careful": fine}


def _track(track: Mapping[str, Any]) -> dict[str, Any]:
    # Times stay as they are: they are held against the windows of the fine passes.
    return {**track, "landmarks": [frame and _rounded(frame) for frame in track["landmarks"]]}


def _rounded(landmarks: list[list[float]]) -> list[list[float]]:
    """Return (x, y, visibility, presence) of every landmark, rounded."""
    return [
        [
            round(mark[0], _PIXELS),
            round(mark[1], _PIXELS),
            round(mark[-2], _CONFIDENCE),
            round(mark[-1], _CONFIDENCE),
        ]
        for mark in landmarks
    ]


def _write(name: str, content: Mapping[str, Any]) -> None:
    path = IN_TREE / f"{name}.json.gz"
    raw = io.BytesIO()
    # No name and no time in the archive: the same content gives the same file.
    with gzip.GzipFile(filename="", mode="wb", fileobj=raw, mtime=0, compresslevel=9) as packed:
        packed.write(json.dumps(content, separators=(",", ":")).encode())
    path.write_bytes(raw.getvalue())
    print(f"{path.name}: {len(raw.getvalue()) / 1024:.0f} kB")


if __name__ == "__main__":
    raise SystemExit(main())
