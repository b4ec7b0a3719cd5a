"""One clip of the list: played, read, its trials in or out, its reading saved for a person."""

from pathlib import Path

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QWidget

from gui.pages.clips.clip_head import ClipHead
from gui.pages.clips.clip_player import ClipPlayer
from gui.pages.clips.clip_rows import ClipRow, cause_and_remedy
from gui.pages.clips.clip_saving import SavingQuestion
from gui.pages.clips.measurement_band import (
    ASIDE_PX,
    BandContent,
    MeasurementBand,
    band_for_measurement,
)
from gui.pages.clips.saved_reading import SavedReading
from gui.pages.clips.trial_list import TrialList
from gui.pages.clips.unread_clip import UnreadClip
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.session.services import Services
from gui.style.measures import BAR_PX, GAP_PX, MARGIN_PX
from gui.text.wording import error_text, person_name, reason_sentences, tr
from gui.widgets.buttons import bind_keys, button, give_role
from gui.widgets.layouts import column, row, separator
from gui.widgets.page_frame import PageFoot
from gui.widgets.text import label
from measure.domain.measurements import Status
from measure.domain.movements import Movement
from measure.domain.records import Person
from measure.errors import ClipError

#: Text up to this size leaves room for whole lines about each trial, per cent. [technical]
_WHOLE_PERCENT = 115


