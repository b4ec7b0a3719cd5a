"""One sentence for the week: what can be said about the affected shoulder, in any language.

Two further ones follow it where they are needed: what changed at the other shoulder, and when a
gain would show.
"""

import datetime as dt
from collections.abc import Mapping, Sequence
from enum import StrEnum

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.dates import date_words, short_date_words
from measure.progress.overview import Progress
from measure.progress.sentences import no_longer_clear, short_name
from measure.progress.series import PRACTICE_SESSIONS, Break
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import LEAST_DAYS, LEAST_WEEKS, Verdict
from measure.progress.wording import Translate, english, signed

NOTHING_YET = (
    "Too early to say: none of the main movements ({movements}) has been measured on the affected "
    "shoulder yet."
)
NOT_STATED = (
    "Too early to say: none of the main movements ({movements}) has been measured yet, and which "
    "shoulder is affected has not been entered."
)
SHOULDER: Mapping[Side, str] = {
    Side.LEFT: "Left shoulder: {parts}",
    Side.RIGHT: "Right shoulder: {parts}",
}
#: The same where all that is said counts from the same day on.
SHOULDER_SINCE: Mapping[Side, str] = {
    Side.LEFT: "Left since {day} ({why}): {parts}",
    Side.RIGHT: "Right since {day} ({why}): {parts}",
}
#: Both in few words, for where there is little room and the reason stands beside it.
BRIEFLY: Mapping[Side, str] = {Side.LEFT: "Left: {parts}", Side.RIGHT: "Right: {parts}"}
BRIEFLY_SINCE: Mapping[Side, str] = {
    Side.LEFT: "Left since {day}: {parts}",
    Side.RIGHT: "Right since {day}: {parts}",
}
BOTH = "Both shoulders: {parts}"


class _Besides(StrEnum):
    """What is said of a movement in place of its verdict."""

    GAIN_NO_LONGER_CLEAR = "gain-no-longer-clear"
    LOSS_NO_LONGER_CLEAR = "loss-no-longer-clear"
    NOT_SINCE = "not-since"


_Kind = Verdict | _Besides
#: What a verdict says of all main movements at once.
WHOLE_SHOULDER: Mapping[_Kind, str] = {
    Verdict.LOSING: "less movement than before",
    Verdict.LIKELY_LOSING: "probably less movement than before",
    Verdict.GAINING: "more movement than before",
    Verdict.LIKELY_GAINING: "probably more movement than before",
    Verdict.LEVEL: "steady",
    Verdict.STALLED: "little or no recent change",
    Verdict.NO_CLEAR_CHANGE: "no clear change",
    Verdict.TOO_EARLY: "too early to say",
    Verdict.NO_RECENT: "no readings in the last three weeks, so nothing can be said of today",
    _Besides.GAIN_NO_LONGER_CLEAR: "more movement earlier, by now no longer clear",
    _Besides.LOSS_NO_LONGER_CLEAR: "less movement earlier, by now no longer clear",
    _Besides.NOT_SINCE: "no readings yet",
}
#: What a verdict says of some movements, in the order in which it is said.
PARTS: Mapping[_Kind, str] = {
    Verdict.LOSING: "less movement in {movements}",
    Verdict.LIKELY_LOSING: "probably less movement in {movements}",
    Verdict.GAINING: "more movement in {movements}",
    Verdict.LIKELY_GAINING: "probably more movement in {movements}",
    Verdict.LEVEL: "steady in {movements}",
    Verdict.STALLED: "little or no recent change in {movements}",
    Verdict.NO_CLEAR_CHANGE: "no clear change in {movements}",
    Verdict.TOO_EARLY: "too early to say for {movements}",
    Verdict.NO_RECENT: "no recent readings of {movements}",
    _Besides.GAIN_NO_LONGER_CLEAR: "more movement earlier in {movements}, by now no longer clear",
    _Besides.LOSS_NO_LONGER_CLEAR: "less movement earlier in {movements}, by now no longer clear",
    _Besides.NOT_SINCE: "no readings yet of {movements}",
}
SHOWS_IN_WEEKS = "a gain of {gain} a month would show in about {weeks} weeks"
SHOWS_IN_A_WEEK = "a gain of {gain} a month would show in about a week"
SO_FAR = (
    "So far {days} of the {least_days} sessions and {weeks} of the {least_weeks} weeks it takes."
)
PRACTICE_ONLY = "The first {count} sessions are for practice and do not count."
COUNTS_FROM = "counted from {day} on ({why})"
WHOLE = "{first}."
AND = "{first} and {second}"

