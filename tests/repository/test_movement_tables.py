"""Every table with an entry for each movement has one for each movement.

A new movement is met here first: the failures name the tables that still lack it.
"""

import importlib
import pkgutil
from collections.abc import Iterator, Mapping
from functools import cache
from types import ModuleType

import pytest

import calibration
import gui
import measure
from gui.drawing.person import posed
from gui.drawing.shown_movements import shown_movement
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Family, Movement
from measure.kinematics.bias_correction import fitted
from measure.kinematics.uncertainty import measured

#: Tables that are meant for some movements only, and why.
SOME_ONLY = {
    "measure.demo.story._LIFELIKE": "the story tells of movements of its own",
    "measure.progress.sentences.SHORT_NAMES": "the other names are short already",
}
#: Modules that do something when imported, or are for the pose process alone.
NOT_IMPORTED = ("measure.pose.network", "gui.translations.update")


@cache
def modules() -> tuple[ModuleType, ...]:
    return tuple(
        importlib.import_module(found.name)
        for package in (measure, calibration, gui)
        for found in pkgutil.walk_packages(package.__path__, f"{package.__name__}.")
        if found.name not in NOT_IMPORTED and not found.name.endswith("_command")
    )


def movement_of(key: object) -> object:
    return key[0] if isinstance(key, tuple) and key else key


def tables() -> Iterator[tuple[str, set[object]]]:
    """Yield every table of a module whose keys are movements, or begin with one."""
    for module in modules():
        for name, table in vars(module).items():
            if isinstance(table, Mapping) and table:
                keys = {movement_of(key) for key in table}
                if all(isinstance(key, Movement) for key in keys):
                    yield f"{module.__name__}.{name}", keys


def test_every_table_has_every_movement() -> None:
    found = dict(tables())
    assert "measure.domain.movements.MOVEMENTS" in found
    assert SOME_ONLY.keys() <= found.keys(), "an exception has lost its table"
    lacking = {
        name: sorted(set(Movement) - keys)
        for name, keys in found.items()
        if keys != set(Movement) and name not in SOME_ONLY
    }
    assert lacking == {}


@pytest.mark.parametrize("movement", list(Movement))
def test_the_written_figures_have_every_movement_and_view(movement: Movement) -> None:
    corrections = fitted()
    for view in MOVEMENTS[movement].views:
        assert f"{movement}:{view}" in measured(), "intervals.json"
        match MOVEMENTS[movement].family:
            case Family.ELEVATION:
                continue  # not corrected
            case Family.ROTATION:
                assert "rotation" in corrections, "fitted.json"
            case Family.REACH:
                assert str(view) in corrections["reach"], "fitted.json"


@pytest.mark.parametrize("movement", list(Movement))
def test_every_movement_can_be_drawn(movement: Movement) -> None:
    for side in Side:
        shown = shown_movement(movement)
        assert posed(shown.start, side).arm != posed(shown.end, side).arm
