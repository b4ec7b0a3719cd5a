"""The command `thawline progress`: change, trend and verdict of each movement and side."""

import argparse

from measure.cli.events import a_day
from measure.cli.main import NOTICE
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.movements import MOVEMENTS
from measure.domain.records import Person
from measure.export.progress_json import progress_json
from measure.progress.dates import date_words
from measure.progress.home_programme import programme_done_sentences
from measure.progress.overview import Progress, progress_of
from measure.progress.sentences import (
    counted_from,
    shared_sentences,
    shown_change,
    side_sentences,
    verdict_words,
)
from measure.progress.shoulder import SideProgress
from measure.progress.side_wording import side_by_side_sentences
from measure.progress.wording import VERDICT_WORDS, block_words, change_words, conduct_words
from measure.report.wording import phase_words

_HEADER = (
    "movement",
    "side",
    "first days",
    "last days",
    "change",
    "trend a month",
    "counted since",
    "verdict",
)
#: A change that is clear may stand beside a trend that is not.
_HOW_TO_READ = """
The change goes from the first to the last days. The trend and its verdict count from the day
beside them: they cover the last 16 weeks at most, and
start again where the way of measuring changed or something happened to the shoulder.
Because the readings are checked every week, a trend needs more evidence than a 95 % interval."""


def configure(parser: argparse.ArgumentParser) -> None:
    """Print a person's progress: first and last readings, change, trend and verdict.

    Each number is given with its 95 % interval. The earliest trend comes after four weeks and
    eight days with readings. The verdicts are: too early to say, no clear change, probably
    increasing, increasing, probably decreasing, decreasing, level, levelled off, no recent
    readings. gui/help/progress.md says how often they are wrong.

    exit codes:
      0  done, even if nothing can be said yet
      2  no one of that name

    examples:
      thawline progress Rosa
      thawline progress Rosa --json
      thawline progress Rosa --on 2026-10-04 --json
    """
    parser.add_argument("person", metavar="PERSON", help="the pseudonym")
    parser.add_argument("--on", type=a_day, metavar="DATE", help="as of this day (default: today)")
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        history = store.history(person.id)
        today = arguments.on or store.now().day
    progress = progress_of(history, today)
    if arguments.json:
        print(progress_json(person, progress, NOTICE))
    else:
        _print(person, progress)
    return 0


def _print(person: Person, progress: Progress) -> None:
    demo = " (demo: a made-up person)" if person.demo else ""
    print(f"{person.pseudonym}{demo}, {date_words(progress.today)}\n")
    if not progress.sides:
        print("There are no readings yet. A trend can be shown after about four weeks.")
        return
    print(table([_row(side) for side in progress.sides], list(_HEADER)))
    print("* affected side")
    print(_HOW_TO_READ)
    affected = [side for side in progress.usual if side.affected]
    said = [sentence for side in affected for sentence in _sentences(side)]
    for words in (*said, *shared_sentences(affected), *phase_words(affected)):
        print(f"\n{words}")
    done = programme_done_sentences(progress.programme_done)
    for words in (*side_by_side_sentences(progress), *done):
        print(f"\n{words}")
    for side in progress.sides:
        if side.drifted_by is None:
            continue
        print(
            f"\n{MOVEMENTS[side.movement].name}: the readings of both shoulders changed together, "
            "so the set-up may have changed and no trend is shown. If the camera changed, add it "
            "as an event."
        )
    for prompt in progress.prompts:
        print(f"\n{prompt.text}")
    print(f"\n{NOTICE}")


def _row(side: SideProgress) -> list[str]:
    movement = side.movement
    name = MOVEMENTS[movement].name
    if not side.usual:
        name += f" ({conduct_words(side.conduct)})"
    slope = shown_change(side)
    return [
        name,
        side.side.value + (" *" if side.affected else ""),
        block_words(side.baseline, movement) if side.change else "",
        block_words(side.recent, movement),
        change_words(side.change, movement) if side.change else "",
        change_words(slope, movement) if slope else "",
        date_words(counted_from(side)) if slope else "",
        VERDICT_WORDS[side.verdict],
    ]


def _sentences(side: SideProgress) -> list[str]:
    """Return the verdict in full, then what else is said of a side, with its subject each."""
    subject = f"{MOVEMENTS[side.movement].name}, {side.side.value}"
    said = [f"{verdict_words(side)}.", *side_sentences(side)]
    return [f"{subject}: {sentence}" for sentence in said]
