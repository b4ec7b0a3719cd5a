"""Agreement study of a clinician's table for the window: its words and its figures."""

from dataclasses import dataclass
from pathlib import Path

from calibration.agreement.study import Agreement
from measure.domain.acquisition import MovementCorrection
from measure.domain.error_sizes import MovementStudy
from measure.storage.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementStudy:
    """What a study says.

    Attributes
    ----------
    words
        In English, as reports are.
    judged
        The figures of each movement, with its pairs.
    offers
        Corrections of the camera that the study offers.
    errors
        The camera's errors where the study is large enough to make intervals.
    """

    words: str
    judged: tuple[Agreement, ...] = ()
    offers: tuple[MovementCorrection, ...] = ()
    errors: tuple[MovementStudy, ...] = ()


def analyse_study_file(path: Path) -> AgreementStudy:
    """Return what a table of camera and goniometer readings says, as `thawline agreement` does.

    Raises
    ------
    InputError
        When the table cannot be read or holds too little.
    """
    from calibration.agreement.pairs_table import read_pairs
    from calibration.agreement.report import format_studies, proposed_corrections, study_errors
    from calibration.statistics.bland_altman import Pairing

    judged, words = format_studies(read_pairs(path), Pairing.SAME_MOVE, path.stem)
    return AgreementStudy(
        words=words.strip(),
        judged=tuple(judged),
        offers=proposed_corrections(judged, path.stem),
        errors=study_errors(judged, path.stem),
    )


def save_proposed_corrections(study: AgreementStudy, camera: str) -> None:
    """Keep a study for a camera: intervals rest on it, corrections are off until switched on."""
    from calibration.agreement.report import save_proposed_correction, save_study_errors

    with Store.open() as store:
        for of_movement in study.errors:
            save_study_errors(store, of_movement, camera)
        for offer in study.offers:
            save_proposed_correction(store, offer, camera)
