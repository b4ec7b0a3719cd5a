"""`thawline calibrate correction`: switching kept corrections on and off."""

import argparse

from measure.domain.movements import MOVEMENTS, Movement, Unit


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """List corrections from agreement studies; switch one on or off."""
    listed = ways.add_parser("list", help="list the corrections that are kept")
    listed.set_defaults(run=_list)
    angles = [each.value for each in Movement if MOVEMENTS[each].unit is Unit.DEGREES]
    for name, on in (("on", True), ("off", False)):
        one = ways.add_parser(name, help=f"switch a correction {name}; starts a new series")
        one.add_argument("--camera", required=True, metavar="NAME")
        one.add_argument("--movement", required=True, choices=angles)
        one.set_defaults(run=_switch, switched_on=on)


def _list(arguments: argparse.Namespace) -> int:
    from calibration.repository.corrections import CORRECTIONS

    found = CORRECTIONS.all()
    for kept in found:
        one = kept.correction
        print(
            f"{kept.camera_name}, {kept.movement}: {'on' if kept.switched_on else 'off'}; bias "
            f"{one.bias_deg:.1f} degrees, gain {one.gain:.2f} about {one.centre_deg:.0f}, from "
            f"{one.pairs} pairs of the study {one.study}"
        )
    if not found:
        print("No corrections are kept. See: thawline agreement --help")
    return 0


def _switch(arguments: argparse.Namespace) -> int:
    from calibration.repository.corrections import set_correction_enabled

    kept = set_correction_enabled(
        arguments.camera, Movement(arguments.movement), on=arguments.switched_on
    )
    state = "on" if kept.switched_on else "off"
    print(f"The correction is {state}. Readings from now on start a new series.")
    return 0
