"""Reading one clip: a quick pass finds the trials, careful passes over them settle each.

This is the assembly of the reading path; live measuring settles its trials the same way.
:func:`observe_clip` needs the clip and the networks; :func:`measurement_from_observation` only what
they saw.
"""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.acquisition import Setup, fit_for_picture
from measure.domain.landmarks import FloatArray, Side
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import MOVEMENTS, Movement, View
from measure.domain.tracks import FrameState, Track
from measure.errors import DataError
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import ClipInference, ClipInfo, ClipJob
from measure.pose.supervisor import PoseProcess
from measure.system.versions import software
from measure.tracking.offline import track_subject
from measure.trials.aggregation import aggregate_trials
from measure.trials.refinement import RefinedTrial, refine_trial
from measure.trials.scan import ScanResult, decimation_plan, fine_rate_factor, scan_for_trials
from measure.video.sampling import COARSE_HZ, FINE_HZ

#: Share of the progress that the quick pass makes.
_COARSE_SHARE = 0.35

#: Packages that decode and look; the others read what was seen.
_INFERENCE_PACKAGES = ("mediapipe", "opencv")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipReading:
    """What reading a clip gives.

    Attributes
    ----------
    looked
        What it was read from.
    guide
        Shape (n,): the quick pass's value over time, in the movement's unit; a guide, not the
        reading.
    settled
        One for each trial, with its careful series.
    """

    measurement: Measurement
    observation: ClipObservation
    guide: FloatArray
    refined: tuple[RefinedTrial, ...] = field(default=())

    @property
    def track(self) -> Track:
        """The quick pass's track, n frames."""
        return self.observation.coarse

    @property
    def facts(self) -> ClipInfo:
        return self.observation.facts


def read_clip(
    process: PoseProcess,
    models: ModelSet,
    clip: Path,
    movement: Movement,
    side: Side,
    *,
    view: View | None = None,
    setup: Setup | None = None,
    every_frame: bool = False,
    progress: Callable[[float], None] = lambda share: None,
) -> ClipReading:
    """Read a clip.

    Parameters
    ----------
    process
        A pose process that has the bundles of `models`.
    view
        What the camera sees, or None to recognise it among the movement's views.
    every_frame
        True to look at every frame instead of a few each second: many times slower.
    progress
        Told the share done, 0..1; an exception from it stops the reading.

    Raises
    ------
    ClipError
        The clip cannot be read.
    PoseProcessError
        The pose process failed; the text names the clip.
    DataError
        The set-up's lens profile is of another picture size.
    """
    known = setup or Setup()
    observation = observe_clip(
        process,
        models,
        clip,
        movement,
        side,
        view=view,
        setup=known,
        every_frame=every_frame,
        progress=progress,
    )
    return measurement_from_observation(observation, known)


def observe_clip(
    process: PoseProcess,
    models: ModelSet,
    clip: Path,
    movement: Movement,
    side: Side,
    *,
    view: View | None,
    setup: Setup,
    every_frame: bool,
    progress: Callable[[float], None],
) -> ClipObservation:
    """Let the networks look at a clip; parameters and errors as in :func:`read_clip`."""
    coarse = ClipJob(
        clip=clip,
        passes=(models.coarse(movement, view),),
        rate_hz=None if every_frame else COARSE_HZ,
        quarter_turns=setup.camera.quarter_turns,
        already_mirrored=setup.camera.already_mirrored,
    )
    poses, track = _coarse_pass(process, coarse, progress)
    _check_lens(setup, poses.facts)
    if _lost_at_times(track):
        coarse = replace(coarse, alone=True)
        poses, track = _coarse_pass(process, coarse, progress)
    found = scan_for_trials(track, movement, side, view, setup)
    from_behind = models.coarse(movement, View.BACK)
    if view is None and from_behind not in coarse.passes and _perhaps_from_behind(found, movement):
        coarse = replace(coarse, passes=(from_behind,))
        poses, track = _coarse_pass(process, coarse, progress)
        found = scan_for_trials(track, movement, side, None, setup)
    fps = poses.facts.measured_fps
    fine = _fine_passes(process, models, coarse, track, found, movement, fps, progress)
    progress(1.0)
    return ClipObservation(
        movement=movement,
        side=side,
        view=view,
        model=models.name,
        model_hashes=models.hashes,
        passes=tuple(models.pass_name(one) for one in models.fine(movement, found.view)),
        software=software(),
        facts=poses.facts,
        coarse=track,
        fine=fine,
        windows=found.windows if fine else (),
        quarter_turns=setup.camera.quarter_turns,
        already_mirrored=setup.camera.already_mirrored,
        every_frame=every_frame,
    )


