"""Keywords of reasons: what was seen in a few words, for tables that are read by the hundred."""

from collections.abc import Iterable

from gui.text.wording import tr
from measure.domain.reasons import Reason


def finding_keywords(reasons: Iterable[Reason], scored: int) -> str:
    """Return some reasons as keywords, in their order.

    Parameters
    ----------
    scored
        Number of trials that count, which stands for there being few of them.
    """
    words = _keywords()
    words[Reason.FEW_TRIALS] = (
        tr("1 trial") if scored == 1 else tr("{number} trials").format(number=scored)
    )
    return "; ".join(words[reason] for reason in reasons)


def _keywords() -> dict[Reason, str]:
    return {
        Reason.NOBODY: tr("no one in view"),
        Reason.OTHER_PERSON: tr("another person followed"),
        Reason.TWO_PEOPLE: tr("two people in view"),
        Reason.PERSON_LOST: tr("out of view while moving"),
        Reason.MOVED_FAST: tr("moved too fast"),
        Reason.UNREADABLE_FRAMES: tr("recording damaged"),
        Reason.LOW_FRAME_RATE: tr("too few pictures per second"),
        Reason.TURNED_PICTURE: tr("picture on its side"),
        Reason.WRONG_VIEW: tr("wrong view"),
        Reason.FACING_CAMERA: tr("faced the camera"),
        Reason.TRUNK_OBLIQUE: tr("trunk oblique to the camera"),
        Reason.WRONG_TURN: tr("body not turned halfway"),
        Reason.FAR_ARM: tr("arm on the far side"),
        Reason.OUT_OF_PICTURE: tr("partly outside the picture"),
        Reason.HIDDEN: tr("not clearly visible"),
        Reason.HAND_NOT_BEHIND: tr("hand not behind the back"),
        Reason.LIMB_LENGTH: tr("arm length varied"),
        Reason.SIDES_EXCHANGED: tr("sides mixed up"),
        Reason.ELBOW_BENT: tr("elbow bent"),
        Reason.ELBOW_NOT_SQUARE: tr("elbow not at 90\u00b0"),
        Reason.ELBOW_OFF_TRUNK: tr("elbow away from the side"),
        Reason.TRUNK_LEAN: tr("trunk leaned"),
        Reason.TRUNK_TURNED: tr("trunk turned"),
        Reason.OUT_OF_PLANE: tr("arm out of the picture\u2019s plane"),
        Reason.SHRUG: tr("shoulder rose"),
        Reason.OTHER_ARM_RAISED: tr("other arm raised"),
        Reason.NO_FACING_STANCE: tr("did not face the camera first"),
        Reason.NO_ZERO_POSE: tr("forearm not straight ahead at the start"),
        Reason.NO_NEUTRAL: tr("no rest at the start"),
        Reason.NO_MOVE: tr("no such movement"),
        Reason.LITTLE_MOVEMENT: tr("hardly any movement"),
        Reason.NO_HOLD: tr("no still hold"),
        Reason.UNSTEADY_HOLD: tr("unsteady hold"),
        Reason.PASSES_DISAGREE: tr("analyses disagreed"),
        Reason.IMPOSSIBLE_VALUE: tr("impossible value"),
        Reason.TOO_UNCERTAIN: tr("too uncertain"),
        Reason.SPREAD_TRIALS: tr("trials differed"),
    }
