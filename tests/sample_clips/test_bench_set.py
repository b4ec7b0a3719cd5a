"""The bench's list of clips is fixed, split by body, and covers what it promises."""

from collections import Counter

import pytest

from sample_clips.bench_set import (
    CHECKING_BODIES,
    FINAL_BODIES,
    FITTING_BODIES,
    POSTURE_BODIES,
    REPEAT_BODIES,
    SECOND_BODIES,
    STIFF_BODIES,
    TRIAL_BODIES,
    bench_clips,
)
from sample_clips.body import LARGE_BODIES, shape_of
from sample_clips.casting import (
    VERY_STIFF_RANGES,
    StratifiedDraw,
    make_unfamiliar,
    random_scenario,
)
from sample_clips.hopeless import (
    HOPELESS_KINDS,
    NEAR_MISS_KINDS,
    readable_near_miss,
    unreadable_scenario,
)
from sample_clips.postures import PostureKind, posture_scenario
from sample_clips.roster import SAMPLE_BODIES, sample_scenarios
from sample_clips.scenario import Movement, Scenario, Side, View, nominal_heading_deg

CLIPS = bench_clips()
POSTURES = [clip for clip in CLIPS if clip.group == "posture"]
STIFF = [clip.scenario for clip in CLIPS if clip.group == "stiff"]
GOOD = {
    "fitting": FITTING_BODIES,
    "checking": CHECKING_BODIES,
    "trial": TRIAL_BODIES,
    "second": SECOND_BODIES,
    "final": FINAL_BODIES,
}


def test_the_list_never_changes_by_itself() -> None:
    assert bench_clips() == CLIPS


def test_no_body_is_in_two_sets() -> None:
    fresh = (STIFF_BODIES, POSTURE_BODIES, tuple(LARGE_BODIES))
    sets = [set(bodies) for bodies in (*GOOD.values(), SAMPLE_BODIES, *fresh)]
    assert sum(map(len, sets)) == len(set.union(*sets))
    for group, bodies in GOOD.items():
        assert {clip.scenario.body for clip in CLIPS if clip.group == group} == set(bodies)
    assert {scenario.body for scenario in sample_scenarios()} <= set(SAMPLE_BODIES)
    assert {scenario.body for scenario in STIFF} == set(STIFF_BODIES)
    assert {clip.scenario.body for clip in POSTURES} >= set(POSTURE_BODIES)
    tricky = {c.scenario.body for c in CLIPS if c.group in ("hopeless", "near-miss")}
    assert not tricky & (set(FITTING_BODIES) | set(FINAL_BODIES))


def test_bodies_differ() -> None:
    shapes = [shape_of(number) for number in range(90)]
    assert len(set(shapes)) == 90
    assert shape_of(3) == shapes[3]


def test_counts() -> None:
    good = [clip for clip in CLIPS if clip.group in GOOD]
    assert len(good) >= 240
    assert len({clip.scenario.body for clip in good}) >= 24
    assert {clip.scenario.movement for clip in good} == set(Movement)
    assert {clip.scenario.side for clip in good} == set(Side)
    assert all(clip.scenario.expected == ("reading",) for clip in good)
    names = Counter(clip.scenario.name for clip in CLIPS)
    assert max(names.values()) == 1


@pytest.mark.parametrize(
    ("name", "low", "high"),
    [("distance_m", 1.8, 3.2), ("pitch_deg", -8, 8), ("roll_deg", -3, 3)],
)
@pytest.mark.parametrize("group", GOOD)
def test_camera_ranges_are_covered_evenly(name: str, low: float, high: float, group: str) -> None:
    values = [getattr(c.scenario.camera, name) for c in CLIPS if c.group == group]
    assert low <= min(values) < low + 0.1 * (high - low)
    assert high - 0.1 * (high - low) < max(values) <= high


def test_yaw_stays_within_fifteen_degrees() -> None:
    for clip in CLIPS:
        if clip.group in GOOD:
            one = clip.scenario
            assert abs(one.heading_deg - nominal_heading_deg(one.view, one.side)) <= 15


@pytest.mark.parametrize("group", ["trial", "final"])
def test_half_of_the_clips_are_unfamiliar(group: str) -> None:
    strange = [clip.scenario.unfamiliar for clip in CLIPS if clip.group == group]
    assert 0.4 < sum(strange) / len(strange) < 0.6


def test_nothing_unfamiliar_is_fitted_or_checked_on() -> None:
    assert not any(c.scenario.unfamiliar for c in CLIPS if c.group in ("fitting", "checking"))


