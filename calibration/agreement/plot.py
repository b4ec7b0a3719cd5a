"""The agreement plot: difference against mean, with bias, limits and the gain line.

Readable in black and white: people keep the marker shape of their side, lines differ by
dashes, intervals are grey bands. One panel a movement. No statistics here.
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

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

_MARKERS = {Side.LEFT: "o", Side.RIGHT: "^"}


def agreement_figure(found: Sequence[Agreement]) -> "Figure":
    """Return a figure with one panel for each movement, at least one."""
    from matplotlib.figure import Figure

    figure = Figure(figsize=(8.0, 4.4 * len(found)), dpi=120, layout="constrained")
    panels = figure.subplots(len(found), 1, squeeze=False)[:, 0]
    for one, panel in zip(found, panels, strict=True):
        _draw(panel, one)
    return figure


def save_agreement_figure(found: Sequence[Agreement], path: Path) -> None:
    """Write the figure; the name's ending (.png, .pdf, .svg) chooses the format.

    Raises
    ------
    DataError
        When the ending is another one or the file cannot be written.
    """
    if path.suffix.lower() not in (".png", ".pdf", ".svg"):
        raise DataError(f"The plot {path.name} must end in .png, .pdf or .svg.")
    try:
        agreement_figure(found).savefig(path)
    except OSError as error:
        raise DataError(f"The plot {path.name} could not be written ({error.strerror}).") from error


def _draw(panel: "Axes", found: Agreement) -> None:
    for side, marker in _MARKERS.items():
        pairs = [pair for pair in found.pairs if pair.side is side and pair.complete]
        if pairs:
            panel.plot(
                [(pair.camera_deg + pair.goniometer_deg) / 2 for pair in pairs],
                [pair.camera_deg - pair.goniometer_deg for pair in pairs],
                linestyle="none",
                marker=marker,
                color="black",
                markerfacecolor="none",
                label=f"{side} shoulder",
            )
    limits = found.limits
    _level(panel, limits.bias, "-", "bias")
    _level(panel, limits.upper, "--", "upper limit")
    _level(panel, limits.lower, "--", "lower limit")
    if found.gain is not None and not found.gain.slope.holds(0.0):
        ends = (found.gain.lowest_deg, found.gain.highest_deg)
        panel.plot(
            ends,
            [found.gain.difference_at(each) for each in ends],
            color="black",
            linestyle=":",
            linewidth=2,
            label=f"gain line, slope {found.gain.slope.value:.2f}",
        )
    panel.axhline(0.0, color="0.6", linewidth=0.6)
    panel.set_title(
        f"{MOVEMENTS[found.movement].name}: {limits.pairs} pairs, {found.people} people"
    )
    panel.set_xlabel("mean of camera and goniometer (degrees)")
    panel.set_ylabel("camera minus goniometer (degrees)")
    panel.legend(fontsize="small", loc="center left", bbox_to_anchor=(1.0, 0.5))


def _level(panel: "Axes", estimate: Estimate, dashes: str, name: str) -> None:
    panel.axhspan(estimate.low, estimate.high, color="0.88", zorder=0)
    panel.axhline(
        estimate.value,
        color="black",
        linestyle=dashes,
        label=f"{name} {degrees_text(estimate.value)}",
    )
