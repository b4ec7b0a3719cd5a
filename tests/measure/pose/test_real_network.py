"""Real clips through the real process and network: few, and at a thin rate."""

import csv
import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import numpy as np
import pytest

from measure.domain.landmarks import FloatArray, Landmark
from measure.domain.tracks import FrameState, Track
from measure.errors import ClipError, PoseProcessError
from measure.pose.child_process import log_path
from measure.pose.jobs import ClipInference, ClipJob, InferencePass
from measure.pose.supervisor import PoseProcess
from measure.pose_models.catalogue import ModelQuality
from measure.tracking.offline import track_subject
from tests.support import real_model
from tests.support.odd_clips import odd_clip, write_rotation

LITE = InferencePass(quality=ModelQuality.LITE)
MIRRORED = InferencePass(quality=ModelQuality.LITE, mirrored=True)
TRUNK = (
    Landmark.LEFT_SHOULDER,
    Landmark.RIGHT_SHOULDER,
    Landmark.LEFT_HIP,
    Landmark.RIGHT_HIP,
)
FRONT = "abduction-left-full"


@pytest.fixture(scope="module")
def process() -> Iterator[PoseProcess]:
    with PoseProcess({ModelQuality.LITE: real_model.bundle()}, stall_s=60) as one:
        yield one


@pytest.fixture(scope="module")
def front(process: PoseProcess) -> ClipInference:
    """Both passes over a clip filmed from the front."""
    return process.run(ClipJob(clip=real_model.clip(FRONT), passes=(LITE, MIRRORED), rate_hz=3))


def followed(poses: ClipInference, one: InferencePass = LITE) -> Track:
    return track_subject(
        poses.frames[one], width_px=poses.facts.width_px, height_px=poses.facts.height_px
    )


def test_fine_inference_places_the_body_from_the_first_frame_on(
    process: PoseProcess,
) -> None:
    off = {}
    for fine in (False, True):
        job = ClipJob(
            clip=real_model.clip(FRONT),
            passes=(LITE,),
            windows=((0.0, 1.0),),
            alone=True,
            fine=fine,
        )
        places = followed(process.run(job)).points_px[:, TRUNK]
        later = np.median(places[5:], axis=0)
        trunk = np.linalg.norm(later[:2].mean(axis=0) - later[2:].mean(axis=0))
        off[fine] = np.linalg.norm(places[0] - later, axis=1).mean() / trunk
    assert off[True] < 0.012
    assert off[True] < off[False]


def test_earlier_visibility_does_not_affect_one_person_inference(
    process: PoseProcess,
) -> None:
    """A hand that has gone behind the back is no longer called visible from before."""

    def visibility(start_s: float) -> dict[float, FloatArray]:
        job = ClipJob(
            clip=real_model.clip("hand-behind-back-left-full"),
            passes=(LITE,),
            rate_hz=5,
            windows=((start_s, 3.4),),
            alone=True,
            fine=True,
        )
        found = process.run(job).frames[LITE]
        return {each.time_s: each.visibility[0] for each in found if len(each.visibility)}

    from_rest, from_hold = visibility(0.0), visibility(3.0)
    rest = from_rest[min(from_rest)]
    assert len(from_hold) == 2
    for time_s, seen in from_hold.items():
        assert np.max(np.abs(seen - rest)) > 0.3
        assert from_rest[time_s] == pytest.approx(seen, abs=0.1)


def truth(name: str, joint: str, times_s: FloatArray) -> FloatArray:
    """Where a joint truly is in the picture at the given times, shape (n, 2)."""
    with real_model.clip(name).with_suffix(".csv").open(newline="") as file:
        rows = list(csv.DictReader(file))
    own = np.array([float(row["time_s"]) for row in rows])
    return np.column_stack(
        [
            np.interp(times_s, own, [float(row[f"{joint}_{axis}_px"]) for row in rows])
            for axis in ("x", "y")
        ]
    )


@pytest.mark.parametrize("one", [LITE, MIRRORED], ids=lambda one: one.name)
@pytest.mark.parametrize("joint", ["left_wrist", "right_wrist", "left_hip", "right_shoulder"])
def test_landmarks_lie_where_the_joints_are_on_the_right_side(
    front: ClipInference, one: InferencePass, joint: str
) -> None:
    track = followed(front, one)
    assert set(track.state) == {FrameState.SEEN}
    apart = track.points_px[:, Landmark[joint.upper()]] - truth(FRONT, joint, track.time_s)
    assert np.median(np.hypot(apart[:, 0], apart[:, 1])) < 12


