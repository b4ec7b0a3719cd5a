"""Record of a screening: how a person answered the safety questions on a day."""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum

from measure.system.clock import check_id


class ScreeningOccasion(StrEnum):
    """When which questions are asked: all before measuring, some after much pain."""

    BEFORE = "before-measuring"
    AFTER_PAIN = "after-pain"


class ScreeningOutcome(StrEnum):
    """How the questions were answered.

    CLINICIAN_AGREED: a sign was named, and a clinician has said that measuring is all right. The
    others but CLEAR name the most urgent list with a sign on it.
    """

    CLEAR = "clear"
    CLINICIAN_AGREED = "clinician-agreed"
    EMERGENCY = "emergency"
    SOON = "soon"
    ASK_FIRST = "ask-first"

    @property
    def passed(self) -> bool:
        """Whether measuring may go on."""
        return self in (ScreeningOutcome.CLEAR, ScreeningOutcome.CLINICIAN_AGREED)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScreeningRecord:
    """One run through the safety questions.

    Attributes
    ----------
    day
        The local day. Of several runs on one day the last entered holds.
    """

    id: str
    person_id: str
    day: dt.date
    occasion: ScreeningOccasion
    outcome: ScreeningOutcome

    def __post_init__(self) -> None:
        check_id(self.id, self.person_id)
