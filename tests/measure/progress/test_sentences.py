"""Sentences of a side's progress: what stands where, and what never stands there."""

import datetime as dt
from dataclasses import replace

import numpy as np
import pytest

from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind
from measure.progress.comparison import Change
from measure.progress.current_verdict import ShownSlope, Turn
from measure.progress.dates import MONTHS, date_words
from measure.progress.detectable_gain import DetectableGain, TimeToKnow
from measure.progress.overview import progress_of
from measure.progress.sentences import (
    NO_ADVICE,
    OTHER_CAUSES,
    TEMPLATES,
    WHY_UNPROVEN,
    change_sentence,
    changes_sentence,
    shared_sentences,
    side_sentences,
    slope_sentence,
    uncompared_slope,
    unproven,
    verdict_words,
    visit_sentence,
    when_known_sentence,
)
from measure.progress.shoulder import SideProgress
from measure.progress.weekly_verdicts import Verdict
from tests.support.progress_histories import day, history
from tests.support.record_samples import event, person, some_id

LEFT = (Movement.FLEXION, Side.LEFT)
NOISE = np.random.default_rng(4).normal(0, 2, 200)
RISING = {LEFT: [(number, 90 + number / 4 + NOISE[number]) for number in range(0, 100, 2)]}


def side(today: int = 100, **more: object) -> SideProgress:
    found = progress_of(history(RISING, **more), day(today)).of(*LEFT)  # type: ignore[arg-type]
    assert found is not None
    return found


def said(verdict: Verdict, **current: object) -> SideProgress:
    """Return a side of which this is said, whatever its days show."""
    base = side()
    changed = replace(base.current, verdict=verdict, **current)  # type: ignore[arg-type]
    return replace(base, verdict=verdict, current=changed)


def turn(before: Verdict = Verdict.GAINING, **more: object) -> Turn:
    values: dict[str, object] = {
        "day": dt.date(2026, 10, 4),
        "low": dt.date(2026, 9, 28),
        "high": dt.date(2026, 10, 9),
        "before": before,
        "shown_on": dt.date(2026, 10, 26),
    }
    return Turn(**(values | more))  # type: ignore[arg-type]


def test_a_verdict_says_since_when() -> None:
    gaining = side()
    assert gaining.verdict is Verdict.GAINING
    assert gaining.current.since is not None
    words = f"increasing, shown since {date_words(gaining.current.since)}"
    assert verdict_words(gaining) == words
    assert changes_sentence(gaining).startswith("Change: +")


@pytest.mark.parametrize(
    ("before", "now", "words"),
    [
        (Verdict.GAINING, Verdict.LEVEL, "increased until about {days}; since then: level"),
        (Verdict.GAINING, Verdict.LOSING, "increased until about {days}; since then: decreasing"),
        (Verdict.LOSING, Verdict.GAINING, "decreased until about {days}; since then: increasing"),
        (
            Verdict.NO_CLEAR_CHANGE,
            Verdict.LIKELY_LOSING,
            "no clear change until about {days}; since then: probably decreasing",
        ),
    ],
)
def test_a_turn_is_said_with_its_day_and_interval(
    before: Verdict, now: Verdict, words: str
) -> None:
    days = "4 Oct 2026 (28 Sep 2026 to 9 Oct 2026)"
    assert verdict_words(said(now, turn=turn(before))) == words.format(days=days)


@pytest.mark.parametrize(
    ("verdict", "words"),
    [(Verdict.TOO_EARLY, "too early to say"), (Verdict.NO_CLEAR_CHANGE, "no clear change")],
)
def test_a_sudden_loss_is_said_with_its_size(verdict: Verdict, words: str) -> None:
    lost = said(verdict, turn=turn(sudden=True, by=-19.6))
    expected = f"sudden loss of 20° from 4 Oct 2026 on; since then: {words}"
    assert verdict_words(lost) == expected


def test_an_old_verdict_stands_with_its_day_and_no_slope() -> None:
    old = side(today=200)
    assert old.verdict is Verdict.NO_RECENT
    words = verdict_words(old)
    assert words.startswith(
        f"no reading since {date_words(day(98))}, so nothing can be said about today"
    )
    assert words.endswith(": increasing")
    assert slope_sentence(old) == ""
    assert old.current.shown is not None


def test_readings_that_stopped_too_early_have_no_old_verdict() -> None:
    early = progress_of(history({LEFT: RISING[LEFT][:1]}), day(200)).of(*LEFT)
    assert early is not None
    since = date_words(day(0))
    assert verdict_words(early) == f"no reading since {since}, so nothing can be said about today"


def test_too_early_says_what_it_takes_and_from_when() -> None:
    assert verdict_words(side(today=10)) == (
        "too early to say; it takes four weeks and eight sessions"
    )
    injected = event(person(), kind=EventKind.INJECTION, day=day(89), side=Side.LEFT)
    words = verdict_words(side(events=[injected]))
    assert words.endswith(f"counted again from {date_words(day(90))} (injection)")


def test_a_movement_also_seen_says_so_beside_its_verdict_only() -> None:
    assert verdict_words(replace(side(), primary=False)).endswith("(secondary)")
    assert "secondary" not in verdict_words(replace(side(today=10), primary=False))


def test_a_first_slope_is_called_too_large() -> None:
    shown = ShownSlope(per_month=5.0, low=2.0, high=8.0, shrunk=True)
    assert slope_sentence(said(Verdict.GAINING, shown=shown)) == (
        "+5° (+2 to +8) a month, probably no more: in the first weeks of a verdict "
        "a change tends to look too large"
    )
    shown = replace(shown, shrunk=False)
    assert slope_sentence(said(Verdict.GAINING, shown=shown)) == "+5° (+2 to +8) a month"
    assert slope_sentence(said(Verdict.TOO_EARLY, shown=None)) == ""


