"""The command `thawline plan`: the home programme that a clinician chose, and its log."""

import argparse
import datetime as dt
import re
from dataclasses import replace

from measure.cli.events import a_day
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.exercises import Exercise, ListedExercise
from measure.domain.home_programme_records import (
    LEAST_PAIN_LIMIT,
    ComparedWithLast,
    ExerciseLog,
    NextMorning,
    Plan,
    PlannedExercise,
)
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import History, Person
from measure.errors import InputError
from measure.progress.home_programme import dose_words, eased_on, plan_on, weeks_done
from measure.storage.store import Store
from measure.system.clock import new_id

#: Weeks that are listed, the present one included. [technical]
_WEEKS_SHOWN = 8

#: An exercise of a plan as it is typed: name, repetitions x hold, times a day, side.
_TYPED = re.compile(r"(.+):(\d{1,3})x(\d{1,3}):(\d{1,3})(?::(left|right|both))?")
_SIDES = {"left": (Side.LEFT,), "right": (Side.RIGHT,), "both": (Side.LEFT, Side.RIGHT)}
_COMPARED = {
    ComparedWithLast.EASIER: "easier than the last time",
    ComparedWithLast.SAME: "the same as the last time",
    ComparedWithLast.HARDER: "harder than the last time",
}
#: The form of earlier versions, name:times:hold, and what is like it.
_OLD_FORM = re.compile(r"[^:]+:\d+(:\d+)?")


