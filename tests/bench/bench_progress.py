"""`make bench-progress`: how often the verdicts about progress are wrong, and how soon right.

    python -m tests.bench.bench_progress [--people N] [--write] [--speed]

Simulates people whose truth is known, looks at them every week, and prints a table.
`--write` copies it into gui/help/progress.md between its marks. `--speed` instead times what ten
years of daily sessions of five people cost.
"""

import argparse
import re
import sys
from collections.abc import Callable, Iterator
from concurrent.futures import ProcessPoolExecutor
from dataclasses import replace
from pathlib import Path

import numpy as np

from measure.domain.landmarks import Side
from tests.bench.progress_limit import best_power
from tests.bench.progress_people import Course, Outcome, first_weeks, series_of
from tests.bench.progress_rules import first_beside, first_plain, first_stall, first_verdict

_DOCUMENT = Path(__file__).resolve().parents[2] / "gui/help/progress.md"
_MARKS = re.compile(r"(<!-- progress:begin -->\n).*?(<!-- progress:end -->)", re.DOTALL)
_SEED = 20_261_128

_MESSY = Course(missed=0.2, odd=0.1)
_FLAT = {
    "every session kept, none odd": Course(),
    "20 % missed": Course(missed=0.2),
    "10 % read 20° low": Course(odd=0.1),
    "20 % missed, 10 % low": _MESSY,
    "autocorrelation 0.15, 20 % missed, 10 % low": replace(_MESSY, related=0.15),
    "autocorrelation 0.3": Course(related=0.3),
    "autocorrelation 0.3, 20 % missed, 10 % low": replace(_MESSY, related=0.3),
    "autocorrelation 0.45": Course(related=0.45),
    "autocorrelation 0.6": Course(related=0.6),
    "2 sessions a week": Course(a_week=2),
    "7 sessions a week": Course(a_week=7),
    "spread 3° instead of 5°": Course(spread=3.0),
    "spread 8° instead of 5°": Course(spread=8.0),
    "followed for 26 weeks": Course(weeks=26),
    "followed for 52 weeks": Course(weeks=52),
}
_RISING = {
    "5° a month, every session kept": Course(a_month=5),
    "5° a month, 20 % missed": Course(a_month=5, missed=0.2),
    "5° a month, 10 % read 20° low": Course(a_month=5, odd=0.1),
    "5° a month, 20 % missed, 10 % low": replace(_MESSY, a_month=5),
    "5° a month, autocorrelation 0.3": Course(a_month=5, related=0.3),
    "5° a month, all three": replace(_MESSY, a_month=5, related=0.3),
    "5° a month lost, 10 % read 20° low": Course(a_month=-5, odd=0.1),
    "3° a month, every session kept": Course(a_month=3),
    "10° a month, every session kept": Course(a_month=10),
    "10° a month, 20 % missed": Course(a_month=10, missed=0.2),
    "10° a month, 10 % read 20° low": Course(a_month=10, odd=0.1),
    "10° a month, 20 % missed, 10 % low": replace(_MESSY, a_month=10),
    "10° a month, autocorrelation 0.3": Course(a_month=10, related=0.3),
    "30° a month": Course(a_month=30),
    "front-loaded, 30° in all, 63 % in 6 weeks": Course(quick=(30, 42)),
    "front-loaded, with 20 % missed, 10 % low": replace(_MESSY, quick=(30, 42)),
}
#: What somebody who knew all but the slope could see in these: share of false alarms allowed.
_LIMITED = {
    "5° a month, every session kept": 0.03,
    "5° a month, 20 % missed": 0.03,
    "5° a month, 10 % read 20° low": 0.03,
    "5° a month, 20 % missed, 10 % low": 0.03,
    "5° a month, autocorrelation 0.3": 0.07,
    "5° a month, all three": 0.07,
    "3° a month, every session kept": 0.03,
}
#: The other side reaches so far in the courses of a stall, degrees.
_OTHER = 160.0
_STALLS = {
    "flat, 26 weeks": Course(weeks=26),
    "2° a month, 26 weeks": Course(a_month=2, weeks=26),
    "5° a month, 26 weeks": Course(a_month=5, weeks=26),
    "10° a month, 26 weeks": Course(a_month=10, weeks=26),
    "front-loaded, 30° in all, 63 % in 6 weeks, 26 weeks": Course(quick=(30, 42), weeks=26),
}

