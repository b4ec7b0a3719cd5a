"""Repeatability page: how much a person's own sessions vary, in a table."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from calibration.statistics.repeatability import ENOUGH_SESSIONS, Repeatability
from gui.style.measures import GAP_PX
from gui.text.wording import task_title, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.progress.wording import number_words

#: Results by movement and side.
Results = dict[tuple[Movement, Side], Repeatability]


class RepeatabilityPage(QWidget):
    """A row for each movement and side, and what the numbers mean."""

    back = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(2 * GAP_PX)
        for place, share in enumerate((4, 2, 2, 2, 3)):
            self._rows.setColumnStretch(place, share)
        self.table = card(self._rows)
        self.table.setAccessibleName(tr("How well my sessions repeat"))
        self.nothing = label(
            tr(
                "There are no readings yet. Measure a shoulder that is not expected to change in "
                "several sessions."
            )
        )
        self.explanation = label(_explanation(), "quiet")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            label(tr("Repeatability"), "display"),
            self.nothing,
            self.table,
            self.explanation,
            1,
            buttons=[self.leave],
            caution=True,
        )

    def show_results(self, results: Results) -> None:
        """Show the results of all movements and sides, or that there are none."""
        self.nothing.setVisible(not results)
        self.table.setVisible(bool(results))
        self.explanation.setVisible(bool(results))
        clear_layout(self._rows)
        headings = (
            tr("Movement"),
            tr("Sessions"),
            tr("Typical variation"),
            tr("Smallest real difference"),
            tr("Drift a week"),
        )
        for place, text in enumerate(headings):
            self._rows.addWidget(label(text, "quiet"), 0, place, Qt.AlignmentFlag.AlignBottom)
        for line, ((movement, side), result) in enumerate(results.items(), start=1):
            for place, text in enumerate(_cells(movement, side, result)):
                self._rows.addWidget(label(text), line, place)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)


def _explanation() -> str:
    return " ".join(
        (
            tr("Typical variation: how much a single session differs from the person's own line."),
            tr(
                "Two sessions must differ by the smallest real difference before the difference is "
                "more than chance (90 %)."
            ),
            tr("*: a usual variation, until there are {count} sessions.").format(
                count=ENOUGH_SESSIONS
            ),
        )
    )


def _cells(movement: Movement, side: Side, result: Repeatability) -> tuple[str, ...]:
    degrees = MOVEMENTS[movement].unit is Unit.DEGREES
    drift = result.drift_per_week

    def shown(value: float) -> str:
        digits = 1 if degrees else 2
        text = number_words(value, digits, tr)
        return f"{text}\u00b0" if degrees else text

    return (
        task_title(movement, side),
        str(result.sessions),
        shown(result.error_for_change) + ("" if result.own else "*"),
        shown(result.mdc90),
        ""
        if drift is None
        else tr("none shown")
        if drift.holds(0.0)
        else tr("{value} ({low} to {high})").format(
            value=shown(drift.value), low=shown(drift.low), high=shown(drift.high)
        ),
    )
