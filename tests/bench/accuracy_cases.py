"""The accuracy bench's cases: clips of virtual people with their truth, and tracks of them.

Clips and tracks are kept outside the repository, in the folder given to the bench. Looking at
a clip is slow and judging is not, so what the network saw is kept as .npz and judged again at
will; keys are the clip's content and the models.
"""

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import numpy as np
from tqdm import tqdm

from measure.body import FloatArray, Side, Track
from measure.clip_job import ClipJob, PosePass
from measure.movements import Movement, View
from measure.passes import CAREFUL_HZ, QUICK_HZ
from measure.person import follow_person
from measure.pose import PoseProcess
from measure.pose_model import ModelQuality, obtain

FULL = PosePass(quality=ModelQuality.FULL)
HEAVY = PosePass(quality=ModelQuality.HEAVY)
PASSES = tuple(
    PosePass(quality=quality, mirrored=mirrored)
    for quality in (ModelQuality.FULL, ModelQuality.HEAVY)
    for mirrored in (False, True)
)
_ARRAYS = ("time_s", "points_px", "visibility", "presence", "state", "people")


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One clip with its truth, as the virtual person's files say.

    Attributes
    ----------
    split
        "fitting", "checking", "trial", "final", "hopeless" or "near-miss".
    holds
        (value, start_s, end_s) of each hold.
    facts
        All else that is known of the clip.
    """

    name: str
    clip: Path
    movement: Movement
    side: Side
    view: View
    split: str
    expected: tuple[str, ...]
    holds: tuple[tuple[float, float, float], ...]
    facts: Mapping[str, Any]

    @property
    def readable(self) -> bool:
        return self.expected == ("reading",)


def load_cases(folder: Path) -> tuple[Case, ...]:
    """Return the cases that are finished, sorted by name; a set still growing is fine."""
    listed = [
        json.loads(path.read_text(encoding="utf-8")) for path in sorted(folder.glob("*-*.json"))
    ]
    return tuple(
        Case(
            name=Path(each["file"]).stem,
            clip=folder / each["file"],
            movement=Movement(each["movement"]),
            side=Side(each["side"]),
            view=View(each["view"]),
            split=each["set"],
            expected=tuple(each["expected"]),
            holds=tuple((hold["value"], hold["start_s"], hold["end_s"]) for hold in each["holds"]),
            facts=each,
        )
        for each in listed
        if (folder / each["file"]).exists()
    )


def look_at_all(cases: Sequence[Case], kept: Path, workers: int = 2) -> None:
    """Let the network look at every case not looked at yet; each worker has its own process."""
    missing = [case for case in cases if not kept_path(case, kept).exists()]
    if not missing:
        return
    kept.mkdir(parents=True, exist_ok=True)
    models = {quality: obtain(quality) for quality in {each.quality for each in PASSES}}
    shares = [missing[number::workers] for number in range(workers)]
    with tqdm(total=len(missing), desc="looking at clips") as bar:

        def work(share: Iterable[Case]) -> None:
            with PoseProcess(models) as process:
                for case in share:
                    _look(process, case, kept)
                    bar.update()

        with ThreadPoolExecutor(workers) as pool:
            list(pool.map(work, shares))


def _look(process: PoseProcess, case: Case, kept: Path) -> None:
    windows = _worth_looking(case)
    job = ClipJob(clip=case.clip, passes=(FULL,), rate_hz=QUICK_HZ, windows=windows)
    poses = process.run(job)
    size = {"width_px": poses.facts.width_px, "height_px": poses.facts.height_px}
    quick = follow_person(poses.frames[FULL], **size)
    alone = bool(np.all(quick.people <= 1))
    careful = process.run(replace(job, passes=PASSES, rate_hz=CAREFUL_HZ, alone=alone))
    tracks = {one: follow_person(careful.frames[one], **size, like=quick) for one in PASSES}
    keep(kept_path(case, kept), quick, tracks)


def keep(target: Path, quick: Track, careful: Mapping[PosePass, Track]) -> None:
    """Write the tracks of a case."""
    arrays: dict[str, Any] = {"size": np.array([quick.width_px, quick.height_px])}
    named = {"quick": quick, **{one.name: track for one, track in careful.items()}}
    for name, track in named.items():
        for field in _ARRAYS:
            arrays[f"{name}:{field}"] = _small(getattr(track, field))
    partial = target.with_suffix(".part.npz")
    np.savez_compressed(partial, **arrays)
    partial.replace(target)


def _worth_looking(case: Case) -> tuple[tuple[float, float], ...] | None:
    """Return the time up to a second after the last hold, or None for the whole clip.

    What comes later changes no reading, and a third of the time is saved. Clips that must be
    refused are looked at whole.
    """
    if not case.readable or not case.holds:
        return None
    return ((0.0, case.holds[-1][2] + 1.0),)


def _small(array: FloatArray) -> Any:
    return array.astype(np.float32) if array.dtype == np.float64 and array.ndim > 1 else array


def kept_path(case: Case, kept: Path) -> Path:
    """Return where the tracks of a case are kept; another clip under its name is another place."""
    stamp = case.clip.stat()
    key = hashlib.sha256(f"{case.name} {stamp.st_size}".encode()).hexdigest()[:12]
    return kept / f"{case.name}-{key}.npz"


@dataclass(frozen=True, slots=True, kw_only=True)
class CaseTracks:
    """What the network saw of a case: the quick pass, and the careful ones."""

    quick: Track
    careful: Mapping[PosePass, Track]


def tracks_of(case: Case, kept: Path) -> CaseTracks:
    """Return the kept tracks of a case."""
    return tracks_of_path(kept_path(case, kept), case.movement, case.view)


def tracks_of_path(path: Path, movement: Movement, view: View) -> CaseTracks:
    """Return the tracks of a kept file.

    From behind the heavy model goes first, in replay as here.
    """
    tracks = tracks_from(path)
    if movement is Movement.HAND_BEHIND_BACK or view is View.BACK:
        return replace(tracks, quick=tracks.careful[HEAVY])
    return tracks


def tracks_from(path: Path) -> CaseTracks:
    """Return the tracks of a kept file."""
    with np.load(path, allow_pickle=False) as arrays:
        width, height = (int(each) for each in arrays["size"])

        def track(name: str) -> Track:
            named = {field: arrays[f"{name}:{field}"] for field in _ARRAYS}
            return Track(
                **{
                    field: array.astype(np.float64 if array.dtype.kind == "f" else np.int64)
                    for field, array in named.items()
                },
                width_px=width,
                height_px=height,
            )

        return CaseTracks(
            quick=track("quick"),
            careful={one: track(one.name) for one in PASSES if f"{one.name}:time_s" in arrays},
        )
