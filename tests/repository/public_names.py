"""Public names of the folders: ``python -m tests.repository.public_names [--write]``.

The docstring of a folder's ``__init__`` lists what other folders use of it, by module::

    Public names:

        keypoints: ArmKeypoints, arm_keypoints

Without ``--write`` what other folders import and no list names is printed; with it those names are
added, and names that are gone are taken out.
"""

import argparse
import ast
import re
import sys
import textwrap
import tomllib
from collections import defaultdict
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from tests.repository.structure import ONE_NAMESPACE, ROOT, sources

HEADING = "Public names:"

#: Names by module, e.g. {"keypoints": {"ArmKeypoints"}}.
Names = dict[str, set[str]]


def folders() -> list[Path]:
    """Return the folders of the product, those of top-level packages included."""
    return sorted(
        path.parent for name in ONE_NAMESPACE for path in (ROOT / name).rglob("__init__.py")
    )


def docstring(folder: Path) -> str:
    text = (folder / "__init__.py").read_text(encoding="utf-8")
    return ast.get_docstring(ast.parse(text)) or ""


def listed(folder: Path) -> Names:
    """Return the names that a folder's docstring lists."""
    _, _, lists = docstring(folder).partition(HEADING)
    entries = re.findall(r"^ {4}(\w+): (.*(?:\n {8}.*)*)", lists, re.MULTILINE)
    return {module: set(re.findall(r"\w+", names)) for module, names in entries}


def defined(file: Path) -> set[str]:
    """Return the names that a module defines at its top, imported ones excluded."""
    names = set()
    for node in ast.parse(file.read_text(encoding="utf-8")).body:
        match node:
            case ast.ClassDef(name=name) | ast.FunctionDef(name=name):
                names.add(name)
            case ast.Assign(targets=targets):
                names |= {n.id for t in targets for n in ast.walk(t) if isinstance(n, ast.Name)}
            case ast.AnnAssign(target=ast.Name(id=name)):
                names.add(name)
    return names


@cache
def used_from_outside() -> dict[str, Names]:
    """Return for every folder, dotted, the names that code in other folders imports from it."""
    result: dict[str, Names] = defaultdict(lambda: defaultdict(set))
    for path in sources(*ONE_NAMESPACE):
        own = ".".join(path.parent.relative_to(ROOT).parts)
        for module, name in imports_of(path):
            folder, _, module_name = module.rpartition(".")
            if folder and folder != own:
                result[folder][module_name].add(name)
    for entry in _entry_points():
        module, _, name = entry.partition(":")
        folder, _, module_name = module.rpartition(".")
        result[folder][module_name].add(name)
    return result


def _entry_points() -> list[str]:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    groups = (project["scripts"], *project["entry-points"].values())
    return [entry for group in groups for entry in group.values()]


def imports_of(path: Path) -> Iterator[tuple[str, str]]:
    """Yield the modules of ours that a file imports from, each with a name that it takes."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    modules: dict[str, str] = {}
    for node in ast.walk(tree):
        if isinstance(node, ast.ImportFrom) and node.module and _is_ours(node.module):
            for alias in node.names:
                if _file(f"{node.module}.{alias.name}").is_file():
                    modules[alias.asname or alias.name] = f"{node.module}.{alias.name}"
                elif _file(node.module).is_file():
                    yield node.module, alias.name
    for node in ast.walk(tree):
        if isinstance(node, ast.Attribute) and isinstance(node.value, ast.Name):
            module = modules.get(node.value.id, "")
            if module and node.attr in defined(_file(module)):
                yield module, node.attr


def _is_ours(module: str) -> bool:
    return module.split(".")[0] in ONE_NAMESPACE


def _file(module: str) -> Path:
    return ROOT.joinpath(*module.split(".")).with_suffix(".py")


def missing(folder: Path) -> Names:
    """Return the names that other folders use and the folder's docstring does not list."""
    names = listed(folder)
    used = used_from_outside()[".".join(folder.relative_to(ROOT).parts)]
    lacking = {module: used[module] - names.get(module, set()) for module in sorted(used)}
    return {module: names for module, names in lacking.items() if names}


def gone(folder: Path) -> Names:
    """Return the names that the folder's docstring lists and its modules do not define."""
    lost = {}
    for module, names in listed(folder).items():
        file = folder / f"{module}.py"
        lost[module] = names - (defined(file) if file.is_file() else set())
    return {module: names for module, names in lost.items() if names}


def write(folder: Path) -> None:
    """Bring the list in a folder's docstring up to date; what stands above it stays."""
    if not missing(folder) and not gone(folder):
        return
    names: Names = defaultdict(set)
    for source in (listed(folder), missing(folder)):
        for module, members in source.items():
            names[module] |= members
    for module, members in gone(folder).items():
        names[module] -= members
    about = docstring(folder).partition(HEADING)[0].strip()
    lines = [_entry(module, members) for module, members in sorted(names.items()) if members]
    body = (
        f'"""{about}\n\n{HEADING}\n\n' + "\n".join(lines) + '\n"""' if lines else f'"""{about}"""'
    )
    file = folder / "__init__.py"
    text = file.read_text(encoding="utf-8")
    end = ast.parse(text).body[0].end_lineno or 0
    rest = "\n".join(text.splitlines()[end:])
    file.write_text(f"{body}\n{rest}\n" if rest else f"{body}\n", encoding="utf-8")


def _entry(module: str, names: set[str]) -> str:
    return textwrap.fill(
        f"{module}: {', '.join(sorted(names))}",
        width=99,
        initial_indent=" " * 4,
        subsequent_indent=" " * 8,
    )


def main() -> int:
    """Print what the lists lack, or write them."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--write", action="store_true", help="bring the lists up to date")
    wanted = parser.parse_args().write
    for folder in folders():
        if wanted:
            write(folder)
            continue
        for word, names in (("lacks", missing(folder)), ("has no longer", gone(folder))):
            for module, members in names.items():
                place = folder.relative_to(ROOT).as_posix()
                print(f"{place} {word} {module}: {', '.join(sorted(members))}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
