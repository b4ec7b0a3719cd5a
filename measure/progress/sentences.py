"""Sentences of a side's progress: the same in the window, at the terminal, in report and JSON.

Each function takes the function that translates its parts; without one it speaks English.
"""

import datetime as dt
from collections.abc import Mapping, Sequence

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.progress.before_after import BeforeAfter
from measure.progress.comparison import Change
from measure.progress.current_verdict import Turn
from measure.progress.dates import DATE, DAY, MONTHS, date_words
from measure.progress.detectable_gain import DetectableGain
from measure.progress.phases import SeriesPhase
from measure.progress.shoulder import SideProgress
from measure.progress.stall import STALL_BELOW_DEG
from measure.progress.weekly_verdicts import WINDOW_DAY, Verdict
from measure.progress.wording import VERDICT_WORDS, Translate, change_words, english, signed
from measure.trend.event_effect import EffectEstimate
from measure.trend.trend_line import Slope

#: What a shoulder did until it turned.
BEFORE_TURN: Mapping[Verdict, str] = {
    Verdict.GAINING: "increased",
    Verdict.LIKELY_GAINING: "increased",
    Verdict.LOSING: "decreased",
    Verdict.LIKELY_LOSING: "decreased",
    Verdict.LEVEL: "was level",
    Verdict.NO_CLEAR_CHANGE: "no clear change",
}
#: Verdicts that say since when they hold.
_DATED = (Verdict.GAINING, Verdict.LOSING, Verdict.LEVEL)
_CHANGING = (Verdict.GAINING, Verdict.LIKELY_GAINING, Verdict.LOSING, Verdict.LIKELY_LOSING)
#: Verdicts beside which a change that excludes 0 looks like a contradiction.
_UNPROVEN = (Verdict.TOO_EARLY, Verdict.NO_CLEAR_CHANGE)

EXTERNAL_ROTATION = "External rotation"
TURNED = "{before} until about {day} ({low} to {high}); since then: {now}"
LOST_SUDDENLY = "sudden loss of {amount} from {day} on; since then: {now}"
FIRST_TOLD = "{verdict}, shown since {day}"
#: What is said of a change that was certain once, but is not by the line of today.
NO_LONGER_CLEAR: Mapping[Verdict, str] = {
    Verdict.GAINING: "increase shown on {day}, by now no longer clear",
    Verdict.LOSING: "decrease shown on {day}, by now no longer clear",
}
LAPSED = (
    "no reading since {last}, so nothing can be said about today; "
    "the verdict on {day} was: {verdict}"
)
NEVER_SAID = "no reading since {last}, so nothing can be said about today"
COUNTED_ANEW = (
    "too early to say; it takes four weeks and eight sessions, counted again from {day} ({why})"
)
TOO_EARLY = "too early to say; it takes four weeks and eight sessions"
ALSO_SEEN = "{verdict} (secondary)"
ALSO_SEEN_MEANS = (
    "Secondary: not one of the main movements, so a verdict on it needs more evidence."
)
A_MONTH = "{change} a month"
CAUTIOUS = (
    "{change} a month, probably no more: in the first weeks of a verdict a change tends to look "
    "too large"
)
CHANGES = "Change: {changes}."
SINCE_FIRST = "{change} compared with the first weeks"
SINCE_VISIT = "{change} since the clinic visit on {day}"
UNPROVEN = "{words} (not yet proven)"
WHY_UNPROVEN = (
    "Not yet proven: the interval of this number does not include 0, but a verdict needs more "
    "evidence, because the readings are checked every week."
)
COUNTED_SINCE = "counted since {day}"
NO_CHANGE_SINCE = "{verdict}, counted since {day}"
NO_CHANGE_SINCE_BREAK = "{verdict}, counted since {day} ({why})"
EARLIER_GAIN = "gained earlier; lately less than {gain} a month"
STILL_HOLDS = "certain when first shown; too little evidence against it since then"
MORE_EVIDENCE = "not yet certain: a verdict needs more than 95 %"
OVER_ALL = "clear over the whole time, not in the last weeks"
EFFECT = (
    "Lines fitted before and after “{what}” on {day} (days with readings since: {days}): {change} "
    "from that day to the latest reading; at once {step}. Change per month before: {before}; "
    "after: {after}."
)
ASSUMED = "{words} (too few days: mostly what is usual)"
NOW_STANDS = (
    "The person now stands {how} compared with the first readings, which may change a reading by "
    "about {effect}. Go back to the old place, or add “camera changed” as an event."
)
NEARER = "{share} % nearer"
FARTHER = "{share} % farther away"
NOW_TURNED = "turned by {angle}°"
NOW_LEANING = "leaning by {angle}°"
OTHER_CAUSES = (
    "Whatever else happened at the same time cannot be separated from the effect of an event, "
    "and neither can chance."
)
SELDOM = "With about one session every {weeks} weeks, {sentence}"
ONCE_A_WEEK = "With about one session a week, {sentence}"
OFTEN = "With about {rhythm} sessions a week, {sentence}"
GAINS_SHOW = "a steady gain would become clear, with a chance of 80 %: {gains}."
NO_GAIN_SHOWS = "not even a steady gain of {gain} a month would show within half a year."
IN_WEEKS = "{gain} a month in about {weeks} weeks"
IN_A_WEEK = "{gain} a month in about a week"
BY_NOW = "{gain} a month by now"
NOT_SOON = "{gain} a month not within half a year"
OTHER_RHYTHM = "With {rhythm} a week, {gain} a month would become clear in about {weeks} weeks."
NO_ADVICE = (
    "This is not advice to measure more often: what you agreed with your clinician comes first."
)

