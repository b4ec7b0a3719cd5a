"""Clips of the accuracy bench: their list, and the command that makes them.

Bodies are split once and for all: what is fitted on some is judged on others. The list is fixed
by this file alone; the clips are made outside the repository.
"""

import argparse
import json
import multiprocessing
import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import Path
from typing import Any

from tqdm import tqdm

from sample_clips.body import LARGE_BODIES, bodies_folder, make_bodies, shape_of
from sample_clips.casting import (
    StratifiedDraw,
    make_unfamiliar,
    make_very_stiff,
    random_scenario,
    repeat_visit,
)
from sample_clips.film import render_clip
from sample_clips.hopeless import (
    HOPELESS_KINDS,
    NEAR_MISS_KINDS,
    readable_near_miss,
    unreadable_scenario,
)
from sample_clips.postures import POSTURE_KINDS, PostureKind, posture_scenario
from sample_clips.scenario import Movement, Scenario, View

#: Body numbers of each set; a body is in one set only. The trial set and the second one are what
#: decisions were tried on while the program was made (the second gave the figures first); the
#: final one is left alone until the figures are taken.
FITTING_BODIES = tuple(range(12))
CHECKING_BODIES = tuple(range(12, 17))
TRIAL_BODIES = tuple(range(17, 28))
SECOND_BODIES = tuple(range(36, 48))
FINAL_BODIES = tuple(range(48, 60))
#: Bodies of the very stiff and of the posture clips, which nothing is fitted on either.
STIFF_BODIES = tuple(range(60, 72))
POSTURE_BODIES = tuple(range(72, 84))

#: How many clips of each movement and view there are in each set, in the order of _SETS.
_COUNTS: dict[tuple[Movement, View], tuple[int, ...]] = {
    (Movement.FLEXION, View.SIDE): (33, 13, 19, 16, 16),
    (Movement.ABDUCTION, View.FRONT): (28, 11, 16, 14, 14),
    (Movement.EXTERNAL_ROTATION, View.OBLIQUE): (35, 14, 21, 14, 14),
    (Movement.EXTENSION, View.SIDE): (25, 10, 15, 12, 12),
    (Movement.HAND_BEHIND_BACK, View.BACK): (25, 10, 15, 10, 10),
    (Movement.HAND_BEHIND_BACK, View.SIDE): (10, 4, 6, 6, 6),
    (Movement.ABDUCTION, View.BACK): (8, 3, 4, 6, 6),
}
_SETS = (
    ("fitting", FITTING_BODIES, 10_000),
    ("checking", CHECKING_BODIES, 20_000),
    ("trial", TRIAL_BODIES, 30_000),
    ("second", SECOND_BODIES, 60_000),
    ("final", FINAL_BODIES, 80_000),
)
#: Bodies that come back to the same place, how often, and which movements they show.
REPEAT_BODIES = SECOND_BODIES[:4]
_VISITS = 3
_REPEATED = (
    (Movement.FLEXION, View.SIDE),
    (Movement.ABDUCTION, View.FRONT),
    (Movement.EXTENSION, View.SIDE),
    (Movement.EXTERNAL_ROTATION, View.OBLIQUE),
    (Movement.HAND_BEHIND_BACK, View.BACK),
)
#: How many very stiff clips of each movement and view there are.
_STIFF_COUNTS: dict[tuple[Movement, View], int] = {
    (Movement.FLEXION, View.SIDE): 5,
    (Movement.ABDUCTION, View.FRONT): 5,
    (Movement.EXTERNAL_ROTATION, View.OBLIQUE): 5,
    (Movement.EXTENSION, View.SIDE): 5,
    (Movement.HAND_BEHIND_BACK, View.BACK): 4,
}
#: Sets with clips unlike those that corrections are fitted on.
_MADE_UNFAMILIAR = ("trial", "second", "final")


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchClip:
    """One clip of the bench, the set that it belongs to, and its kind within the set if any."""

    group: str
    scenario: Scenario
    kind: str = ""


def bench_clips() -> tuple[BenchClip, ...]:
    """All clips in the order they are made: fitting first, movements taking turns."""
    clips: list[BenchClip] = []
    for place, (group, bodies, first_seed) in enumerate(_SETS):
        per_kind = [
            _one_kind(group, bodies, first_seed + 1_000 * number, kind, counts[place])
            for number, (kind, counts) in enumerate(_COUNTS.items())
        ]
        clips += _taking_turns(per_kind)
    clips += _repeats()
    spare = (*CHECKING_BODIES, *TRIAL_BODIES)
    for round_number in range(2):
        for number, kind in enumerate(HOPELESS_KINDS):
            seed = 40_000 + 50 * round_number + number
            body = spare[(number + 7 * round_number) % len(spare)]
            clips.append(
                BenchClip(group="hopeless", scenario=unreadable_scenario(kind, body, seed))
            )
    for number, kind in enumerate(NEAR_MISS_KINDS):
        body = spare[(3 * number) % len(spare)]
        clips.append(
            BenchClip(group="near-miss", scenario=readable_near_miss(kind, body, 50_000 + number))
        )
    clips += _taking_turns([_stiff(*item) for item in enumerate(_STIFF_COUNTS.items())])
    clips += _taking_turns([_postures(*item) for item in enumerate(POSTURE_KINDS)])
    return tuple(clips)


