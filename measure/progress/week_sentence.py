"""One sentence for the week: what can be said about the affected shoulder, in any language."""

from collections.abc import Mapping, Sequence

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
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
WHOLE = "{first}."
AND = "{first} and {second}"

#: All templates, for the extractor of texts to translate.
TEMPLATES = (
    NOTHING_YET,
    *SHOULDER.values(),
    BOTH,
    *WHOLE_SHOULDER.values(),
    *PARTS.values(),
    SHOWS_IN_WEEKS,
    SHOWS_IN_A_WEEK,
    WHOLE,
    AND,
)


def week_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what can be said this week of the affected side or sides, from the main movements.

    Movements are named only where they differ, and two shoulders only where they do; each has a
    line of its own.
    """
    main = [item for item in progress.usual if item.affected and item.primary]
    sides = {side: [item for item in main if item.side is side] for side in Side}
    shown = {side: items for side, items in sides.items() if items}
    if len({frozenset(_kinds(items).items()) for items in shown.values()}) == 1 < len(shown):
        clauses = [tr(BOTH).format(parts=_parts(main, tr))]
    else:
        clauses = [
            tr(SHOULDER[side]).format(parts=_parts(items, tr)) for side, items in shown.items()
        ]
    lines = [tr(WHOLE).format(first=clause) for clause in clauses]
    return "\n".join(lines) or tr(NOTHING_YET)


def _kinds(main: Sequence[SideProgress]) -> dict[Movement, Verdict]:
    return {item.movement: item.verdict for item in main}


def _parts(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is said of one shoulder, the losses first."""
    kinds = _kinds(main)
    verdicts = set(kinds.values())
    if len(verdicts) == 1:
        parts = [tr(WHOLE_SHOULDER[verdict]) for verdict in verdicts]
    else:
        parts = [
            tr(words).format(
                movements=joined([item for item, its in kinds.items() if its is verdict], tr)
            )
            for verdict, words in PARTS.items()
            if verdict in verdicts
        ]
    if verdicts <= {Verdict.TOO_EARLY, Verdict.NO_CLEAR_CHANGE}:
        parts.append(_when(main, tr))
    return "; ".join(filter(None, parts))


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
