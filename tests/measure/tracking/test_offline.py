"""Offline tracking of scripted people: one person all the way, and never another one."""

import time
from collections.abc import Callable, Sequence

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from measure.domain.landmarks import LANDMARKS, FloatArray, Landmark, Side, arm
from measure.domain.tracks import FrameState, PoseFrame, Track
from measure.tracking.offline import track_subject

WIDTH, HEIGHT = 640, 480

#: A person: centre of the trunk and its length, pixels.
Place = tuple[float, float, float]

A: Place = (300.0, 240.0, 100.0)
B: Place = (520.0, 240.0, 95.0)

#: Offsets from the trunk's centre in trunk lengths for the left side; the right is mirrored.
_PARTS = {
    "SHOULDER": (0.33, -0.5), "ELBOW": (0.36, 0.05), "WRIST": (0.38, 0.55), "THUMB": (0.38, 0.65),
    "INDEX": (0.38, 0.7), "PINKY": (0.4, 0.68), "HIP": (0.2, 0.5), "KNEE": (0.2, 1.3),
    "ANKLE": (0.2, 2.1), "HEEL": (0.2, 2.2), "FOOT_INDEX": (0.25, 2.2),
}  # fmt: skip


def skeleton(place: Place, arms_up: bool = False) -> FloatArray:
    """A person who stands and faces the camera, shape (33, 2)."""
    x, y, trunk = place
    points = np.empty((LANDMARKS, 2))
    points[:11] = (x, y - trunk)
    for part, (dx, dy) in _PARTS.items():
        points[Landmark[f"LEFT_{part}"]] = (x + dx * trunk, y + dy * trunk)
        points[Landmark[f"RIGHT_{part}"]] = (x - dx * trunk, y + dy * trunk)
    if arms_up:
        for side in Side:
            for mark in (arm(side).elbow, arm(side).wrist):
                points[mark, 1] = y - 1.2 * trunk
    return points


def pose_frame(number: int, time_s: float, people: Sequence[FloatArray]) -> PoseFrame:
    noise = np.random.default_rng(number).normal(0, 1, (len(people), LANDMARKS, 2))
    points = np.array(people).reshape(-1, LANDMARKS, 2) + noise
    # Which person a value belongs to can be told from it; confidence tells nothing else.
    confidence = np.broadcast_to(points[:, :1, 0] / 1e4, points.shape[:2])
    return PoseFrame(
        index=number,
        time_s=time_s,
        points_px=points,
        visibility=confidence.copy(),
        presence=confidence.copy(),
    )


Scene = Callable[[float], Sequence[Place]]


def follow(scene: Scene, seconds: float = 8.0, rate_hz: float = 7.5) -> Track:
    frames = [
        pose_frame(number, time_s, [skeleton(place) for place in scene(time_s)])
        for number, time_s in enumerate(np.arange(0, seconds, 1 / rate_hz))
    ]
    return track_subject(frames, width_px=WIDTH, height_px=HEIGHT)


def states(track: Track, start_s: float = 0.0, end_s: float = 999.0) -> set[FrameState]:
    return {FrameState(state) for state in track.between(start_s, end_s).state}


def never_far_from(track: Track, where: Callable[[float], float], limit_px: float = 15) -> bool:
    """Whether every frame in which the person is seen shows who is at that place."""
    hips = track.points_px[:, [Landmark.LEFT_HIP, Landmark.RIGHT_HIP], 0].mean(axis=1)
    seen = track.state == FrameState.SEEN
    expected = np.array([where(float(time_s)) for time_s in track.time_s])
    return bool((np.abs(hips - expected)[seen] < limit_px).all())


RATES = pytest.mark.parametrize("rate_hz", [5.0, 6.0, 7.5, 15.0, 30.0])


