"""Clip reading: a coarse pass finds the trials, fine passes over them refine each.

:func:`observe_clip` needs the clip and the networks; :func:`measurement_from_observation` only what
they saw.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

import numpy as np

from measure.clips.observation import ClipObservation
from measure.domain.acquisition import Setup, fit_for_picture
from measure.domain.landmarks import FloatArray
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Measurement, Provenance
from measure.domain.movements import View
from measure.domain.tracks import FrameState, PoseFrame, Track
from measure.errors import DataError
from measure.pose.ensemble import ModelSet
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass
from measure.pose.supervisor import PoseProcess
from measure.system.versions import software
from measure.tracking.offline import track_subject
from measure.trials.aggregation import aggregate_refined
from measure.trials.fine_passes import FinePlan, run_fine_passes
from measure.trials.refinement import RefinedTrial, refine_trial
from measure.trials.scan import ScanResult, scan_for_trials
from measure.video.sampling import COARSE_HZ, FINE_HZ

#: Share (0..1) of the progress that the coarse pass makes. [technical]
_COARSE_SHARE = 0.35

#: Packages that decode and infer; the others read what was observed.
_INFERENCE_PACKAGES = ("mediapipe", "opencv")


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipReading:
    """The measurement of a clip, and what it was read from.

    Attributes
    ----------
    guide
        Shape (n,): the coarse pass's value over time, in the movement's unit; a guide, not the
        reading.
    refined
        One for each trial, with its fine series.
    """

    measurement: Measurement
    observation: ClipObservation
    guide: FloatArray
    refined: tuple[RefinedTrial, ...] = field(default=())

    @property
    def track(self) -> Track:
        """The coarse pass's track, n frames."""
        return self.observation.coarse

    @property
    def facts(self) -> ClipInfo:
        return self.observation.facts


def read_clip(
    process: PoseProcess,
    models: ModelSet,
    clip: Path,
    task: MeasurementTask,
    *,
    every_frame: bool = False,
    progress: Callable[[float], None] = lambda share: None,
) -> ClipReading:
    """Read a clip.

    Parameters
    ----------
    process
        A pose process that has the bundles of `models`.
    every_frame
        True for inference on every frame instead of a few each second: many times slower.
    progress
        Called with the share done, 0..1; an exception from it stops the reading.

    Raises
    ------
    ClipError
        The clip cannot be read.
    PoseProcessError
        The pose process failed; the text names the clip.
    DataError
        The set-up's lens profile is of another image size.
    """
    observation = observe_clip(
        process, models, clip, task, every_frame=every_frame, progress=progress
    )
    return measurement_from_observation(observation, task.setup)


def observe_clip(
    process: PoseProcess,
    models: ModelSet,
    clip: Path,
    task: MeasurementTask,
    *,
    every_frame: bool = False,
    progress: Callable[[float], None] = lambda share: None,
) -> ClipObservation:
    """Run the networks over a clip; parameters and errors as in :func:`read_clip`."""
    camera = task.setup.camera
    job = ClipJob(
        clip=clip,
        passes=(models.coarse(task.movement, task.view),),
        rate_hz=None if every_frame else COARSE_HZ,
        quarter_turns=camera.quarter_turns,
        already_mirrored=camera.already_mirrored,
    )
    info, track = _coarse_pass(process, job, progress)
    _check_lens(task.setup, info)
    if _lost_at_times(track):
        job = replace(job, alone=True)
        info, track = _coarse_pass(process, job, progress)
    scan = scan_for_trials(track, task)
    from_behind = models.coarse(task.movement, View.BACK)
    if task.view is None and from_behind not in job.passes and _perhaps_from_behind(scan):
        job = replace(job, passes=(from_behind,))
        info, track = _coarse_pass(process, job, progress)
        scan = scan_for_trials(track, task)
    fine = _fine_tracks(process, models, job, scan, info.measured_fps, progress)
    progress(1.0)
    return ClipObservation(
        movement=task.movement,
        side=task.side,
        view=task.view,
        model=models.name,
        model_hashes=models.hashes,
        passes=tuple(models.pass_name(fine) for fine in models.fine()),
        software=software(),
        facts=info,
        coarse=track,
        fine=fine,
        windows=scan.windows if fine else (),
        quarter_turns=camera.quarter_turns,
        already_mirrored=camera.already_mirrored,
        every_frame=every_frame,
    )


