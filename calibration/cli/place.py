"""`thawline calibrate place`: show or remove a person's stored places."""

import argparse

from calibration.cli.arguments import add_person
from measure.cli.open_store import open_store


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Show or delete where a person stood for each movement."""
    show = ways.add_parser("show", help="show the saved places")
    show.set_defaults(run=_show)
    forget = ways.add_parser("forget", help="delete them; the next readings save new ones")
    forget.set_defaults(run=_forget)
    add_person(show, forget)


def _show(arguments: argparse.Namespace) -> int:
    from measure.domain.standing_pose import facing_turn_deg

    with open_store() as store:
        placements = store.placements(store.find_person(arguments.person).id)
    for placement in placements:
        turn = facing_turn_deg(placement.width_over_trunk, placement.shoulder_width)
        print(
            f"{placement.movement}, {placement.side}: before "
            f"{placement.camera_name or 'a camera without a name'} at {placement.width_px} x "
            f"{placement.height_px} pixels on {placement.taken.isoformat()}, trunk "
            f"{placement.trunk_px:.0f} pixels, turned by about {turn:.0f} degrees"
        )
    if not placements:
        print("No place is saved yet. The first reading with a camera saves one.")
    return 0


def _forget(arguments: argparse.Namespace) -> int:
    with open_store() as store:
        gone = store.delete_placements(store.find_person(arguments.person).id)
    print(f"{gone} place{'s' * (gone != 1)} deleted.")
    return 0
