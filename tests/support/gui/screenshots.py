"""Pictures of every page and state: ``python -m tests.support.gui.screenshots FOLDER``.

A scripted engine stands for the camera and a memory for the store, so the pictures are the same
everywhere: in both languages and schemes, in three text sizes and four window sizes. Besides the
pictures of one size there are some a quarter as large: what cannot be read there is too small from
three metres.
"""

import argparse
import datetime as dt
import itertools
import os
import sys
import time
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLocale, QRect, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import QApplication, QWidget

from gui.app.application import configure_application
from gui.app.main_window import MainWindow
from gui.app.window_pages import MainPage
from gui.pages.measuring.live_band import OPENING_MS
from gui.pages.settings.data_page import DataPage
from gui.protocol.plan import HOME_MOVEMENTS, home_tasks
from gui.protocol.red_flags import ScreeningAnswer
from gui.style.palette import Scheme
from gui.text.language import install_language
from gui.text.wording import tr
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import EventKind, LimitingFactor
from measure.domain.screening_records import ScreeningOccasion
from measure.live.events import LiveEventKind, Phase, SetupHint
from measure.storage.store import Store
from tests.support.fitting import visible_widgets
from tests.support.gui.demo_history import demo_history
from tests.support.gui.dialogs import save_dialogs
from tests.support.gui.exercise_states import exercise_states
from tests.support.gui.stage import TODAY, WindowHarness
from tests.support.gui.tool_states import tool_states

#: Languages, text sizes in per cent and window sizes of the pictures; the smallest size first.
LANGUAGES = ("en", "es")
PERCENTS = (100, 150, 200)
SIZES = ((1024, 700), (1280, 680), (1366, 700), (1920, 1080))
#: The size whose pictures are written a quarter as large too: a common laptop's window.
QUARTERED = (1280, 680)
#: A goal in a person's own words.
GOAL = "Put on a jacket"
#: Rounds of the event loop between two looks at the layouts: a change passes from a widget to the
#: ones around it by events, one after the other.
_ROUNDS = 4
#: Looks within which layouts have settled after another size; two as a rule.
_MOST_LOOKS = 10


@contextmanager
def language_in_force(application: QCoreApplication, language: str) -> Iterator[None]:
    """Give windows made inside a language, and put back what was there before."""
    locale, direction = QLocale(), QGuiApplication.layoutDirection()
    translators = install_language(application, language)
    yield
    for translator in translators:
        application.removeTranslator(translator)
    QLocale.setDefault(locale)
    QGuiApplication.setLayoutDirection(direction)


def resize(stage: WindowHarness, size: tuple[int, int]) -> None:
    """Give the window a size and let its layouts settle."""
    stage.window.resize(*size)
    before: list[QRect] = []
    for _ in range(_MOST_LOOKS):
        for _ in range(_ROUNDS):
            QCoreApplication.processEvents()
        places = [widget.geometry() for widget in visible_widgets(stage.window)]
        if places == before:
            return
        before = places
    raise AssertionError(f"the layouts of a window of {size} do not settle")


def _save(stage: WindowHarness, name: str, folder: Path, size: tuple[int, int]) -> None:
    """Write the picture of a state in a size, and its quarter where one is wanted."""
    resize(stage, size)
    picture = stage.window.grab()
    picture.save(str(folder / f"{name}.png"))
    if size == QUARTERED:
        quarter = picture.scaled(
            picture.width() // 4,
            picture.height() // 4,
            Qt.AspectRatioMode.KeepAspectRatio,
            Qt.TransformationMode.SmoothTransformation,
        )
        (folder / "quarter").mkdir(exist_ok=True)
        quarter.save(str(folder / "quarter" / f"{name}.png"))


