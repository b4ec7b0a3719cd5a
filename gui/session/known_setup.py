"""Set-up of camera and person, looked up whenever a source is opened."""

import datetime as dt
from collections.abc import Callable
from dataclasses import replace

from calibration.known_setup import CalibratedSetup, load_calibrated_setup
from measure.domain.acquisition import CameraSetup, KnownSetup
from measure.errors import ThawlineError
from measure.message import TranslatableMessage
from measure.storage.store import Store

#: Camera's name, person's identifier, the day, and what is known of them.
SetupLoader = Callable[[str | None, str | None, dt.date], CalibratedSetup]


def load_stored_setup(camera: str | None, person_id: str | None, today: dt.date) -> CalibratedSetup:
    """Return what is kept in the data folder."""
    with Store.open() as store:
        return load_calibrated_setup(store, camera_name=camera, person_id=person_id, today=today)


def uncalibrated_setup(
    camera: str | None, person_id: str | None, today: dt.date
) -> CalibratedSetup:
    """Know nothing but the camera's name."""
    return CalibratedSetup(setup=KnownSetup(camera=CameraSetup(name=camera)), messages=())


class SetupProvider:
    """Looks up what is known, and keeps what is to be said about it until somebody says it.

    What cannot be read counts as unknown: a damaged file must not keep anybody from measuring.
    """

    def __init__(self, gather: SetupLoader = uncalibrated_setup) -> None:
        self._gather = gather
        self._to_say: list[TranslatableMessage] = []
        self._said: set[str] = set()

    def of(
        self, camera: str | None, person_id: str | None, today: dt.date, *, mirrored: bool = False
    ) -> CalibratedSetup:
        """Return what is known; never an error."""
        try:
            calibrated = self._gather(camera, person_id, today)
        except ThawlineError as error:
            calibrated = uncalibrated_setup(camera, person_id, today)
            calibrated = replace(
                calibrated, stale=(TranslatableMessage("{error}", {"error": error.message}),)
            )
        for message in calibrated.stale:
            if str(message) not in self._said:
                self._said.add(str(message))
                self._to_say.append(message)
        source = replace(calibrated.setup.camera, already_mirrored=mirrored)
        return replace(calibrated, setup=replace(calibrated.setup, camera=source))

    def take_messages(self) -> tuple[TranslatableMessage, ...]:
        """Return what is kept but too old or unfit to be used; each is handed out once."""
        waiting, self._to_say = tuple(self._to_say), []
        return waiting
