"""Damage to the values in a file: hostile cells for tables, hostile trees for JSON."""

import copy
import json
import random
from typing import Any

#: Texts that have broken programs: paths out, addresses, devices, markup, formulas, escapes.
HOSTILE_TEXTS = (
    "", " ", ".", "..", "../../../etc/passwd", "/etc/passwd", "/dev/zero", "/dev/stdin",
    "/proc/self/mem", "C:\\Windows\\win.ini", "\\\\server\\share\\clip.mp4", "CON", "nul.mp4",
    "a" * 300, "x/" * 3000, "http://127.0.0.1:9/clip.mp4", "file:///etc/passwd", "concat:a|b",
    "rtsp://x", "tcp://127.0.0.1:9", "<script>alert(1)</script>", "]]>", "&lt;", "%s%n%x", "%00",
    "\"><img src=x onerror=alert(1)>", "=cmd|'/c calc'!A0", "@SUM(1)", "+1", "-1", "\t=1",
    "\x1b[2J\x1b]0;x\x07", "\r\n", "\u202egnp.exe", "\ufeff", "\u2028", "\U0001f331",
    "Żółw ü 日本", "a,b\",c\n", "'; DROP TABLE people; --", "None", "null", "NaN", "inf", "-0",
    "1e999", "0x10", "\uff11\uff12", "1_000", "999999999999999999999999", "2026-13-45", "true",
    "2026-04-01T25:00:00Z", "0001-01-01T00:00:00+14:00", "9999-12-31T23:59:59.999999-12:00",
)  # fmt: skip

HOSTILE_VALUES: tuple[Any, ...] = (
    None, True, False, 0, -1, 1, 2**31, 2**63, -(2**63), 10**40, 0.1, -0.0, 1e308, 5e-324, [], {},
    [[]], {"": ""}, [None] * 50, *HOSTILE_TEXTS,
)  # fmt: skip


def places_in(tree: Any) -> list[tuple[Any, Any]]:
    """Return every (container, key) of a tree of dicts and lists."""
    found: list[tuple[Any, Any]] = []
    stack = [tree]
    while stack:
        node = stack.pop()
        keys = list(node) if isinstance(node, dict) else range(len(node))
        for key in keys:
            found.append((node, key))
            if isinstance(node[key], dict | list):
                stack.append(node[key])
    return found


def hostile_json(data: bytes, chance: random.Random) -> bytes:
    """Return JSON with some values lost, doubled, exchanged or replaced by hostile ones."""
    tree = json.loads(data)
    for _ in range(chance.choice((1, 1, 2, 5, 30))):
        places = places_in(tree)
        if not places:
            break
        node, key = chance.choice(places)
        kind = chance.randrange(6)
        if kind == 0:
            del node[key]
        elif kind == 1:
            other, at = chance.choice(places)
            node[key] = json.loads(json.dumps(other[at]))
        elif kind == 2 and isinstance(node, dict):
            node[chance.choice(HOSTILE_TEXTS)] = node[key]
        elif kind == 3 and isinstance(node, list):
            node.extend(json.loads(json.dumps(node[:50])))
        else:
            # A copy, for later damage may go into it; and never a part of itself.
            node[key] = copy.deepcopy(chance.choice(HOSTILE_VALUES))
    text = json.dumps(tree, ensure_ascii=chance.random() < 0.5)
    if chance.random() < 0.1:
        text = chance.choice(("[" * 100_000, '{"a":' * 50_000, "9" * 6000, text + text, "NaN", ""))
    return text.encode("utf-8", "surrogatepass")


def hostile_table(data: bytes, chance: random.Random) -> bytes:
    """Return a table with hostile cells, wrong numbers of them, other separators and ends."""
    rows = [line.split(",") for line in data.decode().splitlines()]
    for _ in range(chance.choice((1, 1, 2, 4))):
        row = chance.choice(rows)
        place = chance.randrange(len(row) + 1)
        kind = chance.randrange(4)
        if kind == 0 and row:
            del row[place - 1]
        elif kind == 1:
            row.insert(place, chance.choice(HOSTILE_TEXTS))
        elif row:
            row[place - 1] = chance.choice(HOSTILE_TEXTS)
    ending = chance.choice(("\n", "\n", "\n", "\r\n", "\r", "\n\n"))
    usual = chance.choice((",", ",", ",", ",", ";", "\t"))
    others = {chance.randrange(2 * len(rows)): chance.choice(",;\t")}  # of one row, or of none
    text = ending.join(others.get(place, usual).join(row) for place, row in enumerate(rows))
    if chance.random() < 0.1:
        text = chance.choice((text * 200, '"' + text, text + "\0", "\ufeff" + text, "é" * 200_000))
    encodings = ("utf-8",) * 6 + ("utf-16", "latin-1")
    return text.encode(chance.choice(encodings), "replace")