def configure(parser: argparse.ArgumentParser) -> None:
    """Show, set or end a programme of exercises, and log what was done.

    The clinician chooses the exercises, the number of repetitions, how long each is held, how many
    times a day, and the pain rating at which to stop. A new plan replaces the one before from its
    first day; if exercises and pain rating are the same, the plan simply continues. Weeks are
    listed as they were; nothing here asks for more.

    An exercise is written NAME:REPETITIONSxHOLD:TIMES, the hold in seconds and the times a day:
    wall-walk:10x15:3 is ten repetitions, each held for 15 seconds, three times a day. You can
    add a side (wall-walk:10x15:3:both); otherwise it is the affected side. Name and describe an
    exercise that is not in the list with --own.

    exercises:
      table-slide-forward  table-slide-sideways  pendulum  wall-walk
      external-rotation-at-handle  internal-rotation-at-handle  extension-at-handle
      behind-back-at-handle  cross-body  towel

    exit codes:
      0  done
      2  wrong use, or no one of that name

    examples:
      thawline plan Rosa
      thawline plan Rosa set pendulum:20x0:3 wall-walk:10x15:2 --pain-limit 4
      thawline plan Rosa set "door lean:5x20:2" --own "door lean: Lean in a doorway." --pain-limit 4
      thawline plan Rosa done wall-walk --pain 3 --same
      thawline plan Rosa settled yes
      thawline plan Rosa end
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.set_defaults(run=run_show)
    actions = parser.add_subparsers(metavar="ACTION")
    _configure_set(actions.add_parser("set", help="start a plan"))
    end = actions.add_parser("end", help="end the plan")
    end.add_argument(
        "--from",
        dest="first_day",
        type=a_day,
        metavar="DATE",
        help="first day without the plan (default: today)",
    )
    end.set_defaults(run=run_end)
    _configure_done(actions.add_parser("done", help="log an exercise that has just been done"))
    morning = actions.add_parser(
        "settled", help="record whether the shoulder had settled by the next morning"
    )
    morning.add_argument("answer", choices=["yes", "no"], help="whether it had settled")
    morning.add_argument(
        "--day",
        type=a_day,
        metavar="DATE",
        help="day of the exercises (default: the last day with exercises before today)",
    )
    morning.set_defaults(run=run_morning)


def _configure_set(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "exercises",
        nargs="+",
        metavar="EXERCISE",
        help="NAME:REPETITIONSxHOLD:TIMES, such as wall-walk:10x15:3 (hold in seconds)",
    )
    parser.add_argument(
        "--own",
        action="append",
        default=[],
        metavar="NAME: SENTENCE",
        help="an exercise of the clinician's own and how it is done; may be repeated",
    )
    parser.add_argument(
        "--note",
        action="append",
        default=[],
        metavar="NAME: NOTE",
        help="a note from the clinician on a listed exercise; may be repeated",
    )
    parser.add_argument(
        "--pain-limit",
        type=int,
        required=True,
        metavar="N",
        help="pain rating at which to stop, 1 to 10",
    )
    parser.add_argument("--from", dest="first_day", type=a_day, metavar="DATE", help="first day")
    parser.add_argument("--review", type=a_day, metavar="DATE", help="day of the next review")
    parser.add_argument(
        "--primary",
        nargs="+",
        default=[],
        choices=[movement.value for movement in Movement],
        metavar="MOVEMENT",
        help="movements that the verdicts are based on, at most three (default: external rotation, "
        "flexion and hand behind back)",
    )
    parser.add_argument(
        "--by",
        default="",
        metavar="WHO",
        help="who chose it, such as physiotherapist; no name is needed",
    )
    parser.set_defaults(run=run_set)


def _configure_done(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "exercise", metavar="EXERCISE", help="an exercise from the list or the plan"
    )
    parser.add_argument("--pain", type=int, metavar="N", help="worst pain reached, 0 to 10")
    parser.add_argument(
        "--repetitions",
        type=int,
        metavar="N",
        help="number of repetitions, if it was only partly done",
    )
    compared = parser.add_mutually_exclusive_group()
    for word in ComparedWithLast:
        compared.add_argument(
            f"--{word.value}",
            dest="compared",
            action="store_const",
            const=word,
            help=_COMPARED[word],
        )
    parser.set_defaults(run=run_done)


def run_show(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        history, today = store.history(person.id), store.now().day
    print(f"{person.pseudonym}{' (demo: a made-up person)' if person.demo else ''}\n")
    plan = plan_on(history.plans, today)
    if plan is None or not plan.exercises:
        print("There is no exercise plan for today.")
    else:
        print(_words(plan))
        rows = [[item.exercise.name, dose_words(item), item.note] for item in plan.exercises]
        print("\n" + table(rows, ["exercise", "dose", "note"]))
    _print_weeks(history, today)
    return 0


def run_set(arguments: argparse.Namespace) -> int:
    if arguments.pain_limit < LEAST_PAIN_LIMIT:
        raise InputError("Pain 0 is no pain at all. To stop at the first pain, give 1.")
    own, notes = _by_name(arguments.own), _by_name(arguments.note)
    with open_store() as store:
        person = store.find_person(arguments.person)
        plan = Plan(
            id=new_id(),
            person_id=person.id,
            first_day=arguments.first_day or store.now().day,
            exercises=tuple(_planned(text, own, notes, person) for text in arguments.exercises),
            pain_limit=arguments.pain_limit,
            chosen_by=arguments.by,
            review=arguments.review,
            primary=tuple(Movement(name) for name in arguments.primary),
        )
        planned = {_typed_name(item.exercise) for item in plan.exercises}
        for name in (*own, *notes):
            if name not in planned:
                raise InputError(
                    f"{name!r} is described but is not one of the exercises of the plan."
                )
        if arguments.first_day is None:
            plan = _same_or_following(plan, plan_on(store.plans(person.id), plan.first_day))
        store.save_plan(plan)
    print(_words(plan))
    return 0


def _same_or_following(plan: Plan, before: Plan | None) -> Plan:
    """Return the plan in force with its new review and so on if nothing else changed."""
    if before is None or not plan.prescribes_the_same_as(before):
        return plan
    return replace(plan, id=before.id, first_day=before.first_day)


def run_end(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        first_day = arguments.first_day or store.now().day
        store.save_plan(
            Plan(id=new_id(), person_id=person.id, first_day=first_day, exercises=(), pain_limit=0)
        )
    print(f"No plan from {first_day.isoformat()} on.")
    return 0


def run_done(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        log = ExerciseLog(
            id=new_id(),
            person_id=person.id,
            exercise=_exercise_done(store, person, arguments.exercise),
            done=store.now(),
            pain=arguments.pain,
            compared=arguments.compared,
            repetitions=arguments.repetitions,
        )
        store.save_exercise_log(log)
    facts = [
        log.exercise.name,
        log.done.local.strftime("%Y-%m-%d %H:%M"),
        "" if log.repetitions is None else f"{log.repetitions} repetitions",
        "" if log.pain is None else f"pain {log.pain} of 10",
        "" if log.compared is None else _COMPARED[log.compared],
    ]
    print(f"Saved: {', '.join(fact for fact in facts if fact)}.")
    return 0


def run_morning(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        today = store.now().day
        days = [log.done.day for log in store.exercises_done(person.id) if log.done.day < today]
        day = arguments.day or max(days, default=None)
        if day not in days:
            raise InputError(f"{person.pseudonym} has no exercises logged before today.")
        before = [morning for morning in store.next_mornings(person.id) if morning.day == day]
        morning = NextMorning(
            id=before[-1].id if before else new_id(),
            person_id=person.id,
            day=day,
            eased=arguments.answer == "yes",
        )
        store.save_next_morning(morning)
    print(f"Saved: {'settled' if morning.eased else 'not settled'} the morning after {day}.")
    return 0


def _print_weeks(history: History, today: dt.date) -> None:
    """Print what was done of each week's plan, and the last answer about a next morning."""
    first = today - dt.timedelta(days=today.weekday() + 7 * (_WEEKS_SHOWN - 1))
    weeks = weeks_done(history.plans, history.exercises_done, first, today)
    rows = [
        [week.monday.isoformat(), str(week.planned), str(week.done), str(week.in_part or "")]
        for week in weeks
        if week.planned
    ]
    if rows:
        print("\n" + table(rows, ["week from", "planned", "done", "of these partly done"]))
    if history.next_mornings:
        day = history.next_mornings[-1].day
        answer = "settled" if eased_on(history.next_mornings, day) else "not settled"
        print(f"\nThe morning after {day.isoformat()}: {answer}.")


