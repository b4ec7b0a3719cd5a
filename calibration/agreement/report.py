"""What an agreement study prints and writes: words, JSON, corrections kept for later."""

import json
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any

from calibration.agreement.correction import NoCorrection, fit_correction
from calibration.agreement.study import Agreement, InsufficientData, analyse_by_movement
from calibration.agreement.table import PairTable
from calibration.agreement.wording import agreement_paragraph
from calibration.repository.corrections import CORRECTIONS, StoredCorrection
from calibration.statistics.bland_altman import Pairing
from measure.domain.acquisition import MovementCorrection
from measure.domain.movements import MOVEMENTS
from measure.errors import DataError, InputError
from measure.system.json_codec import to_data


def print_studies(table: PairTable, pairing: Pairing, study: str) -> list[Agreement]:
    """Print every movement's study in words; return those that could be judged.

    Raises
    ------
    InputError
        When no movement has enough pairs.
    """
    judged, words = format_studies(table, pairing, study)
    print(words)
    return judged


def format_studies(table: PairTable, pairing: Pairing, study: str) -> tuple[list[Agreement], str]:
    """Return the studies that could be judged, and what to say of every movement.

    Raises
    ------
    InputError
        When no movement has enough pairs.
    """
    found = analyse_by_movement(table, pairing)
    judged = [each for each in found if isinstance(each, Agreement)]
    if not judged:
        raise InputError(
            "\n".join(each.sentence for each in found if isinstance(each, InsufficientData))
        )
    parts = [f"Note: {note}" for note in table.notes]
    for each in found:
        parts.append(
            "\n"
            + (each.sentence if isinstance(each, InsufficientData) else _format_study(each, study))
        )
    return judged, "\n".join(parts)


def write_json(path: Path, found: Sequence[Agreement], study: str) -> None:
    """Write all figures of the studies; a figure that cannot be had is null.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    content = {
        "software": {"thawline": version("thawline")},
        "studies": [_json_data(each, study) for each in found],
    }
    try:
        path.write_text(json.dumps(content, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    except OSError as error:
        raise DataError(f"{path.name} could not be written ({error.strerror}).") from error


def save_corrections(found: Sequence[Agreement], study: str, camera_name: str) -> None:
    """Keep what corrections the studies offer, switched off, and say so."""
    for offer in proposed_corrections(found, study):
        save_proposed_correction(offer, camera_name)
        print(
            f"\nThe correction for {MOVEMENTS[offer.movement].name.lower()} is kept for "
            f"{camera_name}, switched off. To use it: thawline calibrate correction on"
        )


def proposed_corrections(found: Sequence[Agreement], study: str) -> tuple[MovementCorrection, ...]:
    """Return the corrections that the studies offer, by movement."""
    offers = ((each.movement, fit_correction(each, study)) for each in found)
    return tuple(
        MovementCorrection(movement=movement, correction=offer.correction)
        for movement, offer in offers
        if not isinstance(offer, NoCorrection)
    )


def save_proposed_correction(offer: MovementCorrection, camera_name: str) -> None:
    """Keep a correction for a camera, switched off."""
    CORRECTIONS.put(
        StoredCorrection(
            camera_name=camera_name, movement=offer.movement, correction=offer.correction
        )
    )


def _format_study(found: Agreement, study: str) -> str:
    lines = [agreement_paragraph(found)]
    lines += [
        f"  Tester {each.tester}: mean difference {each.mean_deg:.1f} degrees "
        f"over {each.pairs} pair{'s' * (each.pairs != 1)}."
        for each in found.by_tester
    ]
    lines += [f"  Note: {note}" for note in found.notes]
    correction = fit_correction(found, study)
    if isinstance(correction, NoCorrection):
        lines.append(f"  No correction is offered: {correction.sentence}")
    else:
        lines.append(f"  A correction is offered: {correction.sentence}")
    return "\n".join(lines)


def _json_data(found: Agreement, study: str) -> dict[str, Any]:
    figures: dict[str, Any] = to_data(found)
    del figures["pairs"]
    correction = fit_correction(found, study)
    return figures | {
        "paragraph": agreement_paragraph(found),
        "correction": None
        if isinstance(correction, NoCorrection)
        else to_data(correction.correction),
        "correction_note": correction.sentence,
    }