#: Both shoulders measured, the other one once a week; the camera is moved halfway.
_MOVED = {
    "nothing moved": Course(),
    "camera moved: both read 8° more": Course(step=8),
    "camera moved: both read 12° more": Course(step=12),
    "camera moved: both read 12° less": Course(step=-12),
    "5° a month gained on the affected side alone": Course(a_month=5),
}

_TRENDS = "| course | gaining or losing | also likely ones | plain rule |\n|-|-|-|-|\n"


def _trend_outcomes(course: Course, people: int) -> tuple[Outcome, ...]:
    # The plain rule is there for comparison only, and slow.
    plain = first_weeks(course, people // 4, _SEED, first_plain)
    return first_weeks(course, people, _SEED, first_verdict) + plain


def _stall_outcomes(course: Course, people: int) -> tuple[Outcome, ...]:
    return first_weeks(course, people, _SEED, first_stall(_OTHER))


def _moved_outcomes(course: Course, people: int) -> tuple[Outcome, ...]:
    """Return what is told with and without a look at the other shoulder."""
    random = np.random.default_rng(_SEED)
    other = replace(course, a_week=1, a_month=0.0)
    weeks = []
    for _ in range(people):
        series = series_of(course, random)
        beside = series_of(other, random, Side.RIGHT)
        weeks.append(first_beside(series, beside))
    return tuple(Outcome(weeks=column) for column in np.array(weeks).T)


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--people", type=int, default=1000, help="for each line of the table")
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
    yield f"{people} simulated people a line (half as many where followed for longer than 12 "
    yield "weeks; a quarter for the plain rule), 3 sessions a week and a spread of 5° unless "
    yield "said otherwise.\n\n"
    yield "**No true change.** Share told of one (within 12 weeks unless said otherwise):\n\n"
    yield _TRENDS
    yield from _rows(pool, _trend_outcomes, _FLAT, people, _percent)
    yield "\n**True change.** Share told so within 12 weeks, and the median week:\n\n"
    yield _TRENDS
    yield from _rows(pool, _trend_outcomes, _RISING, people, _when)
    yield "\n**At most.** Share that somebody could tell who knew which sessions read low, the "
    yield "spread and the autocorrelation, and checked once, in week 12, with as many false alarms "
    yield "as are wanted at most:\n\n| course | false alarms | told |\n|-|-|-|\n"
    for name, false_alarms in _LIMITED.items():
        power = best_power(_RISING[name], people, _SEED, false_alarms)
        yield f"| {name} | {100 * false_alarms:.0f} % | {100 * power:.0f} % |\n"
    yield f"\n**Stalled**, the other side at {_OTHER:.0f}°. Share told so at least once, and the "
    yield "median week:\n\n| course | stalled |\n|-|-|\n"
    yield from _rows(pool, _stall_outcomes, _STALLS, people // 2, _when)
    yield "\n**The set-up**, with the other shoulder measured once a week. Share told of a gain "
    yield "or loss within 12 weeks:\n\n| course | other shoulder compared | not compared |\n"
    yield "|-|-|-|\n"
    yield from _rows(pool, _moved_outcomes, _MOVED, people, _percent)


def _rows(
    pool: ProcessPoolExecutor,
    outcomes: Callable[[Course, int], tuple[Outcome, ...]],
    courses: dict[str, Course],
    people: int,
    words: Callable[[Outcome], str],
) -> Iterator[str]:
    sizes = [people if course.weeks == 12 else people // 2 for course in courses.values()]
    done = pool.map(outcomes, courses.values(), sizes)
    for name, found in zip(courses, done, strict=True):
        yield f"| {name} | {' | '.join(words(each) for each in found)} |\n"


def _percent(found: Outcome) -> str:
    return f"{found.share * 100:.1f} %"


def _when(found: Outcome) -> str:
    week = found.median_week
    return f"{found.share * 100:.0f} %" + (f", week {week:.0f}" if week < 1000 else "")


if __name__ == "__main__":
    sys.exit(main())