def _words(plan: Plan) -> str:
    chosen = f" Chosen by: {plan.chosen_by}." if plan.chosen_by else ""
    review = f" Review on {plan.review.isoformat()}." if plan.review else ""
    return (
        f"Plan from {plan.first_day.isoformat()} on; stop at pain {plan.pain_limit} of 10."
        f"{chosen}{review}"
    )


def _planned(
    text: str, own: dict[str, str], notes: dict[str, str], person: Person
) -> PlannedExercise:
    """Return what "wall-walk:10x15:3" says; InputError names what is wrong with it."""
    typed = _TYPED.fullmatch(text)
    if typed is None:
        hint = " The repetitions come first: NAME:REPETITIONSxHOLD:TIMES."
        raise InputError(
            f"{text[:60]!r} is not written like wall-walk:10x15:3 (ten repetitions, held for 15 "
            f"seconds, three times a day).{hint if _OLD_FORM.fullmatch(text) else ''}"
        )
    name, repetitions, hold_s, times, side = typed.groups()
    exercise = _exercise(name, own)
    key = _typed_name(exercise)
    return PlannedExercise(
        exercise=exercise,
        repetitions=int(repetitions),
        hold_s=int(hold_s),
        times_a_day=int(times),
        sides=person.affected if side is None else _SIDES[side],
        note=own.get(key) or notes.get(key, ""),
    )


def _exercise(name: str, own: dict[str, str]) -> Exercise:
    """Return the exercise of the list, or the clinician's own among `own`, with that name."""
    if name in set(ListedExercise):
        return Exercise(listed=ListedExercise(name))
    exercise = Exercise(own_name=name)
    if exercise.own_name not in own:
        raise InputError(
            f"{name[:60]!r} is not a listed exercise. Describe one of the clinician's own "
            f'with: --own "{name[:60]}: SENTENCE"'
        )
    return exercise


def _typed_name(exercise: Exercise) -> str:
    return exercise.listed.value if exercise.listed else exercise.own_name


def _by_name(texts: list[str]) -> dict[str, str]:
    """Return the sentences of "NAME: SENTENCE" by their names."""
    sentences = {}
    for text in texts:
        name, colon, sentence = text.partition(":")
        if not colon or not sentence.strip():
            raise InputError(f"{text[:60]!r} is not written like NAME: SENTENCE.")
        sentences[_typed_name(Exercise(own_name=name))] = sentence.strip()
    return sentences


def _exercise_done(store: Store, person: Person, name: str) -> Exercise:
    """Return the exercise of the list, or of the person's plans, with that name."""
    if name in set(ListedExercise):
        return Exercise(listed=ListedExercise(name))
    planned = [item.exercise for plan in store.plans(person.id) for item in plan.exercises]
    for exercise in reversed(planned):
        if exercise.own_name.casefold() == name.strip().casefold():
            return exercise
    own = sorted({exercise.own_name for exercise in planned if exercise.own_name})
    raise InputError(
        f"There is no exercise {name[:60]!r}. Choose one of: {', '.join([*ListedExercise, *own])}."
    )
