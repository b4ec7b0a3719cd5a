"""Agreement studies in plain sentences."""

import numpy as np

from calibration.agreement.wording import agreement_paragraph, degrees_text
from tests.support.paired_readings import crowd, judged, pair


def test_the_paragraph_of_a_camera_that_reads_low_and_flat() -> None:
    study = judged(crowd(40, gain=0.9, bias=-2))
    text = agreement_paragraph(study)
    assert text.startswith("Flexion: 40 pairs of 40 people (40 shoulders).")
    assert f"reads {degrees_text(abs(study.limits.bias.value))} degrees less" in text
    assert "a true change of 10 degrees reads as about 9." in text or "about 8.9" in text
    assert "cannot show how well the camera repeats" in text
    assert "not how accurate either is" in text


def test_the_paragraph_of_a_camera_without_bias() -> None:
    text = agreement_paragraph(judged(crowd(40)))
    assert "no constant difference is shown" in text
    assert "not shown to change with the angle" in text


def test_a_limit_on_the_same_side_is_worded_so() -> None:
    text = agreement_paragraph(
        judged([pair(n, 95 + 20 * i, 90 + 20 * i) for i, n in enumerate("ABCD")])
    )
    assert "between 5.0 degrees above and 5.0 degrees above the goniometer" in text


def test_no_negative_zero_is_ever_shown() -> None:
    assert degrees_text(-0.04) == "0.0"
    assert degrees_text(float("nan")) == "unknown"


def repeated(camera_sd: float, goniometer_sd: float, *, gain: float = 1.0, seed: int = 3) -> str:
    """The paragraph of 60 people with two numbered repeats of one position each."""
    random = np.random.default_rng(seed)
    rows = []
    for n in range(60):
        angle = random.normal(100, 20)
        for repeat in (1, 2):
            camera = gain * angle + random.normal(0, camera_sd)
            rows.append(
                pair(f"P{n}", camera, angle + random.normal(0, goniometer_sd), repeat=repeat)
            )
    return agreement_paragraph(judged(rows))


def test_unequal_errors_alone_are_no_gain_error_where_repeats_tell() -> None:
    text = repeated(12.0, 4.0)
    assert "No gain error is shown (slope" in text
    assert "Deming regression" in text


def test_a_gain_error_is_told_with_its_interval_where_repeats_tell() -> None:
    text = repeated(4.0, 4.0, gain=1.2)
    assert "The camera has a gain error (slope 1.18, 1.10 to 1.26 by Deming" in text
    assert "a true change of 10 degrees reads as about 11.8 (11.0 to 12.6) on the camera" in text


def test_without_repeats_unequal_errors_stay_possible() -> None:
    text = agreement_paragraph(judged(crowd(40, gain=0.9)))
    assert "could also come from unequal errors of the two instruments" in text
