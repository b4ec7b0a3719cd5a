"""`make bench-progress`: how often the verdicts about progress are wrong, and how soon right.

    python -m tests.bench.bench_progress [--people N] [--write] [--speed]

Simulates people whose truth is known, checks them every week, and prints a table beside the
goals. `--write` copies it into measure/docs/verdicts.md between its marks. `--speed` instead times
what ten years of daily sessions of five people cost.
"""

import argparse
import math
import re
import sys
from collections.abc import Iterator, Mapping
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from tests.bench.progress_limit import best_power
from tests.bench.progress_pain import pain_rates
from tests.bench.progress_people import Course
from tests.bench.progress_rows import ROWS, Figures, Row

_DOCUMENT = Path(__file__).resolve().parents[2] / "measure/docs/verdicts.md"
_MARKS = re.compile(r"(<!-- progress:begin -->\n).*?(<!-- progress:end -->)", re.DOTALL)
_SEED = 20_261_129
#: Standard deviations of stable pain, points.
_PAIN_SD = (1.0, 1.5, 2.0)
#: What somebody who knew all but the slope could see in 12 weeks: share of false alarms allowed.
_LIMITED = {
    "5° a month": (Course(a_month=5), 0.03),
    "5° a month, autocorrelation 0.3": (Course(a_month=5, related=0.3), 0.06),
    "5° a month, 10 % read 20° low": (Course(a_month=5, odd=0.1), 0.03),
}


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--people", type=int, default=334, help="for each row of the table")
    parser.add_argument("--write", action="store_true", help="copy the table into the document")
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--speed", action="store_true", help="time ten years of sessions instead")
    arguments = parser.parse_args()
    if arguments.speed:
        from tests.bench.progress_speed import time_ten_years

        return time_ten_years()
    text = ""
    with ProcessPoolExecutor(arguments.workers) as pool:
        for line in _lines(pool, arguments.people):
            print(line, end="", flush=True)
            text += line
    if arguments.write:
        document = _DOCUMENT.read_text(encoding="utf-8")
        written = _MARKS.sub(lambda found: found[1] + text + found[2], document)
        _DOCUMENT.write_text(written, encoding="utf-8")
    return 0


def _lines(pool: ProcessPoolExecutor, people: int) -> Iterator[str]:
    yield f"{people} people a row with three movements each ({3 * people} courses), "
    yield f"3 sessions a week and a spread of {Course().spread:.1f}° unless said otherwise. Shares "
    yield "in per cent, times in weeks unless said otherwise; goals in brackets.\n\n"
    yield "| course | what came of it |\n|-|-|\n"
    counted = pool.map(_count, ROWS, [people] * len(ROWS))
    for row, figures in zip(ROWS, counted, strict=True):
        yield f"| {row.words} | {_words(figures, row.goals)} |\n"
    rates = pool.map(pain_rates, _PAIN_SD, [people] * len(_PAIN_SD), [_SEED] * len(_PAIN_SD))
    goals = {"stable, told in 26 weeks": "<= 5", "+3, told": ">= 80"}
    for sd, figures in zip(_PAIN_SD, rates, strict=True):
        yield f"| pain about 4 of 10, standard deviation {sd} | {_words(figures, goals)} |\n"
    yield "\nAt most, someone who knew the spread, the autocorrelation and the odd sessions and "
    yield "checked once, in week 12, could tell:\n\n| course | false alarms | told |\n|-|-|-|\n"
    for name, (course, false_alarms) in _LIMITED.items():
        share = best_power(course, people, _SEED, false_alarms)
        yield f"| {name} | {100 * false_alarms:.0f} % | {100 * share:.0f} % |\n"


def _count(row: Row, people: int) -> Figures:
    return row.count(row.course, people, _SEED)


def _words(figures: Figures, goals: Mapping[str, str]) -> str:
    return ", ".join(
        f"{name} **{_number(figure)}**" + (f" ({goals[name]})" if name in goals else "")
        for name, figure in figures.items()
    )


def _number(figure: float) -> str:
    return "never for half" if math.isinf(figure) else f"{figure:.1f}"


if __name__ == "__main__":
    sys.exit(main())
