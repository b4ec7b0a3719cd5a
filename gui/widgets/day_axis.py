"""Axis of days beneath a chart, as "12 Nov", in the window's language."""

from collections.abc import Sequence
from copy import copy

import pyqtgraph as pg
from PySide6.QtCore import QDateTime, QLocale

_DAY_S = 86_400.0
#: From this spacing on ticks are whole months, or whole years. [technical]
_MONTH_S, _YEAR_S = 27 * _DAY_S, 360 * _DAY_S
#: The last day that is named where not every day is. [technical]
_LAST_DAY = 28
#: As wide as a date becomes; so far apart ticks have to be.
_WIDEST = "30 MMM "


class DayAxis(pg.DateAxisItem):  # type: ignore[misc] # pyqtgraph carries no types
    """A time axis that names the month beside the day."""

    def __init__(self) -> None:
        super().__init__()
        for density, level in tuple(self.zoomLevels.items()):
            self.zoomLevels[density] = copy(level)  # the library's own serve all its axes
            self.zoomLevels[density].exampleText = _WIDEST

    def tickValues(self, *span_and_size: float) -> list[tuple[float, list[float]]]:
        """Return ticks by their spacing, none so near to a coarser one that their words touch.

        Takes the first and the last second and the axis's length in pixels.
        """
        start_s, end_s, size_px = span_and_size
        apart_s = (end_s - start_s) / max(size_px, 1.0) * self._word_px()
        kept: list[float] = []
        levels = []
        for spacing, values in super().tickValues(*span_and_size):
            free = [
                value for value in values if all(abs(value - other) > apart_s for other in kept)
            ]
            kept += free
            levels.append((spacing, free))
        return levels

    def _word_px(self) -> float:
        """Return the width of a month's or a year's word, with a gap."""
        return max(float(self.fontMetrics.horizontalAdvance(word)) for word in ("2026  ", "MMM  "))

    def tickStrings(self, values: Sequence[float], scale: float, spacing: float) -> list[str]:
        """Return the words of ticks, seconds since 1970."""
        if spacing >= _YEAR_S:
            form = "yyyy"
        elif spacing >= _MONTH_S:
            form = "MMM"
        else:
            form = "d MMM" if spacing >= _DAY_S else "HH:mm"
        here = QLocale()
        moments = [QDateTime.fromSecsSinceEpoch(round(value)) for value in values]
        words = [here.toString(moment, form) for moment in moments]
        if _MONTH_S > spacing >= _DAY_S and _some_left_out(values):
            # The end of a month has no room beside the name of the next.
            return [
                "" if moment.date().day() > _LAST_DAY else value
                for moment, value in zip(moments, words, strict=True)
            ]
        return words


def _some_left_out(values: Sequence[float]) -> bool:
    """Return whether not every day has a tick."""
    return len(values) > 1 and values[1] - values[0] > 1.5 * _DAY_S
