"""What a program asked of the system: whom it called, which names it looked up, what it wrote.

The record comes from the program strace (Linux), which sees native code too.
"""

import os
import re
import shutil
import subprocess
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

import pytest

from measure.system.paths import model_folder

ROOT = Path(__file__).parents[2]

#: Where the pose library's own report is led to; nobody listens there.
CLOSED_PORT = 9

_TRACED = "trace=connect,sendto,sendmsg,sendmmsg,open,openat,creat"
_STRACE = ("strace", "-f", "--seccomp-bpf", "-qq", "-s", "4096", "-e", _TRACED)

_INTERNET = re.compile(
    r'htons\((\d+)\).*?(?:inet_addr\("([^"]+)"\)|inet_pton\(AF_INET6, "([^"]+)")'
)
_FAMILY = re.compile(r"sa_family=(AF_\w+)")
_OPENED = re.compile(r'(?:openat\(\S+ |open\(|creat\()"([^"]+)"(.*)')
#: What the system's library reads or calls when it looks up the address of a name.
_NAME_LOOKUP = re.compile(r"/etc/(resolv\.conf|hosts|gai\.conf)\"|resolve/io\.systemd\.Resolve")


@dataclass(frozen=True)
class SystemCalls:
    """What one program and all that it started did.

    Attributes
    ----------
    addresses
        (address, port) of every internet address that was called.
    families
        Kinds of addresses of all calls.
    look_ups
        Calls that only somebody makes who looks up a name.
    written
        Every file that was opened for writing.
    """

    addresses: frozenset[tuple[str, int]]
    families: frozenset[str]
    name_lookups: tuple[str, ...]
    written: frozenset[str]
    output: str
    errors: str

    def assert_nothing_left(self, *, ports: Sequence[int] = ()) -> None:
        """Hold that only the given closed ports of this computer were called, and no name."""
        allowed = {(address, port) for address in ("127.0.0.1", "::1") for port in ports}
        assert self.addresses <= allowed
        assert self.families <= {"AF_UNIX", "AF_INET", "AF_INET6", "AF_NETLINK"}
        assert self.name_lookups == ()


def traced(
    command: Sequence[str | Path],
    record: Path,
    *,
    timeout_s: float = 300.0,
    more: Mapping[str, str] | None = None,
) -> SystemCalls:
    """Run a program under strace to its good end and return what it did."""
    if shutil.which("strace") is None:
        pytest.skip("not on this system: the strace program")
    done = subprocess.run(
        [*_STRACE, "-o", record, *command],
        env={
            **os.environ,
            "PYTHONPATH": str(ROOT),
            "THAWLINE_MODELS": str(model_folder()),
            **(more or {}),
        },
        capture_output=True,
        text=True,
        timeout=timeout_s,
        check=False,
    )
    if "ptrace" in done.stderr.lower() or "operation not permitted" in done.stderr.lower():
        pytest.skip("not on this system: tracing of system calls")
    assert done.returncode == 0, done.stderr
    return calls_in(record.read_text(errors="replace"), done.stdout, done.stderr)


def calls_in(record: str, output: str = "", errors: str = "") -> SystemCalls:
    """Return what a record of strace tells."""
    addresses, families, name_lookups, written = set(), set(), [], set()
    for line in record.splitlines():
        if _NAME_LOOKUP.search(line):
            name_lookups.append(line)
        opened = _OPENED.search(line)
        if opened is not None:
            if re.search(r"O_WRONLY|O_RDWR|O_CREAT|creat\(", line) and " = -1 " not in line:
                written.add(opened[1])
            continue
        families.update(_FAMILY.findall(line))
        if "AF_INET" in line:
            found = [(v4 or v6, int(port)) for port, v4, v6 in _INTERNET.findall(line)]
            addresses.update(found or [(line, 0)])
            name_lookups += [line for _, port in found if port == 53]
    return SystemCalls(
        addresses=frozenset(addresses),
        families=frozenset(families),
        name_lookups=tuple(name_lookups),
        written=frozenset(written),
        output=output,
        errors=errors,
    )


def written_for_good(calls: SystemCalls, asked_for: Path) -> set[str]:
    """Return the files that were written and are still there, but for those asked for.

    Left out are what Python and the system's libraries keep for themselves: compiled modules,
    lists of fonts, devices, and memory that looks like a file.
    """
    own = (str(asked_for), "/dev/", "/proc/", "/sys/")
    return {
        each
        for each in calls.written
        if not each.startswith(own)
        and not re.search(r"/__pycache__/|/\.cache/|/mesa_shader_cache|/fontconfig/", each)
        and Path(each).is_file()
    }
