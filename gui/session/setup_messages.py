"""Messages about the set-up of a session: a lens profile of another size, another place."""

from PySide6.QtCore import QObject, Signal

from calibration.lens.profiles import other_size_message
from gui.protocol.plan import MovementTask
from gui.session.placement_check import PlacementMonitor
from gui.text.wording import message_text
from measure.domain.measurements import Measurement
from measure.live.events import Source
from measure.message import TranslatableMessage


class SetupMessages(QObject):
    """Tells once of an unfit lens profile, and of each reading taken at another place."""

    #: A message, in words.
    raised = Signal(str)

    def __init__(self, placement: PlacementMonitor | None, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._placement = placement
        self._lens_told = False
        #: What differs in the place of a reading, by the task that gave it.
        self.by_task: dict[MovementTask, str] = {}

    def check_lens(self, source: Source | None, size_px: tuple[int, int]) -> None:
        """Tell when all lens profiles of the camera are of other picture sizes."""
        if self._lens_told or source is None:
            return
        unfit = other_size_message(source.lenses, size_px)
        if unfit is not None:
            self._lens_told = True
            self.raised.emit(message_text(unfit))

    def compare_place(self, task: MovementTask, measurement: Measurement, person_id: str) -> None:
        """Tell where the person stands otherwise than when the place was kept."""

        def tell(changes: tuple[TranslatableMessage, ...]) -> None:
            self.by_task[task] = " ".join(map(message_text, changes))
            self.raised.emit(self.by_task[task])

        if self._placement is not None:
            self._placement.compare(measurement, person_id, tell)