#: All templates, for the extractor of texts to translate.
TEMPLATES = (
    *BEFORE_TURN.values(),
    EXTERNAL_ROTATION,
    TURNED,
    LOST_SUDDENLY,
    FIRST_TOLD,
    *NO_LONGER_CLEAR.values(),
    LAPSED,
    NEVER_SAID,
    COUNTED_ANEW,
    TOO_EARLY,
    ALSO_SEEN,
    ALSO_SEEN_MEANS,
    CHANGES,
    A_MONTH,
    CAUTIOUS,
    SINCE_FIRST,
    SINCE_VISIT,
    UNPROVEN,
    WHY_UNPROVEN,
    COUNTED_SINCE,
    NO_CHANGE_SINCE,
    NO_CHANGE_SINCE_BREAK,
    EARLIER_GAIN,
    STILL_HOLDS,
    MORE_EVIDENCE,
    OVER_ALL,
    EFFECT,
    ASSUMED,
    NOW_STANDS,
    NEARER,
    FARTHER,
    NOW_TURNED,
    NOW_LEANING,
    OTHER_CAUSES,
    SELDOM,
    ONCE_A_WEEK,
    OFTEN,
    GAINS_SHOW,
    NO_GAIN_SHOWS,
    IN_WEEKS,
    IN_A_WEEK,
    BY_NOW,
    NOT_SOON,
    OTHER_RHYTHM,
    NO_ADVICE,
    DATE,
    DAY,
    *MONTHS,
)

#: Names that a list can do with, where the usual one says the position too.
SHORT_NAMES = {Movement.EXTERNAL_ROTATION: EXTERNAL_ROTATION}


def short_name(movement: Movement, tr: Translate = english) -> str:
    """Return a movement's name without the position that only external rotation adds."""
    return tr(SHORT_NAMES.get(movement, MOVEMENTS[movement].name))


def verdict_words(side: SideProgress, tr: Translate = english) -> str:
    """Return the verdict of today with since when, the turn, or why there is none."""
    words = plain_verdict_words(side, tr)
    return tr(ALSO_SEEN).format(verdict=words) if also_seen(side) else words


