"""The command `thawline progress`: change, trend and verdict of each movement and side."""

import argparse
import json
from typing import Any

from measure.cli.main import NOTICE
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.movements import MOVEMENTS
from measure.domain.records import Person
from measure.progress.comparison import Block
from measure.progress.overview import Progress, progress_of
from measure.progress.shoulder import SideProgress
from measure.progress.wording import (
    VERDICT_WORDS,
    block_words,
    change_words,
    conduct_words,
    slope_words,
)
from measure.report.wording import phase_words

_HEADER = ("movement", "side", "first days", "last days", "change", "trend a month", "verdict")
#: A change that is clear may stand beside a trend that is not.
_HOW_TO_READ = """
The change reaches over the whole time; the trend and its verdict cover the last 16 weeks at
most, and begin anew where the way of measuring changed or something happened to the shoulder.
With a look every week, a trend has to be clearer than its 95 % interval alone would ask for."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Print a person's progress: first and last readings, change, trend and verdict.

    Each number stands with its 95 % interval. A trend is called after four weeks and eight
    days with readings at the earliest; the verdicts are too early to say, no clear change,
    likely gaining, gaining, likely losing, losing, and stalled. gui/help/progress.md tells how
    often they are wrong.

    exit codes:
      0  done, also where nothing can be said yet
      2  nobody of that name

    examples:
      thawline progress Rosa
      thawline progress Rosa --json
    """
    parser.add_argument("person", metavar="PERSON", help="the pseudonym")
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        history = store.history(person.id)
        today = store.now().day
    progress = progress_of(history, today)
    if arguments.json:
        print(json.dumps(_as_data(person, progress), ensure_ascii=False, indent=2))
    else:
        _print(person, progress)
    return 0


def _print(person: Person, progress: Progress) -> None:
    demo = " (demo: a made-up person)" if person.demo else ""
    print(f"{person.pseudonym}{demo}\n")
    if not progress.sides:
        print("No reading has been kept yet. A trend can be told after about four weeks.")
        return
    print(table([_row(shoulder) for shoulder in progress.sides], list(_HEADER)))
    print("* affected side")
    print(_HOW_TO_READ)
    for words in phase_words(shoulder for shoulder in progress.usual if shoulder.affected):
        print(f"\n{words}")
    for shoulder in progress.sides:
        if shoulder.drifted_by is None:
            continue
        print(
            f"\n{MOVEMENTS[shoulder.movement].name}: both shoulders moved together, so the set-up "
            "may have changed and no trend is told. Note a change of the camera as an event."
        )
    for prompt in progress.prompts:
        print(f"\n{prompt.text}")
    print(f"\n{NOTICE}")


def _row(shoulder: SideProgress) -> list[str]:
    movement = shoulder.movement
    name = MOVEMENTS[movement].name
    if not shoulder.usual:
        name += f" ({conduct_words(shoulder.conduct)})"
    slope = shoulder.weekly_checks[-1].slope if shoulder.weekly_checks else None
    return [
        name,
        shoulder.side.value + (" *" if shoulder.affected else ""),
        block_words(shoulder.baseline, movement) if shoulder.change else "",
        block_words(shoulder.recent, movement),
        change_words(shoulder.change, movement) if shoulder.change else "",
        slope_words(slope, movement) if slope else "",
        VERDICT_WORDS[shoulder.verdict],
    ]


def _as_data(person: Person, progress: Progress) -> dict[str, Any]:
    """Return the progress in words and numbers for JSON; None for what is not known."""
    return {
        "person": person.pseudonym,
        "demo": person.demo,
        "day": progress.today.isoformat(),
        "notice": NOTICE,
        "movements": [_side_as_data(shoulder) for shoulder in progress.sides],
        "prompts": [
            {
                "kind": prompt.kind.value,
                "movement": prompt.movement.value if prompt.movement else None,
                "side": prompt.side.value if prompt.side else None,
                "text": prompt.text,
            }
            for prompt in progress.prompts
        ],
    }


def _side_as_data(shoulder: SideProgress) -> dict[str, Any]:
    check = shoulder.weekly_checks[-1] if shoulder.weekly_checks else None
    slope = check.slope if check else None
    change = shoulder.change
    return {
        "movement": shoulder.movement.value,
        "side": shoulder.side.value,
        "affected": shoulder.affected,
        "help": shoulder.conduct.help.value,
        "posture": shoulder.conduct.posture.value,
        "unit": MOVEMENTS[shoulder.movement].unit.value,
        "verdict": shoulder.verdict.value,
        "days": len(shoulder.series),
        "baseline": _block_as_data(shoulder.baseline),
        "recent": _block_as_data(shoulder.recent),
        "change": {"value": change.value, "low": change.low, "high": change.high}
        if change
        else None,
        "look": check.day.isoformat() if check else None,
        "slope_per_month": slope.per_month if slope else None,
        "slope_interval": list(slope.interval_per_month()) if slope else None,
        "spread": shoulder.spread,
        "spread_is_own": shoulder.own_spread,
        "other_side": _block_as_data(shoulder.other) if shoulder.other else None,
        "short_by": shoulder.short_by,
        "set_up_drifted_by": shoulder.drifted_by,
        "breaks": [
            {"day": point.day.isoformat(), "why": point.why} for point in shoulder.series.breaks
        ],
        "earlier": [
            {
                "first": phase.first.isoformat(),
                "last": phase.last.isoformat(),
                "ended_by": phase.ended_by,
                "verdict": phase.verdict.value,
                "slope_per_month": phase.slope.per_month if phase.slope else None,
                "slope_interval": list(phase.slope.interval_per_month()) if phase.slope else None,
            }
            for phase in shoulder.earlier
        ],
        "milestones": [
            {
                "range": milestone.task.range_words,
                "task": milestone.task.words,
                "reached": milestone.reached,
            }
            for milestone in shoulder.milestones
        ],
    }


def _block_as_data(block: Block) -> dict[str, Any]:
    return {
        "value": block.value,
        "low": block.low,
        "high": block.high,
        "days": block.days,
        "first": block.first.isoformat(),
        "last": block.last.isoformat(),
    }