@RATES
def test_one_person_is_seen_all_the_time(rate_hz: float) -> None:
    track = follow(lambda time_s: [A], rate_hz=rate_hz)
    assert states(track) == {FrameState.SEEN}
    assert set(track.people) == {1}
    assert len(track) == round(8 * rate_hz)
    assert track.visibility[:, 0] == pytest.approx(track.points_px[:, 0, 0] / 1e4)


@RATES
def test_the_order_of_the_list_says_nothing(rate_hz: float) -> None:
    track = follow(
        lambda time_s: [A, B] if round(time_s * rate_hz) % 2 else [B, A], rate_hz=rate_hz
    )
    assert states(track) == {FrameState.SEEN}
    assert never_far_from(track, lambda time_s: A[0])
    assert set(track.people) == {2}


@RATES
def test_one_person_reported_twice_is_one(rate_hz: float) -> None:
    double = (A[0] + 6, A[1] + 4, A[2] - 3)
    track = follow(lambda time_s: [double, A] if time_s % 1 > 0.5 else [A], rate_hz=rate_hz)
    assert states(track) == {FrameState.SEEN}
    assert set(track.people) == {1}


@RATES
def test_who_stays_is_not_who_left_and_who_returns_is(rate_hz: float) -> None:
    track = follow(lambda time_s: [B] if 3 < time_s < 6 else [A, B], rate_hz=rate_hz)
    assert states(track, 0, 3) == {FrameState.SEEN}
    assert states(track, 3.05, 5.95) == {FrameState.OTHER_PERSON}
    assert states(track, 6.05) == {FrameState.SEEN}
    assert never_far_from(track, lambda time_s: A[0])
    assert np.isnan(track.points_px[track.state != FrameState.SEEN]).all()


@RATES
def test_who_stays_and_walks_to_the_empty_place_is_still_somebody_else(rate_hz: float) -> None:
    def scene(time_s: float) -> list[Place]:
        if time_s < 3:
            return [A, B]
        x = max(A[0], B[0] - 90 * (time_s - 3))
        return [(x, B[1], B[2])]

    track = follow(scene, rate_hz=rate_hz)
    assert states(track, 3.05) == {FrameState.OTHER_PERSON}


def crossing(merge_px: float) -> Scene:
    """Both walk; while they are close only one skeleton is found, of either."""

    def scene(time_s: float) -> list[Place]:
        first, second = (100 + 60 * time_s, 240.0, 100.0), (540 - 55 * time_s, 240.0, 97.0)
        if abs(first[0] - second[0]) < merge_px:
            return [second]
        return [second, first]

    return scene


@RATES
@pytest.mark.parametrize("merge_px", [0, 40, 90])
def test_two_who_cross_on_the_way_are_not_told_apart_afterwards(
    rate_hz: float, merge_px: float
) -> None:
    track = follow(crossing(merge_px), rate_hz=rate_hz)
    assert states(track, 0, 2.5) == {FrameState.SEEN}
    assert states(track, 4.3) <= {FrameState.AMBIGUOUS, FrameState.OTHER_PERSON}
    one_of_them = (
        never_far_from(track, lambda time_s: 100 + 60 * time_s),
        never_far_from(track, lambda time_s: 540 - 55 * time_s),
    )
    assert any(one_of_them)


@RATES
@pytest.mark.parametrize("speed_px_s", [60, 120, 250])
def test_somebody_who_passes_by_is_noticed_and_never_measured(
    rate_hz: float, speed_px_s: float
) -> None:
    def scene(time_s: float) -> list[Place]:
        x = 640 - speed_px_s * time_s
        if abs(x - A[0]) < 60:
            return [(x, 240.0, 97.0)] if x < A[0] else [A]
        return [A, (x, 240.0, 97.0)] if x > 0 else [A]

    track = follow(scene, seconds=14.0, rate_hz=rate_hz)
    assert never_far_from(track, lambda time_s: A[0], limit_px=30)
    assert FrameState.AMBIGUOUS in states(track)
    assert states(track, 13.0) == {FrameState.SEEN}
    assert track.people.max() == 2