def _start(stage: WindowHarness) -> Iterator[str]:
    page = stage.window.measure
    yield "measure-welcome"
    page.start.welcome.in_clinic.click()
    yield "measure-who"
    page.start.in_clinic.who.not_saved.click()
    yield "measure-what"
    _ensure_person(stage)
    page.start.in_clinic.what.other_person.click()
    page.start.in_clinic.who.at_home.click()
    stage.settle()
    yield "measure-start"
    page.start.at_home.choose.setChecked(True)
    yield "measure-own-choice"
    page.start.at_home.note_pain.click()
    yield "measure-pain"
    page.before.ask(home_tasks(HOME_MOVEMENTS, Side.RIGHT, sore_day=False), 6)
    page.show_page(page.before)
    yield "measure-before"
    page.show_start()
    page.start.at_home.start.click()
    stage.settle()
    yield "safety-emergency"
    page.safety.give(ScreeningAnswer.ONE_FITS)
    yield "safety-get-help"
    page.safety.ask(ScreeningOccasion.BEFORE)
    page.safety.give(ScreeningAnswer.NONE_FITS)
    yield "safety-soon"
    page.safety.give(ScreeningAnswer.NONE_FITS)
    yield "safety-clinician"
    page.safety.give(ScreeningAnswer.ONE_FITS)
    yield "safety-ask-first"
    page.safety.ask(ScreeningOccasion.BEFORE)
    for answer in (
        ScreeningAnswer.NONE_FITS,
        ScreeningAnswer.NONE_FITS,
        ScreeningAnswer.NONE_FITS,
    ):
        page.safety.give(answer)
    stage.settle()


def _live(stage: WindowHarness) -> Iterator[str]:
    page = stage.window.measure
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, hints=(SetupHint.STEP_BACK,), seen=False)
    yield "live-looking"
    stage.engine.show(Phase.WAIT_NEUTRAL, 2.0)
    yield "live-neutral"
    stage.engine.show(Phase.MOVE, 74.0)
    yield "live-move"
    stage.engine.show(Phase.HOLD, 118.0, hold_share=0.62)
    yield "live-hold"
    stage.engine.show(Phase.RETURN, 60.0)
    yield "live-return"
    stage.engine.capture(118.0)
    stage.engine.show(Phase.REFINING, 20.0)
    stage.settle()
    stage.engine.settle()
    stage.engine.capture(119.0)
    stage.settle()
    yield "live-refining"
    stage.engine.settle()
    stage.settle(2 * OPENING_MS)
    yield "live-final"
    stage.engine.capture(117.0)
    stage.settle()
    stage.engine.settle((Reason.ELBOW_BENT,))
    yield "live-refused"
    stage.engine.pause()
    yield "live-paused"
    stage.engine.resume()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    yield "live-trouble"
    stage.engine.happen(LiveEventKind.RECOVERED)
    stage.engine.capture(121.0)
    stage.settle()
    stage.engine.settle()
    stage.settle()
    stage.engine.capture(120.0)
    stage.settle()
    stage.engine.settle()
    stage.settle()
    yield "pain"
    page.pain.pain.button(3).click()
    page.pain.reason.button(LimitingFactor.STIFFNESS).click()
    yield "pain-answered"
    page.pain.done.click()
    stage.settle()
    yield "live-next"
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CLIP_ENDED)
    stage.settle()
    yield "next"
    page.next.repeat.click()
    stage.engine.show(Phase.HOLD, 84.0, hold_share=0.3, reasons=(Reason.SHRUG,))
    yield "live-left"
    for value in (84.0, 83.0, 85.0, 84.0):
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)
    page.pain.pain.choose(7)
    page.pain.done.click()
    stage.settle()
    page.safety.give(ScreeningAnswer.NONE_FITS)
    page.safety.give(ScreeningAnswer.NONE_FITS)
    yield "safety-after-pain"
    page.safety.cleared.emit()
    stage.settle()
    page.next.go.click()
    stage.engine.show(Phase.MOVE, 61.0)
    yield "live-abduction"
    page.live.stop.click()
    stage.settle()
    yield "summary"
    page.summary.finish.click()
    stage.settle()


def _reach(stage: WindowHarness) -> Iterator[str]:
    page = stage.window.measure
    # Pain of the sessions before would be asked about first.
    _delete_sessions(stage.store)
    page.people.load()
    stage.settle()
    page.start.prefer(Movement.HAND_BEHIND_BACK, Side.LEFT)
    page.start.in_clinic.what.start.click()
    stage.settle()
    stage.engine.show(Phase.WAIT_NEUTRAL, 0.0)
    yield "live-back-turned"
    for value in (0.42, 0.44):
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)
    yield "pain-reach"
    page.pain.done.click()
    yield "summary-clinic"
    page.summary.finish.click()
    stage.settle()
    page.start.prefer(Movement.EXTERNAL_ROTATION, Side.RIGHT)
    page.start.in_clinic.what.start.click()
    stage.settle()
    yield "live-rotation"
    for value in (40.0, 41.0):
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle((Reason.WRONG_TURN, Reason.ELBOW_OFF_TRUNK))
        stage.settle(30)
    stage.engine.happen(LiveEventKind.MEASUREMENT_DONE, measurement=stage.engine.measurement())
    stage.settle()
    yield "pain-refused"
    page.pain.done.click()
    stage.settle()
    yield "summary-refused"
    page.summary.finish.click()


