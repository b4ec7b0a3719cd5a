"""`thawline backup`: a copy of everything that is kept, in one file."""

import argparse
from pathlib import Path

from measure.storage.backup import backup
from measure.storage.location import store_path


def configure(parser: argparse.ArgumentParser) -> None:
    """Copy everything saved about everyone to one new file.

    The copy is checked by reading it from end to end. Only its owner can read it, but it is not
    encrypted: store it where no one else can reach it.

    exit codes:
      0  written
      1  the disk could not be read or written
      2  wrong use, the file exists, or the store is damaged

    examples:
      thawline backup ~/thawline-2026-11-25.sqlite
    """
    parser.add_argument("file", type=Path, metavar="FILE", help="the new file")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    made = backup(store_path(), arguments.file)
    print(f"Copied {made} to {arguments.file}")
    return 0
