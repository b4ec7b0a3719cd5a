"""A clinician's table judged for the window: what it says, and its plot. No Qt widgets."""

import io
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtGui import QImage

from measure.history import History


@dataclass(frozen=True, slots=True, kw_only=True)
class Study:
    """What a study says.

    Attributes
    ----------
    words
        In English, as reports are.
    plot
        The agreement plot, or None.
    """

    words: str
    plot: QImage | None = None


def judged_study(path: Path) -> Study:
    """Return what a table of camera and goniometer readings says, as `thawline agreement` does.

    Raises
    ------
    InputError
        When the table cannot be read or holds too little.
    """
    from calibration.agreement_plot import agreement_figure
    from calibration.agreement_report import study_words
    from calibration.agreement_table import read_pairs
    from calibration.limits_of_agreement import Pairing

    judged, words = study_words(read_pairs(path), Pairing.SAME_MOVE, path.stem)
    drawn = io.BytesIO()
    agreement_figure(judged).savefig(drawn, format="png")
    return Study(words=words.strip(), plot=QImage.fromData(drawn.getvalue()))


def own_sessions(history: History) -> Study:
    """Return how well a person's own sessions repeat, as `thawline repeatability` does."""
    from calibration.retest import retest_words

    return Study(words=retest_words(history))
