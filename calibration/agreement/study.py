"""Agreement study of one movement: all figures of its pairs, and notes on their limits.

Selects which rows enter which statistic. The statistics are in
:mod:`calibration.statistics.bland_altman`, :mod:`calibration.statistics.proportional_bias` and
:mod:`calibration.statistics.icc`; the sentences in :mod:`calibration.agreement.wording`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from calibration.agreement.doubts import doubts
from calibration.agreement.pairs_table import PairedReading, PairTable
from calibration.agreement.raters import (
    GroupKey,
    TesterBias,
    WithinSubjectSd,
    bias_by_tester,
    camera_reading,
    compare_errors,
    compare_instruments,
    compare_testers,
    goniometer_reading,
    group_readings,
    person_key,
    shoulder_key,
    within_subject_sd,
)
from calibration.statistics.bland_altman import (
    FEWEST_UNITS,
    LimitsOfAgreement,
    Pairing,
    bland_altman,
)
from calibration.statistics.deming import DemingLine, deming
from calibration.statistics.icc import FEWEST_SHOULDERS, Reliability
from calibration.statistics.proportional_bias import ProportionalBias, proportional_bias
from measure.domain.movements import MOVEMENTS, Movement

#: Fewest pairs without a warning: with 30 independent pairs a limit of agreement is known to
#: about 0.65 standard deviations. [project]
ENOUGH_PAIRS = 30
#: Fewest people without a warning: repeats of few people say little about others. [project]
ENOUGH_PEOPLE = 10
#: A narrower range of angles says little about gain and lowers any ICC, degrees. [project]
NARROW_RANGE_DEG = 30.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreement:
    """All figures of one movement; a figure that is not available is None.

    Attributes
    ----------
    limits
        Bias and limits of agreement, camera minus goniometer.
    gain
        Regression of the difference on the mean; None with SEPARATE pairing.
    deming
        Regression of the camera on the goniometer with both errors reckoned; None with SEPARATE
        pairing, and without enough numbered repeats.
    instruments
        Camera and goniometer as two raters, all pairs.
    testers
        Testers as raters, goniometer only; shoulders that each of them measured.
    camera_repeat, goniometer_repeat
        Repeatability, from numbered repeats only.
    by_tester
        Empty unless there are at least two testers.
    pairs
        The rows that the figures come from.
    notes
        Limits of the figures, in words.
    """

    movement: Movement
    pairing: Pairing
    people: int
    shoulders: int
    limits: LimitsOfAgreement
    gain: ProportionalBias | None
    deming: DemingLine | None
    instruments: Reliability | None
    testers: Reliability | None
    camera_repeat: WithinSubjectSd | None
    goniometer_repeat: WithinSubjectSd | None
    by_tester: tuple[TesterBias, ...]
    pairs: tuple[PairedReading, ...]
    notes: tuple[str, ...]

    @property
    def repeats_by_others(self) -> bool:
        """Whether shoulders have several numbered repeats, but by different testers."""
        numbered = [pair for pair in self.pairs if pair.repeat is not None]
        numbers: dict[object, set[int | None]] = {}
        for pair in numbered:
            numbers.setdefault(pair.shoulder, set()).add(pair.repeat)
        own = {(pair.shoulder, pair.tester) for pair in numbered}
        return len(own) == len(numbered) and any(len(repeats) > 1 for repeats in numbers.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class InsufficientData:
    """Movement whose pairs do not suffice for a study, and why, in words."""

    movement: Movement
    sentence: str


def analyse_by_movement(
    table: PairTable, pairing: Pairing = Pairing.SAME_MOVE
) -> tuple[Agreement | InsufficientData, ...]:
    """Return the study of every movement in a table, each on its own."""
    return tuple(analyse_agreement(pairs, pairing) for pairs in table.by_movement().values())


def analyse_agreement(
    pairs: Sequence[PairedReading], pairing: Pairing = Pairing.SAME_MOVE
) -> Agreement | InsufficientData:
    """Return all figures for the pairs of one movement.

    Raises
    ------
    ValueError
        When the pairs are of several movements, or there are none.
    """
    movements = {pair.movement for pair in pairs}
    if len(movements) != 1:
        raise ValueError(f"a study is of one movement, not of {sorted(movements)}")
    movement = movements.pop()
    if pairing is Pairing.SAME_MOVE:
        used = [pair for pair in pairs if pair.complete]
        unit: GroupKey = person_key
    else:
        used = _with_both(pairs)
        unit = shoulder_key
    people = len({pair.person for pair in used})
    if people < FEWEST_UNITS:
        return InsufficientData(
            movement=movement, sentence=_insufficient_data(movement, used, people)
        )
    camera = group_readings(used, unit, camera_reading)
    goniometer = group_readings(used, unit, goniometer_reading)
    limits = bland_altman(camera, goniometer, pairing)
    gain = proportional_bias(camera, goniometer) if pairing is Pairing.SAME_MOVE else None
    numbered = used if pairing is Pairing.SEPARATE else [p for p in used if p.repeat is not None]
    errors = compare_errors(numbered, same_move=True) if pairing is Pairing.SAME_MOVE else None
    instruments = compare_instruments(used, pairing)
    return Agreement(
        movement=movement,
        pairing=pairing,
        people=people,
        shoulders=len({pair.shoulder for pair in used}),
        limits=limits,
        gain=gain,
        deming=None if errors is None else deming(camera, goniometer, errors),
        instruments=instruments,
        testers=compare_testers(used),
        camera_repeat=within_subject_sd(numbered, camera_reading),
        goniometer_repeat=within_subject_sd(numbered, goniometer_reading),
        by_tester=bias_by_tester(used),
        pairs=tuple(used),
        notes=_notes(pairs, used, people, limits, instruments, pairing),
    )


def _with_both(pairs: Sequence[PairedReading]) -> list[PairedReading]:
    """Return the rows of the shoulders that both instruments measured at least once."""
    camera = {pair.shoulder for pair in pairs if math.isfinite(pair.camera_deg)}
    goniometer = {pair.shoulder for pair in pairs if math.isfinite(pair.goniometer_deg)}
    return [pair for pair in pairs if pair.shoulder in camera & goniometer]


def _insufficient_data(movement: Movement, used: Sequence[PairedReading], people: int) -> str:
    pairs = sum(pair.complete for pair in used)
    return (
        f"{MOVEMENTS[movement].name}: {pairs} complete pair{'s' * (pairs != 1)} of {people} "
        f"{'person' if people == 1 else 'people'}. Agreement is a statement about people, so "
        f"it needs at least {FEWEST_UNITS}; {ENOUGH_PAIRS} pairs of {ENOUGH_PEOPLE} people "
        "make firm figures."
    )


def _notes(
    given: Sequence[PairedReading],
    used: Sequence[PairedReading],
    people: int,
    limits: LimitsOfAgreement,
    instruments: Reliability | None,
    pairing: Pairing,
) -> tuple[str, ...]:
    notes = []
    left_out = len(given) - len(used)
    if left_out:
        notes.append(
            f"{left_out} row{'s' * (left_out != 1)} without both readings "
            f"{'was' if left_out == 1 else 'were'} left out."
        )
    notes += doubts(used)
    if limits.pairs < ENOUGH_PAIRS or people < ENOUGH_PEOPLE:
        notes.append(
            f"Few readings: treat every figure as a first impression until there are "
            f"{ENOUGH_PAIRS} pairs of {ENOUGH_PEOPLE} people."
        )
    if limits.sd.value < 1e-9:
        notes.append(
            "Every difference is exactly the same, which real readings never are. "
            "Check whether one column was copied from the other."
        )
    for instrument, reading in (("camera", camera_reading), ("goniometer", goniometer_reading)):
        values = [reading(pair) for pair in used if math.isfinite(reading(pair))]
        if max(values) == min(values):
            notes.append(
                f"Every {instrument} reading is {values[0]:g} degrees: "
                "this says nothing about how it follows the angle."
            )
        elif max(values) - min(values) < NARROW_RANGE_DEG and instrument == "goniometer":
            notes.append(
                "The shoulders differ little, which makes every ICC low and the gain uncertain; "
                "use the limits of agreement instead."
            )
    if instruments is None:
        notes.append(
            "No ICC: all shoulders read the same."
            if people > FEWEST_SHOULDERS or len(used) == len({pair.shoulder for pair in used})
            else f"No ICC: with repeats it needs {FEWEST_SHOULDERS + 1} people."
        )
    shoulders = {pair.shoulder for pair in used}
    # With repeats the intervals of the ICCs come from leaving out people, both shoulders at once.
    narrow = ["ICCs"] if len(used) == len(shoulders) else []
    narrow += ["limits"] if pairing is Pairing.SEPARATE else []
    if len(shoulders) > people and narrow:
        notes.append(
            "Both shoulders of a person resemble each other, so the intervals of the "
            f"{' and '.join(narrow)} are somewhat too narrow."
        )
    return tuple(notes)
