"""What a reading loses because few frames are looked at, and what that saves.

    python -m tests.bench.bench_attention FOLDER [--each N] [--kept KEPT] [--quality full]
                                          [--film] [--looks N] [--write]

FOLDER holds the accuracy bench's clips; the first N of each movement and view of its trial set
are looked at twice, as usual and at every frame. What was seen is kept in KEPT, so a run that was
stopped goes on where it was; `--looks` stops it after so many looks. The trial set has 15 frames a
second; `--film` takes the same people at 30 instead, as phones do, and films them in FOLDER first
(brings PyTorch). `--write` copies the table into measure/docs/analyst.md.
"""

import argparse
import json
import math
import re
import statistics
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import numpy as np
from tqdm import tqdm

from measure.clips.inputs import ClipEntry
from measure.clips.observation import ClipObservation
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.read import measurement_from_observation, observe_clip
from measure.domain.acquisition import Setup
from measure.domain.movements import MOVEMENTS, Unit
from measure.domain.tracks import Track
from measure.errors import DataError
from measure.live.trial_refiner import COARSE_ONLY
from measure.pose.ensemble import models_for
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import ModelQuality
from measure.trials.scan import decimation_plan, fine_rate_factor, scan_for_trials
from measure.video.sampling import COARSE_HZ, FINE_HZ, DecimationSpan, Decimator, RateSampler
from tests.bench.accuracy_cases import Case, load_cases

_ROOT = Path(__file__).resolve().parents[2]
_DOCUMENT = _ROOT / "measure/docs/analyst.md"
#: Frames a second of most phones and webcams.
USUAL_FPS = 30
_FILMED = "usual"
_EVERY_FRAME_BY_NAME = {"thin": False, "every": True}


@dataclass(frozen=True, slots=True, kw_only=True)
class Compared:
    """One clip, read from a few frames and from every frame.

    Attributes
    ----------
    thin, every
        The reading with the usual rates and with every frame; None where it was refused.
    thinned
        From the landmarks of every frame, of which the usual ones are taken: what leaving frames
        out does by itself, without what it does to a network that follows movement.
    quick_thin, quick_every
        The same from the quick pass alone.
    plain
        From the deciding network's plain pass over every frame alone.
    truth
        Median of the true holds.
    looks
        How often a network looked at a picture, with the usual rates and with every frame.
    """

    case: Case
    thin: float | None
    every: float | None
    thinned: float | None
    quick_thin: float | None
    quick_every: float | None
    plain: float | None
    truth: float
    inference_counts: tuple[int, int]


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path)
    parser.add_argument("--each", type=int, default=2, help="clips of each movement and view")
    parser.add_argument("--kept", type=Path, help="default: FOLDER/attention")
    parser.add_argument("--quality", choices=["full", "heavy"], default="heavy")
    parser.add_argument("--looks", type=int, default=1_000_000, help="at most so many this time")
    parser.add_argument("--film", action="store_true", help="take clips of 30 frames a second")
    parser.add_argument("--write", action="store_true", help="copy the table into the document")
    arguments = parser.parse_args()
    if arguments.film:
        film_usual(arguments.folder, arguments.each)
    cases = chosen(arguments.folder, _FILMED if arguments.film else "trial", arguments.each)
    kept = (arguments.kept or arguments.folder / "attention") / arguments.quality
    observe_cases(cases, kept, ModelQuality(arguments.quality), arguments.inference_counts)
    cases = [
        case
        for case in cases
        if all(_path(case, each, kept).exists() for each in _EVERY_FRAME_BY_NAME)
    ]
    found = [compared(case, kept) for case in sorted(cases, key=lambda case: case.name)]
    for each in found:
        print(_line(each))
    text = "\n".join(summary(found, arguments.quality)) + "\n"
    print(text)
    if arguments.write:
        document = _DOCUMENT.read_text(encoding="utf-8")
        begin, end = (f"<!-- attention {arguments.quality}:{each} -->" for each in ("begin", "end"))
        written = re.sub(
            f"{begin}\n.*?{end}", lambda _: f"{begin}\n{text}{end}", document, flags=re.DOTALL
        )
        _DOCUMENT.write_text(written, encoding="utf-8")


