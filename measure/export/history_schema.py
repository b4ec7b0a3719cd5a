"""Versions of the history format: which is written, and how files of the former ones are read.

A new version needs its number here, a step where a field got another name or shape, and a golden
file of the version before, which the tests read. A field that is new needs no step: it is empty in
older files.
"""

from collections.abc import Callable
from typing import Any

#: Version of the format; rises when there is something new, or a reader of the former one would
#: misread a file. [technical]
SCHEMA = 4

_Content = dict[str, Any]


def upgraded(content: _Content, schema: int) -> _Content:
    """Return the content of a file of any version as the present one has it.

    What is not as it should be is passed on as it is, for the reader to say so.
    """
    for version, step in _STEPS.items():
        if schema < version:
            content = step(content)
    return content


def _with_exercises(content: _Content) -> _Content:
    """Return the content of a file of schema 1 or 2 with its stretches as exercises."""
    renamed = {**content}
    if "stretches" in renamed:
        renamed["exercises_done"] = _each(renamed.pop("stretches"), _exercise_of_stretch)
    if "plans" in renamed:
        renamed["plans"] = _each(renamed["plans"], _plan_with_exercises)
    return renamed


def _plan_with_exercises(plan: _Content) -> _Content:
    if "stretches" not in plan:
        return plan
    rest = {name: value for name, value in plan.items() if name != "stretches"}
    return rest | {"exercises": _each(plan["stretches"], _exercise_of_stretch)}


def _exercise_of_stretch(record: _Content) -> _Content:
    if "stretch" not in record:
        return record
    rest = {name: value for name, value in record.items() if name != "stretch"}
    return rest | {"exercise": {"listed": record["stretch"]}}


def _each(items: Any, change: Callable[[_Content], _Content]) -> Any:
    if not isinstance(items, list):
        return items
    return [change(item) if isinstance(item, dict) else item for item in items]


#: Steps by the version that they lead to, the earliest first.
_STEPS: dict[int, Callable[[_Content], _Content]] = {3: _with_exercises}
