"""The accuracy table: refusals and why, bias, errors, and how often the interval holds."""

import math
from collections import Counter
from collections.abc import Callable, Sequence

import numpy as np
from scipy import stats

from measure.domain.movements import MOVEMENTS, Movement, Unit
from tests.bench.accuracy_judge import Judged

HEADER = (
    "| group | clips | read | refused for | bias | mean abs. error | P95 | over 15° "
    "| interval holds | ± shown | plain elbow line: bias, error |\n"
    "|---|---|---|---|---|---|---|---|---|---|---|"
)


def row(name: str, judged: Sequence[Judged]) -> str:
    """Return one row over good clips of one unit; over 15° means over 0.15 in the reach."""
    read = [each for each in judged if each.error is not None]
    start = f"| {name} | {len(judged)} | {len(read)} | {refusals(judged)} "
    if not read:
        return start + "| | | | | | | |"
    degrees = MOVEMENTS[read[0].case.movement].unit is Unit.DEGREES
    errors = np.array([each.error for each in read], dtype=np.float64)
    size = np.abs(errors)

    def say(value: float, plus: str = "") -> str:
        return f"{value:{plus}.1f}°" if degrees else f"{value:{plus}.3f}"

    return start + (
        f"| {say(float(np.mean(errors)), '+')} | {say(float(np.mean(size)))} "
        f"| {say(float(np.percentile(size, 95)))} | {sum(each.far_off for each in read)} "
        f"| {sum(each.held for each in read)} of {len(read)} "
        f"| {say(float(np.mean([each.half or 0.0 for each in read])))} | {_plain(read)} |"
    )


def _plain(read: Sequence[Judged]) -> str:
    errors = [each.plain_error for each in read if each.plain_error is not None]
    if not errors:
        return ""
    return f"{np.mean(errors):+.1f}°, {np.mean(np.abs(errors)):.1f}°"


def refusals(judged: Sequence[Judged]) -> str:
    """Return the first reasons of refusals and how often each came, as text."""
    reasons = [str(each.measurement.reasons[0]) for each in judged if each.refused]
    return ", ".join(f"{name} {count}" for name, count in sorted(Counter(reasons).items()))


def by(judged: Sequence[Judged], group: Callable[[Judged], str]) -> str:
    """Return a table with a row for each group, good clips only."""
    good = [each for each in judged if each.case.readable]
    names = sorted({group(each) for each in good})
    rows = [row(name, [each for each in good if group(each) == name]) for name in names]
    return "\n".join([HEADER, *rows])


def movement_view(one: Judged) -> str:
    movement = MOVEMENTS[one.case.movement].name.lower()
    bent = " (elbow bent 10-25°)" if is_bent(one) else ""
    return f"{movement}, {one.case.view}{bent}"


def is_bent(one: Judged) -> bool:
    """Return whether a movement that wants a straight elbow was made with a bent one."""
    if one.case.movement in (Movement.EXTERNAL_ROTATION, Movement.HAND_BEHIND_BACK):
        return False
    return bool(one.case.facts["holds"][0]["elbow_flexion_deg"] >= 10.0)


def angle_range(one: Judged) -> str:
    truth = one.truth or 0.0
    name = MOVEMENTS[one.case.movement].name.lower()
    if MOVEMENTS[one.case.movement].unit is Unit.FRACTION:
        return f"{name} {'below' if truth < 0.3 else 'above'} 0.3"
    step = 60 if one.case.movement in (Movement.FLEXION, Movement.ABDUCTION) else 30
    low = int(truth // step) * step
    return f"{name} {low:3d}-{low + step}°"


def yaw(one: Judged) -> str:
    off = abs(one.case.facts["camera"]["yaw_deg"])
    name = MOVEMENTS[one.case.movement].name.lower()
    return f"{name}, camera {'within 7.5' if off <= 7.5 else 'beyond 7.5'}° of square"


def familiarity(one: Judged) -> str:
    name = MOVEMENTS[one.case.movement].name.lower()
    return f"{name}, {'unfamiliar' if one.case.facts['unfamiliar'] else 'familiar'} kind of clip"


def movement(one: Judged) -> str:
    return MOVEMENTS[one.case.movement].name.lower()


def posture(one: Judged) -> str:
    return f"{one.case.facts['kind'].replace('-', ' ')}, {movement(one)}"


def summary(judged: Sequence[Judged]) -> str:
    """Return the figures over all movements, as sentences."""
    good = [each for each in judged if each.case.readable]
    read = [each for each in good if each.error is not None]
    lines = [
        f"- {len(good)} good clips: {len(read)} read, {sum(each.held for each in read)} of them "
        f"within the shown interval, {sum(each.far_off for each in read)} wrong by more than 15°."
    ]
    hopeless = [each for each in judged if not each.case.readable]
    if hopeless:
        refused = [each for each in hopeless if each.refused]
        right = sum(
            bool(set(map(str, each.measurement.reasons)) & set(each.case.expected))
            for each in refused
        )
        lines.append(
            f"- {len(hopeless)} clips that must be refused: {len(refused)} refused, {right} of "
            "them with an expected reason."
        )
    return "\n".join(lines)


def repeatability(judged: Sequence[Judged]) -> str:
    """Return how far readings of the same person on several days differ beyond what changed.

    Each person's readings minus truth scatter about the person's own mean; the scatter is pooled
    over people. The change that one reading against another must exceed to be no chance (95 %)
    is 1.96 √2 times its standard deviation. Nothing without readings.
    """
    if not judged:
        return ""
    lines = [
        "### Repeatability",
        "",
        "The same people on three days: other clothes and light, the camera put up again nearly as "
        "before. Scatter of reading minus truth about each person's own mean.",
        "",
        "| movement, view | people | readings | standard deviation (95 % limits) "
        "| smallest change that is no chance |",
        "|---|---|---|---|---|",
    ]
    for name in sorted({movement_view(each) for each in judged}):
        group = [each for each in judged if movement_view(each) == name and each.error is not None]
        errors: dict[int, list[float]] = {}
        for each in group:
            errors.setdefault(each.case.facts["body"], []).append(each.error or 0.0)
        apart = [np.array(values) - np.mean(values) for values in errors.values()]
        freedom = sum(len(values) - 1 for values in apart)
        if freedom < 1:
            continue
        variance = float(sum(np.sum(values**2) for values in apart) / freedom)
        low, high = (
            math.sqrt(variance * freedom / float(stats.chi2.ppf(share, freedom)))
            for share in (0.975, 0.025)
        )
        deviation = math.sqrt(variance)
        degrees = MOVEMENTS[group[0].case.movement].unit is Unit.DEGREES
        form, sign = (".1f", "°") if degrees else (".3f", "")
        lines.append(
            f"| {name} | {len(errors)} | {len(group)} "
            f"| {deviation:{form}}{sign} ({low:{form}} to {high:{form}}{sign}) "
            f"| {1.96 * math.sqrt(2) * deviation:{form}}{sign} |"
        )
    return "\n".join(lines)
