"""Where people stand, compared with where they stood: beside the window's thread, as it is kept
on disk.
"""

import datetime as dt
from collections.abc import Callable
from functools import partial

from calibration.message import Remark
from calibration.placement.check import watch_place
from calibration.placement.placement import PlacementChange
from gui.workers.worker_thread import Background
from measure.domain.measurements import Measurement

#: A reading, whose it is and the day; returns what differs too much.
Watch = Callable[[Measurement, str, dt.date], tuple[PlacementChange, ...]]
Told = Callable[[tuple[Remark, ...]], None]


class PlaceWatch:
    """Compares the place of readings as they come.

    Parameters
    ----------
    worker
        The thread that may wait for the disk.
    """

    def __init__(
        self, worker: Background, today: Callable[[], dt.date], watch: Watch = watch_place
    ) -> None:
        self._worker = worker
        self._today = today
        self._watch = watch

    def look(self, measurement: Measurement, person_id: str, told: Told) -> None:
        """Compare, and hand over in the window's thread what differs; nothing when all is well."""
        self._worker.run(
            lambda: self._watch(measurement, person_id, self._today()),
            partial(_hand_over, told),
            lambda why: told((Remark("{error}", {"error": why}),)),
        )


def _hand_over(told: Told, found: tuple[PlacementChange, ...]) -> None:
    if found:
        told(tuple(each.remark for each in found))
