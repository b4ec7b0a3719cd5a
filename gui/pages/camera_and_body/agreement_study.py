"""Agreement study of a clinician's table for the window: its words and its plot."""

import io
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtGui import QImage

from calibration.statistics.bland_altman import LimitsOfAgreement
from measure.domain.acquisition import MovementCorrection
from measure.domain.error_sizes import MovementStudy
from measure.domain.movements import Movement
from measure.storage.store import Store

#: Width of the plot and height of a movement in it, inches: low, so that it is seen whole.
#: [technical]
_PLOT_INCHES = (7.6, 2.45)
#: Dots of the plot for an inch, enough for displays with small pixels. [technical]
_DOTS_PER_INCH = 240


@dataclass(frozen=True, slots=True, kw_only=True)
class AgreementStudy:
    """What a study says.

    Attributes
    ----------
    words
        In English, as reports are.
    findings
        Each movement with the camera's difference from the goniometer, degrees.
    plot
        The agreement plot, or None.
    offers
        Corrections of the camera that the study offers.
    errors
        The camera's errors where the study is large enough to make intervals.
    """

    words: str
    findings: tuple[tuple[Movement, LimitsOfAgreement], ...] = ()
    plot: QImage | None = None
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
    from calibration.agreement.plot import agreement_figure
    from calibration.agreement.report import format_studies, proposed_corrections, study_errors
    from calibration.statistics.bland_altman import Pairing

    judged, words = format_studies(read_pairs(path), Pairing.SAME_MOVE, path.stem)
    drawn, figure = io.BytesIO(), agreement_figure(judged)
    wide, high = _PLOT_INCHES
    figure.set_size_inches(wide, high * len(judged))
    figure.savefig(drawn, format="png", dpi=_DOTS_PER_INCH)
    return AgreementStudy(
        words=words.strip(),
        findings=tuple((result.movement, result.limits) for result in judged),
        plot=QImage.fromData(drawn.getvalue()),
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
