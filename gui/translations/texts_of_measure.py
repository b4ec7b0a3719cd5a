"""Texts of `measure` that the window shows, listed for the extractor of texts to translate.

`measure` does not import Qt: it holds English words, and the window translates them.
"""

from measure.domain.exercises import EXERCISE_FACTS
from measure.domain.landmarks import Side
from measure.domain.measurements import BASIS_SENTENCES
from measure.domain.movements import MOVEMENTS, View
from measure.domain.reasons import SENTENCES
from measure.domain.records import EVENT_WORDS, BodyPosition
from measure.domain.vertebral_levels import region_of
from measure.progress.clinician_prompts import MEASURE_AGAIN, PROMPT_WORDS, WORTH_SHOWING
from measure.progress.home_programme import (
    BOTH_SIDES,
    DONE_WORDS,
    HELD,
    REPETITIONS,
    TIMES_A_DAY,
    Irritability,
    assessment_dose,
)
from measure.progress.milestones import AT_LEVEL, TASKS
from measure.progress.sentences import TEMPLATES
from measure.progress.series import INSTRUMENT_CHANGED
from measure.progress.side_wording import SIDE_TEMPLATES
from measure.progress.week_sentence import TEMPLATES as WEEK_TEMPLATES
from measure.progress.wording import (
    DECIMALS,
    HELP_WORDS,
    IN_LEVELS,
    INTERVAL,
    VERDICT_WORDS,
    WITH_INTERVAL,
)
from measure.report.caveats import CAVEATS, DEMO, NOTICE
from measure.report.headline import PROMPT_SUBJECTS
from measure.report.own_words import METHOD_WORDS
from measure.report.wording import WORDS
from measure.storage.saved_files import DURATIONS, PURPOSES

#: One vertebral level of every region of the back.
_LEVELS = ("T1", "T7", "T10", "L1", "L4", "S1", "buttock", "thigh")
#: Levels that are words; the others are symbols and stay.
_WORDED_LEVELS = ("sacrum", "buttock", "thigh")


def texts_of_measure() -> tuple[str, ...]:
    """Return each text once, in the order of the tables."""
    texts = [
        *(facts.name for facts in MOVEMENTS.values()),
        *(facts.plain_name for facts in MOVEMENTS.values()),
        *(sentence for facts in MOVEMENTS.values() for sentence in (*facts.start, facts.move)),
        *SENTENCES.values(),
        *BASIS_SENTENCES.values(),
        *(view.value for view in View),
        *(region_of(level) for level in _LEVELS),
        *_WORDED_LEVELS,
        *(task.words for tasks in TASKS.values() for task in tasks),
        *(facts.name for facts in EXERCISE_FACTS.values()),
        *(facts.how for facts in EXERCISE_FACTS.values()),
        *REPETITIONS,
        *TIMES_A_DAY,
        HELD,
        BOTH_SIDES,
        *DONE_WORDS,
        *EVENT_WORDS.values(),
        INSTRUMENT_CHANGED,
        *VERDICT_WORDS.values(),
        WITH_INTERVAL,
        INTERVAL,
        IN_LEVELS,
        *PROMPT_WORDS.values(),
        WORTH_SHOWING,
        *TEMPLATES,
        *SIDE_TEMPLATES,
        *(side.value for side in Side),
        AT_LEVEL,
        *HELP_WORDS.values(),
        *(posture.value for posture in BodyPosition),
        NOTICE,
        DEMO,
        *CAVEATS,
        *WORDS,
        *METHOD_WORDS.values(),
        *PROMPT_SUBJECTS.values(),
        DECIMALS,
        *WEEK_TEMPLATES,
        MEASURE_AGAIN,
        *PURPOSES,
        *DURATIONS,
        *(assessment_dose(band).sentence for band in Irritability),
        assessment_dose(Irritability.HIGH, leaves_out=False).sentence,
    ]
    return tuple(dict.fromkeys(text for text in texts if text))
