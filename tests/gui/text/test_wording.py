"""Names, values and measurements in the language of the window."""

from dataclasses import replace

import pytest

from gui.text.wording import (
    conduct_sentence,
    measurement_words,
    movement_plainly,
    range_words,
    stopped_by_name,
    trial_words,
    value_words,
)
from measure.domain.landmarks import Side
from measure.domain.measurement_task import MeasurementTask
from measure.domain.measurements import Provenance, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import Reason
from measure.domain.records import AssessmentCondition, Assistance, BodyPosition, LimitingFactor
from measure.trials.aggregation import aggregate_trials

SCORED = Trial(value=142.4, low=137.4, high=147.4, start_s=0, end_s=4, hold_start_s=2, hold_end_s=3)


@pytest.mark.parametrize(
    ("value", "unit", "expected"),
    [
        (142.4, Unit.DEGREES, "142\u00b0"),
        (-3.6, Unit.DEGREES, "-4\u00b0"),
        (0.456, Unit.FRACTION, "27 cm"),
    ],
)
def test_values_are_shown_whole(value: float, unit: Unit, expected: str) -> None:
    assert value_words(value, unit) == expected


def test_ranges_and_trials_in_words() -> None:
    assert range_words(137.4, 147.4, Unit.DEGREES) == "137 to 147"
    assert range_words(0.3, 0.6, Unit.FRACTION) == "18 to 35"
    assert trial_words(SCORED, Unit.DEGREES) == "142\u00b0 (137 to 147)"
    refused = replace(SCORED, value=None, refused_for=(Reason.NO_HOLD,))
    assert trial_words(refused, Unit.DEGREES).startswith("Not counted. The arm was not still")


def test_measurements_in_words() -> None:
    def words_of(movement: Movement, *trials: Trial) -> str:
        return measurement_words(
            aggregate_trials(
                trials,
                MeasurementTask(movement, Side.LEFT, View.SIDE),
                Provenance(model="heavy"),
            )
        )

    assert words_of(Movement.FLEXION, SCORED) == "142\u00b0 (137 to 147)"
    refused = replace(SCORED, value=None, refused_for=(Reason.NO_HOLD,))
    assert words_of(Movement.FLEXION, refused).startswith("No reading. The arm was not still")
    reach = replace(SCORED, value=0.6, low=0.5, high=0.7)
    assert "to" in words_of(Movement.HAND_BEHIND_BACK, reach)
    assert "\u00b0" not in words_of(Movement.HAND_BEHIND_BACK, reach)


def test_conduct_and_reasons_to_stop_in_words() -> None:
    assert conduct_sentence(AssessmentCondition()) == "Standing, without help"
    seated = AssessmentCondition(posture=BodyPosition.SITTING, help=Assistance.STICK)
    assert conduct_sentence(seated) == "Sitting, helped by a stick"
    assert len({stopped_by_name(factor) for factor in LimitingFactor}) == len(LimitingFactor)
    assert len({movement_plainly(movement) for movement in Movement}) == len(Movement)
