"""A pose process that decodes clips as the real one does, and looks with no network.

Run as a module. Whatever the picture, it sees a stick figure that raises its left arm, holds it
and lowers it within three seconds, so that the whole reading path runs.
"""

from dataclasses import dataclass
from functools import cache

import numpy as np

from measure.domain.landmarks import SIDES_EXCHANGED, Side
from measure.domain.movements import Movement, View
from measure.domain.tracks import Track
from measure.pose.clip_worker import ClipWorker
from measure.pose.messages import (
    CLIP_ORDERS,
)
from measure.pose.worker import WorkerPipes
from tests.support.stick_figure import elevation_track, raise_and_hold

RATE_HZ = 30.0


@dataclass(frozen=True)
class Found:
    places: np.ndarray
    visibility: np.ndarray
    presence: np.ndarray


@cache
def figure() -> Track:
    series = raise_and_hold(95.0, rate_hz=RATE_HZ, rest_s=0.6, move_s=0.6, hold_s=0.9, after_s=0.3)
    return elevation_track(
        series, Movement.ABDUCTION, Side.LEFT, View.FRONT, rate_hz=RATE_HZ, trunk_px=110
    )


class ScriptedEstimator:
    """Sees the figure as it stands at the frame's time."""

    def __init__(self, people: int = 2, *, fine: bool = False) -> None:
        del people, fine

    def detect(self, rgb: np.ndarray, time_s: float) -> Found:
        track = figure()
        points = track.points_px[min(int(max(time_s, 0.0) * RATE_HZ), len(track) - 1)]
        places = (points + 0.5) / [track.width_px, track.height_px]
        if _shows_the_mirror_image(rgb):
            places = places[SIDES_EXCHANGED] * [-1.0, 1.0] + [1.0, 0.0]
        sure = np.full((1, len(places)), 0.95)
        return Found(places=places[None], visibility=sure, presence=sure)

    def close(self) -> None:
        """Nothing to let go of."""


def _shows_the_mirror_image(rgb: np.ndarray) -> bool:
    """The clips carry a red square in their upper left corner."""
    red = rgb[:30, :, 0].astype(int) - rgb[:30, :, 1]
    return bool(red[:, -30:].mean() > red[:, :30].mean())


def main() -> None:
    ClipWorker(
        WorkerPipes(CLIP_ORDERS), lambda bundle, **options: ScriptedEstimator(**options)
    ).serve()


if __name__ == "__main__":
    main()
