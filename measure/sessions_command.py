"""`thawline sessions`: a person's sessions with what was measured in each."""

import argparse
import json
from itertools import groupby

from measure.command_line import NOTICE
from measure.movements import MOVEMENTS
from measure.plain_data import to_plain
from measure.records import MeasurementRecord, Pain, SessionRecord
from measure.result_words import interval_words, reason_words, table, value_words
from measure.store_at_terminal import open_store


def configure(parser: argparse.ArgumentParser) -> None:
    """Print a person's sessions: each movement with its value and interval, or its refusal.

    exit codes:
      0  done, also where every measurement was refused
      2  wrong use, or nobody of that name

    examples:
      thawline sessions Rosa
      thawline sessions Rosa --last 3
      thawline sessions Rosa --json
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.add_argument("--last", type=_count, metavar="N", help="only the latest N sessions")
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        sessions = store.sessions(person.id)
        found = store.measurements(person.id)
    if arguments.last:
        sessions = sessions[-arguments.last :]
    groups = groupby(found, key=lambda record: record.session_id)
    measured = {session: list(group) for session, group in groups}
    if arguments.json:
        content = [
            to_plain(session) | {"measurements": to_plain(measured.get(session.id, []))}
            for session in sessions
        ]
        print(json.dumps(content, ensure_ascii=False, indent=2))
        return 0
    if not sessions:
        print(f"No session of {person.pseudonym} has been kept yet.")
        return 0
    rows = [row for session in sessions for row in _rows(session, measured.get(session.id, []))]
    demo = " (demo: a made-up person)" if person.demo else ""
    print(f"{person.pseudonym}{demo}\n")
    header = ["session", "movement", "side", "value", "95 % interval", "pain", "noted"]
    print(table(rows, header))
    print(f"\nPain: at rest/at night/worst in 24 hours, and during a movement, 0-10.\n{NOTICE}")
    return 0


def _rows(session: SessionRecord, records: list[MeasurementRecord]) -> list[list[str]]:
    started = session.started.local.strftime("%Y-%m-%d %H:%M")
    state = "" if session.finished else "not finished"
    rows = [[started, "", "", "", "", _pain(session.pain), state]]
    for record in records:
        found = record.measurement
        rows.append(
            [
                "",
                MOVEMENTS[found.movement].name,
                found.side.value,
                value_words(found),
                interval_words(found),
                "" if record.pain_during is None else str(record.pain_during),
                reason_words(found),
            ]
        )
    return rows


def _pain(pain: Pain) -> str:
    ratings = (pain.rest, pain.night, pain.worst_24h)
    if ratings == (None, None, None):
        return ""
    return "/".join("-" if rating is None else str(rating) for rating in ratings)


def _count(text: str) -> int:
    if not text.isdecimal() or int(text) < 1:
        raise argparse.ArgumentTypeError(f"a number of at least 1 is expected, not {text!r}")
    return int(text)
