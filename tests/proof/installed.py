"""Wheel and source distribution, built, installed and used without the repository.

    python -m tests.proof.installed [--write]

The source distribution is made from the committed files, the wheel from the unpacked source
distribution. The wheel is put into an empty environment, which borrows only the libraries of this
one, and used from an empty folder: every command, a clip, the check of the computer, and the
window, which a clip leads through a session. Ends with 1 where something does not work.
"""

import argparse
import os
import subprocess
import sys
import sysconfig
import tarfile
import venv
from collections.abc import Sequence
from pathlib import Path
from tempfile import TemporaryDirectory

from measure.system.paths import model_folder
from tests.proof.page import ROOT, Proof, finish
from tests.support import real_model
from tests.support.every_command import orders

_BUILD = "import sys; from setuptools.build_meta import build_{0}; build_{0}(sys.argv[1])"

#: Leads the installed window through a session; only the leader comes from the repository.
_LEAD = f"""
import sys
import gui.app.main_window
assert sys.prefix in gui.app.main_window.__file__, gui.app.main_window.__file__
sys.path.append({str(ROOT)!r})
from tests.support.guided_window import main
sys.exit(main())
"""


class Installation:
    """An environment in a folder of its own, and what went wrong in it."""

    def __init__(self, folder: Path) -> None:
        self.faults: list[str] = []
        self.sizes: list[str] = []
        self._folder = folder
        self._python = folder / "env" / "bin" / "python"
        for name in ("home", "work", "dist"):
            (folder / name).mkdir()

    def build(self) -> Path:
        """Build both, the wheel from what the source distribution holds; return the wheel."""
        archive = self._folder / "source.tar"
        self._run(["git", "-C", str(ROOT), "archive", "-o", str(archive), "HEAD"])
        self._unpack(archive, self._folder / "source")
        self._build("sdist", self._folder / "source")
        (source,) = (self._folder / "dist").glob("*.tar.gz")
        self._unpack(source, self._folder / "unpacked")
        (unpacked,) = (self._folder / "unpacked").iterdir()
        self._build("wheel", unpacked)
        (wheel,) = (self._folder / "dist").glob("*.whl")
        self.sizes = [f"{each.stat().st_size / 1e6:.1f} MB" for each in (source, wheel)]
        return wheel

    def install(self, wheel: Path) -> None:
        """Put the wheel into an environment that borrows the libraries of this one."""
        venv.create(self._folder / "env", with_pip=False)
        (place,) = (self._folder / "env" / "lib").glob("python*/site-packages")
        pip = [sys.executable, "-m", "pip", "--python", str(self._python), "install"]
        self._run([*pip, "--quiet", "--no-deps", "--disable-pip-version-check", str(wheel)])
        libraries = {sysconfig.get_path("purelib"), *(p for p in sys.path if "site-packages" in p)}
        (place / "zz-libraries.pth").write_text("\n".join(sorted(libraries)) + "\n")

    def use(self, arguments: Sequence[str]) -> None:
        """Run a command of the installed program."""
        self._run([str(self._python.with_name("thawline")), *arguments])

    def lead_window(self, clip: Path) -> None:
        """Let a clip lead the installed window through a session."""
        self._run([str(self._python), "-c", _LEAD, "--model-quality", "full", str(clip)])

    def _build(self, kind: str, source: Path) -> None:
        command = [sys.executable, "-c", _BUILD.format(kind), str(self._folder / "dist")]
        self._run(command, folder=source)

    def _unpack(self, archive: Path, folder: Path) -> None:
        with tarfile.open(archive) as packed:
            packed.extractall(folder, filter="data")

    def _run(self, command: Sequence[str], folder: Path | None = None) -> None:
        done = subprocess.run(
            command,
            cwd=folder or self._folder / "work",
            env={
                "PATH": os.environ["PATH"],
                "HOME": str(self._folder / "home"),
                "THAWLINE_DATA": str(self._folder / "home" / "data"),
                "THAWLINE_MODELS": str(model_folder()),
                "QT_QPA_PLATFORM": "offscreen",
            },
            capture_output=True,
            text=True,
            check=False,
        )
        if done.returncode or "Traceback" in done.stderr:
            self.faults.append(f"{' '.join(command)[:200]}: {done.returncode}: {done.stderr}")


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--write", action="store_true", help="write the row into the page")
    arguments = parser.parse_args()
    clip = real_model.clip("flexion-left-full")
    with TemporaryDirectory() as folder:
        made = Installation(Path(folder))
        made.install(made.build())
        asked = Path(folder) / "asked-for"
        asked.mkdir()
        commands = [["--version"], ["check"], ["demo", "--to", str(asked / "demo")], *orders(asked)]
        commands += [["replay", str(clip), "--movement", "flexion", "--side", "left"]]
        for words in commands:
            made.use(words)
        made.lead_window(clip)
    proof = Proof(
        subject="wheel and sdist",
        counts=f"sdist {made.sizes[0]}, wheel {made.sizes[1]}; {len(commands)} commands "
        "and a session in the window",
        faults=tuple(made.faults),
        command="python -m tests.proof.installed",
    )
    return finish((proof,), wanted=arguments.write)


if __name__ == "__main__":
    sys.exit(main())
