"""Frames without anybody, analysed backwards once somebody is detected."""

import gc
import weakref
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, FloatArray
from measure.domain.tracks import PoseFrame
from measure.pose import inference
from measure.pose.inference import BackfillBuffer, EstimatedPoses, PassRunner, QueuedFrame
from measure.pose.jobs import InferencePass
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import FrameNormalizer, Picture, PixelArray
from measure.video.reader import SourceFrame

PICTURE = FrameNormalizer().normalize(np.zeros((48, 64, 3), dtype=np.uint8))


def frame(index: int, people: int) -> PoseFrame:
    return PoseFrame(
        index=index,
        time_s=index / 10,
        points_px=np.zeros((people, LANDMARKS, 2)),
        visibility=np.zeros((people, LANDMARKS)),
        presence=np.zeros((people, LANDMARKS)),
    )


class Asked:
    """Finds somebody in the pictures from `since` on, and remembers the order it was asked in."""

    def __init__(self, since: int) -> None:
        self._since = since
        self.orders: list[list[int]] = []

    def __call__(self, backwards: Sequence[tuple[PoseFrame, Picture | None]]) -> list[PoseFrame]:
        self.orders.append([result.index for result, _ in backwards])
        return [
            frame(result.index, 1) if result.index >= self._since else result
            for result, _ in backwards
        ]


def people(frames: Sequence[PoseFrame]) -> list[tuple[int, int]]:
    return [(each.index, len(each.points_px)) for each in frames]


def test_the_beginning_is_held_back_until_somebody_is_found() -> None:
    asked = Asked(since=1)
    back = BackfillBuffer(asked)
    assert [back.passed(frame(n, 0), PICTURE) for n in range(3)] == [[], [], []]
    assert people(back.passed(frame(3, 1), PICTURE)) == [(0, 0), (1, 1), (2, 1), (3, 1)]
    assert asked.orders == [[3, 2, 1, 0]]


def test_later_gaps_stay_as_they_are() -> None:
    asked = Asked(since=0)
    back = BackfillBuffer(asked)
    for n, seen in enumerate([1, 0, 0, 1]):
        assert people(back.passed(frame(n, seen), PICTURE)) == [(n, seen)]
    assert asked.orders == []


def test_where_nobody_ever_comes_all_results_are_passed_on() -> None:
    back = BackfillBuffer(Asked(since=0))
    given = [one for n in range(5) for one in back.passed(frame(n, 0), PICTURE)]
    assert given == []
    assert people(back.rest()) == [(n, 0) for n in range(5)]
    assert back.rest() == []


@pytest.mark.parametrize(
    ("limit", "value", "kept"), [("MOST_PICTURES", 2, 2), ("MOST_BYTES", 3 * 48 * 64 * 3, 3)]
)
def test_only_so_many_pictures_are_remembered(
    monkeypatch: pytest.MonkeyPatch, limit: str, value: int, kept: int
) -> None:
    monkeypatch.setattr(inference, limit, value)
    back = BackfillBuffer(Asked(since=0))
    given = [one for n in range(6) for one in back.passed(frame(n, 0), PICTURE)]
    assert people(given) == [(n, 0) for n in range(6 - kept)]
    found = people(back.passed(frame(6, 1), PICTURE))
    assert found == [(n, 1) for n in range(6 - kept, 7)]


@dataclass(frozen=True)
class NobodyFound:
    """The people of a frame without any."""

    places: FloatArray = field(default_factory=lambda: np.empty((0, LANDMARKS, 2)))
    visibility: FloatArray = field(default_factory=lambda: np.empty((0, LANDMARKS)))
    presence: FloatArray = field(default_factory=lambda: np.empty((0, LANDMARKS)))


class Nobody:
    """A network that detects nobody."""

    def detect(self, rgb: PixelArray, time_s: float) -> EstimatedPoses:
        return NobodyFound()

    def close(self) -> None:
        """Nothing to let go of."""


class Sink:
    """Takes results, and keeps none."""

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None:
        """Nothing is kept."""

    def progress(self, share: float) -> None:
        """Nothing is kept."""


def test_a_pass_given_up_leaves_no_frames_behind() -> None:
    gc.disable()  # what only the collector of cycles would free counts as left behind
    try:
        run = PassRunner(0, InferencePass(quality=ModelQuality.LITE), Nobody, Sink())
        source = SourceFrame(index=0, time_s=0.0, pixels=None, window=0)
        run.process(QueuedFrame(frame=source, picture=PICTURE))
        beginning = weakref.ref(run._beginning)
        run.close()
        assert beginning() is not None
        del run
        assert beginning() is None
    finally:
        gc.enable()
