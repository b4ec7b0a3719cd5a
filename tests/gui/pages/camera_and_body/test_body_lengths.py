"""Body lengths that cannot be are answered with what is usual."""

import pytest

from gui.pages.camera_and_body.body_lengths import TRUNK, length_problem


@pytest.mark.parametrize(
    ("typed", "part"),
    [
        ({}, "Type the trunk"),
        ({"upper_arm": 30.0}, "Type the trunk"),
        ({TRUNK: 49.0}, "Type at least one other"),
        ({TRUNK: 12.0, "forearm": 25.0}, "Usually 25 to 80 cm"),
        ({TRUNK: float("nan"), "forearm": 25.0}, "Usually 25 to 80 cm"),
        ({TRUNK: -0.0, "forearm": 25.0}, "Usually 25 to 80 cm"),
        ({TRUNK: 49.0, "forearm": 60.0}, "With this trunk 17 to 37 cm"),
        ({TRUNK: 49.0, "upper_arm": -30.0}, "With this trunk 20 to 42 cm"),
        ({TRUNK: 49.0, "shoulder_width": float("inf")}, "With this trunk"),
    ],
)
def test_lengths_that_cannot_be_are_answered_in_words(typed: dict[str, float], part: str) -> None:
    field, words = length_problem(typed)
    assert part in words
    assert field == (next(iter(set(typed) - {TRUNK})) if "With this" in words else field)