def also_seen(side: SideProgress) -> bool:
    """Return whether there is a verdict on a movement that is not a primary one."""
    return not side.primary and side.verdict not in (Verdict.TOO_EARLY, Verdict.NO_RECENT)


def plain_verdict_words(side: SideProgress, tr: Translate = english) -> str:
    """Return the same without saying which movements are also seen."""
    now = tr(VERDICT_WORDS[side.verdict])
    if side.verdict is Verdict.NO_RECENT:
        return _lapsed_words(side, tr)
    if side.current.turn is not None:
        return _turned_words(side.current.turn, now, side.movement, tr)
    if side.verdict is Verdict.TOO_EARLY:
        if not side.series.breaks:
            return tr(TOO_EARLY)
        latest = side.series.breaks[-1]
        return tr(COUNTED_ANEW).format(day=date_words(latest.day, tr), why=tr(latest.why))
    since = told_since(side)
    if since is not None and no_longer_clear(side):
        return tr(NO_LONGER_CLEAR[side.verdict]).format(day=date_words(since, tr))
    if since is not None and side.verdict in _DATED:
        return tr(FIRST_TOLD).format(verdict=now, day=date_words(since, tr))
    if side.verdict is Verdict.NO_CLEAR_CHANGE:
        return _counted_words(side, now, tr)
    return now


def no_longer_clear(side: SideProgress) -> bool:
    """Return whether a change holds that was certain when first shown, but not by today's line."""
    slope = shown_change(side)
    if side.verdict not in NO_LONGER_CLEAR or side.current.turn is not None or slope is None:
        return False
    return told_since(side) is not None and slope.low <= 0 <= slope.high


def counted_from(side: SideProgress) -> dt.date:
    """Return the first day that the line of today's verdict can rest on."""
    first = side.series.date(0)
    if side.series.breaks:
        first = max(first, side.series.breaks[-1].day)
    if side.current.as_of is not None:
        first = max(first, side.current.as_of - dt.timedelta(days=WINDOW_DAY))
    return first


def _counted_words(side: SideProgress, verdict: str, tr: Translate) -> str:
    """Return a verdict with the time that it is about, and why that began."""
    first = counted_from(side)
    day = date_words(first, tr)
    if side.series.breaks and side.series.breaks[-1].day == first:
        why = tr(side.series.breaks[-1].why)
        return tr(NO_CHANGE_SINCE_BREAK).format(verdict=verdict, day=day, why=why)
    return tr(NO_CHANGE_SINCE).format(verdict=verdict, day=day)


def _lapsed_words(side: SideProgress, tr: Translate) -> str:
    """Return since when there is no reading, and what was said until then."""
    last, as_of = date_words(side.series.date(-1), tr), side.current.as_of
    lapsed = side.current.lapsed
    if as_of is None or lapsed in (None, Verdict.TOO_EARLY):
        return tr(NEVER_SAID).format(last=last)
    return tr(LAPSED).format(
        last=last, day=date_words(as_of, tr), verdict=tr(VERDICT_WORDS[lapsed])
    )


def _turned_words(turn: Turn, now: str, movement: Movement, tr: Translate) -> str:
    """Return what a side did until it turned, when that was, and what it does now."""
    if turn.sudden:
        amount = signed(abs(turn.by), MOVEMENTS[movement].unit).lstrip("+")
        return tr(LOST_SUDDENLY).format(amount=amount, day=date_words(turn.day, tr), now=now)
    return tr(TURNED).format(
        before=tr(BEFORE_TURN[turn.before]),
        day=date_words(turn.day, tr),
        low=date_words(turn.low, tr),
        high=date_words(turn.high, tr),
        now=now,
    )


