"""Changes of the set-up that a session's standing pose shows, and their likely effect on a reading.

Every reading keeps how large the person was in the picture, how far turned and how inclined. They
are compared with the first readings made with the same instrument. What differs by more than the
limits of the placement check widens that reading's interval by its likely effect; what lasts is
told in words.
"""

import math
from collections import defaultdict
from collections.abc import Hashable, Iterable, Mapping
from dataclasses import dataclass, field
from statistics import median

from measure.domain.measurements import Measurement
from measure.domain.movements import MOVEMENTS, Family, Movement, Unit
from measure.domain.standing_pose import (
    USUAL_SHOULDER_WIDTH,
    WIDTH_ERROR,
    Neutral,
    facing_turn_deg,
    standing_in,
)

#: Readings at the start that say how the person stood at first, and at the end how they stand now.
#: [project]
REFERENCE_READINGS = 3
#: Change of distance, as a share, of turn and of lean, degrees, from which a change counts.
#: [project]
LEAST_SHARE, LEAST_TURN_DEG, LEAST_LEAN_DEG = 0.10, 5.0, 5.0
#: Likely effect of a change of distance by its whole, degrees, by family: an arm 30 degrees out of
#: its plane reads 3 degrees more at 1.5 m than at 2 m; rotation is solved from perspective.
#: [project]
DEG_PER_SHARE = {Family.ELEVATION: 10.0, Family.ROTATION: 25.0, Family.REACH: 10.0}
#: Likely effect of a degree of turn, degrees, by family: a body turned by 15 degrees reads 3 to 5
#: degrees otherwise; in rotation the trunk's turn counts in part. [project]
DEG_PER_TURN = {Family.ELEVATION: 0.25, Family.ROTATION: 0.5, Family.REACH: 0.25}
#: Likely effect of a degree of lean, degrees: most cancels against the trunk's line. [project]
DEG_PER_LEAN = 0.2
#: Reach that a degree of effect counts for: the whole reach has the width of 80 degrees. [project]
REACH_PER_DEG = 1 / 80


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """How a person stood: size in the picture, apparent width over the trunk, lean in degrees."""

    size: float
    width: float
    lean_deg: float

    @property
    def turn_deg(self) -> float:
        """How far the person is turned from facing the camera."""
        return facing_turn_deg(self.width, USUAL_SHOULDER_WIDTH)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetupChange:
    """What differs from the first readings by more than the limits; 0 for what does not.

    Attributes
    ----------
    nearer
        Share by which the person stands nearer, negative for farther away.
    turned_deg, leaning_deg
        Turn of the body, and lean of body or camera.
    effect
        Likely effect on a reading, in the movement's unit.
    """

    movement: Movement
    nearer: float
    turned_deg: float
    leaning_deg: float
    effect: float


def change_between(movement: Movement, first: Standing, now: Standing) -> SetupChange:
    """Return what differs between two poses by more than the limits, and its likely effect."""
    share = now.size / first.size - 1
    nearer = share if abs(math.log(1 + share)) > math.log(1 + LEAST_SHARE) else 0.0
    turned = abs(now.turn_deg - first.turn_deg)
    if turned <= LEAST_TURN_DEG or abs(now.width - first.width) <= WIDTH_ERROR:
        turned = 0.0
    leaning = abs(now.lean_deg - first.lean_deg)
    leaning = leaning if leaning > LEAST_LEAN_DEG else 0.0
    facts = MOVEMENTS[movement]
    effect = math.hypot(
        DEG_PER_SHARE[facts.family] * nearer,
        DEG_PER_TURN[facts.family] * turned,
        DEG_PER_LEAN * leaning,
    )
    return SetupChange(
        movement=movement,
        nearer=nearer,
        turned_deg=turned,
        leaning_deg=leaning,
        effect=effect if facts.unit is Unit.DEGREES else effect * REACH_PER_DEG,
    )


@dataclass(slots=True)
class StandingLog:
    """Poses of a series' readings by instrument, in the order of time."""

    _poses: dict[Hashable, list[Standing]] = field(default_factory=lambda: defaultdict(list))

    def effect_on(self, measurement: Measurement, instrument: Hashable) -> float:
        """Log a reading; return the likely effect of what changed since the instrument's first."""
        pose = standing_of(measurement.provenance.source)
        if pose is None:
            return 0.0
        logged = self._poses[instrument]
        logged.append(pose)
        if len(logged) <= REFERENCE_READINGS:
            return 0.0
        first = _middle(logged[:REFERENCE_READINGS])
        return change_between(measurement.movement, first, pose).effect


def standing_of(source: Mapping[str, str]) -> Standing | None:
    """Return how a person stood, from a reading's source; None where it does not say."""
    neutral: Neutral | None = standing_in(source)
    if neutral is None:
        return None
    return Standing(
        size=neutral.trunk_px / neutral.height_px,
        width=neutral.width_over_trunk,
        lean_deg=neutral.lean_deg,
    )


def lasting_change(movement: Movement, poses: Iterable[Standing]) -> SetupChange | None:
    """Return how the latest readings differ from the first ones; None where they do not.

    Also a change that crept in from session to session, each step too small to be noticed.

    Parameters
    ----------
    poses
        Of one instrument's readings, the earliest first.
    """
    every = list(poses)
    if len(every) < 2 * REFERENCE_READINGS:
        return None
    change = change_between(
        movement, _middle(every[:REFERENCE_READINGS]), _middle(every[-REFERENCE_READINGS:])
    )
    return change if change.effect > 0 else None


def _middle(poses: list[Standing]) -> Standing:
    return Standing(
        size=median(pose.size for pose in poses),
        width=median(pose.width for pose in poses),
        lean_deg=median(pose.lean_deg for pose in poses),
    )