def chosen(folder: Path, split: str, each: int) -> list[Case]:
    """Return the first readable cases of each movement and view, which take turns."""
    taken: dict[tuple[str, str], list[Case]] = {}
    for case in load_cases(folder):
        group = taken.setdefault((case.movement, case.view), [])
        if case.split == split and case.readable and len(group) < each:
            group.append(case)
    turns = [(number, case) for group in taken.values() for number, case in enumerate(group)]
    return [case for _, case in sorted(turns, key=lambda turn: turn[0])]


def film_usual(folder: Path, count: int) -> None:
    """Film the first readable clips of each movement and view of the trial set anew."""
    from sample_clips.bench_set import bench_clips
    from sample_clips.body import bodies_folder, make_bodies, shape_of
    from sample_clips.film import render_clip

    folder.mkdir(parents=True, exist_ok=True)
    wanted = []
    for number in range(count):
        for clip in bench_clips():
            scenario = clip.scenario
            if clip.group == "trial" and scenario.name.endswith(f"-{number:03d}"):
                camera = replace(scenario.camera, fps=USUAL_FPS)
                name = scenario.name.replace("trial", _FILMED, 1)
                wanted.append(replace(scenario, camera=camera, name=name))
    make_bodies([shape_of(each.body) for each in wanted], bodies_folder())
    for scenario in tqdm(wanted, desc="filming"):
        done = folder / f"{scenario.name}.json"
        if not done.exists() and scenario.expected == ("reading",):
            made = render_clip(scenario, folder, bodies_folder(), quality=21)
            done.write_text(json.dumps({"set": _FILMED, **made}), encoding="utf-8")


def observe_cases(cases: Sequence[Case], kept: Path, quality: ModelQuality, most: int) -> None:
    """Look at the clips that were not looked at yet, so many at most."""
    kept.mkdir(parents=True, exist_ok=True)
    missing = [
        (case, name)
        for case in cases
        for name in _EVERY_FRAME_BY_NAME
        if not _path(case, name, kept).exists()
    ][:most]
    if not missing:
        return
    models = models_for(quality)
    with PoseProcess(models.bundles) as process:
        for case, name in tqdm(missing, desc="looking"):
            observation = observe_clip(
                process,
                models,
                case.clip,
                case.movement,
                case.side,
                view=case.view,
                setup=Setup(),
                every_frame=_EVERY_FRAME_BY_NAME[name],
                progress=lambda share: None,
            )
            entry = ClipEntry(clip=Path(case.clip.name), movement=case.movement, side=case.side)
            save_observation(_path(case, name, kept), entry, observation)


def _path(case: Case, name: str, kept: Path) -> Path:
    return kept / f"{case.name}-{name}.npz"


def compared(case: Case, kept: Path) -> Compared:
    """Read a clip from all that was seen of it."""
    thin, every = (load_observation(_path(case, name, kept))[1] for name in _EVERY_FRAME_BY_NAME)
    plain = {name: track for name, track in every.fine.items() if name == every.model}
    return Compared(
        case=case,
        thin=_value(thin),
        every=_value(every),
        thinned=_value(thinned(every)),
        quick_thin=_value(alone(thin)),
        quick_every=_value(alone(every)),
        plain=_value(replace(every, fine=plain, model=COARSE_ONLY)) if plain else None,
        truth=statistics.median(hold[0] for hold in case.holds),
        inference_counts=(_inference_count(thin), _inference_count(every)),
    )


def thinned(every: ClipObservation) -> ClipObservation:
    """Return a look at every frame as if only the usual frames had been looked at."""
    found = scan_for_trials(every.coarse, every.movement, every.side, every.view, Setup())
    times = fine_rate_factor(found.trials, every.movement, every.facts.measured_fps)
    paces = decimation_plan(found.trials, every.movement, times)
    fine = {name: _chosen(track, FINE_HZ * times, paces) for name, track in every.fine.items()}
    coarse = _chosen(every.coarse, COARSE_HZ)
    windows = ((-math.inf, math.inf),) if fine else ()
    return replace(every, coarse=coarse, fine=fine, windows=windows)


def _chosen(track: Track, rate_hz: float, paces: Sequence[DecimationSpan] = ()) -> Track:
    grid, thinning = RateSampler(rate_hz), Decimator(paces)
    chosen = np.array(
        [grid.chooses(each) and thinning.takes(each) for each in track.time_s.tolist()]
    )
    arrays = ("time_s", "points_px", "visibility", "presence", "state", "people")
    return replace(track, **{name: getattr(track, name)[chosen] for name in arrays})


