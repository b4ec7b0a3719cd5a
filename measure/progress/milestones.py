"""Milestones: everyday tasks with the range of motion that they usually need.

A milestone counts as reached when even the lower end of the interval passes it. It is a
description, never a target: nothing here says "only ten degrees more".
"""

from collections.abc import Mapping
from dataclasses import dataclass

from measure.domain.movements import MOVEMENTS, EverydayTask, Movement
from measure.domain.vertebral_levels import height_of
from measure.progress.comparison import Block
from measure.progress.wording import Translate

#: Fewest days with a measurement before a milestone is called reached. [project]
LEAST_DAYS = 3

#: What stands before a vertebral level, and its template for other languages.
_LEVEL, AT_LEVEL = "level ", "level {level}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """An everyday task and the range that it usually needs.

    Attributes
    ----------
    words
        The task, to be read after "Range for:".
    from_value
        The range, in the movement's unit.
    range_words
        The same in words.
    """

    words: str
    from_value: float
    range_words: str

    def range_in(self, tr: Translate) -> str:
        """Return the range in the words of another language; levels of the spine are symbols."""
        level = self.range_words.removeprefix(_LEVEL)
        if level != self.range_words:
            return tr(AT_LEVEL).format(level=level)
        return tr(self.range_words) if self.range_words.isalpha() else self.range_words


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A task, and whether the recent measurements certainly reach its range."""

    task: Task
    reached: bool


def _task(task: EverydayTask) -> Task:
    if isinstance(task.needs, str):
        region = task.needs in ("sacrum", "buttock")
        range_words = task.needs if region else _LEVEL + task.needs
        return Task(words=task.words, from_value=height_of(task.needs), range_words=range_words)
    return Task(words=task.words, from_value=task.needs, range_words=f"{task.needs:.0f}°")


#: Tasks by movement, the easiest first.
TASKS: Mapping[Movement, tuple[Task, ...]] = {
    movement: tuple(map(_task, facts.tasks)) for movement, facts in MOVEMENTS.items()
}


def milestones(movement: Movement, recent: Block) -> tuple[Milestone, ...]:
    """Return the tasks of a movement, the easiest first.

    Reached: the recent block has at least LEAST_DAYS days and the median of their lower ends
    passes.
    """
    return tuple(
        Milestone(task=task, reached=recent.days >= LEAST_DAYS and recent.low >= task.from_value)
        for task in TASKS[movement]
    )
