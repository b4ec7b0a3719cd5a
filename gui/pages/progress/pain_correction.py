"""Page to correct the pain that was saved with a session: a scale for each rating."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal, Slot
from PySide6.QtWidgets import QVBoxLayout, QWidget

from gui.pages.progress.session_readings import reading_words
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import task_title, tr
from gui.widgets.buttons import bind_keys, button
from gui.widgets.layouts import card, clear_layout, column, row, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.pain_scale import PainScale, RatedQuestion, ends_words, scale_ends
from gui.widgets.scroll_page import back_to_top
from gui.widgets.side_by_side import LARGE_FROM_PERCENT
from gui.widgets.text import label
from measure.domain.records import MeasurementRecord, Pain, SessionRecord
from measure.report.pain_correction import PainRatings, ratings_of

#: Space above a question with its scale beneath it, pixels. [technical]
_ABOVE_PX = 14


class PainCorrectionPage(QWidget):
    """Shows every rating of one session as it is; what is changed can be saved."""

    #: (SessionRecord, PainRatings)
    corrected = Signal(object, object)
    left = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self._session: SessionRecord | None = None
        self._shown = PainRatings()
        self.title = label("", "display")
        self._purpose = label(tr("The session's note keeps the earlier number."))
        self.rest, self.night, self.worst = (
            PainScale(question, with_ends=False)
            for question in (
                tr("Pain at rest"),
                tr("Pain the night before"),
                tr("Worst pain in 24 hours"),
            )
        )
        #: Scales of the movements, by the identifier of the measurement.
        self.during: dict[str, PainScale] = {}
        self.leave = button(tr("Cancel"), key=tr("Escape"))
        self.keep = button(tr("Save"), "main", key=tr("Enter"))
        self.leave.clicked.connect(self.left)
        self.keep.clicked.connect(self._keep)
        self._legend = RatedQuestion(appearance, label(""), widget_with(scale_ends()))
        self._ends = label(ends_words(), "quiet")
        self._ends.setAlignment(Qt.AlignmentFlag.AlignRight)
        self._before, self._movements = QVBoxLayout(), QVBoxLayout()
        for lines in (self._before, self._movements):
            lines.setContentsMargins(0, 0, 0, 0)
        self._lay_out()
        bind_keys(self, self.leave, "Escape")
        bind_keys(self, self.keep, "Return", "Enter")
        appearance.changed.connect(self._fit)
        self._fit()

    def _lay_out(self) -> None:
        gap = self._appearance.gap
        self._before.addWidget(self._legend)
        for words, scale in (
            (tr("At rest"), self.rest),
            (tr("The night before"), self.night),
            (tr("Worst in 24 hours"), self.worst),
        ):
            named = label(words)
            if scale is self.rest:
                named.setWordWrap(False)
                asked = widget_with(row(named, (self._ends, 1)))
                self._add(self._before, asked, scale)
            else:
                self._add(self._before, named, scale)
        before = label(tr("Before the session"), "title")
        during = label(tr("During the movements"), "title")
        self._measured = card(during, widget_with(self._movements), spacing=gap(1))
        frame_page(
            self,
            column(self.title, self._purpose, spacing=gap(1)),
            card(before, widget_with(self._before), spacing=gap(1)),
            self._measured,
            1,
            buttons=[self.leave, self.keep],
            spacing=gap(2),
        )

    def _add(self, lines: QVBoxLayout, words: QWidget, scale: PainScale) -> None:
        scale.picked.connect(self._fit_way_on)
        lines.addWidget(RatedQuestion(self._appearance, words, scale))

    @Slot()
    def _fit(self) -> None:
        """Set a question with its scale beneath it apart from the next.

        What numbers mean is said above all scales; where text is large, at the first question.
        """
        large = self._appearance.percent >= LARGE_FROM_PERCENT
        self._legend.setVisible(not large)
        self._ends.setVisible(large)
        for lines in (self._before, self._movements):
            lines.setSpacing(_ABOVE_PX if large else GAP_PX)

    def show_session(
        self, session: SessionRecord, when: str, records: Sequence[MeasurementRecord]
    ) -> None:
        """Show the ratings of a session and of its measurements.

        Parameters
        ----------
        when
            Its day and time, in words.
        """
        self._session, self._shown = session, ratings_of(session, records)
        self.title.setText(tr("Correct pain: {day}").format(day=when))
        pain = session.pain
        for scale, rating in (
            (self.rest, pain.rest),
            (self.night, pain.night),
            (self.worst, pain.worst_24h),
        ):
            scale.choose(rating)
        clear_layout(self._movements)
        self.during = {}
        names = [
            task_title(record.measurement.movement, record.measurement.side) for record in records
        ]
        for record, name in zip(records, names, strict=True):
            words = name
            if names.count(name) > 1:
                reading = reading_words(record.measurement)
                words = tr("{task}: {reading}").format(task=name, reading=reading)
            scale = PainScale(tr("{task}: pain").format(task=words), with_ends=False)
            scale.choose(record.pain_during)
            self._add(self._movements, label(words), scale)
            self.during[record.id] = scale
        self._measured.setVisible(bool(records))
        self._fit_way_on()
        back_to_top(self.title)
        self.rest.buttons[pain.rest or 0].setFocus()

    @property
    def ratings(self) -> PainRatings:
        """The ratings as they are chosen now."""
        return PainRatings(
            before=Pain(rest=self.rest.value, night=self.night.value, worst_24h=self.worst.value),
            during={key: scale.value for key, scale in self.during.items()},
        )

    @Slot()
    def _fit_way_on(self) -> None:
        """Let a change be saved once there is one."""
        changed = self.ratings != self._shown
        self.keep.setEnabled(changed)
        self.keep.say(tr("Save") if changed else tr("Change a number first"))

    @Slot()
    def _keep(self) -> None:
        if self._session is not None:
            self.corrected.emit(self._session, self.ratings)
