"""Frames of a stick figure as the live process would tell them, for tests without a process."""

from collections.abc import Iterator
from pathlib import Path

import numpy as np

from measure.domain.tracks import FrameState, PoseFrame, Track
from measure.live.supervisor import FrameResult
from measure.pose_models.bundles import Bundle
from measure.pose_models.catalogue import ModelQuality
from measure.tracking.online import SubjectPose
from measure.video.sampling import COARSE_HZ, FINE_HZ, RateSampler

RATE_HZ = 15.0


def empty_bundle(quality: ModelQuality) -> Bundle:
    """A bundle for processes that look with no network."""
    return Bundle(quality=quality, sha256="0" * 64, path=Path("none"), content=b"none")


def pose_frame(track: Track, n: int, *, start_s: float = 0.0, start: int = 0) -> PoseFrame:
    """Frame n of a track, as the network would give it."""
    return PoseFrame(
        index=start + n,
        time_s=start_s + float(track.time_s[n]),
        points_px=track.points_px[n][None],
        visibility=track.visibility[n][None],
        presence=track.presence[n][None],
    )


def person(track: Track, n: int) -> SubjectPose:
    """Frame n of a track as the person lock would give it."""
    return SubjectPose(
        state=FrameState.SEEN,
        people=1,
        points_px=track.points_px[n],
        visibility=track.visibility[n],
        presence=track.presence[n],
    )


def picture(number: int, size: tuple[int, int] = (64, 48)) -> np.ndarray:
    """A small grey picture, each number another one."""
    rgb = np.full((size[1], size[0], 3), 120, dtype=np.uint8)
    rgb[0, 0] = number % 256, number // 256 % 256, 7
    return rgb


def seen_frames(
    track: Track, *, session: int = 1, start_s: float = 0.0, fps: float = 0.0
) -> Iterator[FrameResult]:
    """The frames of a track with the grids of both kinds of pass, as the live process tells."""
    coarse, fine = RateSampler(COARSE_HZ), RateSampler(FINE_HZ)
    for n in range(len(track)):
        pose = pose_frame(track, n, start_s=start_s, start=round(start_s * RATE_HZ))
        yield FrameResult(
            session=session,
            pose=pose,
            rgb=picture(n),
            size_px=(track.width_px, track.height_px),
            coarse=coarse.chooses(pose.time_s),
            fine=fine.chooses(pose.time_s),
            fps=fps,
        )
