"""Milestones: everyday tasks with the range of motion that they usually need.

A milestone counts as reached when even the lower end of the interval passes it. It is a
description, never a target: nothing here says "only ten degrees more".
"""

from collections.abc import Mapping
from dataclasses import dataclass

from measure.domain.movements import Movement
from measure.domain.vertebral_levels import height_of
from measure.progress.comparison import Block

#: Fewest days with a measurement before a milestone is called reached. [project]
LEAST_DAYS = 3


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Milestone:
    """A task, and whether the recent measurements certainly reach its range."""

    task: Task
    reached: bool


def _angle(words: str, angle_deg: float) -> Task:
    return Task(words=words, from_value=angle_deg, range_words=f"{angle_deg:.0f}°")


def _reach(words: str, level: str, range_words: str) -> Task:
    return Task(words=words, from_value=height_of(level), range_words=range_words)


#: Tasks by movement, the easiest first. Ranges are set after what healthy people use: Namdari 2012
#: (ten tasks: flexion 121, extension 46, abduction 128 degrees), Oosterwijk 2018 (66 tasks: up to
#: 130), Gates 2016; levels behind the back after common clinical use. To be confirmed by a
#: physiotherapist. [project]
TASKS: Mapping[Movement, tuple[Task, ...]] = {
    Movement.FLEXION: (
        _angle("reach a shelf at shoulder height", 90),
        _angle("reach a shelf above the head", 120),
        _angle("reach up high, arm nearly upright", 150),
    ),
    Movement.ABDUCTION: (
        _angle("lift the arm sideways to shoulder height", 90),
        _angle("reach up sideways, as to a high hook", 130),
    ),
    Movement.EXTERNAL_ROTATION: (
        _angle("turn the forearm a third of the way outwards", 30),
        _angle("turn the forearm halfway outwards", 45),
        _angle("turn the forearm outwards as most everyday tasks ask for", 60),
    ),
    Movement.EXTENSION: (_angle("bring the elbow back far enough for a back pocket", 40),),
    Movement.HAND_BEHIND_BACK: (
        _reach("reach a back pocket", "buttock", "buttock"),
        _reach("reach the waistband behind", "sacrum", "sacrum"),
        _reach("tuck a shirt in behind", "L3", "level L3"),
        _reach("fasten a strap behind the back", "T12", "level T12"),
        _reach("reach between the shoulder blades", "T8", "level T8"),
    ),
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