@RATES
@pytest.mark.parametrize("gap_s", [0.3, 0.8, 2.5])
def test_after_a_gap_the_person_is_known_at_the_same_place(rate_hz: float, gap_s: float) -> None:
    track = follow(lambda time_s: [] if 3 < time_s < 3 + gap_s else [A], rate_hz=rate_hz)
    assert states(track, 3.01, 2.99 + gap_s) == {FrameState.NOBODY}
    assert states(track, 3.01 + gap_s) == {FrameState.SEEN}


@RATES
@pytest.mark.parametrize(
    "new", [(430.0, 240.0, 100.0), (300.0, 240.0, 140.0), (300.0, 240.0, 60.0)]
)
def test_after_an_absence_another_place_or_size_is_somebody_else(
    rate_hz: float, new: Place
) -> None:
    track = follow(
        lambda time_s: [A] if time_s < 3 else [new] if time_s > 5 else [], rate_hz=rate_hz
    )
    assert states(track, 5.1) == {FrameState.OTHER_PERSON}


@RATES
def test_a_room_left_empty_stays_empty_though_ghosts_flicker(rate_hz: float) -> None:
    ghosts = np.random.default_rng(2)

    def scene(time_s: float) -> list[Place]:
        if time_s < 3:
            return [A]
        if time_s < 4.5:
            return [(A[0] + 160 * (time_s - 3), A[1], A[2])]
        x, y, trunk = ghosts.uniform([50, 100, 20], [600, 400, 150])
        return [(float(x), float(y), float(trunk))] if ghosts.random() < 0.5 else []

    track = follow(scene, rate_hz=rate_hz)
    assert states(track, 0, 4.4) == {FrameState.SEEN}
    after = track.between(5.2, 99)
    assert FrameState.SEEN not in states(after)
    assert (after.people <= 1).all()


@RATES
def test_a_ghost_before_does_not_take_the_place_of_the_person(rate_hz: float) -> None:
    ghost = (120.0, 200.0, 60.0)
    track = follow(lambda time_s: [ghost] if time_s < 1.5 else [A], rate_hz=rate_hz)
    assert states(track, 1.6) == {FrameState.SEEN}
    assert states(track, 0, 1.4) == {FrameState.OTHER_PERSON}


def test_a_thing_with_impossible_limbs_is_nobody() -> None:
    def thing(stretch: float) -> FloatArray:
        points = skeleton(A)
        points[Landmark.LEFT_ELBOW] = points[Landmark.LEFT_SHOULDER] + [0, stretch * A[2]]
        return points

    for stretch, expected in ((0.6, FrameState.SEEN), (2.5, FrameState.NOBODY)):
        frames = [pose_frame(n, n / 10, [thing(stretch)]) for n in range(40)]
        track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
        assert states(track) == {expected}


def test_the_larger_and_more_central_of_two_is_chosen() -> None:
    assert never_far_from(follow(lambda time_s: [B, A]), lambda time_s: A[0])
    near, far = (330.0, 260.0, 150.0), (250.0, 200.0, 60.0)
    assert never_far_from(follow(lambda time_s: [far, near]), lambda time_s: near[0])


def test_nobody_at_all() -> None:
    track = follow(lambda time_s: [])
    assert states(track) == {FrameState.NOBODY}
    assert set(track.people) == {0}
    empty = track_subject([], width_px=WIDTH, height_px=HEIGHT)
    assert len(empty) == 0


def test_frames_that_could_not_be_read_say_so() -> None:
    frames = [pose_frame(n, n / 10, [skeleton(A)]) for n in range(30)]
    nothing = np.empty((0, LANDMARKS))
    for n in (10, 11):
        frames[n] = PoseFrame(
            index=n, time_s=n / 10, points_px=np.empty((0, LANDMARKS, 2)),
            visibility=nothing, presence=nothing, readable=False,
        )  # fmt: skip
    track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
    assert [n for n in range(30) if track.state[n] == FrameState.UNREADABLE] == [10, 11]
    assert states(track) == {FrameState.SEEN, FrameState.UNREADABLE}


