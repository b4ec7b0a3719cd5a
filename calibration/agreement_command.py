"""`thawline agreement`: the figures of a study with a goniometer, from a table of pairs."""

import argparse
import json
from importlib.metadata import version
from pathlib import Path
from typing import Any

from calibration.agreement import Agreement, TooLittle, studies
from calibration.agreement_table import read_pairs
from calibration.agreement_words import paragraph
from calibration.correction import NoCorrection, correction_from
from calibration.limits_of_agreement import Pairing
from measure.errors import DataError, InputError
from measure.plain_data import to_plain


def configure(parser: argparse.ArgumentParser) -> None:
    """Compare camera and goniometer readings from a table.

    The table is a CSV file with the columns person, movement, side, camera_deg,
    goniometer_deg, and if wanted repeat and tester. Number repeats of the same position from
    1 in the column repeat; without numbers, several pairs of a person may be of different
    positions. Every movement is judged on its own.

    examples:
      thawline agreement readings.csv
      thawline agreement readings.csv --plot readings.png --json readings.json
    """
    parser.add_argument("table", type=Path, metavar="FILE.csv", help="the paired readings")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write all figures as JSON")
    parser.add_argument("--plot", type=Path, metavar="FILE.png", help="write the agreement plot")
    parser.add_argument(
        "--separate-repeats",
        action="store_true",
        help="camera and goniometer took their repeats one after the other, not at the same moment",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print what the table says; return 0, also where some movement has too little."""
    table = read_pairs(arguments.table)
    pairing = Pairing.SEPARATE if arguments.separate_repeats else Pairing.SAME_MOVE
    found = studies(table, pairing)
    judged = [each for each in found if isinstance(each, Agreement)]
    if not judged:
        raise InputError("\n".join(each.sentence for each in found if isinstance(each, TooLittle)))
    for note in table.notes:
        print(f"Note: {note}")
    study = arguments.table.stem
    for each in found:
        print()
        print(each.sentence if isinstance(each, TooLittle) else _in_words(each, study))
    if arguments.json is not None:
        _write_json(arguments.json, [_plain(each, study) for each in judged])
    if arguments.plot is not None:
        from calibration.agreement_plot import save_agreement_figure

        save_agreement_figure(judged, arguments.plot)
    return 0


def _in_words(found: Agreement, study: str) -> str:
    lines = [paragraph(found)]
    lines += [
        f"  Tester {each.tester}: mean difference {each.mean_deg:.1f} degrees "
        f"over {each.pairs} pair{'s' * (each.pairs != 1)}."
        for each in found.by_tester
    ]
    lines += [f"  Note: {note}" for note in found.notes]
    correction = correction_from(found, study)
    if isinstance(correction, NoCorrection):
        lines.append(f"  No correction is offered: {correction.sentence}")
    else:
        lines.append(f"  A correction is offered: {correction.sentence}")
    return "\n".join(lines)


def _plain(found: Agreement, study: str) -> dict[str, Any]:
    figures: dict[str, Any] = to_plain(found)
    del figures["pairs"]
    correction = correction_from(found, study)
    return figures | {
        "paragraph": paragraph(found),
        "correction": None
        if isinstance(correction, NoCorrection)
        else to_plain(correction.correction),
        "correction_note": correction.sentence,
    }


def _write_json(path: Path, found: list[dict[str, Any]]) -> None:
    content = {"software": {"thawline": version("thawline")}, "studies": found}
    try:
        path.write_text(json.dumps(content, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    except OSError as error:
        raise DataError(f"{path.name} could not be written ({error.strerror}).") from error
