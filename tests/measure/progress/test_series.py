"""Readings sorted into series, and where these break."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from measure.domain.acquisition import CameraSetup, Correction, Setup
from measure.domain.landmarks import Side
from measure.domain.measurements import Reference
from measure.domain.movements import Movement
from measure.domain.records import AssessmentCondition, Assistance, EventKind
from measure.progress.series import INSTRUMENT_CHANGED, Series, all_series, instrument_of
from tests.support.progress_histories import MADE, day, history
from tests.support.record_samples import event, person

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)
SIX = [(number, 90.0 + number) for number in (0, 2, 4, 7, 9, 11)]
OTHER_CAMERA = replace(MADE, setup=Setup(camera=CameraSetup(name="other")))


def only(found: tuple[Series, ...]) -> Series:
    (series,) = found
    return series


def test_a_series_holds_its_days_in_order() -> None:
    series = only(all_series(history({LEFT: [(4, 94), (0, 90), (2, 92)]})))
    assert [series.date(k) for k in range(3)] == [day(0), day(2), day(4)]
    assert series.value.tolist() == [90, 92, 94]
    assert (series.high - series.low).tolist() == [16, 16, 16]
    assert series.breaks == ()


def test_refusals_are_in_no_series() -> None:
    assert all_series(history({LEFT: [(0, None)]})) == ()
    assert len(only(all_series(history({LEFT: [(0, 90), (2, None)]})))) == 1


def test_nothing_measured() -> None:
    assert all_series(history({})) == ()


def test_readings_of_one_day_count_once_by_their_median() -> None:
    found = history({LEFT: [(0, 90.0)]})
    again = [
        replace(
            found.measurements[0],
            id=f"{k:032x}",
            measurement=replace(
                found.measurements[0].measurement, value=value, low=value - 4, high=value + 4
            ),
        )
        for k, value in enumerate((97.0, 140.0))
    ]
    series = only(all_series(replace(found, measurements=(*found.measurements, *again))))
    assert (series.value[0], series.low[0], series.high[0]) == (97, 93, 101)


def test_of_two_readings_that_exclude_one_another_the_interval_reaches_to_both() -> None:
    first = history({LEFT: [(0, 87.0)]})
    second = history({LEFT: [(0, 155.0)]}).measurements[0].measurement
    twin = replace(first.measurements[0], id=f"{1:032x}", measurement=second)
    series = only(all_series(replace(first, measurements=(*first.measurements, twin))))
    assert (series.value[0], series.low[0], series.high[0]) == (121, 87, 155)


def test_series_are_by_movement_then_side() -> None:
    found = all_series(history({(Movement.ABDUCTION, Side.LEFT): SIX, RIGHT: SIX, LEFT: SIX}))
    assert [(each.movement, each.side) for each in found] == [
        LEFT,
        RIGHT,
        (Movement.ABDUCTION, Side.LEFT),
    ]


def test_another_conduct_is_another_series_and_the_usual_one_comes_first() -> None:
    helped = AssessmentCondition(help=Assistance.OTHER_HAND)
    alone = history({LEFT: SIX})
    with_help = history({LEFT: SIX[:2]}, conduct=helped)
    both = replace(alone, measurements=(*alone.measurements, *with_help.measurements))
    found = all_series(both)
    assert [(each.conduct.help, len(each)) for each in found] == [
        (Assistance.NONE, 6),
        (Assistance.OTHER_HAND, 2),
    ]


@pytest.mark.parametrize(
    ("kind", "why", "segments", "setup"),
    [
        (EventKind.INJECTION, "injection", [0, 0, 0, 0, 1, 1], False),
        (EventKind.PROCEDURE, "procedure", [0, 0, 0, 0, 1, 1], False),
        (EventKind.FLARE, "flare", [0, 0, 0, 1, 1, 1], False),
        (EventKind.CAMERA_CHANGED, "camera changed", [0, 0, 0, 1, 1, 1], True),
        (EventKind.MODEL_CHANGED, "model changed", [0, 0, 0, 1, 1, 1], True),
    ],
)
def test_events_break_a_series(kind: EventKind, why: str, segments: list[int], setup: bool) -> None:
    found = event(person(), kind=kind, day=day(7), side=Side.LEFT)
    series = only(all_series(history({LEFT: SIX}, events=[found])))
    assert series.segment.tolist() == segments
    assert [(each.why, each.setup) for each in series.breaks] == [(why, setup)]
    # Heights before and after a change of the set-up are not to be compared.
    assert (series.instrument == series.instrument[-1]).all() != setup


def test_a_mere_note_breaks_nothing() -> None:
    found = event(person(), kind=EventKind.OTHER, day=day(7))
    assert only(all_series(history({LEFT: SIX}, events=[found]))).breaks == ()


def test_what_happens_to_one_shoulder_breaks_not_the_other() -> None:
    values = {LEFT: SIX, RIGHT: SIX}
    hurt = event(person(), kind=EventKind.INJECTION, day=day(7), side=Side.LEFT)
    left, right = all_series(history(values, events=[hurt]))
    assert (len(left.breaks), len(right.breaks)) == (1, 0)
    both = event(person(), kind=EventKind.INJECTION, day=day(7), side=None)
    assert [len(each.breaks) for each in all_series(history(values, events=[both]))] == [1, 1]
    camera = event(person(), kind=EventKind.CAMERA_CHANGED, day=day(7), side=Side.LEFT)
    assert [len(each.breaks) for each in all_series(history(values, events=[camera]))] == [1, 1]


@pytest.mark.parametrize("number", [-3, 0, 30])
def test_events_before_or_after_all_readings_break_nothing(number: int) -> None:
    found = event(person(), kind=EventKind.FLARE, day=day(number))
    assert only(all_series(history({LEFT: SIX}, events=[found]))).breaks == ()


@pytest.mark.parametrize(
    "made",
    [
        replace(MADE, model="full"),
        replace(MADE, model_hashes={"heavy": "0" * 64}),
        replace(MADE, software={"thawline": "0.1.0", "mediapipe": "1.3.0"}),
        replace(MADE, software={"thawline": "0.2.0", "mediapipe": "1.2.3"}),  # names no estimator
        replace(MADE, software={**MADE.software, "estimator": "2"}),
        OTHER_CAMERA,
        replace(
            MADE,
            setup=Setup(
                correction=Correction(bias_deg=1, gain=0, centre_deg=90, pairs=20, study="garden")
            ),
        ),
    ],
    ids=["model", "model file", "pose library", "our version", "estimator", "camera", "correction"],
)
def test_another_way_of_measuring_breaks_a_series(made: object) -> None:
    series = only(all_series(history({LEFT: SIX}, made={7: made})))  # type: ignore[dict-item]
    assert series.segment.tolist() == [0, 0, 0, 1, 1, 1]
    assert [(each.day, each.why) for each in series.breaks] == [(day(7), INSTRUMENT_CHANGED)]
    assert series.latest_instrument().value.tolist() == [97, 99, 101]
    assert series.latest_segment().value.tolist() == [97, 99, 101]


def test_a_repaired_fault_of_ours_breaks_nothing() -> None:
    patched = replace(MADE, software={"thawline": "0.1.7", "mediapipe": "1.2.3"})
    assert only(all_series(history({LEFT: SIX}, made={7: patched}))).breaks == ()


def test_another_version_with_the_same_estimator_breaks_nothing() -> None:
    before, after = (
        replace(MADE, software={**MADE.software, "thawline": version, "estimator": "3"})
        for version in ("0.4.0", "0.5.0")
    )
    assert only(all_series(history({LEFT: SIX}, made={0: before, 7: after}))).breaks == ()


def test_what_an_angle_is_measured_against_belongs_to_the_instrument() -> None:
    found = history({LEFT: SIX}).measurements[0].measurement
    assert instrument_of(found) != instrument_of(replace(found, reference=Reference.PLUMB_LINE))
    assert instrument_of(found) == instrument_of(replace(found, value=50.0))


def test_a_noted_change_of_camera_is_told_once() -> None:
    noted = event(person(), kind=EventKind.CAMERA_CHANGED, day=day(6), side=None)
    series = only(all_series(history({LEFT: SIX}, events=[noted], made={7: OTHER_CAMERA})))
    assert [each.why for each in series.breaks] == ["camera changed"]


def test_going_back_to_an_earlier_camera_is_a_break_as_well() -> None:
    series = only(all_series(history({LEFT: SIX}, made={4: OTHER_CAMERA, 9: MADE})))
    assert series.segment.tolist() == [0, 0, 1, 1, 2, 2]
    assert len(series.latest_instrument()) == 2


def test_both_sides_number_their_instruments_alike() -> None:
    left, right = all_series(history({LEFT: SIX, RIGHT: SIX[2:]}, made={7: OTHER_CAMERA}))
    assert left.instrument[-1] == right.instrument[-1]
    assert left.instrument[2] == right.instrument[0]


def test_arrays_cannot_be_written_and_must_fit() -> None:
    series = only(all_series(history({LEFT: SIX})))
    with pytest.raises(ValueError, match="read-only"):
        series.value[0] = 1.0
    with pytest.raises(ValueError, match="differ in length"):
        replace(series, value=series.value[1:])
    with pytest.raises(ValueError, match="do not increase"):
        replace(series, day=series.day[::-1].copy())


def test_chosen_days_keep_only_the_breaks_between_them() -> None:
    found = event(person(), kind=EventKind.FLARE, day=day(7))
    series = only(all_series(history({LEFT: SIX}, events=[found])))
    assert len(series.where(series.day <= day(9).toordinal()).breaks) == 1
    assert series.where(series.day < day(7).toordinal()).breaks == ()
    assert series.where(np.zeros(6, dtype=bool)).breaks == ()


def test_days_are_local() -> None:
    found = history({LEFT: [(0, 90)]})
    late = replace(
        found.measurements[0].taken,
        utc=dt.datetime(2026, 4, 6, 22, 30, tzinfo=dt.UTC),
        offset_min=120,
    )
    record = replace(found.measurements[0], taken=late)
    series = only(all_series(replace(found, measurements=(record,))))
    assert series.date(0) == day(1)
