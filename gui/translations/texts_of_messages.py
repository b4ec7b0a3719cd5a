"""Messages of `measure` and `calibration` that the window shows, listed for the extractor."""

import ast
from pathlib import Path

import calibration
import measure


def texts_of_messages() -> tuple[str, ...]:
    """Return the template of every message written in both packages, without repeats."""
    texts = []
    for package in (measure, calibration):
        for file in sorted(Path(package.__path__[0]).rglob("*.py")):
            texts += _templates(file.read_text(encoding="utf-8"))
    return tuple(dict.fromkeys(texts))


def _templates(source: str) -> list[str]:
    return [
        node.args[0].value
        for node in ast.walk(ast.parse(source))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id == "TranslatableMessage"
        and node.args
        and isinstance(node.args[0], ast.Constant)
        and isinstance(node.args[0].value, str)
    ]
