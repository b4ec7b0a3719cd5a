"""`thawline people`, where deleting somebody also deletes what calibration keeps about them."""

import argparse

from measure.cli import people


def configure(parser: argparse.ArgumentParser) -> None:
    people.configure(parser, _forget)


configure.__doc__ = people.configure.__doc__


def _forget(person_id: str) -> None:
    from calibration.known_setup import delete_person_calibration

    delete_person_calibration(person_id)
