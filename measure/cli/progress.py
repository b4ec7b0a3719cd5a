"""`thawline progress`: what can be said about a person's weeks and months."""

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
from measure.report.wording import chapter_words

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
    print(table([_row(each) for each in progress.sides], list(_HEADER)))
    print("* affected side")
    print(_HOW_TO_READ)
    for words in chapter_words(each for each in progress.usual if each.affected):
        print(f"\n{words}")
    for each in progress.sides:
        if each.drifted_by is None:
            continue
        print(
            f"\n{MOVEMENTS[each.movement].name}: both shoulders moved together, so the set-up may "
            "have changed and no trend is told. Note a change of the camera as an event."
        )
    for prompt in progress.prompts:
        print(f"\n{prompt.text}")
    print(f"\n{NOTICE}")


def _row(each: SideProgress) -> list[str]:
    movement = each.movement
    name = MOVEMENTS[movement].name
    if not each.usual:
        name += f" ({conduct_words(each.conduct)})"
    slope = each.weekly_checks[-1].slope if each.weekly_checks else None
    return [
        name,
        each.side.value + (" *" if each.affected else ""),
        block_words(each.baseline, movement) if each.change else "",
        block_words(each.recent, movement),
        change_words(each.change, movement) if each.change else "",
        slope_words(slope, movement) if slope else "",
        VERDICT_WORDS[each.verdict],
    ]


def _as_data(person: Person, progress: Progress) -> dict[str, Any]:
    """Return the progress in words and numbers for JSON; None for what is not known."""
    return {
        "person": person.pseudonym,
        "demo": person.demo,
        "day": progress.today.isoformat(),
        "notice": NOTICE,
        "movements": [_side_as_data(each) for each in progress.sides],
        "prompts": [
            {
                "kind": each.kind.value,
                "movement": each.movement.value if each.movement else None,
                "side": each.side.value if each.side else None,
                "text": each.text,
            }
            for each in progress.prompts
        ],
    }


def _side_as_data(each: SideProgress) -> dict[str, Any]:
    check = each.weekly_checks[-1] if each.weekly_checks else None
    slope = check.slope if check else None
    change = each.change
    return {
        "movement": each.movement.value,
        "side": each.side.value,
        "affected": each.affected,
        "help": each.conduct.help.value,
        "posture": each.conduct.posture.value,
        "unit": MOVEMENTS[each.movement].unit.value,
        "verdict": each.verdict.value,
        "days": len(each.series),
        "baseline": _block_as_data(each.baseline),
        "recent": _block_as_data(each.recent),
        "change": {"value": change.value, "low": change.low, "high": change.high}
        if change
        else None,
        "look": check.day.isoformat() if check else None,
        "slope_per_month": slope.per_month if slope else None,
        "slope_interval": list(slope.interval_per_month()) if slope else None,
        "spread": each.spread,
        "spread_is_own": each.own_spread,
        "other_side": _block_as_data(each.other) if each.other else None,
        "short_by": each.short_by,
        "set_up_drifted_by": each.drifted_by,
        "breaks": [
            {"day": point.day.isoformat(), "why": point.why} for point in each.series.breaks
        ],
        "earlier": [
            {
                "first": chapter.first.isoformat(),
                "last": chapter.last.isoformat(),
                "ended_by": chapter.ended_by,
                "verdict": chapter.verdict.value,
                "slope_per_month": chapter.slope.per_month if chapter.slope else None,
                "slope_interval": list(chapter.slope.interval_per_month())
                if chapter.slope
                else None,
            }
            for chapter in each.earlier
        ],
        "milestones": [
            {"range": one.task.range_words, "task": one.task.words, "reached": one.reached}
            for one in each.milestones
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
