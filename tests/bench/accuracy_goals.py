"""What the readings of virtual people ought to reach, and what they reach.

The goals are the project's own.
"""

from collections.abc import Sequence

import numpy as np

from measure.domain.movements import Movement
from tests.bench.accuracy_judge import Judged
from tests.bench.accuracy_table import is_bent

#: Mean error that a movement read off a straight arm may have, in its unit.
_MOST = {
    Movement.ABDUCTION: 2.0,
    Movement.FLEXION: 2.5,
    Movement.EXTENSION: 2.0,
    Movement.EXTERNAL_ROTATION: 4.0,
    Movement.HAND_BEHIND_BACK: 0.03,
}
#: Mean error that flexion with a bent elbow may have, degrees.
_MOST_BENT = 5.0
#: Share of very stiff shoulders that are to be read with the truth in the shown interval.
_LEAST_STIFF = 17 / 19


def goals_table(final: Sequence[Judged], stiff: Sequence[Judged], posture: Sequence[Judged]) -> str:
    """Return goals, figures and verdicts, as Markdown.

    Parameters
    ----------
    final, stiff, posture
        The sets of these names, as read.
    """
    good = [one for one in final if one.case.readable]
    rows = []
    for movement, most in _MOST.items():
        group = [one for one in good if one.case.movement is movement and not is_bent(one)]
        rows.append(_row(f"mean error, {movement.value}", group, most))
    bent = [
        one
        for one in (*good, *posture)
        if one.case.movement is Movement.FLEXION and one.case.readable and is_bent(one)
    ]
    rows.append(_row("mean error, flexion with the elbow bent 10-25°", bent, _MOST_BENT))
    held = sum(one.held for one in stiff)
    verdict = _verdict(bool(stiff) and held >= _LEAST_STIFF * len(stiff))
    rows.append(
        f"| very stiff shoulders read, truth in the interval | at least {100 * _LEAST_STIFF:.0f} % "
        f"| {held} of {len(stiff)} | {verdict} |"
    )
    return "\n".join(["| virtual people | goal | seen | |", "|---|---|---|---|", *rows])


def _row(name: str, group: Sequence[Judged], most: float) -> str:
    form = ".3f" if most < 1 else ".1f"
    sign = "" if most < 1 else "°"
    goal = f"at most {most:{form}}{sign}"
    errors = [abs(one.error) for one in group if one.error is not None]
    if not errors:
        return f"| {name} | {goal} | none read | {_verdict(reached=False)} |"
    mean = float(np.mean(errors))
    seen = f"{mean:{form}}{sign} ({len(errors)} of {len(group)} read)"
    return f"| {name} | {goal} | {seen} | {_verdict(mean <= most)} |"


def _verdict(reached: bool) -> str:
    return "reached" if reached else "not reached"
