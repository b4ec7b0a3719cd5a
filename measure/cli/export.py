"""`thawline export`: one person's history as a file for other programs."""

import argparse
from pathlib import Path

from measure.cli.main import NOTICE
from measure.cli.open_store import open_store
from measure.export.fhir_codes import CodeChoices
from measure.export.formats import Format, export, file_name
from measure.export.history_csv import DecimalSign
from measure.system.atomic_files import write_new


def configure(parser: argparse.ArgumentParser) -> None:
    """Write everything saved about one person to a new file. Nothing is ever overwritten.

    formats:
      csv          for programs: UTF-8, comma, decimal point, one row per trial
      spreadsheet  the same table for spreadsheets: semicolons and decimal comma or, with
                   --decimal point, commas and decimal point; texts are never run
                   as formulas or read as dates
      json         everything; can be imported again; described in measure/docs/json-export.md
      fhir         a FHIR R4 bundle for health records: observations, programme, goals

    Only its owner can read the file. It contains the pseudonym and every note.

    exit codes:
      0  written
      1  the disk could not be read or written
      2  wrong use, no one of that name, or the file exists

    examples:
      thawline export Rosa --format json --to rosa.json
      thawline export Rosa --format spreadsheet --to .
      thawline export Rosa --format fhir --to rosa-fhir.json
    """
    parser.add_argument("person", metavar="PERSON", help="pseudonym")
    parser.add_argument(
        "--format", required=True, choices=[format.value for format in Format], help="see below"
    )
    parser.add_argument(
        "--to",
        required=True,
        type=Path,
        metavar="FILE",
        help="the new file, or a folder in which to make one named after the person",
    )
    parser.add_argument(
        "--decimal",
        choices=[sign.value for sign in DecimalSign],
        default=DecimalSign.COMMA.value,
        help="decimal sign the spreadsheet expects (default: %(default)s)",
    )
    parser.add_argument(
        "--unverified-codes",
        action="store_true",
        help="fhir: also write LOINC numbers that have not been confirmed (extension, and codes "
        "with a side)",
    )
    parser.add_argument(
        "--snomed",
        action="store_true",
        help="fhir: also give the SNOMED CT code of the shoulder, which needs a licence in some "
        "countries",
    )
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    kind = Format(arguments.format)
    with open_store() as store:
        history = store.history(store.find_person(arguments.person).id)
        now = store.now()
    target: Path = arguments.to
    if target.is_dir():
        target = target / file_name(history, kind, now)
    data = export(
        history,
        kind,
        now,
        decimal=DecimalSign(arguments.decimal),
        codes=CodeChoices(unverified=arguments.unverified_codes, snomed=arguments.snomed),
    )
    write_new(target, data)
    counts = f"sessions: {len(history.sessions)}, measurements: {len(history.measurements)}"
    print(f"Wrote {target} ({counts})")
    print(NOTICE)
    return 0
