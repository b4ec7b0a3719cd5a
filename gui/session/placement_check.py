"""Placement check: compares where a person stands with where they stood, in the store's thread."""

import datetime as dt
from collections.abc import Callable
from functools import partial

from calibration.placement.check import compare_or_save_placement
from calibration.placement.placement import PlacementChange
from gui.workers.worker_thread import BackgroundWorker
from measure.domain.measurements import Measurement
from measure.message import TranslatableMessage
from measure.storage.store import Store

#: A reading, whose it is and the day; returns what differs too much.
PlacementCheck = Callable[[Measurement, str, dt.date], tuple[PlacementChange, ...]]
MessageCallback = Callable[[tuple[TranslatableMessage, ...]], None]


def check_placement_in_store(
    measurement: Measurement, person_id: str, today: dt.date
) -> tuple[PlacementChange, ...]:
    """Compare with the place in the user's store, or keep the first one there."""
    with Store.open() as store:
        return compare_or_save_placement(store, measurement, person_id, today)


class PlacementMonitor:
    """Compares the place of readings as they come.

    Parameters
    ----------
    worker
        The thread that may wait for the disk.
    """

    def __init__(
        self,
        worker: BackgroundWorker,
        today: Callable[[], dt.date],
        watch: PlacementCheck = check_placement_in_store,
    ) -> None:
        self._worker = worker
        self._today = today
        self._watch = watch

    def compare(self, measurement: Measurement, person_id: str, report: MessageCallback) -> None:
        """Compare, and hand over in the window's thread what differs; nothing when all is well."""
        self._worker.run(
            lambda: self._watch(measurement, person_id, self._today()),
            partial(_report_changes, report),
            lambda why: report((TranslatableMessage("{error}", {"error": why}),)),
        )


def _report_changes(report: MessageCallback, changes: tuple[PlacementChange, ...]) -> None:
    if changes:
        report(tuple(change.message for change in changes))
