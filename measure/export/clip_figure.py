"""Figure of a clip: its value over time as a PNG, drawn without a display, readable in grey."""

from pathlib import Path
from textwrap import wrap

from measure.clips.read import ClipReading
from measure.domain.movements import MOVEMENTS, Unit
from measure.export.figure_file import save_figure
from measure.report.measurement_wording import interval_text, refusal_sentences, value_text

#: Characters in a line of the title. [technical]
WIDEST_TITLE = 110

_INK, _PALE, _SOIL = "#22302b", "#b9c4bd", "#7a4b1f"


def draw_curve(
    path: Path, reading: ClipReading, truth: tuple[list[float], list[float]] | None
) -> None:
    """Draw guide, refined values, holds and measurement of a clip as a PNG.

    Parameters
    ----------
    truth
        Times in seconds and true values, where they are known.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure

    measurement = reading.measurement
    facts = MOVEMENTS[measurement.movement]
    figure = Figure(figsize=(8.0, 4.2), dpi=110, layout="constrained")
    FigureCanvasAgg(figure)
    axes = figure.add_subplot()
    times = reading.track.time_s
    if truth is not None:
        axes.plot(*truth, color=_SOIL, lw=1.2, ls=":", label="truth")
    axes.plot(times, reading.guide, color=_PALE, lw=1.5, label="first pass")
    for number, refined in enumerate(reading.refined):
        label = None if number else "detailed pass"
        axes.plot(refined.fused.time_s, refined.fused.value, color=_INK, lw=2, label=label)
    for trial in measurement.trials:
        if trial.hold_start_s is None or trial.hold_end_s is None:
            continue
        hatch = None if trial.scored else "//"
        axes.axvspan(
            trial.hold_start_s, trial.hold_end_s, color=_PALE, alpha=0.35, lw=0, hatch=hatch
        )
        if trial.value is not None and trial.low is not None and trial.high is not None:
            span = [trial.hold_start_s, trial.hold_end_s]
            axes.fill_between(span, trial.low, trial.high, color=_INK, alpha=0.25, lw=0)
            axes.plot(span, [trial.value] * 2, color=_INK, lw=3)
    unit = "degrees" if facts.unit is Unit.DEGREES else "fraction of mid-hip to C7"
    words = value_text(measurement)
    if measurement.value is not None:
        words += f"  (95 %: {interval_text(measurement)})"
    else:
        words = "\n".join(wrap(f"{words}: {refusal_sentences(measurement)}", WIDEST_TITLE))
    axes.set_title(f"{facts.name}, {measurement.side} arm\n{words}", fontsize=10, loc="left")
    axes.set_xlabel("seconds")
    axes.set_ylabel(unit)
    axes.grid(color="#e4e8e5")
    axes.set_axisbelow(True)
    if len(times):
        axes.set_xlim(0, float(times[-1]))
    axes.legend(frameon=False, fontsize=8, loc="upper right")
    figure.text(0.01, 0.005, "An estimate, not a diagnosis.", fontsize=7, color=_INK)
    save_figure(figure, path)