def test_both_confidences_vary(front: ClipInference) -> None:
    track = followed(front)
    for values in (track.visibility, track.presence):
        assert np.isfinite(values).all()
        assert np.ptp(values) > 0.01


def test_facts_of_the_clip(front: ClipInference) -> None:
    facts = front.facts
    assert (facts.width_px, facts.height_px) == (640, 480)
    assert facts.frames_read == facts.frames_expected
    assert facts.frames_unreadable == 0
    assert 14 < facts.measured_fps < 31
    assert "FFMPEG" in facts.backend
    assert facts.notes == ()


def test_a_mirrored_clip_comes_back_with_the_persons_own_sides(
    process: PoseProcess, front: ClipInference, tmp_path: Path
) -> None:
    mirrored = tmp_path / "mirrored.mp4"
    _convert(real_model.clip(FRONT), mirrored, "hflip")
    poses = process.run(ClipJob(clip=mirrored, passes=(LITE,), rate_hz=3, already_mirrored=True))
    assert _difference(poses, front) < 6


@pytest.mark.parametrize(("quarters", "by_tag"), [(1, False), (2, True), (3, True)])
def test_a_turned_clip_gives_the_same_landmarks(
    process: PoseProcess, front: ClipInference, tmp_path: Path, quarters: int, by_tag: bool
) -> None:
    """The picture is stored turned the other way; a tag or the person's word turns it back."""
    turned = tmp_path / f"turned {quarters}.mp4"
    filters = ["", "transpose=2", "transpose=2,transpose=2", "transpose=1"][quarters]
    _convert(real_model.clip(FRONT), turned, filters)
    if by_tag:
        content = bytearray(turned.read_bytes())
        write_rotation(content, quarters)
        turned.write_bytes(content)
    job = ClipJob(clip=turned, passes=(LITE,), rate_hz=3, quarter_turns=0 if by_tag else quarters)
    poses = process.run(job)
    assert (poses.facts.width_px, poses.facts.height_px) == (640, 480)
    assert poses.facts.rotation_deg == 90 * quarters
    assert _difference(poses, front) < 6


def test_a_clip_with_wide_pixels_gives_the_same_landmarks(
    process: PoseProcess, front: ClipInference, tmp_path: Path
) -> None:
    wide = tmp_path / "wide pixels.mp4"
    _convert(real_model.clip(FRONT), wide, "scale=480:480,setsar=4/3")
    poses = process.run(ClipJob(clip=wide, passes=(LITE,), rate_hz=3))
    assert (poses.facts.width_px, poses.facts.height_px) == (640, 480)
    assert _difference(poses, front) < 6


def _convert(source: Path, target: Path, filters: str) -> None:
    subprocess.run(
        ["ffmpeg", "-y", "-v", "error", "-i", source, "-vf", filters, "-crf", "12", target],
        check=True,
    )


def _difference(one: ClipInference, other: ClipInference) -> float:
    """Return the median distance of the landmarks of two looks, pixels."""
    first, second = followed(one), followed(other)
    apart = first.points_px - second.points_px
    return float(np.median(np.hypot(apart[..., 0], apart[..., 1])))


def test_windows_see_the_same_person_anew(process: PoseProcess, front: ClipInference) -> None:
    poses = process.run(
        ClipJob(
            clip=real_model.clip(FRONT), passes=(LITE,), rate_hz=3, windows=((1.0, 2.0), (4.0, 5.0))
        )
    )
    quick = {frame.index: frame for frame in front.frames[LITE]}
    assert len(poses.frames[LITE]) == 8
    for frame in poses.frames[LITE]:
        apart = frame.points_px[0] - quick[frame.index].points_px[0]
        assert np.median(np.hypot(apart[:, 0], apart[:, 1])) < 10


