"""Wording of an agreement study in plain sentences."""

import math

from calibration.agreement.raters import WithinSubjectSd
from calibration.agreement.study import Agreement
from calibration.statistics.bland_altman import Pairing
from calibration.statistics.deming import FEWEST_DEGREES, DemingLine
from calibration.statistics.estimate import Estimate
from calibration.statistics.icc import Reliability
from measure.domain.movements import MOVEMENTS


def degrees_text(value: float) -> str:
    """Return degrees with one decimal, never "-0.0"."""
    return f"{round(value, 1) + 0.0:.1f}" if math.isfinite(value) else "unknown"


def icc_text(value: float) -> str:
    """Return a coefficient with two decimals, never "-0.00"."""
    return f"{round(value, 2) + 0.0:.2f}" if math.isfinite(value) else "unknown"


def agreement_paragraph(agreement: Agreement) -> str:
    """Return a study's figures in whole sentences, without a verdict on the person."""
    facts = MOVEMENTS[agreement.movement]
    sentences = [
        f"{facts.name}: {_count(agreement.limits.pairs, 'pair')} of "
        f"{_count(agreement.people, 'person', 'people')} "
        f"({_count(agreement.shoulders, 'shoulder')}).",
        _bias(agreement.limits.bias),
        _limits(agreement),
        *_gain(agreement),
        *_instruments(agreement.instruments),
        *_repeat(agreement),
        "The goniometer has errors too: this shows how well the two agree, not how accurate either "
        "is.",
    ]
    return " ".join(sentences)


def _count(number: int, singular: str, plural: str = "") -> str:
    return f"{number} {singular if number == 1 else plural or singular + 's'}"


def _interval(estimate: Estimate) -> str:
    return f"95 % interval {degrees_text(estimate.low)} to {degrees_text(estimate.high)}"


def _bias(bias: Estimate) -> str:
    if bias.holds(0.0):
        return (
            "On average camera and goniometer read the same: no constant difference is shown "
            f"({degrees_text(bias.value)} degrees, {_interval(bias)})."
        )
    way = "more" if bias.value > 0 else "less"
    return (
        f"On average the camera reads {degrees_text(abs(bias.value))} degrees {way} than the "
        f"goniometer ({_interval(bias)})."
    )


def _limits(agreement: Agreement) -> str:
    lower, upper = agreement.limits.lower, agreement.limits.upper
    repeats = ""
    if math.isfinite(agreement.limits.within_sd):
        whose = "a person" if agreement.pairing is Pairing.SAME_MOVE else "a shoulder"
        repeats = f" Repeats of {whose} were counted as such, not as new people."
    return (
        "For 95 of 100 single readings the camera is expected between "
        f"{_beside(lower.value)} and {_beside(upper.value)} the goniometer (the first limit "
        f"lies within {degrees_text(lower.low)} to {degrees_text(lower.high)}, the second "
        f"within {degrees_text(upper.low)} to {degrees_text(upper.high)})." + repeats
    )


def _beside(difference: float) -> str:
    return f"{degrees_text(abs(difference))} degrees {'above' if difference > 0 else 'below'}"


def _gain(agreement: Agreement) -> list[str]:
    """Return what is shown of a gain error: by Deming's line where the errors' ratio is known."""
    gain, line = agreement.gain, agreement.deming
    if gain is None:
        return []
    if line is not None:
        return [_deming(line)]
    slope = gain.slope
    shown = f"(slope {_with_range(slope)})"
    if slope.holds(0.0):
        return [f"The difference is not shown to change with the angle {shown}."]
    return [
        f"The difference changes with the angle {shown}. If that is a gain error, a true change of "
        f"10 degrees reads as about {degrees_text(10 * gain.camera_per_goniometer)} on the camera; "
        "but it could also come from unequal errors of the two instruments. At least "
        f"{FEWEST_DEGREES} numbered repeats beyond the first, by the same tester, would show which."
    ]


def _deming(line: DemingLine) -> str:
    shown = f"(slope {_with_range(line.slope)} by Deming regression, with the errors of both)"
    if line.slope.holds(1.0):
        return f"No gain error is shown {shown}."
    low, high = (degrees_text(10 * end) for end in (line.slope.low, line.slope.high))
    return (
        f"The camera has a gain error {shown}: a true change of 10 degrees reads as about "
        f"{degrees_text(10 * line.slope.value)} ({low} to {high}) on the camera."
    )


def _with_range(estimate: Estimate) -> str:
    return f"{icc_text(estimate.value)}, {icc_text(estimate.low)} to {icc_text(estimate.high)}"


def _instruments(reliability: Reliability | None) -> list[str]:
    if reliability is None:
        return []
    single, consistency, mean = reliability.icc_2_1, reliability.icc_3_1, reliability.icc_a_k
    parts = [
        f"{name} {icc_text(icc.value)} ({icc_text(icc.low)} to {icc_text(icc.high)})"
        for name, icc in (("ICC(2,1)", single), ("ICC(3,1)", consistency), ("ICC(A,2)", mean))
    ]
    return [
        f"How well the readings distinguish shoulders: {', '.join(parts)}. Exchanging one "
        f"instrument for the other costs a standard error of "
        f"{degrees_text(reliability.sem_agreement)} degrees, so a change between a goniometer "
        f"reading and a camera reading must pass {degrees_text(reliability.mdc90)} degrees (90 %) "
        f"or {degrees_text(reliability.mdc95)} (95 %) to be more than error."
    ]


def _repeat(agreement: Agreement) -> list[str]:
    if agreement.camera_repeat is None and agreement.repeats_by_others:
        return [
            "The numbered repeats of a shoulder are by different testers, not by one, so the study "
            "cannot show how well the camera repeats."
        ]
    if agreement.camera_repeat is None:
        return ["The study has no numbered repeats, so it cannot show how well the camera repeats."]
    sentences = [_one_repeat("the camera", agreement.camera_repeat)]
    if agreement.goniometer_repeat is not None:
        sentences.append(_one_repeat("the goniometer", agreement.goniometer_repeat))
    return sentences


def _one_repeat(instrument: str, error: WithinSubjectSd) -> str:
    return (
        f"Repeating the movement with {instrument} alone, readings scatter by "
        f"{degrees_text(error.sd_deg.value)} degrees ({_interval(error.sd_deg)}), the person's "
        f"own variation included: a change must pass {degrees_text(error.mdc90_deg)} degrees "
        f"(90 %) or {degrees_text(error.mdc95_deg)} (95 %)."
    )
