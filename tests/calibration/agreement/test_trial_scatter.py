"""Scatter of trials within a person's sessions, as it is gathered before measuring."""

import dataclasses

import pytest

from calibration.agreement.trial_scatter import trial_sds_of
from measure.domain.error_sizes import MovementTrialSd
from measure.domain.landmarks import Side
from measure.domain.measurements import Trial
from measure.domain.movements import Movement
from measure.domain.records import History
from measure.storage.store import Store
from tests.support.progress_histories import history


def with_trials(*values: float, sessions: int) -> History:
    """Sessions of these trials each, and one whose trial was refused."""
    made = history({(Movement.FLEXION, Side.LEFT): [(n, values[0]) for n in range(sessions)]})
    trials = tuple(
        Trial(
            value=value, low=value - 5, high=value + 5, start_s=0.0, end_s=4.0,
            hold_start_s=2.0, hold_end_s=3.0,
        )
        for value in values
    )  # fmt: skip
    return dataclasses.replace(
        made,
        measurements=tuple(
            dataclasses.replace(
                record, measurement=dataclasses.replace(record.measurement, trials=trials)
            )
            for record in made.measurements
        ),
    )


def scatter(data_folder: object, made: History) -> tuple[MovementTrialSd, ...]:
    with Store.open() as store:
        store.merge(made)
        return trial_sds_of(store, made.person.id)


def test_trials_are_pooled_with_the_usual_scatter(data_folder: object) -> None:
    # Eight sessions of 96, 100, 104: squares 32 each; (16 * 2.5^2 + 8 * 32) / 32 = 11.125,
    # its root 3.34, in steps of a quarter.
    (only,) = scatter(data_folder, with_trials(96, 100, 104, sessions=8))
    assert only == MovementTrialSd(movement=Movement.FLEXION, sd=3.25)


def test_single_trials_and_nobody_tell_nothing(data_folder: object) -> None:
    assert scatter(data_folder, with_trials(96, sessions=8)) == ()
    with Store.open() as store:
        assert trial_sds_of(store, None) == ()


@pytest.mark.parametrize("sessions", [1, 20])
def test_alike_trials_never_give_no_scatter(data_folder: object, sessions: int) -> None:
    (only,) = scatter(data_folder, with_trials(100, 100, 100, sessions=sessions))
    assert 0.25 <= only.sd < 2.5
