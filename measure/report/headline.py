"""The box at the top of the report: what a clinician reads first, in a few lines, plain text."""

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from measure.domain.landmarks import Side
from measure.domain.measurements import Status
from measure.domain.records import History, SessionRecord
from measure.progress.before_after import change_since, latest_visit, treatment_events
from measure.progress.clinician_prompts import PromptKind
from measure.progress.comparison import Change
from measure.progress.dates import date_words
from measure.progress.overview import Progress
from measure.progress.sentences import no_longer_clear, plain_verdict_words, short_name
from measure.progress.series import INSTRUMENT_CHANGED
from measure.progress.shoulder import SideProgress
from measure.progress.side_wording import share_words
from measure.progress.week_sentence import joined
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import (
    VERDICT_WORDS,
    Translate,
    block_words,
    change_words,
    number_words,
)
from measure.report.choices import ReportChoices
from measure.report.pain import highest_pain, latest_pain, too_much_pain

#: Days up to a day, and up to today, whose ratings of pain are summed up. [project]
PAIN_DAYS = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadlineLine:
    """What is said of one movement, or, without a name, of all of them.

    Attributes
    ----------
    second
        What stands in a column of its own where there is room, and behind the words elsewhere.
    """

    name: str
    words: str
    second: str = ""

    @property
    def whole(self) -> str:
        """All that is said, in one line."""
        return f"{self.words}, {self.second}" if self.second else self.words


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadlineItem:
    """One part of the box: its subject, and line by line what is said of it.

    Attributes
    ----------
    columns
        Headings of the words and of what stands beside them, in place of the subject; none where
        the words are all.
    """

    subject: str
    lines: tuple[HeadlineLine, ...]
    columns: tuple[str, str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ReferenceDay:
    """The day from which on changes are told, or None for the first sessions; and its words."""

    day: dt.date | None
    words: str


def headline(
    history: History, progress: Progress, choices: ReportChoices
) -> tuple[HeadlineItem, ...]:
    """Return the lines of the box: last days, change, pain and exercises, prompts.

    Last comes the person's own question, where there is one.
    """
    tr = choices.tr
    since = reference_of(history, progress.today, choices)
    sides = _main_sides(progress)
    items = [
        _last_days([*sides, *_lacking_more(progress)], history, tr),
        HeadlineItem(subject=since.words, lines=_changes(sides, since.day, tr)),
        HeadlineItem(
            subject=tr("Pain and exercises"),
            lines=_pain_lines(history, since.day, progress.today, tr),
        ),
        _item(tr("Points to check"), _prompts(history, progress, tr)),
    ]
    if choices.question:
        question = tr("“{words}”").format(words=choices.question)
        items.append(_item(tr("The person asks"), question))
    return tuple(items)


def _item(subject: str, words: str) -> HeadlineItem:
    """Return a part of the box that is one sentence or two."""
    return HeadlineItem(subject=subject, lines=(HeadlineLine(name="", words=words),))


def reference_of(history: History, today: dt.date, choices: ReportChoices) -> ReferenceDay:
    """Return from when on changes are told.

    The day that was chosen; else the latest clinic visit; else the latest event that may have
    changed an affected shoulder; else the first sessions.
    """
    tr = choices.tr
    if choices.since is not None:
        words = tr("Since {day}").format(day=date_words(choices.since, tr))
        return ReferenceDay(day=choices.since, words=words)
    visit = latest_visit(history.events, today)
    if visit is not None:
        words = tr("Since the clinic visit on {day}").format(day=date_words(visit, tr))
        return ReferenceDay(day=visit, words=words)
    affected = history.person.affected or tuple(Side)
    events = [
        event
        for event in treatment_events(history)
        if event.day < today and (event.side is None or event.side in affected)
    ]
    if events:
        day, what = events[-1].day, tr(events[-1].what)
        words = tr("Since the latest event, {day} ({what})").format(
            day=date_words(day, tr), what=what
        )
        return ReferenceDay(day=day, words=words)
    return ReferenceDay(day=None, words=tr("Since the first sessions"))


def _main_sides(progress: Progress) -> list[SideProgress]:
    """Return the primary movements of the affected sides, or all of them without any primary."""
    affected = [side for side in progress.usual if side.affected]
    return [side for side in affected if side.primary] or affected


def _lacking_more(progress: Progress) -> list[SideProgress]:
    """Return movements clearly behind the other side by more than every main one is, if any."""
    main = _main_sides(progress)
    least = min((share for side in main if (share := _share(side)) is not None), default=100.0)
    return [
        side
        for side in progress.usual
        if side.affected
        and side not in main
        and side.deficit is not None
        and side.deficit.now.difference.low > 0
        and (_share(side) or 100.0) < least
    ]


def _share(side: SideProgress) -> float | None:
    """Return a side's range in per cent of the other's, or None without one."""
    share = None if side.deficit is None else side.deficit.now.share
    return None if share is None else share.percent


def _changes(
    sides: Sequence[SideProgress], since: dt.date | None, tr: Translate
) -> tuple[HeadlineLine, ...]:
    """Return a line for each movement, first those that can be compared; or one for all."""
    if not sides:
        words = tr("nothing was measured on an affected side.")
        return (HeadlineLine(name="", words=words),)
    compared = [_compared(side, since) for side in sides]
    if not any(part.change for part in compared):
        words = tr("no readings before and after that can be compared.")
        return (HeadlineLine(name="", words=words),)
    lines = [
        HeadlineLine(name=_name(side, sides, tr), words=_change_words(side, part, part.change, tr))
        for side, part in zip(sides, compared, strict=True)
        if part.change
    ]
    others = [side for side, part in zip(sides, compared, strict=True) if not part.change]
    return (*lines, *_not_comparable(others, sides, since, tr))


def _not_comparable(
    others: Sequence[SideProgress],
    sides: Sequence[SideProgress],
    since: dt.date | None,
    tr: Translate,
) -> list[HeadlineLine]:
    """Return why some of the movements cannot be compared, in one line where it is the same."""
    reasons = {side.movement: _why_not_comparable(side, since, tr) for side in others}
    one_side = len({side.side for side in sides}) == 1
    if one_side and len(others) > 1 and len(set(reasons.values())) == 1:
        names, why = joined(list(reasons), tr), next(iter(reasons.values()))
        words = tr("{movements}: not comparable, {why}").format(
            movements=names[:1].upper() + names[1:], why=why
        )
        return [HeadlineLine(name="", words=words)]
    return [
        HeadlineLine(
            name=_name(side, sides, tr),
            words=tr("not comparable: {why}").format(why=_why_not_comparable(side, since, tr)),
        )
        for side in others
    ]


@dataclass(frozen=True, slots=True)
class _Compared:
    """A change, and the later day from which on it could be told, if that was not the asked one."""

    change: Change | None
    later: dt.date | None = None


def _compared(side: SideProgress, since: dt.date | None) -> _Compared:
    """Return the change of a side since a day, or since the first weeks.

    Where what was measured up to that day is practice alone, as after a first visit, the change
    is told from the first days that count.
    """
    if since is None:
        return _Compared(side.change)
    asked = change_since(side.series, since, side.scatter)
    if asked is not None:
        return _Compared(asked.change)
    if side.change is not None and side.baseline.first > since:
        return _Compared(side.change, side.baseline.first)
    return _Compared(None)


def _change_words(side: SideProgress, compared: _Compared, by: Change, tr: Translate) -> str:
    """Return a change, and what the verdict on its side says of today."""
    verdict = _verdict(side, tr)
    change = change_words(by, side.movement, tr)
    if compared.later is None:
        return tr("{change}, {verdict}").format(change=change, verdict=verdict)
    day = date_words(compared.later, tr)
    return tr("{change} since {day}, {verdict}").format(change=change, day=day, verdict=verdict)


def _why_not_comparable(side: SideProgress, since: dt.date | None, tr: Translate) -> str:
    """Return why a change since a day, or since the first weeks, cannot be told."""
    series = side.series
    if since is None:
        return tr("too few sessions so far")
    if series.date(0) > since:
        return tr("first measured later")
    same = series.latest_instrument()
    if same.date(0) > since:
        changes = [item.why for item in series.breaks if item.setup and item.day > since]
        return tr(changes[-1] if changes else INSTRUMENT_CHANGED)
    if not bool((same.counted().day <= since.toordinal()).any()):
        return tr("only practice before")
    return tr("too few sessions since")


def _verdict(side: SideProgress, tr: Translate) -> str:
    """Return the verdict of today, with its turn; since when it was shown stands in the table."""
    in_words = side.current.turn is not None or no_longer_clear(side)
    if not in_words and side.verdict is not Verdict.NO_RECENT:
        return tr(VERDICT_WORDS[side.verdict])
    return plain_verdict_words(side, tr)


def _name(side: SideProgress, sides: Sequence[SideProgress], tr: Translate) -> str:
    """Return a movement's name, with its side where there are two."""
    name = short_name(side.movement, tr)
    if len({item.side for item in sides}) == 1:
        return name
    return tr("{movement}, {side}").format(movement=name, side=tr(side.side.value))


def _last_days(sides: Sequence[SideProgress], history: History, tr: Translate) -> HeadlineItem:
    """Return the readings of the last days with their share of the other side, or why none is."""
    lines = [
        HeadlineLine(
            name=_name(side, sides, tr),
            words=block_words(side.recent, side.movement, tr),
            second=share_words(side.deficit.now.share, tr),
        )
        for side in sides
        if side.deficit is not None and side.deficit.now.share is not None
    ]
    if lines:
        return HeadlineItem(
            subject=tr("Last days, share of the other side"),
            lines=tuple(lines),
            columns=(tr("Last days"), tr("Share of the other side")),
        )
    return _item(tr("Compared with the other side"), _why_no_share(sides, history, tr))


def _why_no_share(sides: Sequence[SideProgress], history: History, tr: Translate) -> str:
    affected = history.person.affected
    if len(affected) == 2:
        return tr("both shoulders are affected, so there is none to compare with.")
    if not affected:
        return tr("no affected side was named.")
    movements = {side.movement for side in sides}
    if not any(
        record.measurement.side not in affected and record.measurement.status is Status.READING
        for record in history.measurements
        if record.measurement.movement in movements
    ):
        return tr("the other side was not measured.")
    return tr("the other side was not measured in the same way.")


def _pain_lines(
    history: History, since: dt.date | None, today: dt.date, tr: Translate
) -> tuple[HeadlineLine, ...]:
    """Return how painful it usually is, with exercises; then the latest answers and the highest."""
    usual, done = _pain(history.sessions, since, today, tr), _exercises(history, since, today, tr)
    answers = filter(None, (latest_pain(history, today, tr), highest_pain(history, today, tr)))
    lines = (f"{usual} {done}", " ".join(answers))
    return tuple(HeadlineLine(name="", words=words) for words in lines if words)


def _pain(
    sessions: Iterable[SessionRecord], since: dt.date | None, today: dt.date, tr: Translate
) -> str:
    """Return the worst pain in 24 hours, then and now: medians of two weeks of ratings."""
    ratings = [
        (session.started.day, session.pain.worst_24h)
        for session in sessions
        if session.pain.worst_24h is not None
    ]
    now = _median(ratings, today)
    if now is None:
        return tr("Worst pain in 24 hours was not rated in the last two weeks.")
    until = since or (ratings[0][0] + dt.timedelta(days=PAIN_DAYS - 1))
    then = _median(ratings, until)
    if then is None or (today - until).days < PAIN_DAYS:
        return tr("Worst pain in 24 hours about {now} of 10.").format(now=number_words(now, 0, tr))
    return tr("Worst pain in 24 hours about {now} of 10, before it was {then}.").format(
        now=number_words(now, 0, tr), then=number_words(then, 0, tr)
    )


def _median(ratings: Iterable[tuple[dt.date, int]], last: dt.date) -> float | None:
    """Return the median rating of the two weeks up to a day, or None without any."""
    lately = [rating for day, rating in ratings if 0 <= (last - day).days < PAIN_DAYS]
    return median(lately) if lately else None


def _exercises(history: History, since: dt.date | None, today: dt.date, tr: Translate) -> str:
    """Return on how many days exercises were logged; a count of planned ones would be a score."""
    days = {log.done.day for log in history.exercises_done if log.done.day <= today}
    if since is not None:
        days = {day for day in days if day > since}
    if not days:
        return tr("No exercises were logged.")
    if len(days) == 1:
        return tr("Exercises were logged on one day.")
    return tr("Exercises were logged on {count} days.").format(count=len(days))


#: What a prompt is about, in few words; its full sentence stands below the box.
PROMPT_SUBJECTS = {
    PromptKind.LOSING: "{movement}, {side}: decreasing",
    PromptKind.DROP: "{movement}, {side}: fell suddenly",
    PromptKind.LOW_SESSION: "{movement}, {side}: one low reading, measure again",
    PromptKind.SAME_DAY: "{movement}, {side}: readings on one day disagree, measure again",
    PromptKind.STALLED: "{movement}, {side}: levelled off",
    PromptKind.NO_GAIN: "{movement}, {side}: no clear gain in three months",
    PromptKind.HIGH_PAIN: "a lot of pain at rest or at night",
    PromptKind.MORE_PAIN: "more pain than before",
}


def _prompts(history: History, progress: Progress, tr: Translate) -> str:
    """Return what is worth a look, pain that was too much first."""
    much = too_much_pain(history, progress.today, tr)
    words = [much] if much else []
    words += [
        tr(PROMPT_SUBJECTS[prompt.kind]).format(
            movement=", ".join(short_name(movement, tr) for movement in prompt.movements),
            side=tr(prompt.side.value) if prompt.side else "",
        )
        for prompt in progress.prompts
    ]
    said = _joined(words) if words else tr("Thawline found none.")
    return said[0].upper() + said[1:]


def _joined(words: Sequence[str]) -> str:
    return "; ".join(words) + "."
