"""What an agreement study prints and writes: words, JSON, corrections kept for later."""

import json
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import Any

from calibration.agreement.correction import NoCorrection, correction_from
from calibration.agreement.study import Agreement, TooLittle, studies
from calibration.agreement.table import PairTable
from calibration.agreement.wording import paragraph
from calibration.repository.corrections import CORRECTIONS, KeptCorrection
from calibration.statistics.bland_altman import Pairing
from measure.domain.acquisition import MovementCorrection
from measure.domain.movements import MOVEMENTS
from measure.errors import DataError, InputError
from measure.system.json_codec import to_plain


def print_studies(table: PairTable, pairing: Pairing, study: str) -> list[Agreement]:
    """Print every movement's study in words; return those that could be judged.

    Raises
    ------
    InputError
        When no movement has enough pairs.
    """
    judged, words = study_words(table, pairing, study)
    print(words)
    return judged


def study_words(table: PairTable, pairing: Pairing, study: str) -> tuple[list[Agreement], str]:
    """Return the studies that could be judged, and what to say of every movement.

    Raises
    ------
    InputError
        When no movement has enough pairs.
    """
    found = studies(table, pairing)
    judged = [each for each in found if isinstance(each, Agreement)]
    if not judged:
        raise InputError("\n".join(each.sentence for each in found if isinstance(each, TooLittle)))
    parts = [f"Note: {note}" for note in table.notes]
    for each in found:
        parts.append(
            "\n" + (each.sentence if isinstance(each, TooLittle) else _in_words(each, study))
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
        "studies": [_plain(each, study) for each in found],
    }
    try:
        path.write_text(json.dumps(content, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")
    except OSError as error:
        raise DataError(f"{path.name} could not be written ({error.strerror}).") from error


def keep_corrections(found: Sequence[Agreement], study: str, camera_name: str) -> None:
    """Keep what corrections the studies offer, switched off, and say so."""
    for offer in offered_corrections(found, study):
        keep_offer(offer, camera_name)
        print(
            f"\nThe correction for {MOVEMENTS[offer.movement].name.lower()} is kept for "
            f"{camera_name}, switched off. To use it: thawline calibrate correction on"
        )


def offered_corrections(found: Sequence[Agreement], study: str) -> tuple[MovementCorrection, ...]:
    """Return the corrections that the studies offer, by movement."""
    offers = ((each.movement, correction_from(each, study)) for each in found)
    return tuple(
        MovementCorrection(movement=movement, correction=offer.correction)
        for movement, offer in offers
        if not isinstance(offer, NoCorrection)
    )


def keep_offer(offer: MovementCorrection, camera_name: str) -> None:
    """Keep a correction for a camera, switched off."""
    CORRECTIONS.put(
        KeptCorrection(
            camera_name=camera_name, movement=offer.movement, correction=offer.correction
        )
    )


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
