"""One clip of the list: played, read, its trials in or out, its reading saved for a person."""

from pathlib import Path

from PySide6.QtCore import QSize, Signal, Slot
from PySide6.QtGui import QFont, QFontMetrics, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from gui.pages.clips.clip_player import ClipPlayer, step_button
from gui.pages.clips.clip_rows import ClipRow, cause_and_remedy
from gui.pages.clips.clip_saving import SavingQuestion
from gui.pages.clips.measurement_band import (
    ASIDE_PX,
    BandContent,
    MeasurementBand,
    band_for_measurement,
)
from gui.pages.clips.trial_list import TrialList
from gui.pages.clips.unread_clip import UnreadClip
from gui.session.interfaces import ClipAnalysis, ClipThumbnails
from gui.session.services import Services
from gui.style.measures import BAR_PX, BODY_PX, GAP_PX, MARGIN_PX, TITLE, TITLE_GROWTH
from gui.style.style_sheet import grown
from gui.text.wording import (
    error_text,
    movement_name,
    person_name,
    reason_sentences,
    side_title,
    tr,
)
from gui.widgets.buttons import MenuButton, bind_keys, button, give_role
from gui.widgets.layouts import column, row, separator
from gui.widgets.page_frame import PageFoot
from gui.widgets.text import ElidedLabel, label
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from measure.domain.records import Person
from measure.errors import ClipError

