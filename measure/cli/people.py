"""`thawline people`: who is measured here, by pseudonym."""

import argparse
import json
from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Any

from measure.cli.deletion import ask, print_copies
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.landmarks import Side
from measure.domain.records import AgeBand, Onset, Person
from measure.errors import InputError
from measure.storage.location import backup_files
from measure.storage.store import Store
from measure.system.clock import new_id
from measure.system.json_codec import to_data

_YES_NO = {"yes": True, "no": False}
#: Width of the column of names, characters. [technical]
_NAME_WIDTH = 16


def configure(parser: argparse.ArgumentParser) -> None:
    """List, add, edit, show or delete the people who are measured here, by pseudonym.

    Choose pseudonyms that only you can tell apart. Everything except the pseudonym is optional.
    Editing changes only what you name; "none" clears an entry. Deleting removes a person and all
    their sessions for good.

    exit codes:
      0  done
      2  wrong use, or no one of that name

    examples:
      thawline people
      thawline people add Rosa --affected left --dominant right --since 2026-03 --onset gradual
      thawline people edit Rosa --affected both --diabetes yes
      thawline people show Rosa
      thawline people delete Rosa
    """
    parser.add_argument("--json", action="store_true", help="print the list as JSON")
    parser.set_defaults(run=run_list)
    actions = parser.add_subparsers(metavar="ACTION")
    add = actions.add_parser("add", help="add a person")
    add.add_argument("name", metavar="NAME", help="a pseudonym, 1 to 60 characters")
    _add_facts(add)
    add.set_defaults(run=run_add)
    edit = actions.add_parser("edit", help="change what is recorded about a person")
    edit.add_argument("name", metavar="PERSON", help="pseudonym")
    edit.add_argument("--pseudonym", metavar="NAME", help="a new pseudonym")
    _add_facts(edit)
    edit.set_defaults(run=run_edit)
    show = actions.add_parser("show", help="show what is recorded about a person")
    show.add_argument("name", metavar="PERSON", help="pseudonym")
    show.set_defaults(run=run_show)
    delete = actions.add_parser("delete", help="delete a person and all their sessions for good")
    delete.add_argument("name", metavar="PERSON", help="pseudonym")
    delete.add_argument(
        "--yes", action="store_true", help="do not ask for confirmation (for scripts)"
    )
    delete.set_defaults(run=run_delete)


def run_list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        people = store.people()
        sessions = {person.id: store.sessions(person.id) for person in people}
    if arguments.json:
        print(json.dumps(to_data(people), ensure_ascii=False, indent=2))
        return 0
    if not people:
        print("No one has been added yet. Add a person with: thawline people add NAME")
        return 0
    lines = []
    for person in people:
        own = sessions[person.id]
        last = own[-1].started.day.isoformat() if own else ""
        lines.append([_shown_name(person), _affected(person), str(len(own)), last])
    print(table(lines, ["person", "affected", "sessions", "last session"]))
    return 0


def run_add(arguments: argparse.Namespace) -> int:
    person = _with_facts(Person(id=new_id(), pseudonym=arguments.name), arguments)
    with open_store() as store:
        _save(store, person)
    print(f"Added {person.pseudonym}.")
    return 0


def run_edit(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        before = store.find_person(arguments.name)
        person = _with_facts(before, arguments)
        if arguments.pseudonym is not None:
            person = replace(person, pseudonym=arguments.pseudonym)
        if person == before:
            print(f"Nothing to change about {person.pseudonym}.")
            return 0
        _save(store, person)
    print("\n".join(_facts(person)))
    return 0


def run_show(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        history = store.history(store.find_person(arguments.name).id)
    person = history.person
    counts = {
        "sessions": len(history.sessions),
        "measurements": len(history.measurements),
        "events": len(history.events),
        "exercises logged": len(history.exercises_done),
    }
    lines = [*_facts(person), *(_line(name, str(count)) for name, count in counts.items())]
    print("\n".join([*lines, _line("identifier", person.id)]))
    return 0


def run_delete(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.name)
        count = len(store.sessions(person.id))
        sentence = f"This deletes {person.pseudonym} for good, with {_sessions(count)}."
        if not arguments.yes and person.pseudonym != ask(
            sentence, "Type the pseudonym to confirm: "
        ):
            print("Nothing was deleted.")
            return 0
        clean = store.delete_person(person.id)
        copies = backup_files(store.path)
    print(f"Deleted {person.pseudonym} for good, with {_sessions(count)}.")
    if not clean:
        print(
            "Traces may stay in the data files until every other program that has them open is "
            "closed."
        )
    print_copies(copies, "them")
    return 0


def _add_facts(parser: argparse.ArgumentParser) -> None:
    """Add the options for what may be known about a person."""

    def choices(values: Iterable[str]) -> list[str]:
        return [*values, "none"]

    sides = [side.value for side in Side]
    parser.add_argument("--affected", choices=choices([*sides, "both"]), help="the affected side")
    parser.add_argument("--dominant", choices=choices(sides), help="the dominant hand")
    parser.add_argument(
        "--since", metavar="DATE", help="when it began: 2026, 2026-03 or 2026-03-14"
    )
    parser.add_argument("--onset", choices=choices(Onset), help="how it began")
    parser.add_argument("--age", dest="age_band", choices=choices(AgeBand), help="age in years")
    parser.add_argument("--diabetes", choices=choices(_YES_NO), help="whether they have diabetes")
    parser.add_argument(
        "--thyroid", choices=choices(_YES_NO), help="whether they have a thyroid disease"
    )


def _with_facts(person: Person, arguments: argparse.Namespace) -> Person:
    """Return the person with the facts that were given; "none" removes one."""
    readers: dict[str, Callable[[str], object]] = {
        "affected": lambda word: tuple(Side) if word == "both" else (Side(word),),
        "dominant": Side,
        "since": str,
        "onset": Onset,
        "age_band": AgeBand,
        "diabetes": _YES_NO.__getitem__,
        "thyroid": _YES_NO.__getitem__,
    }
    changes: dict[str, Any] = {}
    for name, read in readers.items():
        word = getattr(arguments, name)
        if word == "none":
            changes[name] = () if name == "affected" else None
        elif word is not None:
            changes[name] = read(word)
    return replace(person, **changes)


def _save(store: Store, person: Person) -> None:
    if any(person.pseudonym == other.id for other in store.people()):
        raise InputError("This is another person's identifier. Choose a pseudonym.")
    store.save_person(person)


def _facts(person: Person) -> list[str]:
    """Return a line for each fact about a person."""
    stated = {True: "yes", False: "no", None: None}
    facts = {
        "person": _shown_name(person),
        "affected side": _affected(person),
        "dominant hand": person.dominant,
        "since": person.since,
        "began with": person.onset,
        "age": person.age_band,
        "diabetes": stated[person.diabetes],
        "thyroid disease": stated[person.thyroid],
    }
    return [_line(name, value or "not stated") for name, value in facts.items()]


def _line(name: str, value: str) -> str:
    return f"{name.ljust(_NAME_WIDTH)}  {value}"


def _sessions(count: int) -> str:
    return "1 session" if count == 1 else f"{count} sessions"


def _shown_name(person: Person) -> str:
    return f"{person.pseudonym} (demo)" if person.demo else person.pseudonym


def _affected(person: Person) -> str:
    return " and ".join(side.value for side in person.affected) or "not stated"
