"""`thawline calibrate setup`: write what is known to one file for `thawline replay`; show it."""

import argparse
import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

from calibration.cli.arguments import parse_size
from measure.cli.open_store import open_store

if TYPE_CHECKING:
    from measure.domain.acquisition import KnownSetup


def add_to(ways: "argparse._SubParsersAction[argparse.ArgumentParser]") -> None:
    """Write the calibration of a camera and a person to a file, for replay --setup."""
    write = ways.add_parser("write", help="write the file")
    write.add_argument("file", type=Path, metavar="FILE.json")
    write.add_argument("--camera", metavar="NAME", help="its lens, level and corrections")
    write.add_argument("--person", metavar="NAME", help="pseudonym, for their lengths and marks")
    write.add_argument(
        "--size",
        type=parse_size,
        metavar="WxH",
        help="size size of the clips' upright pictures, such as 1280x720",
    )
    write.add_argument("--quarter-turns", type=int, choices=range(4), default=0)
    write.add_argument("--mirrored", action="store_true", help="the clips show a mirror image")
    write.set_defaults(run=_write)
    show = ways.add_parser("show", help="show what a file contains")
    show.add_argument("file", type=Path, metavar="FILE.json")
    show.set_defaults(run=_show)


def _write(arguments: argparse.Namespace) -> int:
    from calibration.known_setup import load_calibrated_setup
    from measure.clips.setup_file import write_setup

    with open_store() as store:
        person = None if arguments.person is None else store.find_person(arguments.person)
        gathered = load_calibrated_setup(
            store,
            camera_name=arguments.camera,
            person_id=None if person is None else person.id,
            today=dt.date.today(),
            size_px=arguments.size,
            already_mirrored=arguments.mirrored,
            quarter_turns=arguments.quarter_turns,
        )
    write_setup(arguments.file, gathered.setup)
    for message in gathered.messages:
        print(f"Note: {message}")
    print(f"Wrote {arguments.file}. It contains:")
    _print(gathered.setup)
    return 0


def _show(arguments: argparse.Namespace) -> int:
    from measure.clips.setup_file import read_setup

    _print(read_setup(arguments.file))
    return 0


def _print(setup: "KnownSetup") -> None:
    camera, body = setup.camera, setup.body
    lens = camera.lens
    print(f"  camera: {camera.name or 'unknown'}")
    if lens is None:
        print("  lens: unknown")
    else:
        print(f"  lens: {lens.width_px} x {lens.height_px}, from {lens.views} views")
    print(f"  roll: {'unknown' if camera.roll_deg is None else f'{camera.roll_deg:.1f} degrees'}")
    marked = body.c7_height is not None and body.iliac_spines is not None
    print(f"  C7 and pelvis: {'marked' if marked else 'not marked'}")
    for entry in setup.corrections:
        print(f"  correction: {entry.movement}, study {entry.correction.study}")
    if not setup.corrections:
        print("  correction: none is switched on")
