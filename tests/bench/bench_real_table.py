"""What the bench of real people says, as Markdown: tables by group, clips, traps, goals."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

import numpy as np

from measure.domain.movements import MOVEMENTS, Movement, View
from measure.kinematics.uncertainty import measured_half_width
from tests.bench.bench_real_figures import (
    RANGES,
    Figure,
    Figures,
    figures,
    first_reasons,
    in_range,
    mean_over_ranges,
)
from tests.bench.bench_real_goals import Goal
from tests.bench.bench_real_intervals import left_out, resting_on_real_people
from tests.bench.bench_real_readings import ELBOW_LINE, WRIST_LINE, ArmReading, ClipReading

_HEADER = (
    "| group | arms | read | bias | mean abs. error | P95 | over 15° | interval holds | ± shown "
    "| plain elbow line: bias, error |\n|---|---|---|---|---|---|---|---|---|---|"
)
_LINES_HEADER = (
    "| group | arms read | program: bias, error | elbow line: bias, error "
    "| wrist line: bias, error |\n|---|---|---|---|---|"
)
_FULL_HEADER = _HEADER.replace("|\n|", "| first reason of refusals |\n|") + "---|"

Groups = Mapping[str, Sequence[ArmReading]]

#: A source with fewer arms says nothing of a habit.
LEAST_OF_SOURCE = 10


def summary_groups(arms: Sequence[ArmReading], in_tree: Sequence[ArmReading]) -> Groups:
    """Return the groups of the short table: by range, and all."""
    abduction = _of(arms, Movement.ABDUCTION)
    flexion = [reading for reading in _of(arms, Movement.FLEXION) if reading.arm.near]
    extension = [reading for reading in _of(arms, Movement.EXTENSION) if reading.arm.near]
    groups = {f"abduction, {name}": _within(abduction, [name]) for name in RANGES}
    below, *above = RANGES
    groups |= {
        f"flexion, near arm, {below}": _within(flexion, [below]),
        "flexion, near arm, from 30°": _within(flexion, above),
        "extension, near arm": extension,
        "all": arms,
    }
    if len(in_tree) < len(arms):
        groups["all that stand in `tests/real_people`"] = in_tree
    return groups


def full_groups(arms: Sequence[ArmReading]) -> Groups:
    """Return the groups of the long table: by movement, view and range."""
    groups: dict[str, list[ArmReading]] = {}
    for reading in arms:
        name = reading.arm.task.movement.value + ", " + reading.arm.seen_from
        if reading.arm.near is not None:
            name += ", near arm" if reading.arm.near else ", far arm"
        groups.setdefault(name, []).append(reading)
    return {
        f"{name}, {part}": _within(groups[name], [part])
        for name in sorted(groups)
        for part in RANGES
        if _within(groups[name], [part])
    }


def _of(arms: Iterable[ArmReading], movement: Movement) -> list[ArmReading]:
    return [reading for reading in arms if reading.arm.task.movement is movement]


def _within(arms: Iterable[ArmReading], ranges: Sequence[str]) -> list[ArmReading]:
    return [reading for reading in arms if any(in_range(reading, RANGES[name]) for name in ranges)]


def short_table(groups: Groups) -> str:
    return "\n".join([_HEADER, *(_row(name, group) for name, group in groups.items() if group)])


def full_table(groups: Groups) -> str:
    rows = [
        f"{_row(name, group)} {reasons_text(first_reasons(group))} |"
        for name, group in groups.items()
    ]
    return "\n".join([_FULL_HEADER, *rows])


def lines_table(groups: Groups) -> str:
    """Return the program beside lines with nothing fitted, over the same accepted arms."""
    rows = []
    for name, group in groups.items():
        cells = [figures(group), figures(group, ELBOW_LINE), figures(group, WRIST_LINE)]
        if cells[0] is not None:
            shown = " | ".join(_both(cell) for cell in cells)
            rows.append(f"| {name} | {cells[0].accepted} | {shown} |")
    return "\n".join([_LINES_HEADER, *rows])


def _row(name: str, group: Sequence[ArmReading]) -> str:
    cell = figures(group)
    if cell is None:
        return f"| {name} | {len(group)} | 0 | | | | | | | |"
    assert cell.held is not None
    return (
        f"| {name} | {cell.offered} | {cell.accepted} | {degrees(cell.bias, '+')} "
        f"| {degrees(cell.mean_error)} | {cell.p95:.1f}° | {100 * cell.gross:.0f} % "
        f"| {percent(cell.held)} | {cell.half:.1f}° | {_both(figures(group, ELBOW_LINE))} |"
    )


def _both(cell: Figures | None) -> str:
    return "" if cell is None else f"{cell.bias.value:+.1f}°, {cell.mean_error.value:.1f}°"


def degrees(figure: Figure, sign: str = "") -> str:
    """Return an angle with its confidence interval, as far as there is one."""
    text = f"{figure.value:{sign}.1f}°"
    if figure.span is None:
        return text
    return f"{text} ({figure.span[0]:{sign}.1f} to {figure.span[1]:{sign}.1f})"


def percent(figure: Figure) -> str:
    text = f"{100 * figure.value:.0f} %"
    if figure.span is None:
        return text
    return f"{text} ({100 * figure.span[0]:.0f} to {100 * figure.span[1]:.0f})"


def reasons_text(counted: Counter[str]) -> str:
    return ", ".join(f"{name} {count}" for name, count in sorted(counted.items()))


def about_arms(arms: Sequence[ArmReading], in_tree: Sequence[ArmReading]) -> str:
    """Return what set it is and what it cannot tell, as sentences."""
    groups = len({reading.arm.group for reading in arms})
    noise = float(np.median([reading.arm.noise_deg for reading in arms]))
    whole = (
        f"{len(arms)} arms on photographs of real people, marked by hand and read from what the "
        f"networks saw in the pictures, in {groups} groups of pictures that may show the same "
        "person. "
    )
    if len(in_tree) == len(arms):
        whole += "This is the part that stands in `tests/real_people`. "
    else:
        whole += (
            f"{len(in_tree)} of them stand in `tests/real_people` and can be read again by "
            "anybody (`make bench-real`); the others may not be passed on. "
        )
    return whole + (
        f"The marking scatters by {noise:.1f}° in the median, and habits of where a shoulder and "
        "a hip lie differ by about 3° either way: below about 3° this material cannot tell. In "
        "brackets: 95 % confidence, whole groups drawn anew."
    )


def held_sentence(arms: Sequence[ArmReading]) -> str:
    """Return on whom the interval holds how often."""
    cell = figures(arms)
    if cell is None or cell.held is None or cell.held_allowing is None:
        return "No arm was read."
    error, bias = mean_over_ranges([reading for reading in arms if reading.accepted])
    return (
        f"On {cell.accepted} arms of real people the 95 % interval held the marked angle in "
        f"{percent(cell.held)}, and in {100 * cell.held_allowing:.0f} % when the scatter of the "
        f"marking is allowed for. With every range counted alike the mean error is {error:.1f}° "
        f"and the bias {bias:.1f}° in size."
    )


def wrong_person(arms: Sequence[ArmReading]) -> str:
    """Return what became of arms where the networks found another person or a broken skeleton."""
    accepted = sum(reading.accepted for reading in arms)
    return (
        f"On {len(arms)} more usable arms the networks found another person than the marked one, "
        f"or a broken skeleton; {accepted} of them {'was' if accepted == 1 else 'were'} read."
    )


def models_table(by_quality: Mapping[str, Sequence[ArmReading]]) -> str:
    """Return the figures of each deciding model, and what its intervals hold of groups left out."""
    lines = [
        "| model | arms read | bias | mean abs. error | interval holds | ± shown "
        "| ± called for at difficulty 1 | in use | holds of groups left out | of those from 30° "
        "| ± there |",
        "|---|---|---|---|---|---|---|---|---|---|---|",
    ]
    for quality, arms in by_quality.items():
        cell, resting = figures(arms), resting_on_real_people(arms)
        if cell is None or cell.held is None or not resting:
            continue
        out = left_out(resting)
        used = measured_half_width(Movement.ABDUCTION, View.FRONT, quality)
        raised = "" if out.held_raised is None else percent(out.held_raised)
        lines.append(
            f"| {quality} | {cell.accepted} of {cell.offered} | {degrees(cell.bias, '+')} "
            f"| {degrees(cell.mean_error)} | {percent(cell.held)} | {cell.half:.1f}° "
            f"| {out.width:.1f}° | {used:.1f}° | {percent(out.held)} | {raised} "
            f"| {out.half:.1f}° |"
        )
    return "\n".join(lines)


def sources_table(arms: Sequence[ArmReading]) -> str:
    """Return how hanging arms differ between those who marked them; few of one source are left out.

    The plain line knows nothing of anybody's habit, so its bias shows the habits.
    """
    hanging = _within(_of(arms, Movement.ABDUCTION), [next(iter(RANGES))])
    lines = [
        "| source | arms read | program: bias, error | plain elbow line: bias, error |",
        "|---|---|---|---|",
    ]
    for source in sorted({reading.arm.source for reading in hanging}):
        group = [reading for reading in hanging if reading.arm.source == source]
        cell = figures(group)
        if cell is not None and cell.accepted >= LEAST_OF_SOURCE:
            line = _both(figures(group, ELBOW_LINE))
            lines.append(f"| {source} | {cell.accepted} | {_both(cell)} | {line} |")
    return "\n".join(lines)


def doubtful_text(arms: Sequence[ArmReading]) -> str:
    """Return what became of arms that are bent, or of people turned between front and side."""
    found = [reading for reading in arms if reading.arm.right_person]
    return "\n".join(
        [
            _doubtful(
                "arms with the elbow marked bent by 40° to 90°",
                [reading for reading in found if reading.arm.bent],
            ),
            _doubtful(
                "straight arms of people turned between front and side",
                [one for one in found if not one.arm.bent and one.arm.seen_from == "oblique"],
            ),
        ]
    )


def _doubtful(what: str, group: Sequence[ArmReading]) -> str:
    cell = figures(group)
    if cell is None:
        return f"- {len(group)} {what}: none read."
    assert cell.held is not None
    return (
        f"- {len(group)} {what}: {cell.accepted} read, bias {cell.bias.value:+.1f}°, mean error "
        f"{cell.mean_error.value:.1f}°, {100 * cell.gross:.0f} % over 15°, interval holds in "
        f"{100 * cell.held.value:.0f} %."
    )


def clips_text(clips: Sequence[ClipReading]) -> str:
    """Return how clips with a clicked angle were read."""
    clicked = [one for one in clips if not one.clip.trap and one.clip.clicked_deg is not None]
    read = [one for one in clicked if one.value is not None]
    text = f"- {len(clicked)} clips with a clicked angle: {len(read)} read"
    if read:
        errors = np.array([one.error_deg for one in read])
        held = sum(_holds(one) for one in read)
        text += (
            f", bias {np.mean(errors):+.1f}°, mean error {np.mean(np.abs(errors)):.1f}°, worst "
            f"{np.max(np.abs(errors)):.1f}°, {held} of {len(read)} intervals hold"
        )
    refused = Counter(one.reasons[0] for one in clicked if one.value is None and one.reasons)
    return text + (f"; refused: {reasons_text(refused)}." if refused else ".") + _coarse(clicked)


def _holds(one: ClipReading) -> bool:
    if one.low is None or one.high is None or one.clip.clicked_deg is None:
        return False
    return one.low <= one.clip.clicked_deg <= one.high


def _coarse(clips: Sequence[ClipReading]) -> str:
    count = sum(one.coarse_only for one in clips)
    if not count:
        return ""
    return f" {count} of them were judged by the coarse pass alone: no fine pass was kept there."


def traps_text(clips: Sequence[ClipReading]) -> str:
    """Return how many clips were read that must not be, and as which movements."""
    lines = []
    for weight, what in (("grave", "where a confident number was given once"), ("plain", "others")):
        traps = [one for one in clips if one.clip.trap == weight]
        caught = [one.clip.observation.movement for one in traps if one.caught]
        as_movements = Counter(MOVEMENTS[movement].name.lower() for movement in caught)
        lines.append(
            f"- {len(traps)} clips that must not be read, {what}: {len(caught)} read"
            + (f" ({reasons_text(as_movements)})." if caught else ".")
            + _coarse(traps)
        )
    return "\n".join(lines)


def goals_table(goals: Sequence[Goal]) -> str:
    lines = ["| real people | goal | seen | |", "|---|---|---|---|"]
    for goal in goals:
        verdict = "reached" if goal.reached else "not reached"
        lines.append(f"| {goal.name} | {_bounds(goal)} | {_amount(goal, goal.seen)} | {verdict} |")
    return "\n".join(lines)


def _bounds(goal: Goal) -> str:
    low, high = goal.bounds
    if not np.isfinite(low):
        return f"at most {_amount(goal, high)}"
    if not np.isfinite(high):
        return f"at least {_amount(goal, low)}"
    return f"{_amount(goal, low)} to {_amount(goal, high)}"


def _amount(goal: Goal, value: float) -> str:
    if not np.isfinite(value):
        return "nothing read"
    return f"{value:.0f}" if not goal.unit else f"{value:.1f}{goal.unit}"