def measurement_from_observation(observation: ClipObservation, setup: Setup) -> ClipReading:
    """Return the reading that follows from what the networks saw.

    Parameters
    ----------
    setup
        What is known beforehand; it may be another than the clip was looked at with.

    Raises
    ------
    DataError
        The set-up asks for pictures turned otherwise, is of a lens at another picture size, or
        finds trials where no careful pass looked.
    """
    camera = setup.camera
    if (camera.quarter_turns, camera.already_mirrored) != (
        observation.quarter_turns,
        observation.already_mirrored,
    ):
        raise DataError(
            "The set-up turns or mirrors the picture otherwise than when the clip was looked at. "
            "Read the clip itself again."
        )
    _check_lens(setup, observation.facts)
    movement, side = observation.movement, observation.side
    found = scan_for_trials(observation.coarse, movement, side, observation.view, setup)
    if not all(observation.covers(window) for window in found.windows):
        raise DataError(
            "With this set-up there are trials at moments that no careful pass looked at. "
            "Read the clip itself again."
        )
    tracks = tuple(observation.fine.values())
    refined = tuple(
        refine_trial(
            [each.between(*window) for each in tracks],
            trial,
            movement,
            side,
            found.view,
            setup,
            observation.model,
        )
        for trial, window in zip(found.trials, found.windows, strict=True)
    )
    return ClipReading(
        measurement=aggregate_trials(
            [each.trial for each in refined],
            movement=movement,
            side=side,
            view=found.view,
            provenance=_provenance(observation, setup),
            nothing_found=found.verdict,
            against_vertical=[each.against_vertical for each in refined],
            neutrals=[each.neutral for each in refined],
        ),
        observation=observation,
        guide=found.guide,
        refined=refined,
    )


def _check_lens(setup: Setup, facts: ClipInfo) -> None:
    """Refuse a lens profile that says nothing about pictures of this size.

    Raises
    ------
    DataError
        The profile was made at another size.
    """
    _, unfit = fit_for_picture(setup, facts.width_px, facts.height_px)
    if unfit:
        raise DataError(unfit)


def _coarse_pass(
    process: PoseProcess, coarse: ClipJob, progress: Callable[[float], None]
) -> tuple[ClipInference, Track]:
    poses = process.run(coarse, lambda share: progress(share * _COARSE_SHARE))
    track = track_subject(
        poses.frames[coarse.passes[0]],
        width_px=poses.facts.width_px,
        height_px=poses.facts.height_px,
    )
    return poses, track


def _lost_at_times(track: Track) -> bool:
    """Return whether somebody alone was seen, but not in all pictures.

    Asked for two people the network looks for the second in every picture and may let go of the
    first, mostly of one who stands side-on. Asked for one it just follows.
    """
    lost = track.state == FrameState.NOBODY
    return bool(np.any(lost) and not np.all(lost) and np.all(track.people <= 1))


def _perhaps_from_behind(found: ScanResult, movement: Movement) -> bool:
    """Return whether the full model may have taken a back for a front."""
    if View.BACK not in MOVEMENTS[movement].views:
        return False
    held = any(trial.hold_start_s is not None for trial in found.trials)
    return found.view is View.BACK or not held


def _fine_passes(
    process: PoseProcess,
    models: ModelSet,
    coarse: ClipJob,
    track: Track,
    found: ScanResult,
    movement: Movement,
    fps: float,
    progress: Callable[[float], None],
) -> dict[str, Track]:
    """Return the track of each careful pass by its name; nothing where nothing was found."""
    if not found.trials:
        return {}
    thin = coarse.rate_hz is not None
    times = fine_rate_factor(found.trials, movement, fps)
    job = replace(
        coarse,
        passes=models.fine(movement, found.view),
        rate_hz=FINE_HZ * times if thin else None,
        windows=found.windows,
        fine=True,
        decimation=decimation_plan(found.trials, movement, times) if thin else (),
        alone=bool(np.all(track.people <= 1)),
    )
    poses = process.run(job, lambda share: progress(_COARSE_SHARE + share * (1 - _COARSE_SHARE)))
    size = poses.facts.width_px, poses.facts.height_px
    return {
        models.pass_name(one): track_subject(
            poses.frames[one], width_px=size[0], height_px=size[1], reference=track
        )
        for one in job.passes
    }


def _provenance(observation: ClipObservation, setup: Setup) -> Provenance:
    facts = observation.facts
    return Provenance(
        model=observation.model,
        model_hashes=dict(observation.model_hashes),
        passes=observation.passes,
        # What looked may be another version than what reads now.
        software={
            **software(),
            **{name: observation.software[name] for name in _INFERENCE_PACKAGES},
        },
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
            **({"looked_at": "every frame"} if observation.every_frame else {}),
            **({"notes": " ".join(facts.notes)} if facts.notes else {}),
        },
        setup=setup,
    )