def test_an_unfamiliar_clip_leaves_the_familiar_ranges() -> None:
    for seed in range(30):
        clip = random_scenario(
            name="clip",
            movement=Movement.FLEXION,
            view=View.SIDE,
            body=0,
            seed=seed,
            draw=StratifiedDraw(seed=1, index=seed, count=30),
        )
        strange = make_unfamiliar(clip)
        assert strange.unfamiliar
        outside = (
            not 1.8 <= strange.rhythm <= 2.2,
            strange.loose_m > 0.01,
            strange.hand is not clip.hand,
            not 60 <= strange.camera.hfov_deg <= 70,
        )
        assert any(outside)


def test_visits_of_a_person_differ_little() -> None:
    visits = [c.scenario for c in CLIPS if c.group == "repeat"]
    for body in REPEAT_BODIES:
        for movement in Movement:
            same = [one for one in visits if (one.body, one.movement) == (body, movement)]
            assert len(same) == 3
            assert len({one.seed for one in same}) == 3
            assert len({(one.side, one.view, one.camera.hfov_deg) for one in same}) == 1
            turned = [one.heading_deg for one in same]
            assert max(turned) - min(turned) <= 6
            far = [one.camera.distance_m for one in same]
            assert max(far) / min(far) < 1.11


def test_fitting_clips_come_first_and_movements_take_turns() -> None:
    assert [clip.group for clip in CLIPS[:164]] == ["fitting"] * 164
    assert {clip.scenario.movement for clip in CLIPS[:12]} == set(Movement)


def test_very_stiff_clips_cover_their_ranges_and_are_to_be_read() -> None:
    assert 19 <= len(STIFF) <= 24
    for movement, (low, high) in VERY_STIFF_RANGES.items():
        peaks = [one.peak for one in STIFF if one.movement is movement]
        step = (high - low) / len(peaks)
        assert low <= min(peaks) < low + step
        assert high - step < max(peaks) <= high
    assert all(one.expected == ("reading",) for one in STIFF)


def postures(kind: str) -> list[Scenario]:
    return [clip.scenario for clip in POSTURES if clip.kind == kind]


def off_nominal_deg(one: Scenario) -> float:
    return abs(one.heading_deg - nominal_heading_deg(one.view, one.side))


def test_each_posture_kind_brings_its_own_thing() -> None:
    assert all(one.posture.other_arm >= 0.8 for one in postures("both-arms"))
    assert all(one.posture.other_arm * one.peak <= 172.1 for one in postures("both-arms"))
    assert all(5 <= one.posture.carrying_deg <= 15 for one in postures("carrying-angle"))
    assert all(10 <= one.compensation.elbow_bend_deg <= 25 for one in postures("softly-bent"))
    assert {one.body for one in postures("large-body")} <= set(LARGE_BODIES)
    assert all(one.posture.hang_deg >= 8 for one in postures("large-body"))
    straight = [c.scenario for c in POSTURES if c.kind != "softly-bent"]
    assert all(one.compensation.elbow_bend_deg <= 8 for one in straight)


def test_only_those_turned_beyond_thirty_degrees_are_to_be_refused() -> None:
    assert all(15 < off_nominal_deg(one) <= 30 for one in postures("turned"))
    assert all(30 < off_nominal_deg(one) <= 45 for one in postures("far-turned"))
    refused = {clip.kind for clip in POSTURES if clip.scenario.expected != ("reading",)}
    assert refused == {"far-turned"}


def test_unknown_posture() -> None:
    kind = PostureKind(name="dancing", movement=Movement.FLEXION, view=View.SIDE, count=1)
    draw = StratifiedDraw(seed=1, index=0, count=1)
    with pytest.raises(ValueError, match="unknown kind"):
        posture_scenario(kind, "clip", 72, 1, draw)


@pytest.mark.parametrize("kind", HOPELESS_KINDS)
def test_hopeless_clips_name_their_reasons(kind: str) -> None:
    assert "reading" not in unreadable_scenario(kind, 12, 1).expected


@pytest.mark.parametrize("kind", NEAR_MISS_KINDS)
def test_near_misses_are_to_be_read(kind: str) -> None:
    assert readable_near_miss(kind, 12, 1).expected == ("reading",)


@pytest.mark.parametrize("make", [unreadable_scenario, readable_near_miss])
def test_unknown_kind(make: object) -> None:
    assert callable(make)
    with pytest.raises(ValueError, match="unknown kind"):
        make("dancing", 12, 1)
