"""`thawline people`: who is measured here, by pseudonym."""

import argparse
import json

from measure.cli.deletion import ask, print_copies
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.landmarks import Side
from measure.domain.records import Onset, Person
from measure.errors import InputError
from measure.storage.location import backup_files
from measure.system.clock import new_id
from measure.system.json_codec import to_data


def configure(parser: argparse.ArgumentParser) -> None:
    """List, add, show or delete the people who are measured here, by pseudonym.

    Choose pseudonyms that only you can tell apart. Everything besides the pseudonym may stay
    unsaid. Deleting removes a person and all their sessions for good.

    exit codes:
      0  done
      2  wrong use, or nobody of that name

    examples:
      thawline people
      thawline people add Rosa --affected left --dominant right --since 2026-03 --onset gradual
      thawline people show Rosa
      thawline people delete Rosa
    """
    parser.add_argument("--json", action="store_true", help="print the list as JSON")
    parser.set_defaults(run=run_list)
    actions = parser.add_subparsers(metavar="ACTION")
    add = actions.add_parser("add", help="add a person")
    add.add_argument("name", metavar="NAME", help="a pseudonym, 1 to 60 characters")
    add.add_argument("--affected", choices=["left", "right", "both"], help="the affected side")
    add.add_argument("--dominant", choices=["left", "right"], help="the dominant hand")
    add.add_argument("--since", metavar="DATE", help="since when: 2026, 2026-03 or 2026-03-14")
    add.add_argument("--onset", choices=[onset.value for onset in Onset], help="how it began")
    add.set_defaults(run=run_add)
    show = actions.add_parser("show", help="show what is known about a person")
    show.add_argument("name", metavar="PERSON", help="pseudonym")
    show.set_defaults(run=run_show)
    delete = actions.add_parser("delete", help="delete a person and all their sessions for good")
    delete.add_argument("name", metavar="PERSON", help="pseudonym")
    delete.add_argument("--yes", action="store_true", help="do not ask, for scripts")
    delete.set_defaults(run=run_delete)


def run_list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        people = store.people()
        sessions = {person.id: store.sessions(person.id) for person in people}
    if arguments.json:
        print(json.dumps(to_data(people), ensure_ascii=False, indent=2))
        return 0
    if not people:
        print("Nobody has been added yet. Add somebody with: thawline people add NAME")
        return 0
    lines = []
    for person in people:
        own = sessions[person.id]
        last = own[-1].started.day.isoformat() if own else ""
        lines.append([_shown_name(person), _affected(person), str(len(own)), last])
    print(table(lines, ["person", "affected", "sessions", "last session"]))
    return 0


def run_add(arguments: argparse.Namespace) -> int:
    affected = {None: (), "left": (Side.LEFT,), "right": (Side.RIGHT,), "both": tuple(Side)}
    person = Person(
        id=new_id(),
        pseudonym=arguments.name,
        affected=affected[arguments.affected],
        dominant=Side(arguments.dominant) if arguments.dominant else None,
        since=arguments.since,
        onset=Onset(arguments.onset) if arguments.onset else None,
    )
    with open_store() as store:
        if any(person.pseudonym == other.id for other in store.people()):
            raise InputError("This is the identifier of another person. Choose a pseudonym.")
        store.save_person(person)
    print(f"Added {person.pseudonym}.")
    return 0


def run_show(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        history = store.history(store.find_person(arguments.name).id)
    person = history.person
    rows = [
        ["person", _shown_name(person)],
        ["affected side", _affected(person)],
        ["dominant hand", person.dominant.value if person.dominant else "not stated"],
        ["since", person.since or "not stated"],
        ["began with", person.onset.value if person.onset else "not stated"],
        ["sessions", str(len(history.sessions))],
        ["measurements", str(len(history.measurements))],
        ["events", str(len(history.events))],
        ["stretches logged", str(len(history.stretches))],
        ["identifier", person.id],
    ]
    width = max(len(name) for name, _ in rows)
    print("\n".join(f"{name.ljust(width)}  {value}" for name, value in rows))
    return 0


def run_delete(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.name)
        count = len(store.sessions(person.id))
        sentence = f"This deletes {person.pseudonym} for good, with {_sessions(count)}."
        if not arguments.yes and person.pseudonym != ask(sentence, "Type the pseudonym to go on: "):
            print("Nothing was deleted.")
            return 0
        clean = store.delete_person(person.id)
        copies = backup_files(store.path)
    print(f"Deleted {person.pseudonym} for good, with {_sessions(count)}.")
    if not clean:
        print(
            "Traces may stay in the store's files until every other program that has it open "
            "is closed."
        )
    print_copies(copies, "them")
    return 0


def _sessions(count: int) -> str:
    return "1 session" if count == 1 else f"{count} sessions"


def _shown_name(person: Person) -> str:
    return f"{person.pseudonym} (demo)" if person.demo else person.pseudonym


def _affected(person: Person) -> str:
    return " and ".join(side.value for side in person.affected) or "not stated"
