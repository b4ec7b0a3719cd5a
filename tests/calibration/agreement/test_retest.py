"""The repeatability kit on kept sessions, and its command."""

import dataclasses

import pytest

from calibration.agreement.retest import repeatability_by_shoulder, repeatability_report
from calibration.statistics.repeatability import ENOUGH_SESSIONS
from measure.cli.main import main
from measure.domain.acquisition import CameraSetup, Setup
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.domain.records import AssessmentCondition, Assistance, Person
from measure.storage.store import Store
from tests.support.progress_histories import MADE, history
from tests.support.record_samples import person

LEFT = (Movement.FLEXION, Side.LEFT)
#: Three degrees up and down about 120, every second day.
STEADY = [(2 * n, 120.0 + (3.0 if n % 2 else -3.0)) for n in range(ENOUGH_SESSIONS)]


def test_from_eight_sessions_on_the_own_scatter_is_used() -> None:
    results = repeatability_by_shoulder(history({LEFT: STEADY}))[LEFT]
    assert results.sessions == ENOUGH_SESSIONS
    assert results.own
    assert results.typical_error is not None
    assert results.error_for_change == pytest.approx(results.typical_error.value)
    assert 3.0 < results.error_for_change < 3.6
    fewer = repeatability_by_shoulder(history({LEFT: STEADY[:-1]}))[LEFT]
    assert not fewer.own
    assert fewer.error_for_change == MOVEMENTS[Movement.FLEXION].usual_spread


def test_refusals_and_the_other_shoulder_do_not_count() -> None:
    right = (Movement.FLEXION, Side.RIGHT)
    results = repeatability_by_shoulder(history({LEFT: [*STEADY, (20, None)], right: [(0, 150.0)]}))
    assert results[LEFT].sessions == ENOUGH_SESSIONS
    assert results[right].sessions == 1
    assert results[right].typical_error is None


def test_only_sessions_done_and_measured_like_the_latest_count() -> None:
    elsewhere = dataclasses.replace(MADE, setup=Setup(camera=CameraSetup(name="desk camera")))
    moved = history({LEFT: STEADY}, made={0: MADE, 8: elsewhere})
    assert repeatability_by_shoulder(moved)[LEFT].sessions == 4
    helped = history({LEFT: [(30, 140.0)]}, conduct=AssessmentCondition(help=Assistance.PULLEY))
    both = dataclasses.replace(
        helped,
        sessions=(*moved.sessions, *helped.sessions),
        measurements=(*moved.measurements, *helped.measurements),
    )
    assert repeatability_by_shoulder(both)[LEFT].sessions == 1


def test_in_words() -> None:
    words = repeatability_report(history({LEFT: STEADY}))
    assert words.startswith("Left shoulder. Flexion: 8 sessions of one shoulder.")
    assert "Two single sessions must differ by" in words
    assert "no readings yet" in repeatability_report(history({}))


def test_the_command(data_folder: object, capsys: pytest.CaptureFixture[str]) -> None:
    who: Person = dataclasses.replace(person(), pseudonym="Bramble")
    with Store.open() as store:
        store.save_person(who)
    assert main(["repeatability", "Bramble"]) == 0
    assert "no readings yet" in capsys.readouterr().out
    assert main(["repeatability", "Nobody"]) == 2
    assert "Nobody" in capsys.readouterr().err
