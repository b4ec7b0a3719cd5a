"""`make bench-accuracy`: how far the readings lie from the truth of virtual people.

    python -m tests.bench.bench_accuracy FOLDER [--film] [--kept-only] [--fit] [--write] [--each]

FOLDER holds the clips (`--film` makes those that are missing; that needs the synth extra) and
what the networks saw in them. `--fit` fits the corrections and intervals anew, on all sets but
the final one, before judging; `--write` copies the final set's table into README.md and
measure/docs/accuracy.md, between their marks.
"""

import argparse
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from measure.kinematics import bias_correction, uncertainty
from tests.bench import accuracy_fit as fitting
from tests.bench import accuracy_table as tables
from tests.bench.accuracy_cases import (
    QUALITIES,
    Case,
    is_kept,
    load_cases,
    observation_of,
    observe_all,
    separate_inference_qualities,
)
from tests.bench.accuracy_judge import Judged, judge

_ROOT = Path(__file__).resolve().parents[2]
_MARKS = re.compile(r"(<!-- accuracy:begin -->\n).*?(<!-- accuracy:end -->)", re.DOTALL)
_SPLITS = ("fitting", "checking", "trial", "second", "final", "hopeless", "near-miss", "repeat")

#: Sets that corrections are fitted on; interval widths come from these and the checking set.
_FITTED = ("fitting", "trial", "second")


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--film", action="store_true", help="make the missing clips")
    parser.add_argument(
        "--kept-only", action="store_true", help="judge only clips already looked at"
    )
    parser.add_argument("--fit", action="store_true", help="fit corrections and intervals anew")
    parser.add_argument("--write", action="store_true", help="copy the table into the documents")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--split", choices=_SPLITS, default="final")
    parser.add_argument("--each", action="store_true", help="print a line for each clip")
    arguments = parser.parse_args()
    if arguments.film:
        command = [sys.executable, "-m", "sample_clips.bench_set", str(arguments.folder)]
        subprocess.run([*command, "--workers", str(arguments.workers)], check=True)
    every = load_cases(arguments.folder)
    kept = arguments.folder / "tracks"

    def seen() -> tuple[Case, ...]:
        if not arguments.kept_only:
            observe_all(every, kept, arguments.workers)
        return tuple(
            case
            for case in every
            if all(is_kept(case, quality, kept) for quality in separate_inference_qualities(case))
        )

    def judged(split: str, quality: str) -> list[Judged]:
        chosen = [case for case in cases if case.split == split]
        return [judge(case, observation_of(case, quality, kept)) for case in chosen]

    cases = seen()
    if arguments.fit:
        _fit(judged)
        # Other corrections may find a trial at other moments, to be looked at as well.
        cases = seen()
    report = []
    for quality in QUALITIES:
        if quality != "heavy" and arguments.split in ("hopeless", "near-miss", "repeat"):
            continue
        found = judged(arguments.split, quality)
        if quality == "heavy" and arguments.split == "final":
            found += judged("near-miss", quality) + judged("hopeless", quality)
        report.append(_report(quality, found))
        if arguments.each:
            _print_each(found)
    if arguments.split == "final":
        report.insert(1, tables.repeatability(judged("repeat", "heavy")))
    text = "\n\n".join(report)
    print(text)
    if arguments.write:
        for name in ("README.md", "measure/docs/accuracy.md"):
            _copy(_ROOT / name, report[0].split("\n\n### ")[0] if name == "README.md" else text)
    return 0


def _fit(judged: Callable[[str, str], list[Judged]]) -> None:
    """Write fitted.json and intervals.json from all sets but the final one."""
    samples = {
        quality: (
            fitting.samples_of([one for split in _FITTED for one in judged(split, quality)]),
            fitting.samples_of(judged("checking", quality)),
        )
        for quality in QUALITIES
    }
    for learned, _ in samples.values():
        lacking = fitting.too_few_bodies(learned)
        if lacking:
            sys.exit(
                f"Too few people were filmed and looked at to fit {', '.join(lacking)}. Film all "
                "sets first (--film); nothing was changed."
            )
    fitting.write(_ROOT / "measure/kinematics/fitted.json", fitting.fit_all(samples["heavy"][0]))
    spans: dict[str, dict[str, float]] = {}
    for quality, (learned, checked) in samples.items():
        for name, scores in fitting.unseen_scores(learned, checked).items():
            spans.setdefault(name, {})[quality] = float(f"{fitting.conformal(scores):.3g}")
    fitting.write(_ROOT / "measure/kinematics/intervals.json", spans)
    bias_correction.fitted.cache_clear()
    uncertainty.measured.cache_clear()


def _report(quality: str, found: list[Judged]) -> str:
    parts = [
        f"Model {quality}. Errors against the truth of virtual people whose bodies were not used "
        "for fitting.",
        tables.by(found, tables.movement_view),
        tables.summary(found),
    ]
    for title, group in (
        ("By range", tables.angle_range),
        ("By camera angle", tables.yaw),
        ("By kind of clip", tables.familiarity),
        ("By body", tables.body),
    ):
        parts.append(f"### {title}, model {quality}")
        parts.append(tables.by(found, group))
    return "\n\n".join(parts)


def _print_each(found: list[Judged]) -> None:
    for one in found:
        measurement = one.measurement
        said = "refused" if measurement.value is None else f"{measurement.value:.2f}"
        print(
            f"{one.case.name:34s} {one.case.split:9s} truth "
            f"{one.truth if one.truth is None else round(one.truth, 2)!s:8s} {said:8s} "
            f"error {'' if one.error is None else round(one.error, 2)!s:7s} "
            f"expected {','.join(one.case.expected)} "
            f"reasons {','.join(map(str, measurement.reasons))}"
        )


def _copy(path: Path, text: str) -> None:
    before = path.read_text(encoding="utf-8")
    after = _MARKS.sub(lambda marks: f"{marks[1]}{text}\n{marks[2]}", before)
    path.write_text(after, encoding="utf-8")


if __name__ == "__main__":
    sys.exit(main())
