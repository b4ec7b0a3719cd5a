"""The command `thawline sessions`: a person's sessions; deletes one, or corrects its pain."""

import argparse
import json
from itertools import groupby

from measure.cli.deletion import ask, print_copies
from measure.cli.main import NOTICE
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.movements import MOVEMENTS
from measure.domain.records import MeasurementRecord, Pain, SessionRecord
from measure.errors import InputError
from measure.report.measurement_wording import (
    interval_text,
    reason_codes,
    reason_legend,
    value_text,
)
from measure.report.pain_correction import PainRatings, correct_pain
from measure.storage.location import backup_files
from measure.system.json_codec import to_data

#: What stands for a rating that stays as it is. [technical]
_KEPT = -1


def configure(parser: argparse.ArgumentParser) -> None:
    """Print a person's sessions: each movement with its interval, or why it was not measured.

    To delete a session for good, because it was a mistake or someone else's, give --delete and the
    time shown in the list.

    To correct pain that was saved wrongly, give --correct-pain with that time, and the right
    numbers. The session's note keeps the day of the correction and the earlier numbers.

    exit codes:
      0  done, even if every measurement was refused
      2  wrong use, no person of that name, or no session at that time

    examples:
      thawline sessions Rosa
      thawline sessions Rosa --last 3
      thawline sessions Rosa --json
      thawline sessions Rosa --delete "2026-03-14 18:20"
      thawline sessions Rosa --correct-pain "2026-03-14 18:20" --at-rest 1 --worst none
      thawline sessions Rosa --correct-pain "2026-03-14 18:20" --during flexion left 3
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.add_argument("--last", type=_count, metavar="N", help="only the latest N sessions")
    parser.add_argument("--json", action="store_true", help="print everything as JSON")
    change = parser.add_mutually_exclusive_group()
    change.add_argument(
        "--delete", metavar="TIME", help="delete the session at this time, as listed, for good"
    )
    change.add_argument(
        "--correct-pain",
        metavar="TIME",
        help="correct the pain of the session at this time, as listed",
    )
    parser.add_argument(
        "--yes",
        action="store_true",
        help="with --delete: do not ask for confirmation (for scripts)",
    )
    for option, name in (
        ("--at-rest", "pain at rest"),
        ("--at-night", "pain in the night before"),
        ("--worst", "worst pain in 24 hours"),
    ):
        parser.add_argument(
            option,
            type=_rating,
            default=_KEPT,
            metavar="N",
            help=f"with --correct-pain: {name}, 0 to 10, or none",
        )
    parser.add_argument(
        "--during",
        nargs=3,
        action="append",
        default=[],
        metavar=("MOVEMENT", "SIDE", "N"),
        help="with --correct-pain: pain during a movement, such as flexion left 3; may be repeated",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    if arguments.correct_pain is not None:
        return _correct_pain(arguments)
    given = {arguments.at_rest, arguments.at_night, arguments.worst} != {_KEPT}
    if given or arguments.during:
        raise InputError("Give --correct-pain with the time of the session, too.")
    return _list(arguments) if arguments.delete is None else _delete(arguments)


def _correct_pain(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        session = _session_at(store.sessions(person.id), arguments.correct_pain)
        records = store.measurements(person.id, session_id=session.id)
        during: dict[str, int | None] = {}
        for movement, side, rating in arguments.during:
            during |= _during(records, movement, side, rating)
        pain = session.pain
        before = Pain(
            rest=pain.rest if arguments.at_rest == _KEPT else arguments.at_rest,
            night=pain.night if arguments.at_night == _KEPT else arguments.at_night,
            worst_24h=pain.worst_24h if arguments.worst == _KEPT else arguments.worst,
        )
        correction = correct_pain(store, session.id, PainRatings(before=before, during=during))
    print(correction.line or "Nothing to change.")
    return 0


def _during(
    records: list[MeasurementRecord], movement: str, side: str, rating: str
) -> dict[str, int | None]:
    """Return the pain during a movement, by its measurement; the last one if there are more.

    Raises
    ------
    InputError
        When it was not measured in the session, or the rating is not a number.
    """
    matching = [
        record
        for record in records
        if (record.measurement.movement.value, record.measurement.side.value) == (movement, side)
    ]
    if not matching:
        raise InputError(
            f"The session has no movement {movement!r} of the side {side!r}. Give them as "
            "`thawline sessions --json` names them, such as: external-rotation left"
        )
    try:
        return {matching[-1].id: _rating(rating)}
    except argparse.ArgumentTypeError as fault:
        raise InputError(f"Pain: {fault}.") from None


def _delete(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        session = _session_at(store.sessions(person.id), arguments.delete)
        count = len(store.measurements(person.id, session_id=session.id))
        words = f"the session of {person.pseudonym} at {_time(session)}, measurements: {count}"
        sentence = f"This deletes for good: {words}."
        if not arguments.yes and ask(sentence, "Type yes to confirm: ").lower() != "yes":
            print("Nothing was deleted.")
            return 0
        store.delete_session(session.id)
        copies = backup_files(store.path)
    print(f"Deleted for good: {words}.")
    print_copies(copies, "it")
    return 0


def _session_at(sessions: list[SessionRecord], time: str) -> SessionRecord:
    """Return the one session of a time.

    Raises
    ------
    InputError
        When there is none, or more than one.
    """
    matching = [session for session in sessions if _time(session) == time.strip()]
    if not matching:
        raise InputError(
            f"There is no session at {time!r}. Give the time as `thawline sessions` lists it, "
            'such as "2026-03-14 18:20".'
        )
    if len(matching) > 1:
        raise InputError(
            f"{len(matching)} sessions began at {time!r}. Choose the right one in the window: "
            "Progress, All sessions."
        )
    return matching[0]


def _list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        sessions = store.sessions(person.id)
        records = store.measurements(person.id)
    if arguments.last:
        sessions = sessions[-arguments.last :]
    groups = groupby(records, key=lambda record: record.session_id)
    measured = {session: list(group) for session, group in groups}
    if arguments.json:
        content = [
            to_data(session) | {"measurements": to_data(measured.get(session.id, []))}
            for session in sessions
        ]
        print(json.dumps(content, ensure_ascii=False, indent=2))
        return 0
    if not sessions:
        print(f"No sessions yet for {person.pseudonym}.")
        return 0
    rows = [row for session in sessions for row in _rows(session, measured.get(session.id, []))]
    demo = " (demo: a made-up person)" if person.demo else ""
    print(f"{person.pseudonym}{demo}\n")
    header = ["session", "movement", "side", "value", "95 % interval", "pain", "noted"]
    print(table(rows, header))
    shown = [record.measurement for session in sessions for record in measured.get(session.id, [])]
    explained = [f"\n{line}" for line in reason_legend(shown)]
    print("".join(explained))
    print(f"Pain: at rest/at night/worst in 24 hours, and during a movement, 0-10.\n{NOTICE}")
    return 0


def _rows(session: SessionRecord, records: list[MeasurementRecord]) -> list[list[str]]:
    state = "" if session.finished else "not finished"
    rows = [[_time(session), "", "", "", "", _pain(session.pain), state]]
    for record in records:
        measurement = record.measurement
        rows.append(
            [
                "",
                MOVEMENTS[measurement.movement].name,
                measurement.side.value,
                value_text(measurement),
                interval_text(measurement),
                "" if record.pain_during is None else str(record.pain_during),
                reason_codes(measurement),
            ]
        )
    return rows


def _time(session: SessionRecord) -> str:
    """Return when a session began, by the clock of the place; what names it here."""
    return session.started.local.strftime("%Y-%m-%d %H:%M")


def _pain(pain: Pain) -> str:
    ratings = (pain.rest, pain.night, pain.worst_24h)
    if ratings == (None, None, None):
        return ""
    return "/".join("-" if rating is None else str(rating) for rating in ratings)


def _rating(text: str) -> int | None:
    """Return a rating of pain, or None for "none"."""
    if text == "none":
        return None
    if text.isdecimal() and len(text) <= 2:
        return int(text)
    raise argparse.ArgumentTypeError(f"expected a number from 0 to 10, or none, not {text!r}")


def _count(text: str) -> int:
    if not text.isdecimal() or int(text) < 1:
        raise argparse.ArgumentTypeError(f"expected a number of at least 1, not {text!r}")
    return int(text)
