"""What pip would install on other systems: every pinned package has a ready-made file there.

    python -m tests.proof.platforms [--write]

Asks the package index that pip is set up with; nothing is installed. It cannot show that the
program runs there. Ends with 1 where a package is missing.
"""

import argparse
import subprocess
import sys
import tempfile
import tomllib
from pathlib import Path

from tests.proof.page import ROOT, Proof, finish

#: Systems by name: the platforms of their wheels, the widest first.
SYSTEMS = {
    "Windows": ("win_amd64",),
    "macOS 15": tuple(f"macosx_{version}_0_arm64" for version in range(15, 10, -1)),
    "Linux ARM64": tuple(
        f"manylinux{name}_aarch64" for name in ("_2_39", "_2_34", "_2_28", "_2_17", "2014")
    ),
}
PYTHONS = ("3.11", "3.12", "3.13")


def missing_on(platforms: tuple[str, ...], python: str, requirements: Path) -> str:
    """Return what pip says is missing, or nothing where it finds every package."""
    with tempfile.TemporaryDirectory() as target:
        command = [sys.executable, "-m", "pip", "install", "--dry-run", "--ignore-installed"]
        command += ["--quiet", "--disable-pip-version-check", "--only-binary", ":all:"]
        command += ["--target", target, "--python-version", python]
        command += [word for platform in platforms for word in ("--platform", platform)]
        command += ["--constraint", str(ROOT / "constraints.txt"), "-r", str(requirements)]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
    return done.stderr.strip() if done.returncode else ""


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    arguments = parser.parse_args()
    faults = []
    with tempfile.TemporaryDirectory() as folder:
        requirements = Path(folder) / "requirements.txt"
        settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
        needed = settings["project"]["dependencies"]
        requirements.write_text("\n".join(needed) + "\n", encoding="utf-8")
        for system, platforms in SYSTEMS.items():
            for python in PYTHONS:
                missing = missing_on(platforms, python, requirements)
                if missing:
                    faults.append(f"{system}, Python {python}: {missing.splitlines()[-1]}")
    proof = Proof(
        subject="other systems",
        counts=f"{len(needed)} requirements on {', '.join(SYSTEMS)} with Python "
        f"{', '.join(PYTHONS)}: pinned versions found ready-made; nothing was run there",
        faults=tuple(faults),
        command="python -m tests.proof.platforms",
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
