"""The real people of the bench: arms on photographs and clips with clicked truth, as numbers.

``tests/real_people/`` holds the part that may be passed on; folders of the same form add more. Its
README says what the numbers are and where they come from.
"""

import gzip
import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.landmarks import LANDMARKS, FloatArray, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.tracks import FrameState, Track
from measure.pose.jobs import ClipInfo

#: The part of the set that stands in the tree.
IN_TREE = Path(__file__).parents[1] / "real_people"
#: A skeleton whose trunk corners lie farther from the annotated ones than this, in trunk lengths,
#: is another person's, or broken.
_SAME_PERSON = 0.5
#: An annotated angle beyond this is no elevation of the arm, degrees.
_HIGHEST_DEG = 200.0
#: Seconds between two runs of a network over the same photograph.
_STEP_S = 0.2


@dataclass(frozen=True, slots=True, kw_only=True)
class Arm:
    """One arm on a photograph, with the angle that somebody marked there.

    Attributes
    ----------
    group
        People or photographs that may show the same person: the unit of every bootstrap.
    seen_from
        What the marked shoulders say; `task.view` is what one would tell the program.
    near
        Whether the arm is the nearer one in a side view; None in other views.
    usable
        Elbow straight, trunk large enough, not turned away between front and side.
    bent
        Whether the marked elbow is bent beyond 40 degrees.
    right_person
        Whether the networks found the person who was annotated.
    marked_deg, noise_deg
        Marked angle of arm against trunk; estimated standard deviation of the marking.
    passes
        By name of the pass: its track over the runs on this photograph.
    """

    name: str
    source: str
    group: str
    task: MeasurementTask
    seen_from: str
    near: bool | None
    usable: bool
    bent: bool
    right_person: bool
    marked_deg: float
    noise_deg: float
    passes: Mapping[str, Track]


@dataclass(frozen=True, slots=True, kw_only=True)
class RealClip:
    """One clip of a real person: with a clicked truth, or one that must be refused.

    Attributes
    ----------
    trap
        "grave" or "plain" for a clip that must be refused, "" for one that must be read.
    clicked_deg
        The clicked angle of the hold, or None where nobody clicked.
    within_deg
        Of a trap that may also be read rightly: a reading so near the clicked angle is right.
    why
        Why a trap must be refused.
    """

    name: str
    source: str
    group: str
    observation: ClipObservation
    trap: str
    clicked_deg: float | None
    within_deg: float | None
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RealPeople:
    """What was read from one or several folders; no name occurs twice.

    Attributes
    ----------
    in_tree
        Names of the arms that stand in the tree.
    """

    arms: tuple[Arm, ...]
    clips: tuple[RealClip, ...]
    in_tree: frozenset[str]


def load_real_people(folders: Sequence[Path] = (IN_TREE,)) -> RealPeople:
    """Return the arms and clips of folders; what occurs in several is taken from the first.

    Raises
    ------
    FileNotFoundError
        A folder holds neither arms nor clips.
    """
    arms: dict[str, Arm] = {}
    clips: dict[str, RealClip] = {}
    in_tree: set[str] = set()
    for folder in folders:
        files = [*sorted(folder.glob("arms*.json.gz")), *sorted(folder.glob("series*.json.gz"))]
        if not files:
            raise FileNotFoundError(f"neither arms*.json.gz nor series*.json.gz in {folder}")
        for path in files:
            content = read_json(path)
            arms = {arm.name: arm for arm in _arms(content)} | arms
            clips = {clip.name: clip for clip in _clips(content)} | clips
        if folder == IN_TREE:
            in_tree.update(arms)
    return RealPeople(
        arms=tuple(arms.values()), clips=tuple(clips.values()), in_tree=frozenset(in_tree)
    )


def read_json(path: Path) -> dict[str, Any]:
    with gzip.open(path, "rt", encoding="utf-8") as file:
        content: dict[str, Any] = json.load(file)
    return content


