"""Sentences on the affected side beside the other one, in any language; facts, no diagnosis."""

import datetime as dt
from collections.abc import Mapping, Sequence

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import LimitingFactor
from measure.domain.vertebral_levels import centimetres_in, levels_in
from measure.progress.comparison import Change
from measure.progress.dates import MONTHS
from measure.progress.movement_ends import MonthEnds
from measure.progress.overview import Progress
from measure.progress.side_deficit import Deficit, MonthDeficit, Pattern, Share
from measure.progress.wording import Translate, english, number_words

LESS, MORE = "{amount} less than the other side", "{amount} more than the other side"
UNCLEAR = "{words}, which may be chance"
#: An amount with its interval, in degrees, and of the reach in levels and cm.
DEGREES = "{value}° ({low} to {high})"
LEVELS = "{levels} levels, {value} ({low} to {high}) cm"
SHARE = "{value} % ({low} to {high})"
OF_RANGE, OF_HEIGHT = "{share} of its range", "{share} of its height above the hips"
JOINED = "{first}; {second}"
OF_SIDE = "{movement}, {side}: {words}."
OVER_TIME = "{movement}, compared with the other side, by month: {months}."
IN_MONTH = "{month} {year} {share}"
PATTERN = "Range compared with the other side, 95 % interval in brackets: {shares}."
OF_MOVEMENT = "{movement} {share}"
SMALLEST = "It is lowest for {movement}."
SIDES_CAUTION = (
    "Each range in brackets combines those of both sides' readings. These are facts about "
    "movement, not a diagnosis."
)
#: Degrees by which the dominant arm turns outwards further in healthy shoulders, on average.
#: [source: Conte 2009, 50 women of 20 to 29 years, passive: 4.7, 95 % interval 1.6 to 7.9]
DOMINANT_ROTATION_DEG = 5
DOMINANT_IS = "The {side} hand is the dominant one. In healthy shoulders, {facts}."
DOMINANT_ROTATES = "the dominant arm turns outwards about {degrees}° further on average"
#: [source: Barnes 2001, 280 people: the dominant side has less internal rotation and extension]
DOMINANT_REACHES = "the dominant hand often reaches a little less far up the back"
ENDS = "What stopped the movements, as reported: {months}."
ENDS_IN_MONTH = "{month} {year} {times}"
END_TIMES = "{what} {count} of {total}"
END_WORDS: Mapping[LimitingFactor, str] = {
    LimitingFactor.PAIN: "pain",
    LimitingFactor.STIFFNESS: "stiffness",
    LimitingFactor.WEAKNESS: "weakness",
    LimitingFactor.OTHER: "something else",
}

#: All templates, for the extractor of texts to translate.
SIDE_TEMPLATES = (
    LESS,
    MORE,
    UNCLEAR,
    DEGREES,
    LEVELS,
    SHARE,
    OF_RANGE,
    OF_HEIGHT,
    JOINED,
    OF_SIDE,
    OVER_TIME,
    IN_MONTH,
    PATTERN,
    OF_MOVEMENT,
    SMALLEST,
    SIDES_CAUTION,
    DOMINANT_IS,
    DOMINANT_ROTATES,
    DOMINANT_REACHES,
    ENDS,
    ENDS_IN_MONTH,
    END_TIMES,
    *END_WORDS.values(),
)


def side_by_side_sentences(progress: Progress, tr: Translate = english) -> list[str]:
    """Return all that is to be said of the affected side beside the other one, and of its ends."""
    with_deficit = [(side, side.deficit) for side in progress.usual if side.deficit]
    sentences = []
    for side, deficit in with_deficit:
        words = deficit_sentence(deficit.now, side.movement, tr)
        name, side_name = tr(MOVEMENTS[side.movement].name), tr(side.side.value)
        sentences.append(tr(OF_SIDE).format(movement=name, side=side_name, words=words))
        sentences.append(months_sentence(deficit.months, side.movement, tr))
    if progress.pattern is not None:
        sentences.append(pattern_sentence(progress.pattern, tr))
    sentences.append(dominance_sentence(progress, tr))
    if with_deficit:
        sentences.append(tr(SIDES_CAUTION))
    sentences.append(ends_sentence(progress.ends, tr))
    return [sentence for sentence in sentences if sentence]


#: What the dominant arm does otherwise in healthy shoulders, by movement; empty for nothing.
_DOMINANT = {
    Movement.FLEXION: "",
    Movement.EXTENSION: "",
    Movement.ABDUCTION: "",
    Movement.EXTERNAL_ROTATION: DOMINANT_ROTATES,
    Movement.HAND_BEHIND_BACK: DOMINANT_REACHES,
}


