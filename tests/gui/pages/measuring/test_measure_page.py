"""Measuring from the first choice to the summary, by keys and by buttons."""

from collections.abc import Callable

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QApplication, QInputDialog

from gui.app.main_window import SMALLEST_PX
from gui.pages.measuring.person_form import PersonForm
from gui.protocol.plan import SessionStep
from gui.protocol.red_flags import ScreeningAnswer, ScreeningPage
from measure.camera.faults import SourceFault
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.reasons import Reason
from measure.domain.records import (
    AgeBand,
    Assistance,
    BodyPosition,
    LimitingFactor,
    Plan,
    PlannedStretch,
    Stretch,
)
from measure.live.events import LiveEventKind, Phase, SetupHint
from tests.support import record_samples as sample
from tests.support.gui.stage import TODAY, WindowHarness

Press = Callable[..., None]


def trials(stage: WindowHarness, *values: float) -> None:
    """Capture and settle trials one after the other."""
    for value in values:
        stage.engine.capture(value)
        stage.settle(30)
        stage.engine.settle()
        stage.settle(30)


def shown(stage: WindowHarness) -> object:
    """Return the page that is shown."""
    page = stage.window.measure
    parts = (page.start, page.safety, page.before, page.live, page.pain, page.next, page.summary)
    (visible,) = [part for part in parts if part.isVisible()]
    return visible


def begin_home(stage: WindowHarness) -> None:
    stage.window.measure.start.home_button.click()
    stage.settle()
    stage.window.measure.before.go.click()
    stage.settle()


def begin_clinic(stage: WindowHarness, movement: Movement = Movement.FLEXION) -> None:
    stage.window.measure.start.prefer(movement, Side.LEFT)
    stage.window.measure.start.clinic_button.click()
    stage.settle()


