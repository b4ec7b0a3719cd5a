"""The bench of real people: its bootstrap, its cells and its goals, on cases counted by hand."""

from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import LANDMARKS, Landmark, Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.movements import Movement, View
from measure.domain.reasons import Reason
from measure.domain.tracks import FrameState, Track
from tests.bench import bench_real_table as tables
from tests.bench.bench_real_cases import IN_TREE, Arm, load_real_people
from tests.bench.bench_real_figures import figures, group_bootstrap, mean_over_ranges
from tests.bench.bench_real_floor import MEAN_OVER_SD, floor_by_look_alikes, floor_by_scatter
from tests.bench.bench_real_goals import Goal, goals
from tests.bench.bench_real_intervals import group_conformal, left_out
from tests.bench.bench_real_readings import (
    ELBOW_LINE,
    WRIST_LINE,
    ArmReading,
    ClipReading,
    read_arm,
)

#: Corners of a person 100 pixels between shoulders and hips, who faces the camera: the left arm
#: points at the right of the picture, its forearm up.
CORNERS = {
    Landmark.LEFT_SHOULDER: (230.0, 100.0),
    Landmark.RIGHT_SHOULDER: (170.0, 100.0),
    Landmark.LEFT_HIP: (220.0, 200.0),
    Landmark.RIGHT_HIP: (180.0, 200.0),
    Landmark.LEFT_ELBOW: (280.0, 100.0),
    Landmark.LEFT_WRIST: (280.0, 50.0),
}


def track() -> Track:
    points = np.full((2, LANDMARKS, 2), 200.0)
    for landmark, place in CORNERS.items():
        points[:, landmark] = place
    ones = np.ones((2, LANDMARKS))
    return Track(
        time_s=np.array([0.0, 0.2]),
        points_px=points,
        visibility=ones,
        presence=ones.copy(),
        state=np.full(2, FrameState.SEEN, dtype=np.int64),
        people=np.ones(2, dtype=np.int64),
        width_px=400,
        height_px=400,
    )


def arm(marked_deg: float = 20.0, group: str = "A") -> Arm:
    seen = track()
    return Arm(
        name=f"{group}/{marked_deg}",
        source="made up",
        group=group,
        task=MeasurementTask(Movement.ABDUCTION, Side.LEFT, View.FRONT),
        seen_from="front",
        near=None,
        usable=True,
        bent=False,
        right_person=True,
        marked_deg=marked_deg,
        noise_deg=2.0,
        passes=dict.fromkeys(("full", "full mirrored", "heavy", "heavy mirrored"), seen),
    )


def reading(
    error_deg: float, *, marked_deg: float = 20.0, group: str = "A", half_deg: float | None = 8.0
) -> ArmReading:
    value = marked_deg + error_deg
    return ArmReading(
        arm=arm(marked_deg, group),
        value_deg=value,
        half_deg=half_deg,
        spread_deg=0.0,
        refused_for=() if half_deg is not None else (Reason.HIDDEN, Reason.ELBOW_BENT),
        notes=(),
        plain_deg={ELBOW_LINE: marked_deg - 1.0},
    )


def test_one_group_of_five_gives_the_quantiles_of_a_binomial() -> None:
    # Of five draws k take the only group that is not 0: P(k <= 0) = 0.33, P(k <= 2) = 0.942,
    # P(k <= 3) = 0.993. So the 2.5 % point is 0 of 5, the 97.5 % point 3 of 5.
    assert group_bootstrap(np.array([5.0, 0, 0, 0, 0]), list("abcde")) == pytest.approx((0.0, 3.0))


def test_more_arms_of_the_same_groups_make_nothing_surer() -> None:
    values, groups = np.array([1.0, 2.0, 4.0, 8.0, 16.0, 32.0]), list("abcdef")
    once = group_bootstrap(values, groups)
    assert group_bootstrap(np.repeat(values, 10), list(np.repeat(groups, 10))) == once
    surer = group_bootstrap(np.repeat(values, 10), [str(number) for number in range(60)])
    assert once is not None
    assert surer is not None
    assert surer[1] - surer[0] < 0.5 * (once[1] - once[0])