def dominance_sentence(progress: Progress, tr: Translate = english) -> str:
    """Return what the dominant hand alone may explain of a difference between the sides.

    Nothing where it is not known, or neither external rotation nor the reach behind the back is
    compared: raising the arm has no such difference.
    """
    compared = {side.movement for side in progress.usual if side.deficit}
    facts = [
        tr(words).format(degrees=DOMINANT_ROTATION_DEG)
        for movement, words in _DOMINANT.items()
        if words and movement in compared
    ]
    if progress.dominant is None or not facts:
        return ""
    joined = facts[0] if len(facts) == 1 else tr(JOINED).format(first=facts[0], second=facts[1])
    return tr(DOMINANT_IS).format(side=tr(progress.dominant.value), facts=joined)


def deficit_sentence(deficit: Deficit, movement: Movement, tr: Translate = english) -> str:
    """Return what a side lacks of the other one, in the movement's unit and per cent."""
    words = difference_words(deficit.shown(movement), movement, tr)
    if deficit.difference.low < 0 < deficit.difference.high:
        words = tr(UNCLEAR).format(words=words)
    if deficit.share is None:
        return words
    template = OF_HEIGHT if MOVEMENTS[movement].unit is Unit.FRACTION else OF_RANGE
    share = tr(template).format(share=share_words(deficit.share, tr))
    return tr(JOINED).format(first=words, second=share)


def difference_words(difference: Change, movement: Movement, tr: Translate = english) -> str:
    """Return a difference to the other side: "18° (7 to 29) less than the other side"."""
    less = difference.value >= 0
    ends = (difference.low, difference.high) if less else (-difference.high, -difference.low)
    amount = _amount(abs(difference.value), ends, movement, tr)
    return tr(LESS if less else MORE).format(amount=amount)


def amount_words(difference: Change, movement: Movement, tr: Translate = english) -> str:
    """Return other side minus this one: "18° (7 to 29)"."""
    return _amount(difference.value, (difference.low, difference.high), movement, tr)


def _amount(value: float, ends: tuple[float, float], movement: Movement, tr: Translate) -> str:
    if MOVEMENTS[movement].unit is Unit.DEGREES:
        value_words, low, high = (number_words(part, 0, tr) for part in (value, *ends))
        return tr(DEGREES).format(value=value_words, low=low, high=high)
    value_words, low, high = (number_words(centimetres_in(part), 0, tr) for part in (value, *ends))
    levels = number_words(levels_in(value), 1, tr)
    return tr(LEVELS).format(levels=levels, value=value_words, low=low, high=high)


def share_words(share: Share, tr: Translate = english) -> str:
    """Return a share of the other side: "74 % (62 to 88)"."""
    percent, low, high = (
        number_words(part, 0, tr) for part in (share.percent, share.low, share.high)
    )
    return tr(SHARE).format(value=percent, low=low, high=high)


def months_sentence(
    months: Sequence[MonthDeficit], movement: Movement, tr: Translate = english
) -> str:
    """Return the share of the other side in every month, or nothing for fewer than two."""
    shares = [
        tr(IN_MONTH).format(share=share_words(item.deficit.share, tr), **_month(item.month, tr))
        for item in months
        if item.deficit.share is not None
    ]
    if len(shares) < 2:
        return ""
    name = tr(MOVEMENTS[movement].name)
    return tr(OVER_TIME).format(movement=name, months="; ".join(shares))


def pattern_sentence(pattern: Pattern, tr: Translate = english) -> str:
    """Return the shares over movements, the smallest first, and which stands out if one does."""
    shares = "; ".join(
        tr(OF_MOVEMENT).format(movement=tr(MOVEMENTS[movement].name), share=share_words(share, tr))
        for movement, share in pattern.shares
    )
    words = tr(PATTERN).format(shares=shares)
    if pattern.smallest is None:
        return words
    name = tr(MOVEMENTS[pattern.smallest].name)
    return f"{words} {tr(SMALLEST).format(movement=name)}"


def ends_sentence(months: Sequence[MonthEnds], tr: Translate = english) -> str:
    """Return what ended movements in every month, or nothing where it was never said."""
    if not months:
        return ""
    words = "; ".join(
        tr(ENDS_IN_MONTH).format(times=end_times_words(item, tr), **_month(item.month, tr))
        for item in months
    )
    return tr(ENDS).format(months=words)


def end_times_words(month: MonthEnds, tr: Translate = english) -> str:
    """Return what ended the movements of a month: "pain 2 of 38, stiffness 36 of 38"."""
    return ", ".join(
        tr(END_TIMES).format(what=tr(END_WORDS[kind]), count=count, total=month.total)
        for kind, count in month.times.items()
    )


def _month(month: dt.date, tr: Translate) -> dict[str, object]:
    return {"month": tr(MONTHS[month.month - 1]), "year": month.year}
