"""The command `thawline demo`: readings of the sample clips against their truth."""

import argparse
import csv
import json
from dataclasses import dataclass
from importlib.resources import as_file, files
from pathlib import Path
from statistics import median
from typing import Any

from measure.cli.clip_reading import exit_code, print_note, read_entries, settings_of
from measure.clips.inputs import ClipEntry
from measure.clips.outcome import ClipResult
from measure.domain.landmarks import Side
from measure.domain.movements import Movement, Unit, View
from measure.errors import InputError
from measure.pose_models.catalogue import ModelQuality

#: The package that carries the clips; it is not imported.
_CLIPS = ("sample_clips", "clips")


def configure(parser: argparse.ArgumentParser) -> None:
    """Read the sample clips and compare them with the true values, or load the demo story.

    Prints a table with the reading, interval, true value and error for each sample clip, and
    writes annotated clips, curves and the results as JSON. The clips show a virtual person, so
    the true values are known exactly; some clips must be refused. The first run downloads the
    pose model.

    exit codes:
      0  done
      2  the output folder cannot be used, or a clip could not be read
      1  an error inside Thawline

    examples:
      thawline demo
      thawline demo --to pictures --model-quality full
      thawline demo --story       load 20 weeks of made-up people from an allotment garden
    """
    parser.add_argument(
        "--to", type=Path, default=Path("demo_output"), metavar="DIR", help="default: demo_output"
    )
    parser.add_argument("--model-quality", choices=[quality.value for quality in ModelQuality])
    parser.add_argument(
        "--story", action="store_true", help="load demo people into the store instead"
    )
    parser.set_defaults(run=run)


@dataclass(frozen=True, slots=True, kw_only=True)
class SampleClip:
    """A sample clip and its truth.

    Attributes
    ----------
    times_s, values
        The true value of each frame.
    expected
        ("reading",) or the codes of the refusals that are right.
    """

    entry: ClipEntry
    times_s: list[float]
    values: list[float]
    expected: tuple[str, ...]

    @property
    def truth(self) -> float | None:
        """Median of the true values of its holds, or None where nothing should be read."""
        return self.entry.reference


def run(arguments: argparse.Namespace) -> int:
    if arguments.story:
        return _load_story()
    folder: Path = arguments.to
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise InputError(
            f"{folder} cannot be used for the output: {error.strerror or error}. "
            "Name another folder with --to."
        ) from error
    quality = ModelQuality(arguments.model_quality) if arguments.model_quality else None
    with as_file(files(_CLIPS[0]).joinpath(_CLIPS[1])) as clips:
        samples = sample_clips(clips)
        settings = settings_of(quality, None)
        results = []
        for result in read_entries([sample.entry for sample in samples], settings):
            results.append(result)
            _write_pictures(folder, samples[result.number], result)
    results.sort(key=lambda result: result.number)
    _print(samples, results)
    _write_results(folder / "results.json", samples, results)
    print(f"Annotated clips, curves and results.json are in {folder}.")
    return exit_code(results)


def _load_story() -> int:
    from measure.cli.open_store import open_store
    from measure.demo.story import load_story

    with open_store() as store:
        for line in load_story(store):
            print(line)
    return 0


def sample_clips(folder: Path) -> list[SampleClip]:
    """Return the sample clips of a folder with a ``truth.json``, in its order."""
    listed = json.loads((folder / "truth.json").read_text(encoding="utf-8"))["clips"]
    return [_sample(folder, facts) for facts in listed]


def _sample(folder: Path, facts: dict[str, Any]) -> SampleClip:
    clip = folder / facts["file"]
    with clip.with_suffix(".csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    holds = [hold["value"] for hold in facts["holds"]]
    expected = tuple(facts["expected"])
    readable = expected == ("reading",) and holds
    return SampleClip(
        entry=ClipEntry(
            clip=clip,
            movement=Movement(facts["movement"]),
            side=Side(facts["side"]),
            view=View(facts["view"]) if readable else None,
            reference=median(holds) if readable else None,
        ),
        times_s=[float(row["time_s"]) for row in rows],
        values=[float(row["value"]) for row in rows],
        expected=expected,
    )


def _write_pictures(folder: Path, sample: SampleClip, result: ClipResult) -> None:
    from measure.export.annotated_clip import write_annotated
    from measure.export.clip_figure import draw_curve

    if result.reading is None:
        return
    name = sample.entry.clip.stem
    draw_curve(folder / f"{name}.png", result.reading, (sample.times_s, sample.values))
    write_annotated(sample.entry.clip, folder / f"{name}.mp4", result.reading)


def _print(samples: list[SampleClip], results: list[ClipResult]) -> None:
    from measure.cli.main import NOTICE
    from measure.cli.terminal_table import table
    from measure.report.measurement_wording import interval_text, reason_codes, value_text

    rows = []
    for sample, result in zip(samples, results, strict=True):
        entry = sample.entry
        row = [entry.clip.stem, str(entry.movement), str(entry.side)]
        if result.reading is None:
            rows.append([*row, "not read", "", "", "", ""])
            print_note(str(result.error))
            continue
        measurement = result.reading.measurement
        truth = "refusal" if sample.truth is None else _digits(sample.truth, measurement.unit)
        error = ""
        if sample.truth is not None and measurement.value is not None:
            error = _digits(measurement.value - sample.truth, measurement.unit, sign="+")
        reading = [value_text(measurement), interval_text(measurement)]
        rows.append([*row, *reading, truth, error, reason_codes(measurement)])
    header = ("clip", "movement", "side", "reading", "95 % interval", "truth", "error", "remarks")
    print(table(rows, header))
    print(
        "Truth: joints of the virtual person in the hold; error: reading less truth. "
        "Real people differ more."
    )
    print(NOTICE)


def _digits(value: float, unit: Unit, sign: str = "") -> str:
    return f"{value:{sign}.1f}°" if unit is Unit.DEGREES else f"{value:{sign}.3f}"


def _write_results(path: Path, samples: list[SampleClip], results: list[ClipResult]) -> None:
    from measure.export.clip_json import document
    from measure.system.atomic_files import write_json
    from measure.system.versions import software

    read = [
        (sample, result.reading)
        for sample, result in zip(samples, results, strict=True)
        if result.reading is not None
    ]
    content = document(
        software(), [(sample.entry.clip.name, reading.measurement) for sample, reading in read]
    )
    for entry, (sample, _) in zip(content["results"], read, strict=True):
        entry["truth"] = None if sample.truth is None else round(sample.truth, 4)
        entry["expected"] = list(sample.expected)
    write_json(path, content)
