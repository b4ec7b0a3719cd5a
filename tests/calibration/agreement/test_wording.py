"""Agreement studies in plain sentences."""

from calibration.agreement.wording import agreement_paragraph, degrees_text
from tests.support.paired_readings import crowd, judged, pair


def test_the_paragraph_of_a_camera_that_reads_low_and_flat() -> None:
    study = judged(crowd(40, gain=0.9, bias=-2))
    text = agreement_paragraph(study)
    assert text.startswith("Flexion: 40 pairs of 40 people (40 shoulders).")
    assert f"reads {degrees_text(abs(study.limits.bias.value))} degrees less" in text
    assert "a true change of 10 degrees reads as about 9." in text or "about 8.9" in text
    assert "cannot tell how the camera repeats" in text
    assert "not how far either is right" in text


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