def alone(observation: ClipObservation) -> ClipObservation:
    """Return a look of the quick pass alone, which then also settles the trials."""
    found = scan_for_trials(
        observation.coarse, observation.movement, observation.side, observation.view, Setup()
    )
    return replace(
        observation, fine={"quick": observation.coarse}, windows=found.windows, model=COARSE_ONLY
    )


def _value(observation: ClipObservation) -> float | None:
    try:
        return measurement_from_observation(observation, Setup()).measurement.value
    except DataError:  # trials where no careful pass looked: the clip would be read anew
        return None


def _inference_count(observation: ClipObservation) -> int:
    return len(observation.coarse) + sum(len(track) for track in observation.fine.values())


def _line(one: Compared) -> str:
    digits = 2 if MOVEMENTS[one.case.movement].unit is Unit.DEGREES else 4

    def said(value: float | None) -> str:
        return "refused" if value is None else f"{value:.{digits}f}"

    return (
        f"{one.case.name:38} truth {said(one.truth):>7}, few frames {said(one.thin):>7}, every "
        f"{said(one.every):>7}, thinned {said(one.thinned):>7}, quick {said(one.quick_thin):>7}, "
        f"at every frame {said(one.quick_every):>7}, plain {said(one.plain):>7}, looks "
        f"{one.inference_counts[0] / one.inference_counts[1]:.0%}"
    )


def summary(found: Sequence[Compared], quality: str) -> Iterator[str]:
    """Yield the lines of the document."""
    angles = [one for one in found if MOVEMENTS[one.case.movement].unit is Unit.DEGREES]
    reaches = [one for one in found if MOVEMENTS[one.case.movement].unit is Unit.FRACTION]
    few, all_ = (sum(one.inference_counts[place] for one in found) for place in (0, 1))
    other = sum((one.thin is None) != (one.every is None) for one in found)
    rates = sorted({one.case.facts["fps"] for one in found})
    yield (
        f"Model {quality}, {len(found)} clips of the trial set's people at "
        f"{' or '.join(map(str, rates))} frames a second ({len(angles)} with an angle, "
        f"{len(reaches)} reaches behind the back). With the usual rates the networks looked "
        f"{few / all_:.0%} as often as with every frame. Refused one way and read the other: "
        f"{other}."
    )
    yield ""
    yield "| compared | clips | mean | median | 90 % | largest |"
    yield "|---|---|---|---|---|---|"
    rows = (
        ("few frames and every frame", angles, "thin", "every"),
        ("the same, reach", reaches, "thin", "every"),
        ("every frame's landmarks, thinned out, and all", angles, "thinned", "every"),
        ("quick pass alone and at every frame", angles, "quick_thin", "quick_every"),
        ("reading and truth", angles, "thin", "truth"),
        ("reading of every frame and truth", angles, "every", "truth"),
        (f"{quality} network, plain, every frame, and truth", angles, "plain", "truth"),
        ("reading and truth, reach", reaches, "thin", "truth"),
        ("reading of every frame and truth, reach", reaches, "every", "truth"),
        (f"{quality} network, plain, every frame, and truth, reach", reaches, "plain", "truth"),
    )
    for title, group, one, other_one in rows:
        yield _row(title, group, one, other_one)


def _row(title: str, group: Sequence[Compared], one: str, other: str) -> str:
    pairs = [(getattr(each, one), getattr(each, other)) for each in group]
    apart = sorted(abs(a - b) for a, b in pairs if a is not None and b is not None)
    if not apart:
        return f"| {title} | 0 | | | | |"
    unit, digits = "°", 2
    if MOVEMENTS[group[0].case.movement].unit is Unit.FRACTION:
        unit, digits = "", 4
    ninety = apart[min(len(apart) - 1, round(0.9 * (len(apart) - 1)))]
    figures = (statistics.mean(apart), statistics.median(apart), ninety, apart[-1])
    cells = " | ".join(f"{figure:.{digits}f}{unit}" for figure in figures)
    return f"| {title} | {len(apart)} | {cells} |"


if __name__ == "__main__":
    main()
