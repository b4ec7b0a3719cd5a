"""Language of a report: any of the window's, whatever the window speaks."""

from collections.abc import Callable
from importlib.resources import files

from PySide6.QtCore import QTranslator


def translate_into(code: str) -> Callable[[str], str]:
    """Return the function that translates a text into a language."""
    if code == "en":
        return str
    translator = QTranslator()
    translator.load(f"thawline_{code}", str(files("gui") / "translations"))
    return lambda text: translator.translate("", text) or text
