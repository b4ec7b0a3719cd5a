"""One session in full: its readings, each trial with the seconds held, refusals, conditions."""

import datetime as dt
import re
from dataclasses import replace

import pytest
from PySide6.QtCore import QCoreApplication, QModelIndex
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication, QLabel, QStyle, QStyleOptionViewItem

from gui.app.application import configure_application
from gui.pages.clips.clip_saving import noon_of
from gui.pages.progress.session_details import (
    SessionDetails,
    before_words,
    day_words,
    list_words,
)
from gui.pages.progress.session_readings import SessionReadings, trial_title
from gui.session.settings import TEXT_SCALES
from gui.style.appearance import Appearance
from gui.style.palette import Scheme
from gui.widgets.buttons import ShortcutButton
from gui.widgets.figures.reading_figure import ReadingFigure
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import SENTENCES, Reason
from measure.domain.records import History, Pain
from measure.domain.session_facts import ExerciseTiming, SessionState
from tests.support import record_samples as sample
from tests.support.fitting import misfits
from tests.support.gui.screenshots import LANGUAGES, language_in_force
from tests.support.progress_histories import day, history

LEFT, RIGHT = (Movement.FLEXION, Side.LEFT), (Movement.FLEXION, Side.RIGHT)


@pytest.fixture
def details(qapp: QApplication) -> SessionDetails:
    return SessionDetails(Appearance(Scheme.LIGHT))


def said(details: SessionDetails) -> str:
    """Return every text of the chosen session; those that gave way are gone."""
    labels = [
        each.text()
        for kind in (QLabel, ShortcutButton)
        for each in details.findChildren(kind)
        if each.isVisibleTo(details)
    ]
    figures = [each.accessibleName() for each in details.findChildren(ReadingFigure)]
    return "\n".join(labels + figures)


def garden() -> History:
    """Two days: on the second the left arm was refused."""
    made = history(
        {LEFT: [(0, 90.0), (7, None)], RIGHT: [(7, 150.0)]}, pain={7: Pain(rest=2, worst_24h=6)}
    )
    trials = (
        replace(sample.trial(), hold_start_s=4.0, hold_end_s=5.26),
        replace(sample.trial(), start_s=9.0, end_s=12.5, hold_start_s=None, hold_end_s=None),
    )
    return replace(
        made,
        measurements=tuple(
            replace(each, measurement=replace(each.measurement, trials=trials))
            if each.measurement.value == 90.0
            else each
            for each in made.measurements
        ),
    )


def several_a_day() -> History:
    """Days of the longest months with two sessions each, more of them than stand in a card."""
    days = [number for number in range(260) if day(number).month in (9, 11)]
    made = history(
        {
            (movement, side): [(number, 130.0) for number in days]
            for movement in (Movement.FLEXION, Movement.ABDUCTION, Movement.EXTERNAL_ROTATION)
            for side in Side
        }
    )
    more = [
        replace(
            each,
            id=sample.some_id(f"{each.id} again"),
            started=replace(
                each.started, utc=each.started.utc + dt.timedelta(hours=11, minutes=48)
            ),
        )
        for each in made.sessions
    ]
    sessions = sorted((*made.sessions, *more), key=lambda each: each.started.utc)
    return replace(made, sessions=tuple(sessions))


def text_room(details: SessionDetails, index: QModelIndex) -> int:
    """Return the width that a row of the list has for its words, between what surrounds them."""
    option = QStyleOptionViewItem()
    details.list.initViewItemOption(option)
    details.list.itemDelegate().initStyleOption(option, index)  # type: ignore[attr-defined]
    option.rect = details.list.visualRect(index)
    style = details.list.style()
    place = style.subElementRect(QStyle.SubElement.SE_ItemViewItemText, option, details.list)
    margin = style.pixelMetric(QStyle.PixelMetric.PM_FocusFrameHMargin, option, details.list) + 1
    return place.width() - 2 * margin


def settle_layouts() -> None:
    for _ in range(8):
        QCoreApplication.processEvents()