#: Verdicts that leave the question open, and those that speak of a change.
_OPEN = frozenset({Verdict.TOO_EARLY, Verdict.NO_CLEAR_CHANGE})
_CHANGED = frozenset(
    {Verdict.LOSING, Verdict.LIKELY_LOSING, Verdict.GAINING, Verdict.LIKELY_GAINING}
)

#: All templates, for the extractor of texts to translate.
TEMPLATES = (
    NOTHING_YET,
    NOT_STATED,
    *SHOULDER.values(),
    *SHOULDER_SINCE.values(),
    *BRIEFLY.values(),
    *BRIEFLY_SINCE.values(),
    BOTH,
    *WHOLE_SHOULDER.values(),
    *PARTS.values(),
    SHOWS_IN_WEEKS,
    SHOWS_IN_A_WEEK,
    SO_FAR,
    PRACTICE_ONLY,
    COUNTS_FROM,
    WHOLE,
    AND,
)


def week_sentence(progress: Progress, tr: Translate = english, *, brief: bool = False) -> str:
    """Return what can be said this week of the affected side or sides, from the main movements.

    Movements are named only where they differ, and two shoulders only where they do; each has a
    line of its own.

    Parameters
    ----------
    brief
        Leave out that a shoulder is meant, and of a day from which on all counts the reason, and
        its year if that is this one.
    """
    shown = _main(progress, affected=True)
    alike = len({frozenset(_kinds(items).items()) for items in shown.values()}) == 1 < len(shown)
    if alike and not any(_shared_break(items) for items in shown.values()):
        clauses = [tr(BOTH).format(parts=_parts(next(iter(shown.values())), tr))]
    else:
        short_on = progress.today if brief else None
        clauses = [_shoulder(side, items, tr, short_on) for side, items in shown.items()]
    lines = [tr(WHOLE).format(first=clause) for clause in clauses]
    if lines:
        return "\n".join(lines)
    missing = NOTHING_YET if progress.affected else NOT_STATED
    return tr(missing).format(movements=joined(progress.primary, tr))


def _shoulder(
    side: Side, items: Sequence[SideProgress], tr: Translate, short_on: dt.date | None
) -> str:
    """Return what is said of one shoulder, with the day from which on all of it counts.

    Without that day a change, or none, seems to be one since the first days.
    """
    parts, since = _parts(items, tr), _shared_break(items)
    if since is None:
        return tr((SHOULDER if short_on is None else BRIEFLY)[side]).format(parts=parts)
    if short_on is not None:
        day = short_date_words(since.day, short_on, tr)
        return tr(BRIEFLY_SINCE[side]).format(day=day, parts=parts)
    words = tr(SHOULDER_SINCE[side])
    return words.format(day=date_words(since.day, tr), why=tr(since.why), parts=parts)


def so_far_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return how much of what a verdict takes there is, where it is too early for all; or nothing.

    That of the main movement of an affected side of which there is most.
    """
    main = [item for items in _main(progress, affected=True).values() for item in items]
    if not main or any(item.verdict is not Verdict.TOO_EARLY for item in main):
        return ""
    counted = max((item.series.latest_segment().counted().day for item in main), key=len)
    days = len({int(day) for day in counted})
    span = int(counted[-1] - counted[0]) + 1 if days else 0
    least = int(LEAST_WEEKS)
    words = tr(SO_FAR).format(
        days=min(days, LEAST_DAYS),
        least_days=LEAST_DAYS,
        weeks=min(span // 7, least),
        least_weeks=least,
    )
    if days:
        return words
    return f"{words} {tr(PRACTICE_ONLY).format(count=PRACTICE_SESSIONS)}"


def other_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what changed in the main movements of the other side, or nothing."""
    lines = []
    for side, items in _main(progress, affected=False).items():
        changed = [item for item in items if _kind(item) in _CHANGED]
        if changed:
            parts = _of_some(changed, tr) if len(changed) < len(items) else _parts(changed, tr)
            lines.append(tr(WHOLE).format(first=tr(SHOULDER[side]).format(parts=parts)))
    return " ".join(lines)


