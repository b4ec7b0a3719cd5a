"""Progress of fetching the pose model, drawn on the terminal."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager

from measure.pose_models.package_clients import Progress


@contextmanager
def bar() -> Iterator[Progress]:
    """Give a progress function that draws a bar on stderr while there is something to say.

    On a terminal the bar is drawn in place. Elsewhere, as in a log, each new step is one line.
    """
    from tqdm import tqdm

    drawn: tqdm[None] | None = None
    said = ""

    def progress(done: float, words: str) -> None:
        nonlocal drawn, said
        if not sys.stderr.isatty():
            if words != said:
                print(f"thawline: {words}", file=sys.stderr, flush=True)
            said = words
            return
        if words != said:
            # The words get a line of their own: beside the bar they would be cut off.
            tqdm.write(f"thawline: {words}", file=sys.stderr)
            said = words
        if drawn is None:
            drawn = tqdm(
                total=100,
                file=sys.stderr,
                bar_format="{bar:30} {percentage:3.0f} %  {elapsed}",
                leave=False,
            )
        drawn.n = round(100 * done)
        drawn.refresh()

    try:
        yield progress
    finally:
        if drawn is not None:
            drawn.close()
