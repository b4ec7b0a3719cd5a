"""Bland-Altman plot: difference against mean, with bias, limits of agreement and gain line.

Readable in black and white: sides differ by marker, lines by dashes, intervals are grey bands.
One panel per movement.
"""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from calibration.agreement.study import Agreement
from calibration.agreement.wording import degrees_text
from calibration.statistics.estimate import Estimate
from measure.domain.landmarks import Side
from measure.domain.movements import MOVEMENTS
from measure.errors import DataError
from measure.export.figure_file import save_figure

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

_MARKERS = {Side.LEFT: "o", Side.RIGHT: "^"}


def agreement_figure(studies: Sequence[Agreement]) -> "Figure":
    """Return a figure with one panel for each movement, at least one."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(8.0, 4.4 * len(studies)), dpi=120, layout="constrained")
    panels = figure.subplots(len(studies), 1, squeeze=False)[:, 0]
    for study, panel in zip(studies, panels, strict=True):
        _draw(panel, study)
    return figure


def save_agreement_figure(studies: Sequence[Agreement], path: Path) -> None:
    """Write the figure; the name's ending (.png, .pdf, .svg) chooses the format.

    Raises
    ------
    DataError
        When the ending is another one or the file cannot be written.
    """
    if path.suffix.lower() not in (".png", ".pdf", ".svg"):
        raise DataError(f"The plot {path.name} must end in .png, .pdf or .svg.")
    save_figure(agreement_figure(studies), path)


def _draw(panel: "Axes", study: Agreement) -> None:
    for side, marker in _MARKERS.items():
        pairs = [pair for pair in study.pairs if pair.side is side and pair.complete]
        if pairs:
            panel.plot(
                [pair.mean_deg for pair in pairs],
                [pair.difference_deg for pair in pairs],
                linestyle="none",
                marker=marker,
                color="black",
                markerfacecolor="none",
                label=f"{side} shoulder",
            )
    limits = study.limits
    _level(panel, limits.bias, "-", "bias")
    _level(panel, limits.upper, "--", "upper limit")
    _level(panel, limits.lower, "--", "lower limit")
    if study.gain is not None and not study.gain.slope.holds(0.0):
        ends = (study.gain.lowest_deg, study.gain.highest_deg)
        panel.plot(
            ends,
            [study.gain.difference_at(mean_deg) for mean_deg in ends],
            color="black",
            linestyle=":",
            linewidth=2,
            label=f"gain line, slope {study.gain.slope.value:.2f}",
        )
    panel.axhline(0.0, color="0.6", linewidth=0.6)
    panel.set_title(
        f"{MOVEMENTS[study.movement].name}: {limits.pairs} pairs, {study.people} people"
    )
    panel.set_xlabel("mean of camera and goniometer (degrees)")
    panel.set_ylabel("camera minus goniometer\n(degrees)")
    panel.legend(fontsize="small", loc="center left", bbox_to_anchor=(1.0, 0.5))


def _level(panel: "Axes", estimate: Estimate, dashes: str, name: str) -> None:
    panel.axhspan(estimate.low, estimate.high, color="0.88", zorder=0)
    panel.axhline(
        estimate.value,
        color="black",
        linestyle=dashes,
        label=f"{name} {degrees_text(estimate.value)}",
    )
