"""Every command but the model's, and the window: nobody is called and no name is looked up."""

import json
import sys
from pathlib import Path

import pytest

from tests.support.every_command import orders
from tests.support.system_calls import calls_in, traced, written_for_good

pytestmark = [
    pytest.mark.timeout(300),
    pytest.mark.skipif(sys.platform != "linux", reason="not on this system: strace"),
]

_RUN_ALL = """
import json, sys
from measure.cli.main import main
for arguments in json.loads(sys.argv[1]):
    code = main(arguments)
    if code:
        sys.exit(f"{arguments}: {code}")
"""


def test_the_record_shows_calls_and_look_ups_where_there_are_any(tmp_path: Path) -> None:
    """What the other tests rely on."""
    program = (
        "import socket; socket.getaddrinfo('localhost', 80)\n"
        "socket.socket().connect_ex(('127.0.0.1', 9))\n"
        "socket.socket(socket.AF_INET6, socket.SOCK_DGRAM).sendto(b'x', ('::1', 7))\n"
        "open('beans.txt', 'w').close()"
    )
    calls = traced(
        [sys.executable, "-c", f"import os; os.chdir({str(tmp_path)!r})\n{program}"],
        tmp_path / "calls",
    )
    assert calls.addresses == {("127.0.0.1", 9), ("::1", 7)}
    assert calls.name_lookups
    assert "beans.txt" in calls.written
    with pytest.raises(AssertionError):
        calls.assert_nothing_left(ports=(7, 9))


@pytest.mark.parametrize(
    "line",
    [
        'connect(3, {sa_family=AF_INET, sin_port=htons(443), sin_addr=inet_addr("192.0.2.1")}, 16)',
        'sendto(3, "x", 1, 0, {sa_family=AF_INET, sin_port=htons(9), sin_addr=inet_addr("0.0.2.1")',
        'connect(3, {sa_family=AF_INET, sin_port=htons(53), sin_addr=inet_addr("127.0.0.1")}, 16)',
        "connect(3, {sa_family=AF_INET, what is this}, 16)",
        "connect(3, {sa_family=AF_VSOCK, svm_cid=2}, 16)",
        'openat(AT_FDCWD, "/etc/resolv.conf", O_RDONLY|O_CLOEXEC) = 3',
        'connect(3, {sa_family=AF_UNIX, sun_path="/run/systemd/resolve/io.systemd.Resolve"}, 42)',
    ],
)  # fmt: skip
def test_each_way_out_is_noticed(line: str) -> None:
    with pytest.raises(AssertionError):
        calls_in(f"123 {line}").assert_nothing_left(ports=(9, 53))


def test_no_command_calls_anybody(tmp_path: Path) -> None:
    folder = tmp_path / "asked-for"
    folder.mkdir()
    data = tmp_path / "data"
    calls = traced(
        [sys.executable, "-c", _RUN_ALL, json.dumps(orders(folder))],
        tmp_path / "calls",
        more={"THAWLINE_DATA": str(data), "QT_QPA_PLATFORM": "offscreen"},
    )
    calls.assert_nothing_left()
    assert calls.families <= {"AF_UNIX"}
    assert {each.name for each in folder.iterdir()} >= {"report.pdf", "all.csv", "board.pdf"}
    kept = {Path(each).name for each in written_for_good(calls, folder)}
    assert kept <= {"sessions.sqlite", "sessions-were-kept.txt"}
    for path in (data, *data.rglob("*")):
        assert path.stat().st_mode & 0o077 == 0, path