def test_broken_numbers_are_no_person() -> None:
    bad = skeleton(A)
    bad[Landmark.NOSE] = np.nan
    flat = np.zeros((LANDMARKS, 2))
    frames = [pose_frame(n, n / 10, [bad, flat, skeleton(B)]) for n in range(30)]
    track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
    assert states(track) == {FrameState.SEEN}
    assert set(track.people) == {1}
    assert never_far_from(track, lambda time_s: B[0])


def test_another_pass_follows_the_same_person() -> None:
    coarse = follow(lambda time_s: [A, B], rate_hz=5)
    other = (A[0] + 8, A[1] - 5, A[2] + 4)
    larger = (480.0, 240.0, 190.0)
    frames = [
        pose_frame(n, time_s, [skeleton(larger), skeleton(other)])
        for n, time_s in enumerate(np.arange(2, 4, 1 / 15))
    ]
    alone = track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
    assert never_far_from(alone, lambda time_s: larger[0])
    followed = track_subject(frames, width_px=WIDTH, height_px=HEIGHT, reference=coarse)
    assert states(followed) == {FrameState.SEEN}
    assert never_far_from(followed, lambda time_s: other[0])
    assert set(followed.people) == {2}


def test_where_the_other_pass_saw_nobody_nobody_is_measured() -> None:
    coarse = follow(lambda time_s: [A] if time_s < 2 else [])
    frames = [pose_frame(n, 5 + n / 15, [skeleton(A)]) for n in range(30)]
    track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT, reference=coarse)
    assert states(track) == {FrameState.OTHER_PERSON}
    nobody = follow(lambda time_s: [])
    track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT, reference=nobody)
    assert states(track) == {FrameState.OTHER_PERSON}


@settings(max_examples=10, deadline=None)
@given(scale=st.floats(0.5, 2.0), start_s=st.floats(0, 100))
def test_the_size_of_the_picture_and_the_hour_do_not_matter(scale: float, start_s: float) -> None:
    def scaled(place: Place) -> Place:
        return (scale * place[0], scale * place[1], scale * place[2])

    aside = (B[0] + 40.0, B[1], B[2])  # clearly less central, so that a pixel decides nothing

    def scene(time_s: float) -> list[Place]:
        return [aside] if 3 < time_s < 5 else [A, aside]

    times = np.arange(0, 7, 1 / 7.3)  # hits no limit exactly: there rounding would decide
    plain, changed = (
        [
            pose_frame(n, time_s + start, [skeleton(move(place)) for place in scene(time_s)])
            for n, time_s in enumerate(times)
        ]
        for move, start in ((lambda place: place, 0.0), (scaled, start_s))
    )
    size = {"width_px": round(WIDTH * scale) + 1, "height_px": round(HEIGHT * scale) + 1}
    one = track_subject(plain, width_px=WIDTH, height_px=HEIGHT)
    other = track_subject(changed, **size)
    shown = {FrameState.SEEN, FrameState.OTHER_PERSON}
    assert states(one) == states(other) == shown


def test_a_raised_arm_does_not_move_the_person() -> None:
    frames = [pose_frame(n, n / 7.5, [skeleton(A, arms_up=n > 20)]) for n in range(50)]
    track = track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
    assert states(track) == {FrameState.SEEN}


def test_a_long_clip_takes_no_more_than_its_share_of_time() -> None:
    people = [skeleton(A), skeleton(B)]
    frames = [pose_frame(n, n / 30, people) for n in range(800)]
    start = time.process_time()
    track_subject(frames, width_px=WIDTH, height_px=HEIGHT)
    short = time.process_time() - start
    more = [pose_frame(n, n / 30, people) for n in range(2400)]
    start = time.process_time()
    track_subject(more, width_px=WIDTH, height_px=HEIGHT)
    assert time.process_time() - start < 6 * short + 0.5
