"""`thawline calibrate`: lens, level, body, place, corrections and the file of the set-up."""

import argparse

from calibration.cli import body, correction, lens, level, place, setup


def configure(parser: argparse.ArgumentParser) -> None:
    """Calibrate the camera's lens and level, the body's lengths, and corrections.

    Calibration is saved in the data folder and with every reading that used it. Anything you
    leave out makes the intervals wider.

    examples:
      thawline calibrate lens sheet board.pdf
      thawline calibrate lens clip board.mp4 --camera "Garden laptop"
      thawline calibrate level lines --size 640x480 --line 120,40:118,450 --line 530,38:534,452
      thawline calibrate body tape --person Bramble --trunk 49 --upper-arm 30
      thawline calibrate correction on --camera "Garden laptop" --movement flexion
      thawline calibrate setup write bramble.json --camera "Garden laptop" --person Bramble
    """
    what = parser.add_subparsers(title="what", metavar="WHAT", required=True)
    for name, module in (
        ("lens", lens),
        ("level", level),
        ("body", body),
        ("place", place),
        ("correction", correction),
        ("setup", setup),
    ):
        summary = (module.add_to.__doc__ or "").partition("\n")[0]
        command = what.add_parser(name, help=summary, description=summary)
        module.add_to(command.add_subparsers(title="how", metavar="HOW", required=True))