def measurement_from_observation(observation: ClipObservation, setup: Setup) -> ClipReading:
    """Return the reading that follows from what the networks saw.

    Parameters
    ----------
    setup
        What is known beforehand; it may be another than when the clip was observed.

    Raises
    ------
    DataError
        The set-up asks for frames turned otherwise, is of a lens at another image size, or
        finds trials outside the spans of the fine passes.
    """
    camera = setup.camera
    if (camera.quarter_turns, camera.already_mirrored) != (
        observation.quarter_turns,
        observation.already_mirrored,
    ):
        raise DataError(
            "The set-up turns or mirrors the picture differently from when the clip was read. Read "
            "the clip itself again."
        )
    _check_lens(setup, observation.facts)
    scan = scan_for_trials(observation.coarse, observation.task(setup))
    if not all(observation.covers(window) for window in scan.windows):
        raise DataError(
            "With this set-up there are trials at moments that no detailed pass covers. "
            "Read the clip itself again."
        )
    refined = tuple(
        refine_trial(
            [track.between(*window) for track in observation.deciding.values()],
            trial,
            scan.task,
            observation.model,
        )
        for trial, window in zip(scan.trials, scan.windows, strict=True)
    )
    return ClipReading(
        measurement=aggregate_refined(
            refined, scan.task, _provenance(observation, setup), nothing_found=scan.gate_result
        ),
        observation=observation,
        guide=scan.guide,
        refined=refined,
    )


def _check_lens(setup: Setup, facts: ClipInfo) -> None:
    """Refuse a lens profile that does not hold for frames of this size.

    Raises
    ------
    DataError
        The profile was made at another size.
    """
    _, unfit = fit_for_picture(setup, facts.width_px, facts.height_px)
    if unfit:
        raise DataError(unfit)


def _coarse_pass(
    process: PoseProcess, job: ClipJob, progress: Callable[[float], None]
) -> tuple[ClipInfo, Track]:
    inference = process.run(job, lambda share: progress(share * _COARSE_SHARE))
    info = inference.facts
    frames = inference.frames[job.passes[0]]
    return info, track_subject(frames, width_px=info.width_px, height_px=info.height_px)


def _lost_at_times(track: Track) -> bool:
    """Return whether one person alone was seen, but not in all frames.

    Asked for two people the network searches for the second in every frame and may let go of the
    first, mostly of one who stands side-on. Asked for one it just follows.
    """
    lost = track.state == FrameState.NOBODY
    return bool(np.any(lost) and not np.all(lost) and np.all(track.people <= 1))


def _perhaps_from_behind(scan: ScanResult) -> bool:
    """Return whether the full model may have taken a back for a front."""
    if View.BACK not in scan.task.facts.views:
        return False
    held = any(trial.hold_start_s is not None for trial in scan.trials)
    return scan.view is View.BACK or not held


def _fine_tracks(
    process: PoseProcess,
    models: ModelSet,
    coarse: ClipJob,
    scan: ScanResult,
    fps: float,
    progress: Callable[[float], None],
) -> dict[str, Track]:
    """Return the track of each fine pass by its name; nothing where there are no trials."""
    if not scan.trials:
        return {}

    def run(plan: FinePlan) -> Mapping[InferencePass, Sequence[PoseFrame]]:
        thin = coarse.rate_hz is not None
        job = replace(
            coarse,
            passes=plan.passes,
            rate_hz=FINE_HZ * plan.rate_factor if thin else None,
            windows=scan.windows,
            fine=True,
            decimation=plan.decimation if thin else (),
            alone=plan.alone,
        )
        share_left = 1 - _COARSE_SHARE
        return process.run(job, lambda share: progress(_COARSE_SHARE + share * share_left)).frames

    track = scan.fused.keypoints.track
    return run_fine_passes(models, scan.task, scan.trials, track, run, fps=fps)


def _provenance(observation: ClipObservation, setup: Setup) -> Provenance:
    facts = observation.facts
    return Provenance(
        model=observation.model,
        model_hashes=dict(observation.model_hashes),
        passes=observation.deciding_passes,
        # Inference may have run with another version than what reads now.
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
