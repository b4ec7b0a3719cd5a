"""Report for a clinic visit: one or two pages of HTML, readable in black and white.

Made as text, so it needs no window; the same text becomes a PDF in :mod:`gui.report.pdf`. All
typed text is escaped. The page is self-contained: it loads nothing.
"""

import datetime as dt
from collections.abc import Callable, Iterable
from html import escape

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import History, Person
from measure.progress.dates import date_words
from measure.progress.home_programme import (
    dose_words,
    events_with_plans,
    plan_on,
    weeks_done,
)
from measure.progress.overview import Progress, history_until, progress_of
from measure.progress.weekly_verdicts import WINDOW_DAY
from measure.report.figures import CURVE_DAY, curve_diagram, pain_diagram, span_of
from measure.report.svg import Diagram, as_svg
from measure.report.tables import event_table, milestone_table, movement_table, refusal_table
from measure.report.wording import (
    CAVEATS,
    DEMO,
    NOTICE,
    during_words,
    event_words,
    how_measured,
    pain_words,
    person_words,
    phase_words,
    setup_words,
    visit_words,
    when_words,
)

Draw = Callable[[Diagram], str]

#: Plain enough for every browser and for the text layout that makes the PDF, which supports
#: lengths in px only.
_STYLE = """
body { font-family: "DejaVu Sans", sans-serif; font-size: 8pt; color: #000;
       background: #fff; }
h1 { font-size: 15pt; margin-top: 0px; margin-bottom: 3px; }
h2 { font-size: 10pt; margin-top: 9px; margin-bottom: 3px; }
p { margin-top: 2px; margin-bottom: 2px; }
table { border-collapse: collapse; }
th { text-align: left; font-weight: bold; border-bottom: 1px solid #000; padding: 2px 3px; }
td { vertical-align: middle; border-bottom: 1px solid #bbb; padding: 1px 3px; }
.bare td { border-bottom: none; vertical-align: top; padding: 1px 6px; }
.data th, .data td { font-size: 7.2pt; }
.small { font-size: 6.5pt; }
"""
_SCREEN_STYLE = """
@page { size: A4; margin: 11mm; }
html { background: #fff; }
body { max-width: 188mm; margin: 8mm auto; }
tr, svg { break-inside: avoid; }
h2, tr:first-child { break-after: avoid; }
@media print { body { margin: 0; max-width: none; } }
"""
_NOTHING_OUTSIDE = (
    '<meta http-equiv="Content-Security-Policy" '
    "content=\"default-src 'none'; style-src 'unsafe-inline'\">"
)


def report_html(
    history: History, today: dt.date, *, draw: Draw = as_svg, for_screen: bool = True
) -> str:
    """Return the report as HTML.

    Parameters
    ----------
    history
        All records of the person; what lies after `today` is left out.
    draw
        Returns the text that represents a diagram in the HTML.
    for_screen
        Add what only a browser understands: page size, margins, and the policy that nothing
        outside the page is ever loaded.
    """
    shown = history_until(history, today)
    title = escape(report_title(shown.person))
    head = f'<meta charset="utf-8"><title>{title}</title>'
    style = _STYLE
    if for_screen:
        head = _NOTHING_OUTSIDE + head
        style += _SCREEN_STYLE
    return (
        f'<!DOCTYPE html><html lang="en"><head>{head}<style>{style}</style></head>'
        f"<body>{_body(shown, today, draw)}</body></html>\n"
    )


def report_title(person: Person) -> str:
    """Return the report's title, plain text."""
    return f"Shoulder motion: {person.pseudonym}" + (" (demo data)" if person.demo else "")


def report_foot(person: Person, today: dt.date) -> str:
    """Return the line at the foot of every printed page, plain text."""
    return f"{report_title(person)}, {date_words(today)}. {NOTICE}"