def changes_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return the change a month, since the first weeks and since a visit, or nothing."""
    parts = (slope_sentence(side, tr), change_sentence(side, tr), visit_sentence(side, tr))
    changes = "; ".join(filter(None, parts))
    return tr(CHANGES).format(changes=changes) if changes else ""


def told_since(side: SideProgress) -> dt.date | None:
    """Return the day of the check that first told the verdict of today, or None.

    Where the other shoulder says otherwise than the trend alone, no check did.
    """
    return side.current.since if side.verdict is side.current.verdict else None


def slope_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return the change a month that is shown, or nothing where none is."""
    shown, change = side.current.shown, shown_change(side)
    if shown is None or change is None:
        return ""
    template = CAUTIOUS if shown.shrunk else A_MONTH
    words = tr(template).format(change=change_words(change, side.movement, tr))
    return tr(UNPROVEN).format(words=words) if unproven(side, change) else words


def shown_change(side: SideProgress) -> Change | None:
    """Return the change a month that is shown, with its interval, or None.

    None while it is too early, where readings are too old, and where the set-up may have moved.
    """
    shown = side.current.shown
    if shown is None or side.verdict is Verdict.NO_RECENT or side.drifted_by is not None:
        return None
    return Change(value=shown.per_month, low=shown.low, high=shown.high)


def change_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return the change since the first weeks, or nothing where there is none."""
    if side.change is None:
        return ""
    words = tr(SINCE_FIRST).format(change=change_words(side.change, side.movement, tr))
    return tr(UNPROVEN).format(words=words) if unproven(side, side.change) else words


def unproven(side: SideProgress, change: Change | None) -> bool:
    """Return whether a change excludes 0 by itself beside a verdict that says nothing of one."""
    if change is None or side.verdict not in _UNPROVEN:
        return False
    return change.low > 0 or change.high < 0


def doubt_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return why a change and a verdict that seem to contradict each other do not, or nothing.

    A change since the first weeks is of the whole time, a verdict of the last 16 weeks.
    """
    change = side.change
    if side.verdict is Verdict.STALLED and change is not None and change.low > 0:
        return tr(EARLIER_GAIN).format(gain=f"{STALL_BELOW_DEG:.0f}°")
    if side.verdict is Verdict.TOO_EARLY:
        return ""
    unclear = change is not None and change.low <= 0 <= change.high
    if unclear and side.verdict in _CHANGING and side.series.breaks:
        latest = side.series.breaks[-1]
        return tr(COUNTED_SINCE).format(day=date_words(latest.day, tr))
    slope = shown_change(side)
    if slope is not None and side.verdict in _CHANGING and slope.low <= 0 <= slope.high:
        return "" if no_longer_clear(side) else tr(STILL_HOLDS)
    if unproven(side, slope):
        return tr(MORE_EVIDENCE)
    if unproven(side, change):
        return tr(OVER_ALL)
    return ""


def visit_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return the change since the latest clinic visit, or nothing where there is none."""
    if side.since_visit is None:
        return ""
    return tr(SINCE_VISIT).format(
        change=change_words(side.since_visit.change, side.movement, tr),
        day=date_words(side.since_visit.day, tr),
    )


def effect_words(estimate: EffectEstimate, movement: Movement, tr: Translate = english) -> str:
    """Return an estimate of an event's effect with its interval."""
    change = Change(value=estimate.value, low=estimate.low, high=estimate.high)
    return change_words(change, movement, tr)


def effect_sentence(compared: BeforeAfter, movement: Movement, tr: Translate = english) -> str:
    """Return what is seen before and after an event, each number with its interval."""

    def words(estimate: EffectEstimate) -> str:
        number = effect_words(estimate, movement, tr)
        return tr(ASSUMED).format(words=number) if estimate.mostly_assumed else number

    effect = compared.effect
    return tr(EFFECT).format(
        what=tr(compared.event.what),
        day=date_words(compared.event.day, tr),
        days=effect.days_after,
        change=words(effect.change_since),
        step=words(effect.step),
        before=words(effect.slope_before),
        after=words(effect.slope_after),
    )


