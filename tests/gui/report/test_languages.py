"""The report in Spanish: nothing of it stays English, and numbers have a decimal comma."""

import re
from dataclasses import replace

import pytest

from gui.report.command import LANGUAGE_CODES
from gui.report.language import translate_into
from gui.text.language import LANGUAGES
from measure.demo.story import story_histories
from measure.domain.goal_records import Goal, GoalRating
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import EventKind, History
from measure.domain.session_facts import ClinicianMethod, ClinicianValue
from measure.report.choices import ReportChoices
from measure.report.page import report_html
from tests.support.record_samples import event, moment, some_id
from tests.support.report_text import Page

NOW = moment("2026-11-25T09:00:00+00:00", 60)
#: Words that no Spanish text has, and that any English one is bound to have.
_ENGLISH = frozenset(
    re.findall(
        r"\w+",
        "the of and to with since was were from for not are this side days weeks change left right "
        "between than readings measured pain stopped above below",
    )
)


def in_spanish(records: History) -> str:
    """Return the text of a report that tells all it can, with what people typed left out."""
    choices = ReportChoices(details=True, language="es", tr=translate_into("es"), question="¿Ya?")
    return Page(report_html(records, NOW.day, choices)).text


def whole_story() -> list[History]:
    """Return the garden's histories with a visit, a goal and a value measured by hand."""
    stories = []
    for records in story_histories(NOW):
        who = records.person
        visit = event(
            who, kind=EventKind.CLINIC_VISIT, day=records.sessions[-5].started.day, note=""
        )
        goal = Goal(id=some_id("goal"), person_id=who.id, words="cavar", first_day=visit.day)
        rating = GoalRating(
            id=some_id("rating"), person_id=who.id, goal_id=goal.id, day=visit.day, rating=4
        )
        by_hand = ClinicianValue(
            movement=Movement.FLEXION,
            side=Side.LEFT,
            method=ClinicianMethod.PASSIVE,
            value_deg=120.0,
        )
        last = replace(records.sessions[-1], clinician_values=(by_hand,), note="")
        stories.append(
            replace(
                records,
                sessions=(*records.sessions[:-1], last),
                events=(*(replace(item, note="") for item in records.events), visit),
                goals=(goal,),
                goal_ratings=(rating,),
                plans=tuple(replace(plan, chosen_by="") for plan in records.plans),
            )
        )
    return stories


@pytest.mark.parametrize("number", range(4))
def test_no_english_is_left(number: int) -> None:
    text = in_spanish(whole_story()[number])
    # The software behind demo readings is named in the records themselves.
    text = text.replace("up, for the demo", "")
    left = _ENGLISH & set(re.findall(r"[a-z]+", text.lower()))
    assert not left, [
        text[max(0, match.start() - 60) : match.end() + 60]
        for word in left
        for match in re.finditer(rf"\b{word}\b", text.lower())
    ][:5]


def test_numbers_have_a_decimal_comma() -> None:
    text = in_spanish(whole_story()[2])
    assert re.search(r"[+\u2212]\d+,\d niveles", text)
    assert not re.search(r"\d\.\d", text)


def test_it_says_which_language_it_is_in() -> None:
    choices = ReportChoices(language="es", tr=translate_into("es"))
    assert '<html lang="es">' in report_html(whole_story()[0], NOW.day, choices)


def test_every_language_of_the_window_can_be_chosen() -> None:
    assert set(LANGUAGE_CODES) == set(LANGUAGES)
