"""The work on one clip, with a scripted source and a scripted network."""

import itertools
import threading
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, SIDES_EXCHANGED, FloatArray, Landmark
from measure.domain.tracks import PoseFrame
from measure.errors import ClipError, PoseProcessError
from measure.pose.inference import MOST_REBUILDS
from measure.pose.jobs import ClipInfo, ClipJob, InferencePass
from measure.pose.runner import run_job
from measure.pose_models.catalogue import ModelQuality
from measure.video.frame import PixelArray
from tests.support.scripted_source import ScriptedSource

LITE, HEAVY = ModelQuality.LITE, ModelQuality.HEAVY
PLACES = np.column_stack([np.linspace(0.1, 0.4, LANDMARKS), np.linspace(0.2, 0.9, LANDMARKS)])


class Network:
    """Sees one person; places depend on whether the picture is mirrored (its left is brighter).

    `fails_on` are numbers of calls, over all networks of the maker, on which it fails, and from
    then on until it is made anew.
    """

    def __init__(self, maker: "Maker") -> None:
        self._maker = maker
        self._failed = False
        self.times: list[float] = []
        self.open = True
        self.thread = threading.get_ident()

    def detect(self, rgb: PixelArray, time_s: float) -> SimpleNamespace:
        assert self.open
        assert rgb.flags.c_contiguous
        assert self.thread == threading.get_ident()
        self.times.append(time_s)
        self._failed |= next(self._maker.calls) in self._maker.fails_on
        if self._failed:
            raise PoseProcessError("The pose network failed: it was told to.")
        self._maker.work()
        if not self._maker.sees(self, time_s):
            none = np.empty((0, LANDMARKS))
            return SimpleNamespace(
                places=np.empty((0, LANDMARKS, 2)), visibility=none, presence=none
            )
        places = PLACES
        if rgb[0, 0].mean() > rgb[0, -1].mean():
            places = places[SIDES_EXCHANGED] * [-1, 1] + [1, 0]
        confidence = np.linspace(0, 1, LANDMARKS)[None]
        return SimpleNamespace(places=places[None], visibility=confidence, presence=confidence)

    def close(self) -> None:
        assert self.open
        assert self.thread == threading.get_ident()
        self.open = False


class Maker:
    def __init__(
        self,
        fails_on: Sequence[int] = (),
        work: Callable[[], object] = lambda: None,
        sees: Callable[[Network, float], bool] = lambda network, time_s: True,
    ) -> None:
        self.fails_on = set(fails_on)
        self.work = work
        self.sees = sees
        self.calls = itertools.count()
        self.made: list[Network] = []

    def __call__(self) -> Network:
        self.made.append(Network(self))
        return self.made[-1]


class Listener:
    def __init__(self) -> None:
        self.found: dict[int, list[PoseFrame]] = {}
        self.shares: list[float] = []

    def frames(self, pass_number: int, frames: Sequence[PoseFrame]) -> None:
        self.found.setdefault(pass_number, []).extend(frames)

    def progress(self, share: float) -> None:
        self.shares.append(share)


class Shaded(ScriptedSource):
    """Frames that get brighter to the right."""

    def retrieve(self):  # type: ignore[no-untyped-def]
        pixels = super().retrieve()
        pixels[:] = np.linspace(20, 200, pixels.shape[1]).astype(np.uint8)[None, :, None]
        return pixels


def source(seconds: float = 2.0, **facts: object) -> Shaded:
    return Shaded([n / 30 for n in range(round(30 * seconds))], **facts)  # type: ignore[arg-type]


def work(
    one: ScriptedSource, makers: dict[ModelQuality, Maker], **job: object
) -> tuple[ClipInfo, dict[int, list[PoseFrame]]]:
    passes = job.pop("passes", (InferencePass(quality=LITE),))
    listener = Listener()
    whole = ClipJob(clip=Path("clip.mp4"), passes=passes, **job)  # type: ignore[arg-type]
    facts = run_job(whole, makers, listener, open_source=lambda clip: one)
    assert all(not network.open for maker in makers.values() for network in maker.made)
    assert one.closed
    return facts, listener.found


def pixels(width: int = 64, height: int = 48) -> FloatArray:
    return PLACES * [width, height] - 0.5


def test_every_frame_of_one_pass() -> None:
    maker = Maker()
    facts, found = work(source(stated_frames=60), {LITE: maker})
    assert [frame.index for frame in found[0]] == list(range(60))
    assert [frame.time_s for frame in found[0]] == pytest.approx([n / 30 for n in range(60)])
    assert all(np.allclose(frame.points_px, pixels()[None]) for frame in found[0])
    assert len(maker.made) == 1
    assert (facts.width_px, facts.height_px, facts.frames_read) == (64, 48, 60)
    assert facts.frames_expected == 60
    assert facts.measured_fps == pytest.approx(30)
    assert facts.duration_s == pytest.approx(59 / 30)
    assert facts.notes == ()


