"""Wording of progress: readings, changes, slopes and verdicts, in any language.

A function that forms a translatable sentence takes the function that translates its parts;
without one it speaks English.
"""

from collections.abc import Callable

from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.records import AssessmentCondition, Assistance
from measure.domain.vertebral_levels import centimetres_in, level_at, levels_in
from measure.progress.comparison import Block, Change
from measure.progress.weekly_verdicts import Verdict
from measure.trend.trend_line import Slope

MINUS = "\N{MINUS SIGN}"

#: Returns a text in the language of the reader.
Translate = Callable[[str], str]

#: Template of a number with decimals; other languages have another sign between.
DECIMALS = "{whole}.{decimals}"
#: Templates of a value with its interval, and of an interval.
WITH_INTERVAL = "{value} ({range})"
INTERVAL = "{low} to {high}"
#: Template of a change of the reach, its interval in cm.
IN_LEVELS = "about {levels} levels, {change} cm"

#: What somebody is saved as who measures at home and was never asked for a name.
UNASKED_NAME = "Me"

#: The verdicts in plain words.
VERDICT_WORDS: dict[Verdict, str] = {
    Verdict.TOO_EARLY: "too early to say",
    Verdict.NO_CLEAR_CHANGE: "no clear change",
    Verdict.LIKELY_GAINING: "probably increasing",
    Verdict.GAINING: "increasing",
    Verdict.LIKELY_LOSING: "probably decreasing",
    Verdict.LOSING: "decreasing",
    Verdict.LEVEL: "level",
    Verdict.STALLED: "levelled off",
    Verdict.NO_RECENT: "no recent readings",
}

HELP_WORDS: dict[Assistance, str] = {
    Assistance.NONE: "active",
    Assistance.OTHER_HAND: "helped by the other hand",
    Assistance.STICK: "helped by a stick",
    Assistance.PULLEY: "helped by a pulley",
    Assistance.HELPER: "helped by someone",
}


def english(text: str) -> str:
    """Return the text as it is: the translation of those who speak English."""
    return text


def name_words(pseudonym: str, tr: Translate = english) -> str:
    """Return what a person is called; who was never asked for a name, in the reader's language."""
    return tr(UNASKED_NAME) if pseudonym == UNASKED_NAME else pseudonym


def number_words(
    value: float, digits: int = 0, tr: Translate = english, *, sign: bool = False
) -> str:
    """Return a number for people to read, with the reader's decimal sign.

    Parameters
    ----------
    sign
        True to write a plus; what rounds to nothing has no sign.
    """
    shown = round(value, digits) or 0.0
    text = f"{abs(shown):.{digits}f}"
    if digits:
        whole, _, decimals = text.partition(".")
        text = tr(DECIMALS).format(whole=whole, decimals=decimals)
    if shown < 0:
        return MINUS + text
    return "+" + text if sign and shown else text


def with_decimal_sign(number: str, tr: Translate) -> str:
    """Return a number that was written in English with the reader's decimal sign."""
    return number.replace(".", tr(DECIMALS).format(whole="", decimals=""))


def signed(amount: float, unit: Unit, digits: int = 0, tr: Translate = english) -> str:
    """Return a change with its sign, in degrees or, of the reach, in cm on a usual back."""
    return signed_number(amount, unit, digits, tr) + (" cm" if unit is Unit.FRACTION else "°")


def signed_number(amount: float, unit: Unit, digits: int = 0, tr: Translate = english) -> str:
    """Return the number of :func:`signed` without its unit."""
    shown = centimetres_in(amount) if unit is Unit.FRACTION else amount
    return number_words(shown, digits, tr, sign=True)


def plain(value: float, movement: Movement, tr: Translate = english) -> str:
    """Return a reading in whole degrees, or the vertebral level nearest to it."""
    if MOVEMENTS[movement].unit is Unit.FRACTION:
        return tr(level_at(value))
    return number_words(value, 0, tr) + "°"


def with_interval(
    value: float, low: float, high: float, movement: Movement, tr: Translate = english
) -> str:
    """Return a reading with its interval, "92° (83 to 101)"; behind the back the band alone."""
    if MOVEMENTS[movement].unit is Unit.FRACTION:
        ends = [tr(level) for level in dict.fromkeys((level_at(low), level_at(high)))]
        return ends[0] if len(ends) == 1 else tr(INTERVAL).format(low=ends[0], high=ends[1])
    interval = tr(INTERVAL).format(low=number_words(low, 0, tr), high=number_words(high, 0, tr))
    return tr(WITH_INTERVAL).format(value=plain(value, movement, tr), range=interval)


def block_words(block: Block, movement: Movement, tr: Translate = english) -> str:
    return with_interval(block.value, block.low, block.high, movement, tr)


def change_words(change: Change, movement: Movement, tr: Translate = english) -> str:
    """Return a change with its interval, "+18° (+12 to +24)".

    Of the reach "about +2 levels, +5 (+3 to +8) cm".
    """
    unit = MOVEMENTS[movement].unit
    low, high = (signed_number(end, unit, 0, tr) for end in (change.low, change.high))
    interval = tr(INTERVAL).format(low=low, high=high)
    if unit is Unit.DEGREES:
        return tr(WITH_INTERVAL).format(value=signed(change.value, unit, 0, tr), range=interval)
    number = signed_number(change.value, unit, 0, tr)
    return tr(IN_LEVELS).format(
        levels=number_words(levels_in(change.value), 1, tr, sign=True),
        change=tr(WITH_INTERVAL).format(value=number, range=interval),
    )


def slope_words(slope: Slope, movement: Movement, tr: Translate = english) -> str:
    """Return the change a month with its 95 % interval."""
    low, high = slope.interval_per_month()
    return change_words(Change(value=slope.per_month, low=low, high=high), movement, tr)


def conduct_words(conduct: AssessmentCondition, tr: Translate = english) -> str:
    """Return how a movement was done, "helped by a stick, standing"."""
    return f"{tr(HELP_WORDS[conduct.help])}, {tr(conduct.posture.value)}"
