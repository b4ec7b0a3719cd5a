"""One sentence for the week: what can be said about the affected shoulder, in any language.

Two further ones follow it where they are needed: what changed at the other shoulder, and when a
gain would show.
"""

import datetime as dt
from collections.abc import Mapping, Sequence

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.dates import date_words
from measure.progress.overview import Progress
from measure.progress.sentences import short_name
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from measure.progress.wording import Translate, english, signed

NOTHING_YET = (
    "Too early to say: none of the main movements of the affected shoulder has been measured yet."
)
SHOULDER: Mapping[Side, str] = {
    Side.LEFT: "Left shoulder: {parts}",
    Side.RIGHT: "Right shoulder: {parts}",
}
BOTH = "Both shoulders: {parts}"
#: What a verdict says of all main movements at once.
WHOLE_SHOULDER: Mapping[Verdict, str] = {
    Verdict.LOSING: "less movement than before",
    Verdict.LIKELY_LOSING: "probably less movement than before",
    Verdict.GAINING: "more movement than before",
    Verdict.LIKELY_GAINING: "probably more movement than before",
    Verdict.LEVEL: "steady",
    Verdict.STALLED: "little or no recent change",
    Verdict.NO_CLEAR_CHANGE: "no clear change",
    Verdict.TOO_EARLY: "too early to say",
    Verdict.NO_RECENT: "no readings in the last three weeks, so nothing can be said of today",
}
#: What a verdict says of some movements, in the order in which it is said.
PARTS: Mapping[Verdict, str] = {
    Verdict.LOSING: "less movement in {movements}",
    Verdict.LIKELY_LOSING: "probably less movement in {movements}",
    Verdict.GAINING: "more movement in {movements}",
    Verdict.LIKELY_GAINING: "probably more movement in {movements}",
    Verdict.LEVEL: "steady in {movements}",
    Verdict.STALLED: "little or no recent change in {movements}",
    Verdict.NO_CLEAR_CHANGE: "no clear change in {movements}",
    Verdict.TOO_EARLY: "too early to say for {movements}",
    Verdict.NO_RECENT: "no recent readings of {movements}",
}
SHOWS_IN_WEEKS = "a gain of {gain} a month would show in about {weeks} weeks"
SHOWS_IN_A_WEEK = "a gain of {gain} a month would show in about a week"
COUNTS_FROM = "counted from {day} on ({why})"
SINCE_BREAK = "Since {day} ({why}): {parts}"
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
    *SHOULDER.values(),
    BOTH,
    *WHOLE_SHOULDER.values(),
    *PARTS.values(),
    SHOWS_IN_WEEKS,
    SHOWS_IN_A_WEEK,
    COUNTS_FROM,
    SINCE_BREAK,
    WHOLE,
    AND,
)


def week_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what can be said this week of the affected side or sides, from the main movements.

    Movements are named only where they differ, and two shoulders only where they do; each has a
    line of its own.
    """
    shown = _main(progress, affected=True)
    since = _shared_break(progress)
    if since is not None:
        day, why = since
        parts = tr(WHOLE_SHOULDER[Verdict.NO_CLEAR_CHANGE])
        clauses = [tr(SINCE_BREAK).format(day=date_words(day, tr), why=tr(why), parts=parts)]
    elif len({frozenset(_kinds(items).items()) for items in shown.values()}) == 1 < len(shown):
        clauses = [tr(BOTH).format(parts=_parts(next(iter(shown.values())), tr))]
    else:
        clauses = [
            tr(SHOULDER[side]).format(parts=_parts(items, tr)) for side, items in shown.items()
        ]
    lines = [tr(WHOLE).format(first=clause) for clause in clauses]
    return "\n".join(lines) or tr(NOTHING_YET)


def other_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what changed in the main movements of the other side, or nothing."""
    lines = []
    for side, items in _main(progress, affected=False).items():
        changed = [item for item in items if item.verdict in _CHANGED]
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
    if _shared_break(progress) is not None:
        return ""
    breaks = {
        (item.series.breaks[-1].day, item.series.breaks[-1].why)
        for items in _main(progress, affected=True).values()
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


def _kinds(main: Sequence[SideProgress]) -> dict[Movement, Verdict]:
    return {item.movement: item.verdict for item in main}


def _parts(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is said of one shoulder, the losses first."""
    verdicts = set(_kinds(main).values())
    if len(verdicts) == 1:
        return tr(WHOLE_SHOULDER[main[0].verdict])
    return _of_some(main, tr)


def _shared_break(progress: Progress) -> tuple[dt.date, str] | None:
    """Return from when on, and why, no clear change is said of the one affected shoulder.

    Without it "no clear change" seems to deny a change since the first days.
    """
    sides = list(_main(progress, affected=True).values())
    if len(sides) != 1 or set(_kinds(sides[0]).values()) != {Verdict.NO_CLEAR_CHANGE}:
        return None
    breaks = {
        (item.series.breaks[-1].day, item.series.breaks[-1].why) if item.series.breaks else None
        for item in sides[0]
    }
    return breaks.pop() if len(breaks) == 1 else None


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
