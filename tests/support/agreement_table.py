"""Tables of paired readings as text."""

import numpy as np

HEADER = "person,movement,side,camera_deg,goniometer_deg,repeat,tester"


def table(people: int, movement: str = "flexion", gain: float = 0.9) -> str:
    """Return rows of people with two repeats each, without the header."""
    random = np.random.default_rng(people)
    rows = []
    for person in range(people):
        angle = random.uniform(40, 160)
        for repeat in (1, 2):
            camera = gain * angle + 4 + random.normal(0, 2)
            read = angle + random.normal(0, 2)
            side = "left" if person % 2 else "right"
            rows.append(f"P{person},{movement},{side},{camera:.1f},{read:.1f},{repeat},Wren")
    return "\n".join(rows)
