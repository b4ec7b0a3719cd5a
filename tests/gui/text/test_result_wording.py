"""The line of results that is copied into a patient file."""

import datetime as dt
from dataclasses import replace

from gui.text.result_wording import line_of_results
from gui.text.wording import reason_sentence
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import AssessmentCondition
from measure.domain.session_facts import ClinicianMethod, ClinicianValue
from tests.support import record_samples as sample

LEFT = sample.measurement(value=80.4, low=74.0, high=86.0)
RIGHT = replace(LEFT, side=Side.RIGHT, value=148.6, low=140.0, high=156.0)
FLEXION_LEFT, FLEXION_RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)


def test_a_line_holds_pain_what_stopped_and_what_was_typed_in() -> None:
    typed = ClinicianValue(
        movement=Movement.FLEXION, side=Side.LEFT, method=ClinicianMethod.PASSIVE, value_deg=95.5
    )
    line = line_of_results(
        "Rosa",
        dt.date(2026, 11, 29),
        AssessmentCondition(),
        {FLEXION_LEFT: LEFT, FLEXION_RIGHT: RIGHT},
        {FLEXION_LEFT: "Pain 4 of 10, stopped by stiffness."},
        (typed,),
    )
    assert (
        "Flexion: left 80\u00b0 (74 to 86), 3 trials counted, by hand: passive 95.5\u00b0, "
        "pain 4 of 10, stopped by stiffness; right 149\u00b0 (140 to 156), 3 trials counted; "
        "left arm: 69\u00b0 less than the other (" in line
    )
    assert " Ranges in brackets are 95 % ranges. " in line
    assert line.endswith(
        "An estimate made with a camera, not a diagnosis and not a medical device."
    )


def test_a_line_gives_the_main_reason_without_advice() -> None:
    refused = replace(sample.REFUSAL, movement=Movement.FLEXION, side=Side.LEFT)
    assert len(refused.reasons) > 1
    line = line_of_results(
        "Rosa", dt.date(2026, 11, 29), AssessmentCondition(), {FLEXION_LEFT: refused}, {}
    )
    advice = reason_sentence(Reason.TRUNK_LEAN).partition(". ")[2]
    assert advice
    assert advice not in line
    said = line.split("Flexion: left not measured: ")[1].split(" An estimate")[0]
    assert said.count(".") == 1