def test_who_walks_off_is_gone(process: PoseProcess) -> None:
    name = "flexion-left-walks-off"
    poses = process.run(ClipJob(clip=real_model.clip(name), passes=(LITE,), rate_hz=5))
    track = followed(poses)
    hips = truth(name, "left_hip", track.time_s)[:, 0]
    gone_s = track.time_s[(hips < -60) | (hips > 700)][0]
    away = track.time_s > gone_s + 0.7
    assert away.sum() > 5
    assert FrameState.SEEN not in set(track.state[away])
    assert track.state[0] == FrameState.SEEN


def test_a_clip_without_anybody(process: PoseProcess) -> None:
    poses = process.run(ClipJob(clip=odd_clip("ordinary"), passes=(LITE,), rate_hz=2))
    assert len(poses.frames[LITE]) == 6
    assert set(followed(poses).state) == {FrameState.NOBODY}


def test_what_cannot_be_read_is_told_and_the_process_goes_on(process: PoseProcess) -> None:
    number = process.process_id
    for kind, part in (
        ("empty", "is empty"),
        ("notes-txt", "text file"),
        ("random", "not a video"),
    ):
        with pytest.raises(ClipError, match=part):
            process.run(ClipJob(clip=odd_clip(kind), passes=(LITE,)))
    assert process.process_id == number


def test_a_relative_path_is_found(process: PoseProcess, monkeypatch: pytest.MonkeyPatch) -> None:
    clip = odd_clip("ordinary")
    monkeypatch.chdir(clip.parent)
    poses = process.run(ClipJob(clip=Path(clip.name), passes=(LITE,), rate_hz=1))
    assert len(poses.frames[LITE]) == 3


def test_the_log_holds_the_noise_and_no_names(process: PoseProcess, front: ClipInference) -> None:
    text = log_path().read_text(errors="replace")
    assert "XNNPACK" in text
    assert FRONT not in text
    assert str(real_model.CLIPS) not in text


@pytest.mark.skipif(os.name != "posix", reason="not on this system: signals")
@pytest.mark.parametrize(
    ("sent", "part"),
    [(signal.SIGKILL, "crashed"), (signal.SIGSTOP, "no sign of life")],
    ids=["killed", "stopped"],
)
def test_a_process_that_dies_or_freezes_at_work(
    process: PoseProcess, sent: signal.Signals, part: str
) -> None:
    # A short patience, so the process has to be at work already; a slow start is no fault.
    with PoseProcess({ModelQuality.LITE: real_model.bundle()}, stall_s=5) as own:
        short = ClipJob(clip=odd_clip("ordinary"), passes=(LITE,), rate_hz=1)
        own.run(short)
        number = own.process_id
        assert number is not None
        struck = threading.Event()

        def strike(share: float) -> None:
            if not struck.is_set():
                struck.set()
                os.kill(number, sent)

        with pytest.raises(PoseProcessError, match=rf"ordinary\.mp4 .*{part}"):
            own.run(ClipJob(clip=odd_clip("ordinary"), passes=(LITE,)), strike)
        assert not _is_running(number)
        assert len(own.run(short).frames[LITE]) == 3


@pytest.mark.skipif(os.name != "posix", reason="not on this system: signals")
def test_the_process_ends_with_its_supervisor() -> None:
    """Even when that is killed while work goes on."""
    from tests.support import pose_of_clip

    real_model.bundle()
    parent = subprocess.Popen(
        [sys.executable, pose_of_clip.__file__, odd_clip("ordinary"), "30"],
        stdout=subprocess.DEVNULL,
    )
    try:
        assert _wait_until(lambda: bool(_children(parent.pid)), 60)
        (child,) = _children(parent.pid)
        time.sleep(0.5)
    finally:
        parent.kill()
        parent.wait()
    assert _wait_until(lambda: not _is_running(child), 20)


def _children(number: int) -> list[int]:
    text = Path(f"/proc/{number}/task/{number}/children").read_text()
    return [int(each) for each in text.split()]


def _is_running(number: int) -> bool:
    try:
        os.kill(number, 0)
    except ProcessLookupError:
        return False
    state = Path(f"/proc/{number}/stat")
    return not state.exists() or state.read_text().rpartition(")")[2].split()[0] != "Z"


def _wait_until(true: Callable[[], bool], limit_s: float) -> bool:
    end = time.monotonic() + limit_s
    while time.monotonic() < end:
        if true():
            return True
        time.sleep(0.05)
    return False
