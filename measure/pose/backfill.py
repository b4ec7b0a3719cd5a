"""Pictures in which nobody was found yet, to be looked at backwards once somebody is.

The network finds somebody who stands side-on late, often only when the arm moves; once found, it
follows the person easily, also back in time. Without it a clip that begins side-on would lose its
rest.
"""

from collections.abc import Callable, Sequence

from measure.domain.tracks import PoseFrame
from measure.video.frame import Picture

#: So many pictures, and so many bytes of them, are remembered at most. Ours.
MOST_PICTURES = 30
MOST_BYTES = 100 * 2**20


class BackfillBuffer:
    """The beginning of a stretch of time, until somebody is found in it.

    Parameters
    ----------
    look_again
        Given pictures in the order in which they shall be looked at, each with the result so far,
        returns their new results; from where nobody is found any more the old ones.
    """

    def __init__(
        self,
        rerun: Callable[[Sequence[tuple[PoseFrame, Picture | None]]], Sequence[PoseFrame]],
    ) -> None:
        self._rerun = rerun
        self._kept: list[tuple[PoseFrame, Picture | None]] = []
        self._bytes = 0
        self._found = False

    def passed(self, result: PoseFrame, picture: Picture | None) -> list[PoseFrame]:
        """Take the next result; return those that are final now, in order."""
        if self._found:
            return [result]
        if len(result.points_px):
            self._found = True
            if not self._kept:
                return [result]
            backwards = [(result, picture), *reversed(self._kept)]
            self._kept = []
            return list(reversed(self._rerun(backwards)))
        self._kept.append((result, picture))
        self._bytes += _size(picture)
        given_up = []
        while len(self._kept) > MOST_PICTURES or self._bytes > MOST_BYTES:
            oldest, its_picture = self._kept.pop(0)
            self._bytes -= _size(its_picture)
            given_up.append(oldest)
        return given_up

    def rest(self) -> list[PoseFrame]:
        """Return the results still held back: the stretch ended, and nobody was found."""
        results = [result for result, _ in self._kept]
        self._kept, self._bytes = [], 0
        return results


def _size(picture: Picture | None) -> int:
    return 0 if picture is None else picture.rgb.nbytes