@pytest.mark.parametrize("mirrored", [False, True])
def test_somebody_found_late_is_followed_back_to_the_beginning(mirrored: bool) -> None:
    """The first network sees somebody from 0.5 s on; one that begins there sees him go back."""

    def sees(network: Network, time_s: float) -> bool:
        return time_s >= 0.5 if network is maker.made[0] else True

    maker = Maker(sees=sees)
    passes = (InferencePass(quality=LITE, mirrored=mirrored),)
    _, found = work(source(), {LITE: maker}, passes=passes)
    assert [frame.index for frame in found[0]] == list(range(60))
    assert [frame.time_s for frame in found[0]] == pytest.approx([n / 30 for n in range(60)])
    assert all(np.allclose(frame.points_px, pixels()[None]) for frame in found[0])
    assert maker.made[1].times == pytest.approx([n / 30 for n in range(16)])


def test_somebody_who_came_in_late_is_not_followed_further_back() -> None:
    def sees(network: Network, time_s: float) -> bool:
        return time_s >= 0.5 if network is maker.made[0] else time_s < 0.19

    maker = Maker(sees=sees)
    _, found = work(source(), {LITE: maker})
    assert [len(frame.points_px) for frame in found[0]] == [0] * 10 + [1] * 50


def test_a_network_that_fails_in_backfill_spoils_nothing() -> None:
    def sees(network: Network, time_s: float) -> bool:
        return time_s >= 0.5 if network is maker.made[0] else True

    maker = Maker(sees=sees, fails_on=[18])
    _, found = work(source(), {LITE: maker})
    assert [len(frame.points_px) for frame in found[0]] == [0] * 14 + [1] * 46


def test_where_nobody_is_nothing_is_held_back_at_the_end() -> None:
    _, found = work(source(), {LITE: Maker(sees=lambda network, time_s: False)})
    assert [len(frame.points_px) for frame in found[0]] == [0] * 60


def test_a_mirrored_pass_comes_back_as_the_plain_one() -> None:
    passes = (InferencePass(quality=LITE), InferencePass(quality=LITE, mirrored=True))
    _, found = work(source(), {LITE: Maker()}, passes=passes)
    for plain, mirrored in zip(found[0], found[1], strict=True):
        assert np.allclose(plain.points_px, mirrored.points_px)
        assert np.array_equal(plain.visibility[:, SIDES_EXCHANGED], mirrored.visibility)
        assert (plain.index, plain.time_s) == (mirrored.index, mirrored.time_s)


def test_a_mirrored_source_shows_the_persons_own_sides() -> None:
    """Turned back at the gate, the shade falls to the left and the network sees it so."""
    _, found = work(source(), {LITE: Maker()}, already_mirrored=True)
    left = found[0][0].points_px[0, Landmark.LEFT_WRIST]
    expected = pixels()[Landmark.RIGHT_WRIST] * [-1, 1] + [63, 0]
    assert left == pytest.approx(expected)


def test_all_passes_see_the_same_frames() -> None:
    passes = (
        InferencePass(quality=LITE),
        InferencePass(quality=HEAVY),
        InferencePass(quality=LITE, mirrored=True),
        InferencePass(quality=HEAVY, mirrored=True),
    )
    makers = {LITE: Maker(), HEAVY: Maker(work=lambda: time.sleep(0.001))}
    one = source()
    _, found = work(one, makers, passes=passes, rate_hz=10)
    assert len(one.retrieved) == 20
    assert {number: len(frames) for number, frames in found.items()} == dict.fromkeys(range(4), 20)
    assert len({tuple(frame.index for frame in frames) for frames in found.values()}) == 1
    assert len(makers[LITE].made) == len(makers[HEAVY].made) == 2


def test_each_span_starts_a_new_network() -> None:
    maker = Maker()
    spans = ((1.0, 1.2), (0.2, 0.4), (0.3, 0.5))
    _, found = work(source(), {LITE: maker}, windows=spans)
    assert [network.times[0] for network in maker.made] == pytest.approx([0.2, 1.0])
    assert [network.times[-1] for network in maker.made] == pytest.approx([0.5, 1.2])
    assert len(found[0]) == 10 + 7


def test_a_failing_network_is_made_anew_and_the_frame_marked() -> None:
    maker = Maker(fails_on=[10])
    facts, found = work(source(), {LITE: maker})
    assert [frame.index for frame in found[0] if not frame.readable] == [10]
    assert len(found[0]) == 60
    assert len(maker.made) == 2
    assert facts.notes == ("The network failed 1 times (lite) and was restarted.",)
    assert facts.frames_unreadable == 0


def test_a_network_that_keeps_failing_ends_the_work() -> None:
    maker = Maker(fails_on=range(5, 100))
    one = source()
    with pytest.raises(PoseProcessError, match="failed again and again"):
        work(one, {LITE: maker})
    assert len(maker.made) == MOST_REBUILDS + 1
    assert all(not network.open for network in maker.made)
    assert one.closed


