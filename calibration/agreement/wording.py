"""An agreement study in plain words, for a clinician who has never read one."""

import math

from calibration.agreement.raters import WithinSubjectSd
from calibration.agreement.study import Agreement
from calibration.statistics.bland_altman import Pairing
from calibration.statistics.estimate import Estimate
from calibration.statistics.icc import Reliability
from calibration.statistics.proportional_bias import ProportionalBias
from measure.domain.movements import MOVEMENTS


def degrees_text(value: float) -> str:
    """Return degrees with one decimal, never "-0.0"."""
    return f"{round(value, 1) + 0.0:.1f}" if math.isfinite(value) else "unknown"


def icc_text(value: float) -> str:
    """Return a coefficient with two decimals, never "-0.00"."""
    return f"{round(value, 2) + 0.0:.2f}" if math.isfinite(value) else "unknown"


def agreement_paragraph(found: Agreement) -> str:
    """Return what a study says, in whole sentences, without a verdict on the person."""
    facts = MOVEMENTS[found.movement]
    sentences = [
        f"{facts.name}: {_count(found.limits.pairs, 'pair')} of "
        f"{_count(found.people, 'person', 'people')} "
        f"({_count(found.shoulders, 'shoulder')}).",
        _bias(found.limits.bias),
        _limits(found),
        *_gain(found),
        *_instruments(found.instruments),
        *_repeat(found),
        "The goniometer errs too: this is how far the two agree, not how far either is right.",
    ]
    return " ".join(sentences)


def _count(number: int, one: str, many: str = "") -> str:
    return f"{number} {one if number == 1 else many or one + 's'}"


def _interval(estimate: Estimate) -> str:
    return f"95 % interval {degrees_text(estimate.low)} to {degrees_text(estimate.high)}"


def _bias(bias: Estimate) -> str:
    if bias.holds(0.0):
        return (
            "On average camera and goniometer read alike: no constant difference is shown "
            f"({degrees_text(bias.value)} degrees, {_interval(bias)})."
        )
    way = "more" if bias.value > 0 else "less"
    return (
        f"On average the camera reads {degrees_text(abs(bias.value))} degrees {way} than the "
        f"goniometer ({_interval(bias)})."
    )


def _limits(found: Agreement) -> str:
    lower, upper = found.limits.lower, found.limits.upper
    repeats = ""
    if math.isfinite(found.limits.within_sd):
        whose = "a person" if found.pairing is Pairing.SAME_MOVE else "a shoulder"
        repeats = f" Repeats of {whose} were counted as such, not as new people."
    return (
        "For 95 of 100 single readings the camera is expected between "
        f"{_beside(lower.value)} and {_beside(upper.value)} the goniometer (the first limit "
        f"lies within {degrees_text(lower.low)} to {degrees_text(lower.high)}, the second "
        f"within {degrees_text(upper.low)} to {degrees_text(upper.high)})." + repeats
    )


def _beside(difference: float) -> str:
    return f"{degrees_text(abs(difference))} degrees {'above' if difference > 0 else 'below'}"


def _gain(found: Agreement) -> list[str]:
    gain = found.gain
    if gain is None:
        return []
    slope = gain.slope
    shown = f"(slope {icc_text(slope.value)}, {icc_text(slope.low)} to {icc_text(slope.high)})"
    if slope.holds(0.0):
        return [f"The difference is not shown to change with the angle {shown}."]
    return [
        f"The difference changes with the angle {shown}: a true change of 10 degrees reads as "
        f"about {degrees_text(10 * camera_per_goniometer(gain))} on the camera."
    ]


def camera_per_goniometer(gain: ProportionalBias) -> float:
    """Return by how much the camera moves when the goniometer moves by one degree.

    From difference = slope * mean: c - g = slope (c + g) / 2.
    """
    half = gain.slope.value / 2
    return (1 + half) / (1 - half) if half < 1 else math.inf


def _instruments(found: Reliability | None) -> list[str]:
    if found is None:
        return []
    one, same, mean = found.icc_2_1, found.icc_3_1, found.icc_a_k
    parts = [
        f"{name} {icc_text(each.value)} ({icc_text(each.low)} to {icc_text(each.high)})"
        for name, each in (("ICC(2,1)", one), ("ICC(3,1)", same), ("ICC(A,2)", mean))
    ]
    return [
        f"How well the readings tell shoulders apart: {', '.join(parts)}. Exchanging one "
        f"instrument for the other costs a standard error of "
        f"{degrees_text(found.sem_agreement)} degrees, so a change between a goniometer "
        f"reading and a camera reading must pass {degrees_text(found.mdc90)} degrees (90 %) "
        f"or {degrees_text(found.mdc95)} (95 %) to be more than error."
    ]


def _repeat(found: Agreement) -> list[str]:
    if found.camera_repeat is None:
        return ["The study has no numbered repeats, so it cannot tell how the camera repeats."]
    sentences = [_one_repeat("the camera", found.camera_repeat)]
    if found.goniometer_repeat is not None:
        sentences.append(_one_repeat("the goniometer", found.goniometer_repeat))
    return sentences


def _one_repeat(instrument: str, error: WithinSubjectSd) -> str:
    return (
        f"Repeating the movement with {instrument} alone, readings scatter by "
        f"{degrees_text(error.sd_deg.value)} degrees ({_interval(error.sd_deg)}), the person's "
        f"own variation included: a change must pass {degrees_text(error.mdc90_deg)} degrees "
        f"(90 %) or {degrees_text(error.mdc95_deg)} (95 %)."
    )
