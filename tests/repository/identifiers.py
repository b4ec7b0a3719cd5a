"""Identifiers of the product's code, divided into their words: ``frame_results`` is frame, results.

``python -m tests.repository.identifiers WORD ...`` prints where each word stands.
"""

import ast
import re
import sys
import tokenize
from collections import defaultdict
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.repository.structure import ONE_NAMESPACE, ROOT, sources

_WORD = re.compile(r"[A-Z]+(?=[A-Z][a-z])|[A-Z]?[a-z]+|[A-Z]+")


def words_of(identifier: str) -> list[str]:
    """Return the words of an identifier in lower case, in their order."""
    return [word.lower() for word in _WORD.findall(identifier)]


@cache
def identifiers() -> dict[str, frozenset[str]]:
    """Return every identifier of measure, calibration and gui with the files that use it.

    The names of modules and folders count as identifiers of their own files.
    """
    files: dict[str, set[str]] = defaultdict(set)
    for path in sources(*ONE_NAMESPACE):
        place = path.relative_to(ROOT)
        for part in place.with_suffix("").parts:
            files[part].add(place.as_posix())
        with path.open("rb") as lines:
            for token in tokenize.tokenize(lines.readline):
                if token.type == tokenize.NAME:
                    files[token.string].add(place.as_posix())
    return {name: frozenset(places) for name, places in files.items()}


@cache
def files_by_word() -> dict[str, dict[str, frozenset[str]]]:
    """Return for each word the identifiers that hold it, each with its files."""
    result: dict[str, dict[str, frozenset[str]]] = defaultdict(dict)
    for name, files in identifiers().items():
        for word in words_of(name):
            result[word][name] = files
    return result


@cache
def bound_names() -> dict[str, frozenset[str]]:
    """Return every name of a variable or argument in the product's code with its files."""
    files: dict[str, set[str]] = defaultdict(set)
    for path in sources(*ONE_NAMESPACE):
        for name in _bound_in(path):
            files[name].add(path.relative_to(ROOT).as_posix())
    return {name: frozenset(places) for name, places in files.items()}


def _bound_in(path: Path) -> Iterator[str]:
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store):
            yield node.id
        elif isinstance(node, ast.Attribute) and isinstance(node.ctx, ast.Store):
            yield node.attr
        elif isinstance(node, ast.arg):
            yield node.arg


def main(words: list[str]) -> int:
    """Print the identifiers that hold each word, and their files."""
    for word in words:
        for name, files in sorted(files_by_word().get(word, {}).items()):
            print(f"{word}: {name}  {', '.join(sorted(files))}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
