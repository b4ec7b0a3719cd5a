"""Session recorder: saves a session from its first measurement on, after each trial."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal

from gui.session.repository import PendingMeasurement, SessionRepository
from gui.workers.worker_thread import BackgroundWorker
from measure.domain.records import AssessmentCondition, Pain
from measure.domain.session_facts import ClinicianValue, SessionState


class SessionRecorder(QObject):
    """Hands what is to be kept to the keeper's thread, in order. Never waits for the disk."""

    #: Something could not be saved; why, in words.
    failed = Signal(str)
    saved = Signal()

    def __init__(
        self,
        keeper: SessionRepository,
        worker: BackgroundWorker,
        person_id: str,
        conduct: AssessmentCondition,
        pain: Pain,
        parent: QObject | None = None,
        *,
        state: SessionState | None = None,
        saving: bool = True,
    ) -> None:
        super().__init__(parent)
        self.person_id = person_id
        self.conduct = conduct
        self.pain = pain
        self.state = state or SessionState()
        #: Whether anything is written; False for a person who is not to be saved.
        self.saving = saving
        self._keeper = keeper
        self._worker = worker
        self._session_id: str | None = None  # set by the keeper's thread only
        self._begun = False

    @property
    def begun(self) -> bool:
        """Whether anything was handed over to be kept."""
        return self._begun

    def keep_pain(self) -> None:
        """Save at once what was said about pain, whether or not anything will be measured."""
        if self.saving and self.pain != Pain():
            self._begun = True
            self._worker.run(self._begin, self._was_saved, self.failed.emit)

    def keep(self, kept: PendingMeasurement) -> None:
        """Save a measurement; the same key again replaces it."""
        if not self.saving:
            return
        self._begun = True
        self._worker.run(lambda: self._keep(kept), self._was_saved, self.failed.emit)

    def add_to_note(self, line: str) -> None:
        """Add a line to the session's note, and begin the session for it if nothing else has."""
        if self.saving:
            self._begun = True
            self._worker.run(
                lambda: self._keeper.add_to_note(self._begin(), line),
                self._was_saved,
                self.failed.emit,
            )

    def drop(self, key: str) -> None:
        """Take a kept measurement back."""
        if self._begun:
            self._worker.run(lambda: self._delete(key), self._was_saved, self.failed.emit)

    def finish(
        self, note: str, typed_in: Sequence[ClinicianValue] = (), *, clinic_visit: bool = False
    ) -> None:
        """Mark the session as finished, if it was begun, with a note and a clinician's values.

        Parameters
        ----------
        clinic_visit
            Whether its day is a clinic visit, since which later reports tell what changed.
        """
        if self._begun:
            values = tuple(typed_in)
            self._worker.run(
                lambda: self._finish(note, values, clinic_visit),
                self._was_saved,
                self.failed.emit,
            )

    def forget(self) -> None:
        """Write nothing any more: who was measured, or this session, has been deleted."""
        self.saving = self._begun = False

    def of_session(self, session_id: str) -> bool:
        """Return whether a session that is saved is the one that is written here."""
        return self._begun and session_id == self._session_id

    def _begin(self) -> str:
        """Begin the session in the store unless it is begun; return its identifier."""
        if self._session_id is None:
            self._session_id = self._keeper.begin(
                self.person_id, self.conduct, self.pain, self.state
            )
        return self._session_id

    def _keep(self, kept: PendingMeasurement) -> None:
        self._keeper.keep(self._begin(), self.person_id, kept)

    def _delete(self, key: str) -> None:
        self._keeper.store.delete_measurement(key)

    def _finish(self, note: str, typed_in: tuple[ClinicianValue, ...], clinic_visit: bool) -> None:
        if self._session_id is not None:
            self._keeper.finish(self._session_id, note, typed_in)
            if clinic_visit:
                self._keeper.note_clinic_visit(self.person_id)

    def _was_saved(self, _what: object) -> None:
        self.saved.emit()
