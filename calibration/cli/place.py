"""`thawline calibrate place`: where somebody stood, as it is kept; and forgetting it."""

import argparse


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Show or forget where a person stood for each movement."""
    show = ways.add_parser("show", help="show the places that are kept")
    show.set_defaults(run=_show)
    forget = ways.add_parser("forget", help="forget them; the next readings keep new ones")
    forget.set_defaults(run=_forget)
    for one in (show, forget):
        one.add_argument("--person", required=True, metavar="NAME", help="the pseudonym")


def _show(arguments: argparse.Namespace) -> int:
    from calibration.placement.placement import PLACEMENTS
    from measure.kinematics.neutral_pose import turn_deg

    person_id = _person_id(arguments.person)
    kept = [each for each in PLACEMENTS.all() if each.person_id == person_id]
    for each in kept:
        turn = turn_deg(each.width_over_trunk, each.shoulder_width)
        print(
            f"{each.movement}, {each.side}: before {each.camera_name or 'a camera without a name'} "
            f"at {each.width_px} x {each.height_px} pixels on {each.taken.isoformat()}, trunk "
            f"{each.trunk_px:.0f} pixels, turned by about {turn:.0f} degrees"
        )
    if not kept:
        print("No place is kept yet; the first reading before a camera keeps it.")
    return 0


def _forget(arguments: argparse.Namespace) -> int:
    from calibration.placement.placement import PLACEMENTS

    person_id = _person_id(arguments.person)
    gone = PLACEMENTS.remove(lambda each: each.person_id == person_id)
    print(f"{gone} place{'s' * (gone != 1)} forgotten.")
    return 0


def _person_id(name: str) -> str:
    from measure.cli.open_store import open_store

    with open_store() as store:
        return store.find_person(name).id
