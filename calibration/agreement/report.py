"""Report of an agreement study: text, JSON, and the corrections it proposes."""

import json
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any

from calibration.agreement.correction import NoCorrection, fit_correction
from calibration.agreement.pairs_table import PairTable
from calibration.agreement.study import Agreement, InsufficientData, analyse_by_movement
from calibration.agreement.study_error import study_error
from calibration.agreement.wording import agreement_paragraph, degrees_text
from calibration.statistics.bland_altman import Pairing
from measure.domain.acquisition import MovementCorrection
from measure.domain.calibration_records import StoredCorrection, StoredStudy
from measure.domain.error_sizes import MovementStudy
from measure.domain.movements import MOVEMENTS
from measure.errors import InputError
from measure.storage.store import Store
from measure.system.atomic_files import write_over
from measure.system.json_codec import to_data


def format_studies(table: PairTable, pairing: Pairing, study: str) -> tuple[list[Agreement], str]:
    """Return the studies that could be analysed, and the text on every movement.

    Raises
    ------
    InputError
        When no movement has enough pairs.
    """
    results = analyse_by_movement(table, pairing)
    judged = [result for result in results if isinstance(result, Agreement)]
    texts = [
        result.sentence if isinstance(result, InsufficientData) else _format_study(result, study)
        for result in results
    ]
    if not judged:
        raise InputError("\n".join(texts))
    notes = [f"Note: {note}" for note in table.notes]
    return judged, "\n".join([*notes, *(f"\n{text}" for text in texts)])


def write_json(path: Path, agreements: Sequence[Agreement], study: str) -> None:
    """Write all figures of the studies as JSON; a figure that is not available is null.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    content = {
        "software": {"thawline": version("thawline")},
        "studies": [_json_data(agreement, study) for agreement in agreements],
    }
    text = json.dumps(content, indent=2, ensure_ascii=False) + "\n"
    write_over(path, text.encode())


def save_corrections(
    store: Store, agreements: Sequence[Agreement], study: str, camera_name: str
) -> None:
    """Store the studies' errors and the corrections they propose, switched off; print which."""
    for of_movement in study_errors(agreements, study):
        save_study_errors(store, of_movement, camera_name)
        print(
            f"\nIntervals of {MOVEMENTS[of_movement.movement].name.lower()} in front of "
            f"{camera_name} are based on this study from now on."
        )
    for offer in proposed_corrections(agreements, study):
        save_proposed_correction(store, offer, camera_name)
        print(
            f"\nThe correction for {MOVEMENTS[offer.movement].name.lower()} is saved for "
            f"{camera_name}, switched off. To use it: thawline calibrate correction on"
        )


def proposed_corrections(
    agreements: Sequence[Agreement], study: str
) -> tuple[MovementCorrection, ...]:
    """Return the corrections that the studies propose, at most one per movement."""
    offers = ((agreement.movement, fit_correction(agreement, study)) for agreement in agreements)
    return tuple(
        MovementCorrection(movement=movement, correction=offer.correction)
        for movement, offer in offers
        if not isinstance(offer, NoCorrection)
    )


def save_proposed_correction(store: Store, offer: MovementCorrection, camera_name: str) -> None:
    """Store a correction for a camera, switched off."""
    store.save_correction(
        StoredCorrection(
            camera_name=camera_name, movement=offer.movement, correction=offer.correction
        )
    )


def study_errors(agreements: Sequence[Agreement], study: str) -> tuple[MovementStudy, ...]:
    """Return the errors of the studies that are large enough to make intervals."""
    errors = ((agreement.movement, study_error(agreement, study)) for agreement in agreements)
    return tuple(
        MovementStudy(movement=movement, error=error)
        for movement, error in errors
        if error is not None
    )


def save_study_errors(store: Store, of_movement: MovementStudy, camera_name: str) -> None:
    """Store a study's errors for a camera: its intervals rest on them from then on."""
    store.save_study(
        StoredStudy(camera_name=camera_name, movement=of_movement.movement, error=of_movement.error)
    )


def _format_study(agreement: Agreement, study: str) -> str:
    lines = [agreement_paragraph(agreement)]
    lines += [
        f"  Tester {bias.tester}: mean difference {bias.mean_deg:.1f} degrees "
        f"over {bias.pairs} pair{'s' * (bias.pairs != 1)}."
        for bias in agreement.by_tester
    ]
    lines += [f"  Note: {note}" for note in agreement.notes]
    error = study_error(agreement, study)
    if error is not None:
        half = error.half_width_deg(corrected=False)
        lines.append(
            f"  Saved for a camera, this study sets its intervals: {degrees_text(half)} degrees "
            "either way at least, instead of the allowance for people who were not measured."
        )
    correction = fit_correction(agreement, study)
    if isinstance(correction, NoCorrection):
        lines.append(f"  No correction is offered: {correction.sentence}")
    else:
        lines.append(f"  A correction is offered: {correction.sentence}")
    return "\n".join(lines)


def _json_data(agreement: Agreement, study: str) -> dict[str, Any]:
    figures: dict[str, Any] = to_data(agreement)
    del figures["pairs"]
    correction = fit_correction(agreement, study)
    return figures | {
        "paragraph": agreement_paragraph(agreement),
        "interval": to_data(study_error(agreement, study)),
        "correction": None
        if isinstance(correction, NoCorrection)
        else to_data(correction.correction),
        "correction_note": correction.sentence,
    }
