"""The command `thawline goals`: what a person wants to do again, and how well it goes."""

import argparse
import datetime as dt
from dataclasses import replace

from measure.cli.events import a_day
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.goal_records import Goal, GoalRating, rate_from, ratings_of
from measure.errors import InputError
from measure.storage.store import Store
from measure.system.clock import new_id


def configure(parser: argparse.ArgumentParser) -> None:
    """List, add, rate or end what a person wants to do again, in their own words.

    A person can have up to three goals at a time. Each is rated about once a month, from 0 (not
    possible at all) to 10 (as well as before). The progress page, the report and exports show the
    ratings; nothing is calculated from them.

    exit codes:
      0  done
      2  wrong use, or no one of that name

    examples:
      thawline goals Rosa
      thawline goals Rosa add "put on a jacket"
      thawline goals Rosa rate 1 4
      thawline goals Rosa end 1
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.set_defaults(run=run_list)
    actions = parser.add_subparsers(metavar="ACTION")
    add = actions.add_parser("add", help="add a goal")
    add.add_argument("words", metavar="WORDS", help="the goal, in the person's own words")
    add.set_defaults(run=run_add)
    rate = actions.add_parser("rate", help="rate how well it goes")
    rate.add_argument("number", type=int, metavar="NUMBER", help="its number in the list")
    rate.add_argument(
        "rating",
        type=int,
        metavar="RATING",
        help="0 (not possible at all) to 10 (as well as before)",
    )
    rate.add_argument("--day", type=a_day, metavar="DATE", help="the day (default: today)")
    rate.set_defaults(run=run_rate)
    end = actions.add_parser("end", help="end a goal; its ratings stay")
    end.add_argument("number", type=int, metavar="NUMBER", help="its number in the list")
    end.set_defaults(run=run_end)
    delete = actions.add_parser("delete", help="delete a goal with its ratings")
    delete.add_argument("number", type=int, metavar="NUMBER", help="its number in the list")
    delete.set_defaults(run=run_delete)


def run_list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        goals, ratings = store.goals.of(person.id), store.goals.ratings(person.id)
    if not goals:
        print(f"No goals yet for {person.pseudonym}.")
        return 0
    print(f"{person.pseudonym}{' (demo: a made-up person)' if person.demo else ''}\n")
    rows = []
    for number, goal in enumerate(goals, start=1):
        rated = ratings_of(goal, ratings)
        marks = ", ".join(f"{rating.day.isoformat()}: {rating.rating}" for rating in rated)
        due = rate_from(rated)
        rows.append([str(number), goal.words, marks, _state(goal, due)])
    print(table(rows, ["number", "goal", "ratings, 0 to 10", ""]))
    return 0


def _state(goal: Goal, due: dt.date | None) -> str:
    if goal.last_day is not None:
        return f"ended {goal.last_day.isoformat()}"
    return "not rated so far" if due is None else f"rate again from {due.isoformat()}"


def run_add(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        goal = Goal(
            id=new_id(), person_id=person.id, words=arguments.words, first_day=store.now().day
        )
        store.goals.save(goal)
    print(f"Added: {goal.words}.")
    return 0


def run_rate(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        goal = _chosen(store, arguments)
        rating = GoalRating(
            id=new_id(),
            person_id=goal.person_id,
            goal_id=goal.id,
            day=arguments.day or store.now().day,
            rating=arguments.rating,
        )
        store.goals.save_rating(rating)
    print(f"Rated on {rating.day.isoformat()}: {goal.words}, {rating.rating} of 10.")
    return 0


def run_end(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        goal = _chosen(store, arguments)
        store.goals.save(replace(goal, last_day=store.now().day))
    print(f"Ended: {goal.words}. Its ratings stay.")
    return 0


def run_delete(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        goal = _chosen(store, arguments)
        store.goals.delete(goal.id)
    print(f"Deleted with its ratings: {goal.words}.")
    return 0


def _chosen(store: Store, arguments: argparse.Namespace) -> Goal:
    """Return the goal with the number of the list."""
    person = store.find_person(arguments.person)
    goals = store.goals.of(person.id)
    if not 1 <= arguments.number <= len(goals):
        raise InputError(
            f"{person.pseudonym} has no goal {arguments.number}. List the numbers with: thawline "
            f"goals {person.pseudonym}"
        )
    chosen: Goal = goals[arguments.number - 1]
    return chosen