def _arms(content: Mapping[str, Any]) -> Iterator[Arm]:
    tracks = {
        name: {
            given.replace("_", " "): _photograph_track(runs, person["picture_px"])
            for given, runs in person["passes"].items()
        }
        for name, person in content.get("people", {}).items()
    }
    for entry in content.get("arms", ()):
        runs = content["people"][entry["person"]]["passes"].values()
        apart = [run["apart"] for pair in runs for run in pair if run]
        marked = entry["annotated"]["arm_to_trunk_deg"]
        yield Arm(
            name=entry["id"],
            source=entry["source"],
            group=entry["group"],
            task=MeasurementTask(
                Movement(entry["movement"]), Side(entry["side"]), View(entry["declared_view"])
            ),
            seen_from=entry["view"],
            near=entry["near_arm"],
            usable=entry["usable"] and marked <= _HIGHEST_DEG,
            bent=entry["kind"] == "bent",
            right_person=bool(apart) and float(np.median(apart)) <= _SAME_PERSON,
            marked_deg=marked,
            noise_deg=entry["annotation_noise_deg"],
            passes=tracks[entry["person"]],
        )


def _clips(content: Mapping[str, Any]) -> Iterator[RealClip]:
    clicked = {entry["id"]: entry["clicked_deg"] for entry in content.get("series", ())}
    for kind in ("series", "traps"):
        for entry in content.get(kind, ()):
            yield RealClip(
                # A clip may be right for one movement and a trap as another.
                name=f"{kind}/{entry['id']}",
                source=entry["source"],
                group=entry["group"],
                observation=_observation(entry),
                trap=entry["weight"] if kind == "traps" else "",
                clicked_deg=clicked.get(entry["id"]),
                within_deg=entry["right"].get("or_within") if kind == "traps" else None,
                why=entry.get("why", ""),
            )


def _observation(entry: Mapping[str, Any]) -> ClipObservation:
    size = entry["size_px"]
    return ClipObservation(
        movement=Movement(entry["movement"]),
        side=Side(entry["side"]),
        view=View(entry["declared_view"]) if entry["declared_view"] else None,
        model=entry["model"],
        passes=tuple(entry["careful_passes"]),
        software=entry["looked_with"],
        facts=ClipInfo(
            width_px=size[0],
            height_px=size[1],
            frames_read=entry["frames_read"],
            frames_expected=entry["frames_read"],
            frames_unreadable=0,
            duration_s=entry["duration_s"],
            measured_fps=entry["frames_per_s"],
            backend="kept",
            rotation_deg=0,
            sample_aspect=1.0,
        ),
        coarse=_clip_track(entry["quick"], size),
        fine={name: _clip_track(track, size) for name, track in entry["careful"].items()},
        windows=tuple((start_s, end_s) for start_s, end_s in entry["windows"]),
    )


def _photograph_track(runs: Sequence[Mapping[str, Any] | None], size: Sequence[int]) -> Track:
    """Return one photograph, looked at several times, as a track."""
    landmarks = _landmarks([run["landmarks"] if run else None for run in runs])
    seen = np.isfinite(landmarks[:, 0, 0])
    return Track(
        time_s=_STEP_S * np.arange(len(runs), dtype=np.float64),
        # Between place and confidences a landmark of a photograph may have a depth.
        points_px=landmarks[:, :, :2],
        visibility=landmarks[:, :, -2],
        presence=landmarks[:, :, -1],
        state=np.where(seen, FrameState.SEEN, FrameState.NOBODY).astype(np.int64),
        people=seen.astype(np.int64),
        width_px=size[0],
        height_px=size[1],
    )


def _clip_track(track: Mapping[str, Any], size: Sequence[int]) -> Track:
    landmarks = _landmarks(track["landmarks"])
    return Track(
        time_s=np.array(track["time_s"], dtype=np.float64),
        points_px=landmarks[:, :, :2],
        visibility=landmarks[:, :, -2],
        presence=landmarks[:, :, -1],
        state=np.array(track["state"], dtype=np.int64),
        people=np.array(track["people"], dtype=np.int64),
        width_px=size[0],
        height_px=size[1],
    )


def _landmarks(frames: Iterable[Sequence[Sequence[float]] | None]) -> FloatArray:
    """Return (frames, 33, numbers of a landmark), NaN where nobody was seen."""
    listed = list(frames)
    width = next((len(frame[0]) for frame in listed if frame), 4)
    nobody = np.full((LANDMARKS, width), np.nan)
    return np.array([frame or nobody for frame in listed], dtype=np.float64)
