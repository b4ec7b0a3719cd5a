"""The command `thawline events`: what happened between sessions and may change a trend."""

import argparse
import datetime as dt

from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.landmarks import Side
from measure.domain.records import OFFERED_EVENTS, Event, EventKind
from measure.errors import InputError
from measure.progress.home_programme import events_with_plans
from measure.system.clock import new_id


def configure(parser: argparse.ArgumentParser) -> None:
    """List, add or delete events between sessions: an injection, another camera.

    An injection, any procedure, a flare and a change of camera or model start a new series, so
    that no trend is drawn across them. Readings before and after a treatment, a flare, another
    medicine or a new programme are compared. Other events are only noted. A new plan of exercises
    is listed automatically as a change of programme; it has no number, because it cannot be
    deleted here.

    kinds:
      injection  hydrodilatation  manipulation-under-anaesthesia  capsular-release
      procedure (another one)  flare  therapy-began  therapy-ended  programme-changed
      medicine-changed  clinic-visit  camera-changed  model-changed  other

    exit codes:
      0  done
      2  wrong use, or no one of that name

    examples:
      thawline events Rosa
      thawline events Rosa add injection --day 2026-09-16 --side left
      thawline events Rosa add camera-changed --note "new laptop"
      thawline events Rosa delete 1
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.set_defaults(run=run_list)
    actions = parser.add_subparsers(metavar="ACTION")
    add = actions.add_parser("add", help="add an event")
    add.add_argument(
        "kind",
        choices=[kind.value for kind in OFFERED_EVENTS],
        metavar="KIND",
        help="kind of event",
    )
    add.add_argument("--day", type=a_day, metavar="DATE", help="the day (default: today)")
    add.add_argument("--side", choices=[side.value for side in Side], help="the side it concerns")
    add.add_argument("--note", default="", metavar="TEXT", help="a note in your own words")
    add.set_defaults(run=run_add)
    delete = actions.add_parser("delete", help="delete an event")
    delete.add_argument("number", type=int, metavar="NUMBER", help="its number in the list")
    delete.set_defaults(run=run_delete)


def a_day(text: str) -> dt.date:
    """Return a date typed as YYYY-MM-DD, for argparse."""
    try:
        return dt.date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text[:40]!r} is not a date like 2026-03-14") from None


def run_list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        history = store.history(person.id)
    events = events_with_plans(history)
    if not events:
        print(f"No events yet for {person.pseudonym}.")
        return 0
    numbers = {event.id: str(number) for number, event in enumerate(history.events, start=1)}
    print(f"{person.pseudonym}{' (demo: a made-up person)' if person.demo else ''}\n")
    rows = [[numbers.get(event.id, ""), *_row(event)] for event in events]
    print(table(rows, ["number", "day", "event", "side", "note"]))
    return 0


def run_add(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        event = Event(
            id=new_id(),
            person_id=person.id,
            day=arguments.day or store.now().day,
            kind=EventKind(arguments.kind),
            side=Side(arguments.side) if arguments.side else None,
            note=arguments.note,
        )
        store.save_event(event)
    print(f"Saved: {' '.join(filter(None, _row(event)))}.")
    return 0


def run_delete(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        events = store.events(person.id)
        if not 1 <= arguments.number <= len(events):
            raise InputError(
                f"{person.pseudonym} has no event {arguments.number}. List the numbers with: "
                f"thawline events {person.pseudonym}"
            )
        event = events[arguments.number - 1]
        store.delete_event(event.id)
    print(f"Deleted: {' '.join(filter(None, _row(event)))}.")
    return 0


def _row(event: Event) -> list[str]:
    side = event.side.value if event.side else ""
    return [event.day.isoformat(), event.kind.value, side, event.note]
