"""Summary of many clips: counts in words, and a CSV table with a row for each clip."""

import csv
import io
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

from measure.clips.outcome import ClipResult
from measure.domain.measurements import Measurement, Status
from measure.errors import InputError
from measure.system.atomic_files import write_over

#: Columns of the table, in their order.
COLUMNS = (
    "clip",
    "person",
    "movement",
    "side",
    "view",
    "status",
    "value",
    "low",
    "high",
    "unit",
    "best",
    "against_vertical",
    "level_low",
    "level_high",
    "trials",
    "trials_scored",
    "trials_left_out",
    "reasons",
    "reference",
    "difference",
    "model",
    "passes",
    "thawline",
    "error",
)


def summary_lines(results: Sequence[ClipResult]) -> list[str]:
    """Return how many readings, refusals by reason and failures there are, a line each."""
    measurements = [result.measurement for result in results if result.measurement is not None]
    readings = sum(measurement.status is Status.READING for measurement in measurements)
    refusals = Counter(
        _first_reason(measurement)
        for measurement in measurements
        if measurement.status is Status.REFUSED
    )
    errors = [result.error for result in results if result.measurement is None]
    unreadable = sum(isinstance(error, InputError) for error in errors)
    failed = len(errors) - unreadable
    unwritten = sum(result.error is not None for result in results) - len(errors)
    earlier = sum(result.is_earlier for result in results)
    lines = [f"{_clips(len(results))}: {readings} with a reading, {refusals.total()} refused"]
    lines += [f"  {count:6d}  {reason}" for reason, count in _most_first(refusals)]
    if unreadable:
        lines.append(f"{_clips(unreadable)} could not be read")
    if failed:
        lines.append(
            f"{_clips(failed)} met an error inside Thawline; give the same command again to retry"
        )
    if unwritten:
        lines.append(f"{_clips(unwritten)} read, but not everything you asked for was written")
    if earlier:
        lines.append(f"{_clips(earlier)} taken over from an earlier run")
    return lines


def _first_reason(measurement: Measurement) -> str:
    return str(measurement.reasons[0]) if measurement.reasons else "no reason given"


def _most_first(counts: Counter[str]) -> list[tuple[str, int]]:
    return sorted(counts.items(), key=lambda item: (-item[1], item[0]))


def _clips(count: int) -> str:
    return f"{count} clip{'s' * (count != 1)}"


def write_table(path: Path, results: Sequence[ClipResult]) -> None:
    """Write the table as CSV: UTF-8, commas, decimal points, every digit.

    A new file can be read by its owner alone, for it names people.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    text = io.StringIO(newline="")
    rows = csv.DictWriter(text, COLUMNS, restval="", lineterminator="\n")
    rows.writeheader()
    rows.writerows(_row(result) for result in results)
    write_over(path, text.getvalue().encode("utf-8", "surrogateescape"))


def _row(result: ClipResult) -> dict[str, object]:
    entry, measurement = result.entry, result.counted
    row: dict[str, object] = {
        "clip": str(entry.clip),
        "person": entry.person,
        "movement": str(entry.movement),
        "side": str(entry.side),
        "view": "" if entry.view is None else str(entry.view),
        "reference": entry.reference,
    }
    if measurement is None:
        return {**row, "status": "not read", "error": str(result.error)}
    value, level = measurement.value, measurement.level
    difference = None
    if value is not None and entry.reference is not None:
        difference = value - entry.reference
    return {
        **row,
        "view": str(measurement.view),
        "status": str(measurement.status),
        "value": value,
        "low": measurement.low,
        "high": measurement.high,
        "unit": str(measurement.unit),
        "best": measurement.best,
        "against_vertical": measurement.against_vertical,
        "level_low": "" if level is None else level.low,
        "level_high": "" if level is None else level.high,
        "trials": len(result.measurement.trials if result.measurement else ()),
        "trials_scored": sum(trial.scored for trial in measurement.trials),
        "trials_left_out": " ".join(map(str, result.left_out)),
        "reasons": " ".join(map(str, measurement.reasons)),
        "difference": difference,
        "model": measurement.provenance.model,
        "passes": "; ".join(measurement.provenance.passes),
        "thawline": measurement.provenance.software.get("thawline", ""),
    }
