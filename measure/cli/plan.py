"""The command `thawline plan`: the home programme that a clinician chose, and its log."""

import argparse
import datetime as dt

from measure.cli.events import a_day
from measure.cli.open_store import open_store
from measure.cli.terminal_table import table
from measure.domain.records import Plan, PlannedStretch, Stretch
from measure.errors import InputError
from measure.progress.home_programme import STRETCHES, plan_on, weeks_done
from measure.system.clock import new_id

#: Weeks that are listed, the present one included. [technical]
_WEEKS_SHOWN = 8


def configure(parser: argparse.ArgumentParser) -> None:
    """Show, set or end a home programme of stretches, and log what was done.

    The clinician chooses the stretches, how often, how long each is held and the pain rating
    at which to stop. A new plan takes the place of the one before from its first day on.
    Weeks are listed as they were; nothing here asks for more.

    stretches:
      table-slide-forward  table-slide-sideways  pendulum  wall-walk
      external-rotation-at-handle  internal-rotation-at-handle  cross-body  towel

    exit codes:
      0  done
      2  wrong use, or nobody of that name

    examples:
      thawline plan Rosa
      thawline plan Rosa set pendulum:3 wall-walk:2:15 --pain-limit 4 --by physiotherapist
      thawline plan Rosa done wall-walk
      thawline plan Rosa end
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.set_defaults(run=run_show)
    actions = parser.add_subparsers(metavar="ACTION")
    choose = actions.add_parser("set", help="begin a plan")
    choose.add_argument(
        "stretches",
        nargs="+",
        type=_planned,
        metavar="STRETCH:TIMES:HOLD",
        help="a stretch, times a day, seconds to hold it (left out: not held)",
    )
    choose.add_argument(
        "--pain-limit", type=int, required=True, metavar="N", help="pain rating at which to stop"
    )
    choose.add_argument("--from", dest="first_day", type=a_day, metavar="DATE", help="first day")
    choose.add_argument("--by", default="", metavar="WHO", help="who chose it, without a name")
    choose.set_defaults(run=run_set)
    end = actions.add_parser("end", help="end the plan")
    end.add_argument("--from", dest="first_day", type=a_day, metavar="DATE", help="from this day")
    end.set_defaults(run=run_end)
    done = actions.add_parser("done", help="log a stretch that was done just now")
    done.add_argument("stretch", choices=[stretch.value for stretch in Stretch], metavar="STRETCH")
    done.set_defaults(run=run_done)


def run_show(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        plans, stretches = store.plans(person.id), store.stretches(person.id)
        today = store.now().day
    print(f"{person.pseudonym}{' (demo: a made-up person)' if person.demo else ''}\n")
    plan = plan_on(plans, today)
    if plan is None or not plan.stretches:
        print("There is no plan of stretches today.")
    else:
        print(_words(plan))
        rows = [
            [STRETCHES[planned.stretch].name, str(planned.times_a_day), _hold(planned)]
            for planned in plan.stretches
        ]
        print("\n" + table(rows, ["stretch", "times a day", "hold"]))
    first = today - dt.timedelta(days=today.weekday() + 7 * (_WEEKS_SHOWN - 1))
    weeks = [week for week in weeks_done(plans, stretches, first, today) if week.planned]
    if weeks:
        rows = [[week.monday.isoformat(), str(week.planned), str(week.done)] for week in weeks]
        print("\n" + table(rows, ["week from", "planned", "done"]))
    return 0


def run_set(arguments: argparse.Namespace) -> int:
    return _begin(arguments, tuple(arguments.stretches), arguments.pain_limit, arguments.by)


def run_end(arguments: argparse.Namespace) -> int:
    return _begin(arguments, (), 0, "")


def run_done(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        person = store.find_person(arguments.person)
        log = store.log_stretch(person.id, Stretch(arguments.stretch))
    print(f"Noted: {STRETCHES[log.stretch].name}, {log.done.local.strftime('%Y-%m-%d %H:%M')}.")
    return 0


def _begin(
    arguments: argparse.Namespace,
    stretches: tuple[PlannedStretch, ...],
    pain_limit: int,
    chosen_by: str,
) -> int:
    with open_store() as store:
        plan = Plan(
            id=new_id(),
            person_id=store.find_person(arguments.person).id,
            first_day=arguments.first_day or store.now().day,
            stretches=stretches,
            pain_limit=pain_limit,
            chosen_by=chosen_by,
        )
        store.save_plan(plan)
    print(_words(plan) if stretches else f"No plan from {plan.first_day.isoformat()} on.")
    return 0


def _words(plan: Plan) -> str:
    chosen = f" Chosen by: {plan.chosen_by}." if plan.chosen_by else ""
    return (
        f"Plan from {plan.first_day.isoformat()} on; stop at pain {plan.pain_limit} of 10.{chosen}"
    )


def _hold(planned: PlannedStretch) -> str:
    return f"{planned.hold_s} s" if planned.hold_s else ""


def _planned(text: str) -> PlannedStretch:
    """Return what "wall-walk:2:15" or "pendulum:3" says, for argparse."""
    name, times, hold, *more = (*text.split(":"), "0", "0")[: max(3, text.count(":") + 1)]
    try:
        if more:
            raise ValueError
        return PlannedStretch(stretch=Stretch(name), times_a_day=int(times), hold_s=int(hold))
    except ValueError:
        raise argparse.ArgumentTypeError(
            f"{text[:60]!r} is not written like wall-walk:2:15 with one of the stretches"
        ) from None
    except InputError as error:
        raise argparse.ArgumentTypeError(str(error)) from None