class ClipReview(QWidget):
    """Shows one row of the list."""

    left = Signal()
    #: -1 or 1: the clip before or after this one.
    neighbour_wanted = Signal(int)
    #: The ClipRow to read now.
    read_wanted = Signal(object)
    #: The ClipRow whose movement, side or trials are now others.
    row_changed = Signal(object)
    #: The ClipRow of which other trials count now.
    trials_accepted = Signal(object)
    #: The ClipRow whose reading is to be saved.
    save_wanted = Signal(object)

    def __init__(self, services: Services, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._services = services
        self.row: ClipRow | None = None
        self._analysis: ClipAnalysis | None = None
        self._person: Person | None = None
        self._busy = False
        #: Whether there is little room beside the picture.
        self._brief = False
        appearance = services.appearance
        self.back = button(tr("Back to the list"), key=tr("Escape"))
        self.onward = button(tr("Next clip"), "main", key=tr("Page Down"))
        self.head = ClipHead(appearance)
        self.before, self.after = self.head.before, self.head.after
        self.movement, self.side = self.head.movement, self.head.side
        self._results = QWidget()
        self.player = ClipPlayer(appearance, self._results)
        self.read = button(tr("Read this clip"), key="R")
        self.band = MeasurementBand(appearance)
        self.reading = SavedReading(self.band)
        #: That the reading is saved.
        self.saved = self.reading.saved
        self.notes = label("", "quiet")
        self.trials = TrialList(appearance)
        #: What has to be answered before a reading is saved.
        self.question = SavingQuestion(appearance)
        self.save = button("", "main")
        self._lay_out()
        self._connect()
        self._show_room()

    def _lay_out(self) -> None:
        self._lines = column(
            self.reading,
            self.question,
            self.trials,
            self.notes,
            1,
            on=self._results,
            spacing=GAP_PX,
        )
        for words in (self.question, self.notes):
            words.setContentsMargins(ASIDE_PX, 0, 0, 0)
        self.why = UnreadClip(self._services.appearance)
        # A scroll bar's room lies in the margin, so that the cards end where the buttons do.
        page = column(
            (self.player, 1),
            (self.why, 1),
            margins=(MARGIN_PX, 3 * GAP_PX, MARGIN_PX - BAR_PX, 2 * GAP_PX),
            spacing=0,
        )
        foot = row(
            PageFoot([self.back, self.read, self.save, self.onward], wide=True),
            margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX),
        )
        column(self.head, (page, 1), separator(), foot, on=self, spacing=0)

    def _connect(self) -> None:
        self.back.clicked.connect(self.left)
        self.before.clicked.connect(lambda: self.neighbour_wanted.emit(-1))
        for following in (self.after, self.onward):
            following.clicked.connect(lambda: self.neighbour_wanted.emit(1))
        self.movement.picked.connect(self._choose)
        self.side.picked.connect(self._choose)
        self.read.clicked.connect(self._read)
        self.save.clicked.connect(self._save)
        self.player.rearranged.connect(self._show_room)
        self._services.appearance.changed.connect(self._show_room)
        self.trials.accepted_changed.connect(self._accept)
        self.trials.trial_selected.connect(self.player.show_trial)
        self.trials.reasons_fitted.connect(self._show_notes)
        bind_keys(self, self.back, "Escape")
        bind_keys(self, self.before, "PgUp")
        bind_keys(self, self.after, "PgDown")
        bind_keys(self, self.read, "R")
        self.player.bind_keys(self)

    @Slot()
    def _show_room(self) -> None:
        """Show scale, trials and notes in the length that there is room for."""
        across = self.player.has_curve_across
        self.band.show_scale(self.player.has_room_above)
        self._brief = not across or self._services.appearance.percent > _WHOLE_PERCENT
        self.trials.show_brief(self._brief)
        self._lines.setSpacing(3 * GAP_PX // 4 if self._brief else GAP_PX)
        give_role(self.notes, "small" if self._brief else "quiet")
        self._show_notes()

    @Slot()
    def _show_notes(self) -> None:
        """Say that a reading is saved, and its notes: as sentences where the mouse rests."""
        shown = self.row
        counted = None if shown is None else shown.counted
        if shown is not None and shown.saved_for:
            short = tr("Saved for {person}").format(person=shown.saved_for)
            shortest = tr("Saved.")
            self.reading.say(*(f"\u2713  {words}" for words in (shown.status, short, shortest)))
        else:
            self.reading.say("")
        self.notes.setText("")
        if shown is not None and shown.error is None:
            # A line that the saving takes is the one of what the trials say when asked.
            by_trial = self.trials.says_reasons or self.reading.saved_beneath
            self.notes.setText(shown.notes(by_trial=by_trial))
        for words in (self.saved, self.notes):
            words.setToolTip("" if counted is None else reason_sentences(counted.reasons))
        self.notes.setVisible(bool(self.notes.text()))

    def show_row(self, row_: ClipRow, analysis: ClipAnalysis | None) -> None:
        """Show a clip of the list, with its curve where it was read in this window."""
        self.row = row_
        self.head.show_clip(row_.clip)
        self.player.show_empty(tr("Opening {clip}").format(clip=row_.clip.name))
        clip, services = row_.clip, self._services
        services.slow_worker.run(
            lambda: services.open_clip(clip),
            lambda pictures: self._opened(clip, pictures),
            lambda why: self._not_opened(clip, why),
        )
        self.show_result(analysis)

    def _opened(self, clip: Path, pictures: ClipThumbnails) -> None:
        if self.row is None or clip != self.row.clip:
            return
        self.player.show_clip(pictures)
        self._show_first_hold()

    def _not_opened(self, clip: Path, why: str) -> None:
        if self.row is not None and clip == self.row.clip:
            self.player.show_empty(why)

    def _show_first_hold(self) -> None:
        if self._analysis is not None and self._analysis.measurement.trials:
            self.player.show_trial(self._analysis.measurement.trials[0])

    def show_result(self, analysis: ClipAnalysis | None) -> None:
        """Show what was read in the clip; without an analysis there is no curve."""
        shown = self.row
        if shown is None:
            return
        self._analysis = analysis
        self.movement.choose(shown.movement)
        self.side.choose(shown.side)
        movement = shown.movement or Movement.FLEXION
        self.trials.show_measurement(movement, shown.measurement, shown.accepted)
        self._show_first_hold()
        self._show_counted()

    def _show_counted(self) -> None:
        """Show the reading of the trials that count."""
        shown = self.row
        if shown is None:
            return
        measurement, counted = shown.measurement, shown.counted
        self.reading.setVisible(measurement is not None)
        self.player.show_analysis(self._analysis, shown.accepted)
        self.player.setVisible(shown.error is None)
        self.why.setVisible(shown.error is not None)
        self.head.show_failure(shown.error is not None)
        if shown.error is not None:
            self.why.say(*cause_and_remedy(error_text(shown.error)), shown.clip.name)
        elif measurement is not None:
            content = (
                BandContent(words=tr("No trials were accepted."))
                if counted is None
                else band_for_measurement(counted, len(measurement.trials))
            )
            self.band.show_reading(measurement.movement, content)
        self._show_notes()
        self._show_controls()

    def show_person(self, person: Person | None) -> None:
        """Save readings for this person from now on."""
        if self.row is not None and person is not self._person:
            self.row.facts = None
        self._person = person
        self._show_counted()

    def show_busy(self, busy: bool) -> None:
        """Show whether clips are being read, so that this one cannot be."""
        self._busy = busy
        self._show_controls()

    def _show_controls(self) -> None:
        shown = self.row
        if shown is None:
            return
        self._show_read(shown)
        self._show_save(shown)
        # A clip that cannot be opened has nothing to choose a movement for.
        broken = isinstance(shown.error, ClipError)
        self.head.show_choices(shown=not broken, enabled=not shown.queued)
        done, more = broken or bool(shown.saved_for), self.after.isEnabled()
        self.onward.setVisible(done and more)
        give_role(self.back, "main" if done and not more else "")

    def _show_read(self, shown: ClipRow) -> None:
        no_curve = shown.measurement is not None and self._analysis is None
        words = tr("Read again to see the curve") if no_curve else tr("Read this clip")
        if shown.error is not None:
            words = tr("Try again")
        self.read.say(tr("Reading...") if self._busy else words)
        done = self._analysis is not None
        self.read.setEnabled(not self._busy and not done and shown.entry is not None)
        self.read.setVisible(self._busy or not done)
        broken = isinstance(shown.error, ClipError)
        give_role(self.read, "" if broken or shown.measurement is not None else "main")

    def _show_save(self, shown: ClipRow) -> None:
        person = self._person
        of_another = bool(person and shown.person and shown.person != person.pseudonym)
        may = person is not None and not person.demo and not of_another
        self.save.setVisible(shown.measurement is not None and not shown.saved_for)
        refused = shown.counted is not None and shown.counted.status is Status.REFUSED
        counts = shown.counted is not None and not refused
        self.save.setEnabled(may and counts and not shown.saved_for)
        self.save.setToolTip("")
        name = "" if person is None else person_name(person)
        facts = None if shown.saved_for else shown.facts
        self.question.ask(facts, name, self._services.today())
        if refused:
            self.save.say(tr("No reading to save"))
            return
        if facts is not None and facts.earlier is not None:
            self.save.say(tr("Replace the saved reading"))
            return
        if person is None:
            self.save.say(tr("Save for a person"))
            self.save.setToolTip(tr("Choose the person on the Measure page first."))
        elif person.demo:
            self.save.say(tr("Not for demo data"))
        elif of_another:
            self.save.say(tr("Clip of {person}").format(person=shown.person))
            self.save.setToolTip(
                tr(
                    "The manifest names {person}. Choose that person on the Measure page first."
                ).format(person=shown.person)
            )
        else:
            self.save.say(tr("Save for {person}").format(person=person_name(person)))

    @Slot()
    def _choose(self) -> None:
        if self.row is not None:
            self.row.choose(self.movement.value, self.side.value)
            self.row_changed.emit(self.row)
            self.show_result(None if self.row.measurement is None else self._analysis)

    @Slot()
    def _read(self) -> None:
        if self.row is not None and self.read.isEnabled():
            self.read_wanted.emit(self.row)

    @Slot()
    def _save(self) -> None:
        if self.row is not None:
            self.save_wanted.emit(self.row)

    @Slot(object)
    def _accept(self, accepted: tuple[bool, ...]) -> None:
        """Work the reading out anew from the trials that are in."""
        shown = self.row
        if shown is None or shown.measurement is None:
            return
        shown.accept(accepted)
        self._show_counted()
        self.row_changed.emit(shown)
        self.trials_accepted.emit(shown)
