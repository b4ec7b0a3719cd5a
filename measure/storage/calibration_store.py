"""The part of the store about cameras, and about the body and the places of a person."""

from measure.domain.acquisition import LensProfile
from measure.domain.calibration_records import (
    BodyRecord,
    CameraLevel,
    Placement,
    StoredCorrection,
    StoredStudy,
)
from measure.storage import calibration_files, calibration_rows
from measure.storage.open_store import OpenStore


class CalibrationStore(OpenStore):
    """What is known of cameras, bodies and places."""

    # Calibration of cameras

    def lenses(self) -> list[LensProfile]:
        """Return the lens profiles of all cameras and frame sizes, the newest last.

        Raises
        ------
        DataError, MachineError
            When a file of an earlier version with such records cannot be read; so do the other
            methods about calibration, each for its own kind.
        """
        with self._reading(calibration_files.LENSES):
            return calibration_rows.lenses(self._connection)

    def save_lens(self, profile: LensProfile) -> None:
        """Save a profile in place of that of its camera and size; InputError if impossible."""
        with self._writing(calibration_files.LENSES):
            calibration_rows.write_lens(self._connection, profile)

    def delete_lenses(self, camera_name: str) -> int:
        """Delete a camera's profiles; return how many there were."""
        with self._writing(calibration_files.LENSES):
            return calibration_rows.erase_lenses(self._connection, camera_name)

    def level(self, camera_name: str | None) -> CameraLevel | None:
        """Return the level of a camera as last measured, or None."""
        with self._reading(calibration_files.LEVELS):
            levels = calibration_rows.levels(self._connection)
        return next((level for level in levels if level.camera_name == camera_name), None)

    def save_level(self, level: CameraLevel) -> None:
        """Save a level in place of the camera's former one; InputError when it is impossible."""
        with self._writing(calibration_files.LEVELS):
            calibration_rows.write_level(self._connection, level)

    def corrections(self) -> list[StoredCorrection]:
        """Return the corrections of all cameras, switched on or off, the newest last."""
        with self._reading(calibration_files.CORRECTIONS):
            return calibration_rows.corrections(self._connection)

    def save_correction(self, stored: StoredCorrection) -> None:
        """Save a correction in place of the former one; InputError when it is too large."""
        with self._writing(calibration_files.CORRECTIONS):
            calibration_rows.write_correction(self._connection, stored)

    def studies(self) -> list[StoredStudy]:
        """Return the agreement studies of all cameras, the newest last."""
        with self._reading():
            return calibration_rows.studies(self._connection)

    def save_study(self, stored: StoredStudy) -> None:
        """Save a study in place of the one of the same camera and movement; InputError if bad."""
        with self._writing():
            calibration_rows.write_study(self._connection, stored)

    # Body and places of a person

    def body(self, person_id: str) -> BodyRecord | None:
        """Return the lengths and marks of a person's body, or None."""
        with self._reading(calibration_files.BODIES):
            return calibration_rows.body_of(self._connection, person_id)

    def save_body(self, record: BodyRecord) -> None:
        """Save a person's body in place of the former record.

        Raises
        ------
        InputError
            When a length is impossible, or the person is not in the store.
        """
        with self._writing(calibration_files.BODIES):
            calibration_rows.write_body(self._connection, record)

    def placements(self, person_id: str) -> list[Placement]:
        """Return where a person stood, the newest last."""
        with self._reading(calibration_files.PLACEMENTS):
            return calibration_rows.placements_of(self._connection, person_id)

    def save_placement(self, placement: Placement) -> None:
        """Save a place in place of that of the same movement, side, camera and frame size.

        Raises
        ------
        InputError
            When it is impossible, or the person is not in the store.
        """
        with self._writing(calibration_files.PLACEMENTS):
            calibration_rows.write_placement(self._connection, placement)

    def delete_placements(self, person_id: str) -> int:
        """Delete a person's places; return how many there were."""
        with self._writing(calibration_files.PLACEMENTS):
            return calibration_rows.erase_placements(self._connection, person_id)
