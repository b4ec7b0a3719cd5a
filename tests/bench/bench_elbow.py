"""Flexion and the elbow: how readings err where the elbow was noted as bent, and where not.

    python -m tests.bench.bench_elbow FOLDER [--write]

FOLDER is the accuracy bench's, filmed and looked at. Clips of all its sets count, those that the
corrections were fitted on too: the groups are compared with each other. `--write` copies the
table into measure/docs/accuracy.md.
"""

import argparse
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import numpy as np

from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from tests.bench.accuracy_cases import is_kept, load_cases, observation_of
from tests.bench.accuracy_fit import STRAIGHT_DEG
from tests.bench.accuracy_judge import Judged, judge

_DOCUMENT = Path(__file__).resolve().parents[2] / "measure/docs/accuracy.md"
_BEGIN, _END = "<!-- elbow:begin -->\n", "<!-- elbow:end -->"
_SETS = ("fitting", "checking", "trial", "second", "final")
#: Below it flexion is read worse.
_LOW_DEG = 85.0


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--write", action="store_true", help="copy the table into the document")
    arguments = parser.parse_args()
    text = "\n".join(_table(_read(arguments.folder))) + "\n"
    print(text, end="")
    if arguments.write:
        before, rest = _DOCUMENT.read_text(encoding="utf-8").split(_BEGIN)
        after = rest.split(_END)[1]
        _DOCUMENT.write_text(before + _BEGIN + text + _END + after, encoding="utf-8")
    return 0


def _read(folder: Path) -> list[Judged]:
    """Return the flexions that were read, with the heavy model."""
    kept = folder / "tracks"
    judged = [
        judge(case, observation_of(case, "heavy", kept))
        for case in load_cases(folder)
        if case.split in _SETS
        and case.movement is Movement.FLEXION
        and case.readable
        and is_kept(case, "heavy", kept)
    ]
    return [each for each in judged if each.error is not None]


def _is_noted(one: Judged) -> bool:
    return Reason.ELBOW_BENT in one.measurement.reasons


def _is_straight(one: Judged) -> bool:
    return bool(one.case.facts["holds"][0]["elbow_flexion_deg"] <= STRAIGHT_DEG)


def _is_low(one: Judged) -> bool:
    return one.truth is not None and one.truth < _LOW_DEG


_GROUPS: tuple[tuple[str, Callable[[Judged], bool]], ...] = (
    ("elbow noted as bent", _is_noted),
    ("... and truly bent", lambda one: _is_noted(one) and not _is_straight(one)),
    ("... and truly straight", lambda one: _is_noted(one) and _is_straight(one)),
    ("elbow not noted", lambda one: not _is_noted(one)),
    (f"truly straight, below {_LOW_DEG:.0f}°", lambda one: _is_straight(one) and _is_low(one)),
    (f"truly straight, above {_LOW_DEG:.0f}°", lambda one: _is_straight(one) and not _is_low(one)),
)


def _table(found: Sequence[Judged]) -> Iterator[str]:
    yield f"Model heavy, flexion, {len(found)} readings of all sets."
    yield ""
    yield "| group | readings | bias | mean abs. error | worst |"
    yield "|---|---|---|---|---|"
    for name, belongs in _GROUPS:
        errors = np.array([one.error for one in found if belongs(one)], dtype=np.float64)
        if len(errors):
            away = np.abs(errors)
            yield (
                f"| {name} | {len(errors)} | {errors.mean():+.1f}° | {away.mean():.1f}° "
                f"| {away.max():.1f}° |"
            )


if __name__ == "__main__":
    raise SystemExit(main())