def test_a_session_at_home_by_keys_alone(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    press(Qt.Key.Key_H)
    assert shown(stage) is page.before
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.live
    assert stage.engine.side is Side.RIGHT
    trials(stage, 150.0, 151.0, 152.0, 153.0)
    assert shown(stage) is page.pain
    press(Qt.Key.Key_2, "2")
    assert page.pain.next_words.text() == (
        "Next, 2 of 8: Flexion, left arm. Choose a number, and it begins when you stand for it."
    )
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.live
    assert stage.engine.side is Side.LEFT
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.next  # nothing was captured, so there is nothing to ask
    assert "right arm" in page.next.title.text()
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    assert len(page.summary.bands) == 2
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.start
    history = stage.history()
    assert history.sessions[0].finished
    assert [each.pain_during for each in history.measurements] == [2]


def test_space_pauses_wherever_the_keyboard_is(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    for focused in (page.live.pause, page.live.discard, page.live.stop):
        focused.setFocus()
        press(Qt.Key.Key_Space)
        assert page.measuring is not None
        assert page.measuring.guide.paused
        assert page.live.pause.accessibleName() == "Go on"
        press(Qt.Key.Key_Space)
        assert not page.measuring.guide.paused
    assert "discard_last" not in stage.engine.calls


def test_backspace_discards_the_last_trial(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    page = stage.window.measure
    assert not page.live.discard.isEnabled()
    trials(stage, 120.0)
    assert page.live.discard.isEnabled()
    press(Qt.Key.Key_Backspace)
    assert page.measuring is not None
    assert page.measuring.guide.counted == 0
    assert not page.live.discard.isEnabled()


def test_in_a_clinic_both_sides_take_few_keys(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    press(Qt.Key.Key_C)
    assert stage.engine.calls == ["start", "choose"]
    trials(stage, 90.0, 92.0)
    press(Qt.Key.Key_Return)
    assert shown(stage) is page.summary
    press(Qt.Key.Key_O)
    assert stage.engine.side is Side.RIGHT
    trials(stage, 150.0, 152.0)
    press(Qt.Key.Key_Return)
    assert [band.words for band in page.summary.bands] == [
        "91\u00b0 (86 to 96)",
        "151\u00b0 (146 to 156)",
    ]
    press(Qt.Key.Key_M)
    assert shown(stage) is page.start
    begin_clinic(stage, Movement.ABDUCTION)
    trials(stage, 88.0, 88.0)
    press(Qt.Key.Key_Return)
    press(Qt.Key.Key_Return)
    history = stage.history()
    assert len(history.sessions) == 1
    assert len(history.measurements) == 3


def test_the_live_page_shows_guide_then_reading_then_refusal(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    stage.engine.show(Phase.MOVE, 61.4)
    stage.settle()
    assert live.number.text == "61\u00b0"
    assert live.quality.text() == "a guide; seen well"
    stage.engine.show(Phase.HOLD, 118.0, hold_share=0.5)
    stage.settle()
    assert live.ring.share == 0.5
    stage.engine.capture(118.0)
    stage.settle()
    assert live.number.text == "118\u00b0"
    assert live.quality.text() == "being settled"
    assert live.trials.bands[0].words == "being settled"
    stage.engine.settle()
    stage.settle()
    assert live.quality.text() == "settled: 113 to 123"
    assert live.trials.bands[0].words == "118\u00b0 (113 to 123)"
    stage.engine.capture(119.0)
    stage.settle()
    stage.engine.settle((Reason.TRUNK_LEAN,))
    stage.settle()
    assert live.sentence.text == "Not counted: the trunk leaned."
    assert live.refusal.words == "Stay upright and let only the arm move."
    assert live.trials.bands[1].words == "to come"


def test_the_position_is_drawn_while_nobody_stands_right(stage: WindowHarness) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    stage.engine.show(Phase.SEARCHING_FOR_PERSON, seen=False, hints=(SetupHint.STEP_BACK,))
    stage.settle()
    assert live.sentence.text == "Step back a little."
    assert live.figure.isVisible()
    assert live.quality.text() == "nobody seen"
    stage.engine.show(Phase.MOVE, 30.0)
    stage.settle()
    assert not live.figure.isVisible()


def test_trouble_offers_to_try_again(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    live = stage.window.measure.live
    assert not live.retry.isVisible()
    stage.engine.happen(LiveEventKind.TROUBLE, trouble=SourceFault.CAMERA_UNPLUGGED)
    stage.settle()
    assert live.retry.isVisible()
    assert "unplugged" in live.sentence.text
    press(Qt.Key.Key_R)
    assert stage.engine.calls[-1] == "start"
    assert not live.retry.isVisible()


def test_the_first_start_asks_the_safety_questions(
    new_stage: WindowHarness, none_fits: tuple[ScreeningAnswer, ...]
) -> None:
    page = new_stage.window.measure
    page.start.clinic_button.click()
    new_stage.settle()
    assert shown(new_stage) is page.safety
    assert page.safety.screening.page is ScreeningPage.ABOUT
    assert new_stage.engine.calls == []
    for answer in none_fits:
        page.safety.answers[answer].click()
        new_stage.settle()
    assert shown(new_stage) is page.live
    person = new_stage.store.people()[0]
    assert person.pseudonym == "Me"
    assert new_stage.services.settings.last_check(person.id) == TODAY


def test_an_emergency_blocks_measuring_and_asks_again_next_time(new_stage: WindowHarness) -> None:
    page = new_stage.window.measure
    page.start.home_button.click()
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.READ].click()
    page.safety.answers[ScreeningAnswer.ONE_FITS].click()
    assert page.safety.screening.page is ScreeningPage.STOP_EMERGENCY
    assert page.safety.answers == {}
    page.safety.ways_out[-1].click()
    new_stage.settle()
    assert shown(new_stage) is page.start
    person = new_stage.store.people()[0]
    assert new_stage.services.settings.last_check(person.id) is None
    page.start.home_button.click()
    new_stage.settle()
    assert shown(new_stage) is page.safety


def test_a_wrong_press_can_be_taken_back(new_stage: WindowHarness) -> None:
    page = new_stage.window.measure
    page.start.home_button.click()
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.READ].click()
    page.safety.answers[ScreeningAnswer.ONE_FITS].click()
    page.safety.ways_out[0].click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    new_stage.settle()
    page.safety.answers[ScreeningAnswer.NONE_FITS].click()
    assert page.safety.screening.page is ScreeningPage.SOON
    page.safety.ways_out[0].click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY


def test_signs_can_be_denied_only_when_the_end_of_their_list_was_seen(
    new_stage: WindowHarness,
) -> None:
    page = new_stage.window.measure
    page.start.home_button.click()
    new_stage.settle()
    new_stage.window.resize(*SMALLEST_PX)
    page.safety.answers[ScreeningAnswer.READ].click()
    new_stage.settle()
    none = page.safety.answers[ScreeningAnswer.NONE_FITS]
    assert not none.isEnabled()
    assert page.safety.answers[ScreeningAnswer.ONE_FITS].isEnabled()
    none.click()
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    for _ in range(10):
        assert page.safety.rest.isVisible() is not none.isEnabled()
        page.safety.rest.click()
        new_stage.settle()
    assert none.isEnabled()
    none.click()
    assert page.safety.screening.page is ScreeningPage.SOON


def deny_all(stage: WindowHarness) -> None:
    """Answer the two lists that follow much pain."""
    safety = stage.window.measure.safety
    for _ in range(2):
        stage.settle()
        safety.answers[ScreeningAnswer.NONE_FITS].click()
    assert safety.screening.page is ScreeningPage.CLEAR


@pytest.mark.parametrize("goes_on", [True, False])
def test_much_pain_leads_to_the_questions_and_a_rest(stage: WindowHarness, goes_on: bool) -> None:
    page = stage.window.measure
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    assert page.measuring is not None
    painful = page.measuring.guide.task
    page.pain.pain.button(8).click()
    page.pain.reason.button(LimitingFactor.PAIN).click()
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is page.safety
    assert page.safety.screening.page is ScreeningPage.EMERGENCY
    deny_all(stage)
    stopped, another = page.safety.ways_out
    (another if goes_on else stopped).click()
    stage.settle()
    assert shown(stage) is (page.next if goes_on else page.summary)
    if goes_on:
        upcoming = page.measuring.guide.upcoming
        assert upcoming is not None
        assert (upcoming.movement, upcoming.side) != (painful.movement, painful.side)
    history = stage.history()
    (record,) = history.measurements
    assert (record.pain_during, record.stopped_by) == (8, LimitingFactor.PAIN)


def test_much_pain_in_a_clinic_offers_another_movement_too(stage: WindowHarness) -> None:
    page = stage.window.measure
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    page.pain.pain.button(7).click()
    page.pain.done.click()
    deny_all(stage)
    page.safety.ways_out[1].click()
    assert shown(stage) is page.start
    assert page.measuring is not None


@pytest.mark.parametrize(("limit", "waits"), [(None, True), (5, False), (3, True)])
def test_pain_at_the_limit_lets_the_next_movement_wait(
    stage: WindowHarness, limit: int | None, waits: bool
) -> None:
    page = stage.window.measure
    if limit is not None:
        pendulum = PlannedStretch(stretch=Stretch.PENDULUM, times_a_day=2, hold_s=0)
        plan = Plan(
            id="a" * 32,
            person_id=stage.store.people()[0].id,
            first_day=TODAY,
            stretches=(pendulum,),
            pain_limit=limit,
        )
        stage.store.save_plan(plan)
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    page.pain.pain.button(4).click()
    page.pain.done.click()
    stage.settle()
    assert shown(stage) is (page.next if waits else page.live)
    if waits:
        assert page.next.pain_words.isVisible()
        assert f"{limit or 4} is where to stop" in page.next.pain_words.text()


def test_the_stiff_shoulder_belongs_to_the_person(stage: WindowHarness) -> None:
    page = stage.window.measure
    assert page.start.affected.value == (Side.LEFT,)
    sorrel = stage.keeper.add_person("Sorrel", (Side.RIGHT,))
    page.people.choose(sorrel.id)
    stage.settle()
    assert page.start.affected.value == (Side.RIGHT,)
    page.start.affected.button(tuple(Side)).click()
    stage.settle()
    affected = {person.pseudonym: person.affected for person in stage.store.people()}
    assert affected == {"Rowan": (Side.LEFT,), "Sorrel": tuple(Side)}


def test_everything_about_a_person_can_be_edited(stage: WindowHarness) -> None:
    page = stage.window.measure
    page.start.edit_person.click()
    form = page.start.findChild(PersonForm)
    assert form is not None
    form.since.setText("lately")
    form.save.click()
    assert form.isVisible()
    assert "no date" in form.trouble.text()
    form.since.setText("2026-03")
    form.age.choose(AgeBand.FIFTIES)
    form.diabetes.choose(False)
    form.affected.choose(tuple(Side))
    form.save.click()
    stage.settle()
    assert not form.isVisible()
    (person,) = stage.store.people()
    assert (person.since, person.age_band, person.diabetes) == ("2026-03", AgeBand.FIFTIES, False)
    assert person.affected == page.start.affected.value == tuple(Side)


def test_made_up_people_are_not_chosen_and_cannot_be_measured(new_stage: WindowHarness) -> None:
    page = new_stage.window.measure
    made_up = sample.person("demo-Bramble", demo=True)
    new_stage.store.save_person(made_up)
    page.people.load()
    new_stage.settle()
    assert page.people.person is None
    assert "Me" in page.start.person.text()
    page.people.choose(made_up.id)
    new_stage.settle()
    page.start.home_button.click()
    new_stage.settle()
    assert shown(new_stage) is page.start
    assert "made up" in new_stage.window.messages.text
    assert new_stage.store.sessions(made_up.id) == []


def test_conduct_is_stored_with_the_session_and_remembered(stage: WindowHarness) -> None:
    page = stage.window.measure
    page.start.posture.button(BodyPosition.SITTING).click()
    page.start.help.choose(Assistance.STICK)
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    page.pain.done.click()
    stage.settle()
    (record,) = stage.history().measurements
    assert (record.conduct.posture, record.conduct.help) == (BodyPosition.SITTING, Assistance.STICK)
    assert stage.services.settings.conduct == record.conduct


def test_somebody_else_can_be_measured(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QInputDialog, "getText", lambda *_: ("Linden", True))
    page = stage.window.measure
    page.start.add_person.click()
    stage.settle()
    assert page.people.person is not None
    assert page.people.person.pseudonym == "Linden"
    first = next(each for each in stage.store.people() if each.pseudonym == "Rowan")
    page.start.person_chosen.emit(first.id)
    stage.settle()
    assert page.people.person == first


def test_a_name_that_is_taken_is_told(
    stage: WindowHarness, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(QInputDialog, "getText", lambda *_: ("Rowan", True))
    told: list[str] = []
    stage.window.measure.message_raised.connect(told.append)
    stage.window.measure.start.add_person.click()
    stage.settle()
    assert any("Rowan" in text for text in told)


def test_the_last_movement_can_be_measured_again(stage: WindowHarness, press: Press) -> None:
    page = stage.window.measure
    begin_home(stage)
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    press(Qt.Key.Key_1, "1")
    press(Qt.Key.Key_A)
    assert shown(stage) is page.live
    assert stage.engine.side is Side.RIGHT
    trials(stage, 100.0, 100.0, 100.0, 100.0)
    press(Qt.Key.Key_Escape)
    assert shown(stage) is page.summary
    history = stage.history()
    assert [each.pain_during for each in history.measurements] == [1, None]


def test_without_a_movement_nothing_begins(stage: WindowHarness) -> None:
    page = stage.window.measure
    for box in page.start.movements.values():
        box.setChecked(False)
    page.start.home_button.click()
    stage.settle()
    assert shown(stage) is page.start


def test_only_one_thing_at_a_time_is_on_the_page(stage: WindowHarness) -> None:
    window = stage.window
    assert window.words[0].isVisible()
    begin_clinic(stage)
    assert not window.words[0].isVisible()
    trials(stage, 90.0, 90.0)
    window.measure.pain.done.click()
    stage.settle()
    assert window.measure.measuring is not None
    assert window.measure.measuring.guide.step is SessionStep.FINISHED
    assert window.words[0].isVisible()


def test_pain_by_keys(stage: WindowHarness, press: Press) -> None:
    begin_clinic(stage)
    trials(stage, 90.0, 90.0)
    pain = stage.window.measure.pain
    assert not pain.finish.isVisible()  # nothing is left out by finishing
    press(Qt.Key.Key_5, "5")
    assert pain.pain.value == 5
    press(Qt.Key.Key_X, "x")
    assert pain.pain.value == 10
    assert QApplication.focusWidget() is not None


@pytest.mark.parametrize(
    ("pain", "trials", "reach"), [(None, 3, True), (3, 3, True), (6, 3, True), (7, 2, False)]
)
def test_pain_beforehand_sets_how_much_testing_is_asked_for(
    stage: WindowHarness, pain: int | None, trials: int, reach: bool
) -> None:
    page = stage.window.measure
    for movement, tick in page.start.movements.items():
        tick.setChecked(movement in (Movement.FLEXION, Movement.HAND_BEHIND_BACK))
    page.start.home_button.click()
    stage.settle()
    page.before.night.choose(pain)
    page.before.go.click()
    stage.settle()
    assert page.measuring is not None
    guide = page.measuring.guide
    assert guide.task.trials == trials
    assert guide.task_position[1] == (4 if reach else 2)
    told = stage.window.messages.text
    assert ("easily upset" in told) != reach
