"""How often the intervals before and after an event hold the truth.

    python -m tests.bench.bench_event_effect [--people N] [--write]

`--write` copies the table into measure/docs/verdicts.md between its marks.
"""

import argparse
import re
from pathlib import Path

from tests.bench.event_courses import QUANTITIES, EventCourse, EventTruth, coverage

_DOCUMENT = Path(__file__).resolve().parents[2] / "measure/docs/verdicts.md"
_MARKS = re.compile(r"(<!-- event:begin -->\n).*?(<!-- event:end -->)", re.DOTALL)
_SEED = 20_261_129
_HEADS = ("step", "slope before", "slope after", "change since")
_MEASURED = {
    "independent": EventCourse(),
    "autocorrelation 0.3": EventCourse(related=0.3),
    "autocorrelation 0.3, 10 % low, 25 % missed, clothes 3°": EventCourse(
        related=0.3, odd=0.1, missed=0.25, clothes=3.0
    ),
}
_TRUTHS = {
    "as assumed": None,
    "5° a month lost, step 15°, then 5° gained": EventTruth(
        step=15.0, slope_before=-5.0, slope_after=5.0
    ),
    "no effect: +2° a month throughout": EventTruth(step=0.0, slope_before=2.0, slope_after=2.0),
}
_WEEKS_AFTER = (1, 4, 8, 16)


def table(people: int) -> str:
    """Return the table as Markdown."""
    lines = [
        f"{people} simulated people a line, 3 sessions a week that scatter by 5°, ten weeks "
        "before the event. Share whose 95 % interval holds the truth:",
        "",
        f"| days | truth | weeks since | {' | '.join(_HEADS)} |",
        "|-|-|-|-|-|-|-|",
    ]
    for words, measured in _MEASURED.items():
        for of_truth, truth in _TRUTHS.items():
            for weeks in _WEEKS_AFTER:
                course = EventCourse(
                    truth=truth,
                    weeks_after=weeks,
                    related=measured.related,
                    odd=measured.odd,
                    missed=measured.missed,
                    clothes=measured.clothes,
                )
                held = coverage(course, people, _SEED)
                cells = " | ".join(f"{100 * held[name]:.0f} %" for name in QUANTITIES)
                lines.append(f"| {words} | {of_truth} | {weeks} | {cells} |")
    return "\n".join(lines)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--people", type=int, default=1000)
    parser.add_argument("--write", action="store_true")
    arguments = parser.parse_args()
    text = table(arguments.people)
    print(text)
    if arguments.write:
        page = _DOCUMENT.read_text(encoding="utf-8")
        page = _MARKS.sub(lambda marks: f"{marks[1]}{text}\n{marks[2]}", page)
        _DOCUMENT.write_text(page, encoding="utf-8")


if __name__ == "__main__":
    main()
