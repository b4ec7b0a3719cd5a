"""The page of exercises for the person as a file, for the command line and the window."""

import datetime as dt
from pathlib import Path

from gui.report.handout import handout_pdf
from gui.report.handout_words import handout_words
from gui.report.language import translate_into
from measure.domain.home_programme_records import Plan
from measure.domain.records import History, Person
from measure.errors import InputError
from measure.progress.home_programme import plan_on
from measure.system.atomic_files import write_new


def write_handout(person: Person, plan: Plan, language: str, target: Path) -> None:
    """Write the page to a new PDF.

    Raises
    ------
    InputError
        When the name does not end in .pdf, or the file exists.
    MachineError
        When the file cannot be written.
    """
    if target.suffix.lower() != ".pdf":
        raise InputError(f"{target.name} does not end in .pdf, as a page of exercises does.")
    write_new(target, handout_pdf(handout_words(person, plan, translate_into(language))))


def plan_to_print(history: History, today: dt.date) -> Plan:
    """Return the programme in force.

    Raises
    ------
    InputError
        When there is none.
    """
    plan = plan_on(history.plans, today)
    if plan is None or not plan.exercises:
        raise InputError(f"{history.person.pseudonym} has no programme of exercises today.")
    return plan