def forecast_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return when a gain would show where the affected sides' verdicts are open, or nothing."""
    sides = _main(progress, affected=True).values()
    still_open = [items for items in sides if set(_kinds(items).values()) <= _OPEN]
    words = _when([item for items in still_open for item in items], tr)
    return tr(WHOLE).format(first=words[0].upper() + words[1:]) if words else ""


def counted_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return from when on an open verdict of the affected sides counts, or nothing.

    Where the sentence of the week says it, it is not said again.
    """
    breaks = {
        (item.series.breaks[-1].day, item.series.breaks[-1].why)
        for items in _main(progress, affected=True).values()
        if _shared_break(items) is None
        for item in items
        if item.verdict in _OPEN and item.series.breaks
    }
    if not breaks:
        return ""
    day, why = max(breaks)
    words = tr(COUNTS_FROM).format(day=date_words(day, tr), why=tr(why))
    return tr(WHOLE).format(first=words[0].upper() + words[1:])


def _main(progress: Progress, *, affected: bool) -> dict[Side, list[SideProgress]]:
    """Return the main movements of the affected sides, or of the others, by side."""
    main = [item for item in progress.usual if item.primary and item.affected is affected]
    sides = {side: [item for item in main if item.side is side] for side in Side}
    return {side: items for side, items in sides.items() if items}


def _kinds(main: Sequence[SideProgress]) -> dict[Movement, _Kind]:
    """Return what is said of each movement of one shoulder."""
    since = _shared_break(main)
    return {
        item.movement: _Besides.NOT_SINCE
        if since is not None and item.series.date(-1) < since.day
        else _kind(item)
        for item in main
    }


def _kind(item: SideProgress) -> _Kind:
    if not no_longer_clear(item):
        return item.verdict
    gained = item.verdict is Verdict.GAINING
    return _Besides.GAIN_NO_LONGER_CLEAR if gained else _Besides.LOSS_NO_LONGER_CLEAR


def _parts(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is said of one shoulder, the losses first."""
    kinds = set(_kinds(main).values())
    if len(kinds) == 1:
        return tr(WHOLE_SHOULDER[kinds.pop()])
    return _of_some(main, tr)


def _shared_break(main: Sequence[SideProgress]) -> Break | None:
    """Return the break from which on everything counts that is said of one shoulder, or None.

    A movement that was not measured since counts with it: what is known of it is older.
    """
    breaks = [item.series.breaks[-1] for item in main if item.series.breaks]
    latest = max(breaks, key=lambda item: item.day, default=None)
    if latest is None:
        return None
    shared = all(
        item.series.date(-1) < latest.day
        or (item.series.breaks and item.series.breaks[-1].day == latest.day)
        for item in main
    )
    return latest if shared else None


def _of_some(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is said of some movements, each named, the losses first."""
    kinds = _kinds(main)
    return "; ".join(
        tr(words).format(
            movements=joined([item for item, its in kinds.items() if its is verdict], tr)
        )
        for verdict, words in PARTS.items()
        if verdict in kinds.values()
    )


def joined(movements: Sequence[Movement], tr: Translate = english) -> str:
    """Return the names of movements in a sentence, "flexion, abduction and extension"."""
    names = [short_name(movement, tr).lower() for movement in movements]
    if len(names) < 2:
        return "".join(names)
    return tr(AND).format(first=", ".join(names[:-1]), second=names[-1])


def _when(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return in how many weeks the middle gain would show where it does soonest, or nothing."""
    soonest = None
    for item in main:
        if item.time_to_know is None:
            continue
        gains = item.time_to_know.gains
        gain = gains[len(gains) // 2]
        if gain.weeks is not None and (soonest is None or gain.weeks < soonest[0]):
            soonest = gain.weeks, signed(gain.per_month, MOVEMENTS[item.movement].unit).lstrip("+")
    if soonest is None or soonest[0] == 0:
        return ""
    template = SHOWS_IN_A_WEEK if soonest[0] == 1 else SHOWS_IN_WEEKS
    return tr(template).format(gain=soonest[1], weeks=soonest[0])