def _delete_sessions(store: Store) -> None:
    """Delete all sessions and logged exercises; people stay."""
    for person in store.people():
        for session in store.sessions(person.id):
            store.delete_session(session.id)
        for log in store.exercises_done(person.id):
            store.delete_exercise_log(log.id)


def _progress(stage: WindowHarness) -> Iterator[str]:
    window = stage.window
    _delete_sessions(stage.store)
    window.go(MainPage.PROGRESS)
    yield "progress-empty"
    person = window.measure.people.person
    if person is not None:
        stage.store.merge(demo_history(person, TODAY, weeks=2))
        window.progress.reload()
        yield "progress-early"
        _delete_sessions(stage.store)
        stage.store.merge(demo_history(person, TODAY, weeks=20))
        window.progress.reload()
    yield "progress"
    window.progress.curves.as_table.click()
    yield "progress-table"
    window.progress.curves.as_table.click()
    yield from _goals(stage)
    window.progress.show_details()
    yield "progress-sessions"
    window.progress.details.correct.click()
    window.progress.pain.night.button(5).click()
    yield "progress-pain"
    window.progress.pain.leave.click()
    yield from _events(stage)


def _events(stage: WindowHarness) -> Iterator[str]:
    """The events page, and two events in the chart."""
    progress = stage.window.progress
    for days, kind in ((50, EventKind.INJECTION), (12, EventKind.PROGRAMME_CHANGED)):
        progress.show_events()
        stage.settle()
        progress.events.kind.button(kind).click()
        progress.events.day.show_day(TODAY - dt.timedelta(days=days))
        progress.events.keep.click()
        stage.settle()
    yield "progress-events"
    # It would have gone by itself by the time that anyone is on the next page.
    stage.window.messages.close_it.click()
    progress.show_curves()
    yield "progress-flags"


def _goals(stage: WindowHarness) -> Iterator[str]:
    """The goals page: none, then one that is rated."""
    progress = stage.window.progress
    progress.show_goals()
    yield "progress-goals-none"
    progress.goals.words.setText(GOAL)
    progress.goals.add.click()
    stage.settle()
    progress.goals.ratings[0].button(4).click()
    yield "progress-goals"
    progress.show_curves()


def _settings(stage: WindowHarness) -> Iterator[str]:
    stage.window.show_settings()
    yield "settings"
    for page in DataPage:
        stage.window.show_data(page)
        yield f"data-{page}"
    stage.window.show_report()
    stage.settle()
    yield "report-preview"
    stage.window.show_help()
    yield "help"
    stage.window.go(MainPage.MEASURE)


def _measuring(stage: WindowHarness) -> Iterator[str]:
    """From the very first start through measuring to the results."""
    for part in (_start, _live, _reach):
        yield from part(stage)


def _records(stage: WindowHarness) -> Iterator[str]:
    """Progress, exercises, settings, report and help of a person."""
    _ensure_person(stage)
    for part in (_progress, exercise_states, _settings):
        yield from part(stage)


def _tools(stage: WindowHarness) -> Iterator[str]:
    """Clips, set-up, and what is known of camera and body."""
    _ensure_person(stage)
    yield from tool_states(stage)


def _ensure_person(stage: WindowHarness) -> None:
    """Add a person where nobody has been measured yet, and let the window use it."""
    if not stage.store.people():
        stage.keeper.add_person(tr("Me"), (Side.LEFT,))
        stage.window.measure.people.load()
        stage.settle()


#: The states in chapters; each can be played in a new window, without the ones before.
CHAPTERS = {"measuring": _measuring, "records": _records, "tools": _tools}


def states(stage: WindowHarness, *chapters: str) -> Iterator[str]:
    """Bring a window from state to state through some chapters, or all; yield the name of each.

    AssertionError when another page is shown than the state's name says.
    """
    for name in chapters or CHAPTERS:
        for state in CHAPTERS[name](stage):
            page = _page_of(stage.window, state)
            assert page is None or page.isVisible(), f"{state}: its page is not shown"
            yield state


