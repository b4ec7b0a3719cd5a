"""One sentence for the week: what can be said about the affected shoulder, in any language."""

from collections.abc import Mapping, Sequence

from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement
from measure.progress.overview import Progress
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
#: What a verdict says of movements, in the order in which it is said.
PARTS: Mapping[Verdict, str] = {
    Verdict.LOSING: "less movement than before in {movements}",
    Verdict.LIKELY_LOSING: "probably less movement than before in {movements}",
    Verdict.GAINING: "more movement than before in {movements}",
    Verdict.LIKELY_GAINING: "probably more movement than before in {movements}",
    Verdict.LEVEL: "steady in {movements}",
    Verdict.STALLED: "little or no change of late in {movements}",
    Verdict.NO_CLEAR_CHANGE: "no clear change in {movements}",
    Verdict.TOO_EARLY: "too early to say for {movements}",
    Verdict.NO_RECENT: "no recent readings of {movements}",
}
ALL_TOO_EARLY = "too early to say"
ALL_OLD = "no readings in the last three weeks, so nothing can be said of today"
SHOWS_IN_WEEKS = "with your rhythm a gain of {gain} a month shows in about {weeks} weeks"
SHOWS_IN_A_WEEK = "with your rhythm a gain of {gain} a month shows in about a week"
WHOLE = "{first}."
AND = "{first} and {second}"

#: All templates, for the extractor of texts to translate.
TEMPLATES = (
    NOTHING_YET,
    *SHOULDER.values(),
    *PARTS.values(),
    ALL_TOO_EARLY,
    ALL_OLD,
    SHOWS_IN_WEEKS,
    SHOWS_IN_A_WEEK,
    WHOLE,
    AND,
)


def week_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what can be said this week of the affected side or sides, from the main movements."""
    clauses = []
    for side in Side:
        main = [
            item for item in progress.usual if item.side is side and item.affected and item.primary
        ]
        if main:
            clauses.append(tr(SHOULDER[side]).format(parts=_parts(main, tr)))
    return " ".join(tr(WHOLE).format(first=clause) for clause in clauses) or tr(NOTHING_YET)


def _parts(main: Sequence[SideProgress], tr: Translate) -> str:
    """Return what is said of one shoulder, the losses first."""
    verdicts = {item.verdict for item in main}
    if verdicts == {Verdict.TOO_EARLY}:
        parts = [tr(ALL_TOO_EARLY)]
    elif verdicts == {Verdict.NO_RECENT}:
        parts = [tr(ALL_OLD)]
    else:
        parts = [
            tr(words).format(
                movements=joined([item.movement for item in main if item.verdict is verdict], tr)
            )
            for verdict, words in PARTS.items()
            if verdict in verdicts
        ]
    if verdicts <= {Verdict.TOO_EARLY, Verdict.NO_CLEAR_CHANGE}:
        parts.append(_when(main, tr))
    return "; ".join(filter(None, parts))


def joined(movements: Sequence[Movement], tr: Translate = english) -> str:
    """Return the names of movements in a sentence, "flexion, abduction and extension"."""
    names = [tr(MOVEMENTS[movement].name).lower() for movement in movements]
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
