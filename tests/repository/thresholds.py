"""The page of thresholds: ``python -m tests.repository.thresholds --write``.

A module of measure, calibration or gui that names a number at its top and explains it with a ``#:``
comment ends the comment with a tag: ``[project]`` where the value is the project's own,
``[source: DOI or standard]`` where it comes from outside, ``[technical]`` where it changes no
reading, as the size of a file, a waiting time or a size on the screen. The first two stand on the
page ``measure/docs/thresholds.md``. Without ``--write`` the numbers that lack a tag are printed.
"""

import argparse
import ast
import inspect
import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from itertools import groupby
from pathlib import Path

from gui.protocol.red_flags import ScreeningPage
from gui.text.safety_wording import screening_text
from measure.domain.movements import MOVEMENTS, MovementFacts
from tests.repository.public_names import imports_of
from tests.repository.structure import ONE_NAMESPACE, ROOT, sources

PAGE = ROOT / "measure" / "docs" / "thresholds.md"

INTRODUCTION = """\
# Thresholds

Every number by which Thawline decides something: what counts as a hold, which reading is refused,
when a change is a change. A number without a source is the project's own value. It was chosen on
virtual people and on the sample clips and was not validated on patients: this page is for a
physiotherapist to read, to question and to sign off.

`python -m tests.repository.thresholds --write` makes this page from the comments in the code;
change it there. Sizes of files, waiting times of processes and sizes on the screen change no
reading and are not listed. Figures that are fitted (`fitted.json`, `intervals.json`) are explained
in [accuracy](accuracy.md).

Signed off by: ______________________  Date: ______________
"""

TAG = re.compile(r"\[(project|technical|source: [^\]]+)\]")