#: Room between the name, the place in the list and what is measured, pixels. [technical]
_APART_PX = 3 * GAP_PX
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
        #: Which clip of how many is shown.
        self._place = (0, 0)
        appearance = services.appearance
        self.back = button(tr("Back to the list"), key=tr("Escape"))
        self.before = step_button("\u2191", tr("Previous"))
        self.after = step_button("\u2193", tr("Next"))
        self.onward = button(tr("Next clip"), "main", key=tr("Page Down"))
        #: The place of the clip in the list.
        self.place = ClipPlace()
        self.name = ClipName()
        self._results = QWidget()
        self.player = ClipPlayer(appearance, self._results)
        self.movement = MenuButton(tr("movement"))
        self.movement.offer([None, *Movement], self._movement_words)
        self.side = MenuButton(tr("side"))
        self.side.offer([None, *Side], self._side_words)
        self.read = button(tr("Read this clip"), key="R")
        self.band = MeasurementBand(appearance)
        #: That the reading is saved.
        self.saved = label("", "far-right")
        self.notes = label("", "quiet")
        self.trials = TrialList(appearance)
        #: What has to be answered before a reading is saved.
        self.question = SavingQuestion(appearance)
        self.save = button("", "main")
        self._lay_out()
        self._connect()
        self._show_room()

    @staticmethod
    def _movement_words(movement: Movement | None) -> str:
        return tr("Movement") if movement is None else movement_name(movement)

    @staticmethod
    def _side_words(side: Side | None) -> str:
        return tr("Side") if side is None else side_title(side)

    def _lay_out(self) -> None:
        self._lines = column(
            self.band,
            self.saved,
            self.question,
            self.trials,
            self.notes,
            1,
            on=self._results,
            spacing=GAP_PX,
        )
        for words in (self.saved, self.question, self.notes):
            words.setContentsMargins(ASIDE_PX, 0, 0, 0)
        self.why = UnreadClip(self._services.appearance)
        # The scroll bar's room lies in the margin, so that the card ends where the buttons do.
        page = column(
            (column(self.player, margins=(MARGIN_PX, 0, MARGIN_PX, 0)), 1),
            (column(self.why, margins=(MARGIN_PX, 0, MARGIN_PX - BAR_PX, 0)), 1),
            margins=(0, 3 * GAP_PX, 0, 3 * GAP_PX // 2),
            spacing=0,
        )
        # What the others leave: the place says no more than the name has room for.
        self.name.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)
        head = row(
            (self.name, 1),
            row(self.before, self.place, self.after, spacing=GAP_PX),
            row(self.movement, self.side, spacing=GAP_PX),
            margins=(MARGIN_PX, 2 * GAP_PX, MARGIN_PX, 0),
            spacing=_APART_PX,
        )
        foot = row(
            PageFoot([self.back, self.read, self.save, self.onward], wide=True),
            margins=(MARGIN_PX, GAP_PX, MARGIN_PX, GAP_PX),
        )
        column(head, (page, 1), separator(), foot, on=self, spacing=0)

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
        self.band.show_scale(across)
        self._brief = not across or self._services.appearance.percent > _WHOLE_PERCENT
        self.trials.show_brief(self._brief)
        self._lines.setSpacing(3 * GAP_PX // 4 if self._brief else GAP_PX)
        give_role(self.notes, "small" if self._brief else "quiet")
        self._show_notes()
        self._show_place()

    @Slot()
    def _show_notes(self) -> None:
        """Say that a reading is saved, and its notes: as sentences where the mouse rests."""
        shown = self.row
        counted = None if shown is None else shown.counted
        saved = shown.status if shown is not None and shown.saved_for else ""
        self.saved.setText(f"\u2713  {saved}" if saved else "")
        self.saved.setVisible(bool(saved))
        self.notes.setText("")
        if shown is not None and shown.error is None:
            # Once the reading is saved that takes the line of what the trials say when asked.
            by_trial = self.trials.says_reasons or bool(saved)
            self.notes.setText(shown.notes(by_trial=by_trial))
        for words in (self.saved, self.notes):
            words.setToolTip("" if counted is None else reason_sentences(counted.reasons))
        self.notes.setVisible(bool(self.notes.text()))

    def show_place(self, place: int, total: int) -> None:
        """Show where the clip stands in the list, counted from 0, and which neighbours it has."""
        self.before.setEnabled(place > 0)
        self.after.setEnabled(place + 1 < total)
        self._place = (place + 1, total)
        self._show_place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._show_place()

    def _show_place(self) -> None:
        """Say which clip is shown; of what the number is only where the name has room beside it."""
        appearance, (place, total) = self._services.appearance, self._place
        title = grown(BODY_PX * TITLE, TITLE_GROWTH, appearance.percent)
        name = _wide(self.name.accessibleName(), appearance.font(title, bold=True))
        needed = 2 * MARGIN_PX + name + 2 * (_APART_PX + GAP_PX)
        for shown in (self.before, self.after, self.movement, self.side):
            needed += (shown.sizeHint().width() + GAP_PX) * shown.isVisibleTo(self)
        short = tr("{place} of {total}").format(place=place, total=total)
        whole = tr("Clip {place} of {total}").format(place=place, total=total)
        has_room = needed + _wide(whole, self.place.font()) <= self.width()
        self.place.say(whole if has_room else short, short)
        self.name.setMinimumWidth(self.name.minimumSizeHint().width())

    def show_row(self, row_: ClipRow, analysis: ClipAnalysis | None) -> None:
        """Show a clip of the list, with its curve where it was read in this window."""
        self.row = row_
        self.name.say(row_.clip.name)
        self._show_place()
        self.name.setToolTip(str(row_.clip))
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
        self.band.setVisible(measurement is not None)
        self.player.show_analysis(self._analysis, shown.accepted)
        self.player.setVisible(shown.error is None)
        self.why.setVisible(shown.error is not None)
        if shown.error is not None:
            self.why.say(*cause_and_remedy(error_text(shown.error)))
        elif measurement is not None:
            content = (
                BandContent(words=tr("No trials were accepted."))
                if counted is None
                else band_for_measurement(counted)
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
        for control in (self.movement, self.side):
            control.setEnabled(not shown.queued)
            control.setVisible(not broken)
        self._show_place()
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
        self.save.setEnabled(may and shown.counted is not None and not shown.saved_for)
        self.save.setToolTip("")
        name = "" if person is None else person_name(person)
        facts = None if shown.saved_for else shown.facts
        self.question.ask(facts, name, self._services.today())
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


def _wide(words: str, font: QFont) -> int:
    """Return the width of a line of words."""
    return QFontMetrics(font).horizontalAdvance(words)


class ClipPlace(QLabel):
    """Says which clip of how many is shown; it can be as narrow as without the word for it."""

    def __init__(self) -> None:
        super().__init__()
        self._short = ""
        self.setProperty("role", "quiet")

    def say(self, words: str, short: str) -> None:
        """Show words, of which there are shorter ones."""
        self._short = short
        self.setText(words)

    def minimumSizeHint(self) -> QSize:
        return QSize(_wide(self._short, self.font()), super().minimumSizeHint().height())


class ClipName(ElidedLabel):
    """The heading of the page; a long name is set smaller before it is shortened."""

    def _fit(self) -> None:
        give_role(self, "display")
        if self.fontMetrics().horizontalAdvance(self.accessibleName()) > self.width():
            give_role(self, "title")
        super()._fit()
