"""Sizes of the code base: ``python -m tests.repository.structure``, part of ``make check``.

Prints the longest file, the longest function, the deepest nesting, the largest folder and the class
names that are defined twice, and ends with 1 where one of them is over its limit. Imports are held
by import-linter, everything else by ruff.
"""

import argparse
import ast
import sys
from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGES = ("measure", "calibration", "gui", "sample_clips")
FOLDERS = (*PACKAGES, "tests")

#: Lines of a file, and of a function with its docstring.
LONGEST_FILE, LONGEST_FUNCTION = 500, 90
#: Loops, conditions, with and try inside each other; the function itself does not count.
DEEPEST_NESTING = 4
#: Python files of one folder of the product, its ``__init__`` counted.
LARGEST_FOLDER = 24
#: Packages in which a class name means one thing only.
ONE_NAMESPACE = ("measure", "calibration", "gui")

_FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
_BLOCKS = (ast.For, ast.While, ast.If, ast.With, ast.Try, ast.TryStar, ast.Match)
#: Fields of statements that hold statements; expressions hold none.
_BODIES = ("body", "orelse", "finalbody", "handlers", "cases")


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Figure:
    """A size and its place; the larger one is the greater."""

    size: int
    place: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceFile:
    """Sizes of one Python file: its path from the root, lines, functions and class names.

    The functions' lengths in lines and their nesting carry their places. The syntax tree is not
    kept: holding all of them makes parsing five times as slow.
    """

    path: str
    lines: int
    lengths: tuple[Figure, ...]
    nestings: tuple[Figure, ...]
    classes: tuple[str, ...]


def sources(*folders: str) -> Iterator[Path]:
    """Yield the Python files of folders below the root."""
    for folder in folders:
        yield from sorted((ROOT / folder).rglob("*.py"))


@cache
def source_files() -> tuple[SourceFile, ...]:
    """Return every Python file of the project, each parsed once."""
    return tuple(_source_file(path) for path in sources(*FOLDERS))


def _source_file(path: Path) -> SourceFile:
    text = path.read_text(encoding="utf-8")
    name = path.relative_to(ROOT).as_posix()
    nodes = list(statements(ast.parse(text)))
    functions = [(f"{name}:{n.lineno} {n.name}", n) for n in nodes if isinstance(n, _FUNCTIONS)]
    return SourceFile(
        path=name,
        lines=text.count("\n"),
        lengths=tuple(
            Figure(size=(node.end_lineno or node.lineno) - node.lineno + 1, place=place)
            for place, node in functions
        ),
        nestings=tuple(Figure(size=nesting(node), place=place) for place, node in functions),
        classes=tuple(node.name for node in nodes if isinstance(node, ast.ClassDef)),
    )


def statements(node: ast.AST) -> Iterator[ast.AST]:
    """Yield every statement inside a node, at any depth."""
    for child in _children(node):
        yield child
        yield from statements(child)


def _children(node: ast.AST) -> Iterator[ast.AST]:
    for field in _BODIES:
        value = getattr(node, field, ())
        if isinstance(value, list):
            yield from value


def nesting(node: ast.AST) -> int:
    """Return how many blocks lie inside each other in a function; ``elif`` is no block inside."""
    deepest = 0
    for child in _children(node):
        if isinstance(child, _FUNCTIONS):
            continue
        chained = isinstance(node, ast.If) and isinstance(child, ast.If) and child in node.orelse
        is_block = isinstance(child, _BLOCKS) and not chained
        deepest = max(deepest, is_block + nesting(child))
    return deepest


def longest_file() -> Figure:
    return max(Figure(size=file.lines, place=file.path) for file in source_files())


def longest_function() -> Figure:
    return max(figure for file in source_files() for figure in file.lengths)


def deepest_nesting() -> Figure:
    return max(figure for file in source_files() for figure in file.nestings)


def largest_folder() -> Figure:
    """Return the folder of the product with most Python files."""
    modules = Counter(
        file.path.rpartition("/")[0] for file in source_files() if file.path.startswith(PACKAGES)
    )
    return max(Figure(size=size, place=folder) for folder, size in modules.items())


def classes_defined_twice() -> dict[str, list[str]]:
    """Return the class names with more than one definition, each with the files that define it."""
    places: dict[str, list[str]] = defaultdict(list)
    for file in source_files():
        if file.path.startswith(ONE_NAMESPACE):
            for name in file.classes:
                places[name].append(file.path)
    return {name: files for name, files in sorted(places.items()) if len(files) > 1}


def main() -> int:
    """Print the sizes; return 1 where one is over its limit."""
    limits = (
        ("longest file, lines", longest_file(), LONGEST_FILE),
        ("longest function, lines", longest_function(), LONGEST_FUNCTION),
        ("deepest nesting", deepest_nesting(), DEEPEST_NESTING),
        ("largest folder, files", largest_folder(), LARGEST_FOLDER),
    )
    for what, figure, limit in limits:
        print(f"{what}: {figure.size} of at most {limit}  ({figure.place})")
    twice = classes_defined_twice()
    print(f"class names defined twice: {len(twice)}")
    for name, files in twice.items():
        print(f"  {name}: {', '.join(files)}")
    return 1 if twice or any(figure.size > limit for _, figure, limit in limits) else 0


if __name__ == "__main__":
    argparse.ArgumentParser(description=__doc__.partition("\n")[0]).parse_args()
    sys.exit(main())
