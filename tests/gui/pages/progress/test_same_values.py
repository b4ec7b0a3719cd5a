"""Window, report and JSON of the demo people say the same, number by number."""

from typing import Any

import pytest

from gui.app.window_pages import MainPage
from measure.demo.story import story_histories
from measure.domain.movements import Movement
from measure.domain.records import Event, EventKind, History
from measure.export.progress_json import progress_data
from measure.progress.clinician_prompts import MEASURE_AGAIN, WORTH_SHOWING
from measure.progress.comparison import Change
from measure.progress.overview import progress_of
from measure.progress.wording import change_words
from measure.report.choices import ReportChoices
from measure.report.page import report_html
from measure.system.clock import Timestamp, new_id
from tests.support.gui.stage import TODAY, StageClock, WindowHarness
from tests.support.report_text import Page

PEOPLE = ("demo-Marigold", "demo-Bramble", "demo-Thistle", "demo-Clover")


def now() -> Timestamp:
    return StageClock().now()


def with_a_visit(records: History) -> History:
    """Return a history with a clinic visit six weeks before its end, so that one is shown."""
    last = records.sessions[-1].started.day
    day = max(records.sessions[0].started.day, last.fromordinal(last.toordinal() - 42))
    visit = Event(id=new_id(), person_id=records.person.id, day=day, kind=EventKind.CLINIC_VISIT)
    return History(
        person=records.person,
        sessions=records.sessions,
        measurements=records.measurements,
        events=(*records.events, visit),
        plans=records.plans,
        exercises_done=records.exercises_done,
    )


def histories() -> dict[str, History]:
    return {records.person.pseudonym: with_a_visit(records) for records in story_histories(now())}


def window_texts(stage: WindowHarness, records: History) -> dict[Movement, str]:
    """Return what the progress page writes about each movement, the chart left aside."""
    stage.store.merge(records)
    stage.window.go(MainPage.PROGRESS)
    page = stage.window.progress
    page.show_person(records.person)
    stage.settle()
    texts = {}
    for movement in Movement:
        page.curves.movement.button(movement).click()
        stage.settle()
        curves = page.curves
        texts[movement] = "\n".join(
            label.text() for label in (curves.verdict, curves.notes, page.overview.clinician.words)
        )
    return texts


def said(movement: dict[str, Any]) -> list[str]:
    """Return the texts of a movement in the JSON, those of its numbers among them."""
    parts = [movement["slope"], movement["change"], movement["since_visit"], *movement["events"]]
    parts.append(movement["when_known"])
    return [movement["verdict_text"], *(part["text"] for part in parts if part)]


def numbers(movement: dict[str, Any]) -> list[str]:
    """Return the changes of a movement in the JSON as they are written everywhere."""
    parts = [movement["change"], movement["since_visit"]]
    if slope := movement["slope"]:
        parts.append(slope | {"value": slope["per_month"]})
    for event in movement["events"]:
        parts += [event[name] for name in ("change_since", "step", "slope_before", "slope_after")]
    which = Movement(movement["movement"])
    return [
        change_words(Change(value=part["value"], low=part["low"], high=part["high"]), which)
        for part in parts
        if part
    ]


@pytest.mark.parametrize("name", PEOPLE)
def test_window_report_and_json_agree(stage: WindowHarness, name: str) -> None:
    records = histories()[name]
    data = progress_data(records.person, progress_of(records, TODAY), "An estimate.")
    in_window = window_texts(stage, records)
    in_report = Page(report_html(records, TODAY, ReportChoices(details=True))).text
    for movement in data["movements"]:
        shown = in_window[Movement(movement["movement"])]
        of_side = [line for line in shown.split("\n") if line.startswith(movement["side"].title())]
        for text in said(movement):
            assert text in "\n".join(of_side)
        # What a verdict takes, and the event that it counts from, are said once in a report.
        whole = movement["verdict_text"].removesuffix(" (secondary)").partition("; it takes")[0]
        verdict, counted, since = whole.partition(", counted since ")
        assert verdict in in_report
        assert not counted or f"counted since {since}" in in_report or f"from {since}" in in_report
        for number in numbers(movement) if movement["affected"] else []:
            assert number in in_report
    for prompt in data["prompts"]:
        finding = prompt["text"]
        for closing in (WORTH_SHOWING, MEASURE_AGAIN):
            finding = finding.removesuffix(closing).strip()
        assert finding.casefold() in "\n".join(in_window.values()).casefold()
        assert prompt["text"] in in_report


@pytest.mark.parametrize("name", PEOPLE)
def test_the_texts_hold_the_numbers(name: str) -> None:
    """The numbers of the JSON, rounded as everywhere, stand in its texts."""
    records = histories()[name]
    data = progress_data(records.person, progress_of(records, TODAY), "An estimate.")
    for movement in data["movements"]:
        texts = "\n".join(said(movement))
        for number in numbers(movement):
            assert number in texts


def test_every_block_is_there_for_somebody() -> None:
    """Guards the tests above: events, visits and the time to come are really compared."""
    movements = [
        movement
        for records in histories().values()
        for movement in progress_data(records.person, progress_of(records, TODAY), "An estimate.")[
            "movements"
        ]
    ]
    for name in ("slope", "change", "since_visit", "events", "when_known"):
        assert any(movement[name] for movement in movements), name
