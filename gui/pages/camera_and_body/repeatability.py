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
from measure.domain.vertebral_levels import centimetres_in
from measure.progress.wording import number_words

#: Shares of the width for the columns. [technical]
_SHARES = (4, 2, 3, 2, 3)
#: Results by movement and side.
Results = dict[tuple[Movement, Side], Repeatability]


class RepeatabilityPage(QWidget):
    """A row for each movement and side, and what the numbers mean."""

    back = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = QGridLayout()
        self._rows.setHorizontalSpacing(2 * GAP_PX)
        self.table = card(self._rows)
        self.table.setAccessibleName(tr("How consistent my sessions are"))
        self.nothing = label(
            tr(
                "There are no readings yet. In several sessions, measure a shoulder that is not "
                "expected to change."
            )
        )
        self.sentence = label("", "lead")
        self.explanation = label(_explanation(), "quiet")
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        frame_page(
            self,
            label(tr("How much readings vary"), "display"),
            self.nothing,
            self.sentence,
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
        self.sentence.setText(plain_sentence(results))
        self.sentence.setVisible(bool(results))
        clear_layout(self._rows)
        headings = [
            tr("Movement"),
            tr("Sessions"),
            tr("Varies by"),
            tr("Must differ by"),
        ]
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
                self._rows.addWidget(label(text, "lead"), line, place)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)


def plain_sentence(results: Results) -> str:
    """Return by how much two sessions must differ before the difference is more than chance."""
    parts = []
    for unit, name in ((Unit.DEGREES, tr("in angles")), (Unit.FRACTION, tr("behind the back"))):
        real = [item.mdc90 for (movement, _), item in results.items() if unit_of(movement) is unit]
        if real:
            least, most = (shown(value, unit) for value in (min(real), max(real)))
            words = least if least == most else tr("{low} to {high}").format(low=least, high=most)
            parts.append(tr("{amount} {where}").format(amount=words, where=name))
    if not parts:
        return ""
    return tr(
        "Two sessions must differ by {amounts} before the difference is more than chance."
    ).format(amounts=tr(" or ").join(parts))


def unit_of(movement: Movement) -> Unit:
    return MOVEMENTS[movement].unit


def shown(value: float, unit: Unit, *, digits: int = 0) -> str:
    """Return an amount with its unit: degrees, or centimetres on a back of usual length."""
    if unit is Unit.DEGREES:
        return f"{number_words(value, digits, tr)}\u00b0"
    return f"{number_words(centimetres_in(value), digits, tr)} cm"


def _explanation() -> str:
    return tr(
        "A typical value is used until there are {count} sessions. A difference this large is "
        "more than chance (90 %)."
    ).format(count=ENOUGH_SESSIONS)


def _cells(movement: Movement, side: Side, result: Repeatability) -> tuple[str, ...]:
    unit, drift = unit_of(movement), result.drift_per_week
    error = shown(result.error_for_change, unit)
    return (
        task_title(movement, side),
        str(result.sessions),
        error if result.own else tr("{value} (typical)").format(value=error),
        shown(result.mdc90, unit),
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
