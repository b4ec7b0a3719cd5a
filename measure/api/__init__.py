"""Python interface of Thawline: read shoulder motion from clips, follow it over months.

Installed as ``thawline``. Every public name is listed in ``__all__``; the packages behind it
(``measure``, ``calibration``, ``gui``) are private and may change in any version.

>>> import thawline
>>> reading = thawline.read_observation("raise.npz")
>>> measurement = reading.measurement
>>> measurement.movement, measurement.side, measurement.status
(<Movement.FLEXION: 'flexion'>, <Side.LEFT: 'left'>, <Status.READING: 'reading'>)
>>> measurement.low < measurement.value < measurement.high
True

The names are loaded when the first one is used, so that ``import thawline`` costs nearly nothing.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .public_names import *  # noqa: F403
    from .public_names import __all__ as __all__


def __getattr__(name: str) -> Any:
    """Load the public names; afterwards this one is an ordinary attribute."""
    names = import_module(".public_names", __name__)
    if name not in ("__all__", *names.__all__):
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    globals()[name] = value = getattr(names, name)
    return value


def __dir__() -> list[str]:
    return sorted({*globals(), *__getattr__("__all__")})
