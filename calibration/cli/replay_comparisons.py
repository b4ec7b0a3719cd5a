"""Comparisons that `thawline replay` offers: readings with references, places with kept places.

Registered as entry points of the group ``thawline.replay``, because reading clips stands below
calibration.
"""

import datetime as dt
from collections.abc import Sequence
from pathlib import Path

from calibration.agreement.pairs_table import PairedReading, PairTable
from measure.cli.open_store import open_store
from measure.clips.outcome import ClipResult
from measure.domain.movements import MOVEMENTS, Unit
from measure.errors import InputError

#: Name of the study in words and files.
_STUDY = "agreement"


def print_placement_changes(outcomes: Sequence[ClipResult], person_id: str, *, keep: bool) -> None:
    """Print where a person stands otherwise than when the place was kept; keep it if wanted."""
    from calibration.placement.check import compare_placement, save_placement

    today = dt.date.today()
    with open_store() as store:
        for outcome in outcomes:
            if outcome.measurement is None:
                continue
            name = outcome.entry.clip.name
            for change in compare_placement(store, outcome.measurement, person_id, today):
                print(f"{name}: {change.sentence}")
            if keep:
                kept = save_placement(store, outcome.measurement, person_id, today)
                print(f"{name}: {'the place is saved.' if kept else 'no one was seen standing.'}")


def paired_readings(outcomes: Sequence[ClipResult]) -> PairTable:
    """Return a pair for each clip that has a reading, a reference and a person.

    The reach behind the back is no angle and left out. What else is missing is counted in the
    notes.
    """
    pairs, without_person, without_reading = [], 0, 0
    for outcome in outcomes:
        entry, measurement = outcome.entry, outcome.measurement
        if entry.reference is None or MOVEMENTS[entry.movement].unit is not Unit.DEGREES:
            continue
        if measurement is None or measurement.value is None:
            without_reading += 1
        elif not entry.person:
            without_person += 1
        else:
            pairs.append(
                PairedReading(
                    person=entry.person,
                    movement=entry.movement,
                    side=entry.side,
                    camera_deg=measurement.value,
                    goniometer_deg=entry.reference,
                )
            )
    notes = []
    if without_reading:
        notes.append(
            f"{without_reading} clip(s) with a reference gave no reading. The figures cover the "
            "clips that did."
        )
    if without_person:
        notes.append(f"{without_person} clip(s) do not name a person and were left out.")
    return PairTable(pairs=tuple(pairs), notes=tuple(notes))


def report_agreement(outcomes: Sequence[ClipResult], folder: Path) -> None:
    """Print the agreement of readings and references, and write its figures and plot.

    Raises
    ------
    InputError
        When there are not enough pairs, or a file cannot be written.
    """
    from calibration.agreement.plot import save_agreement_figure
    from calibration.agreement.report import format_studies, write_json
    from calibration.statistics.bland_altman import Pairing

    table = paired_readings(outcomes)
    if not table.pairs:
        raise InputError(
            "No clip has a reading, a reference and a person, so there is nothing to compare. "
            "The manifest's columns are reference and person. " + " ".join(table.notes)
        )
    judged, text = format_studies(table, Pairing.SAME_MOVE, _STUDY)
    print(text)
    write_json(folder / f"{_STUDY}.json", judged, _STUDY)
    save_agreement_figure(judged, folder / f"{_STUDY}.png")
    print(f"The figures and the plot are in {folder}.")