def test_an_unexpected_error_in_a_network_ends_the_work() -> None:
    def broken() -> None:
        raise ZeroDivisionError

    one = source(30.0)
    before = set(threading.enumerate())
    with pytest.raises(ZeroDivisionError):
        work(one, {LITE: Maker(), HEAVY: Maker(work=broken)},
             passes=(InferencePass(quality=LITE), InferencePass(quality=HEAVY)))  # fmt: skip
    assert one.closed
    assert set(threading.enumerate()) <= before


def test_damage_is_marked_and_counted() -> None:
    script = [*(n / 30 for n in range(10)), None, *(n / 30 for n in range(15, 30))]
    facts, found = work(Shaded(script), {LITE: Maker()})
    assert [frame.index for frame in found[0] if not frame.readable] == [10, 11, 12, 13, 14]
    assert all(frame.points_px.shape == (0, LANDMARKS, 2) for frame in found[0][10:15])
    assert (facts.frames_read, facts.frames_unreadable) == (25, 5)
    assert facts.share_unreadable == pytest.approx(1 / 6)
    assert facts.measured_fps == pytest.approx(30)
    assert "5 of 30 frames (17%) are damaged" in facts.notes[0]


def test_turned_frames_give_pixels_of_the_upright_picture() -> None:
    facts, found = work(source(), {LITE: Maker()}, quarter_turns=1)
    assert (facts.width_px, facts.height_px, facts.rotation_deg) == (48, 64, 90)
    assert np.allclose(found[0][0].points_px[0], pixels(48, 64))


def test_large_frames_are_downscaled_for_inference_only() -> None:
    facts, found = work(source(0.2, size=(1600, 1200)), {LITE: Maker()})
    assert (facts.width_px, facts.height_px) == (1600, 1200)
    assert np.allclose(found[0][0].points_px[0], pixels(1600, 1200))


class Changing(ScriptedSource):
    def retrieve(self):  # type: ignore[no-untyped-def]
        pixels = super().retrieve()
        return pixels[:40] if self._number > 20 else pixels


def test_a_clip_that_changes_its_size_is_refused() -> None:
    with pytest.raises(ClipError, match=r"picture size of the clip clip\.mp4 changes at 0\.7 s"):
        work(Changing([n / 30 for n in range(60)]), {LITE: Maker()})


def test_frames_too_small_name_the_clip() -> None:
    with pytest.raises(ClipError, match=r"clip clip\.mp4: The picture is only 8 x 8"):
        work(source(size=(8, 8)), {LITE: Maker()})


def test_progress_goes_up_to_the_end_of_what_is_wanted() -> None:
    listener = Listener()
    job = ClipJob(
        clip=Path("clip.mp4"), passes=(InferencePass(quality=LITE),), windows=((0.0, 1.0),)
    )
    slow = Maker(work=lambda: time.sleep(0.01))
    one = source(10.0, stated_frames=300)
    run_job(job, {LITE: slow}, listener, open_source=lambda clip: one)
    assert listener.shares == sorted(listener.shares)
    assert 0.0 <= listener.shares[0] <= listener.shares[-1] <= 1.0


def test_few_pictures_are_in_memory_at_a_time() -> None:
    """A slow network holds the decoder back."""
    gate = threading.Event()
    one = source(4.0)
    maker = Maker(work=lambda: gate.wait(5))
    runner = threading.Thread(target=work, args=(one, {LITE: maker}))
    runner.start()
    time.sleep(0.2)
    assert len(one.retrieved) <= 8
    gate.set()
    runner.join()
    assert len(one.retrieved) == 120


def test_decoding_goes_on_during_inference() -> None:
    """The decoder is pictures ahead of a network that is still busy with the first one."""
    one = source(1.0)
    ahead: list[int] = []

    def detect() -> None:
        if not ahead:
            until = time.monotonic() + 5
            while len(one.retrieved) < 3 and time.monotonic() < until:
                time.sleep(0.005)
            ahead.append(len(one.retrieved))

    work(one, {LITE: Maker(work=detect)})
    assert ahead[0] >= 3


def test_passes_run_in_parallel() -> None:
    """Two networks meet at their first picture; one after the other they never would."""
    both = threading.Barrier(2, timeout=5)
    makers = {LITE: Maker(work=both.wait), HEAVY: Maker(work=both.wait)}
    passes = (InferencePass(quality=LITE), InferencePass(quality=HEAVY))
    _, found = work(source(0.1), makers, passes=passes)
    assert len(found[0]) == len(found[1]) == 3


@pytest.mark.parametrize(
    "wrong",
    [
        {"passes": ()},
        {"passes": (InferencePass(quality=LITE), InferencePass(quality=LITE))},
        {"quarter_turns": 4},
        {"rate_hz": 0},
    ],
)
def test_jobs_without_sense_are_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValueError):
        ClipJob(**{"clip": Path("x"), "passes": (InferencePass(quality=LITE),), **wrong})  # type: ignore[arg-type]


def test_passes_have_names() -> None:
    assert InferencePass(quality=HEAVY, mirrored=True).name == "heavy mirrored"
    assert InferencePass(quality=LITE).name == "lite"