#: Units by the last word of a name.
UNIT_OF_SUFFIX = {
    "S": "seconds",
    "MS": "milliseconds",
    "DAYS": "days",
    "WEEKS": "weeks",
    "DEG": "degrees",
    "DEG2": "square degrees",
    "PX": "pixels",
    "HZ": "a second",
    "FPS": "frames a second",
    "SHARE": "share",
    "M": "metres",
    "CM": "centimetres",
    "MM": "millimetres",
}
#: Units by what a comment says: ", seconds.", "in degrees", "Fewest days with ...".
_UNITS = (
    "bytes|centimetres|characters|days|degrees|frames|metres|pixels|points|seconds|"
    "standard deviations|trunk lengths|usual spreads|weeks"
)
UNIT_OF_COMMENT = re.compile(
    rf"(?:^|, |\bin )(?:fewest |most |least |largest |longest |number of )?({_UNITS})\b",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Threshold:
    """A number that a module names: where, its value as written, and its comment."""

    path: str
    line: int
    name: str
    value: str
    comment: str

    @property
    def tag(self) -> str:
        match = TAG.search(self.comment)
        return match[1] if match else ""

    @property
    def folder(self) -> str:
        return self.path.rpartition("/")[0]

    @property
    def meaning(self) -> str:
        """The comment's first sentence, without its tag."""
        text = TAG.sub("", self.comment).strip()
        return re.split(r"(?<=[.;])\s+(?=[A-Z])", text)[0].rstrip(".:; ") + "."

    @property
    def unit_of_name(self) -> str:
        return UNIT_OF_SUFFIX.get(self.name.rpartition("_")[2], "")

    @property
    def unit_of_comment(self) -> str:
        match = UNIT_OF_COMMENT.search(self.comment)
        return match[1].lower() if match else ""

    @property
    def source(self) -> str:
        if self.tag == "project":
            return "project value, not validated"
        return self.tag.removeprefix("source: ")


@cache
def thresholds() -> tuple[Threshold, ...]:
    """Return every module-level number with a ``#:`` comment, by file and line."""
    return tuple(
        threshold
        for path in sources(*ONE_NAMESPACE)
        for threshold in thresholds_of(
            path.read_text(encoding="utf-8"), path.relative_to(ROOT).as_posix()
        )
    )


def thresholds_of(source: str, path: str) -> Iterator[Threshold]:
    """Yield the explained numbers of one module; lines that follow each other share a comment."""
    lines = source.splitlines()
    comment, last_line = "", -1
    for node in ast.parse(source).body:
        above = _comment_above(lines, node.lineno)
        if above or node.lineno != last_line + 1:
            comment = above
        last_line = node.end_lineno or node.lineno
        if not comment or not isinstance(node, ast.Assign | ast.AnnAssign) or node.value is None:
            continue
        target = node.targets[0] if isinstance(node, ast.Assign) else node.target
        for name, value in _pairs(target, node.value):
            if _is_number(value):
                yield Threshold(
                    path=path, line=node.lineno, name=name, value=_written(value), comment=comment
                )


def _comment_above(lines: list[str], number: int) -> str:
    start = number - 1
    while start > 0 and lines[start - 1].startswith("#:"):
        start -= 1
    return " ".join(line.removeprefix("#:").strip() for line in lines[start : number - 1])


def _pairs(target: ast.expr, value: ast.expr) -> Iterator[tuple[str, ast.expr]]:
    if isinstance(target, ast.Name):
        yield target.id, value
    elif isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
        for name, part in zip(target.elts, value.elts, strict=True):
            yield from _pairs(name, part)


def _is_number(node: ast.expr | None) -> bool:
    match node:
        case ast.Constant(value=value):
            return isinstance(value, int | float) and not isinstance(value, bool)
        case ast.UnaryOp(operand=operand):
            return _is_number(operand)
        case ast.BinOp(left=left, right=right):
            return _is_number(left) or _is_number(right)
        case ast.Tuple(elts=parts) | ast.List(elts=parts) | ast.Dict(values=parts):
            return bool(parts) and all(_is_number(part) for part in parts)
    return False


def _written(node: ast.expr) -> str:
    """Return a value as a reader wants it: of an enumeration the member's name in lower case."""
    match node:
        case ast.Dict(keys=keys, values=values):
            pairs = zip(keys, values, strict=True)
            return "; ".join(f"{_written(key)} {_written(part)}" for key, part in pairs if key)
        case ast.Tuple(elts=parts) | ast.List(elts=parts):
            return ", ".join(_written(part) for part in parts)
        case ast.Attribute(attr=name):
            return name.lower().replace("_", " ")
        case ast.Constant(value=str(text)):
            return text.replace("_", " ")
    return ast.unparse(node).replace("**", "^").replace("|", "or")


@cache
def uses() -> dict[tuple[str, str], frozenset[str]]:
    """Return for every module and name of it the other modules that import the name."""
    modules: dict[tuple[str, str], set[str]] = defaultdict(set)
    for path in sources(*ONE_NAMESPACE):
        for module, name in imports_of(path):
            modules[f"{module.replace('.', '/')}.py", name].add(path.relative_to(ROOT).as_posix())
    return {key: frozenset(places) for key, places in modules.items()}


def page() -> str:
    """Return the page of thresholds, grouped by folder."""
    listed = [item for item in thresholds() if item.tag not in ("", "technical")]
    parts = [INTRODUCTION]
    for folder, members in groupby(listed, key=lambda threshold: threshold.folder):
        parts.append(
            f"\n## {folder}\n\n{_purpose(ROOT / folder)}\n\n"
            "| name | value | unit | meaning | used in | source |\n|---|---|---|---|---|---|\n"
        )
        explained = groupby(members, key=lambda threshold: (threshold.path, threshold.comment))
        parts += [_row(list(group)) for _, group in explained]
    return "".join([*parts, _movements(), _safety_questions()])


def _safety_questions() -> str:
    """Return the section with the signs that the window asks about before measuring."""
    parts = [
        "\n## Safety questions\n\nAsked by the window before measuring. The choice of signs and "
        "the wording are the project's own, for a clinician to sign off.\n"
    ]
    for asked in (ScreeningPage.EMERGENCY, ScreeningPage.SOON, ScreeningPage.CLINICIAN):
        text = screening_text(asked)
        parts.append(f"\n**{text.heading}.** {text.close}\n\n")
        parts += [f"- {item}\n" for item in text.items]
    return "".join(parts)


def _movements() -> str:
    """Return the section with the numbers that each movement has for itself."""
    head = "| number | " + " | ".join(facts.name for facts in MOVEMENTS.values()) + " |\n"
    rows = [f"| unit | {' | '.join(facts.unit.value for facts in MOVEMENTS.values())} |\n"]
    rows += [
        f"| `{name}` | {' | '.join(_plain(getattr(f, name)) for f in MOVEMENTS.values())} |\n"
        for name, _ in _fields_of_movements()
    ]
    meanings = [f"- `{name}`: {text}\n" for name, text in _fields_of_movements()]
    return (
        f"\n## Movements\n\nFrom the table in `measure/domain/movements.py`.\n\n{head}"
        f"|{'---|' * (1 + len(MOVEMENTS))}\n{''.join(rows)}\n{''.join(meanings)}"
    )


def _fields_of_movements() -> list[tuple[str, str]]:
    """Return the fields with numbers, each with its meaning from the class's docstring."""
    text = ast.get_docstring(ast.parse(inspect.getsource(MovementFacts)).body[0]) or ""
    meanings = re.findall(r"^(\w+)\n((?:    .+\n?)+)", text, re.MULTILINE)
    return [
        (name, " ".join(meaning.split()).replace("[project]", "(project value, not validated)"))
        for name, meaning in meanings
        if _is_numeric(getattr(next(iter(MOVEMENTS.values())), name, None))
    ]


def _is_numeric(value: object) -> bool:
    if isinstance(value, tuple):
        return bool(value) and all(_is_numeric(part) for part in value)
    return isinstance(value, int | float)


def _plain(value: object) -> str:
    match value:
        case tuple():
            return " to ".join(str(part) for part in value)
    return str(value)


def _purpose(folder: Path) -> str:
    text = ast.get_docstring(ast.parse((folder / "__init__.py").read_text(encoding="utf-8"))) or ""
    return " ".join(text.split("\n\n")[0].split())


def _row(group: list[Threshold]) -> str:
    """Return the row of the numbers that share a comment."""
    first = group[0]
    module = first.path.removesuffix(".py").rpartition("/")[2]
    readers = {
        path.removesuffix(".py").removeprefix(f"{first.folder}/")
        for threshold in group
        for path in uses().get((threshold.path, threshold.name), ())
    }
    units = list(dict.fromkeys(unit for item in group if (unit := item.unit_of_name)))
    cells = (
        ", ".join(f"`{threshold.name}`" for threshold in group),
        "; ".join(threshold.value for threshold in group),
        ", ".join(units) or (first.unit_of_comment if len(group) == 1 else ""),
        first.meaning.replace("|", "or"),
        ", ".join([f"**{module}**", *sorted(readers)]),
        first.source,
    )
    return f"| {' | '.join(cells)} |\n"


def untagged() -> list[Threshold]:
    """Return the explained numbers whose comments lack a tag."""
    return [threshold for threshold in thresholds() if not threshold.tag]


def main() -> int:
    """Print what lacks a tag, or write the page."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--write", action="store_true", help=f"write {PAGE.relative_to(ROOT)}")
    if parser.parse_args().write:
        PAGE.write_text(page(), encoding="utf-8")
    for threshold in untagged():
        print(f"{threshold.path}:{threshold.line}: {threshold.name} has no tag")
    return 0


if __name__ == "__main__":
    sys.exit(main())
