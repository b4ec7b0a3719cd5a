"""`make bench-accuracy`: how far the readings lie from the truth of virtual people.

    python -m tests.bench.bench_accuracy FOLDER [--film] [--kept-only] [--fit] [--write] [--each]

FOLDER holds the clips (`--film` makes those that are missing; that needs the synth extra) and
what the networks saw in them. `--fit` fits the corrections and intervals anew before judging, on
the fitting, checking, trial and second sets; `--write` copies the tables of the final, the stiff
and the posture set into measure/docs/accuracy.md, between their marks, and the shortest into
README.md.
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
from tests.bench import readme_table
from tests.bench.accuracy_cases import (
    QUALITIES,
    is_seen,
    load_cases,
    observation_of,
    observe_all,
)
from tests.bench.accuracy_goals import goals_table
from tests.bench.accuracy_judge import Judged, judge

_ROOT = Path(__file__).resolve().parents[2]
_MARKS = re.compile(r"(<!-- accuracy:begin -->\n).*?(<!-- accuracy:end -->)", re.DOTALL)
_SPLITS = (
    *("fitting", "checking", "trial", "second", "final", "stiff", "posture"),
    *("hopeless", "near-miss", "repeat"),
)
#: Sets that are judged with the heavy model only.
_HEAVY_ONLY = ("stiff", "posture", "hopeless", "near-miss", "repeat")

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
    if arguments.write and arguments.split != "final":
        parser.error("--write goes with the final set")
    if arguments.film:
        command = [sys.executable, "-m", "sample_clips.bench_set", str(arguments.folder)]
        subprocess.run([*command, "--workers", str(arguments.workers)], check=True)
    every = load_cases(arguments.folder)
    kept = arguments.folder / "tracks"

    def observe() -> None:
        if not arguments.kept_only:
            observe_all(every, kept, arguments.workers)

    def judged(split: str, quality: str) -> list[Judged]:
        return [
            judge(case, observation_of(case, quality, kept))
            for case in every
            if case.split == split and is_seen(case, quality, kept)
        ]

    observe()
    if arguments.fit:
        _fit(judged)
        # Other corrections may find a trial at other moments, to be looked at as well.
        observe()
    report = [_report(judged, arguments.split, quality) for quality in QUALITIES]
    if arguments.split == "final":
        sets = [judged(split, "heavy") for split in ("final", "stiff", "posture")]
        goals = f"### Goals for virtual people\n\n{goals_table(*sets)}"
        report[1:1] = [_beyond(*sets[1:]), goals, _report(judged, "repeat", "heavy")]
    text = "\n\n".join(part for part in report if part)
    print(text)
    if arguments.each:
        _print_each(judged(arguments.split, "heavy"))
    if arguments.write:
        _copy(_ROOT / "measure/docs/accuracy.md", text)
        readme_table.main()
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
    spans = {name: dict(entry) for name, entry in uncertainty.measured().items()}
    for quality, (learned, checked) in samples.items():
        for name, scores in fitting.unseen_scores(learned, checked).items():
            spans[name][quality] = float(f"{fitting.conformal(scores):.3g}")
    fitting.write(_ROOT / "measure/kinematics/intervals.json", spans)
    bias_correction.fitted.cache_clear()
    uncertainty.measured.cache_clear()


def _report(judged: Callable[[str, str], list[Judged]], split: str, quality: str) -> str:
    """Return the tables of one set and quality; the lesser one's is short."""
    if quality != "heavy" and split in _HEAVY_ONLY:
        return ""
    found = judged(split, quality)
    if split == "repeat":
        return tables.repeatability(found)
    if quality == "heavy" and split == "final":
        found += judged("near-miss", quality) + judged("hopeless", quality)
    parts = [
        f"Model {quality}. Errors against the truth of virtual people whose bodies were not used "
        "for fitting.",
        tables.by(found, tables.posture if split == "posture" else tables.movement_view),
        tables.summary(found),
    ]
    if quality == "heavy" and split not in _HEAVY_ONLY:
        for title, group in (
            ("By range", tables.angle_range),
            ("By camera angle", tables.yaw),
            ("By kind of clip", tables.familiarity),
        ):
            parts += [f"### {title}", tables.by(found, group)]
    return "\n\n".join(parts)


def _beyond(stiff: list[Judged], posture: list[Judged]) -> str:
    """Return the tables of very stiff shoulders and of other postures."""
    return "\n\n".join(
        [
            "### Very stiff shoulders",
            "Flexion and abduction from 20°, extension from 5°, rotation from -10°, the hand at "
            "hip or buttock.",
            tables.by(stiff, tables.movement),
            tables.summary(stiff),
            "### Other postures",
            "The other arm raised as well, elbows with a carrying angle of 5 to 15°, raised arms "
            "bent by 10 to 25°, large bodies whose arms hang off, people turned by 16 to 28° (by "
            "32 to 45° they must be refused).",
            tables.by(posture, tables.posture),
            tables.summary(posture),
        ]
    )


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