def test_with_few_groups_nothing_is_said() -> None:
    assert group_bootstrap(np.arange(40.0), list("abcd") * 10) is None


def test_conformal_width_of_groups_that_weigh_alike() -> None:
    # 38 of 39 groups and the one to come are 95 %; a hundred arms of one group change nothing.
    scores = np.array([float(number) for number in range(1, 39)] + [50.0] * 100)
    groups = [str(number) for number in range(1, 39)] + ["many"] * 100
    assert group_conformal(scores, groups) == 38.0
    assert group_conformal(np.array([3.0, 9.0]), ["a", "b"]) == 9.0


def test_who_is_left_out_does_not_widen_the_own_interval() -> None:
    # Twenty groups at 4 degrees, one at 40: its own interval comes from the others and fails.
    arms = [reading(4.0, group=str(number)) for number in range(20)]
    out = left_out([*arms, reading(40.0, group="odd")])
    assert out.held.value == pytest.approx(20 / 21)


def test_figures_of_four_arms_counted_by_hand() -> None:
    cell = figures([reading(2.0), reading(-4.0), reading(18.0, half_deg=18.0), reading(8.5)])
    assert cell is not None
    assert cell.bias.value == pytest.approx((2 - 4 + 18 + 8.5) / 4)
    assert cell.mean_error.value == pytest.approx((2 + 4 + 18 + 8.5) / 4)
    assert cell.gross == 0.25
    assert cell.held is not None
    assert cell.held.value == 0.75
    # Half-width 8 and a scatter of 2: 8.5 is within hypot(8, 3.92) = 8.9.
    assert cell.held_allowing == 1.0
    assert cell.half == pytest.approx((8 + 8 + 18 + 8) / 4)
    assert cell.bias.span is None


def test_refused_arms_count_as_offered_and_by_their_first_reason_only() -> None:
    cell = figures([reading(2.0), reading(50.0, half_deg=None), reading(60.0, half_deg=None)])
    assert cell is not None
    assert (cell.offered, cell.accepted) == (3, 1)
    assert dict(cell.refused_for) == {"hidden": 2}
    assert cell.bias.value == pytest.approx(2.0)


def test_a_plain_line_is_judged_on_the_accepted_arms() -> None:
    cell = figures([reading(5.0), reading(7.0), reading(40.0, half_deg=None)], ELBOW_LINE)
    assert cell is not None
    assert cell.accepted == 2
    assert cell.bias.value == pytest.approx(-1.0)
    assert cell.held is None


def test_nothing_accepted_gives_no_figures() -> None:
    assert figures([reading(5.0, half_deg=None)]) is None
    assert "| 0 |" in tables.short_table({"abduction": [reading(5.0, half_deg=None)]})


def test_every_range_counts_alike() -> None:
    arms = [reading(4.0, marked_deg=10.0)] * 9 + [reading(-8.0, marked_deg=130.0)]
    assert mean_over_ranges(arms) == pytest.approx((6.0, 6.0))


@pytest.mark.parametrize(("value", "error"), [(-178.0, -8.0), (190.0, 0.0), (10.0, -180.0)])
def test_errors_go_the_short_way_round(value: float, error: float) -> None:
    one = replace(reading(0.0, marked_deg=190.0), value_deg=value)
    assert one.error_deg == pytest.approx(error if error else 0.0)


def test_the_row_of_a_table() -> None:
    row = tables.short_table({"these": [reading(2.0), reading(-4.0)]}).splitlines()[-1]
    assert row == ("| these | 2 | 2 | -1.0° | 3.0° | 3.9° | 0 % | 100 % | 8.0° | -1.0°, 1.0° |")


