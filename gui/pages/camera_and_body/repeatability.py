"""Repeatability page: how much a person's own sessions vary, in a table."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QGridLayout, QWidget

from calibration.statistics.repeatability import ENOUGH_SESSIONS, Repeatability
from gui.style.measures import GAP_PX
from gui.text.wording import movement_name, task_title, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, separator
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.vertebral_levels import centimetres_in
from measure.progress.wording import number_words

#: Shares of the width for the columns. [technical]
_SHARES = (5, 3, 3, 4)
#: Column of the change that counts. [technical]
_CHANGE = 2
#: Results by movement and side.
Results = dict[tuple[Movement, Side], Repeatability]


class RepeatabilityPage(QWidget):
    """A row for each movement and side, and what the numbers mean."""

    back = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(2 * GAP_PX)
        self._rows.setVerticalSpacing(GAP_PX)
        self.table = card(self._rows, separator(), label(_explanation(), "quiet"))
        self.table.setAccessibleName(tr("How consistent my sessions are"))
        self.nothing = label(
            tr(
                "There are no readings yet. In several sessions, measure a shoulder that is not "
                "expected to change."
            )
        )
        self.sentence = label("", "display")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            self.sentence,
            self.nothing,
            self.table,
            1,
            buttons=[self.leave],
            caution=True,
        )

    def show_results(self, results: Results) -> None:
        """Show the results of all movements and sides, or that there are none."""
        self.nothing.setVisible(not results)
        self.table.setVisible(bool(results))
        self.sentence.setText(plain_sentence(results))
        clear_layout(self._rows)
        headings = [tr("Movement"), tr("Sessions"), tr("Smallest real change")]
        drifts = any(result.drift_per_week is not None for result in results.values())
        if drifts:
            headings.append(tr("Drift per week"))
        for place, text in enumerate(headings):
            self._rows.addWidget(label(text, "quiet"), 0, place, Qt.AlignmentFlag.AlignBottom)
            self._rows.setColumnStretch(place, _SHARES[place])
        self._rows.setColumnStretch(len(_SHARES) - 1, _SHARES[-1] * drifts)
        for line, ((movement, side), result) in enumerate(results.items(), start=1):
            cells = _cells(movement, side, result)[: len(headings)]
            for place, text in enumerate(cells):
                role = "title" if place == _CHANGE else "lead"
                self._rows.addWidget(label(text, role), line, place)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)


def plain_sentence(results: Results) -> str:
    """Return which changes may be chance: with its size where there is one movement."""
    if not results:
        return tr("How much readings vary")
    if len(results) > 1:
        return tr("Smaller changes than these may be chance.")
    ((movement, _), result), *_ = results.items()
    return tr("A change of less than {amount} in {movement} may be chance.").format(
        amount=shown(result.mdc90, unit_of(movement)), movement=movement_name(movement).lower()
    )


def unit_of(movement: Movement) -> Unit:
    return MOVEMENTS[movement].unit


def shown(value: float, unit: Unit, *, digits: int = 0) -> str:
    """Return an amount with its unit: degrees, or centimetres on a back of usual length."""
    if unit is Unit.DEGREES:
        return f"{number_words(value, digits, tr)}\u00b0"
    return f"{number_words(centimetres_in(value), digits, tr)} cm"


def _explanation() -> str:
    return tr(
        "In a shoulder that does not change, nine of ten pairs of sessions differ by less. Until "
        "there are {count} sessions, a typical value stands for yours."
    ).format(count=ENOUGH_SESSIONS)


def _cells(movement: Movement, side: Side, result: Repeatability) -> tuple[str, ...]:
    unit, drift = unit_of(movement), result.drift_per_week
    change = shown(result.mdc90, unit)
    return (
        task_title(movement, side),
        str(result.sessions),
        change if result.own else tr("{value} (typical)").format(value=change),
        ""
        if drift is None
        else tr("none shown")
        if drift.holds(0.0)
        else tr("{value} ({low} to {high})").format(
            value=shown(drift.value, unit, digits=1),
            low=shown(drift.low, unit, digits=1),
            high=shown(drift.high, unit, digits=1),
        ),
    )