def _body(history: History, today: dt.date, draw: Draw) -> str:
    progress = progress_of(history, today)
    demo = f"<p><b>{DEMO}</b></p>" if history.person.demo else ""
    parts = [
        f"<h1>Shoulder motion over time</h1>{demo}",
        f"<p>{person_words(history, today)}</p>",
        f"<p><b>{NOTICE}</b></p>",
    ]
    if not history.measurements:
        parts.append("<h2>Nothing measured yet</h2><p>A report needs at least one session.</p>")
        return "".join(parts)
    if progress.prompts:
        parts.append(
            "<h2>Worth talking about</h2>"
            + _paragraphs(escape(prompt.text) for prompt in progress.prompts)
        )
    parts.append("<h2>First and last readings, change and trend</h2>")
    parts.append(movement_table(progress, history, draw))
    affected = [side for side in progress.usual if side.affected]
    sentences = (*visit_words(affected), *setup_words(progress.usual), *when_words(affected))
    parts.append(event_table(affected) + _paragraphs(map(escape, sentences)))
    parts.append(_curves(progress, history, today, draw))
    parts.append("<h2>Everyday tasks</h2>" + milestone_table(progress))
    parts.append("<h2>Refused measurements</h2>" + refusal_table(history))
    parts.append("<h2>How it was measured</h2>" + how_measured(history))
    parts.append("<h2>How to read this</h2>" + _paragraphs(CAVEATS, "small"))
    return "".join(parts) + demo


def _curves(progress: Progress, history: History, today: dt.date, draw: Draw) -> str:
    sessions = [session.started.day.toordinal() for session in history.sessions]
    span = span_of(sessions, today)
    cells = []
    for movement in Movement:
        sides = [side for side in progress.usual if side.movement is movement]
        refused = [
            (record.measurement.side, record.taken.day)
            for record in history.measurements
            if record.measurement.movement is movement
            and record.measurement.status is Status.REFUSED
        ]
        if sides:
            cells.append(draw(curve_diagram(sides, refused, span)))
    first = max(
        dt.date.fromordinal(span[0]), min(session.started.day for session in history.sessions)
    )
    weeks = weeks_done(history.plans, history.exercises_done, first, today)
    cells.append(draw(pain_diagram(history.sessions, weeks, span)))
    rows = "".join(
        "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells[k : k + 2]) + "</tr>"
        for k in range(0, len(cells), 2)
    )
    affected = [side for side in progress.usual if side.affected]
    events = [event for event in events_with_plans(history) if event.day <= today]
    return (
        "<h2>Over time</h2>"
        f'<p class="small">{_legend(history)}</p>'
        f'<table class="bare" width="100%">{rows}</table>'
        f"{_paragraphs(escape(sentence) for sentence in phase_words(affected))}"
        f"{_paragraphs((pain_words(history, today), during_words(history, today)))}"
        f"{_programme(history, today)}"
        f"{_paragraphs(event_words(event) for event in events)}"
    )


def _legend(history: History) -> str:
    affected = history.person.affected
    marks = f"Round marks: {Side.LEFT.value}; square marks: {Side.RIGHT.value}. "
    if len(affected) == 1:
        marks += "The affected side is filled, the other one open. "
    return (
        f"{marks}Each band is the 95 % interval of a reading, the line the trend of up to "
        f"{WINDOW_DAY // 7} weeks. Empty frames at the foot: refused. Dashed lines: a new series "
        "begins. Open marks at its start: practice. Pain: filled worst in 24 hours, open at night. "
        f"At most {CURVE_DAY} days; of long times a band is a week."
    )


def _programme(history: History, today: dt.date) -> str:
    plan = plan_on(history.plans, today)
    if plan is None or not plan.exercises:
        return ""
    exercises = "; ".join(
        f"{escape(item.exercise.name)}, {dose_words(item)}" for item in plan.exercises
    )
    chosen = f" Chosen by: {escape(plan.chosen_by)}." if plan.chosen_by else ""
    review = f" Next review: {date_words(plan.review)}." if plan.review else ""
    month = dt.timedelta(days=27)
    weeks = weeks_done(
        history.plans, history.exercises_done, max(today - month, plan.first_day), today
    )
    planned, done = sum(week.planned for week in weeks), sum(week.done for week in weeks)
    share = f" In the last four weeks {done} of {planned} were done." if planned else ""
    return (
        f"<p>Home programme since {date_words(plan.first_day)}: {exercises}; stop at pain "
        f"{plan.pain_limit} of 10.{chosen}{review}{share}</p>"
    )


def _paragraphs(texts: Iterable[str], style: str = "") -> str:
    opened = f'<p class="{style}">' if style else "<p>"
    return "".join(f"{opened}{text}</p>" for text in texts if text)
