"""Saving of a clip's reading: with the day on which it was recorded, and once for each clip."""

import datetime as dt
from dataclasses import dataclass, replace
from pathlib import Path

from PySide6.QtWidgets import QWidget

from gui.session.repository import PendingMeasurement, SessionRepository
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import tr
from gui.widgets.date_field import DateField
from gui.widgets.layouts import column
from gui.widgets.text import label
from measure.domain.measurements import Measurement
from measure.domain.records import MeasurementRecord
from measure.errors import ClipError
from measure.system.clock import Timestamp, new_id
from measure.video.recording_time import recording_time

#: Name of the clip's SHA-256 among what a saved reading says of its source.
CLIP_SHA256 = "clip_sha256"
#: Hour of a day that was typed: its time is not known. [project]
_NOON = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class ClipFacts:
    """What has to be known of a clip before its reading is saved for a person.

    Attributes
    ----------
    sha256
        Of the clip's content; empty where it cannot be read any more.
    recorded
        When it was recorded, if its file says so.
    earlier
        What is saved of the same clip, movement and side for this person.
    """

    sha256: str
    recorded: Timestamp | None
    earlier: MeasurementRecord | None

    @property
    def asks(self) -> bool:
        """Whether a person has to answer something first."""
        return self.recorded is None or self.earlier is not None


def clip_facts(
    repository: SessionRepository, person_id: str, clip: Path, measurement: Measurement
) -> ClipFacts:
    """Return what is known of a clip. Reads the whole file; for the store's thread."""
    from measure.batch.cache_key import content_hash

    try:
        sha256 = content_hash(clip)
    except ClipError:
        sha256 = ""
    now = repository.store.now()
    moment = recording_time(clip, now.utc)
    earlier = [
        record
        for record in repository.store.measurements(person_id, movement=measurement.movement)
        if record.measurement.side is measurement.side
        and sha256
        and record.measurement.provenance.source.get(CLIP_SHA256) == sha256
    ]
    return ClipFacts(
        sha256=sha256,
        recorded=None if moment is None else _local(moment),
        earlier=earlier[-1] if earlier else None,
    )


def noon_of(day: dt.date) -> Timestamp:
    """Return the middle of a local day."""
    return _local(dt.datetime(day.year, day.month, day.day, _NOON).astimezone())


def _local(moment: dt.datetime) -> Timestamp:
    offset = moment.astimezone().utcoffset() or dt.timedelta()
    return Timestamp(utc=moment.astimezone(dt.UTC), offset_min=round(offset.total_seconds() / 60))


def pending_of(facts: ClipFacts, pending: PendingMeasurement) -> PendingMeasurement:
    """Return a reading as it is saved: with the clip's hash, in the place of an earlier one."""
    source = pending.measurement.provenance.source
    provenance = replace(
        pending.measurement.provenance, source={**source, CLIP_SHA256: facts.sha256}
    )
    key = new_id() if facts.earlier is None else facts.earlier.id
    measurement = replace(pending.measurement, provenance=provenance)
    return replace(pending, key=key, measurement=measurement)


class SavingQuestion(QWidget):
    """Asks for the day of recording, or whether an earlier reading is to be replaced."""

    def __init__(self, appearance: Appearance) -> None:
        super().__init__()
        self.words = label("", "strong")
        self.day = DateField(appearance, tr("Day of recording"))
        column(self.words, self.day, on=self, spacing=GAP_PX)
        self.hide()

    def ask(self, facts: ClipFacts | None, person: str, today: dt.date) -> None:
        """Ask what these facts leave open; nothing where they leave nothing."""
        self.setVisible(facts is not None and facts.asks)
        if facts is None or not facts.asks:
            return
        lines = []
        if facts.earlier is not None:
            words = tr("This clip is already saved for {person}.")
            lines.append(words.format(person=person))
        if facts.recorded is None:
            lines.append(tr("On which day was it recorded?"))
            self.day.show_day(today if facts.earlier is None else facts.earlier.taken.day)
        self.words.setText(" ".join(lines))
        self.day.setVisible(facts.recorded is None)
