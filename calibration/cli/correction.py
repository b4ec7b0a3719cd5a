"""`thawline calibrate correction`: list stored corrections, switch them on and off."""

import argparse

from measure.cli.open_store import open_store
from measure.domain.movements import MOVEMENTS, Movement, Unit


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """List corrections from agreement studies; switch one on or off."""
    listed = ways.add_parser("list", help="list the saved corrections")
    listed.set_defaults(run=_list)
    angles = [movement.value for movement in Movement if MOVEMENTS[movement].unit is Unit.DEGREES]
    for name, on in (("on", True), ("off", False)):
        switch = ways.add_parser(name, help=f"switch a correction {name}; starts a new series")
        switch.add_argument("--camera", required=True, metavar="NAME")
        switch.add_argument("--movement", required=True, choices=angles)
        switch.set_defaults(run=_switch, switched_on=on)


def _list(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        stored = store.corrections()
    for record in stored:
        correction = record.correction
        print(
            f"{record.camera_name}, {record.movement}: {'on' if record.switched_on else 'off'}; "
            f"bias {correction.bias_deg:.1f} degrees, gain {correction.gain:.2f} about "
            f"{correction.centre_deg:.0f}, from {correction.pairs} pairs of the study "
            f"{correction.study}"
        )
    if not stored:
        print("There are no corrections. See: thawline agreement --help")
    return 0


def _switch(arguments: argparse.Namespace) -> int:
    from calibration.agreement.stored_corrections import set_correction_enabled

    with open_store() as store:
        record = set_correction_enabled(
            store, arguments.camera, Movement(arguments.movement), on=arguments.switched_on
        )
    state = "on" if record.switched_on else "off"
    print(f"The correction is {state}. Readings from now on start a new series.")
    return 0