def _one_kind(
    group: str, bodies: tuple[int, ...], first_seed: int, kind: tuple[Movement, View], count: int
) -> list[BenchClip]:
    movement, view = kind
    clips = []
    for index in range(count):
        scenario = random_scenario(
            name=f"{group}-{movement}-{view}-{index:03d}",
            movement=movement,
            view=view,
            body=bodies[index % len(bodies)],
            seed=first_seed + index,
            draw=StratifiedDraw(seed=first_seed, index=index, count=count),
        )
        if group in _MADE_UNFAMILIAR and index % 2:
            scenario = make_unfamiliar(scenario)
        clips.append(BenchClip(group=group, scenario=scenario))
    return clips


def _stiff(number: int, counted: tuple[tuple[Movement, View], int]) -> list[BenchClip]:
    """Very stiff shoulders: familiar clips in which the arm hardly moves."""
    (movement, view), count = counted
    first_seed = 90_000 + 1_000 * number
    clips = []
    for index in range(count):
        draw = StratifiedDraw(seed=first_seed, index=index, count=count)
        usual = random_scenario(
            name=f"stiff-{movement}-{view}-{index:03d}",
            movement=movement,
            view=view,
            body=STIFF_BODIES[(5 * number + index) % len(STIFF_BODIES)],
            seed=first_seed + index,
            draw=draw,
        )
        clips.append(BenchClip(group="stiff", scenario=make_very_stiff(usual, draw)))
    return clips


def _postures(number: int, kind: PostureKind) -> list[BenchClip]:
    first_seed = 100_000 + 1_000 * number
    bodies = tuple(LARGE_BODIES) if kind.name == "large-body" else POSTURE_BODIES
    clips = []
    for index in range(kind.count):
        scenario = posture_scenario(
            kind,
            f"posture-{kind.name}-{kind.movement}-{kind.view}-{index:03d}",
            bodies[(3 * number + index) % len(bodies)],
            first_seed + index,
            StratifiedDraw(seed=first_seed, index=index, count=kind.count),
        )
        clips.append(BenchClip(group="posture", scenario=scenario, kind=kind.name))
    return clips


def _repeats() -> list[BenchClip]:
    """The same person on several days: other clothes and light, nearly the same placement."""
    clips = []
    for number, (movement, view) in enumerate(_REPEATED):
        for place, body in enumerate(REPEAT_BODIES):
            first_seed = 70_000 + 1_000 * number + 10 * place
            draw = StratifiedDraw(
                seed=70_000 + 1_000 * number, index=place, count=len(REPEAT_BODIES)
            )
            usual = random_scenario(
                name="", movement=movement, view=view, body=body, seed=first_seed, draw=draw
            )
            for visit in range(_VISITS):
                scenario = repeat_visit(usual, f"repeat-{movement}-{view}-{body}-{visit}", visit)
                clips.append(BenchClip(group="repeat", scenario=scenario))
    return clips


def _taking_turns(lists: Sequence[Sequence[BenchClip]]) -> list[BenchClip]:
    """Merge so that every list is used up evenly along the way."""
    placed = [
        ((index + 0.5) / len(one), number, clip)
        for number, one in enumerate(lists)
        for index, clip in enumerate(one)
    ]
    return [clip for _, _, clip in sorted(placed, key=lambda item: item[:2])]


def _make(job: tuple[BenchClip, Path]) -> str:
    clip, folder = job
    made = render_clip(clip.scenario, folder, bodies_folder(), quality=21)
    done = folder / f"{clip.scenario.name}.json"
    done.write_text(json.dumps({"set": clip.group, "kind": clip.kind, **made}), encoding="utf-8")
    return clip.scenario.name


def _write_index(folder: Path, clips: Sequence[BenchClip]) -> int:
    """Gather what is finished into ``bench.json``; returns how many clips that is."""
    entries: list[Any] = []
    for clip in clips:
        done = folder / f"{clip.scenario.name}.json"
        if done.exists():
            entries.append(json.loads(done.read_text(encoding="utf-8")))
    partial = folder / "bench.json.part"
    partial.write_text(json.dumps({"clips": entries}, indent=1), encoding="utf-8")
    partial.replace(folder / "bench.json")
    return len(entries)


def main(arguments: Sequence[str] | None = None) -> int:
    """Make what is missing of the bench; a run that was stopped is taken up again."""
    parser = argparse.ArgumentParser(prog="python -m sample_clips.bench_set", description=__doc__)
    parser.add_argument("folder", type=Path, help="where the clips go, outside the repository")
    parser.add_argument("--only", default="*", metavar="PATTERN", help="names, such as 'fitting-*'")
    parser.add_argument("--workers", type=int, default=2, help="processes at a time")
    options = parser.parse_args(arguments)
    folder: Path = options.folder
    folder.mkdir(parents=True, exist_ok=True)
    clips = bench_clips()
    wanted = [clip for clip in clips if fnmatch(clip.scenario.name, options.only)]
    missing = [c for c in wanted if not (folder / f"{c.scenario.name}.json").exists()]
    numbers = {clip.scenario.body for clip in wanted}
    numbers |= {c.scenario.second_body for c in wanted if c.scenario.second_body is not None}
    make_bodies([shape_of(number) for number in sorted(numbers)], bodies_folder())
    # One renderer thread for each process; more only get in each other's way.
    for name in ("LP_NUM_THREADS", "OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS"):
        os.environ.setdefault(name, "1")
    context = multiprocessing.get_context("spawn")
    with context.Pool(options.workers, maxtasksperchild=40) as pool:
        jobs = [(clip, folder) for clip in missing]
        for _ in tqdm(pool.imap_unordered(_make, jobs), total=len(jobs), unit="clip"):
            _write_index(folder, clips)
    count = _write_index(folder, clips)
    print(f"{count} of {len(clips)} clips are in {folder}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