def test_bent_arms_and_turned_people_are_told_apart_from_the_rest() -> None:
    bent, turned = (replace(arm(), bent=True), replace(arm(), seen_from="oblique"))
    arms = [reading(2.0), replace(reading(10.0), arm=bent), replace(reading(0.0), arm=turned)]
    lines = tables.doubtful_text([*arms, replace(arms[1], half_deg=None)]).splitlines()
    assert lines[0].startswith(
        "- 2 arms with the elbow marked bent by 40° to 90°: 1 read, bias +10"
    )
    assert lines[1].startswith("- 1 straight arms of people turned")


def test_habits_show_by_source_and_small_sources_do_not() -> None:
    one = reading(3.0)
    rare = replace(one, arm=replace(one.arm, source="rare"))
    table = tables.sources_table([one] * 10 + [rare] * 9 + [reading(9.0, marked_deg=80.0)])
    assert table.splitlines()[2:] == ["| made up | 10 | +3.0°, 3.0° | -1.0°, 1.0° |"]


def test_plain_lines_of_a_known_person() -> None:
    # The arm points sideways: 90 degrees. The wrist lies as far up as the elbow is out: 45 more.
    lines = read_arm(arm()).plain_deg
    assert lines[ELBOW_LINE] == pytest.approx(90.0)
    assert lines[WRIST_LINE] == pytest.approx(135.0)


def test_the_program_refuses_what_it_refuses_anywhere() -> None:
    assert "elbow-bent" in read_arm(arm()).refused_for


def test_goals_are_reached_up_to_their_bounds_and_not_beyond() -> None:
    goal = Goal(name="bias", seen=-1.0, bounds=(-1.0, 1.0), unit="°")
    assert goal.reached
    assert not replace(goal, seen=1.1).reached
    assert not replace(goal, seen=float("nan")).reached


def trap(value: float | None, within_deg: float | None) -> ClipReading:
    clip = next(one for one in load_real_people((IN_TREE,)).clips if one.trap == "grave")
    clip = replace(clip, clicked_deg=160.0, within_deg=within_deg)
    return ClipReading(clip=clip, value=value, low=None, high=None, reasons=(), coarse_only=False)


def test_a_trap_is_caught_when_it_is_read_unless_rightly() -> None:
    assert trap(170.0, None).caught
    assert trap(180.0, 15.0).caught
    assert not trap(170.0, 15.0).caught
    assert not trap(None, None).caught


def test_goals_count_grave_traps_and_arms() -> None:
    arms = [reading(2.0), reading(-4.0), reading(9.0, half_deg=None)]
    seen = {goal.name: goal.seen for goal in goals(arms, [trap(170.0, None), trap(None, None)])}
    assert seen["grave traps read"] == 1
    assert seen["bias"] == pytest.approx(-1.0)
    assert seen["usable arms read"] == pytest.approx(200 / 3)
    assert np.isnan(seen["mean error, flexion of the near arm"])


def test_what_look_alikes_are_marked_differently_by_is_in_no_landmark() -> None:
    errors = [3.0, -3.0] * 4
    alike = [reading(error, group=str(place)) for place, error in enumerate(errors)]
    least, pairs = floor_by_look_alikes(alike)
    assert pairs == 28
    # 16 of the 28 pairs differ by 6 degrees, the others by nothing.
    assert least == pytest.approx(MEAN_OVER_SD * np.sqrt(16 / 28 * 36 / 2))


def test_arms_of_one_group_are_no_look_alikes_and_few_say_nothing() -> None:
    one_group = [reading(error, group="A") for error in (3.0, -3.0) * 6]
    least, pairs = floor_by_look_alikes(one_group)
    assert pairs == 0
    assert np.isnan(least)


def test_perfect_readings_err_by_the_scatter_of_the_marking() -> None:
    assert floor_by_scatter([reading(0.0), reading(9.0)]) == pytest.approx(MEAN_OVER_SD * 2.0)
    assert np.isnan(floor_by_scatter([reading(0.0, half_deg=None)]))
