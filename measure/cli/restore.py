"""`thawline restore`: puts a backup in the place of the store."""

import argparse
from pathlib import Path

from measure.storage.backup import restore
from measure.storage.location import store_path
from measure.system.clock import SystemClock


def configure(parser: argparse.ArgumentParser) -> None:
    """Replace all data here with a backup, also when the data are damaged.

    The backup is read through first; if it is not whole, nothing is changed. What was here
    stays beside it under another name, so that it can be put back in the same way.

    exit codes:
      0  done
      1  another program has the store open, or the disk could not be read or written
      2  wrong use, or no usable backup

    examples:
      thawline restore ~/thawline-2026-11-25.sqlite
    """
    parser.add_argument("file", type=Path, metavar="FILE", help="a file made by thawline backup")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    now, aside = restore(arguments.file, store_path(), SystemClock())
    print(f"The store now holds {now}.")
    if aside:
        print(f"What was here before is now in {aside}")
    return 0
