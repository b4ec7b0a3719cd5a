"""What a session says beside its measurements, and the safety questions of a person."""

import datetime as dt

import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.screening_records import ScreeningOccasion, ScreeningOutcome, ScreeningRecord
from measure.domain.session_facts import ClinicianMethod, ClinicianValue
from measure.errors import InputError
from tests.support import record_samples as sample


def _value(movement: Movement = Movement.FLEXION, value_deg: float = 95) -> ClinicianValue:
    return ClinicianValue(
        movement=movement,
        side=Side.LEFT,
        method=ClinicianMethod.PASSIVE,
        value_deg=value_deg,
    )


def test_a_typed_in_value_is_an_angle_a_shoulder_can_have() -> None:
    assert _value(value_deg=95).value_deg == 95.0
    for wrong in (-91, 201, float("nan")):
        with pytest.raises(InputError, match="between -90 and 200 degrees"):
            _value(value_deg=wrong)
    with pytest.raises(InputError, match="reach behind the back"):
        _value(Movement.HAND_BEHIND_BACK)


def test_a_session_holds_one_value_of_a_kind() -> None:
    with pytest.raises(InputError, match="one value"):
        sample.session(sample.person(), clinician_values=(_value(), _value(value_deg=90)))


def test_only_a_sign_without_a_clinicians_word_stops() -> None:
    passed = {outcome for outcome in ScreeningOutcome if outcome.passed}
    assert passed == {ScreeningOutcome.CLEAR, ScreeningOutcome.CLINICIAN_AGREED}


def test_a_screening_needs_whole_identifiers() -> None:
    with pytest.raises(InputError):
        ScreeningRecord(
            id="1",
            person_id=sample.person().id,
            day=dt.date(2026, 4, 1),
            occasion=ScreeningOccasion.BEFORE,
            outcome=ScreeningOutcome.CLEAR,
        )
