"""Translations: every text has one, complete and in good tone."""

import re
import shutil
from pathlib import Path

import pytest
from PySide6.QtCore import QTranslator

from gui.text.language import LANGUAGES
from gui.translations.update import extract, files_of, translations

OTHERS = [code for code in LANGUAGES if code != "en"]
#: Words that push somebody on, and the familiar form, which strangers are not spoken to with.
URGING = (
    "esfuérc",
    "esfuerzo",
    "hasta donde pueda",
    "todo lo que pueda",
    "más arriba",
    "objetivo",
    "¡",
)
FAMILIAR = re.compile(
    r"\b(tú|tu|tus|te|ti|contigo|puedes|debes|estás|tienes|quieres|haz|levanta|mantén|mantenlo|pon"
    r"|ponla|ponte|elige primero|escribe el|di primero|lleva el|muestra el|marca (el|su|uno)"
    r"|inclina el|acércate|colócate|quédate|retrocede|o toma otra|mide otra|\wídel[oa]s?)\b",
    re.IGNORECASE,
)


@pytest.mark.parametrize("code", OTHERS)
def test_every_text_of_the_code_is_translated_and_none_is_left_over(
    code: str, tmp_path: Path
) -> None:
    """Mended by ``python -m gui.translations.update`` and a translator."""
    kept, _ = files_of(code)
    fresh = tmp_path / kept.name
    shutil.copy(kept, fresh)
    extract(fresh)
    texts = translations(fresh)
    assert len(texts) > 400
    assert [text for text, translation in texts.items() if not translation] == []
    assert translations(kept).keys() == texts.keys()


@pytest.mark.parametrize("code", OTHERS)
def test_what_the_window_loads_is_what_people_translated(code: str) -> None:
    kept, compiled = files_of(code)
    translator = QTranslator()
    assert translator.load(str(compiled))
    for text, translation in translations(kept).items():
        assert translator.translate("", text) == translation


@pytest.mark.parametrize("code", OTHERS)
def test_placeholders_and_ends_are_those_of_the_text(code: str) -> None:
    for text, translation in translations(files_of(code)[0]).items():
        assert sorted(re.findall(r"\{\w+\}", translation)) == sorted(
            re.findall(r"\{\w+\}", text)
        ), text
        assert (translation[:1] == " ", translation[-1:] == " ") == (
            text[:1] == " ",
            text[-1:] == " ",
        ), text
        assert translation.endswith("...") == text.endswith("..."), text
        assert translation.count("&") == text.count("&"), text


def test_spanish_is_polite_and_urges_nobody() -> None:
    for text, translation in translations(files_of("es")[0]).items():
        assert not FAMILIAR.search(translation), (text, translation)
        assert not any(word in translation.lower() for word in URGING), (text, translation)
