"""What a desktop bundle can do without: files that are never used, and symbols for debugging.

Used by ``thawline.spec``. An entry is what PyInstaller calls one: where a file goes in the bundle,
where it comes from, and its kind.
"""

import re
import shutil
import subprocess
from collections.abc import Callable, Iterable
from pathlib import Path

Entry = tuple[str, str, str]

#: Kinds of entries that are libraries or need some.
_NATIVE = ("BINARY", "EXTENSION")

#: Parts of the libraries that nothing of ours uses, by their place in the bundle: windows that
#: opencv could open, decoders of films behind Qt's sounds, a keyboard on the screen, companions
#: of a GTK that is not inside, screens without a desktop, Qt's ways to other computers, PDF files
#: as pictures, Qt's words in languages that the window does not speak, pictures in the AVIF
#: format, sample data and fonts of PDF readers, fonts that no chart uses, packages' lists of their
#: own files. [technical]
UNUSED = re.compile(
    r"^cv2/qt/"
    r"|/plugins/(multimedia/|platforminputcontexts/.*virtualkeyboard|platformthemes/.*gtk)"
    r"|/plugins/(egldeviceintegrations|generic|tls|networkinformation)/|/imageformats/.*qpdf"
    r"|/plugins/platforms/libq(eglfs|linuxfb|minimalegl|vkkhrdisplay|vnc)"
    r"|^PySide6/.*translations/(?!qtbase_(en|es)\.qm)"
    r"|^PIL/_avif\."
    r"|/imageformats/.*q(icns|tga|tiff|wbmp|webp)\."
    r"|^matplotlib/mpl-data/(sample_data|plot_directive|fonts/(afm|pdfcorefonts))/"
    r"|^matplotlib/mpl-data/fonts/ttf/(DejaVuSansMono|DejaVuSerif|STIX)"
    r"|^pyqtgraph/icons/"
    r"|\.dist-info/(RECORD$|sboms/)"
)

#: Ending of the name of a library that was changed after it was linked; without its symbols it
#: could not be loaded any more. [technical]
_CHANGED_AFTERWARDS = re.compile(r"-[0-9a-f]{8}\.(so|\d)")

#: Smallest file whose symbols are worth taking out, bytes. [technical]
_WORTH_STRIPPING = 200_000


def needed(entries: Iterable[Entry], imports: Callable[[str], set[str]]) -> list[Entry]:
    """Return the entries without unused ones and libraries that only those needed.

    Parameters
    ----------
    imports
        Returns the names of all libraries that a file needs, those of its libraries included.
    """
    kept: list[Entry] = []
    dropped: list[Entry] = []
    for entry in entries:
        (dropped if UNUSED.search(entry[0].replace("\\", "/")) else kept).append(entry)
    needs = {entry: imports(entry[1]) for entry in kept if entry[2] in _NATIVE}
    orphans = set().union(*(imports(entry[1]) for entry in dropped if entry[2] in _NATIVE))
    gone: set[str] = set()
    while unwanted := {_name(entry) for entry in needs} & orphans - set().union(*needs.values()):
        gone |= unwanted
        needs = {entry: names for entry, names in needs.items() if _name(entry) not in unwanted}
    return [entry for entry in kept if _name(entry) not in gone]


def without_symbols(entries: Iterable[Entry], folder: Path) -> list[Entry]:
    """Return the entries, libraries replaced by copies without symbols for debugging (Linux).

    Parameters
    ----------
    folder
        Where the copies go.
    """
    if shutil.which("strip") is None or shutil.which("ldd") is None:
        return list(entries)
    return [(dest, _stripped(dest, source, kind, folder), kind) for dest, source, kind in entries]


def _stripped(dest: str, source: str, kind: str, folder: Path) -> str:
    path, copy = Path(source), folder / dest
    if (
        kind not in _NATIVE
        or ".so" not in path.name
        or _CHANGED_AFTERWARDS.search(path.name)
        or path.stat().st_size < _WORTH_STRIPPING
    ):
        return source
    copy.parent.mkdir(parents=True, exist_ok=True)
    tried = (["strip", "--strip-unneeded", "-o", str(copy), source], ["ldd", str(copy)])
    if any(subprocess.run(words, capture_output=True, check=False).returncode for words in tried):
        return source
    return str(copy) if copy.stat().st_size < path.stat().st_size else source


def _name(entry: Entry) -> str:
    return Path(entry[0]).name