def _page_of(window: MainWindow, state: str) -> QWidget | None:
    """Return the page that a state is of, by the first word of its name; None where unknown."""
    measure, start = window.measure, window.measure.start
    pages: dict[str, QWidget] = {
        "measure-welcome": start.welcome,
        "measure-who": start.in_clinic.who,
        "measure-what": start.in_clinic.what,
        "measure-start": start.at_home,
        "measure-own-choice": start.at_home,
        "measure-pain": measure.before,
        "measure-before": measure.before,
        "safety": measure.safety,
        "live": measure.live,
        "pain": measure.pain,
        "next": measure.next,
        "summary": measure.summary,
        "progress-events": window.progress.events,
        "events": window.progress.events,
        "progress": window.progress,
        "exercises": window.exercises,
        "programme": window.exercises.programme,
        "round": window.exercises,
        "clips": window.clips,
        "settings": window.settings,
        "data": window.settings,
    }
    return pages.get(state) or pages.get(state.partition("-")[0])


@dataclass(frozen=True, slots=True)
class Look:
    """How the window looks in one series of pictures."""

    language: str
    scheme: Scheme
    percent: int

    def folder(self, size: tuple[int, int]) -> str:
        """Return the name of the folder for the pictures in one window size."""
        width, height = size
        return f"{self.language}-{self.scheme.value}-{self.percent}-{width}x{height}"


def take(
    folder: Path,
    look: Look,
    sizes: Sequence[tuple[int, int]],
    only: str = "",
    chapters: Sequence[str] = tuple(CHAPTERS),
) -> int:
    """Write the pictures of one look, a folder for each window size; return how many.

    Parameters
    ----------
    chapters
        Those to play, of CHAPTERS.
    only
        Beginning of the names of the states to write; empty for all.
    """
    application = QApplication.instance()
    assert application is not None
    folders = {size: folder / look.folder(size) for size in sizes}
    for place in folders.values():
        place.mkdir(parents=True, exist_ok=True)
    taken = 0
    with language_in_force(application, look.language):
        for chapter in chapters:
            stage = WindowHarness(look.scheme, look.percent, sizes[0])
            for name in states(stage, chapter):
                stage.settle()
                if not name.startswith(only):
                    continue
                # The first comes last: the next state is reached in it.
                for size in reversed(sizes):
                    _save(stage, name, folders[size], size)
                    taken += 1
            if chapter == "records" and "dialog-".startswith(only[:7]):
                taken += save_dialogs(stage, folders.values())
            stage.close()
    return taken


def main(arguments: list[str] | None = None) -> int:
    """Write all pictures into a folder, a folder inside for each look and window size."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.support.gui.screenshots", description=__doc__
    )
    names = {f"{width}x{height}": (width, height) for width, height in SIZES}
    schemes = [Scheme.LIGHT.value, Scheme.DARK.value]
    parser.add_argument("folder", type=Path)
    parser.add_argument("--language", choices=LANGUAGES, action="append")
    parser.add_argument("--scheme", choices=schemes, action="append")
    parser.add_argument("--percent", type=int, choices=PERCENTS, action="append")
    parser.add_argument("--size", choices=names, action="append")
    parser.add_argument("--only", default="", metavar="NAME", help="states whose names begin so")
    parser.add_argument("--chapter", choices=CHAPTERS, action="append", help="of the states")
    chosen = parser.parse_args(arguments)
    if "DISPLAY" not in os.environ and "WAYLAND_DISPLAY" not in os.environ:
        os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    configure_application(QApplication.instance() or QApplication(sys.argv[:1]))
    sizes = [names[name] for name in chosen.size or names]
    for language, scheme, percent in itertools.product(
        chosen.language or LANGUAGES, chosen.scheme or schemes, chosen.percent or PERCENTS
    ):
        look, began_s = Look(language, Scheme(scheme), percent), time.monotonic()
        chapters = chosen.chapter or tuple(CHAPTERS)
        count = take(chosen.folder, look, sizes, chosen.only, chapters)
        took_s = time.monotonic() - began_s
        print(f"{language} {scheme} {percent} %: {count} pictures in {took_s:.0f} s", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main())
