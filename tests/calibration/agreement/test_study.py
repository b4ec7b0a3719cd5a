"""A whole study: which rows count where, what is told when there is too little."""

import math

import pytest

from calibration.agreement.doubts import outlying_pairs
from calibration.agreement.pairs_table import PairedReading, PairTable, pairs_from_text
from calibration.agreement.study import (
    Agreement,
    InsufficientData,
    analyse_agreement,
    analyse_by_movement,
)
from calibration.agreement.wording import agreement_paragraph
from calibration.statistics.bland_altman import Pairing
from measure.domain.landmarks import Side
from measure.domain.movements import Movement
from tests.support.paired_readings import crowd, judged, pair


@pytest.mark.parametrize(
    ("pairs", "part"),
    [
        ([pair("A", 90, 88)], "1 complete pair of 1 person"),
        ([pair("A", 90, 88), pair("B", 80, 82)], "2 complete pairs of 2 people"),
        ([pair("A", 90 + n, 88) for n in range(40)], "40 complete pairs of 1 person"),
        ([pair(name, 90, math.nan) for name in "ABCDE"], "0 complete pairs of 0 people"),
    ],
)
@pytest.mark.parametrize("pairing", Pairing)
def test_too_little_is_said_with_what_would_be_enough(
    pairs: list[PairedReading], part: str, pairing: Pairing
) -> None:
    result = analyse_agreement(pairs, pairing)
    assert isinstance(result, InsufficientData)
    assert part in result.sentence
    assert "at least 3" in result.sentence


def test_movements_never_share_a_statistic() -> None:
    mixed = [pair("A", 90, 88), pair("B", 90, 88, movement=Movement.ABDUCTION)]
    with pytest.raises(ValueError, match="one movement"):
        analyse_agreement(mixed)
    with pytest.raises(ValueError, match="one movement"):
        analyse_agreement([])
    rows = [*crowd(5), pair("A", 90, 88, movement=Movement.ABDUCTION)]
    first, second = analyse_by_movement(PairTable(pairs=tuple(rows)))
    assert isinstance(first, Agreement)
    assert first.movement is Movement.FLEXION
    assert isinstance(second, InsufficientData)
    assert second.movement is Movement.ABDUCTION


def test_rows_without_both_readings_are_left_out_and_counted() -> None:
    study = judged([*crowd(5), pair("X", math.nan, 80), pair("Y", 80, math.nan)])
    assert study.people == 5
    assert "2 rows without both readings were left out." in study.notes


def test_separate_repeats_use_the_readings_of_rows_that_are_not_complete() -> None:
    rows = []
    for name, angle in (("A", 60), ("B", 90), ("C", 120)):
        rows += [pair(name, angle + 1, angle), pair(name, angle + 3, math.nan)]
    study = judged(rows, Pairing.SEPARATE)
    assert study.limits.bias.value == pytest.approx(2)
    assert study.gain is None
    assert study.camera_repeat is not None
    # Each shoulder's camera readings are 2 apart: variance 2.
    assert study.camera_repeat.sd_deg.value == pytest.approx(2**0.5)
    assert study.goniometer_repeat is None


def test_repeatability_comes_from_numbered_repeats_only() -> None:
    rows = [pair(name, 90 + n, 88 + 2 * n) for name in "ABC" for n in range(2)]
    assert judged(rows).camera_repeat is None
    numbered = [pair(name, 90 + n, 88 + 2 * n, repeat=n + 1) for name in "ABC" for n in range(2)]
    study = judged(numbered)
    assert study.camera_repeat is not None
    assert study.goniometer_repeat is not None
    # 1 and 2 degrees apart: variances 1/2 and 2.
    assert study.camera_repeat.sd_deg.value == pytest.approx(0.5**0.5)
    assert study.goniometer_repeat.sd_deg.value == pytest.approx(2**0.5)
    assert study.goniometer_repeat.mdc95_deg == pytest.approx(1.959964 * 2, rel=1e-6)
    assert study.goniometer_repeat.mdc90_deg == pytest.approx(1.644854 * 2, rel=1e-6)


def test_two_testers_of_one_position_are_no_repeats_of_the_camera() -> None:
    rows = [
        pair(name, angle, angle + error, repeat=1, tester=tester)
        for name, angle in (("A", 60.0), ("B", 90.0), ("C", 120.0), ("D", 75.0))
        for tester, error in (("Wren", 1.0), ("Finch", 3.0))
    ]
    study = judged(rows)
    assert study.camera_repeat is None
    assert study.testers is not None
    assert study.testers.icc_3_1.value == pytest.approx(1)
    assert [(bias.tester, bias.pairs) for bias in study.by_tester] == [("Finch", 4), ("Wren", 4)]
    assert [bias.mean_deg for bias in study.by_tester] == pytest.approx([-3.0, -1.0])


