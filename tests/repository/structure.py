"""Figures of the house: ``python -m tests.repository.structure``, part of ``make check``.

Prints the longest file, the longest function, the deepest nesting and the circular imports, and
ends with 1 where one of them is over its limit. The limits are ours.
"""

import ast
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGES = ("measure", "calibration", "gui", "sample_clips")
FOLDERS = (*PACKAGES, "desktop", "tests")

#: Lines of a file, and of a function with its docstring.
LONGEST_FILE, LONGEST_FUNCTION = 500, 90
#: Loops, conditions, with and try inside each other; the function itself does not count.
DEEPEST_NESTING = 4

_FUNCTIONS = (ast.FunctionDef, ast.AsyncFunctionDef)
_BLOCKS = (ast.For, ast.While, ast.If, ast.With, ast.Try, ast.TryStar, ast.Match)


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Figure:
    """A size and where it was found; the larger one is the greater."""

    size: int
    place: str


def sources(*folders: str) -> Iterator[Path]:
    """Yield the Python files of folders of the house."""
    for folder in folders:
        yield from sorted((ROOT / folder).rglob("*.py"))


def longest_file() -> Figure:
    return max(
        Figure(size=len(file.read_text(encoding="utf-8").splitlines()), place=_name(file))
        for file in sources(*FOLDERS)
    )


@cache
def functions() -> tuple[tuple[str, ast.FunctionDef | ast.AsyncFunctionDef], ...]:
    """Return every function with its place."""
    return tuple(
        (f"{_name(file)}:{node.lineno} {node.name}", node)
        for file in sources(*FOLDERS)
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, _FUNCTIONS)
    )


def longest_function() -> Figure:
    return max(
        Figure(size=(node.end_lineno or node.lineno) - node.lineno + 1, place=place)
        for place, node in functions()
    )


def deepest_nesting() -> Figure:
    return max(Figure(size=nesting(node), place=place) for place, node in functions())


def nesting(node: ast.AST) -> int:
    """Return how many blocks lie inside each other in a function; ``elif`` is no block inside."""
    deepest = 0
    for field, value in ast.iter_fields(node):
        for child in value if isinstance(value, list) else [value]:
            if not isinstance(child, ast.AST) or isinstance(child, _FUNCTIONS):
                continue
            chained = isinstance(node, ast.If) and field == "orelse" and isinstance(child, ast.If)
            own = 1 if isinstance(child, _BLOCKS) and not chained else 0
            deepest = max(deepest, own + nesting(child))
    return deepest


def circular_imports(imports: dict[str, set[str]]) -> list[list[str]]:
    """Return the groups of modules that import each other, directly or in a round.

    Parameters
    ----------
    imports
        For each module those that it imports, inside functions too.
    """
    reached = {module: _reached(module, imports) for module in imports}
    rounds = {
        tuple(sorted(other for other in reached[module] if module in reached.get(other, ())))
        for module in imports
        if module in reached[module]
    }
    return [list(each) for each in sorted(rounds)]


def _reached(start: str, imports: dict[str, set[str]]) -> set[str]:
    """Return every module that a chain of imports leads to; the start only by a round."""
    found: set[str] = set()
    ahead = list(imports[start])
    while ahead:
        module = ahead.pop()
        if module not in found:
            found.add(module)
            ahead += imports.get(module, ())
    return found


def imports_of_the_house() -> dict[str, set[str]]:
    """Return for each module of ours the modules of ours that it imports."""
    import grimp

    graph = grimp.build_graph(*PACKAGES)
    return {each: set(graph.find_modules_directly_imported_by(each)) for each in graph.modules}


def _name(file: Path) -> str:
    return file.relative_to(ROOT).as_posix()


def main() -> int:
    """Print the figures; say whether they are within their limits."""
    limits = (
        ("longest file, lines", longest_file(), LONGEST_FILE),
        ("longest function, lines", longest_function(), LONGEST_FUNCTION),
        ("deepest nesting", deepest_nesting(), DEEPEST_NESTING),
    )
    for what, found, limit in limits:
        print(f"{what}: {found.size} of at most {limit}  ({found.place})")
    rounds = circular_imports(imports_of_the_house())
    print(f"circular imports: {len(rounds)}")
    for modules in rounds:
        print(f"  {', '.join(modules)}")
    return 1 if rounds or any(found.size > limit for _, found, limit in limits) else 0


if __name__ == "__main__":
    sys.exit(main())