def rows(details: SessionDetails) -> list[str]:
    return [details.list.item(row).text() for row in range(details.list.count())]


def test_a_list_that_goes_on_shows_its_bar(details: SessionDetails) -> None:
    details.resize(960, 600)
    details.show()
    details.show_history(garden())
    QApplication.processEvents()
    assert not details.list.verticalScrollBar().isVisible()
    many = history({(Movement.FLEXION, Side.LEFT): [(day, 90.0) for day in range(40)]})
    details.show_history(many)
    QApplication.processEvents()
    assert details.list.verticalScrollBar().isVisible()


def test_sessions_stand_latest_first(details: SessionDetails) -> None:
    details.show_history(garden())
    assert [row.split(", ")[0] for row in rows(details)] == ["13 Apr 2026", "6 Apr 2026"]


def test_the_list_is_narrowed_to_a_movement(details: SessionDetails) -> None:
    abduction = (Movement.ABDUCTION, Side.LEFT)
    details.show_history(history({LEFT: [(0, 90.0), (7, 95.0)], abduction: [(7, 70.0)]}))
    assert len(rows(details)) == 2
    assert details.movement.values == (None, Movement.FLEXION, Movement.ABDUCTION)
    details.movement._pick(Movement.ABDUCTION)
    assert len(rows(details)) == 1
    text = said(details)
    assert "Abduction, left arm" in text
    assert "Flexion, left arm" not in text
    details.show_record(details._history.measurements[0])  # type: ignore[union-attr]
    assert details.movement.value is None
    assert details.list.currentRow() == 1


def test_a_refusal_is_told_with_its_reason_and_pain_beforehand(details: SessionDetails) -> None:
    details.show_history(garden())
    text = said(details)
    assert SENTENCES[Reason.TRUNK_LEAN] in text
    assert "Pain before the session (0 to 10): at rest 2, worst in 24 hours 6." in text
    assert "150\u00b0" in text


def test_a_day_of_pain_alone_says_that_nothing_was_measured(details: SessionDetails) -> None:
    asked: list[tuple[object, ...]] = []
    details.correction_wanted.connect(lambda *what: asked.append(what))
    noted = history({LEFT: [(0, 90.0)]}, pain={7: Pain(rest=7)})
    details.show_history(noted)
    text = said(details)
    assert "Nothing was measured." in text
    assert "Pain before the session (0 to 10): at rest 7." in text
    details.correct.click()
    details.list.setCurrentRow(1)
    assert "Nothing was measured." not in said(details)
    details.correct.click()
    assert asked == [
        (noted.sessions[1], "13 Apr 2026, 09:00", []),
        (noted.sessions[0], "6 Apr 2026, 09:00", list(noted.measurements)),
    ]


def test_a_day_of_pain_alone_was_not_measured_after_exercises(details: SessionDetails) -> None:
    noted = history({LEFT: [(0, 90.0)]}, pain={7: Pain(rest=7)})
    after = SessionState(timing=ExerciseTiming.AFTER, pain_relief=True)
    sessions = tuple(replace(session, state=after) for session in noted.sessions)
    details.show_history(replace(noted, sessions=sessions))
    assert "Nothing was measured." in said(details)
    assert "Measured after exercises" not in said(details)
    assert "Pain relief within 4 hours before." in said(details)
    details.list.setCurrentRow(1)
    assert "Measured after exercises" in said(details)


def test_the_chosen_session_stays_until_there_is_a_later_one(details: SessionDetails) -> None:
    known = history({LEFT: [(0, 90.0), (7, 95.0)]})
    details.show_history(known)
    details.list.setCurrentRow(1)
    details.show_history(known)
    assert details.list.currentRow() == 1
    details.show_history(history({LEFT: [(0, 90.0), (7, 95.0), (9, 96.0)]}))
    assert details.list.currentRow() == 0