@pytest.mark.parametrize(
    ("verdict", "low", "high", "expected"),
    [
        (Verdict.NO_CLEAR_CHANGE, 1.0, 9.0, True),
        (Verdict.TOO_EARLY, -9.0, -1.0, True),
        (Verdict.NO_CLEAR_CHANGE, -1.0, 9.0, False),
        (Verdict.GAINING, 1.0, 9.0, False),
        (Verdict.STALLED, 1.0, 9.0, False),
    ],
)
def test_what_looks_like_a_contradiction_is_called_unproven(
    verdict: Verdict, low: float, high: float, expected: bool
) -> None:
    change = Change(value=(low + high) / 2, low=low, high=high)
    shown = replace(said(verdict), change=change)
    assert unproven(shown, change) is expected
    assert change_sentence(shown).endswith("(not yet proven)") is expected
    without_slope = replace(shown, current=replace(shown.current, shown=None))
    assert (WHY_UNPROVEN in shared_sentences([without_slope])) is expected


def test_the_change_since_a_visit() -> None:
    visit = event(person(), kind=EventKind.CLINIC_VISIT, day=day(60), side=None)
    since = side(events=[visit])
    assert since.since_visit is not None
    words = visit_sentence(since)
    assert words.endswith(f"since the clinic visit on {date_words(day(60))}")
    assert words in changes_sentence(since)
    assert visit_sentence(side()) == ""


def test_an_event_stands_with_its_four_numbers_and_the_doubt() -> None:
    injected = event(person(), kind=EventKind.INJECTION, day=day(61), side=Side.LEFT)
    hurt = side(events=[injected])
    (sentence,) = [words for words in side_sentences(hurt) if "injection" in words]
    assert sentence.startswith(
        f"Lines fitted before and after “injection” on {date_words(day(61))} (days with readings "
    )
    assert "from that day to the latest reading" in sentence
    assert sentence.count("°") == 4
    assert OTHER_CAUSES in shared_sentences([hurt])
    assert OTHER_CAUSES not in shared_sentences([side()])
    # The slope before it is not said a second time.
    (phase,) = hurt.earlier
    assert phase.slope is not None
    assert uncompared_slope(phase, hurt) is None
    assert uncompared_slope(phase, replace(hurt, events=())) is phase.slope


def test_the_first_session_after_an_event_is_mostly_assumed() -> None:
    injected = event(person(), kind=EventKind.INJECTION, day=day(97), side=Side.LEFT)
    (compared,) = side(events=[injected]).events
    assert compared.effect.days_after == 1
    (_, sentence, *_) = side_sentences(side(events=[injected]))
    assert "(days with readings since: 1)" in sentence
    assert sentence.endswith(" (too few days: mostly what is usual).")


def when(*weeks: int | None, rhythm: float = 2.2, others: object = ()) -> SideProgress:
    gains = zip((2.0, 5.0, 10.0), weeks, strict=True)
    return replace(
        side(),
        time_to_know=TimeToKnow(
            sessions_a_week=rhythm,
            gains=tuple(DetectableGain(per_month=gain, weeks=number) for gain, number in gains),
            other_rhythms=others,  # type: ignore[arg-type]
        ),
    )


def test_when_a_gain_could_be_known() -> None:
    assert when_known_sentence(when(None, 9, 0)) == (
        "With about 2 sessions a week, a steady gain would become clear, with a chance of 80 %: "
        "+2° a month not within half a year; +5° a month in about 9 weeks; +10° a month by now."
    )
    assert when_known_sentence(when(None, None, None, rhythm=1.1)) == (
        "With about one session a week, not even a steady gain of +10° a month would show within "
        "half a year."
    )
    assert when_known_sentence(when(None, None, 20, rhythm=0.4)).startswith(
        "With about one session every 2 weeks, a steady gain would become clear"
    )
    assert "+10° a month in about a week." in when_known_sentence(when(None, 9, 1))
    assert when_known_sentence(replace(side(), time_to_know=None)) == ""


def test_another_rhythm_is_no_advice() -> None:
    shorter = when(None, 12, 7, rhythm=1.0, others=((2, 9), (3, 8)))
    assert when_known_sentence(shorter).endswith(
        "With 3 a week, +5° a month would become clear in about 8 weeks."
    )
    assert NO_ADVICE in shared_sentences([shorter])
    assert NO_ADVICE not in shared_sentences([when(None, 12, 7)])


def test_every_part_is_translated() -> None:
    """A translator that marks what it was given leaves no English behind."""

    def marked(text: str) -> str:
        assert text in TEMPLATES or text in VOCABULARY, text
        return text

    injected = event(person(), kind=EventKind.INJECTION, day=day(61), side=Side.LEFT)
    visit = event(
        person(), id=some_id("visit"), kind=EventKind.CLINIC_VISIT, day=day(80), side=None
    )
    for shown in (side(events=[injected, visit]), when(None, 9, 1), side(today=200)):
        verdict_words(shown, marked)
        side_sentences(shown, marked)
        shared_sentences([shown], marked)


VOCABULARY = {
    "increasing",
    "no recent readings",
    "probably increasing",
    "too early to say",
    "no clear change",
    "injection",
    "{value} ({range})",
    "{low} to {high}",
}


def test_days_are_written_in_words() -> None:
    assert date_words(dt.date(2026, 10, 4)) == "4 Oct 2026"
    spanish = {"Oct": "oct", "{day} {month} {year}": "{day} de {month} de {year}"}
    assert date_words(dt.date(2026, 10, 4), spanish.__getitem__) == "4 de oct de 2026"
    assert len(MONTHS) == 12
