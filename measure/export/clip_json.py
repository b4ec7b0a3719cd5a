"""JSON of measurements of clips, as `thawline replay` and `thawline demo` write it: a contract."""

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from measure.clips.outcome import ClipResult
from measure.domain.acquisition import Setup
from measure.domain.measurements import Measurement, Trial
from measure.system.atomic_files import write_json
from measure.system.json_codec import to_data
from measure.system.versions import software


def document(
    versions: Mapping[str, str], results: Iterable[tuple[str, Measurement]]
) -> dict[str, Any]:
    """Return the whole document of measurements, each with the name of its clip."""
    return {
        "software": dict(versions),
        "results": [result(clip, measurement) for clip, measurement in results],
    }


def write_results(path: Path, results: Iterable[ClipResult]) -> None:
    """Write the document of clips: measured, refused, or not read with the error.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    content = {
        "software": dict(software()),
        "results": [clip_result(outcome) for outcome in results],
    }
    write_json(path, content)


def clip_result(outcome: ClipResult) -> dict[str, Any]:
    """Return one clip with its person; trials that someone left out are marked and not counted."""
    entry, counted = outcome.entry, outcome.counted
    named = {"person": entry.person, "reference_value": entry.reference}
    if counted is None or outcome.measurement is None:
        return {
            "clip": str(entry.clip),
            **named,
            "movement": str(entry.movement),
            "side": str(entry.side),
            "view": None if entry.view is None else str(entry.view),
            "status": "not read",
            "error": str(outcome.error),
        }
    written = result(str(entry.clip), counted)
    trials = result(str(entry.clip), outcome.measurement)["trials"]
    for number, trial in enumerate(trials, start=1):
        trial["left_out"] = number in outcome.left_out
    return {**written, **named, "trials": trials}


def result(clip: str, measurement: Measurement) -> dict[str, Any]:
    """Return one result; numbers are rounded to a hundredth of a degree or to 0.0001."""
    digits = 2 if measurement.unit == "deg" else 4
    source = measurement.provenance
    return {
        "clip": clip,
        "movement": str(measurement.movement),
        "side": str(measurement.side),
        "view": str(measurement.view),
        "status": str(measurement.status),
        "value": _rounded(measurement.value, digits),
        "unit": str(measurement.unit),
        "low": _rounded(measurement.low, digits),
        "high": _rounded(measurement.high, digits),
        "trials": [_trial(trial, digits) for trial in measurement.trials],
        "reasons": [str(reason) for reason in measurement.reasons],
        "level": to_data(measurement.level),
        "best": _rounded(measurement.best, digits),
        "against_vertical": _rounded(measurement.against_vertical, digits),
        "reference": str(measurement.reference),
        "model": {
            "quality": source.model,
            "sha256": dict(source.model_hashes),
            "passes": list(source.passes),
        },
        "source": dict(source.source),
        "setup": None if source.setup == Setup() else to_data(source.setup),
    }


def _trial(trial: Trial, digits: int) -> dict[str, Any]:
    values = {name: _rounded(getattr(trial, name), digits) for name in ("value", "low", "high")}
    times = ("start_s", "end_s", "hold_start_s", "hold_end_s")
    return {
        **values,
        **{name: _rounded(getattr(trial, name), 3) for name in times},
        "flags": to_data(trial.flags),
        "refused_for": to_data(trial.refused_for),
    }


def _rounded(value: float | None, digits: int) -> float | None:
    return None if value is None else round(float(value), digits)
