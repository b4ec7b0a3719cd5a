"""Copies a few of the bench's cases into tests/tracks/, as the tests' regression guard.

    python -m tests.bench.keep_tracks FOLDER NAME [NAME ...]

Their readings of today become the golden ones: run it only when numbers change on purpose.
"""

import argparse
import json
import shutil
from pathlib import Path

from tests.bench.accuracy_cases import load_cases, observation_of, observation_path
from tests.bench.accuracy_judge import judge

_TARGET = Path(__file__).resolve().parents[1] / "tracks"


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("names", nargs="+")
    arguments = parser.parse_args()
    kept = arguments.folder / "tracks"
    cases = {case.name: case for case in load_cases(arguments.folder)}
    entries = []
    for name in sorted(arguments.names):
        case = cases[name]
        judged = judge(case, observation_of(case, "heavy", kept))
        shutil.copyfile(observation_path(case, "heavy", kept), _TARGET / f"{name}.npz")
        entries.append(
            {
                "name": name,
                "movement": case.movement,
                "side": case.side,
                "view": case.view,
                "expected": list(case.expected),
                "holds": [list(hold) for hold in case.holds],
                "reading": judged.measurement.value,
                "reasons": [str(reason) for reason in judged.measurement.reasons],
            }
        )
    text = json.dumps(entries, indent=1) + "\n"
    (_TARGET / "cases.json").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
