"""Track of one person through a clip by the coarse pass: for standing poses, not for readings."""

from collections.abc import Callable
from pathlib import Path

from measure.domain.tracks import Track

#: Analysis rate, frames per second; a person standing still needs few. [project]
RATE_HZ = 7.5


def track_from_clip(
    clip: Path,
    *,
    own_model: Path | None = None,
    quarter_turns: int = 0,
    already_mirrored: bool = False,
    progress: Callable[[float], None] = lambda share: None,
) -> Track:
    """Return the track of the person in a clip.

    Parameters
    ----------
    own_model
        A pose bundle of the person's own, or None for the usual ones.
    progress
        Called with the share done, 0..1.

    Raises
    ------
    ClipError, ModelError, PoseProcessError
        As in :meth:`measure.pose.supervisor.PoseProcess.run` and
        :func:`measure.pose.ensemble.models_for`.
    """
    from measure.domain.movements import Movement
    from measure.pose.ensemble import models_for
    from measure.pose.jobs import ClipJob
    from measure.pose.supervisor import PoseProcess
    from measure.pose_models.catalogue import ModelQuality
    from measure.tracking.offline import track_subject

    models = models_for(None if own_model else ModelQuality.FULL, own_model)
    first = models.coarse(Movement.ABDUCTION)
    job = ClipJob(
        clip=clip,
        passes=(first,),
        rate_hz=RATE_HZ,
        quarter_turns=quarter_turns,
        already_mirrored=already_mirrored,
    )
    with PoseProcess(models.bundles) as process:
        poses = process.run(job, progress)
    return track_subject(
        poses.frames[first], width_px=poses.facts.width_px, height_px=poses.facts.height_px
    )
