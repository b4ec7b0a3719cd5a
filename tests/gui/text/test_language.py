"""Languages: which one is spoken, and that every text is translated, whole and in good tone."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from gui.text.language import LANGUAGES, SYSTEM, install_language, language_for
from gui.text.wording import tr
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


@pytest.mark.parametrize(
    ("chosen", "system", "spoken"),
    [
        (SYSTEM, "es_MX", "es"),
        (SYSTEM, "es", "es"),
        (SYSTEM, "fr_FR", "en"),
        (SYSTEM, "en_GB", "en"),
        ("es", "en_GB", "es"),
        ("en", "es_ES", "en"),
        ("no such language", "es_ES", "es"),
    ],
)
def test_the_chosen_language_comes_first_then_the_systems(
    chosen: str, system: str, spoken: str
) -> None:
    assert language_for(chosen, QLocale(system)) == spoken


@pytest.fixture
def as_before(qapp: QApplication) -> Iterator[None]:
    """Put language, locale and direction back as they were."""
    locale, direction = QLocale(), qapp.layoutDirection()
    yield
    for translator in qapp.findChildren(QTranslator):
        qapp.removeTranslator(translator)
    QLocale.setDefault(locale)
    qapp.setLayoutDirection(direction)


def test_spanish_is_spoken_by_the_window_and_by_qts_own_dialogs(
    qapp: QApplication, as_before: None
) -> None:
    assert tr("Close") == "Close"
    assert len(install_language(qapp, "es")) == 2
    assert tr("Close") == "Cerrar"
    assert qapp.translate("QPlatformTheme", "Cancel") == "Cancelar"


@pytest.mark.parametrize("code", OTHERS)
def test_every_text_of_the_code_is_translated_and_none_is_left_over(
    code: str, tmp_path: Path
) -> None:
    """Mended by ``python -m gui.translations.update`` and a translator."""
    kept, _ = files_of(code)
    fresh = tmp_path / kept.name
    shutil.copy(kept, fresh)
    extract(fresh)
    told = translations(fresh)
    assert len(told) > 400
    assert [text for text, translated in told.items() if not translated] == []
    assert translations(kept).keys() == told.keys()


@pytest.mark.parametrize("code", OTHERS)
def test_what_the_window_loads_is_what_people_translated(code: str) -> None:
    kept, compiled = files_of(code)
    translator = QTranslator()
    assert translator.load(str(compiled))
    for text, told in translations(kept).items():
        assert translator.translate("", text) == told


@pytest.mark.parametrize("code", OTHERS)
def test_placeholders_and_ends_are_those_of_the_text(code: str) -> None:
    for text, told in translations(files_of(code)[0]).items():
        assert sorted(re.findall(r"\{\w+\}", told)) == sorted(re.findall(r"\{\w+\}", text)), text
        assert (told[:1] == " ", told[-1:] == " ") == (text[:1] == " ", text[-1:] == " "), text
        assert told.endswith("...") == text.endswith("..."), text
        assert told.count("&") == text.count("&"), text


def test_spanish_is_polite_and_urges_nobody() -> None:
    for text, told in translations(files_of("es")[0]).items():
        assert not FAMILIAR.search(told), (text, told)
        assert not any(word in told.lower() for word in URGING), (text, told)
