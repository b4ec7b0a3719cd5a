"""What is known about a person is theirs, and can be edited in the window."""

from gui.pages.measuring.person_form import PersonForm
from measure.domain.landmarks import Side
from measure.domain.records import (
    AgeBand,
)
from tests.support import record_samples as sample
from tests.support.gui.measuring_steps import shown
from tests.support.gui.stage import WindowHarness


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
    page.start.at_home.edit_person.click()
    form = page.start.findChild(PersonForm)
    assert form is not None
    form.since.setText("lately")
    form.save.click()
    assert form.isVisible()
    assert "not a date" in form.trouble.text()
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
    assert "Me" in page.start.at_home.person.text()
    page.people.choose(made_up.id)
    new_stage.settle()
    page.start.at_home.start.click()
    new_stage.settle()
    assert shown(new_stage) is page.start
    assert "made-up person" in new_stage.window.messages.text
    assert new_stage.store.sessions(made_up.id) == []
