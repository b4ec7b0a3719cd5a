"""Formats of exports of one person's history, and the names of their files."""

from enum import StrEnum

from measure.domain.records import History
from measure.export.fhir import USUAL_CODES, history_fhir
from measure.export.fhir_codes import CodeChoices
from measure.export.history_csv import DecimalSign, csv_for_programs, csv_for_spreadsheets
from measure.export.history_json import history_json
from measure.system.atomic_files import safe_name
from measure.system.clock import Timestamp
from measure.system.versions import software


class Format(StrEnum):
    """Formats of exports. Only JSON can be imported again."""

    CSV = "csv"
    SPREADSHEET = "spreadsheet"
    JSON = "json"
    FHIR = "fhir"


_ENDINGS = {
    Format.CSV: ".csv",
    Format.SPREADSHEET: "-spreadsheet.csv",
    Format.JSON: ".json",
    Format.FHIR: "-fhir.json",
}


def export(
    history: History,
    kind: Format,
    now: Timestamp,
    *,
    decimal: DecimalSign = DecimalSign.COMMA,
    codes: CodeChoices = USUAL_CODES,
) -> bytes:
    """Return the contents of an export file.

    Parameters
    ----------
    decimal
        Decimal sign, for spreadsheets only.
    codes
        Which codes are written beside the usual ones, for FHIR only.
    """
    if kind is Format.CSV:
        return csv_for_programs(history)
    if kind is Format.SPREADSHEET:
        return csv_for_spreadsheets(history, decimal)
    if kind is Format.JSON:
        return history_json(history, now, software()["thawline"])
    return history_fhir(history, now, codes)


def file_name(history: History, kind: Format, now: Timestamp) -> str:
    """Return a name for an export that every system accepts: pseudonym, local day, ending."""
    demo = "demo-" if history.person.demo else ""
    return f"{demo}{safe_name(history.person.pseudonym)}-{now.day.isoformat()}{_ENDINGS[kind]}"