def test_every_reading_of_a_session_is_seen_at_once_and_sessions_are_gone_through(
    details: SessionDetails,
) -> None:
    details.show_history(garden())
    readings = details.findChildren(SessionReadings)[-1]
    assert [each.text() for each in readings.findChildren(QLabel)] == ["Left", "Right", "Flexion"]
    left, right = readings.findChildren(ShortcutButton)
    assert left.text() == "no result"
    assert right.text().startswith("150\u00b0 (")
    assert left.isChecked()
    assert "Flexion, left arm" in said(details)
    right.click()
    assert "Flexion, right arm" in said(details)
    assert SENTENCES[Reason.TRUNK_LEAN] not in said(details)
    assert not details.later.isEnabled()
    details.earlier.click()
    assert details.list.currentRow() == 1
    assert not details.earlier.isEnabled()
    details.later.click()
    assert details.list.currentRow() == 0


def test_each_trial_tells_the_seconds_that_were_held(details: SessionDetails) -> None:
    details.show_history(garden())
    details.show_record(garden().measurements[0])
    text = said(details)
    assert "Trial 1, held from 4.0 to 5.3 s" in text
    assert "Trial 2, from 9.0 to 12.5 s, no hold" in text
    assert "measured against the trunk" in text
    assert "Body tracking: detailed" in text


def test_words_of_a_trial_and_of_no_pain() -> None:
    assert trial_title(3, replace(sample.trial(), hold_start_s=1.0, hold_end_s=2.0)) == (
        "Trial 3, held from 1.0 to 2.0 s"
    )
    assert before_words(Pain()) == ""


def test_a_day_has_its_time_only_where_there_are_several_sessions() -> None:
    latest, first = garden().sessions[::-1]
    assert list_words((latest, first)) == ["13 Apr 2026", "6 Apr 2026"]
    clock = f"{first.started.local:%H:%M}"
    assert list_words((latest, first, first))[1:] == [f"6 Apr 2026, {clock}"] * 2


@pytest.mark.parametrize("language", LANGUAGES)
@pytest.mark.parametrize("percent", TEXT_SCALES)
def test_no_row_is_cut_where_days_have_several_sessions(
    qapp: QApplication, language: str, percent: int
) -> None:
    configure_application(qapp)
    look = Appearance(Scheme.LIGHT)
    look.apply()
    known = several_a_day()
    with language_in_force(qapp, language):
        details = SessionDetails(look)
        details.resize(1024, 600)
        details.show()
        details.show_history(known)
        # The text grows with the rows in place, as it does from the settings.
        look.choose(percent=percent)
        settle_layouts()
        shown = rows(details)
        assert len(shown) == len(known.sessions)
        assert all(re.search(r" 2026, \d\d:\d\d$", row) for row in shown)
        # Large text has the days above their session, and no list of them.
        assert details.list.isVisible() or percent > 130
        if details.list.isVisible():
            metrics = QFontMetricsF(details.list.font())
            for place, text in enumerate(shown):
                room = text_room(details, details.list.model().index(place, 0))
                assert metrics.horizontalAdvance(text) <= room, text
        for place in range(4):
            details.list.setCurrentRow(place)
            settle_layouts()
            assert details.day.text() == shown[place]
            assert not list(misfits(details))
        details.close()
    look.choose(percent=100)


def test_a_clip_of_which_only_the_day_is_known_has_no_time() -> None:
    (first, *_), day = garden().sessions, dt.date(2026, 4, 6)
    clip = replace(first, started=noon_of(day))
    assert day_words(clip) == "6 Apr 2026"
    assert list_words((clip, clip)) == ["6 Apr 2026"] * 2
    timed = replace(
        first, started=replace(clip.started, utc=clip.started.utc + dt.timedelta(seconds=1))
    )
    assert day_words(timed) == "6 Apr 2026, 12:00"


def test_values_taken_by_hand_stand_with_their_reading(details: SessionDetails) -> None:
    values = sample.full_session(sample.person()).clinician_values
    made = garden()
    first = replace(made.sessions[0], clinician_values=values)
    details.show_history(replace(made, sessions=(first, *made.sessions[1:])))
    assert "By hand" not in said(details)
    details.list.setCurrentRow(1)
    assert "By hand: active 98.5\u00b0, passive 105\u00b0" in said(details)
