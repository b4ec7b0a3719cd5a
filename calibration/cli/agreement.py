"""`thawline agreement`: agreement of camera and goniometer, from a table of paired readings."""

import argparse
from pathlib import Path


def configure(parser: argparse.ArgumentParser) -> None:
    """Compare camera and goniometer readings from a table.

    The table is a CSV file with the columns person, movement, side, camera_deg,
    goniometer_deg, and optionally repeat and tester. Number repeats of the same position from
    1 in the column repeat; without numbers, pairs from the same person may be of different
    positions. Each movement is judged on its own.

    examples:
      thawline agreement readings.csv
      thawline agreement readings.csv --plot readings.png --json readings.json
    """
    parser.add_argument("table", type=Path, metavar="FILE.csv", help="a table of paired readings")
    parser.add_argument("--json", type=Path, metavar="FILE", help="write all figures as JSON")
    parser.add_argument("--plot", type=Path, metavar="FILE.png", help="write the agreement plot")
    parser.add_argument(
        "--separate-repeats",
        action="store_true",
        help="camera and goniometer repeats were taken one after the other, not at the same moment",
    )
    parser.add_argument(
        "--keep-for",
        metavar="CAMERA",
        help="save the study for this camera: from then on its intervals are based on it, and any "
        "corrections it offers are saved, switched off (see: thawline calibrate correction)",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    """Print what the table says; return 0, also where some movement has too little."""
    from calibration.agreement.pairs_table import read_pairs
    from calibration.agreement.report import format_studies, save_corrections, write_json
    from calibration.statistics.bland_altman import Pairing

    table = read_pairs(arguments.table)
    pairing = Pairing.SEPARATE if arguments.separate_repeats else Pairing.SAME_MOVE
    study = arguments.table.stem
    judged, text = format_studies(table, pairing, study)
    print(text)
    if arguments.json is not None:
        write_json(arguments.json, judged, study)
    if arguments.plot is not None:
        from calibration.agreement.plot import save_agreement_figure

        save_agreement_figure(judged, arguments.plot)
    if arguments.keep_for is not None:
        from measure.cli.open_store import open_store

        with open_store() as store:
            save_corrections(store, judged, study, arguments.keep_for)
    return 0
