"""Report for a clinic visit: a page of HTML, and a second one on request.

First a box of a few lines, then tables and curves; readable in black and white. Made as text, so it
needs no window; the same text becomes a PDF in :mod:`gui.report.pdf`. All typed text is escaped.
The page is self-contained: it loads nothing.
"""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import replace
from html import escape

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import EVENT_WORDS, History, Person
from measure.progress.clinician_prompts import prompt_text
from measure.progress.dates import date_words
from measure.progress.home_programme import (
    dose_words,
    events_with_plans,
    plan_on,
    programme_done_sentences,
)
from measure.progress.overview import Progress, history_until, progress_of
from measure.progress.side_wording import (
    dominance_sentence,
    ends_sentence,
    months_sentence,
)
from measure.progress.week_sentence import counted_sentence, forecast_sentence, week_sentence
from measure.progress.weekly_verdicts import WINDOW_DAY
from measure.progress.wording import Translate, english, name_words
from measure.report.caveats import CAVEATS, DEMO, NOTICE
from measure.report.choices import ReportChoices
from measure.report.figures import CURVE_DAY, NamedDay, curve_diagram, pain_diagram, span_of
from measure.report.headline import HeadlineItem, HeadlineLine, headline
from measure.report.own_words import by_hand_words, goal_words
from measure.report.svg import Draw, as_svg
from measure.report.tables import event_table, milestone_table, movement_table, refusal_table
from measure.report.wording import (
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

#: Plain enough for every browser and for the text layout that makes the PDF, which supports
#: lengths in px only. No text is smaller than 8 points, which is read without glasses for reading.
_STYLE = """
body { font-family: "Atkinson Hyperlegible", "DejaVu Sans", sans-serif; font-size: 8pt;
       color: #000; background: #fff; }
h1 { font-size: 14pt; margin-top: 0px; margin-bottom: 3px; }
h2 { font-size: 10pt; margin-top: 8px; margin-bottom: 2px; }
p { margin-top: 2px; margin-bottom: 2px; }
table { border-collapse: collapse; }
th { text-align: left; font-weight: bold; border-bottom: 1px solid #000; padding: 1px 3px; }
td { vertical-align: middle; border-bottom: 1px solid #bbb; padding: 1px 3px; }
p.lead { font-size: 10pt; margin-top: 4px; margin-bottom: 4px; }
.bare td { border-bottom: none; vertical-align: top; padding: 1px 6px; }
.curves td { border-bottom: none; padding: 0px; }
.box td { background-color: #f5f5f5; border-bottom: none; vertical-align: top; padding: 1px 6px;
          font-size: 9pt; }
"""
#: Added where a page has room: its plots are at least this high, points. [technical]
_ROOMY_PLOT = 44.0
_ROOMY_STYLE = """
h2 { margin-top: 14px; margin-bottom: 5px; }
p.lead { margin-top: 8px; margin-bottom: 8px; }
.box td { padding: 2px 6px; }
.box td.first { padding-top: 7px; }
.box, .data { margin-top: 6px; }
"""
#: Sizes on paper, points, and what is as large as running text, 1, where one reads on a screen.
#: [technical]
_READING_SIZES = {8: 1.0, 9: 1.0, 10: 1.15, 14: 1.4}
_READING_STYLE = """
h2 { margin-top: 32px; margin-bottom: 8px; }
h3 { margin-top: 16px; margin-bottom: 4px; }
p, p.lead { margin-top: 8px; margin-bottom: 8px; }
td, th { padding: 4px 8px; vertical-align: top; }
.box td { padding: 2px 12px 2px 0px; background-color: transparent; }
.box td.subject { border-top: 1px solid #bbb; padding-top: 8px; }
.box td.end { padding-bottom: 10px; }
.box { margin-top: 12px; }
.curves td { padding: 8px 0px; }
"""
#: Widths of a movement's name and of the two columns beside it, there, per cent. [technical]
_READING_WIDTHS = (30, 32, 38)
_SCREEN_STYLE = """
@page {{ size: A4 {orientation}; margin: 11mm; }}
html {{ background: #fff; }}
body {{ max-width: {width}mm; margin: 8mm auto; }}
tr, svg {{ break-inside: avoid; }}
h2, tr:first-child {{ break-after: avoid; }}
@media print {{ body {{ margin: 0; max-width: none; }} }}
"""
_NOTHING_OUTSIDE = (
    '<meta http-equiv="Content-Security-Policy" '
    "content=\"default-src 'none'; style-src 'unsafe-inline'\">"
)
#: As the report stands where nothing was chosen.
USUAL_CHOICES = ReportChoices()


def report_html(
    history: History,
    today: dt.date,
    choices: ReportChoices = USUAL_CHOICES,
    *,
    draw: Draw = as_svg,
    for_screen: bool = True,
    progress: Progress | None = None,
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
    progress
        The person's progress on that day, where it was worked out already.
    """
    shown = history_until(history, today)
    title = escape(report_title(shown.person, choices.tr))
    head = f'<meta charset="utf-8"><title>{title}</title>'
    style = _style(choices)
    if for_screen:
        head = _NOTHING_OUTSIDE + head
        orientation, width = ("landscape", 275) if choices.landscape else ("portrait", 188)
        style += _SCREEN_STYLE.format(orientation=orientation, width=width)
    body = _body(shown, progress or progress_of(shown, today), choices, draw)
    return (
        f'<!DOCTYPE html><html lang="{choices.language}"><head>{head}<style>{style}</style></head>'
        f"<body>{body}</body></html>\n"
    )


def _style(choices: ReportChoices) -> str:
    """Return the style for paper, or one whose sizes are those of a text on a screen."""
    reading_px = choices.reading_px
    if reading_px is None:
        return _STYLE + (_ROOMY_STYLE if choices.plot_height >= _ROOMY_PLOT else "")
    sizes = {
        f"font-size: {point}pt": f"font-size: {round(reading_px * share)}px"
        for point, share in _READING_SIZES.items()
    }
    style = _STYLE
    for point_size, pixels in sizes.items():
        style = style.replace(point_size, pixels)
    return style + _READING_STYLE


def report_title(person: Person, tr: Translate = english) -> str:
    """Return the report's title, plain text."""
    template = (
        tr("Shoulder motion: {name} (demo data)") if person.demo else tr("Shoulder motion: {name}")
    )
    return template.format(name=name_words(person.pseudonym, tr))


def report_foot(person: Person, today: dt.date, tr: Translate = english) -> str:
    """Return the line at the foot of every printed page, plain text."""
    return f"{report_title(person, tr)}, {date_words(today, tr)}. {tr(NOTICE)}"


def _body(history: History, progress: Progress, choices: ReportChoices, draw: Draw) -> str:
    tr, today = choices.tr, progress.today
    demo = f"<b>{tr(DEMO)}</b>" if history.person.demo else ""
    person = f"<p>{demo} {person_words(history, today, tr)} <b>{tr(NOTICE)}</b></p>"
    parts = [_heading(escape(report_title(history.person, tr)), 1), person]
    if choices.reading_px:
        # The page that it is read on has the title; what can be said comes first.
        parts = []
    if not history.measurements:
        words = tr("A report needs at least one session.")
        parts.append(_heading(tr("Nothing measured yet")) + f"<p>{words}</p>")
        return "".join(parts)
    said = escape(week_sentence(progress, tr)).replace("\n", "<br>")
    more = " ".join(filter(None, (counted_sentence(progress, tr), forecast_sentence(progress, tr))))
    if choices.reading_px:
        # What can be said is the one bold thing at the top; who and when follow the box.
        parts.append(f'<p class="lead"><b>{said}</b></p>')
        parts.append(_paragraphs((tr(NOTICE),)) + _box(history, progress, choices))
        parts.append(_paragraphs((escape(more), f"{demo} {person_words(history, today, tr)}")))
    else:
        parts.append(f'<p class="lead"><b>{said}</b> {escape(more)}</p>')
        parts.append(_box(history, progress, choices))
    parts.append(_heading(tr("First and last readings, change and trend")))
    parts.append(movement_table(progress, history, _first_sides(history, progress), draw, choices))
    parts.append(_curves(progress, history, choices, draw))
    if choices.details:
        demo = _paragraphs((demo,))
        details = _details(progress, history, draw, choices)
        parts.append(f'<div style="page-break-before: always">{details}</div>{demo}')
    return "".join(parts)


def _first_sides(history: History, progress: Progress) -> tuple[Side, ...]:
    """Return the sides of the first table: the affected ones that were measured, else both."""
    measured = {side.side for side in progress.usual if side.affected}
    return tuple(side for side in history.person.affected if side in measured) or tuple(Side)


def _box(history: History, progress: Progress, choices: ReportChoices) -> str:
    rows = "".join(_box_rows(item, choices) for item in headline(history, progress, choices))
    return f'<table class="box" width="100%" cellspacing="0">{rows}</table>'


def _box_rows(item: HeadlineItem, choices: ReportChoices) -> str:
    """Return the rows of one part: its subject at the left of as many rows as it has lines.

    A landscape page is wide and low: there all lines are one. On a screen the subject is a heading.
    """
    if choices.landscape and choices.reading_px is None:
        words = "; ".join(f"{line.name} {line.whole}".strip() for line in item.lines)
        item = HeadlineItem(subject=item.subject, lines=(HeadlineLine(name="", words=words),))
    if choices.reading_px:
        return _box_rows_to_read(item)
    ends = [' class="first"', *("" for _ in item.lines[1:])]
    cells = [
        f'<td{end} width="20%">{escape(line.name)}</td><td{end}>{escape(line.whole)}</td>'
        if line.name
        else f'<td{end} colspan="2">{escape(line.whole)}</td>'
        for line, end in zip(item.lines, ends, strict=True)
    ]
    subject = (
        f'<td class="first" width="26%" rowspan="{len(cells)}"><b>{escape(item.subject)}</b></td>'
    )
    return "".join(
        f"<tr>{subject if number == 0 else ''}{cell}</tr>" for number, cell in enumerate(cells)
    )


def _box_rows_to_read(item: HeadlineItem) -> str:
    """Return the rows of one part under its heading, or under those of its columns."""
    heads = ("", *item.columns) if item.columns else (item.subject,)
    rows = [_row_to_read([f"<b>{escape(head)}</b>" for head in heads], "subject")]
    for line in item.lines:
        cells = [escape(part) for part in (line.name, line.words, line.second) if part]
        rows.append(_row_to_read(cells, "end" if line is item.lines[-1] else ""))
    return "".join(rows)


def _row_to_read(cells: Sequence[str], kind: str) -> str:
    """Return a row of a class in the box's three columns; the last cell takes those left."""
    columns, mark = len(_READING_WIDTHS), f' class="{kind}"' if kind else ""
    spans = [1] * (len(cells) - 1) + [columns - len(cells) + 1]
    written = [
        f'<td{mark} colspan="{span}" width="{sum(_READING_WIDTHS[k : k + span])}%">{cell}</td>'
        for k, (cell, span) in enumerate(zip(cells, spans, strict=True))
    ]
    return f"<tr>{''.join(written)}</tr>"


def _curves(progress: Progress, history: History, choices: ReportChoices, draw: Draw) -> str:
    tr = choices.tr
    sessions = [session.started.day.toordinal() for session in history.sessions]
    span = span_of(sessions, progress.today)
    events = [event for event in events_with_plans(history) if span[0] <= event.day.toordinal()]
    events = [event for event in events if event.day <= progress.today]
    named = [NamedDay(event.day, tr(EVENT_WORDS[event.kind])) for event in events]
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
            cells.append(draw(curve_diagram(sides, refused, span, choices, named)))
    done = [log for log in history.exercises_done if log.done.day <= progress.today]
    shown = replace(history, exercises_done=tuple(done))
    cells.append(draw(pain_diagram(shown, span, choices, named)))
    columns = 1 if choices.reading_px else 3 if choices.landscape else 2
    rows = "".join(
        "<tr>" + "".join(f"<td>{cell}</td>" for cell in cells[k : k + columns]) + "</tr>"
        for k in range(0, len(cells), columns)
    )
    return (
        _heading(tr("Over time"))
        + _paragraphs((_legend(history, tr),))
        + f'<table class="curves" width="100%">{rows}</table>'
    )


def _legend(history: History, tr: Translate) -> str:
    """Return what the marks of the curves mean: each shape one thing."""
    if len(history.person.affected) == 1:
        words = [tr("Round: left; square: right. Black: the affected side; grey: the other.")]
    else:
        words = [tr("Round and black: left; square and grey: right.")]
    words.append(
        tr(
            "Open: practice. Crosses: not measured. Bands: 95 % intervals; line: trend of up to "
            "{weeks} weeks. Dashed: events; where thicker, a new series starts. Pain: diamond, "
            "worst in 24 hours; dash, at night; triangle, during a movement."
        ).format(weeks=WINDOW_DAY // 7)
    )
    return " ".join(words)


def _details(progress: Progress, history: History, draw: Draw, choices: ReportChoices) -> str:
    """Return the second page: everything that explains the first one."""
    tr, today = choices.tr, progress.today
    affected = [side for side in progress.usual if side.affected]
    parts = []
    if progress.prompts:
        parts.append(
            _heading(tr("Worth discussing"))
            + _paragraphs(escape(prompt_text(prompt, tr)) for prompt in progress.prompts)
        )
    sentences = (
        *visit_words(affected, tr),
        *setup_words(progress.usual, tr),
        *when_words(affected, tr),
        *(
            months_sentence(side.deficit.months, side.movement, tr)
            for side in affected
            if side.deficit
        ),
        dominance_sentence(progress, tr),
        ends_sentence(progress.ends, tr),
        *phase_words(affected, tr),
    )
    events = [event for event in events_with_plans(history) if event.day <= today]
    span = tr("Charts show at most {days} days; over long periods one band is one week.")
    parts += [
        _other_side(progress, history, draw, choices),
        _heading(tr("The course in words")),
        event_table(affected, tr),
        _paragraphs(map(escape, sentences)),
        _paragraphs((pain_words(history, today, tr), during_words(history, today, tr))),
        _programme(history, today, tr),
        _paragraphs(map(escape, programme_done_sentences(progress.programme_done, tr))),
        _paragraphs(event_words(event, tr) for event in events),
        _paragraphs((goal_words(history, tr), by_hand_words(history, tr))),
        _heading(tr("Everyday tasks")) + milestone_table(progress, tr),
        _heading(tr("What was not measured")) + refusal_table(history, tr),
        _heading(tr("How it was measured")) + how_measured(history, tr),
        _heading(tr("How to read this")),
        _paragraphs((*(tr(caveat) for caveat in CAVEATS), span.format(days=CURVE_DAY))),
    ]
    return "".join(parts)


def _other_side(progress: Progress, history: History, draw: Draw, choices: ReportChoices) -> str:
    """Return the table of the side that is not in the first one, or nothing."""
    first = _first_sides(history, progress)
    table = movement_table(
        progress, history, [side for side in Side if side not in first], draw, choices
    )
    tr = choices.tr
    return _heading(tr("The other side")) + table if table else ""


def _programme(history: History, today: dt.date, tr: Translate) -> str:
    plan = plan_on(history.plans, today)
    if plan is None or not plan.exercises:
        return ""
    exercises = "; ".join(
        f"{tr(item.exercise.name)}, {dose_words(item, tr)}" for item in plan.exercises
    )
    words = [
        tr("Home programme since {day}: {exercises}; stop at pain {limit} of 10.").format(
            day=date_words(plan.first_day, tr), exercises=exercises, limit=plan.pain_limit
        )
    ]
    if plan.chosen_by:
        words.append(tr("Chosen by: {role}.").format(role=plan.chosen_by))
    if plan.review:
        words.append(tr("Next review: {day}.").format(day=date_words(plan.review, tr)))
    return f"<p>{escape(' '.join(words))}</p>"


def _heading(words: str, level: int = 2) -> str:
    return f"<h{level}>{words}</h{level}>"


def _paragraphs(texts: Iterable[str]) -> str:
    return "".join(f"<p>{text}</p>" for text in texts if text)
