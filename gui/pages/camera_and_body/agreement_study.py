"""A clinician's table judged for the window: what it says, and its plot. No Qt widgets."""

import io
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtGui import QImage

from measure.domain.acquisition import MovementCorrection
from measure.domain.history import History


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """What a study says.

    Attributes
    ----------
    words
        In English, as reports are.
    plot
        The agreement plot, or None.
    offers
        Corrections of the camera that the study offers.
    """

    words: str
    plot: QImage | None = None
    offers: tuple[MovementCorrection, ...] = ()


def judged_study(path: Path) -> Study:
    """Return what a table of camera and goniometer readings says, as `thawline agreement` does.

    Raises
    ------
    InputError
        When the table cannot be read or holds too little.
    """
    from calibration.agreement.plot import agreement_figure
    from calibration.agreement.report import offered_corrections, study_words
    from calibration.agreement.table import read_pairs
    from calibration.statistics.bland_altman import Pairing

    judged, words = study_words(read_pairs(path), Pairing.SAME_MOVE, path.stem)
    drawn = io.BytesIO()
    agreement_figure(judged).savefig(drawn, format="png")
    return Study(
        words=words.strip(),
        plot=QImage.fromData(drawn.getvalue()),
        offers=offered_corrections(judged, path.stem),
    )


def keep_offers(study: Study, camera: str) -> None:
    """Keep what a study offers for a camera; it is off until somebody switches it on."""
    from calibration.agreement.report import keep_offer

    for offer in study.offers:
        keep_offer(offer, camera)


def own_sessions(history: History) -> Study:
    """Return how well a person's own sessions repeat, as `thawline repeatability` does."""
    from calibration.agreement.retest import retest_words

    return Study(words=retest_words(history))