def setup_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return how the person stands otherwise than at first, or nothing where they do not."""
    change = side.setup_change
    if change is None:
        return ""
    parts = []
    if change.nearer:
        share = f"{100 * abs(change.nearer):.0f}"
        parts.append(tr(NEARER if change.nearer > 0 else FARTHER).format(share=share))
    if change.turned_deg:
        parts.append(tr(NOW_TURNED).format(angle=f"{change.turned_deg:.0f}"))
    if change.leaning_deg:
        parts.append(tr(NOW_LEANING).format(angle=f"{change.leaning_deg:.0f}"))
    effect = signed(change.effect, MOVEMENTS[side.movement].unit).lstrip("+")
    return tr(NOW_STANDS).format(how=", ".join(parts), effect=effect)


def when_known_sentence(side: SideProgress, tr: Translate = english) -> str:
    """Return in how many weeks gains would show, or nothing where that is not the question."""
    answer = side.time_to_know
    if answer is None:
        return ""
    unit = MOVEMENTS[side.movement].unit
    if all(gain.weeks is None for gain in answer.gains):
        largest = signed(answer.gains[-1].per_month, unit)
        sentence = tr(NO_GAIN_SHOWS).format(gain=largest)
    else:
        gains = "; ".join(_gain_words(gain, unit, tr) for gain in answer.gains)
        sentence = tr(GAINS_SHOW).format(gains=gains)
    sentence = _with_rhythm(answer.sessions_a_week, sentence, tr)
    if not answer.other_rhythms:
        return sentence
    oftener, weeks = answer.other_rhythms[-1]
    middle = signed(answer.gains[len(answer.gains) // 2].per_month, unit)
    other = tr(OTHER_RHYTHM).format(rhythm=oftener, gain=middle, weeks=weeks)
    return f"{sentence} {other}"


def _with_rhythm(sessions_a_week: float, sentence: str, tr: Translate) -> str:
    rhythm, weeks = round(sessions_a_week), round(1 / sessions_a_week)
    template = OFTEN if rhythm > 1 else SELDOM if weeks > 1 else ONCE_A_WEEK
    return tr(template).format(rhythm=rhythm, weeks=weeks, sentence=sentence)


def _gain_words(gain: DetectableGain, unit: Unit, tr: Translate) -> str:
    template = {None: NOT_SOON, 0: BY_NOW, 1: IN_A_WEEK}.get(gain.weeks, IN_WEEKS)
    return tr(template).format(gain=signed(gain.per_month, unit), weeks=gain.weeks)


def side_sentences(side: SideProgress, tr: Translate = english) -> list[str]:
    """Return what is to be said of a side after its verdict: changes, events, when gains show."""
    sentences = (
        changes_sentence(side, tr),
        *(effect_sentence(compared, side.movement, tr) for compared in side.events),
        setup_sentence(side, tr),
        when_known_sentence(side, tr),
    )
    return [sentence for sentence in sentences if sentence]


def shared_sentences(sides: Sequence[SideProgress], tr: Translate = english) -> list[str]:
    """Return what holds for all that is said of these sides: doubts about events and changes."""
    sentences = []
    if any(also_seen(side) for side in sides):
        sentences.append(tr(ALSO_SEEN_MEANS))
    if any(side.events for side in sides):
        sentences.append(tr(OTHER_CAUSES))
    if any(side.time_to_know and side.time_to_know.other_rhythms for side in sides):
        sentences.append(tr(NO_ADVICE))
    if any(
        unproven(side, change) for side in sides for change in (side.change, shown_change(side))
    ):
        sentences.append(tr(WHY_UNPROVEN))
    return sentences


def uncompared_slope(phase: SeriesPhase, side: SideProgress) -> Slope | None:
    """Return the slope of a phase, or None where an event at its end is compared anyway.

    The slope before that event stands with the event, drawn towards what is assumed.
    """
    compared = {item.event.first_day_after for item in side.events}
    return None if phase.ended in compared else phase.slope
