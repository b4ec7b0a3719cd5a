"""Changes of the set-up: their likely effect, and what they do to an interval."""

import dataclasses
import math

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind
from measure.domain.setup_changes import Standing, change_between, lasting_change
from measure.progress.overview import lasting_setup_changes, progress_of
from measure.progress.sentences import setup_sentence
from measure.progress.series import all_series
from tests.support import record_samples as sample
from tests.support.progress_histories import MADE, day, history

FIRST = Standing(size=0.4, width=0.0, lean_deg=0.0)


def test_small_changes_have_no_effect() -> None:
    now = Standing(size=0.43, width=0.05, lean_deg=4.0)
    assert change_between(Movement.FLEXION, FIRST, now).effect == 0


def test_effects_worked_by_hand() -> None:
    nearer = change_between(Movement.FLEXION, FIRST, dataclasses.replace(FIRST, size=0.5))
    assert nearer.nearer == pytest.approx(0.25)
    assert nearer.effect == pytest.approx(2.5)
    # Shoulders as wide as 0.68 * sin 20 degrees: turned by 20 degrees from the side.
    width = 0.68 * math.sin(math.radians(20))
    turned = change_between(Movement.FLEXION, FIRST, dataclasses.replace(FIRST, width=width))
    assert turned.turned_deg == pytest.approx(20)
    assert turned.effect == pytest.approx(5)
    leaning = change_between(Movement.FLEXION, FIRST, dataclasses.replace(FIRST, lean_deg=-10.0))
    assert leaning.effect == pytest.approx(2)
    both = change_between(Movement.FLEXION, FIRST, Standing(size=0.5, width=width, lean_deg=0.0))
    assert both.effect == pytest.approx(math.hypot(2.5, 5))
    reach = change_between(Movement.HAND_BEHIND_BACK, FIRST, dataclasses.replace(FIRST, size=0.5))
    assert reach.effect == pytest.approx(2.5 / 80)


def test_a_creeping_change_is_found_though_no_step_is() -> None:
    sizes = [0.4 * 1.02**n for n in range(12)]
    poses = [dataclasses.replace(FIRST, size=size) for size in sizes]
    change = lasting_change(Movement.FLEXION, poses)
    assert change is not None
    # The middle of the last three over that of the first three: nine steps.
    assert change.nearer == pytest.approx(1.02**9 - 1)
    assert lasting_change(Movement.FLEXION, poses[:6]) is None


@pytest.mark.parametrize(("trunk", "wider"), [(200, False), (210, False), (260, True)])
def test_a_step_widens_the_interval_of_its_session_only(trunk: int, wider: bool) -> None:
    def stood(trunk_px: int) -> dict[str, str]:
        return {
            "standing": f"trunk_px={trunk_px} shoulders=0.05 lean_deg=0.0 frames=20 size=640x480"
        }

    made = {
        n: dataclasses.replace(MADE, source=stood(trunk if n == 8 else 200))
        for n in range(0, 12, 2)
    }
    values = {(Movement.FLEXION, Side.LEFT): [(n, 100.0) for n in made]}
    (series,) = all_series(history(values, made=made, half_width=8.0))
    assert list(series.value) == [100.0] * 6
    expected = [8.0] * 6
    expected[4] = math.hypot(8.0, 3.0) if wider else 8.0
    assert list(series.high - series.value) == pytest.approx(expected)
    assert list(series.value - series.low) == pytest.approx(expected)
    assert series.breaks == ()


def test_what_lasts_is_told_until_it_is_noted_as_an_event() -> None:
    def stood(trunk_px: int) -> dict[str, str]:
        return {
            "standing": f"trunk_px={trunk_px} shoulders=0.05 lean_deg=0.0 frames=20 size=640x480"
        }

    made = {n: dataclasses.replace(MADE, source=stood(200 if n < 8 else 260)) for n in range(16)}
    values = {(Movement.FLEXION, Side.LEFT): [(n, 100.0) for n in made]}
    (side,) = progress_of(history(values, made=made), day(16)).sides
    assert setup_sentence(side) == (
        "The person now stands 30 % nearer compared with the first readings, which may change a "
        "reading by about 3°. Go back to the old place, or add “camera changed” as an event."
    )
    noted = sample.event(sample.person(), kind=EventKind.CAMERA_CHANGED, day=day(8), side=None)
    assert lasting_setup_changes(history(values, made=made, events=[noted])) == {}
    assert lasting_setup_changes(history(values)) == {}


def test_turn_and_lean_are_told_beside_the_distance() -> None:
    pose = Standing(size=0.3, width=0.68 * math.sin(math.radians(20)), lean_deg=8.0)
    change = change_between(Movement.HAND_BEHIND_BACK, FIRST, pose)
    values = {(Movement.HAND_BEHIND_BACK, Side.LEFT): [(n, 0.4) for n in range(4)]}
    (side,) = progress_of(history(values), day(4)).sides
    told = setup_sentence(dataclasses.replace(side, setup_change=change))
    assert "25 % farther away, turned by 20°, leaning by 8°" in told
    assert "by about 4 cm." in told
