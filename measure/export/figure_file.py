"""A figure as a file, whole or not at all."""

import io
from pathlib import Path
from typing import TYPE_CHECKING, Any

from measure.system.atomic_files import write_over

if TYPE_CHECKING:
    from matplotlib.figure import Figure


def save_figure(figure: "Figure", path: Path, **options: Any) -> None:
    """Draw a figure in memory and write it; the name's ending chooses the format.

    Drawn straight to a full disk, half a file would be left, and the error would be one of the
    drawing library that says nothing of the disk.

    Parameters
    ----------
    options
        Passed on to matplotlib's ``savefig``.

    Raises
    ------
    DataError
        When the file cannot be written.
    """
    drawn = io.BytesIO()
    figure.savefig(drawn, format=path.suffix.lstrip(".").lower(), **options)
    write_over(path, drawn.getvalue())
