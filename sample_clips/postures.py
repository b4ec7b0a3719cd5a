"""Clips of people built, moving or standing otherwise than those that readings are fitted on.

Each kind brings one thing: the other arm goes along, an elbow has a carrying angle, a raised arm
stays softly bent, a large body's arms hang off it, or the person stands turned.
"""

from dataclasses import dataclass, replace

from sample_clips.casting import StratifiedDraw, random_scenario
from sample_clips.scenario import Movement, Scenario, View, nominal_heading_deg


@dataclass(frozen=True, slots=True, kw_only=True)
class PostureKind:
    """One kind of posture in one movement and view, and how many clips show it."""

    name: str
    movement: Movement
    view: View
    count: int


def _kind(name: str, movement: Movement, view: View, count: int) -> PostureKind:
    return PostureKind(name=name, movement=movement, view=view, count=count)


POSTURE_KINDS = (
    _kind("both-arms", Movement.ABDUCTION, View.FRONT, 5),
    _kind("both-arms", Movement.FLEXION, View.SIDE, 4),
    _kind("carrying-angle", Movement.ABDUCTION, View.FRONT, 3),
    _kind("carrying-angle", Movement.FLEXION, View.SIDE, 3),
    _kind("softly-bent", Movement.ABDUCTION, View.FRONT, 3),
    _kind("softly-bent", Movement.FLEXION, View.SIDE, 5),
    _kind("large-body", Movement.ABDUCTION, View.FRONT, 2),
    _kind("large-body", Movement.FLEXION, View.SIDE, 2),
    _kind("large-body", Movement.EXTENSION, View.SIDE, 1),
    _kind("turned", Movement.ABDUCTION, View.FRONT, 4),
    _kind("turned", Movement.FLEXION, View.SIDE, 2),
    _kind("far-turned", Movement.ABDUCTION, View.FRONT, 4),
)


def posture_scenario(
    kind: PostureKind, name: str, body: int, seed: int, draw: StratifiedDraw
) -> Scenario:
    """One clip of a kind; what else it shows is within the familiar ranges, the elbow straight.

    Raises
    ------
    ValueError
        For a name that is in none of ``POSTURE_KINDS``.
    """
    usual = random_scenario(
        name=name, movement=kind.movement, view=kind.view, body=body, seed=seed, draw=draw
    )
    plain = _bent(usual, draw.even(2, 8, "straight"))
    match kind.name:
        case "both-arms":
            share = draw.even(0.8, 1.3, "other arm")
            return _held(plain, other_arm=min(share, 172.0 / plain.peak))
        case "carrying-angle":
            return _held(plain, carrying_deg=draw.even(5, 15, "carrying"))
        case "softly-bent":
            bent = _bent(usual, draw.even(10, 25, "bend"))
            if kind.movement is Movement.FLEXION:
                return _held(bent, twist_deg=draw.even(-50, 20, "twist"))
            return bent
        case "large-body":
            return _held(plain, hang_deg=draw.even(8, 18, "hang"))
        case "turned":
            return _turned(plain, draw.even(16, 28, "turned"))
        case "far-turned":
            refused = ("wrong-view", "trunk-turned", "out-of-plane")
            return replace(_turned(plain, draw.even(32, 45, "turned")), expected=refused)
    raise ValueError(f"unknown kind {kind.name!r}")


def _held(scenario: Scenario, **changes: float) -> Scenario:
    rounded = {name: round(value, 3) for name, value in changes.items()}
    return replace(scenario, posture=replace(scenario.posture, **rounded))


def _bent(scenario: Scenario, bend_deg: float) -> Scenario:
    bent = replace(scenario.compensation, elbow_bend_deg=round(bend_deg, 3))
    return replace(scenario, compensation=bent)


def _turned(scenario: Scenario, off_deg: float) -> Scenario:
    """Turned off the nominal heading, to the side that the draw's own yaw goes."""
    nominal = nominal_heading_deg(scenario.view, scenario.side)
    sign = 1.0 if scenario.heading_deg >= nominal else -1.0
    return replace(scenario, heading_deg=round(nominal + sign * off_deg, 3))
