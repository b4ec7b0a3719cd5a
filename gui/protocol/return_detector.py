"""Return detector: whether a person who answered at the computer stands in place again. No Qt.

Whoever stayed in place while somebody else answered is not taken for coming back.
"""

from measure.live.events import LiveFrame, SetupHint

#: Time without an answer before anybody counts as back, seconds: a second answer is not cut off.
#: [project]
QUIET_S = 4.0
#: Time that the person must stand where the camera sees them well, seconds. [project]
STANDING_S = 1.0

_OUT_OF_PLACE_HINTS = frozenset(
    {
        SetupHint.STEP_BACK,
        SetupHint.COME_CLOSER,
        SetupHint.STEP_LEFT,
        SetupHint.STEP_RIGHT,
    }
)


class ReturnDetector:
    """Looks at the frames from the end of a movement on."""

    def __init__(self) -> None:
        self._was_away = False
        self._answered_s: float | None = None
        self._answers_wait = False
        self._stands_since_s: float | None = None

    def answer(self) -> None:
        """Note that something was answered at the computer just now."""
        self._answers_wait = True

    def update(self, frame: LiveFrame) -> bool:
        """Return whether the person has answered, gone back and stands there."""
        now_s = frame.time_s
        if self._answers_wait:
            self._answers_wait, self._answered_s = False, now_s
        if frame.points_px is None or SetupHint.STEP_BACK in frame.setup_hints:
            self._was_away = True
        if frame.points_px is None or _OUT_OF_PLACE_HINTS.intersection(frame.setup_hints):
            self._stands_since_s = None
            return False
        if self._stands_since_s is None:
            self._stands_since_s = now_s
        quiet = self._answered_s is not None and now_s - self._answered_s >= QUIET_S
        return self._was_away and quiet and now_s - self._stands_since_s >= STANDING_S
