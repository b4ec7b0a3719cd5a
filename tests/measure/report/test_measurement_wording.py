"""Measurements in a line of plain text."""

from dataclasses import replace

from measure.domain.landmarks import Side
from measure.domain.measurements import BASIS, IntervalBasis, Measurement, Provenance, Status, Trial
from measure.domain.movements import Movement, Unit, View
from measure.domain.reasons import SENTENCES, Reason
from measure.domain.vertebral_levels import level_of
from measure.report.measurement_wording import (
    basis_sentences,
    interval_text,
    reason_codes,
    reason_legend,
    refusal_sentences,
    value_text,
)

READING = Measurement(
    movement=Movement.FLEXION,
    side=Side.LEFT,
    view=View.SIDE,
    status=Status.READING,
    unit=Unit.DEGREES,
    value=101.234,
    low=96.0,
    high=106.5,
    trials=(),
    reasons=(Reason.SHRUG,),
    provenance=Provenance(model="heavy", model_hashes={"heavy": "ab"}),
)
REFUSED = replace(
    READING, status=Status.REFUSED, value=None, low=None, high=None, reasons=(Reason.NOBODY,)
)


def test_words_for_people_have_no_false_digits() -> None:
    assert value_text(READING) == "101°"
    assert interval_text(READING) == "96 to 106°"
    assert value_text(REFUSED) == "refused"
    assert interval_text(REFUSED) == ""
    assert refusal_sentences(REFUSED) == SENTENCES[Reason.NOBODY]
    assert refusal_sentences(READING) == ""


def test_a_reach_names_its_levels() -> None:
    level = level_of(0.36, 0.45678, 0.56)
    reach = replace(
        READING,
        movement=Movement.HAND_BEHIND_BACK,
        unit=Unit.FRACTION,
        value=0.45678,
        low=0.36,
        high=0.56,
        level=level,
    )
    assert value_text(reach) == "0.46"
    assert reason_codes(reach).startswith(f"{level.low} to {level.high}")


def test_every_reason_of_a_refusal_is_said_and_its_notes_are_not() -> None:
    trial = Trial(
        value=None,
        low=None,
        high=None,
        start_s=0.0,
        end_s=4.0,
        hold_start_s=None,
        hold_end_s=None,
        flags=(Reason.NO_HOLD, Reason.ELBOW_BENT, Reason.SHRUG),
        refused_for=(Reason.NO_HOLD, Reason.ELBOW_BENT),
    )
    refused = replace(REFUSED, trials=(trial,), reasons=trial.flags)
    assert refused.refused_for == (Reason.NO_HOLD, Reason.ELBOW_BENT)
    assert refused.notes == (Reason.SHRUG,)
    both = f"{SENTENCES[Reason.NO_HOLD]} {SENTENCES[Reason.ELBOW_BENT]}"
    assert refusal_sentences(refused) == both


def test_every_remark_has_one_line_in_the_legend() -> None:
    assert reason_legend([READING, REFUSED, READING]) == [
        f"shrug: {SENTENCES[Reason.SHRUG]}",
        f"nobody: {SENTENCES[Reason.NOBODY]}",
    ]


def test_what_intervals_rest_on_is_said_once_with_its_movements() -> None:
    def resting(movement: Movement, basis: IntervalBasis) -> Measurement:
        made = Provenance(model="heavy", source={BASIS: str(basis)})
        return replace(READING, movement=movement, provenance=made)

    said = basis_sentences(
        [
            resting(Movement.EXTENSION, IntervalBasis.VIRTUAL_PEOPLE),
            resting(Movement.ABDUCTION, IntervalBasis.REAL_PEOPLE),
            resting(Movement.FLEXION, IntervalBasis.REAL_PEOPLE),
            resting(Movement.FLEXION, IntervalBasis.REAL_PEOPLE),
            REFUSED,
        ]
    )
    assert said == [
        "Flexion, Abduction: The 95 % interval is based on pictures of real people, marked "
        "by hand.",
        "Extension: The 95 % interval is based on virtual people, with an allowance for real ones.",
    ]
    assert basis_sentences([READING, REFUSED]) == []
