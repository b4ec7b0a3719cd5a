"""The accuracy bench's cases: clips of virtual people with their truth, and what was seen.

Clips and tracks are kept outside the repository, in the folder given to the bench. Replay looks
at each clip as it does for anybody; that is slow and reading is not, so what the networks saw is
kept and read again at will.
"""

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from tqdm import tqdm

from measure.clips.inputs import ClipEntry
from measure.clips.observation import ClipObservation
from measure.clips.observation_file import load_observation, save_observation
from measure.clips.read import observe_clip
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.pose.ensemble import ModelSet
from measure.pose.supervisor import PoseProcess
from measure.pose_models.bundles import obtain
from measure.pose_models.catalogue import ModelQuality
from measure.trials.scan import scan_for_trials

#: The bundles that each quality reads with.
QUALITIES: Mapping[str, tuple[ModelQuality, ...]] = {
    "heavy": (ModelQuality.FULL, ModelQuality.HEAVY),
    "full": (ModelQuality.FULL,),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One clip with its truth, as the virtual person's files say.

    Attributes
    ----------
    split
        "fitting", "checking", "trial", "second", "final", "stiff", "posture", "hopeless",
        "near-miss" or "repeat".
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
    def task(self) -> MeasurementTask:
        return MeasurementTask(self.movement, self.side, self.view)

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


def observe_all(cases: Sequence[Case], kept: Path, workers: int = 2) -> None:
    """Let replay look at every case not looked at yet; each worker has its own process."""
    missing = [
        (case, quality)
        for case in cases
        for quality in separate_inference_qualities(case)
        if not is_kept(case, quality, kept)
    ]
    if not missing:
        return
    kept.mkdir(parents=True, exist_ok=True)
    bundles = {quality: obtain(quality) for quality in ModelQuality if quality in _ALL}
    shares = [missing[number::workers] for number in range(workers)]
    with tqdm(total=len(missing), desc="looking at clips") as bar:

        def work(share: Iterable[tuple[Case, str]]) -> None:
            with PoseProcess(bundles) as process:
                for case, quality in share:
                    models = ModelSet(
                        name=quality, bundles={each: bundles[each] for each in QUALITIES[quality]}
                    )
                    _observe(process, models, case, observation_path(case, quality, kept))
                    bar.update()

        with ThreadPoolExecutor(workers) as pool:
            list(pool.map(work, shares))


_ALL = {each for bundles in QUALITIES.values() for each in bundles}


def _observe(process: PoseProcess, models: ModelSet, case: Case, target: Path) -> None:
    observation = observe_clip(process, models, case.clip, case.task)
    entry = ClipEntry(clip=Path(case.clip.name), movement=case.movement, side=case.side)
    save_observation(target, entry, observation)


def separate_inference_qualities(case: Case) -> tuple[str, ...]:
    """Return the qualities that each look at a case for themselves.

    Clips of the bench's side shows are judged with the heavy one only.
    """
    if case.split in ("fitting", "checking", "trial", "second", "final"):
        return ("heavy", "full")
    return ("heavy",)


def observation_path(case: Case, quality: str, kept: Path) -> Path:
    """Return where a look is kept; another clip under its name is another place."""
    stamp = case.clip.stat()
    key = hashlib.sha256(f"{case.name} {stamp.st_size}".encode()).hexdigest()[:12]
    return kept / f"{case.name}-{quality}-{key}.npz"


def is_kept(case: Case, quality: str, kept: Path) -> bool:
    """Return whether a look is kept that covers the trials which are found in it today."""
    try:
        observation = observation_of(case, quality, kept)
    except FileNotFoundError:
        return False
    found = scan_for_trials(observation.coarse, case.task)
    return all(observation.covers(window) for window in found.windows)


def is_seen(case: Case, quality: str, kept: Path) -> bool:
    """Return whether what a quality sees of a case is kept, in a look of its own or a part."""
    own = quality in separate_inference_qualities(case)
    return is_kept(case, quality if own else "heavy", kept)


def observation_of(case: Case, quality: str, kept: Path) -> ClipObservation:
    """Return what the networks of a quality saw of a case.

    Raises
    ------
    FileNotFoundError
        No such look is kept.
    """
    path = observation_path(case, quality, kept)
    if not path.exists() and quality != "heavy":
        part = lesser(observation_of(case, "heavy", kept), quality)
        if part.fine:  # an older look, for which every network ran
            return part
    if not path.exists():
        raise FileNotFoundError(path)
    return load_observation(path)[1]


def lesser(observation: ClipObservation, quality: str) -> ClipObservation:
    """Return the part of a look that a lesser quality would have had."""
    own = {name for name in observation.fine if name.split()[0] in QUALITIES[quality]}
    return replace(
        observation,
        model=quality,
        fine={name: track for name, track in observation.fine.items() if name in own},
    )