def test_the_instruments_are_compared_on_every_pair() -> None:
    rows = [
        pair(name, angle, angle, repeat=1)
        for name, angle in zip("ABCD", (50, 80, 110, 140), strict=True)
    ]
    assert judged(rows).instruments.icc_2_1.value == pytest.approx(1)
    later = [pair(row.person, 20, 160, repeat=2) for row in rows]
    study = judged([*later, *rows])
    assert study.instruments.icc_2_1.value < 0.1
    assert study.instruments.mdc95 > 100


def test_repeats_need_four_people_for_a_coefficient() -> None:
    rows = [pair(name, 50 + 30 * n, 52 + 29 * n) for n, name in enumerate("ABC")]
    study = judged([*rows, pair("A", 52, 50)])
    assert study.instruments is None
    assert "No ICC: with repeats it needs 4 people." in study.notes


def test_repeats_by_different_testers_are_no_repeats_of_one() -> None:
    rows = [
        pair(name, 60 + 20 * n, 61 + 20 * n, repeat=k + 1, tester=tester)
        for n, name in enumerate("ABCD")
        for k, tester in enumerate(("Wren", "Finch"))
    ]
    text = agreement_paragraph(judged(rows))
    assert "by different testers, not by one" in text
    assert "no numbered repeats" not in text


def test_a_slip_of_the_pen_is_named_by_its_line() -> None:
    lines = ["person,movement,side,camera_deg,goniometer_deg"]
    lines += [f"P{n},flexion,left,{60 + 6 * n + n % 3},{60 + 6 * n}" for n in range(12)]
    lines += ["P12,flexion,left,20,160"]
    (study,) = analyse_by_movement(pairs_from_text("\n".join(lines)))
    assert isinstance(study, Agreement)
    named = [note for note in study.notes if "stand out" in note]
    assert len(named) == 1
    assert "line 14: 20 against 160." in named[0]


def test_lines_far_from_the_middle_difference_are_named_too() -> None:
    rows = [pair(f"P{n}", 90 + 2 * n + (n % 3), 90 + 2 * n) for n in range(20)]
    assert outlying_pairs(rows) == ()
    # Differences of 0, 1 and 2: middle 1, median absolute deviation 1; the floor is 10 degrees.
    assert outlying_pairs([*rows, pair("X", 100, 89)]) == ()
    assert [each.person for each in outlying_pairs([*rows, pair("X", 101, 89)])] == ["X"]


@pytest.mark.parametrize("instrument", ["camera", "goniometer"])
def test_angles_like_radians_are_named(instrument: str) -> None:
    degrees = [40.0, 80.0, 120.0, 160.0]
    rows = [
        pair(name, *((math.radians(a), a) if instrument == "camera" else (a, math.radians(a))))
        for name, a in zip("ABCD", degrees, strict=True)
    ]
    notes = [note for note in judged(rows).notes if "radians" in note]
    assert len(notes) == 1
    assert f"Every {instrument} reading lies between 0 and 3.2" in notes[0]


@pytest.mark.parametrize(
    ("rows", "part"),
    [
        ([pair(n, 90, 90) for n in "ABCD"], "Every camera reading is 90 degrees"),
        ([pair(n, 90, 90) for n in "ABCD"], "No ICC: all shoulders read the same"),
        ([pair(n, 90 + i, 88 + i) for i, n in enumerate("ABCD")], "copied from the other"),
        ([pair(n, 90, 80 + i) for i, n in enumerate("ABCD")], "Every camera reading is 90"),
        ([pair(n, 90 - i, 80 + i) for i, n in enumerate("ABCD")], "The shoulders differ little"),
        (crowd(5), "treat every figure as a first impression"),
        (
            [pair(n, 50 + 9 * i, 80 + i, side=side) for i, n in enumerate("ABC") for side in Side],
            "Both shoulders of a person resemble each other",
        ),
    ],
)
def test_what_a_reader_must_know_is_noted(rows: list[PairedReading], part: str) -> None:
    study = judged(rows)
    assert any(part in note for note in study.notes), study.notes
    assert "nan" not in agreement_paragraph(study)
    assert "inf" not in agreement_paragraph(study)


def test_a_good_large_study_needs_no_notes() -> None:
    assert judged(crowd(40)).notes == ()
