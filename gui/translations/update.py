"""Update of the translations: ``python -m gui.translations.update``.

Qt's extractor writes the texts of the code into one ``.ts`` file per language, which translators
edit; its compiler makes the ``.qm`` file that the window loads. Texts that no longer occur are
dropped. Ends with 1 when a text has no translation.
"""

import argparse
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path
from xml.etree import ElementTree

from gui.text.language import LANGUAGES
from gui.translations.texts_of_measure import texts_of_measure
from gui.translations.texts_of_messages import texts_of_messages

HERE = Path(__file__).parent
_TOOLS = Path(sys.executable).parent


def files_of(code: str) -> tuple[Path, Path]:
    """Return a language's ``.ts`` file for translators and the ``.qm`` file of the window."""
    return HERE / f"thawline_{code}.ts", HERE / f"thawline_{code}.qm"


def translations(source: Path) -> dict[str, str]:
    """Return each text of a ``.ts`` file and its translation, empty where there is none."""
    texts = {}
    for message in ElementTree.parse(source).iter("message"):
        translation = message.find("translation")
        finished = translation is not None and translation.get("type") is None
        texts[message.findtext("source", "")] = message.findtext("translation", "") * finished
    return texts


def extract(target: Path) -> None:
    """Write all texts into a ``.ts`` file, keeping its translations."""
    # The report speaks the window's languages too, and its sentences stand where they are made.
    folders = (HERE.parent, HERE.parents[1] / "measure/report")
    sources = sorted(str(path) for folder in folders for path in folder.rglob("*.py"))
    with tempfile.TemporaryDirectory() as folder:
        # The extractor reads calls, so the texts of other packages are written as calls.
        extra = Path(folder) / "texts_of_others.py"
        texts = (*texts_of_measure(), *texts_of_messages())
        calls = "".join(f"tr({text!r})\n" for text in texts)
        extra.write_text(calls, encoding="utf-8")
        options = ["-locations", "none", "-no-obsolete", "-ts", str(target)]
        _run("pyside6-lupdate", *sources, str(extra), *options)
    # "#:" comments document constants; the extractor takes them for notes to translators.
    text = target.read_text(encoding="utf-8")
    plain = re.sub(r"\s*<extracomment>.*?</extracomment>", "", text, flags=re.DOTALL)
    target.write_text(plain, encoding="utf-8")


def compile_to(source: Path, target: Path) -> None:
    """Make the file that the window loads."""
    _run("pyside6-lrelease", str(source), "-qm", str(target))


def _run(tool: str, *arguments: str) -> None:
    subprocess.run([_TOOLS / tool, *arguments], check=True, stdout=subprocess.DEVNULL)


def update(code: str) -> dict[str, str]:
    """Renew both files of a language, each at once, and return its texts.

    They are made beside the old ones, so that nobody who reads them meanwhile meets half a file.
    """
    files = files_of(code)
    with tempfile.TemporaryDirectory(dir=HERE) as folder:
        source, compiled = (Path(folder) / file.name for file in files)
        shutil.copy(files[0], source)
        extract(source)
        compile_to(source, compiled)
        texts = translations(source)
        source.replace(files[0])
        compiled.replace(files[1])
    return texts


def main() -> int:
    """Update every language; print the texts that are not yet translated."""
    argparse.ArgumentParser(description=__doc__.partition("\n")[0]).parse_args()
    lacking = 0
    for code in LANGUAGES:
        if code == "en":
            continue
        source, _ = files_of(code)
        texts = update(code)
        empty = [text for text, translation in texts.items() if not translation]
        print(f"{source.name}: {len(texts)} texts, {len(empty)} to translate")
        for text in empty:
            print(f"  {text!r}")
        lacking += len(empty)
    return 1 if lacking else 0


if __name__ == "__main__":
    sys.exit(main())
