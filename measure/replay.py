"""Reading one clip: a quick pass finds the trials, careful passes over them settle each.

This is the assembly of the reading path; live measuring settles its trials the same way.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np

from measure.body import FloatArray, Side, Track
from measure.clip_job import ClipFacts, ClipJob, ClipPoses
from measure.measurement import measurement_of
from measure.movements import MOVEMENTS, Movement, View
from measure.passes import CAREFUL_HZ, QUICK_HZ, Models
from measure.person import follow_person
from measure.pose import PoseProcess
from measure.readings import Measurement, Provenance
from measure.search import Found, search
from measure.settle import Settled, settle
from measure.setup import Setup
from measure.software import software

#: Share of the progress that the quick pass makes.
_QUICK_SHARE = 0.35


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipReading:
    """What reading a clip gives.

    Attributes
    ----------
    track
        The quick pass's track, n frames.
    guide
        Shape (n,): its value over time, in the movement's unit; a guide, not the reading.
    settled
        One for each trial, with its careful series.
    """

    measurement: Measurement
    facts: ClipFacts
    track: Track
    guide: FloatArray
    settled: tuple[Settled, ...] = field(default=())


def read_clip(
    process: PoseProcess,
    models: Models,
    clip: Path,
    movement: Movement,
    side: Side,
    *,
    view: View | None = None,
    setup: Setup | None = None,
    progress: Callable[[float], None] = lambda share: None,
) -> ClipReading:
    """Read a clip.

    Parameters
    ----------
    process
        A pose process that has the bundles of `models`.
    view
        What the camera sees, or None to recognise it among the movement's views.
    progress
        Told the share done, 0..1; an exception from it stops the reading.

    Raises
    ------
    ClipError
        The clip cannot be read.
    PoseProcessError
        The pose process failed; the text names the clip.
    """
    known = setup or Setup()
    quick = ClipJob(
        clip=clip,
        passes=(models.quick(movement, view),),
        rate_hz=QUICK_HZ,
        quarter_turns=known.camera.quarter_turns,
        already_mirrored=known.camera.already_mirrored,
    )
    poses, track = _look(process, quick, progress)
    found = search(track, movement, side, view, known)
    from_behind = models.quick(movement, View.BACK)
    if view is None and from_behind not in quick.passes and _perhaps_from_behind(found, movement):
        quick = replace(quick, passes=(from_behind,))
        poses, track = _look(process, quick, progress)
        found = search(track, movement, side, None, known)
    settled = _settle_all(process, models, quick, track, found, movement, side, known, progress)
    progress(1.0)
    return ClipReading(
        measurement=measurement_of(
            [each.trial for each in settled],
            movement=movement,
            side=side,
            view=found.view,
            provenance=_provenance(models, movement, found.view, poses.facts, known),
            nothing_found=found.verdict,
            against_vertical=[each.against_vertical for each in settled],
        ),
        facts=poses.facts,
        track=track,
        guide=found.guide,
        settled=settled,
    )


def _look(
    process: PoseProcess, quick: ClipJob, progress: Callable[[float], None]
) -> tuple[ClipPoses, Track]:
    poses = process.run(quick, lambda share: progress(share * _QUICK_SHARE))
    track = follow_person(
        poses.frames[quick.passes[0]],
        width_px=poses.facts.width_px,
        height_px=poses.facts.height_px,
    )
    return poses, track


def _perhaps_from_behind(found: Found, movement: Movement) -> bool:
    """Return whether the full model may have taken a back for a front."""
    if View.BACK not in MOVEMENTS[movement].views:
        return False
    held = any(trial.hold_start_s is not None for trial in found.trials)
    return found.view is View.BACK or not held


def _settle_all(
    process: PoseProcess,
    models: Models,
    quick: ClipJob,
    track: Track,
    found: Found,
    movement: Movement,
    side: Side,
    setup: Setup,
    progress: Callable[[float], None],
) -> tuple[Settled, ...]:
    if not found.trials:
        return ()
    passes = models.careful(movement, found.view)
    job = ClipJob(
        clip=quick.clip,
        passes=passes,
        rate_hz=CAREFUL_HZ,
        windows=found.windows,
        quarter_turns=quick.quarter_turns,
        already_mirrored=quick.already_mirrored,
        alone=bool(np.all(track.people <= 1)),
    )
    poses = process.run(job, lambda share: progress(_QUICK_SHARE + share * (1 - _QUICK_SHARE)))
    size = poses.facts.width_px, poses.facts.height_px
    tracks = [
        follow_person(poses.frames[one], width_px=size[0], height_px=size[1], like=track)
        for one in passes
    ]
    return tuple(
        settle(
            [each.between(*window) for each in tracks],
            trial,
            movement,
            side,
            found.view,
            setup,
            models.name,
        )
        for trial, window in zip(found.trials, found.windows, strict=True)
    )


def _provenance(
    models: Models, movement: Movement, view: View, facts: ClipFacts, setup: Setup
) -> Provenance:
    return Provenance(
        model=models.name,
        model_hashes=models.hashes,
        passes=tuple(models.pass_name(one) for one in models.careful(movement, view)),
        software=software(),
        source={
            "backend": facts.backend,
            "size": f"{facts.width_px}x{facts.height_px}",
            "frames_read": str(facts.frames_read),
            "frames_expected": "unknown"
            if facts.frames_expected is None
            else str(facts.frames_expected),
            "share_unreadable": f"{facts.share_unreadable:.4f}",
            "measured_fps": f"{facts.measured_fps:.2f}",
            "rotation_deg": str(facts.rotation_deg),
            "sample_aspect": f"{facts.sample_aspect:.4f}",
            **({"notes": " ".join(facts.notes)} if facts.notes else {}),
        },
        setup=setup,
    )
