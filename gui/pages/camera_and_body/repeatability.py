"""Repeatability page: how large a change must be to be more than chance, in words and drawn."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QVBoxLayout, QWidget

from calibration.statistics.repeatability import ENOUGH_SESSIONS, Repeatability
from gui.pages.camera_and_body.change_band import ChangeBand
from gui.style.appearance import Appearance
from gui.style.measures import GAP_PX
from gui.text.wording import task_title, tr
from gui.widgets.buttons import button
from gui.widgets.layouts import card, clear_layout, column, row, separator, widget_with
from gui.widgets.page_frame import frame_page
from gui.widgets.text import label
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS, Movement, Unit
from measure.domain.vertebral_levels import centimetres_in
from measure.progress.wording import number_words

#: Results by movement and side.
Results = dict[tuple[Movement, Side], Repeatability]


class RepeatabilityPage(QWidget):
    """What the numbers mean, and a band for each movement and side."""

    back = Signal()

    def __init__(self, appearance: Appearance, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._appearance = appearance
        self.sentence = label("", "display")
        self.nothing = label(
            tr(
                "There are no readings yet. In several sessions, measure a shoulder that is not "
                "expected to change."
            )
        )
        self._rows = QVBoxLayout()
        self._rows.setSpacing(2 * GAP_PX)
        self.table = card(self._rows)
        self.table.setAccessibleName(tr("How consistent my sessions are"))
        self.leave = button(tr("Back"), key=tr("Escape"))
        self.leave.clicked.connect(self.back)
        meaning = tr("Sessions differ a little even when nothing changes.")
        frame_page(
            self,
            self.sentence,
            label(meaning, "lead"),
            self.table,
            self.nothing,
            1,
            buttons=[self.leave],
            caution=True,
            spacing=2 * GAP_PX,
        )

    def show_results(self, results: Results) -> None:
        """Show the results of all movements and sides, or that there are none."""
        self.nothing.setVisible(not results)
        self.sentence.setText(plain_sentence(results))
        clear_layout(self._rows)
        alone = len(results) < 2
        for place, ((movement, side), result) in enumerate(results.items()):
            if place:
                self._rows.addWidget(separator())
            band = ChangeBand(self._appearance)
            share = result.mdc90 / largest_beside(movement, results)
            band.show_change(share, _amount(movement, result), alone=alone)
            amount = "" if alone else _amount(movement, result)
            self._rows.addWidget(_row(task_title(movement, side), amount, band, result))
        if not results:
            band = ChangeBand(self._appearance)
            band.show_change(1.0, "", alone=True)
            self._rows.addWidget(band)
        self.leave.setFocus(Qt.FocusReason.OtherFocusReason)


def _row(name: str, amount: str, band: ChangeBand, result: Repeatability) -> QWidget:
    """Return a movement's name and amount, its band, and what that rests on."""
    amount_words = label(amount, "title")
    amount_words.setAlignment(Qt.AlignmentFlag.AlignRight)
    amount_words.setVisible(bool(amount))
    named = row((label(name, "title"), 3), (amount_words, 1))
    meaning = label(tr("Nine of ten repeat sessions differ by less."), "" if amount else "lead")
    basis = column(meaning, label(_basis(result), "quiet"), spacing=GAP_PX)
    return widget_with(column(named, band, basis, spacing=3 * GAP_PX // 2))


def plain_sentence(results: Results) -> str:
    """Return which changes are likely real: with their size where there is one movement."""
    if len(results) != 1:
        return tr("How much change is likely real?")
    ((movement, _), result), *_ = results.items()
    return tr("{amount} or more is likely a real change.").format(amount=_amount(movement, result))


def largest_beside(movement: Movement, results: Results) -> float:
    """Return the largest change of the results that have a movement's unit."""
    unit = MOVEMENTS[movement].unit
    return max(r.mdc90 for (other, _), r in results.items() if MOVEMENTS[other].unit is unit)


def shown(value: float, unit: Unit, *, digits: int = 0) -> str:
    """Return an amount with its unit: degrees, or centimetres on a back of usual length."""
    if unit is Unit.DEGREES:
        return f"{number_words(value, digits, tr)}\u00b0"
    return f"{number_words(centimetres_in(value), digits, tr)} cm"


def _amount(movement: Movement, result: Repeatability) -> str:
    return shown(result.mdc90, MOVEMENTS[movement].unit)


def _basis(result: Repeatability) -> str:
    """Return what an amount rests on, and whether the values drift."""
    if result.own:
        words = tr("From {count} recorded sessions.").format(count=result.sessions)
    else:
        typical = tr("A typical value until there are {enough} sessions; so far {count}.")
        words = typical.format(enough=ENOUGH_SESSIONS, count=result.sessions)
    drift, unit = result.drift_per_week, MOVEMENTS[result.movement].unit
    if drift is None:
        return words
    if drift.holds(0.0):
        return f"{words} {tr('No drift is shown.')}"
    change = tr("Drift per week: {value} ({low} to {high}).").format(
        value=shown(drift.value, unit, digits=1),
        low=shown(drift.low, unit, digits=1),
        high=shown(drift.high, unit, digits=1),
    )
    return f"{words} {change}"
